package score_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/beat/learn/score"
)

// Sections follow each other without gaps from a count 1 on and hold whole
// bars; the same seed gives the same song.
func TestComposePhrased(t *testing.T) {
	for i, style := range score.Styles {
		seed := uint64(i)
		song, sections := score.ComposePhrased(seed, style, 90)
		if len(sections) < 2 {
			t.Errorf("%s: %d sections in 90 s", style.Name, len(sections))
			continue
		}
		at := sections[0].Beat
		for _, s := range sections {
			if s.Beat != at || s.Counts%style.Meter != 0 || song.Beats[s.Beat].InBar != 1 {
				t.Errorf("%s: section %+v should start at beat %d, on count 1", style.Name, s, at)
			}
			at += s.Counts
		}
		if at > len(song.Beats) {
			t.Errorf("%s: sections of %d counts, beats %d", style.Name, at, len(song.Beats))
		}
		again, _ := score.ComposePhrased(seed, style, 90)
		if d := cmp.Diff(song, again); d != "" {
			t.Errorf("%s: the same seed gives another song:\n%s", style.Name, d)
		}
	}
}
