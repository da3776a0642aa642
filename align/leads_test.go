package align

import (
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Which leg leads each move, worked out by hand from the parity of the
// switches (common practice, no source): a march has no switch, a step touch
// of 8 counts four, a repeater knee of 8 one.
func TestLeads(t *testing.T) {
	const moves = `moves: [{move: march, counts: 8}, {move: repeater knee, counts: 8}, {move: step touch, counts: 8}, {move: repeater knee, counts: 8}]}`
	const odd = `moves: [{move: step touch, counts: 16}, {move: repeater knee, counts: 8}, {move: march, counts: 8}]}`
	for _, c := range []struct {
		name  string
		items []string
		want  [][]string // the lead of each move, then of what follows
	}{
		{"two switches come back", []string{`{block: A, ` + moves}, [][]string{{"right", "right", "left", "left", "right"}}},
		{"one switch, twice", []string{`{block: A, times: 2, ` + odd},
			[][]string{{"right", "right", "left", "left"}, {"left", "left", "right", "right"}}},
		{"both sides", []string{`{block: A, sides: both, ` + odd},
			[][]string{{"right", "right", "left", "left"}, {"left", "left", "right", "right"}}},
		{"left only", []string{`{block: A, sides: left, ` + odd}, [][]string{{"left", "left", "right", "right"}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			var got [][]string
			for _, r := range work(Build(onePart(t, "", c.items...), songs(song{file: "a.mp3", bpm: 128, duration: 240}))) {
				var leads []string
				for _, s := range r.Moves {
					leads = append(leads, s.Lead)
				}
				got = append(got, append(leads, r.EndLead))
			}
			if diff := cmp.Diff(c.want, got); diff != "" {
				t.Error(diff)
			}
		})
	}
}
