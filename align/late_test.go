package align

import (
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/beat"
	"onphrase/plan"
)

// A class at 128 BPM, where a phrase lasts 15 s: work of 1:00, 1:30 and 0:30 on
// whole phrases, then a cool-down of 1:00.
const lateClass = `
  - {part: Warm-up, kind: warm-up, tracks: [a.mp3], do: [{interval: march, time: 128 counts}]}
  - part: Legs
    kind: strength
    tracks: [a.mp3]
    do:
      - {set: squat, reps: "8 x 2-2"}
      - {set: lunge, reps: "8 x 2-2", sides: both}
      - {set: squat, reps: "4 x 4-4"}
  - part: Arms
    kind: strength
    tracks: [a.mp3]
    do:
      - {set: biceps curl, reps: "12 x 2-2"}
      - {set: triceps extension, reps: "4 x 2-2"}
      - {set: biceps curl, reps: "16 x 2-2"}
  - {part: End, kind: cool-down, tracks: [a.mp3], do: [{interval: chest stretch, time: 64 counts}, {interval: calf stretch, time: 64 counts}]}
`

func TestRunsLate(t *testing.T) {
	m := Build(classOf(t, lateClass), songs(song{file: "a.mp3", bpm: 128, duration: 300}))
	for _, c := range []struct {
		name string
		left float64
		want Late
	}{
		// 30 s for work: of Legs a squat (15 s), not one side of the lunges; of Arms
		// the first two, which share a phrase and fill two (30 s).
		{"work and cool-down", 90, Late{Left: 90, Work: 30, End: Stretch{9, 10, 60, 4}, From: []Way{
			{Part: 1, Do: Stretch{2, 2, 15, 1}, Drop: Stretch{First: 3, Last: 5}, Parts: []int{2}},
			{Part: 2, Do: Stretch{6, 7, 30, 2}, Drop: Stretch{First: 8, Last: 8}}}}},
		{"cool-down only", 62, Late{Left: 62, Work: 2, End: Stretch{9, 10, 60, 4}, From: []Way{
			{Part: 1, Parts: []int{1, 2}}, {Part: 2, Parts: []int{2}}}}},
		{"half of the cool-down", 40, Late{Left: 40, End: Stretch{9, 9, 30, 2}, From: []Way{
			{Part: 1, Parts: []int{1, 2}}, {Part: 2, Parts: []int{2}}}}},
		{"all that is left fits", 60 + 60 + 60, Late{Left: 180, Work: 120, End: Stretch{9, 10, 60, 4}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			if diff := cmp.Diff(c.want, m.RunsLate(c.left)); diff != "" {
				t.Error(diff)
			}
		})
	}
}

// Whatever is left: what is done fits into it, with the cool-down, and ends with
// a phrase.
func TestRunsLateFits(t *testing.T) {
	forRandom(t, func(t *testing.T, c *plan.Class, tracks map[string]beat.Track) {
		r := rand.New(rand.NewPCG(uint64(len(c.Parts)), 3))
		c.Parts[len(c.Parts)-1].Kind = plan.CoolDown
		m := Build(c, tracks)
		if len(m.Rows) == 0 {
			return
		}
		left := m.Length * r.Float64()
		l := m.RunsLate(left)
		for _, w := range l.From {
			if w.Do.Seconds+l.End.Seconds > left+0.01 {
				t.Errorf("%.1f s of work and %.1f s of cool-down in %.1f s", w.Do.Seconds, l.End.Seconds, left)
			}
			if last := w.Do.Last; last > 0 && last < len(m.Rows) {
				row, next := m.Rows[last-1], m.Rows[last]
				if next.Part == row.Part && next.Track == row.Track && next.Kind.Work() && next.Count != 1 {
					t.Errorf("row %d does not end with a phrase", last)
				}
			}
		}
	})
}
