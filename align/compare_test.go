package align

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/plan"
)

const comparedClass = `onphrase: 1
class: T
parts:
  - part: One
    kind: mixed
    tracks: [a.mp3]
    do:
      - {block: A, sides: both, moves: [{move: march, counts: 32}]}
      - {set: squat, reps: 16 x 1-1}
      - {interval: jog, time: 30s}
      - {pause: water, time: 16 counts}
`

// The same class on a song of 128 and on one of 64 BPM with a bridge of 16
// counts behind its first phrase: everything takes twice as long (a count of
// 60/64 s instead of 60/128 s), and the second pass of the block waits for the
// phrase behind the bridge.
func TestCompare(t *testing.T) {
	c, problems := plan.Parse("class.yaml", []byte(comparedClass))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	was := Build(c, songs(song{file: "a.mp3", bpm: 128, duration: 200}))
	is := Build(c, songs(song{file: "a.mp3", bpm: 64, duration: 400}))
	got := Compare(was, is)
	if len(got.Parts) != 1 || len(got.Parts[0].Work) != 4 {
		t.Fatalf("%+v", got.Parts)
	}
	want := []Moved{
		{Kind: BlockRow, Item: "A", Was: Spell{Placed: true, Phrase: 1, Count: 1, Counts: 64, Seconds: 30},
			Is: Spell{Placed: true, Phrase: 1, Count: 1, Counts: 64, Seconds: 60}},
		{Kind: SetRow, Item: "squat", Reps: 16, Rhythm: "1-1",
			Was: Spell{Placed: true, ClassTime: 30, Phrase: 3, Count: 1, Counts: 32, Seconds: 15, PerRep: 0.938},
			Is:  Spell{Placed: true, ClassTime: 60, Phrase: 3, Count: 1, Counts: 32, Seconds: 30, PerRep: 1.875}},
		{Kind: IntervalRow, Item: "jog",
			Was: Spell{Placed: true, ClassTime: 45, Phrase: 4, Count: 1, Counts: 64, Seconds: 30},
			Is:  Spell{Placed: true, ClassTime: 90, Phrase: 4, Count: 1, Counts: 32, Seconds: 30}},
		{Kind: PauseRow, Item: "water",
			Was: Spell{Placed: true, ClassTime: 75, Phrase: 6, Count: 1, Counts: 16, Seconds: 7.5},
			Is:  Spell{Placed: true, ClassTime: 120, Phrase: 5, Count: 1, Counts: 16, Seconds: 15}},
	}
	for i := range want {
		m := got.Parts[0].Work[i]
		want[i].Was.Row, want[i].Is.Row = m.Was.Row, m.Is.Row
	}
	if diff := cmp.Diff(want, got.Parts[0].Work); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	// Singles at 128 BPM are too fast for a squat, at 64 BPM fine.
	if len(got.Gone) == 0 || got.Gone[0].Code != rhythmTooFast.Code {
		t.Errorf("gone: %+v", got.Gone)
	}
	for _, f := range append(got.Left, got.New...) {
		if f.Code == rhythmTooFast.Code {
			t.Errorf("not gone: %+v", f)
		}
	}
}

// A class compared with itself has not changed.
func TestCompareSame(t *testing.T) {
	c, _ := plan.Parse("class.yaml", []byte(comparedClass))
	m := Build(c, songs(song{file: "a.mp3", bpm: 128, duration: 200, phrases: "32 16 32 32 4 32 32 32"}))
	got := Compare(m, m)
	if len(got.Gone)+len(got.New) > 0 || len(got.Left) != len(m.Findings) {
		t.Errorf("%+v", got.Differences)
	}
	held := 0
	for _, w := range got.Parts[0].Work {
		held += w.Is.Held
		if w.Was != w.Is {
			t.Errorf("%+v", w)
		}
	}
	if held == 0 {
		t.Error("no hold at all on such a song")
	}
}
