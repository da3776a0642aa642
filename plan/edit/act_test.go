package edit_test

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"regexp"
	"sort"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/plan"
	"onphrase/plan/edit"
)

const written = `onphrase: 1
class: Harbour # ours
slot: "45:00"
parts:
  # to get warm
  - part: Warm-up
    kind: warm-up
    tracks: [tidewater.mp3]
    do:
      - block: A
        sides: both
        moves:
          - {move: march, counts: 8}   # easy
          - {move: step touch, counts: 8}
          - {move: heel curl, counts: 16}
  - part: Round 1
    kind: strength
    tracks: [slow-ferry.mp3]
    do:
      # standing tall
      - {interval: standing climber, time: 30s}
      - set: bent-over row
        reps: "4 x 2-2, 16 x 1-1"
        weight: heavy # the bar
      - {set: deadlift, reps: 8 x 2-2}
      - {pause: water, time: 30s}
`

func value(v any) json.RawMessage {
	raw, err := json.Marshal(v)
	if err != nil {
		panic(err)
	}
	return raw
}

func TestDo(t *testing.T) {
	for _, c := range []struct {
		name      string
		act       edit.Act
		old, want string // what stands in the place of what
	}{
		{"a key in braces", edit.Act{Act: "set", Item: "parts/1/do/2", Key: "weight", Value: value("heavy")},
			"{set: deadlift, reps: 8 x 2-2}", "{set: deadlift, reps: 8 x 2-2, weight: heavy}"},
		{"a text with a comma", edit.Act{Act: "set", Item: "parts/1/do/2", Key: "reps", Value: value("4 x 4-4, 8 x 2-2")},
			"reps: 8 x 2-2}", `reps: "4 x 4-4, 8 x 2-2"}`},
		{"a text that YAML would misread", edit.Act{Act: "set", Item: "parts/1/do/2", Key: "cue",
			Value: value("hips: back # now")},
			"reps: 8 x 2-2}", "reps: 8 x 2-2, cue: 'hips: back # now'}"},
		{"a key of lines keeps its comment", edit.Act{Act: "set", Item: "parts/1/do/1", Key: "weight", Value: value("light")},
			"weight: heavy # the bar", "weight: light # the bar"},
		{"a new key of lines", edit.Act{Act: "set", Item: "parts/1/do/1", Key: "sides", Value: value("both")},
			"weight: heavy # the bar\n", "weight: heavy # the bar\n        sides: both\n"},
		{"of a part, before its items", edit.Act{Act: "set", Item: "parts/1", Key: "bpm", Value: value(126)},
			"    tracks: [slow-ferry.mp3]\n", "    tracks: [slow-ferry.mp3]\n    bpm: 126\n"},
		{"of the class", edit.Act{Act: "set", Key: "music", Value: value("music/")}, "slot: \"45:00\"\n",
			"slot: \"45:00\"\nmusic: music/\n"},
		{"songs", edit.Act{Act: "set", Item: "parts/0", Key: "tracks", Value: value([]string{"a.mp3", "b, c.mp3"})},
			"[tidewater.mp3]", `[a.mp3, "b, c.mp3"]`},
		{"a key taken away", edit.Act{Act: "unset", Item: "parts/1/do/1", Key: "weight"}, "        weight: heavy # the bar\n",
			""},
		{"in braces", edit.Act{Act: "unset", Item: "parts/1/do/2", Key: "reps"}, ", reps: 8 x 2-2", ""},
		{"an item put in", edit.Act{Act: "insert", To: "parts/1/do", At: 1,
			Entry: json.RawMessage(`{"set":"squat","reps":"8 x 2-2"}`)},
			"      - set: bent-over row", "      - {set: squat, reps: 8 x 2-2}\n      - set: bent-over row"},
		{"above the comments of the first", edit.Act{Act: "insert", To: "parts/1/do", At: 0,
			Entry: json.RawMessage(`{"pause":"water","time":"8 counts"}`)},
			"      # standing tall", "      - {pause: water, time: 8 counts}\n      # standing tall"},
		{"at the end", edit.Act{Act: "insert", To: "parts/1/do", At: 4,
			Entry: json.RawMessage(`{"set":"squat","reps":"8 x 2-2"}`)},
			"      - {pause: water, time: 30s}\n", "      - {pause: water, time: 30s}\n      - {set: squat, reps: 8 x 2-2}\n"},
		{"a block", edit.Act{Act: "insert", To: "parts/0/do", At: 1,
			Entry: json.RawMessage(`{"block":"B","moves":[{"move":"march","counts":32}]}`)},
			"counts: 16}\n", "counts: 16}\n      - block: B\n        moves:\n          - {move: march, counts: 32}\n"},
		{"deleted with its comment", edit.Act{Act: "delete", Item: "parts/1/do/0"},
			"      # standing tall\n      - {interval: standing climber, time: 30s}\n", ""},
		{"moved within", edit.Act{Act: "move", Item: "parts/1/do/2", To: "parts/1/do", At: 1},
			"      - set: bent-over row\n        reps: \"4 x 2-2, 16 x 1-1\"\n        weight: heavy # the bar\n      - {set: deadlift, reps: 8 x 2-2}\n",
			"      - {set: deadlift, reps: 8 x 2-2}\n      - set: bent-over row\n        reps: \"4 x 2-2, 16 x 1-1\"\n        weight: heavy # the bar\n"},
		{"made a superset", edit.Act{Act: "wrap", Item: "parts/1/do/2", Count: 1,
			Entry: json.RawMessage(`{"superset":"Back","rounds":2}`)},
			"      - {set: deadlift, reps: 8 x 2-2}\n",
			"      - superset: Back\n        rounds: 2\n        do:\n          - {set: deadlift, reps: 8 x 2-2}\n"},
		{"a move of a block", edit.Act{Act: "set", Item: "parts/0/do/0/moves/0", Key: "counts", Value: value(16)},
			"march, counts: 8}   # easy", "march, counts: 16}   # easy"},
		{"a move before the others", edit.Act{Act: "move", Item: "parts/0/do/0/moves/2", To: "parts/0/do/0/moves", At: 0},
			"          - {move: march, counts: 8}   # easy\n          - {move: step touch, counts: 8}\n          - {move: heel curl, counts: 16}\n",
			"          - {move: heel curl, counts: 16}\n          - {move: march, counts: 8}   # easy\n          - {move: step touch, counts: 8}\n"},
	} {
		want := strings.Replace(written, c.old, c.want, 1)
		if !strings.Contains(written, c.old) {
			t.Fatalf("%s: the case is wrong", c.name)
		}
		for _, eol := range []string{"\n", "\r\n"} {
			src := strings.ReplaceAll(written, "\n", eol)
			got, err := edit.Do([]byte(src), c.act)
			if err != nil {
				t.Errorf("%s: %v", c.name, err)
				continue
			}
			if d := cmp.Diff(strings.ReplaceAll(want, "\n", eol), string(got)); d != "" {
				t.Errorf("%s (-want +got):\n%s", c.name, d)
			}
		}
	}
}

