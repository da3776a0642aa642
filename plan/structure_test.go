package plan_test

import "testing"

func TestParseRefusesBadBlocks(t *testing.T) {
	checkCases(t, inItem, []badCase{
		{"- ▶{block: A, moves: [{move: march, counts: 8}, {move: grapevine, counts: 16}]}",
			"block A takes 8 + 16 = 24 counts: 8 short of a whole phrase of 32",
			"add a hold of 8 counts, like {move: march, counts: 8}"},
		{"- ▶{block: A, sides: both, times: 2, moves: [{move: march, counts: 8}, {move: grapevine, counts: 16}, {move: mambo, counts: 4}]}",
			"block A takes (8 + 16 + 4) x 4 = 112 counts: 16 short of a whole phrase of 32",
			"add a hold of 4 counts, like {move: march, counts: 4}"},
		{"- ▶{block: A, times: 3, moves: [{move: march, counts: 36}]}",
			"block A takes 36 x 3 = 108 counts: 20 short of a whole phrase of 32", "take 4 counts from march"},
		{"- ▶{block: A, times: 3, moves: [{move: march, counts: 14}]}",
			"block A takes 14 x 3 = 42 counts: 22 short of a whole phrase of 32",
			"fill each pass up to 16 or 32 counts, or say on: eight where it fills a bridge"},
		{"- ▶{block: A, on: eight, moves: [{move: march, counts: 20}]}",
			"block A takes 20 counts: 4 short of a whole 8-count", "add a hold of 4 counts, like {move: march, counts: 4}"},
		{"- {block: A, on: ▶clock, moves: [{move: march, counts: 32}]}",
			"a block is danced on counts, not by the clock", "on: phrase, eight or count"},
		{"- {block: A, moves: [{move: march, counts: ▶eight}]}", `counts: "eight" is no whole number`, "8?"},
		{"- {block: A, moves: [{move: march, counts: ▶2 x 16}]}", `counts: "2 x 16" is no whole number`, "32?"},
		{"- {block: A, moves: [{move: march, counts: ▶32 counts}]}", `counts: "32 counts" is no whole number`,
			"32? Only the number is written here"},
		{"- {block: A, moves: [{move: march, counts: ▶4 eights}]}", `counts: "4 eights" is no whole number`,
			"32? Only the number is written here"},
		{"- {block: A, moves: [{move: march, counts: ▶1 phrase}]}", `counts: "1 phrase": phrase has two meanings`,
			"32 counts (of 32) or 8 counts (of 8)?"},
		{"- {block: A, moves: [{move: march, counts: ▶15s}]}", `counts: "15s" is a time`,
			"choreography takes counts, like 8"},
		{"- {block: A, moves: [{move: march, counts: ▶7.5}]}", `counts: "7.5" is no whole number`, "digits only, like 8"},
		{"- {block: A, moves: [{move: march, counts: ▶-8}]}", "counts: -8 is out of range", "a whole number from 1 to 4096"},
		{"- {block: A, moves: [{move: march, counts: ▶1000000}]}", "counts: 1000000 is out of range",
			"a whole number from 1 to 4096"},
		{"- {block: A, moves: [▶{move: march}]}", "a move of a block needs counts", "like {move: march, counts: 8}"},
		{"- {block: A, moves: [▶march]}", `a move of a block is written as keys and values, not as "march"`,
			"like {move: march, counts: 8}"},
		{"- {block: A, moves: ▶[]}", "moves is an empty list", "like moves: [{move: march, counts: 32}]"},
		{"- {block: A, moves: ▶march}", `moves is a list, not "march"`, "like moves: [{move: march, counts: 32}]"},
		{"- {block: A, moves: [{move: march, counts: 32, ▶reps: 4}]}", `unknown key "reps" in a move of a block`,
			"reps belongs to a set"},
		{"- {block: A, times: ▶0, moves: [{move: march, counts: 32}]}", "times: 0 is out of range",
			"a whole number from 1 to 64"},
		{"- {▶block: , moves: [{move: march, counts: 32}]}", "block has no value", "write one, or remove the line"},
	})
}

