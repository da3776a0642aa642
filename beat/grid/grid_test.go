package grid

import (
	"math"
	"math/rand/v2"
	"testing"
)

// played makes decoded beats and hits around a truth.
func played(truth func(k int) float64, n int, jitter float64, lost func(k int) bool) (beats []float64, hits []Hit) {
	r := rand.New(rand.NewPCG(1, 9))
	for k := range n {
		t := truth(k)
		beats = append(beats, t+0.01*r.NormFloat64())
		h := Hit{Time: t + jitter*r.NormFloat64(), Weight: 1}
		if lost(k) {
			h = Hit{Time: beats[k]}
		}
		hits = append(hits, h)
	}
	return beats, hits
}

func TestFitCarriesOneLineThroughABreak(t *testing.T) {
	truth := func(k int) float64 { return 0.4 + 0.46875*float64(k) } // 128 BPM
	beats, hits := played(truth, 200, 0.006, func(k int) bool { return k > 80 && k < 130 })
	g := Fit(beats, hits)
	if !g.Steady || math.Abs(60/g.Period-128) > 0.02 {
		t.Errorf("steady %v, %.3f BPM", g.Steady, 60/g.Period)
	}
	for k, b := range g.Beats {
		if math.Abs(b-truth(k)) > 0.003 {
			t.Fatalf("beat %d is off by %.1f ms", k, 1000*(b-truth(k)))
		}
	}
}

func TestFitFollowsPeople(t *testing.T) {
	truth := func(k int) float64 { return 0.5*float64(k) + 0.3*math.Sin(float64(k)/25) } // +-2.4 %
	beats, hits := played(truth, 200, 0.004, func(int) bool { return false })
	g := Fit(beats, hits)
	if g.Steady {
		t.Fatal("taken for a machine")
	}
	worst := 0.0
	for k, b := range g.Beats {
		worst = max(worst, math.Abs(b-truth(k)))
	}
	if worst > 0.015 {
		t.Errorf("a beat is off by %.1f ms", 1000*worst)
	}
}

func TestHitsFindTheAttack(t *testing.T) {
	fps := 344.53125
	energy := make([]float32, int(4*fps))
	for i := range energy {
		energy[i] = 1e-4
	}
	for _, at := range []float64{1, 2, 3} {
		for i := 0; i < 60; i++ {
			energy[int(at*fps)+i] += float32(math.Exp(-float64(i) / 15))
		}
	}
	hits := Hits([]float64{1.02, 1.5, 1.98, 3.03}, energy, fps)
	for i, want := range []float64{1, -1, 2, 3} {
		if want < 0 {
			if hits[i].Weight != 0 {
				t.Errorf("a hit where nothing sounds: %+v", hits[i])
			}
		} else if math.Abs(hits[i].Time-want) > 0.004 || hits[i].Weight == 0 {
			t.Errorf("hit %d: %+v, want it at %v", i, hits[i], want)
		}
	}
}

// A cut in the music, or a tempo that changes by less than a jump, begins
// another line within two bars.
func TestFitBeginsAnotherLineAtACut(t *testing.T) {
	for _, c := range []struct {
		name         string
		late, period float64 // of what follows the cut, and how late it comes [s]
	}{{"cut", 0.04, 0.5}, {"a little faster", 0, 0.49}} {
		truth := func(k int) float64 {
			if k < 100 {
				return 0.5 * float64(k)
			}
			return 50 + c.late + c.period*float64(k-100)
		}
		beats, hits := played(truth, 200, 0.004, func(int) bool { return false })
		g := Fit(beats, hits)
		if !g.Steady {
			t.Errorf("%s: not steady", c.name)
		}
		for k, b := range g.Beats {
			if math.Abs(b-truth(k)) > 0.005 && (k < 92 || k > 108) {
				t.Errorf("%s: beat %d is off by %.1f ms", c.name, k, 1000*(b-truth(k)))
			}
		}
	}
}

// People who play freely at the end do not pull the rest off its line.
func TestFitKeepsTheLineBesideFreePlaying(t *testing.T) {
	truth := func(k int) float64 {
		if k < 150 {
			return 0.5 * float64(k)
		}
		return 75 + 0.5*float64(k-150) + 0.0002*float64((k-150)*(k-150)) // slower and slower
	}
	beats, hits := played(truth, 200, 0.003, func(int) bool { return false })
	for k, b := range Fit(beats, hits).Beats {
		if math.Abs(b-truth(k)) > 0.02 {
			t.Errorf("beat %d is off by %.1f ms", k, 1000*(b-truth(k)))
		}
	}
}
