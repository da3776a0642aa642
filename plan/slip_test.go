package plan_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/plan"
)

const quoteIt = "text with such a sign in it needs quotes: " // and the text in them

// What people type who have never heard of YAML, and what is said of it.
func TestSlipsInItems(t *testing.T) {
	checkCases(t, inItem, []badCase{
		{"-▶{set: squat, reps: 8 x 2-2}", "no space after the - that begins an item", "- {set: squat, reps: 8 x 2-2}"},
		{"▶– {set: squat, reps: 8 x 2-2}", "the sign – does not begin an item", "a plain hyphen and a space: - "},
		{"▶• {set: squat, reps: 8 x 2-2}", "the sign • does not begin an item", "a plain hyphen and a space: - "},
		{"- {set▶:squat, reps: 8 x 2-2}", "no space after the colon", "set: squat"},
		{"- {set ▶= squat, reps: 8 x 2-2}", "= stands where a key ends", "a colon and a space: key: value"},
		{"- {set: squat▶; reps: 8 x 2-2}", "a semicolon between two keys", "a comma parts them"},
		{"- {set: squat ▶reps: 8 x 2-2}", "a comma is missing before reps",
			"a comma parts the keys between { and }: , reps:"},
		{"- {set: squat▶， reps: 8 x 2-2}", "a full-width sign, ，", "the plain one: ,"},
		{"- {set: squat, reps: 8 x 2-2, cue: 'don▶'t drop'}", "the apostrophe ends the text that ' began",
			`double quotes let it stand: "don't drop"`},
		{"- {set: squat, reps: 8 x 2-2, cue: we are ▶#1}",
			"a # after a space begins a remark, and the rest of the line is not read", quoteIt + `"we are #1"`},
		{"- {set: squat, reps: 8 x 2-2, cue: now▶: down}", "a colon inside a text",
			`text with a colon in it needs quotes: "now: down"`},
		{"- {set: squat, cue: slow▶, strong, reps: 8 x 2-2}", "the comma ends the text here",
			`text with a comma in it needs quotes: "slow, strong"`},
		{"- {set: squat, reps: 8 x 2-2, cue: slow▶, and strong}", "the comma ends the text here",
			`text with a comma in it needs quotes: "slow, and strong"`},
		{"- {set: squat, reps: ▶“4 x 2-2, 16 x 1-1”}", "curly quotes do not hold a text together",
			`straight ones do: "4 x 2-2, 16 x 1-1"`},
		{"- {pause: water, time: 30▶,5s}", "a comma in a number", "30.5s? The decimal sign is a point"},
		{"- {pause: water, time: ▶30 sek}", `time: "30 sek" is no length`, "30s?"},
		{"- {pause: water, time: ▶30 Sek.}", `time: "30 sek." is no length`, "30s?"},
		{"- {pause: water, time: ▶30''}", `time: "30''" is no length`, "30s?"},
		{"- {pause: water, time: ▶1.5 min}", `time: "1.5 min" is no length`, "1:30?"},
		{"- {pause: water, time: ▶half a minute}", `time: "half a minute" is no length`, "30s?"},
		{"- {pause: water, time: ▶4x8}", `time: "4x8" is no length`, "4 eights?"},
		{"- {block: A, times: ▶2x, moves: [{move: march, counts: 32}]}", `times: "2x" is no whole number`,
			"2? Only the number is written here"},
		{`- {set: squat, reps: "▶4 slow, 8 doubles, 16 singles"}`, `reps: "4 slow" does not say how slow`,
			`digits say it: "4 x 4-4, 8 x 2-2, 16 x 1-1"?`},
		{`- {set: squat, reps: ▶8 doubles}`, `reps: "8 doubles" has two meanings`,
			"8 x 2-2 (2 down 2 up, 4 counts a rep), or 8 x 1-1 twice on one side?"},
		{`- {set: squat, reps: ▶8x}`, "reps: 8 has no rhythm", "8 x 2-2 (2 down 2 up) or 8 x 1-1 (1 down 1 up)?"},
		{`- {set: squat, reps: ▶x8 2-2}`, `reps: "x8 2-2" is no number of repetitions in a rhythm`, "8 x 2-2?"},
		{"- {pause: water, time: 30s, ▶Cue: drink}", "the key Cue is written small", "cue:"},
		{"- {▶\u200bpause: water, time: 30s}", "a sign that looks like a space and is none (U+200B)",
			"from a web page? Delete it and press the space bar"},
		{"- {pause:▶\u00a0water, time: 30s}", "a sign that looks like a space and is none (U+00A0)",
			"from a web page? Delete it and press the space bar"},
	})
}

