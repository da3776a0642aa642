package edit

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/plan"
)

// class is a file of one part with a list of items, written from the first
// column.
func class(items string) string {
	return "onphrase: 1\nclass: Test # our own\nparts:\n  - part: One\n    tracks: [a.mp3]   # the only one\n    do:\n" +
		items
}

func reps(t *testing.T, text string) []plan.Reps {
	t.Helper()
	c := parse(t, class("      - {set: squat, reps: \""+text+"\"}\n"))
	return c.Parts[0].Items[0].Work.(plan.Set).Reps
}

func parse(t *testing.T, src string) *plan.Class {
	t.Helper()
	c, problems := plan.Parse("class.yaml", []byte(src))
	for _, p := range problems {
		t.Errorf("%s\n%s", p.In("class.yaml"), src)
	}
	return c
}

func TestApply(t *testing.T) {
	tests := []struct {
		name, src string
		change    func(t *testing.T, c *plan.Class) []Change
		want      string
	}{
		{"reps in a flow mapping, quotes kept",
			class("      - {set: squat, reps: '4 × 4-4, 8 x 2-2', cue: \"it's {here}\"} # low\n"),
			func(t *testing.T, c *plan.Class) []Change { return []Change{setReps(t, c, 0, "4 x 4-4, 12 x 2-2")} },
			class("      - {set: squat, reps: '4 × 4-4, 12 × 2-2', cue: \"it's {here}\"} # low\n")},
		{"a second rhythm needs quotes in a flow mapping", class("      - {set: squat, reps: 8 x 2-2, weight: heavy}\n"),
			func(t *testing.T, c *plan.Class) []Change { return []Change{setReps(t, c, 0, "2 x 4-4, 6 x 2-2")} },
			class("      - {set: squat, reps: \"2 x 4-4, 6 x 2-2\", weight: heavy}\n")},
		{"and none in a block mapping", class("      - set: squat\n        reps: 8 x 2-2 # many\n        weight: heavy\n"),
			func(t *testing.T, c *plan.Class) []Change {
				return []Change{setReps(t, c, 0, "2 x 4-4, 6 x 2-2"), SetOn{c.Parts[0].Items[0].Pos, plan.OnPhrase}}
			},
			class("      - set: squat\n        reps: 2 x 4-4, 6 x 2-2 # many\n        weight: heavy\n        on: phrase\n")},
		{"on in a flow mapping over two lines", class("      - {set: squat, # {low\n         reps: 8 x 2-2,\n        }\n"),
			func(_ *testing.T, c *plan.Class) []Change {
				return []Change{SetOn{c.Parts[0].Items[0].Pos, plan.OnPhrase}}
			},
			class("      - {set: squat, # {low\n         reps: 8 x 2-2, on: phrase,\n        }\n")},
		{"on that is there already", class("      - {pause: water, time: 30s, on: clock}\n"),
			func(_ *testing.T, c *plan.Class) []Change {
				return []Change{SetOn{c.Parts[0].Items[0].Pos, plan.OnEight}}
			},
			class("      - {pause: water, time: 30s, on: eight}\n")},
		{"a pause above the comments of its item",
			class("      - {pause: water, time: 30s}\n\n      # low\n      -\n        set: squat\n        reps: 8 x 2-2\n"),
			func(_ *testing.T, c *plan.Class) []Change {
				return []Change{AddPause{c.Parts[0].Items[1].Pos, "hold", plan.Length{Counts: 16}, plan.OnCount}}
			},
			class("      - {pause: water, time: 30s}\n\n      - {pause: hold, time: 2 eights, on: count}\n      # low\n      -\n        set: squat\n        reps: 8 x 2-2\n")},
		{"start and tempo behind what is there", class("      - {pause: water, time: 30s}"),
			func(_ *testing.T, c *plan.Class) []Change {
				return []Change{SetStart{c.Parts[0].Pos, 3}, SetBPM{c.Parts[0].Pos, 126}}
			},
			strings.Replace(class("      - {pause: water, time: 30s}"), "# the only one\n",
				"# the only one\n    start: phrase 3\n    bpm: 126\n", 1)},
		{"start in its place", strings.Replace(class("      - {pause: water, time: 30s}\n"), "    do:",
			"    start: \"phrase 2\" # late\n    do:", 1),
			func(_ *testing.T, c *plan.Class) []Change { return []Change{SetStart{c.Parts[0].Pos, 12}} },
			strings.Replace(class("      - {pause: water, time: 30s}\n"), "    do:", "    start: \"phrase 12\" # late\n    do:",
				1)},
		{"two items change places with what belongs to them", class("      # deep\n      - {set: squat, reps: 8 x 2-2} # one\n\n      # long\n      - set: deadlift\n        reps: 8 x 2-2"),
			func(t *testing.T, c *plan.Class) []Change {
				it := c.Parts[0].Items
				return []Change{
					Swap{it[0].Pos, it[1].Pos}, setReps(t, c, 0, "4 x 2-2"), SetOn{it[1].Pos, plan.OnPhrase},
					AddPause{it[0].Pos, "hold", plan.Length{Counts: 8}, ""},
				}
			},
			class("      # long\n      - set: deadlift\n        reps: 8 x 2-2\n        on: phrase\n\n      - {pause: hold, time: 8 counts}\n      # deep\n      - {set: squat, reps: 4 x 2-2} # one")},
		{"everything in one line", "onphrase: 1\nclass: T\nparts: [{part: One, tracks: [a.mp3], do: [{set: squat, reps: 8 x 2-2}, {pause: water, time: 30s}]}]\n",
			func(_ *testing.T, c *plan.Class) []Change {
				it := c.Parts[0].Items
				return []Change{SetStart{c.Parts[0].Pos, 2}, Swap{it[0].Pos, it[1].Pos},
					AddPause{it[1].Pos, "hold", plan.Length{Counts: 8}, ""}, SetTime{it[1].Pos, plan.Length{Seconds: 20}}}
			},
			"onphrase: 1\nclass: T\nparts: [{part: One, tracks: [a.mp3], start: phrase 2, do: [{pause: hold, time: 8 counts}, {pause: water, time: 20s}, {set: squat, reps: 8 x 2-2}]}]\n"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			for _, as := range []func(string) string{
				func(s string) string { return s },
				func(s string) string { return "\ufeff" + strings.ReplaceAll(s, "\n", "\r\n") },
			} {
				src, want := as(tt.src), as(tt.want)
				c := parse(t, src)
				got, err := Apply([]byte(src), tt.change(t, c))
				if err != nil {
					t.Fatal(err)
				}
				if diff := cmp.Diff(want, string(got)); diff != "" {
					t.Errorf("(-want +got):\n%s", diff)
				}
				parse(t, string(got))
			}
		})
	}
}

