package fit

import (
	"fmt"
	"strings"
	"testing"

	"onphrase/align"
	"onphrase/beat"
	"onphrase/plan"
)

// BenchmarkDemo fits the demo class on the counts that its music was made
// from.
func BenchmarkDemo(b *testing.B) {
	j := demoJob(b)
	for b.Loop() {
		if _, err := Search(j); err != nil {
			b.Fatal(err)
		}
	}
}

// longJob is a class of forty parts, each of five items on a song with a tag
// and a bridge.
func longJob(tb testing.TB) Job {
	tb.Helper()
	const parts = 40
	var text strings.Builder
	text.WriteString("onphrase: 1\nclass: Long\nparts:\n")
	j := Job{File: "class.yaml", Known: plan.Builtin(), Tracks: map[string]beat.Track{}, Prices: Usual()}
	for n := range parts {
		file := fmt.Sprintf("%02d.mp3", n)
		j.Tracks[file] = song(file, 112+float64(n%20), 32, 32, 32, 4, 32, 32, 16, 32, 32, 32, 32, 32)
		fmt.Fprintf(&text, `  - part: Part %d
    kind: strength
    tracks: [%s]
    do:
      - {set: squat, reps: "4 x 4-4, %d x 2-2", weight: heavy}
      - {set: deadlift, reps: 8 x 4-4, weight: heavy}
      - {set: bent-over row, reps: "8 x 2-2, 12 x 1-1", weight: heavy}
      - {set: split squat, reps: 8 x 2-2, sides: both}
      - {pause: water, time: 20s}
`, n, file, 4+n%6)
	}
	j.Src = []byte(text.String())
	return j
}

// BenchmarkLongCheck reads a class of forty parts, lays it and checks it.
func BenchmarkLongCheck(b *testing.B) {
	j := longJob(b)
	for b.Loop() {
		c, problems := plan.Parse(j.File, j.Src)
		if m := align.Build(c, j.Tracks); len(problems) > 0 || len(m.Rows) == 0 {
			b.Fatal(problems)
		}
	}
}

// BenchmarkLongFit fits it.
func BenchmarkLongFit(b *testing.B) {
	j := longJob(b)
	for b.Loop() {
		if _, err := Search(j); err != nil {
			b.Fatal(err)
		}
	}
}
