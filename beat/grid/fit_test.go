package grid

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"
)

// anscombe are two of four sets of eleven points by x from 4 to 14: about a line,
// and on a parabola.
//
// Ref: Anscombe 1973, "Graphs in statistical analysis" (The American Statistician
// 27): both have the line y = 3.00 + 0.500x, the first with a residual sum of
// squares of 13.75 (data from memory).
var anscombe = [2][]float64{
	{4.26, 5.68, 7.24, 4.82, 6.95, 8.81, 8.04, 8.33, 10.84, 7.58, 9.96},
	{3.10, 4.74, 6.13, 7.26, 8.14, 8.77, 9.14, 9.26, 9.13, 8.74, 8.10},
}

const firstX = 4.0 // x of the first point

func hitsAt(times []float64, weights ...float64) []Hit {
	hits := make([]Hit, len(times))
	for k, t := range times {
		hits[k] = Hit{Time: t, Weight: 1}
		if len(weights) > 0 {
			hits[k].Weight = weights[k%len(weights)]
		}
	}
	return hits
}

func near(a, b, within float64) bool { return math.Abs(a-b) <= within }

func TestPublishedLine(t *testing.T) {
	for _, y := range anscombe {
		c := CombOf(y)
		if !near(2*c.Half, 0.5, 0.001) || !near(c.Start-firstX*2*c.Half, 3, 0.01) {
			t.Errorf("the line %.3f + %.4f x, want 3.00 + 0.500 x", c.Start-firstX*2*c.Half, 2*c.Half)
		}
		rest := sumUp(hitsAt(y)).misfit(0, len(y)) * 2 * jitter * jitter
		if !near(rest, 13.75, 0.05) {
			t.Errorf("residual sum of squares %.3f, want 13.75", rest)
		}
	}
}

func TestPublishedParabola(t *testing.T) {
	var s swarm
	for k, y := range anscombe[1] {
		s = append(s, point{firstX + float64(k), y, 1})
	}
	c := fitCubic(s)
	for _, p := range s {
		if !near(c.at(p.x), p.y, 0.005) { // the data are given to two places
			t.Errorf("at %v the cubic is %.3f, want %v", p.x, c.at(p.x), p.y)
		}
	}
	if !near(c[3], 0, 1e-3) {
		t.Errorf("a parabola has a cubic term of %v", c[3])
	}
}

// What weighs twice counts as two, what weighs nothing does not count: in every
// fit.
func TestWeights(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	var once, twice swarm
	for range 40 {
		p := point{2*r.Float64() - 1, r.NormFloat64(), 1}
		double := p
		double.w = 2
		once, twice = append(once, p, p), append(twice, double, point{r.Float64(), 100, 0})
	}
	if a, b := fitCubic(once), fitCubic(twice); !near(a[0], b[0], 1e-9) || !near(a[3], b[3], 1e-9) {
		t.Errorf("cubics %v, %v", a, b)
	}
	y := func(p point) float64 { return p.y }
	if a, b := once.square(y), twice.square(y); !near(a, b, 1e-9) {
		t.Errorf("mean squares %v, %v", a, b)
	}
	if a := (swarm{{0, 1, 3}, {0, 3, 1}}).square(y); !near(a, 3, 1e-9) { // (3·1 + 1·9) / 4
		t.Errorf("mean square %v, want 3", a)
	}
}

// The misfit of any piece is that of the best of lines, found by trying.
func TestMisfitIsThatOfTheBestLine(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	var times []float64
	for k := range 30 {
		times = append(times, 0.5*float64(k)+0.02*r.NormFloat64())
	}
	hits := hitsAt(times, 1, 0.3, 0, 0.7)
	s := sumUp(hits)
	rest := func(from, to int, l line) float64 {
		sum := 0.0
		for k := from; k < to; k++ {
			d := hits[k].Time - l.at(k)
			sum += hits[k].Weight * d * d / (2 * jitter * jitter)
		}
		return sum
	}
	for _, piece := range [][2]int{{0, 30}, {5, 17}, {12, 30}} {
		got := s.misfit(piece[0], piece[1])
		best := math.Inf(1)
		for i := -40; i <= 40; i++ {
			for j := -40; j <= 40; j++ {
				best = min(best, rest(piece[0], piece[1], line{0.0005 * float64(i), 0.5 + 0.00005*float64(j)}))
			}
		}
		if got > best || got < best-0.1 {
			t.Errorf("beats %v: misfit %.3f, by trying %.3f", piece, got, best)
		}
	}
}