// Several acts of one request are about what each of them names, wherever the
// ones before have moved it.
func TestFrom(t *testing.T) {
	src := []byte(written)
	ids, err := edit.IDs(src)
	if err != nil {
		t.Fatal(err)
	}
	out, err := edit.From(edit.Revision(src), src, edit.Act{Act: "delete", Item: ids["parts/1/do/0"]},
		edit.Act{Act: "set", Item: ids["parts/1/do/1"], Key: "cue", Value: value("long spine")})
	if err != nil || !strings.Contains(string(out), "weight: heavy # the bar\n        cue: long spine\n") {
		t.Errorf("%v\n%s", err, out)
	}
	if _, err := edit.From("another", src, edit.Act{Act: "insert", To: "parts/0/do", At: 0, Entry: value(map[string]string{"pause": "water"})}); err == nil {
		t.Error("something was put into another file")
	}
}

// A # in a text of several lines is no comment; a comment above a key stays with
// it; keys may be in quotes.
func TestDoAroundComments(t *testing.T) {
	text := strings.Replace(written, "      - {pause: water, time: 30s}\n", "      - pause: water\n        time: 30s\n        cue: |\n          drink\n          # not less\n", 1)
	out, err := edit.Do([]byte(text), edit.Act{Act: "delete", Item: "parts/1/do/3"})
	if err != nil || strings.Contains(string(out), "not less") {
		t.Errorf("%v\n%s", err, out)
	}
	above := strings.Replace(written, "parts:\n", "# from the first to the last\nparts:\n", 1)
	out, err = edit.Do([]byte(above), edit.Act{Act: "set", Key: "music", Value: value("music/")})
	if err != nil || !strings.Contains(string(out), "music: music/\n# from the first to the last\nparts:\n") {
		t.Errorf("%v\n%s", err, out)
	}
	quoted := strings.Replace(written, "        weight: heavy # the bar\n", "        \"weight\": |\n          heavy\n", 1)
	out, err = edit.Do([]byte(quoted), edit.Act{Act: "set", Item: "parts/1/do/1", Key: "weight", Value: value("light")})
	if err != nil || !strings.Contains(string(out), "\"weight\": light\n") {
		t.Errorf("%v\n%s", err, out)
	}
}

