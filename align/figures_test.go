package align

import (
	"math"
	"slices"
	"testing"

	"onphrase/beat"
	"onphrase/plan"
)

// TestFiguresTwice works the figures of findings on random classes out a second
// time, from the rows of the map and the phrases of the tracks alone.
func TestFiguresTwice(t *testing.T) {
	seen := map[string]int{}
	forRandom(t, func(t *testing.T, c *plan.Class, tracks map[string]beat.Track) {
		c.Slot = []float64{180, 1800}[len(c.Parts)%2]
		m := Build(c, tracks)
		s := second{t, c, tracks, m}
		for _, f := range m.Findings {
			if again := s.checks()[f.Code]; again != nil && again(f) {
				seen[f.Code]++
			}
		}
	})
	for code := range (second{}).checks() {
		if seen[code] == 0 {
			t.Errorf("%s was never held against a second computation", code)
		}
	}
	t.Log(seen)
}

// second is the second computation.
type second struct {
	*testing.T
	class  *plan.Class
	tracks map[string]beat.Track
	m      *CountMap
}

// checks answers whether a finding could be worked out again.
func (s second) checks() map[string]func(Finding) bool {
	return map[string]func(Finding) bool{
		"spare-counts": s.spare, "rhythm-too-fast": s.pace, "sides-unequal": s.sides, "over-slot": s.slot,
		"under-slot":  s.slot,
		"class-waits": s.waits, "landings": s.landed, "low-trust": s.trust, "interval-rounded": s.rounded,
	}
}

func (s second) row(f Finding) Row { return s.m.Rows[f.Row-1] }

// asHeard reports whether a row lies on counts as heard, so that the phrases of
// the track are those of the class.
func (s second) asHeard(r Row) bool {
	i := slices.IndexFunc(s.class.Parts, func(p plan.Part) bool { return p.Name == r.Part })
	return s.class.Parts[i].Taught == plan.AsHeard && r.Placed && !r.ByClock
}

// ends is the count, an index into the beats of the track, after a row.
func (s second) ends(r Row) int {
	at, best := 0, math.Inf(1)
	for i, b := range s.tracks[r.Track].Beats {
		if d := math.Abs(b - r.TrackTime); d < best {
			at, best = i, d
		}
	}
	return at + r.Counts
}

// boundary is where the phrase ends that a count lies in; ok is false on count 1
// of one, and past the phrases heard.
func (s second) boundary(r Row, count int) (end int, ok bool) {
	for _, p := range s.tracks[r.Track].Phrases {
		if count > p.Beat && count < p.Beat+p.Counts {
			return p.Beat + p.Counts, true
		}
	}
	return 0, false
}

func (s second) near(f Finding, figure string, want, off float64) {
	s.Helper()
	if got, ok := f.Figures[figure]; !ok || math.Abs(got-want) > off {
		s.Errorf("%s, row %d: %s is %v, worked out again %v", f.Code, f.Row, figure, got, want)
	}
}

// spare holds that the row ends inside a phrase, by as much as it says, and that
// what follows does not fill it.
func (s second) spare(f Finding) bool {
	r := s.row(f)
	if _, said := f.Figures["spare_seconds"]; !said || !s.asHeard(r) {
		return false
	}
	end := s.ends(r)
	border, inside := s.boundary(r, end)
	if !inside {
		return false // past the phrases heard
	}
	s.near(f, "spare_counts", float64(border-end), 0)
	if f.Row == len(s.m.Rows) {
		return true
	}
	next := s.m.Rows[f.Row]
	if next.Part != r.Part || next.Track != r.Track || !next.Kind.Work() {
		return true
	}
	last := f.Row // of the side of the item that follows
	for last+1 < len(s.m.Rows) && s.m.Rows[last+1].Line == next.Line && s.m.Rows[last+1].Side == next.Side &&
		s.m.Rows[last+1].Kind == next.Kind {
		last++
	}
	if s.ends(s.m.Rows[last]) <= border {
		s.Errorf("row %d: what follows ends on or before the end of the phrase", f.Row)
	}
	return true
}

// pace is judged by the time the row takes: so many counts in so many seconds.
func (s second) pace(f Finding) bool {
	r := s.row(f)
	if r.Counts < 32 {
		return false // single counts are a few milliseconds off
	}
	bpm := 60 * float64(r.Counts) / r.Seconds
	s.near(f, "bpm", bpm, 0.012*bpm)
	way := math.Min(float64(r.Rhythm.Down), float64(r.Rhythm.Up))
	if r.Rhythm.Pulse {
		way = 0.5
	}
	s.near(f, "counts_per_phase", way, 0)
	s.near(f, "seconds_per_phase", way*60/f.Figures["bpm"], 0.001)
	return true
}

func (s second) sides(f Finding) bool {
	counts := map[string]int{}
	r := s.row(f)
	set := func(r Row) string {
		for _, p := range s.class.Parts {
			for _, it := range p.Items {
				if it.Pos.Line == r.Line {
					switch w := it.Work.(type) {
					case plan.Set:
						return w.Move
					case plan.Interval:
						return w.Move
					}
				}
			}
		}
		return r.Item
	}
	for _, other := range s.m.Rows {
		if other.Kind.Work() && set(other) == set(r) {
			counts[other.Side] += other.Counts
		}
	}
	s.near(f, "right_counts", float64(counts["right"]), 0)
	s.near(f, "left_counts", float64(counts["left"]), 0)
	return true
}

func (s second) slot(f Finding) bool {
	sum := 0.0
	for _, r := range s.m.Rows {
		sum += r.Seconds
	}
	s.near(f, "length_seconds", sum, 0.001*float64(len(s.m.Rows)))
	return true
}

func (s second) waits(f Finding) bool {
	s.near(f, "seconds", s.row(f).Seconds, 0)
	return true
}

func (s second) landed(f Finding) bool {
	n := 0
	for _, r := range s.m.Rows {
		switch {
		case r.Kind == IntervalRow: // jogging: every count
			n += r.Counts / 2 * 2
		case r.Kind == SetRow && r.Pattern == "jump": // squat jumps: every repetition
			n += r.Reps
		}
	}
	s.near(f, "landings", float64(n), 0)
	return true
}

func (s second) trust(f Finding) bool {
	n, said := f.Figures["phrase"]
	if !said || !s.asHeard(s.row(f)) {
		return false
	}
	phrases := s.tracks[s.row(f).Track].Phrases
	if int(n) > len(phrases) {
		return false
	}
	p := phrases[int(n)-1]
	if p.Trust >= trusted {
		s.Errorf("phrase %v has a trust of %v", n, p.Trust)
	}
	s.near(f, "phrase_seconds", p.Time, 0.001)
	return true
}

// rounded adds up how far timed work is from the time written.
func (s second) rounded(f Finding) bool {
	sum := 0.0
	for _, r := range s.m.Rows {
		for _, p := range s.class.Parts {
			for _, it := range p.Items {
				if it.Pos.Line != r.Line || !r.Placed || r.Kind != IntervalRow && r.Kind != PauseRow {
					continue
				}
				asked := 0.0
				switch w := it.Work.(type) {
				case plan.Interval:
					asked = w.Time.Seconds
				case plan.Pause:
					asked = w.Time.Seconds
				}
				if asked > 0 && math.Abs(r.Seconds-asked) >= noticed {
					sum += r.Seconds - asked
				}
			}
		}
	}
	s.near(f, "error_seconds", sum, 0.01)
	return true
}