func TestParseRefusesUnknownMoves(t *testing.T) {
	checkCases(t, inItem, []badCase{
		{"- {block: A, moves: [{move: ▶grapvine, counts: 32}]}", `the move "grapvine" is not in the catalogue`,
			"grapevine? Or add it at the top of the file: moves: [{name: grapvine, counts: 4}]"},
		{"- {interval: ▶standing climer, time: 30s}", `the move "standing climer" is not in the catalogue`,
			"standing climber? Or add it at the top of the file: moves: [{name: standing climer, counts: 2}]"},
		{"- {set: ▶heavy slow squats, reps: 8 x 4-4}", `the move "heavy slow squats" is not in the catalogue`,
			"squat? Or add it at the top of the file: moves: [{name: heavy slow squats, class: squat}]"},
		{"- {set: ▶Zottman, reps: 8 x 4-4}", `the move "Zottman" is not in the catalogue`,
			"add it at the top of the file: moves: [{name: Zottman, class: squat}]"},
	})
}

func TestParseRefusesBadItems(t *testing.T) {
	checkCases(t, inItem, []badCase{
		{"- ▶water", `an item is written as keys and values, not as "water"`, "like - {pause: water, time: 30s}"},
		{"- ▶{time: 30s}", "an item must be a block, set, interval, pause, superset or repeat",
			"like - {pause: water, time: 30s}"},
		{"- {▶pasue: water, time: 30s}", `unknown key "pasue" in an item`, "pause?"},
		{"- {▶exercise: squat, reps: 8 x 2-2}", `unknown key "exercise" in an item`, "set?"},
		{"- ▶{set: squat, pause: water, reps: 8 x 2-2}", "an item is both a set and a pause", "make two items of it"},
		{"- {pause: water, time: 30s, ▶tmie: 3s}", `unknown key "tmie" in a pause`, "time?"},
		{"- {pause: water, time: 30s, ▶Cue: drink}", "the key Cue is written small", "cue:"},
		{"- {pause: water, time: 30s, ▶zzz: 3s}", `unknown key "zzz" in a pause`,
			"a pause may have pause, on, cue, setup, easier, harder, known, time or for"},
		{"- {pause: water, time: 30s, ▶reps: 8 x 2-2}", `unknown key "reps" in a pause`, "reps belongs to a set"},
		{"- {pause: water, time: 30s, ▶time: 40s}", "time is written twice in an item, first on line 7", "keep one of them"},
		{"- {pause: water, time: 30s, cue: drink▶, then breathe}", "the comma ends the text here",
			`text with a comma in it needs quotes: "drink, then breathe"`},
		{`- {pause: water, time: 30s, cue: ▶"a\e[2Jb"}`, "cue has a control character in it", "write it as plain text"},
		{"- {pause: water, time: 30s, cue: ▶''}", "cue is empty", "write some text, or remove the key"},
		{"- {pause: water, time: 30s, ▶<<: {cue: x}}", "merge keys (<<) are not read", ownLine},
		{"- {pause: water, time: 30s, ▶[a, b]: c}", "a key must be one word, not a list", "write word: value"},
		{"- {pause: &w water, time: 30s, cue: ▶*w}", "*w repeats another place of the file, which is not read", ownLine},
		{"- {pause: water, time: ▶!!str 30s}", "tags like !!str are not read",
			"remove it; text that looks like a number may stand in quotes"},
	})
}

const ownLine = "write it out: every item needs a line of its own, which findings point to and changes go to"

