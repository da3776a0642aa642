package plan

import (
	"fmt"
	"regexp"
	"strings"
	"unicode/utf8"
)

// Interval is timed work.
type Interval struct {
	Move  string
	Time  Length // on each of its sides
	Sides Sides

	Weight string // as of a set
}

func (Interval) work() {}

// series is work and rest in turn, so many times.
type series struct {
	times      int
	work, rest Length
}

// maxSeries bounds the turns of a series.
const maxSeries = 60

const seriesExample = "series: 8 x 20s/10s"

// readIntervals reads one interval, or a series of them with their rests.
func readIntervals(m *mapping, it Item, c *Catalog) []Item {
	m.knownMove("interval", it.Name, c, "counts: 2")
	m.head(&it)
	w := Interval{Move: it.Name, Weight: m.weight()}
	if !m.has("series") {
		w.Time = m.time("time: 30s, or " + seriesExample)
		w.Sides = word(m, "sides", Both, Right, Left)
		m.ask("series")
		m.r.total++
		it.Work = w
		return []Item{it}
	}
	n := m.take("series")
	s := read(m, "series", n, parseSeries)
	for _, key := range []string{"time", "sides"} {
		if v := m.take(key); v != nil {
			m.r.problem(v, fmt.Sprintf("%s and series do not go together", key), "keep one of them")
		}
	}
	if n == nil || s.times == 0 || !m.r.room(n, 2*s.times) {
		return nil
	}
	return s.items(it, w)
}

// items writes the series out: an interval and a pause for every turn.
func (s series) items(it Item, w Interval) []Item {
	var all []Item
	for n := range s.times {
		round := []Round{{Of: it.Name, N: n + 1, Last: s.times, Series: true}}
		work := it
		w.Time = s.work
		work.Work, work.Rounds = w, round
		rest := Item{Pos: it.Pos, Name: "rest", On: it.On, Work: Pause{Time: s.rest, Kind: Rest}, Rounds: round}
		all = append(all, work, rest)
		it.Setup, it.Cue = Length{}, "" // said once, set up once
	}
	return all
}

var turns = regexp.MustCompile(`^ *([0-9]{1,6}) *x *`)

// parseSeries reads "8 x 20s/10s": turns, work, rest.
func parseSeries(text string) (series, *fault) {
	head := turns.FindString(text)
	if head == "" {
		return series{}, &fault{msg: shown(strings.TrimSpace(text)) + " does not say how often", hint: "like 8 x 20s/10s"}
	}
	n := integer(turns.FindStringSubmatch(text)[1])
	if n < 1 || n > maxSeries {
		return series{}, &fault{msg: fmt.Sprintf("%d turns is out of range", n), hint: fmt.Sprintf("from 1 to %d", maxSeries)}
	}
	work, rest, ok := strings.Cut(text[len(head):], "/")
	if !ok {
		return series{}, &fault{msg: shown(strings.TrimSpace(text)) + " does not say how long the rest is",
			hint: fmt.Sprintf("work/rest, like %d x 20s/10s", n)}
	}
	s := series{times: n}
	var f *fault
	if s.work, f = parseLength(work); f != nil {
		return series{}, f.within(head, work)
	}
	if s.rest, f = parseLength(rest); f != nil {
		return series{}, f.within(head+work+"/", rest)
	}
	return s, nil
}

// within moves a fault found in a piece of text behind what stands before it.
func (f *fault) within(before, piece string) *fault {
	lead := len(piece) - len(strings.TrimLeft(piece, " "))
	f.at += utf8.RuneCountInString(before) + lead
	return f
}
