package align

import "testing"

// A cue is spoken 4 or 8 counts early, but never on count 1 of what is being
// done: where that is short, one count later. Published advice runs from 2 to
// 8 counts; speaking "one" makes the cue late (a trade article on coaching
// faults).
func TestCueKeepsClearOfCountOne(t *testing.T) {
	for _, c := range []struct {
		name, before, next string
		want               int
	}{
		{"room for four", `{set: squat, reps: "2 x 2-2"}`, `{set: wide squat, reps: "8 x 2-2"}`, 4},
		{"other weights, 8 counts before", `{set: squat, reps: "2 x 2-2", weight: light}`,
			`{set: squat, reps: "8 x 2-2", weight: heavy}`, 7},
		{"other weights, 16 counts before", `{set: squat, reps: "4 x 2-2", weight: light}`,
			`{set: squat, reps: "8 x 2-2", weight: heavy}`, 8},
		{"four counts before", `{set: squat, reps: "4 x pulse"}`, `{set: squat, reps: "8 x 2-2", on: count}`, 3},
		{"two counts before", `{set: squat, reps: "2 x pulse"}`, `{set: squat, reps: "8 x 2-2", on: count}`, 2},
	} {
		m := Build(onePart(t, "", c.before, c.next), songs(song{file: "a.mp3", bpm: 120, one: 4, duration: 240}))
		r := work(m)[1]
		if r.CueCounts != c.want {
			t.Errorf("%s: %d counts early, want %d", c.name, r.CueCounts, c.want)
		}
		near(t, c.name, r.ClassTime-r.CueTime, float64(c.want)*0.5, thousandth)
	}
}
