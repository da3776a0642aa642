package plan_test

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"onphrase/plan"
)

// The package comment is the manual of the class file: it names every key
// that the reader knows. The keys come from the reader itself, which lists
// them when it meets an unknown one.
func TestDocNamesEveryKey(t *testing.T) {
	doc, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	const odd = "qqqqqqqqqqqq: 1"
	for what, src := range map[string]string{
		"a class file":      "onphrase: 1\nclass: x\n" + odd + "\nparts:\n" + goodPart,
		"a part":            inPart("    " + odd + "\n    do: [{pause: water, time: 30s}]\n"),
		"a block":           inItem("- {block: A, " + odd + ", moves: [{move: march, counts: 32}]}"),
		"a move of a block": inItem("- {block: A, moves: [{move: march, counts: 32, " + odd + "}]}"),
		"a set":             inItem("- {set: squat, reps: 8 x 2-2, " + odd + "}"),
		"an interval":       inItem("- {interval: jack, time: 30s, " + odd + "}"),
		"a pause":           inItem("- {pause: water, time: 30s, " + odd + "}"),
		"a move":            "onphrase: 1\nclass: x\nmoves: [{name: x, " + odd + "}]\nparts:\n" + goodPart,
		"a superset":        inItem("- {superset: S, " + odd + ", do: [{pause: water, time: 30s}]}"),
		"a layer":           inItem("- {block: A, build: layering, moves: [{move: march, counts: 32}], layers: [{move: march, add: arms, " + odd + "}]}"),
		"a repeat":          inPart("    do:\n      - {pause: water, time: 30s}\n      - {repeat: water, " + odd + "}\n"),
		"a limit":           "onphrase: 1\nlimits: [{class: squat, fine: 0.8s, too fast: 0.5s, " + odd + "}]\n",
		"a band":            "onphrase: 1\nbands: [{kind: core, inside: 100-120, " + odd + "}]\n",
		"a need":            "onphrase: 1\nneeds: [{for: floor, time: 8s, " + odd + "}]\n",
		"a moves file":      "onphrase: 1\n" + odd + "\nneeds: [{for: floor, time: 8s}]\n",
	} {
		_, problems := plan.Parse("class.yaml", []byte(src))
		if strings.HasPrefix(src, "onphrase: 1\n") && !strings.Contains(src, "class: x") && !strings.Contains(src, "parts:") {
			_, problems = plan.ParseCatalog("moves.yaml", []byte(src), plan.Builtin())
		}
		if len(problems) != 1 {
			t.Fatalf("%s: %s", what, listProblems(problems))
		}
		keys, ok := strings.CutPrefix(problems[0].Hint, what+" may have ")
		if !ok {
			t.Fatalf("%s: hint %q", what, problems[0].Hint)
		}
		for _, key := range regexp.MustCompile(`, | or `).Split(keys, -1) {
			row := regexp.MustCompile(`(?m)^//\t` + key + ` +\S|[{ \t]` + key + `:(?: |$)`)
			if !row.Match(doc) {
				t.Errorf("%s: the key %s is not in the package comment", what, key)
			}
		}
	}
}

// Every class of movement that a user may name is in the package comment.
func TestDocNamesEveryClass(t *testing.T) {
	doc, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, class := range plan.Builtin().Classes() {
		if class != plan.PulseClass && !regexp.MustCompile(`[ \t]`+class+`[,;]`).Match(doc) {
			t.Errorf("the class of movement %s is not in the package comment", class)
		}
	}
	if !slices.IsSorted(plan.Builtin().Classes()) {
		t.Error("the classes of movement are not sorted")
	}
}
