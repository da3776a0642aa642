package align

import (
	"strings"
	"testing"

	"onphrase/plan"
)

// allCases lists the cases of every check.
func allCases() []checkCase {
	return append(classCases[:len(classCases):len(classCases)], checkCases...)
}

// built is the class of the case.
func (c checkCase) built(t *testing.T) *plan.Class {
	t.Helper()
	var class *plan.Class
	if c.class != "" {
		class = classOf(t, c.class)
	} else {
		class = onePart(t, c.head, c.items...)
	}
	class.Slot = c.slot
	return class
}

// parts writes a class of parts on a.mp3, each "name kind: item | item".
func parts(list ...string) string {
	var b strings.Builder
	for _, p := range list {
		head, items, _ := strings.Cut(p, ": ")
		name, kind, _ := strings.Cut(head, " ")
		b.WriteString("  - part: " + name + "\n    kind: " + kind + "\n    tracks: [a.mp3]\n    do:\n")
		for _, it := range strings.Split(items, " | ") {
			b.WriteString("      - {" + it + "}\n")
		}
	}
	return b.String()
}

// minutes is timed work without impact, so long.
func minutes(clock string) string { return `interval: jab, time: "` + clock + `", easier: slower` }

// wholeOf puts strength work into a class of twenty minutes more.
func wholeOf(items string) string { return parts("A strength: " + items + " | " + minutes("20:00")) }

var slow = []song{{file: "a.mp3", bpm: 120, duration: 3600}}

// long is music for a whole class.
var long = []song{{file: "a.mp3", bpm: 128, duration: 3600}}

func loud(a, b float64) []song {
	return []song{{file: "a.mp3", bpm: 128, duration: 60, loudness: a},
		{file: "b.mp3", bpm: 128, duration: 60, loudness: b}}
}

