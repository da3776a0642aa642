package main

import (
	"encoding/json"
	"io"
	"slices"

	"github.com/spf13/cobra"

	"onphrase/align"
	"onphrase/align/export"
)

type checkOptions struct {
	classFlags
	path    string
	json    bool
	explain string
	list    bool
}

const checkLong = `Lays the class on its music and prints what does not fit or is likely hard to
control, each with its figures, its source and the smallest change that helps.

  fix    will go wrong in front of the class
  watch  try it out before you teach it
  note   good to know

The exit code is 3 when there is anything to fix. Findings are advice: the
instructor's qualification, the participants' clearance and local rules decide.`

func newCheckCmd(s *streams) *cobra.Command {
	o := &checkOptions{}
	cmd := &cobra.Command{
		Use:   "check CLASS",
		Short: "List what to fix before you teach the class",
		Long:  checkLong,
		Example: `  onphrase check class.yaml
  onphrase check --list
  onphrase check --explain rhythm-too-fast`,
		Args: func(cmd *cobra.Command, args []string) error {
			if err := oneOf(cmd, "json", "list", "explain"); err != nil {
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
	cmd.Flags().BoolVar(&o.list, "list", false, "list the checks that are made")
	cmd.Flags().StringVar(&o.explain, "explain", "", "say what the check with this `CODE` looks for, why, and after which source")
	cmd.ValidArgsFunction = classFiles
	complete(cmd, "explain", checkCodes()...)
	return cmd
}

func runCheck(cmd *cobra.Command, s *streams, o *checkOptions) error {
	m, err := o.build(cmd.Context(), s, o.path)
	if err != nil {
		return err
	}
	if o.json {
		err = writeFindingsJSON(s.out, m)
	} else {
		err = export.Findings(s.out, m, s.style(o.path))
	}
	if err == nil && toFix(m) {
		return said(exitFindings)
	}
	return err
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
	}{"onphrase.findings/1", m.Class, m.Findings})
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
