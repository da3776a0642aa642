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
	if len(g.Lines) != 1 || g.Lines[0].To != 200 || math.Abs(60/g.Lines[0].Period-128) > 0.02 {
		t.Errorf("lines %v", g.Lines)
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
	if len(g.Lines) > 0 {
		t.Fatalf("taken for a machine: %v", g.Lines)
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
		if len(g.Lines) != 2 || g.Lines[0].To != g.Lines[1].From || !g.Lines[1].Step {
			t.Errorf("%s: lines %v", c.name, g.Lines)
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

// steps counts the lines that begin at once, and those of them that begin within
// two bars of a true step every so many beats.
func steps(g Grid, every int) (all, right int) {
	for _, l := range g.Lines {
		if l.Step {
			all++
			if off := (l.From+every/2)%every - every/2; every > 0 && -8 <= off && off <= 8 {
				right++
			}
		}
	}
	return all, right
}

// A step of the tempo begins another line, whatever its size; people who drift
// make none.
func TestStepsAndDrift(t *testing.T) {
	const n, every, tracks = 256, 64, 20
	whole := func(int) bool { return false }
	for _, jitter := range []float64{0.001, 0.004} {
		for _, step := range []float64{0.005, 0.01, 0.02, 0.04} {
			var times []float64
			at := 0.4
			for k := range n {
				times = append(times, at)
				at += 0.5 / (1 + step*float64(k/every%2))
			}
			beats, hits := played(func(k int) float64 { return times[k] }, n, jitter, whole)
			all, right := steps(Fit(beats, hits), every)
			if right != n/every-1 || all != right {
				t.Errorf("jitter %v, steps of %v: %d found, %d right, want %d", jitter, step, all, right, n/every-1)
			}
		}
	}
	for _, jitter := range []float64{0.001, 0.004, 0.008, 0.012} {
		for _, drift := range []float64{0.005, 0.01, 0.02, 0.03} {
			wrong := 0
			for seed := range tracks {
				times := wander(uint64(seed), drift, n)
				beats, hits := played(func(k int) float64 { return times[k] }, n, jitter, whole)
				all, _ := steps(Fit(beats, hits), n)
				wrong += all
			}
			if wrong > tracks/5 {
				t.Errorf("jitter %v, drift %v: %d steps in %d tracks", jitter, drift, wrong, tracks)
			}
		}
	}
}

// wander is beats whose tempo wanders by so much about 120, in waves of half a
// phrase to five phrases.
func wander(seed uint64, depth float64, n int) []float64 {
	r := rand.New(rand.NewPCG(seed, 7))
	var phase, wave [3]float64
	for i, w := range []float64{37, 71, 149} {
		phase[i], wave[i] = 2*math.Pi*r.Float64(), w*(0.8+0.4*r.Float64())
	}
	times := make([]float64, n)
	at := 0.4
	for k := range times {
		times[k] = at
		sum := 0.0
		for i := range wave {
			sum += math.Sin(2*math.Pi*float64(k)/wave[i] + phase[i])
		}
		at += 0.5 / (1 + depth*sum/3)
	}
	return times
}

// Attacks that keep to no count between two sides of one line are carried by
// it; where the sides do not agree, they are not.
func TestFitCarriesTheLineWhereBothSidesAgree(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 2))
	for _, late := range []float64{0, 0.25} { // of the second side [s]
		truth := func(k int) float64 {
			if k < 130 {
				return 0.5 * float64(k)
			}
			return 0.5*float64(k) + late
		}
		beats, hits := played(truth, 220, 0.003, func(int) bool { return false })
		for k := 90; k < 130; k++ {
			beats[k] += late * float64(k-90) / 40
			hits[k].Time = beats[k] + 0.09*(r.Float64()-0.5)
		}
		g := Fit(beats, hits)
		one := len(g.Lines) == 1 && g.Lines[0].To-g.Lines[0].From == 220
		if one != (late == 0) {
			t.Errorf("second side late by %v s: lines %v", late, g.Lines)
		}
		if late == 0 && math.Abs(g.Beats[110]-truth(110)) > 0.002 {
			t.Errorf("beat 110 is off by %.1f ms", 1000*(g.Beats[110]-truth(110)))
		}
	}
}
