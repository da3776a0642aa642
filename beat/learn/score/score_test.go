package score_test

import (
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"onphrase/beat/learn/score"
)

func TestCompose(t *testing.T) {
	for i, style := range score.All() {
		t.Run(style.Name, func(t *testing.T) {
			for seed := range uint64(8) {
				start := time.Now()
				song := score.Compose(seed+uint64(100*i), style, 60)
				if time.Since(start) > 5*time.Second {
					t.Fatal("takes too long")
				}
				if len(song.Beats) < 40 || len(song.Notes) < 40 {
					t.Errorf("seed %d: %d beats, %d notes in 60 s", seed, len(song.Beats), len(song.Notes))
				}
				for k, b := range song.Beats[1:] {
					before := song.Beats[k]
					if b.Time <= before.Time || b.InBar != before.InBar%style.Meter+1 {
						t.Fatalf("seed %d: beat %d is %v after %v", seed, k+1, b, before)
					}
				}
				for _, n := range song.Notes {
					if n.At < 0 || n.At > song.Length+12 || n.Len <= 0 || n.Level <= 0 || n.Level > 1.01 {
						t.Fatalf("seed %d: bad note %+v", seed, n)
					}
				}
			}
		})
	}
}

func TestComposeRepeats(t *testing.T) {
	a, b := score.Compose(5, score.Styles[0], 30), score.Compose(5, score.Styles[0], 30)
	if d := cmp.Diff(a, b); d != "" {
		t.Error("the same seed gives another song:\n", d)
	}
}
