package reading

import (
	"math"
	"testing"
)

// A course against the plain sums that it saves.
func TestCourse(t *testing.T) {
	row := func(i int) []float32 { return []float32{float32(i), float32(i*i%7) + 1} }
	c := NewCourse(10, 20, 60, row)
	sum := func(from, to int) (x [2]float64) {
		for i := from; i < to; i++ {
			x[0], x[1] = x[0]+float64(row(i)[0]), x[1]+float64(row(i)[1])
		}
		return x
	}
	between := func(a, b float64) [2]float64 { // frame i reaches from i-0.5 to i+0.5
		u := c.until([]float64{a, b})
		return [2]float64{u[2] - u[0], u[3] - u[1]}
	}
	for _, w := range []struct {
		from, to float64
		want     [2]float64
	}{
		{2.95, 4.95, sum(30, 50)},
		{0, 9, sum(20, 60)}, // no more than there is
		{3, 3.05, [2]float64{0.5 * 30, 0.5 * float64(row(30)[1])}},
	} {
		if got := between(w.from, w.to); math.Abs(got[0]-w.want[0]) > 1e-9 || math.Abs(got[1]-w.want[1]) > 1e-9 {
			t.Errorf("from %v to %v s: %v, want %v", w.from, w.to, got, w.want)
		}
	}
	centred := NewCourse(10, 20, 60, row).Centred().until([]float64{0, 9})
	if math.Abs(centred[2]-centred[0]) > 1e-9 || math.Abs(centred[3]-centred[1]) > 1e-9 {
		t.Errorf("all of a centred course adds up to %v", centred[2:])
	}
}

// Two beats before and after a change of chord have nothing in common, those
// around the middle of a chord everything, and between the two half of one side
// is the same as the other.
func TestChanges(t *testing.T) {
	const edge = 0.5 / chordFPS // a frame begins half of one before its time
	c := chords(30, 1, 2)
	change := c.changes(c.until(row(1-edge, 0.5, 30)), 2)
	if len(change) != 28 {
		t.Fatalf("%d changes at 30 times, want one at all but the ends", len(change))
	}
	want := []float64{1, 1 - 1/math.Sqrt2, 0, 1 - 1/math.Sqrt2}
	for i, got := range change[1:26] { // at either end, less than two beats are compared
		if beat := i + 2; math.Abs(got-want[beat%4]) > 1e-9 {
			t.Errorf("beat %d of a chord: %.3f, want %.3f", beat%4+1, got, want[beat%4])
		}
	}
}

// A stretch without a sound, or shorter than a beat, has clues all the same.
func TestNoCourse(t *testing.T) {
	silence := NewCourse(chordFPS, 0, 400, func(int) []float32 { return make([]float32, 5) })
	for _, c := range []Course{{}, NewCourse(chordFPS, 7, 7, nil), silence, silence.Centred()} {
		for _, beats := range [][]float64{nil, {3}, {3, 3.5}, row(0, 0.5, 30)} {
			for i, v := range changeClues(placesOf(beats), []Course{c}) {
				if math.IsNaN(v) || math.IsInf(v, 0) {
					t.Fatalf("%d beats: clue %d is %v", len(beats), i, v)
				}
			}
		}
	}
}
