package align

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The kit of a class is what is picked up, each thing with its weights.
func TestKit(t *testing.T) {
	tests := []struct {
		name  string
		items []string
		want  []Kit
	}{
		{"the same weight is the same thing", []string{`{set: squat, reps: 8 x 2-2, weight: heavy}`,
			`{set: deadlift, reps: 8 x 2-2, weight: heavy}`}, []Kit{{"barbell", []string{"heavy"}}}},
		{"the weight names the thing", []string{`{set: squat, reps: 8 x 2-2, weight: 12 kg bar}`,
			`{set: deadlift, reps: 8 x 2-2, weight: kettlebell 16 kg}`},
			[]Kit{{"barbell", []string{"12 kg bar"}}, {"kettlebell", []string{"kettlebell 16 kg"}}}},
		{"a pair is no bar", []string{`{set: deadlift to row, reps: 8 x 4-4, weight: 2 x 6 kg}`},
			[]Kit{{"dumbbells", []string{"2 x 6 kg"}}}},
		{"nothing says what it is", []string{`{set: squat, reps: 8 x 2-2, weight: 10 kg}`},
			[]Kit{{"weight", []string{"10 kg"}}}},
		{"what stands there has no weight", []string{`{set: step-up, reps: 8 x 2-2, sides: both, weight: 2 x 4 kg}`},
			[]Kit{{"step", []string{}}, {"dumbbells", []string{"2 x 4 kg"}}}},
		{"the mat", []string{`{set: chest press, reps: 8 x 2-2, weight: 2 x 4 kg}`},
			[]Kit{{"dumbbells", []string{"2 x 4 kg"}}, {"mat", []string{}}}},
	}
	for _, tt := range tests {
		m := Build(onePart(t, "", tt.items...), songs(song{file: "a.mp3", bpm: 120, duration: 300}))
		got := map[string][]string{}
		for _, k := range m.Summary.Kit {
			got[k.Item] = k.Weights
		}
		want := map[string][]string{}
		for _, k := range tt.want {
			want[k.Item] = k.Weights
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", tt.name, diff)
		}
	}
}

// Sets are added up by class of load; a weight in kilograms stands for itself.
// 8 x 2-2 are 32 counts, 16 s at 120 BPM.
func TestLoads(t *testing.T) {
	m := Build(onePart(t, "",
		`{set: squat, reps: 8 x 2-2, weight: Heavy bar}`, `{set: deadlift, reps: 8 x 2-2, weight: heavy}`,
		`{set: squat, reps: 8 x 2-2}`,
		`{set: biceps curl, reps: 8 x 2-2, weight: 2 x 5 kg}`,
		`{set: one-arm row, reps: 8 x 2-2, sides: both, weight: "moderate, 6 kg"}`,
		`{set: hammer curl, reps: 8 x 2-2}`,
	), songs(song{file: "a.mp3", bpm: 120, duration: 300}))
	want := []Total{
		{Name: "heavy", Reps: 16, Seconds: 32}, {Name: "medium", Reps: 16, Right: 8, Left: 8, Seconds: 32},
		{Name: "body weight", Reps: 8, Seconds: 16}, {Name: "2 x 5 kg", Reps: 8, Seconds: 16},
		{Name: "not named", Reps: 8, Seconds: 16},
	}
	if diff := cmp.Diff(want, m.Summary.Loads); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}
