package reading

import (
	"math"
	"slices"
	"testing"
)

const earFPS = 50.0

var wide = Limits{Shortest: 0.2, Longest: 2}

// hears is an ear that hears the given counts, each as strong as the list says
// in turn and half as strong a frame away, and every fourth as count 1.
func hears(seconds float64, counts []float64, strength ...float64) *Ear {
	e := &Ear{Beat: make([]float64, int(seconds*earFPS)), One: make([]float64, int(seconds*earFPS)), FPS: earFPS,
		Counts: counts}
	for i, t := range counts {
		f := int(math.Round(t * earFPS))
		for d, share := range []float64{1, 0.5} {
			for _, at := range []int{f - d, f + d} {
				if at < 0 || at >= len(e.Beat) {
					continue
				}
				e.Beat[at] = share * strength[i%len(strength)]
				if i%4 == 0 {
					e.One[at] = 0.9 * e.Beat[at]
				}
			}
		}
	}
	return e
}

func every(period float64) func(float64) float64 { return func(float64) float64 { return period } }

// The clues of the ear, each where it should be more than elsewhere.
func TestListen(t *testing.T) {
	e := hears(40, row(0, 0.5, 80), 0.9, 0.9)
	unequal := hears(40, row(0, 0.25, 160), 0.9, 0.4)
	wandering := hears(40, append(row(0, 0.5, 40), row(20, 0.75, 26)...), 0.9)
	heard := func(e *Ear, beats []float64) Clues {
		all := []Reading{{Beats: beats, Period: usual(beats), own: slices.Equal(beats, e.Counts)}}
		Listen(all, dance(), e)
		return all[0].Heard
	}
	on, off, half, double := heard(e, e.Counts), heard(e, row(0.25, 0.5, 79)), heard(e, row(0, 1, 40)),
		heard(e, row(0, 0.25, 160))
	strongWeak := heard(unequal, unequal.Counts)
	for _, c := range []struct {
		name       string
		at         int
		more, less Clues
	}{
		{"hears the beats", 0, on, off},
		{"hears half-way", 3, off, on},
		{"hears half-way of half the tempo", 3, half, on},
		{"every second stands out", 6, strongWeak, on},
		{"the counts explain what is heard", 9, on, half},
		{"fewer than all explain less", 9, on, double},
		{"the off-beat explains nothing", 9, half, off},
		{"the ones lie on beats", 10, on, off},
		{"shared with the ear's counts", 11, on, half},
		{"its own", 12, on, half},
		{"at one level", 13, on, heard(wandering, wandering.Counts)},
		{"faster", 14, double, on},
		{"further from the usual", 15, half, on},
	} {
		if c.more[c.at] < c.less[c.at]+0.05 {
			t.Errorf("%s: clue %d is %.2f, not above %.2f", c.name, c.at, c.more[c.at], c.less[c.at])
		}
	}
	if len(on)+1 != len(heardWeights) {
		t.Errorf("%d clues of the ear and one of the sound, %d weights", len(on), len(heardWeights))
	}
}

// The likelihood of a few counts, against the sum over all frames that it is.
//
// Ref: binary cross-entropy, with the targets of beat/learn/train.py: 1 on the
// count, falling to 0 two frames away.
func TestLikelihood(t *testing.T) {
	e := hears(10, row(1, 0.73, 10), 0.9, 0.3)
	for i := range e.Beat {
		e.Beat[i] = max(e.Beat[i], 0.05+0.2*math.Abs(math.Sin(float64(i))))
	}
	beats := row(1.011, 0.73, 9)
	from, to := int(beats[0]*earFPS)-1, int(beats[8]*earFPS)+2
	want := 0.0
	for i := from; i < to; i++ {
		y := 0.0
		for _, b := range beats {
			y = max(y, 1-math.Abs(float64(i)-b*earFPS)/2)
		}
		want += y*math.Log(e.Beat[i]) + (1-y)*math.Log(1-e.Beat[i])
	}
	want /= float64(to-from) / earFPS
	if got := e.hearing([]Reading{{Beats: beats}}).counts(beats); math.Abs(got-want) > 0.05*math.Abs(want) {
		t.Errorf("%.3f per second, want %.3f", got, want)
	}
}

// Half the ear's counts are right where it hears every second of them and the
// music is at half tempo; all are where it hears them alike.
func TestChooseByEar(t *testing.T) {
	for _, c := range []struct {
		name string
		ear  *Ear
		want float64 // period [s]
	}{
		{"strong and weak", hears(40, row(0, 0.25, 160), 0.9, 0.1), 0.5},
		{"weak and strong", hears(40, row(0.25, 0.25, 159), 0.1, 0.9), 0.5},
		{"alike, at the right tempo", hears(40, row(0, 0.5, 80), 0.9), 0.5},
		{"at two levels by turns", hears(40, append(row(0, 0.5, 40), row(20, 1, 20)...), 0.9), 0.5},
	} {
		all := []Reading{{Beats: row(0, 0.25, 160), Period: 0.25}, {Beats: row(0, 0.5, 80), Period: 0.5},
			{Beats: row(0.25, 0.5, 79), Period: 0.5}, {Beats: row(0, 1, 40), Period: 1}}
		all = append(all, c.ear.Own(wide)...)
		Listen(all, dance(), c.ear)
		all = Choose(all)
		if got := all[0]; math.Abs(got.Period-c.want) > 0.01 || steadiness(got.Beats, every(0.5)) < 0.95 {
			t.Errorf("%s: every %.2f s, odds %.2f, want every %.2f s", c.name, got.Period, got.Odds, c.want)
		}
		if len(all) < 2 {
			t.Errorf("%s: no rival is left", c.name)
		}
	}
}

func TestOwn(t *testing.T) {
	e := Ear{Counts: row(1, 0.5, 9)}
	own := e.Own(wide)
	for i, want := range [][]float64{row(1, 0.5, 9), row(1, 1, 5), row(1.5, 1, 4), row(1, 0.25, 17)} {
		if !slices.Equal(own[i].Beats, want) || math.Abs(own[i].Period-(want[1]-want[0])) > 1e-9 {
			t.Errorf("reading %d: every %v s, %v", i, own[i].Period, own[i].Beats)
		}
	}
	if got := e.Own(Limits{Shortest: 0.3, Longest: 0.9}); len(got) != 1 {
		t.Errorf("%d readings, want the counts alone: half and double are beyond the limits", len(got))
	}
	if (Ear{Counts: row(0, 0.5, 3)}).Own(wide) != nil {
		t.Error("three counts are no reading")
	}
}
