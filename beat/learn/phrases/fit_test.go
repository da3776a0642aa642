package main

import (
	"math"
	"math/rand/v2"
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

// Trusts made too sure by a known offset and slope give these back.
func TestCalibrate(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 1))
	var list []claim
	for range 20000 {
		odds := 2 * r.NormFloat64()
		p := 1 / (1 + math.Exp(-odds))
		list = append(list, claim{p, r.Float64() < 1/(1+math.Exp(-(-0.5+0.6*odds)))})
	}
	got := calibrate(list)
	if math.Abs(got[0]+0.5) > 0.1 || math.Abs(got[1]-0.6) > 0.1 {
		t.Errorf("offset -0.5, slope 0.6; got %.2f", got)
	}
	list = list[:0]
	chance := logOdds(0.25)
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
	v := fitPhrases(songs)
	const contrast = 7                  // of the sections
	for _, k := range []int{0, 8, 11} { // drums and chords, which say nothing here
		if math.Abs(v[k]) > v[contrast]/2 {
			t.Errorf("phrase clue %d weighs %.2f, the sound %.2f", k, v[k], v[contrast])
		}
	}
	if odds := v[phrase.ClueCount]; odds > -1 {
		t.Errorf("a bar as such has log-odds %.2f", odds)
	}
}
