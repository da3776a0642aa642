package align

// checkCase is a class on music on which a check fires, or must be silent.
type checkCase struct {
	code  string
	name  string
	fires Severity // empty: silent
	class string   // its parts; or, for a class of one part:
	head  string   // of the part, beside its track a.mp3
	items []string
	songs []song
	slot  float64
	says  string             // part of the message
	fix   string             // part of the fix
	want  map[string]float64 // figures
}

func tempo(bpm float64) []song { return []song{{file: "a.mp3", bpm: bpm, duration: 240}} }

func phrased(lengths string) []song {
	return []song{{file: "a.mp3", bpm: 128, duration: 240, phrases: lengths}}
}

const squats = `{set: squat, reps: "8 x 4-4"}` // 64 counts, fine on any music here

var checkCases = []checkCase{
	{code: "track-missing", name: "not there", fires: Fix, items: []string{squats}, songs: []song{{file: "b.mp3", bpm: 128, duration: 100}},
		says: "a.mp3: not analysed; 1 item of One without a place", want: map[string]float64{"items_without_place": 1}},
	{code: "track-missing", name: "failed", fires: Fix, items: []string{squats}, songs: []song{{file: "a.mp3", problem: "no steady beat found"}}, says: "no steady beat found"},
	{code: "track-missing", name: "there", items: []string{squats}, songs: tempo(128)},

	{code: "start-missing", name: "phrase", fires: Fix, head: "start: phrase 99", items: []string{squats}, songs: tempo(128),
		says: "One starts on phrase 99, but a.mp3 has 16 phrases", fix: "start: phrase 1", want: map[string]float64{"phrases": 16, "counts": 512}},
	{code: "start-missing", name: "time", fires: Fix, head: "start: 5:00", items: []string{squats}, songs: tempo(128), says: "starts on 5:00"},
	{code: "start-missing", name: "count", fires: Fix, head: "start: count 600", items: []string{squats}, songs: tempo(128), says: "starts on count 600"},
	{code: "start-missing", name: "last phrase", head: "start: phrase 16", items: []string{squats}, songs: tempo(128)},

	{code: "music-ends-first", name: "set", fires: Fix, items: []string{`{interval: jog, time: 320 counts}`, squats, `{pause: water, time: 8 counts}`},
		songs: []song{{file: "a.mp3", bpm: 120, duration: 180}}, says: "a.mp3 ends 32 counts (16 s) before the work on it does, during squat",
		fix: "add a track to One", want: map[string]float64{"missing_counts": 32, "missing_seconds": 16, "items": 2}},
	{code: "music-ends-first", name: "last set", fires: Fix, items: []string{`{interval: jog, time: 320 counts}`, squats},
		songs: []song{{file: "a.mp3", bpm: 120, duration: 180}}, fix: "squat: 5 reps of 4-4 instead of 8; or add a track to One"},
	{code: "music-ends-first", name: "started late", fires: Fix, head: "start: phrase 3", items: []string{`{interval: jog, time: 320 counts}`},
		songs: []song{{file: "a.mp3", bpm: 120, duration: 180}}, fix: "start: phrase 2"},
	{code: "music-ends-first", name: "in silence", fires: Note, items: []string{`{interval: jog, time: 320 counts}`, `{pause: water, time: 80 counts}`},
		songs: []song{{file: "a.mp3", bpm: 120, duration: 180}}, says: "a.mp3 ends 20 s before water is over, in silence", fix: "20 s less"},
	{code: "music-ends-first", name: "a pause and then work", fires: Fix, items: []string{`{interval: jog, time: 320 counts}`, `{pause: water, time: 80 counts}`, squats},
		songs: []song{{file: "a.mp3", bpm: 120, duration: 180}}, says: "during squat"},
	{code: "music-ends-first", name: "a round too many", fires: Fix, head: "rounds: 3", items: []string{`{interval: jog, time: 160 counts}`},
		songs: []song{{file: "a.mp3", bpm: 120, duration: 180}}, fix: "rounds: 2 instead of 3", want: map[string]float64{"missing_counts": 120}},
	{code: "music-ends-first", name: "just enough", items: []string{`{interval: jog, time: 320 counts}`, `{set: squat, reps: "5 x 4-4"}`},
		songs: []song{{file: "a.mp3", bpm: 120, duration: 180}}},
	{code: "music-ends-first", name: "by the clock", fires: Fix, items: []string{`{interval: jog, time: 50s, on: clock}`},
		songs: []song{{file: "a.mp3", bpm: 120, duration: 45}}, want: map[string]float64{"missing_seconds": 5}},

	{code: "rhythm-too-fast", name: "singles", fires: Watch, items: []string{`{set: squat, reps: "16 x 1-1"}`},
		songs: []song{{file: "a.mp3", bpm: 130, duration: 240}, {file: "b.mp3", bpm: 74, duration: 240}},
		says:  "squat, 16 x 1-1 at 130 BPM: 0.46 s each way may be hard to control at full range (fine from 0.8 s)",
		fix:   "8 x 2-2 in the same 32 counts (0.92 s each way)",
		want:  map[string]float64{"seconds_per_phase": 0.462, "limit_fine_seconds": 0.8, "limit_too_fast_seconds": 0.55, "bpm": 130, "bpm_that_passes": 75, "peak_load": 0.945}},
	{code: "rhythm-too-fast", name: "half range", fires: Watch, items: []string{`{set: squat, reps: "16 x 1-1", range: half}`}, songs: tempo(130), says: "half range"},
	// At 134 BPM the bar floats: R = 0.503 x 0.40 / 0.448² = 1.003.
	{code: "rhythm-too-fast", name: "it floats", fires: Fix, items: []string{`{set: squat, reps: "16 x 1-1"}`}, songs: tempo(134), says: "is likely hard to control",
		want: map[string]float64{"peak_load": 1.004}},
	{code: "rhythm-too-fast", name: "up only", fires: Watch, items: []string{`{set: deadlift, reps: "8 x 3-1"}`}, songs: tempo(130), says: "0.46 s up may be hard", fix: "8 x 2-2 in the same 32 counts"},
	{code: "rhythm-too-fast", name: "3 down, 1 up", items: []string{`{set: deadlift, reps: "8 x 3-1"}`}, songs: tempo(116)},
	{code: "rhythm-too-fast", name: "lighter first", fires: Watch, items: []string{`{set: deadlift, reps: "16 x 1-1", weight: heavy}`}, songs: tempo(118), fix: "a lighter weight; or 8 x 2-2"},
	{code: "rhythm-too-fast", name: "music that the class has", fires: Watch, items: []string{`{set: fly, reps: "8 x 2-2"}`},
		songs: []song{{file: "a.mp3", bpm: 130, duration: 240}, {file: "b.mp3", bpm: 100, duration: 240}, {file: "c.mp3", bpm: 96, duration: 240}}, fix: "range: half; or 4 x 4-4"},
	{code: "rhythm-too-fast", name: "a swing is thrown", fires: Fix, items: []string{`{set: kettlebell swing, reps: "16 x 1-1"}`}, songs: tempo(140), fix: "8 x 2-2 in the same 32 counts"},
	{code: "rhythm-too-fast", name: "2-2 past 133", fires: Watch, items: []string{`{set: deadlift, reps: "8 x 2-2"}`}, songs: tempo(134), fix: "range: half; or 4 x 4-4", want: map[string]float64{"bpm_that_passes": 133}},
	{code: "rhythm-too-fast", name: "played too fast", fires: Watch, head: "bpm: 134", items: []string{`{set: deadlift, reps: "8 x 2-2"}`}, songs: tempo(130)},
	{code: "rhythm-too-fast", name: "taught at half time", head: "taught: half", items: []string{`{set: squat, reps: "16 x 1-1"}`}, songs: tempo(140)},
	{code: "rhythm-too-fast", name: "pulses", fires: Watch, items: []string{`{set: squat, reps: "32 x pulse"}`}, songs: tempo(130), says: "0.23 s each way", want: map[string]float64{"bpm_that_passes": 107}},
	{code: "rhythm-too-fast", name: "slow pulses", items: []string{`{set: squat, reps: "32 x pulse"}`}, songs: tempo(107)},
	{code: "rhythm-too-fast", name: "2-2 at 133", items: []string{`{set: deadlift, reps: "8 x 2-2"}`}, songs: tempo(133)},
	{code: "rhythm-too-fast", name: "a move without limit", items: []string{`{set: plank, reps: "16 x 1-1"}`}, songs: tempo(160)},

	{code: "swing-too-slow", name: "4-4", fires: Watch, items: []string{`{set: kettlebell swing, reps: "8 x 4-4"}`}, songs: tempo(120), says: "15 a minute"},
	// At 104 BPM 2-2 is too slow, and singles are too fast: 52 a minute.
	{code: "swing-too-slow", name: "no rhythm for it", fires: Watch, items: []string{`{set: kettlebell swing, reps: "8 x 2-2"}`}, songs: tempo(104), fix: "music of at least 128 BPM"},
	{code: "swing-too-slow", name: "2-2", items: []string{`{set: kettlebell swing, reps: "8 x 2-2"}`}, songs: tempo(140)},

	{code: "rep-too-short", name: "burpees in singles", fires: Fix, items: []string{`{set: burpee, reps: "16 x 1-1"}`}, songs: tempo(130),
		says: "burpee, 16 x 1-1: 2 counts for each, one takes 8 and more", fix: "4 of them, 8 counts for each", want: map[string]float64{"counts": 2, "least_counts": 8}},
	{code: "rep-too-short", name: "burpees that can be done", items: []string{`{set: burpee, reps: "8 x 4-4"}`}, songs: tempo(130)},
	{code: "rep-too-short", name: "in a block", fires: Fix, items: []string{`{block: A, moves: [{move: march, counts: 28}, {move: burpee, counts: 4}]}`}, songs: tempo(130),
		says: "A: 4 counts of burpee, one takes 8 and more"},
	{code: "rep-too-short", name: "stretches", fires: Watch, items: []string{`{set: calf stretch, reps: "8 x 2-2"}`}, songs: tempo(130)},

	{code: "odd-phrase", name: "tag", fires: Fix, items: []string{`{set: squat, reps: "16 x 4-4"}`}, songs: phrased("32 32 4 32"),
		says: "squat runs across phrase 3, a tag of 4 counts; phrase 4 starts after 68 of its 128 counts",
		fix:  "start it on phrase 4 (the next that holds it unbroken; other work first); stop it after 8 reps, hold the 4 counts, do the other 8 on phrase 4; or at most 64 counts",
		want: map[string]float64{"phrase": 3, "phrase_counts": 4, "counts_before_next_phrase": 68}},
	{code: "odd-phrase", name: "a phrase further on", fires: Fix, items: []string{`{set: squat, reps: "3 x 4-4"}`, squats}, songs: phrased("32 4 32 4 32"), fix: "start it on phrase 5"},
	{code: "odd-phrase", name: "short wait", fires: Fix, items: []string{`{set: squat, reps: "3 x 4-4"}`, squats}, songs: phrased("32 4 32"), fix: "start it on phrase 3 (12 counts of hold first)"},
	{code: "odd-phrase", name: "bridge", fires: Watch, items: []string{`{set: squat, reps: "16 x 4-4"}`}, songs: phrased("32 32 16 32"), says: "a bridge of 16 counts"},
	{code: "odd-phrase", name: "a tag that is not sure", fires: Watch, items: []string{`{set: squat, reps: "16 x 4-4"}`}, songs: phrased("32 32 4@0.2 32")},
	{code: "odd-phrase", name: "interval over a tag", fires: Note, items: []string{`{interval: jog, time: 60s}`}, songs: phrased("32 32 4 32")},
	{code: "odd-phrase", name: "ends before the tag", items: []string{squats, squats}, songs: phrased("32 32 4 32")},
	{code: "odd-phrase", name: "sides on both sides of the tag", items: []string{`{set: one-arm row, reps: "16 x 2-2", sides: both}`}, songs: phrased("32 32 4 32")},
	{code: "odd-phrase", name: "a block lets a bridge pass", items: []string{`{block: A, times: 2, moves: [{move: march, counts: 32}]}`}, songs: phrased("32 16 32 32")},
	{code: "odd-phrase", name: "a block that fills the bridge", items: []string{`{block: A, moves: [{move: march, counts: 32}]}`, `{block: B, on: eight, moves: [{move: march, counts: 16}]}`}, songs: phrased("32 16 32 32")},
	{code: "odd-phrase", name: "64 counts unbroken", items: []string{squats}, songs: phrased("64")},

	{code: "spare-counts", name: "hold", fires: Watch, items: []string{`{set: squat, reps: "6 x 4-4"}`, `{block: A, moves: [{move: march, counts: 32}]}`}, songs: tempo(128),
		says: "squat ends 16 counts before the end of phrase 2; the class holds for 16 counts", fix: "8 x 4-4 instead of 6 x 4-4"},
	{code: "spare-counts", name: "next runs over", fires: Watch, items: []string{`{set: squat, reps: "6 x 4-4"}`, squats}, songs: tempo(128), says: "squat starts on count 17 and runs over"},
	{code: "spare-counts", name: "both sides", fires: Watch, items: []string{`{set: one-arm row, reps: "6 x 2-2", sides: both}`, squats}, songs: tempo(128), fix: "8 x 2-2 instead of 6 x 2-2 a side"},
	{code: "spare-counts", name: "end of part", fires: Note, items: []string{`{set: squat, reps: "6 x 4-4"}`}, songs: tempo(128), says: "the part ends there"},
	{code: "spare-counts", name: "filled by the next", items: []string{`{set: squat, reps: "6 x 4-4"}`, `{set: wide squat, reps: "2 x 4-4"}`}, songs: tempo(128)},
	{code: "spare-counts", name: "used for a setup", items: []string{`{set: squat, reps: "7 x 4-4"}`, `{set: deadlift, reps: "8 x 4-4", setup: 8 counts}`}, songs: tempo(128)},
	// 64 counts end with phrase 2, and 8 counts of set-up lead to count 9 of phrase 3.
	{code: "spare-counts", name: "a setup that leads into a phrase", fires: Watch, items: []string{squats, `{set: deadlift, reps: "8 x 4-4", setup: 8 counts}`}, songs: tempo(128),
		says: "after squat and 8 counts to set up, deadlift starts on count 9 of phrase 3 and runs over its end", fix: "7 x 4-4 instead of 8 x 4-4 before it; on: phrase; or setup: 32 counts",
		want: map[string]float64{"start_count": 9, "spare_counts": 24}},
	{code: "spare-counts", name: "a setup and a set that fill a phrase", items: []string{squats, `{set: deadlift, reps: "3 x 4-4", setup: 8 counts}`}, songs: tempo(128)},
	// 20 s at 128 BPM are 42.7 counts, laid as 40: the squats start on count 9.
	{code: "spare-counts", name: "a pause that ends inside a phrase", fires: Watch, items: []string{`{pause: water, time: 20s}`, squats}, songs: tempo(128),
		says: "after water, squat starts on count 9 of phrase 2 and runs over its end", fix: "water: 30 s ends with the phrase; 15 s with the one before; or on: phrase; or squat on: phrase", want: map[string]float64{"start_count": 9, "spare_counts": 24}},
	{code: "spare-counts", name: "a pause by the clock", fires: Watch, items: []string{`{pause: water, time: 20s, on: clock}`, squats}, songs: tempo(128), says: "starts on count 17"},
	{code: "spare-counts", name: "a pause of a phrase", items: []string{`{pause: water, time: 15s}`, squats}, songs: tempo(128)},
	{code: "spare-counts", name: "a pause and an interval", items: []string{`{pause: water, time: 20s}`, `{interval: jog, time: 30s}`}, songs: tempo(128)},
	{code: "spare-counts", name: "a setup of a phrase", items: []string{squats, `{set: deadlift, reps: "8 x 4-4", setup: 32 counts}`}, songs: tempo(128)},
	{code: "spare-counts", name: "full", items: []string{squats, squats}, songs: tempo(128)},

	{code: "low-trust", name: "phrase", fires: Watch, items: []string{squats, squats}, songs: phrased("32 32 32@0.3 32"),
		says: "a.mp3: the start of phrase 3 (0:30.0) is not sure; squat rests on it", fix: `onphrase correct "a.mp3" --phrase 0:30.0`, want: map[string]float64{"trust": 0.3, "phrase": 3, "phrase_seconds": 30}},
	{code: "low-trust", name: "the phrase begins before the item", fires: Watch, items: []string{`{interval: jog, time: 16 counts}`, squats, squats}, songs: phrased("32 32@0.3 32 32"),
		says: "phrase 2 (0:15.0) is not sure; squat rests on it", want: map[string]float64{"rows": 1}},
	{code: "low-trust", name: "said once with all it touches", fires: Watch, items: []string{squats, squats, squats}, songs: phrased("32 32@0.3 32 32@0.4 32@0.3 32"),
		says: "phrases 2 (0:15.0), 4 (0:45.0) and 5 (1:00.0) are not sure; squat and 2 more rows rest on them", want: map[string]float64{"phrases": 3, "rows": 3}},
	{code: "low-trust", name: "a track in two parts", fires: Watch, class: parts("One strength: set: squat, reps: 8 x 4-4", "Two strength: set: squat, reps: 8 x 4-4"),
		songs: []song{{file: "a.mp3", bpm: 128, duration: 240, trust: 0.4}}, fix: `onphrase correct "a.mp3" --one TIME`},
	{code: "low-trust", name: "track", fires: Watch, items: []string{squats}, songs: []song{{file: "a.mp3", bpm: 128, duration: 240, trust: 0.4}}, says: "a.mp3: the counts may be wrong"},
	{code: "low-trust", name: "unsteady", fires: Watch, items: []string{squats}, songs: []song{{file: "a.mp3", bpm: 128, duration: 240, unsteady: [][2]float64{{20, 25}}}}, says: "a.mp3 has no steady beat from 0:20 to 0:25; squat lies on it"},
	{code: "low-trust", name: "unsteady elsewhere", items: []string{squats}, songs: []song{{file: "a.mp3", bpm: 128, duration: 240, unsteady: [][2]float64{{31, 35}}}}},
	{code: "low-trust", name: "doubtful phrase under a pause", items: []string{`{pause: water, time: 30s}`}, songs: phrased("32 32@0.3 32")},

	{code: "tempo-outside-band", name: "far too fast", fires: Watch, head: "kind: strength", items: []string{squats}, songs: tempo(140),
		says: "a.mp3 at 140 BPM is outside 122-130 BPM, the usual tempo of a strength part", want: map[string]float64{"bpm": 140, "band_low_bpm": 122, "band_high_bpm": 130}},
	{code: "tempo-outside-band", name: "a little", fires: Note, head: "kind: strength", items: []string{squats}, songs: tempo(132), fix: "bpm: 130 (-1.5 % of the recorded tempo)"},
	{code: "tempo-outside-band", name: "cool-down", fires: Watch, head: "kind: cool-down", items: []string{squats}, songs: tempo(128), says: "above 100 BPM, the usual tempo of a cool-down part is below", fix: "taught: half (64 BPM)"},
	{code: "tempo-outside-band", name: "heard at half time", fires: Watch, head: "kind: strength", items: []string{squats}, songs: tempo(64), fix: "taught: double (128 BPM)"},
	{code: "tempo-outside-band", name: "cool-down at half time", head: "kind: cool-down\ntaught: half", items: []string{squats}, songs: tempo(128)},
	{code: "tempo-outside-band", name: "played inside", head: "kind: strength\nbpm: 129", items: []string{squats}, songs: tempo(132)},
	{code: "tempo-outside-band", name: "mixed has none", items: []string{squats}, songs: tempo(170)},

	{code: "tempo-stretched", name: "12 %", fires: Watch, head: "bpm: 112", items: []string{squats}, songs: tempo(100), says: "+12.0 %", fix: "stay within 90-110 BPM"},
	{code: "tempo-stretched", name: "10 %", head: "bpm: 110", items: []string{squats}, songs: tempo(100)},
	{code: "tempo-stretched", name: "meant as heard", head: "taught: half\nbpm: 130", items: []string{squats}, songs: tempo(128)},

	{code: "interval-rounded", name: "half a second", fires: Note, items: []string{`{interval: jog, time: 30s}`, `{interval: jog, time: 30s}`}, songs: tempo(130),
		says: "timed work on whole eights: 30 s as 29.5 s (64 counts); together -0.9 s in 2 rows", want: map[string]float64{"largest_error_seconds": -0.462, "error_seconds": -0.924, "times": 2}},
	{code: "interval-rounded", name: "exact", items: []string{`{interval: jog, time: 30s}`}, songs: tempo(128)},
	{code: "interval-rounded", name: "by the clock", items: []string{`{interval: jog, time: 30s, on: clock}`}, songs: tempo(130)},

	{code: "interval-mid-phrase", name: "40 counts", fires: Note, items: []string{`{interval: jog, time: 20s}`, squats}, songs: tempo(120),
		says: "jog ends on count 8 of phrase 2, 24 counts before its end", fix: "32 s ends with the phrase; 16 s with the one before; or on: phrase"},
	{code: "interval-mid-phrase", name: "on phrase", items: []string{`{interval: jog, time: 20s, on: phrase}`, squats}, songs: tempo(120)},
	{code: "interval-mid-phrase", name: "filled", items: []string{`{interval: jog, time: 20s}`, `{pause: rest, time: 10s}`, squats}, songs: tempo(128)},

	{code: "over-slot", name: "over", fires: Fix, items: []string{squats, squats}, songs: tempo(128), slot: 50,
		says: "the class lasts 1:00, 0:10 more than its slot of 0:50", fix: "take out or shorten squat of One (0:30)", want: map[string]float64{"over_seconds": 10}},
	{code: "over-slot", name: "in time", items: []string{squats, squats}, songs: tempo(128), slot: 60},
	{code: "under-slot", name: "half empty", fires: Watch, items: []string{squats, squats}, songs: tempo(128), slot: 120, says: "leaves 1:00", want: map[string]float64{"spare_seconds": 60}},
	{code: "under-slot", name: "slack", items: []string{squats, squats}, songs: tempo(128), slot: 66},
	{code: "under-slot", name: "not all has a time", items: []string{squats}, songs: []song{{file: "a.mp3", problem: "no steady beat found"}}, slot: 120},

	{code: "change-too-short", name: "weights", fires: Watch, items: []string{`{set: squat, reps: "8 x 4-4", weight: heavy}`, `{set: squat, reps: "8 x 4-4", weight: light}`},
		songs: tempo(128), says: "squat after squat: no time to take light, usual are 8 counts", fix: "setup: 8 counts", want: map[string]float64{"counts_given": 0, "counts_needed": 8}},
	{code: "change-too-short", name: "to the floor", fires: Watch, items: []string{squats, `{set: crunch, reps: "8 x 2-2", setup: 8 counts}`}, songs: tempo(128),
		says: "8 counts to get to the floor, usual are 16"},
	{code: "change-too-short", name: "a pause between", items: []string{squats, `{pause: water, time: 10s}`, `{set: crunch, reps: "8 x 2-2"}`}, songs: tempo(128)},
	{code: "change-too-short", name: "enough setup", items: []string{`{set: squat, reps: "8 x 4-4", weight: heavy}`, `{set: squat, reps: "8 x 4-4", weight: light, setup: 8 counts}`}, songs: tempo(128)},
	{code: "change-too-short", name: "weights put down", items: []string{`{set: squat, reps: "8 x 4-4", weight: heavy}`, squats}, songs: tempo(128)},

	{code: "sides-unequal", name: "right only", fires: Watch, items: []string{`{set: one-arm row, reps: "8 x 2-2", sides: both}`, `{set: single-arm row, reps: "8 x 2-2", sides: right}`},
		songs: tempo(128), says: "one-arm row: 64 counts right, 32 counts left", want: map[string]float64{"right_reps": 16, "left_reps": 8}},
	{code: "sides-unequal", name: "made up for", items: []string{`{set: one-arm row, reps: "8 x 2-2", sides: right}`, `{set: one-arm row, reps: "8 x 2-2", sides: left}`}, songs: tempo(128)},

	{code: "lead-uneven", name: "both sides, no change", fires: Note, items: []string{`{block: A, sides: both, moves: [{move: step touch, counts: 16}, {move: march, counts: 16}]}`},
		songs: tempo(128), says: "A ends on the leg it started on"},
	{code: "lead-uneven", name: "odd and once", fires: Note, items: []string{`{block: A, moves: [{move: repeater knee, counts: 8}, {move: march, counts: 24}]}`},
		songs: tempo(128), says: "A ends on the left lead", fix: "times: 2 brings it back"},
	{code: "lead-uneven", name: "odd and both", items: []string{`{block: A, sides: both, moves: [{move: repeater knee, counts: 8}, {move: march, counts: 24}]}`}, songs: tempo(128)},
	{code: "lead-uneven", name: "odd and twice", items: []string{`{block: A, times: 2, moves: [{move: repeater knee, counts: 8}, {move: march, counts: 24}]}`}, songs: tempo(128)},
	{code: "lead-uneven", name: "nothing leads", items: []string{`{block: A, sides: both, moves: [{move: march, counts: 32}]}`}, songs: tempo(128)},

	{code: "in-three", name: "waltz", fires: Watch, items: []string{squats}, songs: []song{{file: "a.mp3", bpm: 128, duration: 240, meter: 3}}, says: "three counts to a bar"},
	{code: "in-three", name: "four", items: []string{squats}, songs: tempo(128)},

	{code: "tempo-jump", name: "4 %", fires: Note, head: "tracks: [a.mp3, b.mp3]", items: []string{`{interval: jog, time: 160 counts}`, `{interval: jog, time: 160 counts}`},
		songs: []song{{file: "a.mp3", bpm: 125, duration: 90}, {file: "b.mp3", bpm: 130, duration: 90}}, says: "from 125 BPM to 130 BPM (+4.0 %)", fix: "bpm: 127"},
	{code: "tempo-jump", name: "2 %", head: "tracks: [a.mp3, b.mp3]", items: []string{`{interval: jog, time: 160 counts}`, `{interval: jog, time: 160 counts}`},
		songs: []song{{file: "a.mp3", bpm: 125, duration: 90}, {file: "b.mp3", bpm: 127, duration: 90}}},
}
