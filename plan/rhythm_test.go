package plan_test

import (
	"testing"

	"onphrase/plan"
)

func TestParseRhythm(t *testing.T) {
	for _, c := range []struct {
		in, out string
		counts  int
	}{
		{"1-1", "1-1", 2}, {"2-2", "2-2", 4}, {"4-4", "4-4", 8}, {"3-1", "3-1", 4}, {"1-3", "1-3", 4},
		{"2-2-2-2", "2-2-2-2", 8}, {"2-1-2-1", "2-1-2-1", 6}, {"2-0-2-0", "2-2", 4}, {"3-1-1-0", "3-1-1-0", 5},
		{"pulse", "pulse", 1}, {"Pulses", "pulse", 1}, {"singles", "1-1", 2},
		{"2–2", "2-2", 4}, {"2 − 2", "2-2", 4}, {"“4—4”", "4-4", 8}, {"02-02", "2-2", 4}, {"16-16", "16-16", 32},
	} {
		r, err := plan.ParseRhythm(c.in)
		if err != nil {
			t.Errorf("%q: %v", c.in, err)
			continue
		}
		if r.String() != c.out || r.Counts() != c.counts {
			t.Errorf("%q reads as %s of %d counts, want %s of %d", c.in, r, r.Counts(), c.out, c.counts)
		}
	}
}

func TestParseRhythmRefusesWhatHasTwoMeanings(t *testing.T) {
	for _, s := range []string{"", "2", "2-count", "2 count", "two counts", "double", "doubles", "slow", "2-2-2", "0-1",
		"17-1", "1.5-1.5", "-2-2", "2-", "super slow", "2 down 2 up"} {
		if r, err := plan.ParseRhythm(s); err == nil {
			t.Errorf("%q reads as %s", s, r)
		}
	}
	_, err := plan.ParseRhythm("2-count")
	const want = `"2-count" has two meanings (2-2 (2 down 2 up, 4 counts a rep) or 1-1 (1 down 1 up, 2 counts a rep)?)`
	if err == nil || err.Error() != want {
		t.Errorf("got %v\nwant %s", err, want)
	}
}

// The price of a rhythm: counts of 1, 8, 16 and 24 repetitions, and how many
// fill a phrase of 32. Arithmetic that any instructor can check on her fingers.
func TestRhythmPrice(t *testing.T) {
	for _, c := range []struct {
		rhythm                                  string
		one, perPhrase, eight, sixteen, two4rep int
	}{
		{"pulse", 1, 32, 8, 16, 24},
		{"1-1", 2, 16, 16, 32, 48},
		{"2-2", 4, 8, 32, 64, 96},
		{"3-1", 4, 8, 32, 64, 96},
		{"1-3", 4, 8, 32, 64, 96},
		{"4-4", 8, 4, 64, 128, 192},
		{"2-2-2-2", 8, 4, 64, 128, 192},
	} {
		r, err := plan.ParseRhythm(c.rhythm)
		if err != nil {
			t.Fatal(err)
		}
		got := [5]int{r.Counts(), 32 / r.Counts(), plan.Reps{N: 8, Rhythm: r}.Counts(), plan.Reps{N: 16, Rhythm: r}.Counts(),
			plan.Reps{N: 24, Rhythm: r}.Counts()}
		if want := [5]int{c.one, c.perPhrase, c.eight, c.sixteen, c.two4rep}; got != want {
			t.Errorf("%s: %v, want %v", c.rhythm, got, want)
		}
	}
}

// Hand-worked sets, by the numbers of the project's check values.
func TestSetCounts(t *testing.T) {
	for _, c := range []struct {
		name, item string
		counts     int
	}{
		{"E2: 24 reps = 8 x 2-2 and 16 x 1-1", `- {set: squat, reps: "8 x 2-2, 16 x 1-1"}`, 64},
		{"E3: 24 singles", "- {set: squat, reps: 24 singles}", 48},
		{"E4: 8 x 4-4", "- {set: deadlift, reps: 8 x 4-4}", 64},
		{"E18: squat", "- {set: squat, reps: 16 x 1-1}", 32},
		{"E18: press", "- {set: overhead press, reps: 8 x 2-2}", 32},
		{"E18: row", "- {set: bent-over row, reps: 16×1–1}", 32},
		{"E18: curl", "- {set: biceps curl, reps: 4 x 4-4}", 32},
		{"both sides", `- {set: one-arm row, reps: "8 x 2-2", sides: both}`, 64},
		{"one side", `- {set: one-arm row, reps: "8 x 2-2", sides: left}`, 32},
		{"pulses", `- {set: squat, reps: "6 x 2-2, 8 pulses"}`, 32},
	} {
		set, ok := parseClean(t, []byte(inItem(c.item))).Parts[0].Items[0].Work.(plan.Set)
		if !ok || set.Counts() != c.counts {
			t.Errorf("%s: %d counts, want %d", c.name, set.Counts(), c.counts)
		}
	}
}

func TestBlockCounts(t *testing.T) {
	for _, c := range []struct {
		name, item string
		counts     int
	}{
		// Ref: Parker S., "Hold it right there!", Australian Fitness Network:
		// a block of 20 counts and a hold of 12.
		{"E16: 20 and a hold of 12", "- {block: A, moves: [{move: grapevine, counts: 20}, {move: march, counts: 12}]}", 32},
		{"E17: pyramid, the 8-8 pass", "- {block: A, moves: [{move: step touch, counts: 16}, {move: heel curl, counts: 16}]}",
			32},
		{"E17: pyramid, the 4-4 pass", "- {block: A, times: 2, moves: [{move: step touch, counts: 8}, {move: heel curl, counts: 8}]}", 32},
		{"E17: pyramid, the 2-2 pass", "- {block: A, times: 4, moves: [{move: step touch, counts: 4}, {move: heel curl, counts: 4}]}", 32},
		{"E17: pyramid, the 1-1 pass", "- {block: A, times: 8, moves: [{move: step touch, counts: 2}, {move: heel curl, counts: 2}]}", 32},
		{"half a phrase on both sides", "- {block: A, sides: both, moves: [{move: v-step, counts: 16}]}", 32},
		{"product: both sides, twice", "- {block: A, sides: both, times: 2, moves: [{move: march, counts: 32}]}", 128},
		{"010 is ten", "- {block: A, on: count, moves: [{move: march, counts: 010}]}", 10},
		{"a bridge of 16", "- {block: A, on: eight, moves: [{move: march, counts: 16}]}", 16},
	} {
		b, ok := parseClean(t, []byte(inItem(c.item))).Parts[0].Items[0].Work.(plan.Block)
		if !ok || b.Counts() != c.counts {
			t.Errorf("%s: %d counts, want %d", c.name, b.Counts(), c.counts)
		}
	}
}
