package desk_test

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"onphrase/cmd/internal/desk"
	"onphrase/plan"
)

// id is that of the item at a place of the answer.
func id(t *testing.T, v any, path ...any) string {
	t.Helper()
	return at(t, v, append(path, "id")...).(string)
}

func do(t *testing.T, d *desk.Desk, label string, acts string, dry bool) reply {
	t.Helper()
	return doFrom(t, d, at(t, must(t, d, `{"do":"class"}`), "revision").(string), label, acts, dry)
}

// doFrom is an act on a class as a screen saw it.
func doFrom(t *testing.T, d *desk.Desk, revision, label, acts string, dry bool) reply {
	t.Helper()
	return ask(t, d, fmt.Sprintf(`{"do":"act","revision":%q,"label":%q,"dry":%t,"acts":[%s]}`, revision, label, dry, acts))
}

func TestClassView(t *testing.T) {
	d, _ := openedClass(t)
	v := must(t, d, `{"do":"class"}`)
	for want, path := range map[any][]any{
		"Harbour 45": {"name"}, "Warm-up": {"parts", 0, "name"}, "block": {"parts", 0, "items", 0, "kind"},
		"A":     {"parts", 0, "items", 0, "name"},
		"squat": {"parts", 1, "items", 0, "name"}, "8 x 2-2": {"parts", 1, "items", 0, "text"},
		112.0:   {"parts", 1, "tracks", 0, "bpm"},
		"march": {"parts", 0, "items", 0, "moves", 0, "name"}, "heavy": {"parts", 1, "items", 0, "keys", "weight"},
	} {
		if got := at(t, v, path...); got != want {
			t.Errorf("%v is %v, want %v", path, got, want)
		}
	}
	if n := len(at(t, v, "parts", 0, "items", 0, "rows").([]any)); n != 2 {
		t.Errorf("the block of two sides has %d rows", n)
	}
	if n := len(at(t, v, "parts", 1, "tracks", 0, "phrases").([]any)); n != 10 {
		t.Errorf("%d phrases, want 10", n)
	}
}

// An act shows first what would be, then is done, undone and done again; the
// comment beside it stays, and the last is the first file to the byte.
func TestAct(t *testing.T) {
	d, h := openedClass(t)
	v := must(t, d, `{"do":"class"}`)
	squat := id(t, v, "parts", 1, "items", 0)
	set := fmt.Sprintf(`{"act":"set","item":%q,"key":"reps","value":"4 x 4-4, 8 x 2-2"}`, squat)
	dry := do(t, d, "squat: other repetitions", set, true)
	if got := at(t, dry, "parts", 1, "items", 0, "text"); got != "4 x 4-4, 8 x 2-2" {
		t.Errorf("dry: %v", got)
	}
	if string(h.files["/home/harbour.yaml"]) != harbour {
		t.Error("a trial changed the file")
	}
	done := do(t, d, "squat: other repetitions", set, false)
	if done["ok"] != true || at(t, done, "undo") != "squat: other repetitions" {
		t.Fatalf("done: %v", done)
	}
	want := strings.Replace(harbour, "8 x 2-2", "4 x 4-4, 8 x 2-2", 1)
	if got := string(h.files["/home/harbour.yaml"]); got != want {
		t.Errorf("the file is\n%s", got)
	}
	if got := string(h.files["/home/harbour.yaml.before"]); got != harbour {
		t.Error("no copy of the class as it was")
	}
	must(t, d, `{"do":"undo"}`)
	if got := string(h.files["/home/harbour.yaml"]); got != harbour {
		t.Errorf("undone, the file is\n%s", got)
	}
	must(t, d, `{"do":"redo"}`)
	if got := string(h.files["/home/harbour.yaml"]); got != want {
		t.Error("done again, the file is another")
	}
	// After a restart all of it can still be undone.
	again := desk.New(h, func() time.Time { return now })
	must(t, again, `{"do":"demo"}`)
	hearAll(t, again)
	must(t, again, `{"do":"undo"}`)
	if got := string(h.files["/home/harbour.yaml"]); got != harbour {
		t.Error("after a restart it cannot be undone")
	}
}