// classCases are the cases of the checks that look at the class as a whole,
// at its moves and at its sides.
var classCases = []checkCase{
	// Right from count 17, to the last count of the phrase; left fills the next one to its half.
	{code: "spare-counts", name: "right fills the phrase, left ends inside one", fires: Note,
		items: []string{`{pause: rest, time: 16 counts}`, `{set: one-arm row, reps: "4 x 2-2", sides: both}`},
		songs: tempo(128),
		says:  "one-arm row left ends 16 counts before the end of phrase 2"},
	{code: "spare-counts", name: "right fills the phrase after a setup",
		items: []string{`{set: squat, reps: "2 x 4-4"}`, `{set: one-arm row, reps: "2 x 2-2", sides: both, setup: 8 counts}`,
			`{set: squat, reps: "3 x 4-4"}`, `{set: squat, reps: "4 x 4-4"}`}, songs: tempo(128)},
	{code: "spare-counts", name: "left ends inside, the next runs over", fires: Watch,
		items: []string{`{pause: rest, time: 16 counts}`, `{set: one-arm row, reps: "4 x 2-2", sides: both}`, squats},
		songs: tempo(128),
		says:  "one-arm row left ends 16 counts before the end of phrase 2; squat starts on count 17 and runs over the phrase's end"},
	{code: "change-too-short", name: "several in a part", fires: Watch,
		items: []string{`{set: squat, reps: "8 x 4-4", weight: heavy}`, `{set: squat, reps: "8 x 4-4", weight: light}`,
			`{set: crunch, reps: "8 x 4-4"}`},
		songs: tempo(128), says: "2 changes have too little time; the first, squat after squat: no time to take light, usual are 8 counts",
		fix:  "setup: 8 counts or setup: 16 counts on these items, as many counts less before each; or fewer changes",
		want: map[string]float64{"changes": 2, "counts_missing": 24}},
	{code: "change-too-short", name: "stretches on the floor and anywhere",
		items: []string{`{interval: plank, time: 64 counts}`, `{interval: chest stretch, time: 64 counts}`,
			`{interval: spinal twist, time: 64 counts, sides: both}`}, songs: tempo(128)},
	{code: "change-too-short", name: "a burpee leads down", items: []string{`{interval: plank, time: 64 counts}`,
		`{interval: burpee, time: 64 counts}`, `{interval: jog, time: 64 counts}`, `{interval: inchworm, time: 64 counts}`,
		`{interval: plank, time: 64 counts}`}, songs: tempo(128)},
	// Before the first item of a part there is its lead-in: a time, not counts.
	{code: "change-too-short", name: "in a lead-in", fires: Watch,
		class: parts("One strength: set: squat, reps: 8 x 4-4", "Two core: set: crunch, reps: 8 x 2-2"),
		songs: []song{{file: "a.mp3", bpm: 128, one: 5, duration: 240}},
		says:  "crunch after squat: 5 s to get to the floor, usual are 16 counts"},
	{code: "change-too-short", name: "to other equipment", fires: Watch,
		items: []string{squats, `{set: biceps curl, reps: "8 x 2-2"}`}, songs: tempo(128),
		says: "no time to take the dumbbells"},
	{code: "change-too-short", name: "from the part before", fires: Watch,
		class: parts("One strength: set: squat, reps: 8 x 4-4", "Two core: set: crunch, reps: 8 x 2-2"), songs: tempo(128),
		says: "crunch after squat"},
	{code: "change-too-short", name: "less before it", fires: Watch,
		items: []string{`{set: squat, reps: "8 x 4-4", weight: heavy}`, `{set: squat, reps: "8 x 4-4", weight: light}`},
		songs: tempo(128),
		fix:   "setup: 8 counts, and 7 x 4-4 instead of 8 x 4-4 of squat before it"},
	{code: "change-too-short", name: "on and off the step", items: []string{`{block: A, moves: [{move: basic step, counts: 32}]}`, `{block: B, moves: [{move: march, counts: 32}]}`, `{repeat: A}`}, songs: tempo(128)},
	{code: "change-too-short", name: "one of the two in hand", items: []string{`{interval: squat to press, time: 30s, weight: 2 x 6 kg}`, `{set: one-arm row, reps: "8 x 2-2", sides: both, weight: 6 kg}`}, songs: tempo(128)},
	{code: "change-too-short", name: "in an interval", fires: Watch,
		items: []string{`{set: squat, reps: "8 x 4-4", weight: 2 x 6 kg}`,
			`{interval: kettlebell swing, time: 30s, weight: 12 kg}`}, songs: tempo(128), says: "take 12 kg"},
	{code: "change-too-short", name: "the same bar", items: []string{`{set: squat, reps: "8 x 4-4", weight: heavy}`,
		`{set: deadlift, reps: "8 x 4-4", weight: heavy}`}, songs: tempo(128)},

	// Stage 1 does the knee four times, back to where it began; stage 2 once.
	{code: "lead-uneven", name: "one stage of a build", fires: Note,
		items: []string{`{block: A, build: add-on, sides: both, moves: [{move: repeater knee, counts: 8}, {move: march, counts: 24}]}`},
		songs: tempo(128), says: "A, stage 1: ends on the leg it started on"},
	{code: "lead-uneven", name: "every stage comes round", items: []string{`{block: A, build: holding, sides: both, moves: [{move: repeater knee, counts: 8}, {move: march, counts: 24}]}`}, songs: tempo(128)},

	{code: "move-cut-off", name: "six counts of a grapevine", fires: Watch,
		items: []string{`{block: A, moves: [{move: march, counts: 26}, {move: grapevine, counts: 6}]}`}, songs: tempo(128),
		says: "A: 6 counts of grapevine, one of which takes 4", fix: "4 counts",
		want: map[string]float64{"counts": 6, "counts_per_rep": 4}},
	{code: "move-cut-off", name: "whole", items: []string{`{block: A, moves: [{move: march, counts: 24}, {move: grapevine, counts: 8}]}`}, songs: tempo(128)},

	{code: "side-not-named", name: "a row", fires: Watch,
		items: []string{`{set: one-arm row, reps: "16 x 2-2"}`, `{interval: side plank, time: 30s}`}, songs: tempo(128),
		says: "one-arm row, side plank work one side each", want: map[string]float64{"moves": 2}},
	{code: "side-not-named", name: "named", items: []string{`{set: one-arm row, reps: "16 x 2-2", sides: both}`,
		`{interval: side plank, time: 30s, sides: both}`}, songs: tempo(128)},

	{code: "odd-reps-in-turn", name: "fifteen lunges", fires: Note,
		items: []string{`{set: lunge, reps: "7 x 4-4, 8 x 2-2"}`}, songs: tempo(128),
		says: "15 reps in turn are 8 on one side and 7 on the other", fix: "14 or 16 reps"},
	{code: "odd-reps-in-turn", name: "sixteen", items: []string{`{set: lunge, reps: "8 x 4-4, 8 x 2-2"}`},
		songs: tempo(128)},
	{code: "odd-reps-in-turn", name: "one side", items: []string{`{set: lunge, reps: "15 x 2-2", sides: both}`},
		songs: tempo(128)},

	{code: "sides-unequal", name: "timed work", fires: Watch, items: []string{`{interval: side plank, time: 30s, sides: right}`}, songs: tempo(128), says: "side plank: 64 counts right, 0 counts left in the whole class"},

	{code: "patterns-uneven", name: "presses only", fires: Watch,
		class: wholeOf(`set: push-up, reps: 16 x 4-4 | set: bent-over row, reps: 8 x 2-2`), songs: slow,
		says: "push and pull: 1:04 and 0:16 under load (16 reps and 8 reps)", fix: "0:48 more of pull",
		want: map[string]float64{"first_seconds": 64, "second_seconds": 16, "first_reps": 16, "second_reps": 8}},
	{code: "patterns-uneven", name: "half as much again", fires: Note,
		class: wholeOf(`set: push-up, reps: 16 x 4-4 | set: bent-over row, reps: 10 x 4-4`), songs: slow,
		says: "1:04 and 0:40"},
	{code: "patterns-uneven", name: "squats only", fires: Note,
		class: wholeOf(`set: squat, reps: 8 x 4-4 | set: lunge, reps: 8 x 4-4`), songs: slow,
		says: "squat with lunge and hinge: 1:04 and 0:00"},
	{code: "patterns-uneven", name: "rests do not count", class: wholeOf(`set: push-up, reps: 8 x 4-0-4-8`), songs: slow},
	{code: "patterns-uneven", name: "even",
		class: wholeOf(`set: push-up, reps: 16 x 4-4 | set: bent-over row, reps: 16 x 4-4`), songs: slow},
	{code: "patterns-uneven", name: "a piece of a class", items: []string{`{set: push-up, reps: "16 x 4-4"}`},
		songs: tempo(120)},

	{code: "warm-up-steep", name: "jacks at once", fires: Watch,
		class: parts("Warm-up warm-up: interval: jumping jack, time: 30s | " + minutes("2:00")), songs: long,
		says: "jumping jack has high impact, 0:00 into the warm-up", fix: "first third (0:50)"},
	{code: "warm-up-steep", name: "in a block", fires: Watch, class: parts("Warm-up warm-up: block: A, times: 4, moves: [{move: march, counts: 16}, {move: jog, counts: 16}]"), songs: long, says: "jog has high impact"},
	{code: "warm-up-steep", name: "weights", fires: Watch, class: parts("Warm-up warm-up: set: squat, reps: 8 x 4-4, weight: heavy | " + minutes("3:00")), songs: long, says: "squat is done with heavy"},
	{code: "warm-up-steep", name: "full range", fires: Note, class: parts("Warm-up warm-up: set: squat, reps: 8 x 4-4 | " +
		minutes("3:00")), songs: long, says: "squat goes over its full range"},
	{code: "warm-up-steep", name: "half range", class: parts("Warm-up warm-up: set: squat, reps: 8 x 4-4, range: half | " +
		minutes("3:00")), songs: long},
	{code: "warm-up-steep", name: "later", class: parts("Warm-up warm-up: " + minutes("2:00") +
		" | interval: jumping jack, time: 30s"), songs: long},
	{code: "warm-up-steep", name: "not a warm-up", class: parts("Go cardio: interval: jumping jack, time: 30s"),
		songs: long},

	{code: "water-gap", name: "25 minutes", fires: Watch, class: parts("A cardio: " + minutes("25:00") +
		" | pause: water, time: 30s"), songs: long, says: "no water from 0:00 to 25:00", fix: "near 12:30",
		want: map[string]float64{"gap_seconds": 1500}},
	{code: "water-gap", name: "to the end", fires: Watch, class: parts("A cardio: pause: water, time: 30s | " +
		minutes("25:00")), songs: long, says: "no water from 0:30 to 25:30"},
	{code: "water-gap", name: "a break between", class: parts("A cardio: " + minutes("15:00") +
		" | pause: drinks, time: 30s | " + minutes("15:00")), songs: long},
	{code: "water-gap", name: "the stretch at the end",
		class: parts("A cardio: "+minutes("19:00"), "Z stretch: "+minutes("9:00")), songs: long},

	{code: "water-too-short", name: "15 s", fires: Note, items: []string{`{pause: water, time: 15s}`,
		`{pause: water, time: 15s}`}, songs: tempo(128), says: "water: 15 s, usual are 20s and more",
		want: map[string]float64{"times": 2}},
	{code: "water-too-short", name: "30 s", items: []string{`{pause: water, time: 30s}`, `{pause: get the bar, time: 5s}`},
		songs: tempo(128)},

	// Jacks are 2 counts with a landing on each: 30 s at 130 BPM are 64 counts, 64 landings.
	{code: "class-waits", name: "a long lead-in", fires: Watch, items: []string{squats},
		songs: []song{{file: "a.mp3", bpm: 120, one: 175.5, duration: 400}},
		says:  "a.mp3 plays for 2:56 before the first item", fix: "an earlier start",
		want: map[string]float64{"seconds": 175.5}},
	{code: "class-waits", name: "a lead-in of a phrase", head: "start: phrase 2", items: []string{squats},
		songs: tempo(128)},
	{code: "class-waits", name: "a setup that grew", fires: Note,
		items: []string{`{set: squat, reps: "7 x 4-4"}`, `{block: A, moves: [{move: march, counts: 32}]}`,
			`{set: deadlift, reps: "8 x 4-4", setup: 8 counts, on: phrase}`}, songs: tempo(128),
		says: "set up: deadlift: 32 counts instead of 8", want: map[string]float64{"counts_asked": 8, "counts": 32}},
	{code: "class-waits", name: "a setup as asked", items: []string{`{set: squat, reps: "7 x 4-4"}`,
		`{set: deadlift, reps: "8 x 4-4", setup: 8 counts}`}, songs: tempo(128)},
	{code: "long-without-rest", name: "600 squats", fires: Watch,
		items: []string{`{set: squat, weight: heavy, reps: "300 x 1-1, 300 x 1-1"}`},
		songs: []song{{file: "a.mp3", bpm: 120, duration: 1300}},
		says:  "squat: 10:00 of squat and 600 reps in one go (up to 3:00 with weights or 100 is usual)",
		want:  map[string]float64{"load_seconds": 600, "reps": 600}},
	{code: "long-without-rest", name: "three minutes with weights", fires: Watch,
		items: []string{`{set: squat, weight: heavy, reps: "45 x 4-4"}`}, songs: slow,
		want: map[string]float64{"load_seconds": 180}},
	{code: "long-without-rest", name: "with a rest in it", items: []string{`{set: squat, weight: heavy, reps: "24 x 4-4"}`,
		`{pause: rest, time: 10s}`, `{set: squat, weight: heavy, reps: "24 x 4-4"}`}, songs: slow},
	{code: "long-without-rest", name: "one side after the other",
		items: []string{`{set: one-arm row, weight: heavy, reps: "30 x 4-4", sides: both}`}, songs: slow},
	{code: "held-long", name: "a plank of four minutes", fires: Watch, items: []string{`{interval: plank, time: "4:00"}`},
		songs: slow, says: "plank for 4:00 without a break (up to 1:30 is usual)"},
	{code: "held-long", name: "a plank of a minute", items: []string{`{interval: plank, time: "1:00"}`}, songs: slow},
	{code: "part-missing", name: "18 minutes for a slot of 30", fires: Watch,
		class: parts("W warm-up: "+minutes("5:00"), "A cardio: "+minutes("13:00")), songs: long, slot: 1800,
		says: "is a cool-down"},
	{code: "part-order", name: "both ends wrong", fires: Watch,
		class: parts("A cardio: "+minutes("2:00"), "W warm-up: "+minutes("2:00"), "C cool-down: "+minutes("2:00"),
			"B cardio: "+minutes("2:00")), songs: long, says: "W is not the first part"},
	// Music below the band is what a fast rhythm needs: nobody is told to speed it up.
	{code: "tempo-outside-band", name: "slow music for singles", class: parts("A strength: set: squat, reps: 16 x 1-1"),
		songs: tempo(118)},
	{code: "tempo-outside-band", name: "slow music for slow work", fires: Note,
		class: parts("A strength: set: squat, reps: 8 x 4-4"), songs: tempo(118)},
	{code: "sides-unequal", name: "sides are both already", fires: Watch,
		items: []string{`{set: one-arm row, reps: "8 x 2-2", sides: right}`,
			`{set: one-arm row, reps: "8 x 2-2", sides: both}`},
		songs: tempo(128), fix: "32 counts more on the left"},
	{code: "landings", name: "two minutes of jacks", fires: Note,
		items: []string{`{interval: jumping jack, time: 128 counts}`}, songs: tempo(130), says: "about 128 hard landings",
		want: map[string]float64{"landings": 128, "items_without_easier": 1}},
	{code: "landings", name: "a squat jump is one in 4 counts",
		items: []string{`{interval: squat jump, time: 128 counts}`}, songs: tempo(130)},
	{code: "landings", name: "an easier version",
		items: []string{`{interval: jumping jack, time: 128 counts, easier: half jack}`}, songs: tempo(130)},
	// A skater lands once in two counts; a set lands as often as it says.
	{code: "landings", name: "skaters", items: []string{`{interval: skater, time: 128 counts}`}, songs: tempo(130)},
	{code: "landings", name: "sets of squat jumps", fires: Note, items: []string{`{set: squat jump, reps: "120 x 1-1"}`},
		songs: tempo(130), says: "about 120 hard landings"},
	{code: "landings", name: "slow squat jumps", items: []string{`{set: squat jump, reps: "60 x 2-2"}`},
		songs: tempo(130)},
	{code: "landings", name: "low", items: []string{`{interval: march, time: 256 counts}`}, songs: tempo(130)},

	{code: "part-missing", name: "no ends", fires: Watch, class: parts("A cardio: " + minutes("25:00")), songs: long,
		says: "none of the 1 part is a warm-up", fix: "kind: warm-up"},
	{code: "part-missing", name: "both", class: parts("W warm-up: "+minutes("5:00"), "A cardio: "+minutes("15:00"),
		"C stretch: "+minutes("5:00")), songs: long},
	{code: "part-missing", name: "a piece of a class", class: parts("A cardio: " + minutes("10:00")), songs: long},

	{code: "part-order", name: "warm-up second", fires: Watch, class: parts("A cardio: "+minutes("2:00"), "W warm-up: "+
		minutes("2:00")), songs: long, says: "W is not the first part: A comes before it"},
	{code: "part-order", name: "core after the cool-down", fires: Watch,
		class: parts("C cool-down: "+minutes("2:00"), "S stretch: "+minutes("2:00"), "A core: "+minutes("2:00")), songs: long,
		says: "S is not the end: A comes after it"},
	{code: "part-order", name: "in order", class: parts("W warm-up: "+minutes("2:00"), "A cardio: "+minutes("2:00"),
		"C cool-down: "+minutes("2:00")), songs: long},

	{code: "part-share", name: "two minutes", fires: Watch, class: parts("W warm-up: "+minutes("2:00"), "A cardio: "+
		minutes("25:00"), "C stretch: "+minutes("5:00")), songs: long,
		says: "the warm-up lasts 2:00, usual are 3:00 to 15:00", fix: "about 5:26 (17 % of the class)",
		want: map[string]float64{"seconds": 120, "share_percent": 6.25}},
	{code: "part-share", name: "not quite three", fires: Note, class: parts("W warm-up: "+minutes("5:00"), "A cardio: "+
		minutes("25:00"), "C stretch: "+minutes("2:45")), songs: long, says: "the cool-down lasts 2:45"},
	{code: "part-share", name: "cool-down and stretch together",
		class: parts("W warm-up: "+minutes("5:00"), "A cardio: "+minutes("20:00"), "C cool-down: "+minutes("2:00"),
			"S stretch: "+minutes("2:00")), songs: long},
	{code: "part-share", name: "a piece of a class", class: parts("W warm-up: " + minutes("2:00")), songs: long},

	{code: "loudness-jump", name: "7 LU", fires: Watch, head: "tracks: [a.mp3, b.mp3]",
		items: []string{squats, `{set: squat, reps: "12 x 4-4"}`}, songs: loud(-14, -7),
		says: "b.mp3 is 7 LU louder than a.mp3", fix: "by -7 dB", want: map[string]float64{"difference_lu": 7}},
	{code: "loudness-jump", name: "4 LU", fires: Note, head: "tracks: [a.mp3, b.mp3]",
		items: []string{squats, `{set: squat, reps: "12 x 4-4"}`}, songs: loud(-8, -12), says: "4 LU softer"},
	{code: "loudness-jump", name: "2 LU", head: "tracks: [a.mp3, b.mp3]",
		items: []string{squats, `{set: squat, reps: "12 x 4-4"}`}, songs: loud(-9, -7)},
	{code: "loudness-jump", name: "unknown", head: "tracks: [a.mp3, b.mp3]",
		items: []string{squats, `{set: squat, reps: "12 x 4-4"}`}, songs: loud(0, -7)},

	{code: "tempo-jump", name: "between parts of a kind", fires: Note,
		class: strings.Replace(parts("A cardio: "+minutes("1:00"), "B cardio: "+minutes("1:00")), "a.mp3", "b.mp3", 1),
		songs: []song{{file: "a.mp3", bpm: 135, duration: 90}, {file: "b.mp3", bpm: 130, duration: 90}},
		says:  "from 130 BPM to 135 BPM (+3.8 %) between A and B", fix: "bpm: 132 for both"},
	{code: "tempo-jump", name: "too far apart to meet", fires: Note,
		class: strings.Replace(parts("A cardio: "+minutes("1:00"), "B cardio: "+minutes("1:00")), "a.mp3", "b.mp3", 1),
		songs: []song{{file: "a.mp3", bpm: 126, duration: 90}, {file: "b.mp3", bpm: 104, duration: 90}},
		fix:   "tracks nearer in tempo"},
	{code: "tempo-jump", name: "between parts of two kinds",
		class: strings.Replace(parts("A cardio: "+minutes("1:00"), "B core: "+minutes("1:00")), "a.mp3", "b.mp3", 1),
		songs: []song{{file: "a.mp3", bpm: 120, duration: 90}, {file: "b.mp3", bpm: 140, duration: 90}}},

	{code: "track-repeated", name: "in two parts", fires: Note,
		class: parts("A cardio: "+minutes("1:00"), "B cardio: "+minutes("1:00")), songs: long, says: "a.mp3 in A and in B"},
	{code: "track-repeated", name: "once", items: []string{squats}, songs: tempo(128)},
}
