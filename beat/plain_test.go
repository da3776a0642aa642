package beat_test

import (
	"fmt"
	"io"
	"testing"

	"onphrase/beat"
	"onphrase/beat/learn/bare"
	"onphrase/beat/score"
)

// tape plays samples.
type tape struct{ x []float32 }

func (t *tape) Rate() int     { return bare.Rate }
func (t *tape) Channels() int { return 1 }
func (t *tape) Read(p []float32) (int, error) {
	if len(t.x) == 0 {
		return 0, io.EOF
	}
	n := copy(p, t.x)
	t.x = t.x[n:]
	return n, nil
}

func eights(n int) []bare.Phrase {
	var out []bare.Phrase
	for range n {
		out = append(out, bare.Phrase{Counts: 32})
	}
	return out
}

func TestPlainTry(t *testing.T) {
	for i := range 12 {
		s := bare.Song{Seed: uint64(i), BPM: 112 + 4*float64(i), Groove: bare.Grooves[i%2], Phrases: eights(8 + i%5), Chords: [][]int{{0, 5, 3, 4}}, Crash: true, Fill: 4, Melody: [][]bare.Sound{{{0, 1, 4}}}}
		for j := range s.Phrases {
			s.Phrases[j].Out = []int{bare.Melody}
		}
		truth := s.Truth()
		track, err := beat.Analyze(&tape{s.Render()})
		if err != nil {
			t.Fatal(err)
		}
		var want, found []score.Section
		for k, b := range truth.Starts {
			want = append(want, score.Section{Time: truth.Beats[b], Counts: truth.Lengths[k]})
		}
		line := ""
		for _, p := range track.Phrases {
			found = append(found, score.Section{Time: p.Time, Counts: p.Counts})
			line += fmt.Sprintf(" %d@%.2f(%.2f)", p.Counts, (p.Time-truth.Beats[0])/s.Count(), p.Trust)
		}
		m := score.Phrases(want, found, truth.Beats)
		t.Logf("%d F %.2f:%s", i, m.F, line)
	}
}
