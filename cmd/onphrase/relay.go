package main

import (
	"slices"

	"github.com/spf13/cobra"

	"onphrase/align"
	"onphrase/align/fit"
	"onphrase/cmd/internal/aligned"
	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/told"
	"onphrase/plan/edit"
)

type relayOptions struct {
	classFlags
	path   string // of the class
	music  string // folder, playlist, list of music or another class
	out    string
	prices string
	force  bool
	json   bool
}

const relayLong = `Lays a class on other songs: for next month, or for a substitute with other music.
MUSIC is one of these:

  a folder      its songs, in the order of their names, take the place of the
  a playlist    class's songs, in the order in which the class plays them: a song
                that comes twice is the same other song both times
  a YAML file   songs for the parts it names; a part it does not name keeps its
                own. Another class file is one, too: by the names of the parts,
                or by their order where it shares none
                  onphrase: 1
                  music: spring/
                  parts:
                    - {part: Warm-up, tracks: [new-dawn.mp3]}
                    - {part: Round 1, tracks: [low-tide.mp3], start: phrase 2}

It shows what moves: for every item its time, phrase, counts, seconds and seconds
a repetition, before and after; then what no longer fits or is likely hard to
control on the new songs, what does so no more, and the smallest way out.

With -o it writes the class on its new songs: tracks, and music and start where
they must change; comments, order and all other lines stay as they are. The old
class, and whatever else is read, is never replaced, not even with --force.

The exit code is 3 when there is anything to fix.`

func newRelayCmd(s *streams) *cobra.Command {
	o := &relayOptions{}
	cmd := &cobra.Command{
		Use:   "relay CLASS MUSIC",
		Short: "Lay a class on other songs and see what moves",
		Long:  relayLong,
		Example: `  onphrase relay class.yaml spring/
  onphrase relay class.yaml spring.m3u8 -o spring.yaml
  onphrase relay class.yaml other-class.yaml`,
		Args: takes(2, 2, "a class file and the other music"),
		RunE: func(cmd *cobra.Command, args []string) error {
			o.path, o.music = args[0], args[1]
			return runRelay(cmd, s, o)
		},
	}
	o.register(cmd)
	cmd.Flags().StringVarP(&o.out, "output", "o", "", "the class `FILE` to write; without it nothing is written")
	cmd.Flags().BoolVar(&o.force, "force", false, "replace a file that is there already")
	cmd.Flags().StringVar(&o.prices, "prices", "", "a `FILE` of your own prices of changes, as for fit")
	cmd.Flags().BoolVar(&o.json, "json", false, "write what moves as JSON (onphrase.relay/1)")
	return cmd
}

// exchanged is a class before and after, and the way out of what does not fit.
type exchanged struct {
	was, is *aligned.Class
	align.Comparison
	way *fit.Plan // nil when there is nothing that changes could mend
}

func runRelay(cmd *cobra.Command, s *streams, o *relayOptions) error {
	prices, err := priceList(s, o.prices)
	if err != nil {
		return err
	}
	was, err := o.align(cmd.Context(), s, o.path)
	if err != nil {
		return err
	}
	changes, err := o.exchange(s, was)
	if err != nil {
		return err
	}
	src, err := edit.Apply(was.Src, changes)
	if err != nil {
		return told.Failed("write tracks as a list in brackets", "%s: %s", o.path, err)
	}
	is, err := o.alignText(cmd.Context(), s, o.target(), src)
	if err != nil {
		return err
	}
	r := exchanged{was: was, is: is, Comparison: align.Compare(was.Map, is.Map)}
	if r.way, err = wayOut(is, prices); err != nil {
		return told.Failed("", "%s: %s", o.target(), err)
	}
	if o.out != "" {
		if err := disk.WriteFile(o.out, o.force, o.read(was, is), src); err != nil {
			return err
		}
	}
	if o.json {
		err = o.writeJSON(s.out, r)
	} else {
		err = o.writeText(s, r)
	}
	if err == nil && toFix(is.Map) {
		return said(exitFindings)
	}
	return err
}

// read lists all that the relay goes by, of the class as it was and as it is.
func (o *relayOptions) read(was, is *aligned.Class) disk.Sources {
	return append(append(o.sources(was), is.Sources()...), o.music, pricesFile(o.prices))
}

// target is where the class on its new songs is, or would be.
func (o *relayOptions) target() string {
	if o.out != "" {
		return o.out
	}
	return o.path
}

// wayOut is the cheapest set of changes after which the class lands better.
func wayOut(l *aligned.Class, prices fit.Prices) (*fit.Plan, error) {
	searched := func(f align.Finding) bool {
		return f.Severity != align.Note && slices.Contains(align.TrialCodes(), f.Code)
	}
	if !slices.ContainsFunc(l.Map.Findings, searched) {
		return nil, nil
	}
	res, err := fit.Search(fit.Job{File: l.Path, Src: l.Src, Known: l.Class.Catalog, Tracks: l.Tracks, Prices: prices})
	if err != nil || len(res.Plans[0].Changes) == 0 {
		return nil, err
	}
	return &res.Plans[0], nil
}
