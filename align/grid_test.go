package align

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/beat"
	"onphrase/plan"
)

func gridOf(s song, p plan.Part) *grid {
	t := s.track()
	return newGrid(&t, &p)
}

func (g *grid) lengths() []int {
	var out []int
	for _, p := range g.phrases {
		out = append(out, p.counts)
	}
	return out
}

func TestTaughtPhrases(t *testing.T) {
	for _, c := range []struct {
		name, phrases string
		pickup        int
		taught        plan.Taught
		want          []int // the pick-up first
	}{
		{"as heard", "32 32 4 32 60", 3, plan.AsHeard, []int{3, 32, 32, 4, 32, 60}},
		{"half: two phrases make one", "32 32 32 32", 0, plan.Half, []int{0, 32, 32}},
		{"half: one is left before a tag", "32 32 32 8 32 32", 0, plan.Half, []int{0, 32, 16, 4, 32}},
		{"half: an odd number of counts", "32 5 32 32", 3, plan.Half, []int{1, 16, 3, 32}},
		{"double: one phrase makes two", "32 32", 2, plan.Double, []int{4, 32, 32, 32, 32}},
		{"double: a bridge becomes whole", "32 16 4", 0, plan.Double, []int{0, 32, 32, 32, 8}},
	} {
		t.Run(c.name, func(t *testing.T) {
			total := c.pickup
			for _, n := range parseInts(c.phrases) {
				total += n
			}
			s := song{file: "a.mp3", bpm: 120, one: float64(c.pickup) * 0.5, pickup: c.pickup,
				duration: 0.5*float64(total) - 0.1, phrases: c.phrases}
			g := gridOf(s, plan.Part{Taught: c.taught})
			if diff := cmp.Diff(c.want, g.lengths()); diff != "" {
				t.Error(diff)
			}
			heard := s.track()
			for _, p := range g.phrases[1:] {
				if c.taught != plan.Double && !startsPhrase(heard, g.time(p.first)) {
					t.Errorf("count 1 at %.2f was not count 1 as heard", g.time(p.first))
				}
			}
			for i := 1; i < len(g.times); i++ {
				if g.times[i] <= g.times[i-1] {
					t.Errorf("count %d is not later than the one before", i)
				}
			}
		})
	}
}

func parseInts(s string) []int {
	var out []int
	n := 0
	for i, r := range s + " " {
		switch {
		case r == ' ' && i > 0 && s[i-1] != ' ':
			out, n = append(out, n), 0
		case r >= '0' && r <= '9':
			n = 10*n + int(r-'0')
		}
	}
	return out
}

func startsPhrase(t beat.Track, at float64) bool {
	for _, p := range t.Phrases {
		if p.Time == at {
			return true
		}
	}
	return false
}

func TestTempoTaught(t *testing.T) {
	s := song{file: "a.mp3", bpm: 128, duration: 200}
	for _, c := range []struct {
		name   string
		part   plan.Part
		bpm    float64
		speed  float64
		period float64 // as played [s]
	}{
		{"as heard", plan.Part{}, 128, 1, 60.0 / 128},
		{"half", plan.Part{Taught: plan.Half}, 64, 1, 60.0 / 64},
		{"double", plan.Part{Taught: plan.Double}, 256, 1, 60.0 / 256},
		{"played at 132", plan.Part{BPM: 132}, 128, 1.03125, 60.0 / 132},
		{"half, asked for in counts taught", plan.Part{Taught: plan.Half, BPM: 66}, 64, 1.03125, 60.0 / 66},
		{"half, asked for in beats heard", plan.Part{Taught: plan.Half, BPM: 132}, 64, 1.03125, 60.0 / 66},
	} {
		g := gridOf(s, c.part)
		near(t, c.name+": bpm", g.bpm, c.bpm, 1e-9)
		near(t, c.name+": speed", g.speed, c.speed, 1e-9)
		near(t, c.name+": period", (g.time(11)-g.time(10))/g.speed, c.period, 1e-9)
		near(t, c.name+": tempo", g.tempo(8, 16), g.bpm*g.speed, 1e-6)
	}
}

// Counts go on before the first and after the last at the tempo beside them.
func TestTimeBeyondMusic(t *testing.T) {
	g := gridOf(song{file: "a.mp3", bpm: 120, one: 2, duration: 100}, plan.Part{})
	near(t, "before", g.time(-4), 0, 1e-9)
	near(t, "after", g.time(g.end()+3), 101.5, 1e-9)
	if p := g.at(g.end() + 40); p.phrase == 0 || p.trust != 0 {
		t.Errorf("past the music: %+v", p)
	}
	for i := range 400 {
		if got := g.index(g.time(i)); got != i {
			t.Fatalf("index of the time of count %d is %d", i, got)
		}
	}
}

// A track without phrases still has counts: eights from count 1 of the bar.
func TestNoPhrases(t *testing.T) {
	tr := song{file: "a.mp3", bpm: 120, duration: 100, pickup: 2, one: 1}.track()
	tr.Phrases = nil
	g := newGrid(&tr, &plan.Part{})
	if g.phrases[0].counts != 2 || g.phrases[1].counts != beat.PhraseLen || g.phrases[1].trust != 0 {
		t.Errorf("phrases: %+v", g.phrases[:2])
	}
	m := Build(onePart(t, "", squats), map[string]beat.Track{"a.mp3": tr})
	found(t, m, "low-trust")
}
