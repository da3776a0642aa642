package main

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"onphrase/plan"
)

const movesLong = `Lists the moves that a class file may name, with the limit of each: how many
seconds one phase (one way) of a repetition should last at full range. "fine"
is enough at or above it; below "too fast" it is likely hard to control.

With a NAME it shows one move, what its limit rests on, and the fastest music
for each rhythm. Limits are advice drawn from the sources named: the
instructor's qualification, the participants' clearance and local rules decide.

Moves of your own go into a class file under moves:, or into a file of their own
that --moves names.`

func newMovesCmd(s *streams) *cobra.Command {
	var file string
	cmd := &cobra.Command{
		Use:   "moves [NAME]",
		Short: "Show the moves known, their limits and sources",
		Long:  movesLong,
		Example: `  onphrase moves
  onphrase moves "bent-over row"`,
		Args: takes(0, 1, "a move"),
		RunE: func(_ *cobra.Command, args []string) error {
			c, err := catalog(s, file)
			if err != nil {
				return err
			}
			if len(args) == 0 {
				return listMoves(s, c)
			}
			return showMove(s, c, args[0])
		},
		ValidArgsFunction: func(_ *cobra.Command, args []string, _ string) ([]string, cobra.ShellCompDirective) {
			if len(args) > 0 {
				return nil, cobra.ShellCompDirectiveNoFileComp
			}
			return moveNames(plan.Builtin()), cobra.ShellCompDirectiveNoFileComp
		},
	}
	registerMoves(cmd, &file)
	return cmd
}

func moveNames(c *plan.Catalog) []string {
	var names []string
	for _, m := range c.Moves {
		names = append(names, m.Name)
	}
	slices.Sort(names)
	return names
}

// listMoves prints a table of the moves by class of movement.
func listMoves(s *streams, c *plan.Catalog) error {
	t := &table{cols: []column{
		{head: "move", least: 16},
		{head: "class"},
		{head: "pattern"},
		{head: "counts", right: true},
		{head: "impact"},
		{head: "fine", right: true},
		{head: "too fast", right: true},
		{head: "evidence"},
	}}
	moves := slices.Clone(c.Moves)
	slices.SortStableFunc(moves, func(a, b plan.Move) int {
		if (a.Class == "") != (b.Class == "") {
			return cmp.Compare(len(b.Class), 0) // those with a limit first
		}
		return cmp.Or(strings.Compare(a.Class, b.Class), strings.Compare(a.Name, b.Name))
	})
	for _, m := range moves {
		l, limited := c.LimitFor(m)
		if !limited {
			t.add(m.Name, dash(m.Class), dash(m.Pattern), countsOf(m), string(m.Impact), "–", "–", "–")
			continue
		}
		t.add(m.Name, m.Class, dash(m.Pattern), countsOf(m), string(m.Impact),
			seconds(l.Fine), seconds(l.TooFast), string(l.Evidence))
	}
	if err := t.write(s.out, s.width); err != nil {
		return err
	}
	_, err := fmt.Fprintf(s.out, "\n%s. 'onphrase moves NAME' shows what a limit rests on.\n", plural(len(moves), "move"))
	return err
}

func dash(text string) string {
	if text == "" {
		return "–"
	}
	return text
}

func seconds(s float64) string { return fmt.Sprintf("%.2f s", s) }

func countsOf(m plan.Move) string {
	if m.Counts == 0 {
		return "–"
	}
	return fmt.Sprint(m.Counts)
}

// rhythms shown for a move, in counts a phase.
var rhythms = []int{1, 2, 4}

// showMove prints one move and what its limit rests on.
func showMove(s *streams, c *plan.Catalog, name string) error {
	m, ok := c.Find(name)
	if !ok {
		hint := "'onphrase moves' lists them"
		if near, ok := c.Nearest(name); ok {
			hint = near + "?"
		}
		return failed(hint, "the move %q is not in the catalogue", name)
	}
	d := details{width: s.width}
	d.title(m.Name)
	if len(m.Also) > 0 {
		d.line("also", "%s", strings.Join(m.Also, ", "))
	}
	d.line("class", "%s", dash(m.Class))
	d.line("pattern", "%s", dash(m.Pattern))
	if m.Counts > 0 {
		d.line("counts", "%d, %s", m.Counts, leadOf(m))
	}
	d.line("impact", "%s", m.Impact)
	if len(m.Equipment) > 0 {
		d.line("equipment", "%s", strings.Join(m.Equipment, ", "))
	}
	if l, ok := c.LimitFor(m); ok {
		d.line("limit", "fine at %.2f s a phase or more, likely hard to control below %.2f s (full range)", l.Fine, l.TooFast)
		for _, n := range rhythms {
			d.line("", "%d down %d up: fine up to %.0f BPM, too fast above %.0f BPM", n, n, 60*float64(n)/l.Fine, 60*float64(n)/l.TooFast)
		}
		d.line("evidence", "%s", l.Evidence)
		d.line("source", "%s", l.Source)
	} else {
		d.line("limit", "none in the catalogue")
	}
	_, err := io.WriteString(s.out, d.String())
	return err
}

func leadOf(m plan.Move) string {
	if m.Switches {
		return "changes the lead"
	}
	return "keeps the lead"
}