func TestDoRefuses(t *testing.T) {
	for _, c := range []struct {
		name, src string
		act       edit.Act
	}{
		{"no such item", written, edit.Act{Act: "delete", Item: "parts/1/do/9"}},
		{"no such act", written, edit.Act{Act: "paint", Item: "parts/1"}},
		{"no value", written, edit.Act{Act: "set", Item: "parts/1", Key: "kind"}},
		{"into itself", written, edit.Act{Act: "move", Item: "parts/1", To: "parts/1/do", At: 0}},
		{"the key that says what it is", written, edit.Act{Act: "unset", Item: "parts/1/do/1", Key: "set"}},
		{"names for parts of the file", strings.Replace(written, "tracks: [tidewater.mp3]", "tracks: &t [tidewater.mp3]", 1),
			edit.Act{Act: "delete", Item: "parts/1/do/0"}},
	} {
		if out, err := edit.Do([]byte(c.src), c.act); err == nil {
			t.Errorf("%s: done:\n%s", c.name, out)
		}
	}
}

// comments are those of a file, in alphabetic order.
func comments(src []byte) []string {
	all := aComment.FindAllString(string(src), -1)
	sort.Strings(all)
	return all
}

var (
	inDo     = regexp.MustCompile(`/do/\d+$`)
	inParts  = regexp.MustCompile(`^parts/\d+$`)
	aComment = regexp.MustCompile(`#[^\n\r]*`)
)

// randomAct is something that a person might do to a class.
func randomAct(r *rand.Rand, src []byte) edit.Act {
	ids, err := edit.IDs(src)
	if err != nil {
		return edit.Act{Act: "none"}
	}
	var items, lists []string
	for path, id := range ids {
		switch {
		case inDo.MatchString(path):
			items = append(items, id)
		case inParts.MatchString(path):
			lists = append(lists, path+"/do")
		}
	}
	sort.Strings(items)
	sort.Strings(lists)
	if len(lists) == 0 || len(items) == 0 {
		return edit.Act{Act: "insert", To: "parts/0/do", At: 0, Entry: json.RawMessage(`{"set":"squat","reps":"8 x 2-2"}`)}
	}
	item, list := items[r.IntN(len(items))], lists[r.IntN(len(lists))]
	at := r.IntN(4)
	texts := []string{"hips back", "now: press", "it's {here}, [there]", "- dash", "#1", "\"quoted\"", "yes", "12",
		" spaced ", "ümlaut"}
	switch r.IntN(8) {
	case 0, 1:
		return edit.Act{Act: "set", Item: item, Key: []string{"cue", "easier", "harder"}[r.IntN(3)],
			Value: value(texts[r.IntN(len(texts))])}
	case 2:
		entries := []string{`{"set":"squat","reps":"8 x 2-2, 16 x 1-1","weight":"heavy"}`, `{"pause":"water","time":"30s"}`,
			`{"interval":"jog","time":"32 counts"}`,
			`{"block":"C","moves":[{"move":"march","counts":16},{"move":"step touch","counts":16}]}`}
		return edit.Act{Act: "insert", To: list, At: at, Entry: json.RawMessage(entries[r.IntN(len(entries))])}
	case 3:
		return edit.Act{Act: "delete", Item: item}
	case 4:
		return edit.Act{Act: "move", Item: item, To: list, At: at}
	case 5:
		return edit.Act{Act: "copy", Item: item, To: list, At: at}
	case 6:
		return edit.Act{Act: "unset", Item: item, Key: "cue"}
	}
	return edit.Act{Act: "wrap", Item: item, Count: 1,
		Entry: json.RawMessage(fmt.Sprintf(`{"superset":"S%d","rounds":2}`, r.IntN(9)))}
}