func TestParseRefusesBadParts(t *testing.T) {
	do := "    do: [{pause: water, time: 30s}]\n"
	checkCases(t, inPart, []badCase{
		{"    kind: ▶warmup\n" + do, `kind: "warmup" is not one of warm-up, cardio, strength, core, cool-down, stretch or mixed`, "warm-up?"},
		{"    kind: ▶abs\n" + do, `kind: "abs" is not one of warm-up, cardio, strength, core, cool-down, stretch or mixed`,
			"core?"},
		{"    kind: ▶strenght\n" + do, `kind: "strenght" is not one of warm-up, cardio, strength, core, cool-down, stretch or mixed`, "strength?"},
		{"    start: ▶17\n" + do, `start: "17" is no place in a track`, "phrase 17 (of 32 counts) or count 17?"},
		{"    start: ▶62.5s\n" + do, `start: "62.5s" is no place in a track`, "1:02.5? A place in the track is written m:ss"},
		{"    start: ▶phrase 0\n" + do, "start: 0 is out of range", "a whole number from 1 to 9999"},
		{"    start: ▶chorus\n" + do, `start: "chorus" is no place in a track`,
			"phrase 2, count 17 or 1:02.5 (minutes:seconds)"},
		{"    start: ▶1:60\n" + do, `start: "1:60" has more than 59 seconds`, "2:00?"},
		{"    bpm: ▶1260\n" + do, "bpm: 1260 beats per minute is out of range", "from 40 to 240"},
		{"    bpm: ▶126 bpm\n" + do, `bpm: "126 bpm" is no number`, "126? Only the number is written here"},
		{"    bpm: ▶-126\n" + do, `bpm: "-126" is no tempo`, "beats per minute, like 126 or 127.5"},
		{"    taught: ▶half time\n" + do, `taught: "half time" is not one of half or double`, "half?"},
		{"    ▶tempo: 126\n" + do, `unknown key "tempo" in a part`, "bpm?"},
		{"    ▶song: a.mp3\n" + do, `unknown key "song" in a part`, "tracks?"},
		{"    ▶weight: heavy\n" + do, `unknown key "weight" in a part`, "weight belongs to a set or an interval"},
		{"    do: ▶{pause: water, time: 30s}\n", "do is a list, not keys and values",
			"like do: and below it - {pause: water, time: 30s}"},
		{"    ▶do:\n", "do has no value", "write one, or remove the line"},
	})
	checkCases(t, inClass, []badCase{
		{"  - ▶part: Core\n    do: [{pause: water, time: 30s}]\n", "a part needs tracks", "like tracks: [tidewater.mp3]"},
		{"  - ▶part: Core\n    tracks: [a.mp3]\n", "a part needs do", "like do: and below it - {pause: water, time: 30s}"},
		{"  - ▶tracks: [a.mp3]\n    do: [{pause: water, time: 30s}]\n", "a part needs part", "like part: Warm-up"},
		{"  - part: Core\n    tracks: ▶a.mp3\n    do: [{pause: water, time: 30s}]\n", `tracks is a list, not "a.mp3"`,
			"tracks: [a.mp3]"},
		{"  - part: Core\n    tracks: [▶https://example.org/a.mp3]\n    do: [{pause: water, time: 30s}]\n",
			`tracks: "https://example.org/a.mp3" is an address, not a file`, "name a file on this machine"},
		{"  - part: Core\n    tracks: ▶[]\n    do: [{pause: water, time: 30s}]\n", "tracks is an empty list",
			"like tracks: [tidewater.mp3]"},
	})
}

func TestParseRefusesBadFiles(t *testing.T) {
	head := "class: Harbour\nparts:\n" + goodPart
	checkCases(t, func(s string) string { return s }, []badCase{
		{"▶", "the file is empty", "a class file begins with the line onphrase: 1"},
		{"▶# only a remark\n", "the file is empty", "a class file begins with the line onphrase: 1"},
		{"▶---\n", "the file is empty", "a class file begins with the line onphrase: 1"},
		{"▶just some notes\n", `class.yaml is not a class file: it begins with "just some notes"`,
			"a class file begins with the line onphrase: 1"},
		{"▶- a\n- b\n", "class.yaml is not a class file: it begins with a list",
			"a class file begins with the line onphrase: 1"},
		{"▶" + head, "a class file needs onphrase", "like onphrase: 1"},
		{"onphrase: ▶2\n" + head, `version "2" of the class file is not known`,
			"this program reads onphrase: 1; a newer file needs a newer program"},
		{"onphrase: ▶\"1\"\n" + head, "the version is a number, not text in quotes", "onphrase: 1"},
		{"onphrase: ▶[1]\n" + head, "onphrase is the version of the file, not a list", "onphrase: 1"},
		{"▶class: Harbour\nonphrase: 1\nparts:\n" + goodPart, "class stands before the version",
			"a class file begins with the line onphrase: 1"},
		{"▶onphrase: 1\nparts:\n" + goodPart, "a class file needs class", "like class: Harbour Strong 45"},
		{"▶onphrase: 1\nclass: Harbour\n", "a class file needs parts", "like parts: and below it - part: Warm-up"},
		{"onphrase: 1\n▶titel: x\n" + head, `unknown key "titel" in a class file`,
			"a class file may have onphrase, moves, class, slot, music, facing, known or parts"},
		{"onphrase: 1\n▶title: x\n" + head, `unknown key "title" in a class file`, "class?"},
		{"onphrase: 1\nslot: ▶45\n" + head, `slot: "45" is no time in the studio`, `"45:00" for 45 minutes?`},
		{"onphrase: 1\nslot: ▶45 min\n" + head, `slot: "45 min" is no time in the studio`, `"45:00" for 45 minutes?`},
		{"onphrase: 1\nslot: \"▶1:00\"\n" + head, "slot: 1:00 is minutes and seconds, too short for a class",
			`"60:00" for 60 minutes?`},
		{"onphrase: 1\nslot: ▶9:00:00\n" + head, `slot: 9:00:00 is longer than a class can be`,
			`minutes:seconds, like "45:00"`},
		{"onphrase: 1\n" + head + "▶---\nclass: B\n", "a second document begins here",
			"one file holds one class: remove the line ---, or put the rest into a file of its own"},
		{"onphrase: 1\nclass: Harb▶\xffour\nparts:\n" + goodPart, "a letter in an old encoding, not in UTF-8",
			"save the file again, with UTF-8 as encoding; then look at ä, é and the like"},
		{"onphrase: 1\nclass: Harb▶\xffour\x00\n", "this is not text in UTF-8",
			"save the file again as UTF-8; if it is music, name the class file instead"},
		{"ID3▶\x00\x00\x00", "control character 0x0 in the file",
			"a class file is plain text; if this is music, name the class file instead"},
		{"▶\xff\xfea\x00", "the file is saved as UTF-16", "save it again as UTF-8"},
	})
}

