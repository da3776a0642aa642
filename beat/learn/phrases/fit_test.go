package main

import (
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"onphrase/beat/bar"
	"onphrase/beat/phrase"
	"onphrase/beat/score"
	"onphrase/beat/spectral"
	"onphrase/beat/tone"
)

func TestClimb(t *testing.T) {
	top := climb([]float64{0, 0}, func(x []float64) []float64 { return []float64{-2 * (x[0] - 3), -8 * (x[1] + 1)} })
	if math.Abs(top[0]-3) > 0.02 || math.Abs(top[1]+1) > 0.02 {
		t.Errorf("the top is at 3, -1; climbed to %.3f", top)
	}
}

// Weights by which something was drawn are found again.
func TestLogistic(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	var list []signs
	for range 20000 {
		odds := 2 * r.NormFloat64()
		list = append(list, signs{[]float64{1, odds}, r.Float64() < 1/(1+math.Exp(-(-0.5+0.6*odds)))})
	}
	got := logistic(list)
	if math.Abs(got[0]+0.5) > 0.1 || math.Abs(got[1]-0.6) > 0.1 {
		t.Errorf("offset -0.5, slope 0.6; got %.2f", got)
	}
}

// What needs two things to be right gives back how far the second is to be
// trusted.
func TestProduct(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 3))
	var list []signs
	for range 40000 {
		start, odds := r.Float64(), 2*r.NormFloat64()
		bars := 1 / (1 + math.Exp(-(0.4 + 0.8*odds)))
		list = append(list, signs{[]float64{start, odds}, r.Float64() < start*bars})
	}
	if got := product(list); math.Abs(got[0]-0.4) > 0.1 || math.Abs(got[1]-0.8) > 0.1 {
		t.Errorf("offset 0.4, slope 0.8; got %.2f", got)
	}
}

// Trusts in count 1 made too sure by a known slope give it back.
func TestSureness(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	var list []claim
	chance := phrase.LogOdds(0.25)
	for range 20000 {
		odds := chance + 3*r.Float64()
		list = append(list, claim{1 / (1 + math.Exp(-odds)), r.Float64() < 1/(1+math.Exp(-(chance+0.7*(odds-chance))))})
	}
	if got := sureness(list); math.Abs(got-0.7) > 0.1 {
		t.Errorf("slope 0.7 against chance; got %.2f", got)
	}
}

// invented is a song in which the chord changes with the bar and nothing else
// tells count 1; its sections differ in sound.
func invented(seed uint64) *example {
	r := rand.New(rand.NewPCG(seed, 2))
	e := &example{sound: &bar.Sound{}}
	unit := func(n int) []float64 { x := make([]float64, tone.Classes); x[n%tone.Classes] = 1; return x }
	beat := 0
	for section := range 6 {
		counts := 32
		if section == 3 {
			counts = 16
		}
		e.phrases = append(e.phrases, score.Section{Time: float64(beat) / 2, Counts: counts})
		for range counts {
			e.beats, e.position = append(e.beats, float64(beat)/2), append(e.position, beat%4+1)
			onset := make([]float64, len(spectral.Ranges)*bar.Parts)
			for j := range onset {
				onset[j] = r.Float64()
			}
			level := []float64{float64(section%3) + 0.1*r.Float64()}
			e.sound.Onset, e.sound.Level = append(e.sound.Onset, onset), append(e.sound.Level, level)
			e.sound.Chroma, e.sound.Bass = append(e.sound.Chroma, unit(5*(beat/4))), append(e.sound.Bass, unit(0))
			beat++
		}
	}
	return e
}

// The fit finds by what the songs can be told: chords for the bars, sound for
// the phrases.
func TestFit(t *testing.T) {
	var songs []*example
	for seed := range uint64(12) {
		songs = append(songs, invented(seed))
	}
	w := fitBars(songs)
	for k := 1; k < bar.ClueCount; k++ {
		if k != 4 && math.Abs(w[k]) > w[0]/2 { // the arrangement changes with the bar too
			t.Errorf("bar clue %d weighs %.2f, the chords %.2f", k, w[k], w[0])
		}
	}
}

