package main

import (
	"cmp"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"onphrase/cmd/internal/told"
	"onphrase/plan"
	"onphrase/plan/say"
)

const movesLong = `Lists the moves that a class file may name, with the limit of each: how many
seconds each way (down, up) of a repetition should last at full range. What is
too fast is likely hard to control.

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

// listMoves prints the moves under their classes of movement, those without a
// limit last.
func listMoves(s *streams, c *plan.Catalog) error {
	t := &table{cols: []column{
		{head: "move"},
		{head: "pattern"},
		{head: "counts", right: true},
		{head: "impact"},
		{head: "equipment", least: 12},
	}}
	moves := slices.Clone(c.Moves)
	slices.SortStableFunc(moves, func(a, b plan.Move) int {
		if (a.Class == "") != (b.Class == "") {
			return strings.Compare(b.Class, a.Class)
		}
		return cmp.Or(strings.Compare(a.Class, b.Class), strings.Compare(a.Name, b.Name))
	})
	for i, m := range moves {
		if i == 0 || m.Class != moves[i-1].Class {
			t.add("")
			t.add(classLine(c, m))
		}
		t.add("  "+m.Name, dash(m.Pattern), countsOf(m), string(m.Impact), dash(strings.Join(m.Equipment, ", ")))
	}
	if err := t.write(s.out, s.width); err != nil {
		return err
	}
	_, err := fmt.Fprintf(s.out, "\n%s. 'onphrase moves NAME' shows what a limit rests on,\n'onphrase check --explain tempo-outside-band' what tempo suits a kind of part,\n'onphrase help moves-file' how to set your own.\n", say.Many(len(moves), "move"))
	return err
}

// classLine heads a class of movement.
func classLine(c *plan.Catalog, m plan.Move) string {
	if m.Class == "" {
		return "without a limit"
	}
	l, ok := c.LimitFor(m)
	if !ok {
		return m.Class
	}
	return fmt.Sprintf("%s: fine from %g s each way, too fast below %g s (%s)", m.Class, l.Fine, l.TooFast, l.Evidence)
}

func dash(text string) string {
	if text == "" {
		return "–"
	}
	return text
}

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
		return told.Failed(hint, "the move %q is not in the catalogue", name)
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
	if m.OneSided {
		d.line("sides", "one at a time")
	}
	d.line("impact", "%s", m.Impact)
	if len(m.Equipment) > 0 {
		d.line("equipment", "%s", strings.Join(m.Equipment, ", "))
	}
	if l, ok := c.LimitFor(m); ok {
		d.line("limit", "fine from %g s each way, likely hard to control below %g s (full range)", l.Fine, l.TooFast)
		if l.TooSlow > 0 {
			d.line("", "above %g s each way it no longer swings", l.TooSlow)
		}
		for _, n := range rhythms {
			d.line("", "%d down %d up: fine up to %.0f BPM, too fast above %.0f BPM", n, n,
				math.Floor(60*float64(n)/l.Fine+1e-9), math.Floor(60*float64(n)/l.TooFast+1e-9))
		}
		half := l.In(plan.HalfRange)
		d.line("", "half range: fine from %.2f s, likely hard to control below %.2f s", half.Fine, half.TooFast)
		if l.Path > 0 {
			d.line("physics", "%s", peaks(l))
		}
		d.line("evidence", "%s", l.Evidence)
		d.line("source", "%s", l.Source)
	} else {
		d.line("limit", "none in the catalogue")
	}
	_, err := io.WriteString(s.out, d.String())
	return err
}

// usualBPM is the tempo that the physics of a move are shown at: strength
// classes are taught at 122 to 130.
const usualBPM = 130

// peaks says how hard each rhythm pulls at the weight.
func peaks(l plan.Limit) string {
	var at []string
	for _, n := range rhythms {
		at = append(at, fmt.Sprintf("%.2f at %d-%d", l.PeakLoad(float64(n)*60/usualBPM), n, n))
	}
	return fmt.Sprintf("peak acceleration over %g m (assumed), as a share of gravity, at %d BPM: %s; at 1 the weight floats at the top and momentum moves it",
		l.Path, usualBPM, strings.Join(at, ", "))
}

func leadOf(m plan.Move) string {
	if m.Switches {
		return "changes the lead"
	}
	return "keeps the lead"
}