func TestParsePointsAtBrokenYAML(t *testing.T) {
	const unclosed = "a { that is not closed, or a comma missing between two keys"
	const indented = "a line that is indented differently from its neighbours"
	const start = "keys of one item start in one column; a new item starts with - below the last one"
	more := "\n      - {pause: water, time: 30s}\n  - part: Core\n    tracks: [a.mp3]\n    do: [{pause: water, time: 30s}]"
	checkCases(t, inItem, []badCase{
		{"- {pause: a, time: 30s}\n▶\t- {pause: water, time: 30s}" + more, "a tab in the indentation",
			"indent with spaces, two a level"},
		{"- ▶{pause: a, time: 30s" + more, unclosed, "{pause: water, time: 30s}"},
		{"- {pause: a ▶time: 30s}" + more, "a comma is missing before time",
			"a comma parts the keys between { and }: , time:"},
		{"- {pause: a, time: 30s}\n     ▶- {pause: b, time: 30s}" + more, indented, start},
		{"- pause: a\n       ▶time: 30s" + more, indented, start},
		{"- pause: a\n          ▶time: 30s" + more, "a second colon, or a line indented too far",
			`text with a colon in it needs quotes: "water: two minutes"; keys of one item start in one column`},
		{"- pause: a▶: b\n        time: 30s" + more, "a second colon, or a line indented too far",
			`text with a colon in it needs quotes: "water: two minutes"; keys of one item start in one column`},
		{"- {pause: ▶\"a, time: 30s}" + more, "a quote that is never closed", `quotes come in pairs: "4 x 2-2, 16 x 1-1"`},
		{"- pause: ▶@home\n        time: 30s" + more, "a sign that cannot begin a value", "put quotes round the value"},
		{"- {pause: \"a▶\\q\", time: 30s}" + more, `a \ in double quotes begins a code`,
			"write / for folders, or use single quotes"},
		{"- {pause: ▶*w, time: 30s}" + more, "a * repeats another place of the file, which is not read",
			"write it out; a * that is meant as text needs quotes"},
		{"- pause: a\n        ▶time 30s\n        cue: x" + more, "a line without a colon", "key: value"},
	})
}

func TestParseRefusesBadOwnMoves(t *testing.T) {
	frame := func(move string) string {
		return "onphrase: 1\nclass: Harbour\nmoves:\n  - " + move + "\nparts:\n" + goodPart
	}
	const classes = "back extension, bridge, crunch, curl, drive, hinge, leg lift, press, pulse, raise, row, sit-up, squat or swing"
	checkCases(t, frame, []badCase{
		{"▶{class: squat}", "a move needs name", "like name: crab reach"},
		{"{name: crab reach, class: ▶pres}", `class: "pres" is not one of ` + classes, "press?"},
		{"{name: crab reach, pattern: ▶pushing}", `pattern: "pushing" is not one of squat, lunge, hinge, push, pull, core, carry, locomotion, jump, isolation, combination or stretch`, ""},
		{"{name: crab reach, impact: ▶hihg}", `impact: "hihg" is not one of none, low or high`, "high?"},
		{"{name: crab reach, counts: ▶99}", "counts: 99 is out of range", "a whole number from 1 to 64"},
		{"{name: crab reach, switches: ▶sometimes}", `switches: "sometimes" is neither yes nor no`, "true or false"},
		{"{name: crab reach, ▶legs: 2}", `unknown key "legs" in a move`,
			"a move may have name, also, class, pattern, counts, least, source, switches, one-sided, impact or equipment"},
		{"{name: crab reach}\n  - ▶{name: Crab-Reaches}", `the name "Crab-Reaches" is taken by the move on line 4`,
			"every name stands for one move"},
		{"{name: crab reach, also: ▶crab}", `also is a list, not "crab"`, "also: [crab]"},
	})
}
