package beat_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"onphrase/beat"
	"onphrase/beat/decode"
)

const seconds, testRate = 40, 22050

func fill(f func(i int) float64) *clip {
	c := &clip{rate: testRate, channels: 1, samples: make([]float32, seconds*testRate)}
	for i := range c.samples {
		c.samples[i] = float32(f(i))
	}
	return c
}

// claps is applause: short bursts of noise at random times.
func claps(perSecond int) *clip {
	r := rand.New(rand.NewPCG(5, uint64(perSecond)))
	c := fill(func(int) float64 { return 0 })
	for range perSecond * seconds {
		at, length := r.IntN(len(c.samples)-1000), 200+r.IntN(800)
		for i := range length {
			c.samples[at+i] += float32(0.2 * r.NormFloat64() * math.Exp(-6*float64(i)/float64(length)))
		}
	}
	return c
}

func TestNoSteadyBeat(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	brown := 0.0
	for name, src := range map[string]beat.Source{
		"nothing":     &clip{rate: testRate, channels: 1},
		"a moment":    &clip{rate: testRate, channels: 1, samples: make([]float32, testRate/2)},
		"silence":     fill(func(int) float64 { return 0 }),
		"white noise": fill(func(int) float64 { return 0.2 * r.NormFloat64() }),
		"brown noise": fill(func(int) float64 { brown = 0.995*brown + 0.01*r.NormFloat64(); return brown }),
		"sine":        fill(func(i int) float64 { return 0.5 * math.Sin(2*math.Pi*440*float64(i)/testRate) }),
		"low sine":    fill(func(i int) float64 { return 0.5 * math.Sin(2*math.Pi*60*float64(i)/testRate) }),
		"few claps":   claps(10), "applause": claps(200),
	} {
		t.Run(name, func(t *testing.T) { wantNoBeat(t, src) })
	}
}

// A hundred sounds without a beat: at least 98 must be refused.
func TestNoSteadyBeatInAHundredSounds(t *testing.T) {
	kinds := map[string]func(r *rand.Rand) *clip{
		"noise": swells, "drone": drone, "applause": crowd, "drops": drops, "free notes": freely, "babble": babble,
		"waves":            waves,
		"chords at random": chordsAtRandom, "rustle": rustle, "glides": glides,
	}
	const each, allowed = 10, 2
	var found []string
	for name, make := range kinds {
		for seed := range uint64(each) {
			track := analyze(t, make(rand.New(rand.NewPCG(seed, 17))))
			if track.Problem == "" {
				found = append(found, fmt.Sprintf("%s %d: %d counts at %.0f BPM, trust %.2f", name, seed, len(track.Beats),
					track.BPM, track.Trust.Beat))
			}
			if track.Trust.Beat > 0.5 {
				t.Errorf("%s %d: trust %.2f", name, seed, track.Trust.Beat)
			}
		}
	}
	t.Logf("%d have a beat", len(found))
	if len(found) > allowed {
		t.Errorf("%d of %d sounds have a beat:\n%s", len(found), each*len(kinds), strings.Join(found, "\n"))
	}
}

func wantNoBeat(t *testing.T, src beat.Source) {
	t.Helper()
	track := analyze(t, src)
	if track.Problem != "no steady beat found" || len(track.Beats) > 0 || track.BPM != 0 {
		t.Errorf("found %d beats at %.1f BPM, trust %.2f, problem %q", len(track.Beats), track.BPM, track.Trust.Beat,
			track.Problem)
	}
}

func TestSpeechHasNoSteadyBeat(t *testing.T) {
	need(t, "espeak-ng", "espeak-ng")
	const text = `The class meets at nine in the morning, near the harbour. Please bring water, a towel and shoes for indoors.
		If it rains we go by the side door, where somebody will wait until ten past. After that the lift is locked!
		Questions are welcome; nobody has to shout. Last week we talked about posture, breathing, and how to fall.
		Today we will talk about shoes, floors, and the long walk home. Is there anything that you would like to add?`
	for _, voice := range []string{"en", "de", "es"} {
		file := filepath.Join(t.TempDir(), voice+".wav")
		if out, err := exec.Command("espeak-ng", "-v", voice, "-w", file, text).CombinedOutput(); err != nil {
			t.Fatalf("espeak-ng: %v: %s", err, out)
		}
		wantNoBeat(t, open(t, file))
	}
}

// need skips a test, loudly, where a program of a Debian package is missing.
func need(t *testing.T, program, debianPackage string) {
	t.Helper()
	if _, err := exec.LookPath(program); err != nil {
		t.Skipf("SKIPPED, NOTHING CHECKED: %s is not installed (Debian package %s)", program, debianPackage)
	}
}

func open(t *testing.T, file string) *decode.Stream {
	t.Helper()
	s, err := decode.Open(file, decode.Builtin)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { s.Close() })
	return s
}