func TestSlipsInParts(t *testing.T) {
	const do = "    do: [{pause: water, time: 30s}]\n"
	const space, press = "a sign that looks like a space and is none (U+00A0)",
		"from a web page? Delete it and press the space bar"
	checkCases(t, inClass, []badCase{
		{"  - part: A\n    kind▶:strength\n    tracks: [a.mp3]\n" + do, "no space after the colon", "kind: strength"},
		{"  - part: A\n    kind▶： strength\n    tracks: [a.mp3]\n" + do, "a full-width sign, ：", "the plain one: :"},
		{"  - part: A\n    kind:▶\u00a0strength\n    tracks: [a.mp3]\n" + do, space, press},
		{"  - part: A\n    tracks: [a.mp3]\n   ▶\u00a0do: [{pause: water, time: 30s}]\n", space, press},
		{"  -▶\tpart: A\n    tracks: [a.mp3]\n" + do, "a tab after -", "one space: - "},
		{"  - part: A\n    bpm: 126▶,5\n    tracks: [a.mp3]\n" + do, "a comma in a number",
			"126.5? The decimal sign is a point"},
		{"  - part: A\n    tracks: [ferry ▶#1.mp3]\n" + do,
			"a # after a space begins a remark, and the rest of the line is not read", quoteIt + `"ferry #1.mp3"`},
		{"  - part: A\n    tracks:\n      - ▶ferry #1.mp3\n" + do,
			"tracks: a # after a space begins a remark, and the rest of the line is not read",
			`quotes keep it together: "ferry #1.mp3"`},
		{"  - part: ▶Round #1\n    tracks: [a.mp3]\n" + do, "part: a # after a space begins a remark, and the rest of the line is not read", `quotes keep it together: "Round #1"`},
		{"  - part: A\n    tracks: [ferry ▶[live].mp3]\n" + do, "a [ in a name begins a list",
			quoteIt + `"ferry [live].mp3"`},
		{"  - part: A\n    tracks:\n      - ▶[live] ferry.mp3\n" + do, "a [ in a name begins a list",
			quoteIt + `"[live] ferry.mp3"`},
		{"  - part: A\n    tracks: [one.mp3, ▶*star.mp3]\n" + do, "a name cannot begin with *", quoteIt + `"*star.mp3"`},
		{"  - part: A\n    tracks: [▶&me.mp3]\n" + do, "a name cannot begin with &", quoteIt + `"&me.mp3"`},
		{"  - part: A\n    tracks: ▶a.mp3, b.mp3\n" + do, `tracks is a list, not "a.mp3, b.mp3"`, "tracks: [a.mp3, b.mp3]"},
	})
}

func TestSlipsAtTheTop(t *testing.T) {
	checkCases(t, func(s string) string { return s + "parts:\n" + goodPart }, []badCase{
		{"onphrase: 1\nclass: x\nmusic: \"C:▶\\Users\\Ann\\Music\"\n", `a \ between double quotes begins a code`,
			`/ goes everywhere: "C:/Users/Ann/Music"`},
		{"onphrase: 1\nclass: ▶“Harbour: spring”\n", "curly quotes do not hold a text together",
			`straight ones do: "Harbour: spring"`},
		{"▶Onphrase: 1\nclass: x\n", "the key Onphrase is written small", "onphrase:"},
		{"onphrase: 1\nclass: Gl▶\x8acks\n", "a letter in an old encoding, not in UTF-8",
			"save the file again, with UTF-8 as encoding; then look at ä, é and the like"},
		{"onphrase: 1\nclass: x\nslot: ▶45\n", `slot: "45" is no time in the studio`, `"45:00" for 45 minutes?`},
	})
}