// What is taught with some songs is known of others: where the sound changes a
// phrase starts, elsewhere none does.
func TestTrain(t *testing.T) {
	var songs []*example
	for seed := range uint64(24) {
		songs = append(songs, invented(seed))
	}
	n := trainAll([][]lesson{lessons(songs[:20])}, 1, 2)
	for _, e := range songs[20:] {
		l := lessonOf(e)
		odds := make([]float64, len(l.known))
		for i, input := range n.Inputs(l.clues) {
			odds[i], _ = n.Odds(input)
		}
		for i, chance := range phrase.Chances(odds, false) {
			if (chance > 0.5) != (l.known[i] > 0) {
				t.Errorf("a phrase starts at bar %d with chance %.2f, known is %.0f", i, chance, l.known[i])
			}
		}
	}
}

// The gradient of a song is that of the likelihood of its list of phrases, by
// differences: log Z of what is known less log Z of all lists.
func TestTeach(t *testing.T) {
	l := lessonOf(invented(3))
	r := rand.New(rand.NewPCG(9, 9))
	inputs := phrase.InputCount(phrase.ClueCount)
	w := make([]float64, 2*inputs+1)
	for i := range w {
		w[i] = 0.1 * r.NormFloat64()
	}
	n := &phrase.Network{Floor: floors([]lesson{l})}
	l.inputs = n.Inputs(l.clues)
	likelihood := func() float64 {
		view(n, w, 1)
		odds, told := make([]float64, len(l.inputs)), make([]float64, len(l.inputs))
		for i, input := range l.inputs {
			odds[i], _ = n.Odds(input)
			told[i] = odds[i] + l.known[i]
		}
		return phrase.LogSum(told) - phrase.LogSum(odds)
	}
	view(n, w, 1)
	g := make([]float64, len(w))
	teach(n, l, g)
	for _, i := range []int{3, inputs - 1, inputs + 7, 2*inputs - 1, 2 * inputs} {
		const step = 1e-4
		was := w[i]
		w[i] = was + step
		up := likelihood()
		w[i] = was - step
		down := likelihood()
		w[i] = was
		if want := (up - down) / (2 * step); math.Abs(g[i]-want) > 1e-3*max(1, math.Abs(want)) {
			t.Errorf("weight %d has gradient %.5f, by differences %.5f", i, g[i], want)
		}
	}
}

// What a manifest gives to measurement alone is not learnt from.
func TestAllowed(t *testing.T) {
	file := filepath.Join(t.TempDir(), "manifest.tsv")
	songs := func() []*example { return []*example{{name: "a"}, {name: "b"}, {name: "c"}} }
	if all, err := allowed(songs(), file); err != nil || len(all) != 3 {
		t.Errorf("without a manifest %d songs of 3, %v", len(all), err)
	}
	if err := os.WriteFile(file, []byte("id\tuse\na\tmeasure\nb\tlearn\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if some, err := allowed(songs(), file); err != nil || len(some) != 1 || some[0].name != "b" {
		t.Errorf("%d songs, %v; want b alone", len(some), err)
	}
	if err := os.WriteFile(file, []byte("id\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := allowed(songs(), file); err == nil {
		t.Error("a manifest that says nothing of use is taken")
	}
}

// Together, networks give the mean of their log-odds.
func TestTogether(t *testing.T) {
	var songs []*example
	for seed := range uint64(4) {
		songs = append(songs, invented(seed))
	}
	all := lessons(songs)
	floor := floors(all)
	a, b := train(all, floor, 1, 1), train(all, floor, 2, 2)
	both := together([]*phrase.Network{a, b})
	for _, input := range a.Inputs(all[0].clues) {
		x, _ := a.Odds(input)
		y, _ := b.Odds(input)
		if z, _ := both.Odds(input); math.Abs(z-(x+y)/2) > 1e-9 {
			t.Fatalf("%.3f and %.3f make %.3f", x, y, z)
		}
	}
}