// A heavy hit moves a beat more than a light one, by the share of its weight.
func TestFollowWeighsHits(t *testing.T) {
	beats := make([]float64, 2*followOver+1)
	for k := range beats {
		beats[k] = 0.5 * float64(k)
	}
	moved := func(weight float64) float64 {
		hits := hitsAt(slices.Clone(beats))
		hits[followOver] = Hit{Time: beats[followOver] + 0.03, Weight: weight}
		return follow(beats, hits)[followOver] - beats[followOver]
	}
	// Around the middle the line is level in its neighbours, so that a beat moves by
	// the share of its hit's weight in the sum of the bell, 7 with all at 1.
	for _, weight := range []float64{1, 0.5, 0.2} {
		want := 0.03 * weight / (6 + weight)
		if got := moved(weight); !near(got, want, 1e-9) {
			t.Errorf("a hit of weight %v moves its beat by %.5f s, want %.5f", weight, got, want)
		}
	}
	if got, want := moved(0), 0.03*restWeight/(6+restWeight); !near(got, want, 1e-9) {
		t.Errorf("where no hit is found the decoded time moves the beat by %.5f s, want %.5f", got, want)
	}
}

// Wild hits do not move a line; beyond tukey they count nothing.
func TestFitLineIgnoresWildHits(t *testing.T) {
	var times []float64
	for k := range 40 {
		times = append(times, 1+0.5*float64(k))
	}
	hits := hitsAt(times)
	for k := 3; k < 40; k += 5 {
		hits[k].Time += tukey * 1.01
	}
	l := fitLine(hits)
	if !near(l.Start, 1, 1e-6) || !near(l.Period, 0.5, 1e-7) {
		t.Errorf("line %+v", l)
	}
	hits[20] = Hit{Time: times[20] + tukey/2, Weight: 1} // within: it pulls, but with (1 - 1/4)² of its weight
	pulled := fitLine(hits).at(20) - times[20]
	full := (tukey / 2) / 33
	if pulled <= 0.3*full || pulled >= full {
		t.Errorf("a hit half-way out pulls by %.6f s, one of full weight would by %.6f", pulled, full)
	}
}

func TestJudge(t *testing.T) {
	var times []float64
	for k := range 10 {
		times = append(times, float64(k))
	}
	hits := hitsAt(times, 1, 0.5)
	hits[0].Time += 0.020 // near
	hits[1].Time += 0.030 // far, of weight 0.5
	hits[2].Weight = 0
	f := line{0, 1}.judge(hits)
	// Weights: 4 heavy ones of 1 and 5 light ones of 0.5 are left, one light one far.
	if f.hits != 9 || !near(f.near, 6/6.5, 1e-9) || !near(f.spread, math.Sqrt(0.020*0.020/6), 1e-9) {
		t.Errorf("%+v", f)
	}
	for _, c := range []struct {
		f    fit
		good bool
	}{
		{fit{near: 0.75, spread: 0.014, hits: 8}, true}, {fit{near: 0.74, spread: 0.014, hits: 8}, false},
		{fit{near: 0.75, spread: 0.0141, hits: 8}, false}, {fit{near: 1, hits: 7}, false},
	} {
		if c.f.good() != c.good {
			t.Errorf("%+v is good: %v", c.f, !c.good)
		}
	}
}

// Agreement falls with the square of the distance, to no less than minus the
// weight.
func TestAgreement(t *testing.T) {
	hits := []Hit{{1, 1}, {2 + jitter/2, 0.8}, {3 + jitter, 1}, {4 - 2*jitter, 0.5}, {5, 0}}
	want := []float64{1, 0.6, 0, -0.5, 0}
	for k, v := range Agreement([]float64{1, 2, 3, 4, 5}, hits) {
		if !near(v, want[k], 1e-9) {
			t.Errorf("hit %d agrees by %v, want %v", k, v, want[k])
		}
	}
}

// The weight of a hit is the rise of its log-energy, in units of a clear one.
func TestHitsWeighTheirRise(t *testing.T) {
	const fps = 100
	for _, rise := range []float64{0.5, 1, 2, 3.9, 6} {
		energy := make([]float32, 300)
		for i := range energy {
			energy[i] = 1
			if i >= 100 {
				energy[i] = float32(math.Exp(rise))
			}
		}
		hit := Hits([]float64{1.01}, energy, fps)[0]
		want := min(1, rise/mostRise)
		if rise < leastRise {
			want = 0
		}
		if !near(hit.Weight, want, 0.01) || want > 0 && !near(hit.Time, 1, 1e-9) {
			t.Errorf("a rise of %v: %+v, want weight %.2f at 1 s", rise, hit, want)
		}
	}
}