func setReps(t *testing.T, c *plan.Class, item int, text string) Change {
	it := c.Parts[0].Items[item]
	return SetReps{it.Pos, it.Work.(plan.Set).Reps, reps(t, text)}
}

// What cannot be changed in its place is refused, and nothing is changed.
func TestRefuses(t *testing.T) {
	src := class("      - set: squat\n        reps: >-\n          8 x\n          2-2\n      - {pause: water, time: 30s}\n      - {pause: rest, time: 30s}\n")
	c := parse(t, src)
	it := c.Parts[0].Items
	for name, changes := range map[string][]Change{
		"a value over several lines": {setReps(t, c, 0, "4 x 2-2")},
		"not neighbours":             {Swap{it[0].Pos, it[2].Pos}},
		"twice the same": {SetTime{it[1].Pos, plan.Length{Seconds: 20}},
			SetTime{it[1].Pos, plan.Length{Seconds: 25}}},
		"no such item":      {SetOn{plan.Pos{Line: 2, Col: 1}, plan.OnPhrase}},
		"a part is no item": {SetOn{c.Parts[0].Pos, plan.OnPhrase}},
	} {
		if out, err := Apply([]byte(src), changes); err == nil {
			t.Errorf("%s: no error but\n%s", name, out)
		} else if !strings.HasPrefix(err.Error(), "edit: ") {
			t.Errorf("%s: %v does not say where", name, err)
		}
	}
}
