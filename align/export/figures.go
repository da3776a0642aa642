package export

import (
	"fmt"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// classFigure is a label and what it says.
type classFigure struct{ label, text string }

// classFigures says in a few lines what the whole class comes to. Lines with
// nothing to say are left out.
func classFigures(m *align.CountMap) []classFigure {
	s := m.Summary
	var out []classFigure
	add := func(label string, parts []string) {
		if len(parts) > 0 {
			out = append(out, classFigure{label, strings.Join(parts, ", ")})
		}
	}
	var shares, work, loads, kit []string
	for _, k := range s.Shares {
		if k.Seconds > 0 {
			shares = append(shares, fmt.Sprintf("%s %s (%.0f %%)", k.Kind, say.Clock(k.Seconds), 100*k.Share))
		}
	}
	for _, t := range s.Patterns {
		work = append(work, totalWords(t))
	}
	for _, t := range s.Loads {
		loads = append(loads, totalWords(align.Total{Name: t.Name, Reps: t.Reps, Seconds: t.Seconds}))
	}
	for _, k := range s.Kit {
		text := k.Item
		if len(k.Weights) > 0 {
			text += " (" + strings.Join(k.Weights, "; ") + ")"
		}
		kit = append(kit, text)
	}
	add("shares", shares)
	add("reps", work)
	if len(s.Loads) > 1 {
		add("load", loads)
	}
	if s.Landings > 0 {
		add("impact", []string{fmt.Sprintf("%s high, about %d hard landings", say.Clock(s.High), s.Landings)})
	}
	add("kit", kit)
	return out
}

// totalWords writes a total: "pull 32 (8 right, 8 left, 16 in turn) in 1:12".
func totalWords(t align.Total) string {
	text := fmt.Sprintf("%s %d", t.Name, t.Reps)
	if sides := t.Sides(); sides != "" {
		text += " (" + sides + ")"
	}
	if t.Seconds > 0 {
		text += " in " + say.Clock(t.Seconds)
	}
	return text
}

// roundsOf names the rounds that a row belongs to, the outermost first:
// "round 2 of 3", "Legs 1 of 2".
func roundsOf(r align.Row) []string {
	var out []string
	for _, n := range r.Rounds {
		name := n.Of
		if name == "" {
			name = "round"
		}
		if !n.Series {
			out = append(out, fmt.Sprintf("%s %d of %d", name, n.Round, n.Rounds))
		}
	}
	return out
}

// turnOf names the turn of a series that a row is: "3 of 8".
func turnOf(r align.Row) []string {
	for _, n := range r.Rounds {
		if n.Series && n.Of == r.Item {
			return []string{fmt.Sprintf("%d of %d", n.Round, n.Rounds)}
		}
	}
	return nil
}

// soFar is the running total after a set, "24 of 48 hinge reps so far", at the
// last row of the set and where the class has more than one.
func soFar(rows []align.Row, i int) []string {
	r := rows[i]
	if r.OfAll <= r.Reps || i+1 < len(rows) && rows[i+1].Item == r.Item && rows[i+1].Line == r.Line {
		return nil
	}
	return []string{fmt.Sprintf("%d of %d %s reps so far", r.SoFar, r.OfAll, r.Pattern)}
}