// A long walk of acts: every state can be read, or the act was refused; what is
// neither deleted nor unset keeps its comments; undone to the start it is the
// first file, done again to the end the last, also through a file in between.
func TestRandomWalk(t *testing.T) {
	acts := 2000
	if testing.Short() {
		acts = 300
	}
	r := rand.New(rand.NewPCG(11, 12))
	src := []byte(written)
	var h edit.History
	done := 0
	for range acts {
		a := randomAct(r, src)
		out, err := edit.Do(src, a)
		if err != nil {
			continue
		}
		if a.Act != "delete" && a.Act != "unset" && a.Act != "copy" && a.Act != "set" {
			if a, b := comments(src), comments(out); len(a) > len(b) {
				t.Fatalf("comments were lost (-before +after):\n%s\n%s", cmp.Diff(a, b), out)
			}
		}
		if _, problems := plan.Parse("", out); len(problems) > 0 {
			continue // what plan refuses is not kept by the desk either
		}
		if len(out) > 6_000 {
			continue
		}
		h.Did(edit.StepOf(a.Act, src, out))
		src = out
		done++
	}
	if done < acts/3 {
		t.Errorf("only %d of %d acts could be done", done, acts)
	}
	last := src
	kept, err := h.Bytes()
	if err != nil {
		t.Fatal(err)
	}
	again, err := edit.ReadHistory(kept)
	if err != nil || !again.Fits(last) {
		t.Fatalf("the history does not survive: %v", err)
	}
	for range done {
		if src, _, err = again.Undo(src); err != nil {
			t.Fatal(err)
		}
	}
	if d := cmp.Diff(written, string(src)); d != "" {
		t.Errorf("undone to the start (-want +got):\n%s", d)
	}
	for range done {
		if src, _, err = again.Redo(src); err != nil {
			t.Fatal(err)
		}
	}
	if string(src) != string(last) {
		t.Error("done again to the end, the file is another")
	}
	t.Logf("%d of %d acts done", done, acts)
}

// An item that was moved by somebody else is found by its own bytes; one that
// was changed is not.
func TestFind(t *testing.T) {
	ids, err := edit.IDs([]byte(written))
	if err != nil {
		t.Fatal(err)
	}
	id := ids["parts/1/do/2"]
	moved, err := edit.Do([]byte(written), edit.Act{Act: "move", Item: "parts/1/do/2", To: "parts/0/do", At: 0})
	if err != nil {
		t.Fatal(err)
	}
	if path, err := edit.Find(moved, id); path != "parts/0/do/0" {
		t.Errorf("found at %q, %v", path, err)
	}
	changed, err := edit.Do([]byte(written), edit.Act{Act: "set", Item: id, Key: "reps", Value: value("4 x 4-4")})
	if err != nil {
		t.Fatal(err)
	}
	if path, err := edit.Find(changed, id); err == nil {
		t.Errorf("found at %q, though it was changed", path)
	}
	// Of twins nobody can tell which is meant.
	twins, err := edit.Do([]byte(written), edit.Act{Act: "copy", Item: "parts/1/do/2", To: "parts/1/do", At: 0})
	if err != nil {
		t.Fatal(err)
	}
	if path, err := edit.Find(twins, id); err == nil {
		t.Errorf("found at %q, though there are two", path)
	}
}
