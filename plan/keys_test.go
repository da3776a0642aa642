package plan_test

import (
	"encoding/json"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/plan"
)

// object is the part of a schema that describes keys and values.
type object struct {
	Properties map[string]object
	Defs       map[string]object `json:"$defs"`
	Items      *object
	Required   []string
}

func schemaObject(t *testing.T, text string) object {
	t.Helper()
	var o object
	if err := json.Unmarshal([]byte(text), &o); err != nil {
		t.Fatal(err)
	}
	return o
}

// The schemas have exactly the keys that the reader knows, which it lists when
// it meets an unknown one.
func TestSchemaHasEveryKey(t *testing.T) {
	class, moves := schemaObject(t, plan.ClassSchema), schemaObject(t, plan.MovesSchema)
	const odd = "qqqqqqqqqqqq: 1"
	for _, tt := range []struct {
		what, src string
		has       object
	}{
		{"a class file", "onphrase: 1\nclass: x\n" + odd + "\nparts:\n" + goodPart, class},
		{"a part", inPart("    " + odd + "\n    do: [{pause: water, time: 30s}]\n"), class.Defs["part"]},
		{"a block", inItem("- {block: A, " + odd + ", moves: [{move: march, counts: 32}]}"), class.Defs["block"]},
		{"a move of a block", inItem("- {block: A, moves: [{move: march, counts: 32, " + odd + "}]}"),
			*class.Defs["block"].Properties["moves"].Items},
		{"a layer", inItem("- {block: A, build: layering, moves: [{move: march, counts: 32}], layers: [{move: march, add: arms, " + odd + "}]}"), *class.Defs["block"].Properties["layers"].Items},
		{"a set", inItem("- {set: squat, reps: 8 x 2-2, " + odd + "}"), class.Defs["set"]},
		{"an interval", inItem("- {interval: jack, time: 30s, " + odd + "}"), class.Defs["interval"]},
		{"a pause", inItem("- {pause: water, time: 30s, " + odd + "}"), class.Defs["pause"]},
		{"a superset", inItem("- {superset: S, " + odd + ", do: [{pause: water, time: 30s}]}"), class.Defs["superset"]},
		{"a repeat", inPart("    do:\n      - {pause: water, time: 30s}\n      - {repeat: water, " + odd + "}\n"),
			class.Defs["repeat"]},
		{"a move", "onphrase: 1\nclass: x\nmoves: [{name: x, " + odd + "}]\nparts:\n" + goodPart, class.Defs["move"]},
		{"a limit", "onphrase: 1\nlimits: [{class: squat, fine: 0.8s, too fast: 0.5s, " + odd + "}]\n", moves.Defs["limit"]},
		{"the limit of one way", "onphrase: 1\nlimits: [{class: squat, fine: 0.8s, too fast: 0.5s, up: {fine: 0.4s, " + odd +
			"}}]\n", moves.Defs["way"]},
		{"a band", "onphrase: 1\nbands: [{kind: core, inside: 100-120, " + odd + "}]\n", moves.Defs["band"]},
		{"a need", "onphrase: 1\nneeds: [{for: floor, time: 8s, " + odd + "}]\n", moves.Defs["need"]},
		{"a moves file", "onphrase: 1\n" + odd + "\nneeds: [{for: floor, time: 8s}]\n", moves},
	} {
		_, problems := plan.Parse("class.yaml", []byte(tt.src))
		if !strings.Contains(tt.src, "class: x") && !strings.Contains(tt.src, "parts:") {
			_, problems = plan.ParseCatalog("moves.yaml", []byte(tt.src), plan.Builtin())
		}
		if len(problems) != 1 {
			t.Fatalf("%s: %s", tt.what, listProblems(problems))
		}
		keys, ok := strings.CutPrefix(problems[0].Hint, tt.what+" may have ")
		if !ok {
			t.Fatalf("%s: hint %q", tt.what, problems[0].Hint)
		}
		reads := regexp.MustCompile(`, | or `).Split(keys, -1)
		slices.Sort(reads)
		if diff := cmp.Diff(reads, slices.Sorted(maps.Keys(tt.has.Properties))); diff != "" {
			t.Errorf("%s (-read +schema):\n%s", tt.what, diff)
		}
	}
}

// A move has the same keys in a class file and in a moves file.
func TestMoveInBothSchemas(t *testing.T) {
	var both [2]any
	for i, text := range []string{plan.ClassSchema, plan.MovesSchema} {
		var s map[string]map[string]any
		if err := json.Unmarshal([]byte(text), &map[string]any{}); err != nil {
			t.Fatal(err)
		}
		_ = json.Unmarshal([]byte(text), &s) // $defs is an object; the texts beside it are passed over
		both[i] = s["$defs"]["move"]
	}
	if diff := cmp.Diff(both[0], both[1]); diff != "" || both[0] == nil {
		t.Errorf("(-class +moves):\n%s", diff)
	}
}

// The schema names every class of movement and every pattern.
func TestSchemaNamesClasses(t *testing.T) {
	for _, class := range plan.Builtin().Classes() {
		if class != plan.PulseClass && !regexp.MustCompile(`[ ,]`+class+`[,;]`).MatchString(plan.ClassSchema) {
			t.Errorf("the class of movement %s is not in the schema", class)
		}
	}
	for _, pattern := range plan.Patterns {
		if !strings.Contains(plan.ClassSchema, `"`+pattern+`"`) {
			t.Errorf("the pattern %s is not in the schema", pattern)
		}
	}
}