// What cannot be read is never written; what was changed elsewhere is not
// overwritten, and what is unchanged there is still found.
func TestActRefusedAndConflict(t *testing.T) {
	d, h := openedClass(t)
	v := must(t, d, `{"do":"class"}`)
	squat, water := id(t, v, "parts", 1, "items", 0), id(t, v, "parts", 1, "items", 1)
	if r := do(t, d, "x", fmt.Sprintf(`{"act":"set","item":%q,"key":"reps","value":"lots"}`, squat),
		false); r["ok"] != false || r["hint"] == "" {
		t.Errorf("nonsense was taken: %v", r)
	}
	if string(h.files["/home/harbour.yaml"]) != harbour {
		t.Fatal("the file was changed")
	}
	seen := at(t, v, "revision").(string)
	elsewhere := strings.Replace(harbour, "8 x 2-2", "16 x 2-2", 1)
	h.set("/home/harbour.yaml", []byte(elsewhere))
	r := doFrom(t, d, seen, "longer", fmt.Sprintf(`{"act":"set","item":%q,"key":"time","value":"20s"}`, water), false)
	if got := string(h.files["/home/harbour.yaml"]); !strings.Contains(got, "16 x 2-2") ||
		!strings.Contains(got, "time: 20s") {
		t.Errorf("both changes are wanted:\n%s\n%v", got, r["say"])
	}
	r = doFrom(t, d, seen, "x", fmt.Sprintf(`{"act":"set","item":%q,"key":"weight","value":"light"}`, squat), false)
	if r["ok"] != false || r["conflict"] == nil {
		t.Errorf("an item that was changed elsewhere was changed: %v", r["say"])
	}
	// Where something is to be put cannot be told in another file.
	r = doFrom(t, d, seen, "x", `{"act":"insert","to":"parts/0/do","at":0,"entry":{"pause":"water","time":"30s"}}`, false)
	if r["ok"] != false || r["conflict"] == nil {
		t.Errorf("something was put into a class that had changed: %v", r)
	}
}

// A long walk by requests: every state parses, and undone to the start the file
// is the first again.
func TestWalkByRequests(t *testing.T) {
	d, h := openedClass(t)
	r := rand.New(rand.NewPCG(21, 22))
	done := 0
	for range 150 {
		v := must(t, d, `{"do":"class"}`)
		part := r.IntN(2)
		items := at(t, v, "parts", part, "items").([]any)
		var act string
		switch item := items[r.IntN(len(items))]; r.IntN(5) {
		case 0:
			act = fmt.Sprintf(`{"act":"insert","to":"parts/%d/do","at":%d,"entry":{"set":"squat","reps":"8 x 2-2"}}`, part,
				r.IntN(len(items)+1))
		case 1:
			act = fmt.Sprintf(`{"act":"move","item":%q,"to":"parts/%d/do","at":0}`, id(t, item), r.IntN(2))
		case 2:
			act = fmt.Sprintf(`{"act":"copy","item":%q,"to":"parts/%d/do","at":0}`, id(t, item), r.IntN(2))
		case 3:
			act = fmt.Sprintf(`{"act":"delete","item":%q}`, id(t, item))
		default:
			act = fmt.Sprintf(`{"act":"set","item":%q,"key":"cue","value":"number %d: go"}`, id(t, item), r.IntN(9))
		}
		if do(t, d, "a step", act, false)["ok"] == true {
			done++
		}
		if _, problems := plan.Parse("", h.files["/home/harbour.yaml"]); len(problems) > 0 {
			t.Fatalf("%s: %v", act, problems)
		}
	}
	if done < 50 {
		t.Errorf("only %d acts were done", done)
	}
	for range done {
		must(t, d, `{"do":"undo"}`)
	}
	if got := string(h.files["/home/harbour.yaml"]); got != harbour {
		t.Errorf("undone to the start, the file is\n%s", got)
	}
}

func TestText(t *testing.T) {
	d, h := openedClass(t)
	r := must(t, d, `{"do":"text"}`)
	broken, err := json.Marshal(strings.Replace(harbour, "kind: strength", "kind: strenth", 1))
	if err != nil {
		t.Fatal(err)
	}
	r = must(t, d, `{"do":"text","revision":%q,"text":%s}`, at(t, r, "revision"), broken)
	if len(at(t, r, "problems").([]any)) != 1 || !strings.Contains(string(h.files["/home/harbour.yaml"]), "strenth") {
		t.Errorf("%v", r)
	}
	if r := ask(t, d, `{"do":"text","revision":"0000","text":"x"}`); r["ok"] != false {
		t.Error("a text of another revision was taken")
	}
	must(t, d, `{"do":"undo"}`)
	if got := at(t, must(t, d, `{"do":"state"}`), "class", "state"); got != "fine" {
		t.Errorf("undone, the class is %v", got)
	}
}

func TestMovesAndGrades(t *testing.T) {
	d, _ := openedClass(t)
	r := must(t, d, `{"do":"moves","search":"squat"}`)
	if n := len(at(t, r, "moves").([]any)); n < 2 {
		t.Errorf("%d moves called squat", n)
	}
	grades := map[string]string{}
	for _, g := range at(t, must(t, d, `{"do":"grades","move":"squat","bpm":130}`), "rhythms").([]any) {
		grades[at(t, g, "rhythm").(string)] = at(t, g, "grade").(string)
	}
	if grades["4-4"] != "" || grades["1-1"] == "" {
		t.Errorf("grades of a squat at 130 BPM: %v", grades)
	}
}
