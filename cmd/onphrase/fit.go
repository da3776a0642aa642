package main

import (
	"encoding/json"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"onphrase/align"
	"onphrase/align/fit"
	"onphrase/cmd/internal/aligned"
	"onphrase/cmd/internal/told"
	"onphrase/plan/say"
)

type fitOptions struct {
	classFlags
	path   string
	prices string
	part   string
	plan   int
	json   bool
	write  bool
	list   bool
}

const fitLong = `Looks for the cheapest changes after which every item starts where it should,
can be controlled at this tempo and ends before the music does, and shows the
three best sets of changes with what each means in repetitions and seconds.
'onphrase fit --list' lists the changes and their prices; a file of your own
prices takes their place.

Nothing is written unless --write is given. It changes the class file in its
place: comments, order and all other lines stay as they are. The file as it was
is kept beside it under a new name, and a file that was changed meanwhile is left
alone.

The exit code is 3 when something to fix is left that the first plan does not
remove. Findings are advice: the instructor's qualification, the participants'
clearance and local rules decide.`

func newFitCmd(s *streams) *cobra.Command {
	o := &fitOptions{}
	cmd := &cobra.Command{
		Use:   "fit CLASS",
		Short: "Find the smallest changes that make a class land",
		Long:  fitLong,
		Example: `  onphrase fit class.yaml
  onphrase fit class.yaml --part "Cardio 1"
  onphrase fit class.yaml --write --plan 2`,
		Args: func(cmd *cobra.Command, args []string) error {
			if o.list {
				return takes(0, 0, "")(cmd, args)
			}
			return takes(1, 1, "a class file")(cmd, args)
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			if o.list {
				return listPrices(s, o.prices)
			}
			o.path = args[0]
			return runFit(cmd, s, o)
		},
	}
	o.register(cmd)
	cmd.Flags().StringVar(&o.prices, "prices", "",
		"a `FILE` of your own prices (default: prices.yaml in your configuration folder, where there is one)")
	cmd.Flags().StringVar(&o.part, "part", "", "change only the part of this `NAME`")
	cmd.Flags().IntVar(&o.plan, "plan", 1, "the `number` of the plan to write")
	cmd.Flags().BoolVar(&o.write, "write", false, "write the changes into the class file, and keep it as it was beside it")
	cmd.Flags().BoolVar(&o.json, "json", false, "write the plans as JSON (onphrase.fit/1)")
	cmd.Flags().BoolVar(&o.list, "list", false, "list the changes that can be made and their prices")
	cmd.ValidArgsFunction = classFiles
	return cmd
}

func runFit(cmd *cobra.Command, s *streams, o *fitOptions) error {
	prices, err := priceList(s, o.prices)
	if err != nil {
		return err
	}
	class, err := o.align(cmd.Context(), s, o.path)
	if err != nil {
		return err
	}
	if names := partNames(class); o.part != "" && !slices.Contains(names, o.part) {
		return usage("its parts are: "+strings.Join(names, "; "), "%s has no part %q", o.path, o.part)
	}
	res, err := fit.Search(fit.Job{File: o.path, Src: class.Src, Known: class.Class.Catalog, Tracks: class.Tracks,
		Prices: prices, Only: o.part})
	if err != nil {
		return told.Failed("", "%s: %s", o.path, err)
	}
	if o.plan < 1 || o.plan > len(res.Plans) {
		return usage("", "there is no plan %d: %s found", o.plan, say.Many(len(res.Plans), "plan"))
	}
	if o.json {
		err = o.writeJSON(s.out, res)
	} else {
		err = o.writeText(s, res)
	}
	if err == nil && o.write {
		err = o.keep(s, class.Src, res.Plans[o.plan-1])
	}
	if err == nil && toFix(res.Plans[0].After) {
		return said(exitFindings)
	}
	return err
}

func partNames(o *aligned.Class) []string {
	var names []string
	for _, p := range o.Class.Parts {
		names = append(names, p.Name)
	}
	return names
}

// keep writes a plan into the class file.
func (o *fitOptions) keep(s *streams, was []byte, p fit.Plan) error {
	if len(p.Changes) == 0 {
		s.say("%s is left as it is", o.path)
		return nil
	}
	old, err := rewrite(o.path, was, p.Src)
	if err != nil {
		return err
	}
	s.say("%s is changed after plan %d; as it was, it is kept in %s", o.path, o.plan, old)
	return nil
}

// changed is the difference that a plan makes, as a unified diff.
func (o *fitOptions) changed(n int, was []byte, p fit.Plan) string {
	name := filepath.Base(o.path)
	return unified(string(was), string(p.Src), name, fmt.Sprintf("%s after plan %d", name, n))
}

// fitJSON is the contract onphrase.fit/1.
type fitJSON struct {
	Schema string          `json:"schema"`
	Class  string          `json:"class"`
	Before []align.Finding `json:"before"`
	Plans  []planJSON      `json:"plans"`
	Cut    []string        `json:"cut"` // parts not gone through completely
}

type planJSON struct {
	Plan    int             `json:"plan"`
	Price   int             `json:"price"`
	Cost    int             `json:"cost"`
	Changes []fit.Change    `json:"changes"`
	Diff    string          `json:"diff"`
	Gone    []align.Finding `json:"gone"`
	Left    []align.Finding `json:"left"`
	New     []align.Finding `json:"new"`
}

func (o *fitOptions) writeJSON(w io.Writer, res *fit.Result) error {
	out := fitJSON{Schema: "onphrase.fit/1", Class: res.Before.Class, Before: res.Before.Findings, Plans: []planJSON{},
		Cut: append([]string{}, res.Cut...)}
	for i, p := range res.Plans {
		out.Plans = append(out.Plans, planJSON{
			Plan: i + 1, Price: p.Price, Cost: p.Cost, Changes: append([]fit.Change{}, p.Changes...),
			Diff: o.changed(i+1, res.Src, p),
			Gone: append([]align.Finding{}, p.Gone...), Left: append([]align.Finding{}, p.Left...),
			New: append([]align.Finding{}, p.New...),
		})
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	return enc.Encode(out)
}
