package beat

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"onphrase/beat/grid"
)

// A free passage within a piece is told apart from the rest, with its own times.
func TestLoose(t *testing.T) {
	strength := func(from, to int) []float64 { // heard well but from count to count
		x := make([]float64, 60)
		for k := range x {
			if x[k] = 0.9; k >= from && k < to {
				x[k] = 0.1
			}
		}
		return x
	}
	played := part{Grid: grid.Grid{Period: 0.5}}
	for k := range 60 {
		played.Beats = append(played.Beats, 10+0.5*float64(k))
	}
	machine := played
	machine.Lines = []grid.Line{{To: 60, Period: 0.5}}
	cut := played // in the break, so that its sides do not agree
	cut.Lines = []grid.Line{{To: 30, Period: 0.5}, {From: 30, To: 60, Period: 0.5}}
	hits := make([]grid.Hit, 60) // nothing sounds
	for _, c := range []struct {
		name     string
		part     part
		strength []float64
		want     [][2]float64
	}{
		{"free intro", played, strength(0, 20), [][2]float64{{10, 20}}},
		{"free middle", played, strength(20, 40), [][2]float64{{20, 30}}},
		{"free end", played, strength(40, 60), [][2]float64{{30, 40}}},
		{"a fill", played, strength(20, 26), nil},
		{"a break in music on a grid", machine, strength(20, 40), nil},
		{"a break between two grids", cut, strength(20, 40), [][2]float64{{20, 30}}},
		{"none", played, strength(0, 0), nil},
	} {
		within := cmpopts.EquateApprox(0, 1.1) // [s]: two counts, certainty is averaged
		if diff := cmp.Diff(c.want, c.part.loose(c.strength, hits), within); diff != "" {
			t.Errorf("%s: %s", c.name, diff)
		}
	}
	for k, t := range played.Beats { // people play softly, but on the counts
		hits[k] = grid.Hit{Time: t + 0.008*float64(k%3-1), Weight: 0.5}
	}
	if got := played.loose(strength(20, 40), hits); len(got) > 0 {
		t.Errorf("attacks on the counts: %v, want none", got)
	}
}

// What the ear hears half as well as usual is in doubt only where the counts
// before and after do not agree.
func TestLooseWhereSidesDisagree(t *testing.T) {
	for _, late := range []float64{0, 0.2} { // of the second side [s]
		p := part{Grid: grid.Grid{Period: 0.5}}
		strength := make([]float64, 80)
		for k := range strength {
			strength[k] = 0.9
			if k >= 30 && k < 50 {
				strength[k] = 0.38
			}
			p.Beats = append(p.Beats, 0.5*float64(k)+late*min(1, max(0, float64(k-30)/20)))
		}
		if got := p.loose(strength, make([]grid.Hit, 80)); (len(got) > 0) != (late > 0) {
			t.Errorf("second side late by %v s: %v", late, got)
		}
	}
}
