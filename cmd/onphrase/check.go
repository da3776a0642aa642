package main

import (
	"encoding/json"
	"errors"
	"io"
	"slices"

	"github.com/spf13/cobra"

	"onphrase/align"
	"onphrase/align/export"
	"onphrase/beat/correct"
)

type checkOptions struct {
	classFlags
	path    string
	json    bool
	explain string
	list    bool
	details bool
	left    string
}

const checkLong = `Lays the class on its music and prints what does not fit or is likely hard to
control, each with the smallest change that helps: what to do first, then the
gravest. --details adds the figures and the source of each.

  fix    will go wrong in front of the class
  watch  try it out before you teach it
  note   good to know

What you stand by is written as known: CODE at an item, a part or the class, like
known: {rhythm-too-fast: "light bar"}; it is not counted, and listed at the end.

The exit code is 3 when there is anything to fix. Findings are advice: the
instructor's qualification, the participants' clearance and local rules decide.`

func newCheckCmd(s *streams) *cobra.Command {
	o := &checkOptions{}
	cmd := &cobra.Command{
		Use:   "check CLASS",
		Short: "List what to fix before you teach the class",
		Long:  checkLong,
		Example: `  onphrase check class.yaml
  onphrase check class.yaml --left 8:00
  onphrase check --list
  onphrase check --explain rhythm-too-fast`,
		Args: func(cmd *cobra.Command, args []string) error {
			if err := oneOf(cmd, "json", "list", "explain", "left"); err != nil {
				return err
			}
			if o.list || o.explain != "" {
				return takes(0, 0, "")(cmd, args)
			}
			return takes(1, 1, "a class file")(cmd, args)
		},
		RunE: func(cmd *cobra.Command, args []string) error {
			switch {
			case o.list:
				return listChecks(s)
			case o.explain != "":
				return explainCheck(s, o.explain, o.moves)
			}
			o.path = args[0]
			return runCheck(cmd, s, o)
		},
	}
	o.register(cmd)
	cmd.Flags().BoolVar(&o.json, "json", false, "write the findings as JSON (onphrase.findings/1)")
	cmd.Flags().BoolVar(&o.details, "details", false, "show the figures and the source of each finding")
	cmd.Flags().StringVar(&o.left, "left", "", "you run late and have this `TIME` left, like 8:00: say what to drop")
	cmd.Flags().BoolVar(&o.list, "list", false, "list the checks that are made")
	cmd.Flags().StringVar(&o.explain, "explain", "",
		"say what the check with this `CODE` looks for, why, and after which source")
	cmd.ValidArgsFunction = classFiles
	complete(cmd, "explain", checkCodes()...)
	return cmd
}

func runCheck(cmd *cobra.Command, s *streams, o *checkOptions) error {
	left, err := o.timeLeft()
	if err != nil {
		return err
	}
	m, err := o.build(cmd.Context(), s, o.path)
	if err != nil {
		return err
	}
	if left > 0 {
		return export.Late(s.out, m, m.RunsLate(left), s.style(o.path))
	}
	if o.json {
		err = writeFindingsJSON(s.out, m)
	} else {
		style := s.style(o.path)
		style.Details = o.details
		err = export.Findings(s.out, m, style)
	}
	if err == nil && toFix(m) {
		return said(exitFindings)
	}
	return err
}

// timeLeft reads --left [s], 0 when it is not given.
func (o *checkOptions) timeLeft() (float64, error) {
	if o.left == "" {
		return 0, nil
	}
	left, err := correct.ParseClock(o.left)
	if err == nil && left < 1 {
		err = errors.New("there is no time left")
	}
	if err != nil {
		return 0, usage("minutes and seconds, like --left 8:00", "--left: %s", err)
	}
	return left, nil
}

// toFix reports whether anything must be fixed before the class is taught.
func toFix(m *align.CountMap) bool {
	return slices.ContainsFunc(m.Findings, func(f align.Finding) bool { return f.Severity == align.Fix })
}

// writeFindingsJSON writes the findings as they stand in a count map.
func writeFindingsJSON(w io.Writer, m *align.CountMap) error {
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	return enc.Encode(struct {
		Schema   string          `json:"schema"`
		Class    string          `json:"class"`
		Findings []align.Finding `json:"findings"`
		Known    []align.Finding `json:"known"`
	}{"onphrase.findings/1", m.Class, m.Findings, m.Known})
}

func checkCodes() []string {
	var codes []string
	for _, c := range align.Checks() {
		codes = append(codes, c.Code)
	}
	return codes
}

func listChecks(s *streams) error {
	t := &table{cols: []column{{head: "code"}, {head: "up to"}, {head: "looks for", least: 30}}}
	for _, c := range align.Checks() {
		t.add(c.Code, string(c.Severity), c.Title)
	}
	return t.write(s.out, s.width)
}

// explainCheck says what a check goes by: the user's own figures where she has
// set some.
func explainCheck(s *streams, code, moves string) error {
	c, ok := align.Explain(code)
	if !ok {
		return usage("'onphrase check --list' lists them", "there is no check %q", code)
	}
	known, err := catalog(s, moves)
	if err != nil {
		return err
	}
	d := details{width: s.width}
	d.title(c.Code)
	d.line("looks for", "%s", c.Title)
	d.line("up to", "%s", c.Severity)
	d.line("why", "%s", c.Why)
	d.line("source", "%s", c.Source)
	label := "figures"
	for _, text := range c.Details(known) {
		d.line(label, "%s", text)
		label = ""
	}
	_, err = io.WriteString(s.out, d.String())
	return err
}
