package chart

import "slices"

// A ruler turns counts into seconds, for formats that say where tempo, pauses
// and metre change by the count.
type ruler struct {
	start  float64 // of count 0 [s]
	tempi  []change
	pauses []change // seconds that pass while the count stands still
	meters []change // counts in a bar, from a count that is a first one
}

// change is a value that holds from a count on.
type change struct{ beat, value float64 }

// time is when a count is [s]. A pause at the count itself is over by then if
// after is true.
func (r *ruler) time(beat float64, after bool) float64 {
	t, at, bpm := r.start, 0.0, r.tempi[0].value
	for _, c := range r.tempi {
		if c.beat >= beat {
			break
		}
		if c.beat > at {
			t += (c.beat - at) * 60 / bpm
			at = c.beat
		}
		bpm = c.value
	}
	t += (beat - at) * 60 / bpm
	for _, p := range r.pauses {
		if p.beat < beat || after && p.beat == beat {
			t += p.value
		}
	}
	return t
}

// tempo is the tempo from a count on [counts/min].
func (r *ruler) tempo(beat float64) float64 {
	bpm := r.tempi[0].value
	for _, c := range r.tempi {
		if c.beat <= beat {
			bpm = c.value
		}
	}
	return bpm
}

// anchors are a place for each change, and for count 0.
func (r *ruler) anchors() []Anchor {
	beats := []float64{0}
	for _, list := range [][]change{r.tempi, r.pauses, r.meters} {
		for _, c := range list {
			beats = append(beats, c.beat)
		}
	}
	slices.Sort(beats)
	beats = slices.Compact(beats)
	var out []Anchor
	for _, beat := range beats {
		whole := float64(int(beat))
		if whole < beat {
			whole++ // the next count, at the new tempo
		}
		period := 60 / r.tempo(beat)
		meter, count := r.bar(whole)
		out = append(out, Anchor{r.time(beat, true) + (whole-beat)*period, period, meter, count})
	}
	return out
}

// bar is the metre at a count, and which of the bar's counts it is, from 0.
func (r *ruler) bar(beat float64) (meter, count int) {
	last := change{0, 4}
	for _, m := range r.meters {
		if m.beat <= beat {
			last = m
		}
	}
	meter = max(1, int(last.value))
	return meter, mod(int(beat-last.beat), meter)
}
