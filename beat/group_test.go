package beat

import (
	"math"
	"testing"

	"onphrase/beat/grid"
)

// lineOf is a line of n counts from a time on [s].
func lineOf(from, period float64, n int) straight {
	s := straight{to: n}
	for k := range n {
		s.beats = append(s.beats, from+period*float64(k))
	}
	return s
}

// Lines beside each other belong together where all lie on the half counts of one
// comb; every song of a mix is looked at, not the longest alone.
func TestGrouped(t *testing.T) {
	all := []straight{
		lineOf(0, 0.5, 32), lineOf(16.25, 0.5, 32), // half a count late
		lineOf(33, 0.48, 64), // another tempo
		lineOf(64, 0.5, 100), lineOf(114.25, 0.5, 32), lineOf(130, 0.5, 32),
		lineOf(146.1, 0.5, 32), // a fifth of a count late
	}
	var got [][2]int
	for _, g := range grouped(all, 0, len(all)) {
		got = append(got, [2]int{g.first, g.last})
	}
	want := [][2]int{{0, 2}, {2, 3}, {3, 6}, {6, 7}}
	if len(got) != len(want) {
		t.Fatalf("groups %v, want %v", got, want)
	}
	for i := range want {
		if got[i] != want[i] {
			t.Errorf("groups %v, want %v", got, want)
		}
	}
}

func TestHalvesOfAComb(t *testing.T) {
	comb := grid.CombOf(lineOf(1, 0.5, 64).beats)
	if got := majority(comb, append(lineOf(1, 0.5, 9).beats,
		lineOf(6.25, 0.5, 4).beats...)); math.Abs(got-math.Log(2)) > 1e-9 {
		t.Errorf("9 counts against 4: %v, want log 10/5", got)
	}
	row := rowOn(comb, 1, 0.9, 3.1)
	if len(row) != 4 || math.Abs(row[0]-1.25) > 1e-9 || math.Abs(row[3]-2.75) > 1e-9 {
		t.Errorf("off-beats %v", row)
	}
	if row := rowOn(comb, 0, -3, 1.1); len(row) == 0 || row[0] < 0 {
		t.Errorf("counts before the first sample: %v", row)
	}
	near, far := []straight{lineOf(1, 0.5, 16), lineOf(9.25, 0.5, 16)},
		[]straight{lineOf(1, 0.5, 16), lineOf(15.25, 0.5, 16)}
	if parted(comb, near) || !parted(comb, far) {
		t.Errorf("parted %v without a break, %v by one", parted(comb, near), parted(comb, far))
	}
	if !oneHalf(comb, lineOf(1, 0.5, 16).beats) || oneHalf(comb, append(lineOf(1, 0.5, 4).beats, 3.25)) {
		t.Error("a jump by half a count is none, or the other way round")
	}
	if n := around(comb, lineOf(40.02, 0.5, 8).beats); n != 8 {
		t.Errorf("%d of 8 counts a little late are on the comb", n)
	}
	if n := around(comb, lineOf(40.1, 0.5, 8).beats); n != 0 {
		t.Errorf("%d of 8 counts a fifth late are on the comb", n)
	}
}
