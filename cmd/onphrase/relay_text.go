package main

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// writeText shows a person what moves: part by part, item by item, then the
// findings and the way out.
func (o *relayOptions) writeText(s *streams, r exchanged) error {
	var b strings.Builder
	head := fmt.Sprintf("%s on other songs: %s", r.is.Class.Name,
		arrow(say.Clock(r.was.Map.Length), say.Clock(r.is.Map.Length)))
	if slot := r.is.Class.Slot; slot > 0 {
		head += " of " + say.Clock(slot)
	}
	fmt.Fprintf(&b, "%s\n%s\n", head, strings.Repeat("-", min(s.width, defaultWidth)))
	for _, p := range r.Parts {
		fmt.Fprintf(&b, "\n%s: %s\n", p.Is.Part, arrow(say.Clock(p.Was.Seconds), say.Clock(p.Is.Seconds)))
		for _, text := range songsOf(p) {
			if was, is, two := strings.Cut(text, " → "); two && say.Columns(text) > s.width-2 {
				text = was + "\n  → " + is
			}
			fmt.Fprintf(&b, "  %s\n", text)
		}
		if samePlaces(p) {
			b.WriteString("  nothing in it moves but the clock\n")
			continue
		}
		b.WriteByte('\n')
		if err := workOf(p).write(&b, s.width); err != nil {
			return err
		}
	}
	b.WriteString("\n" + o.outcome(s, r))
	_, err := s.out.Write([]byte(b.String()))
	return err
}

// songsOf lists the songs of a part before and after, with their tempo.
func songsOf(p align.PartMoved) []string {
	var all []string
	for i := range max(len(p.Was.Tracks), len(p.Is.Tracks)) {
		switch {
		case i >= len(p.Is.Tracks):
			all = append(all, fmt.Sprintf("%s → none", songName(p.Was.Tracks[i])))
		case i >= len(p.Was.Tracks):
			all = append(all, fmt.Sprintf("none → %s", songName(p.Is.Tracks[i])))
		default:
			was, is := p.Was.Tracks[i], p.Is.Tracks[i]
			if songName(was) == songName(is) {
				all = append(all, songName(is))
				continue
			}
			text := fmt.Sprintf("%s → %s", songName(was), songName(is))
			if was.Played > 0 && is.Played > 0 {
				text += fmt.Sprintf(" (%+.1f %%)", 100*(is.Played/was.Played-1))
			}
			all = append(all, text)
		}
	}
	return all
}

func songName(m align.Music) string {
	if m.Problem != "" {
		return fmt.Sprintf("%s (%s)", m.File, m.Problem)
	}
	return fmt.Sprintf("%s, %s BPM, from phrase %d", cmp.Or(m.Title, m.File), decimals(m.Played, 1), m.Phrase)
}

// samePlaces reports whether a part is as it was but for the time at which it
// begins.
func samePlaces(p align.PartMoved) bool {
	for _, m := range p.Work {
		was, is := m.Was, m.Is
		if arrow(decimals(was.Seconds, 1), decimals(is.Seconds, 1)) != decimals(is.Seconds, 1) {
			return false
		}
		was.Row, was.ClassTime, was.Seconds, was.PerRep = is.Row, is.ClassTime, is.Seconds, is.PerRep
		if was != is {
			return false
		}
	}
	return true
}

// workOf is the table of a part's items.
func workOf(p align.PartMoved) *table {
	t := &table{cols: []column{
		{head: "what", least: 8}, {head: "reps"}, {head: "time", right: true}, {head: "phrase", right: true},
		{head: "count", right: true},
		{head: "counts", right: true}, {head: "hold", right: true}, {head: "seconds", right: true},
		{head: "s a rep", right: true},
	}}
	for _, m := range p.Work {
		what, reps := m.Item, ""
		if m.Reps > 0 {
			reps = fmt.Sprintf("%d x %s", m.Reps, m.Rhythm)
		}
		if m.Side != "" {
			what += " " + m.Side
		}
		was, is := m.Was, m.Is
		t.add(what, reps, arrow(say.Clock(was.ClassTime), say.Clock(is.ClassTime)),
			arrow(spot(was, was.Phrase), spot(is, is.Phrase)), arrow(spot(was, was.Count), spot(is, is.Count)),
			arrow(spot(was, was.Counts), spot(is, is.Counts)), arrow(none(was.Held), none(is.Held)),
			arrow(decimals(was.Seconds, 1), decimals(is.Seconds, 1)), arrow(perRep(was), perRep(is)))
	}
	return t
}

// arrow writes a figure before and after, once where it is the same.
func arrow(was, is string) string {
	if was == is {
		return is
	}
	return was + "→" + is
}

// spot is a figure of a place, unknown without one.
func spot(s align.Spell, n int) string {
	if !s.Placed {
		return "?"
	}
	return strconv.Itoa(n)
}

func none(n int) string {
	if n == 0 {
		return "–"
	}
	return strconv.Itoa(n)
}

func perRep(s align.Spell) string {
	if s.PerRep == 0 {
		return ""
	}
	return decimals(s.PerRep, 2)
}

func decimals(v float64, n int) string { return strconv.FormatFloat(v, 'f', n, 64) }

// outcome is what fits on the new songs and what does not.
func (o *relayOptions) outcome(s *streams, r exchanged) string {
	var b strings.Builder
	group := func(head string, all []align.Finding, ways bool) {
		if len(all) > 0 {
			fmt.Fprintf(&b, "%s: %s.\n\n", head, found3(all))
			listFindings(&b, s.width, grave(all), ways)
		}
	}
	group("New on these songs", r.New, true)
	group("As before", r.Left, true)
	group("No more", r.Gone, false)
	switch {
	case r.way != nil:
		fmt.Fprintf(&b, "Smallest way out: %s, price %d; %s\n", say.Many(len(r.way.Changes), "change"), r.way.Price,
			outcome(*r.way))
		changeLines(&b, s.width, r.way.Changes)
	case len(grave(r.is.Map.Findings)) == 0:
		b.WriteString("It lands on these songs as it is.\n")
	}
	switch {
	case o.out == "":
		fmt.Fprintf(&b, "\nNothing is written. To write the class on these songs:\n  onphrase relay %s %s -o FILE\n",
			quoted(o.path), quoted(o.music))
	case r.way != nil:
		fmt.Fprintf(&b, "\nThe class on these songs is in %s.\nTo make these changes in it:\n  onphrase fit %s --write\n",
			o.out, quoted(o.out))
	default:
		fmt.Fprintf(&b, "\nThe class on these songs is in %s.\n", o.out)
	}
	return b.String()
}

// listFindings writes findings out, with their way out where it is wanted.
func listFindings(b *strings.Builder, width int, all []align.Finding, ways bool) {
	for _, f := range all {
		d := details{width: width}
		d.line(string(f.Severity), "%s, %s: %s", f.Code, orClass(f.Part), f.Message)
		if ways && f.Fix != "" {
			d.line("try", "%s", f.Fix)
		}
		b.WriteString(d.String())
	}
	if len(all) > 0 {
		b.WriteByte('\n')
	}
}
