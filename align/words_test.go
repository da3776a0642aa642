package align

import "testing"

func step(move string, counts int, with ...string) Step {
	return Step{Move: move, Counts: counts, With: with}
}

func TestSequence(t *testing.T) {
	for want, steps := range map[string][]Step{
		"march 8, mambo 8": {step("march", 8), step("mambo", 8)},
		"4 x (march 2, mambo 2)": {step("march", 2), step("mambo", 2), step("march", 2), step("mambo", 2),
			step("march", 2), step("mambo", 2), step("march", 2), step("mambo", 2)},
		"2 x (march 8)":               {step("march", 8), step("march", 8)},
		"march 8 with arms and turn":  {step("march", 8, "arms", "turn")},
		"march 8, march 8 with arms":  {step("march", 8), step("march", 8, "arms")},
		"march 8, mambo 8, march 8":   {step("march", 8), step("mambo", 8), step("march", 8)},
		"mambo 12, mambo 12, march 8": {step("mambo", 12), step("mambo", 12), step("march", 8)},
		"":                            nil,
	} {
		if got := Sequence(steps); got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}