// What looks odd and is read as it was meant.
func TestNoSlips(t *testing.T) {
	for _, src := range []string{
		"\ufeff" + inItem("- {pause: water, time: 30s}"),
		strings.ReplaceAll(inItem("- {pause: water, time: 30s}"), "\n", "\r\n"),
		inItem("- {set: bent-over\u00a0row, reps: 8\u00a0×\u00a02–2}"),
		inItem("- {pause: water, time: 1:30}"),
		inItem("- {pause: water, time: 1 Min}"),
		"onphrase: 1\nclass:\tx\nslot: 45:00\nparts:\n" + goodPart,
		"onphrase: 1\nclass: x # kind:strength, don't -{set}\nparts:\n" + goodPart,
		"onphrase: 1\nclass: 'kind:strength'\nmusic: C:\\Users\\Ann\nparts:\n" + goodPart,
	} {
		if _, problems := plan.Parse("class.yaml", []byte(src)); len(problems) > 0 {
			t.Errorf("%s\n%s", src, listProblems(problems))
		}
	}
	moves := "onphrase: 1\nbands: [{kind: core, inside: 126–132}]\n"
	if _, problems := plan.ParseCatalog("moves.yaml", []byte(moves), plan.Builtin()); len(problems) > 0 {
		t.Error(listProblems(problems))
	}
}

// A slip hides nothing: all that is wrong in a file is said at once, and every
// place is that of the file, not of the mended copy.
func TestSlipsHideNothing(t *testing.T) {
	src := inPart("    do:\n      -{set:squat, reps: 8 x 2-2, weight: 6}\n      - {pause: water, time: 30}\n" +
		"  - part: B\n    kind:core\n    tracks: [x [y].mp3]\n    do: [{pause: water, time: 3}]\n")
	_, got := plan.Parse("class.yaml", []byte(src))
	var said []string
	for _, p := range got {
		said = append(said, strings.Split(p.In("c"), "\n")[0])
	}
	want := []string{
		"c:7:8: no space after the - that begins an item",
		"c:7:12: no space after the colon",
		"c:7:43: weight: 6 has no unit",
		"c:8:30: time: 30 has no unit",
		"c:10:9: no space after the colon",
		"c:11:16: a [ in a name begins a list",
		"c:12:31: time: 3 has no unit",
	}
	if diff := cmp.Diff(want, said); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// The keys that slips are looked for at are those of the files.
func TestSlipKeysAreThoseOfTheSchemas(t *testing.T) {
	keys := regexp.MustCompile(`(?m)^ +"([a-z -]+)": \{`)
	defs := regexp.MustCompile(`(?m)^    "([a-z -]+)": \{`)
	for _, schema := range []string{plan.ClassSchema, plan.MovesSchema} {
		var kinds []string
		for _, m := range defs.FindAllStringSubmatch(schema, -1) {
			kinds = append(kinds, m[1])
		}
		for _, m := range keys.FindAllStringSubmatch(schema, -1) {
			if slices.Contains([]string{"properties", "items"}, m[1]) || slices.Contains(kinds, m[1]) &&
				!strings.Contains(schema, "  \""+m[1]+"\": {\"$ref") {
				continue
			}
			src := "onphrase: 1\nclass: x\n" + m[1] + ":1\nparts:\n" + goodPart
			if _, problems := plan.Parse("c", []byte(src)); !strings.Contains(listProblems(problems),
				"no space after the colon") {
				t.Errorf("%s: %s", m[1], listProblems(problems))
			}
		}
	}
}
