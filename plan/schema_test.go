package plan_test

import (
	"io/fs"
	"os"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
	"gopkg.in/yaml.v3"

	"onphrase/plan"
	"onphrase/samples"
)

func classSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(plan.ClassSchema))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("class.schema.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("class.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func validate(t *testing.T, s *jsonschema.Schema, src string) error {
	t.Helper()
	var doc any
	if err := yaml.Unmarshal([]byte(src), &doc); err != nil {
		t.Fatalf("%v\n%s", err, src)
	}
	return s.Validate(doc)
}

// everyKey uses every key that a class file may have.
const everyKey = `onphrase: 1
class: Everything 45
slot: "45:00"
music: music/
facing: class
known: tempo-jump
moves:
  - {name: crab reach, also: [side crab], class: press, pattern: push, counts: 4, least: 2 counts, source: my coach, switches: true, one-sided: false, impact: low, equipment: [mat, band]}
parts:
  - part: Warm-up
    kind: warm-up
    tracks: [tidewater.mp3, 2.mp3]
    start: phrase 2
    bpm: 126.5
    taught: half
    rounds: 2
    known: [trust-low, short-rest]
    do:
      - block: A
        sides: both
        times: 2
        on: phrase
        cue: smile
        setup: 8 counts
        easier: no arms
        harder: faster arms
        hold: march
        build: layering
        layers: [{move: march, add: arms overhead}, {move: step touch, becomes: heel curl}]
        moves: [{move: march, counts: 16}, {move: step touch, counts: 16}]
      - {set: squat, reps: "4 x 2-2, 16 x 1-1", weight: heavy, range: half, sides: right, on: count, known: {rhythm-too-fast: "light bar, they know it", tempo-jump: null}}
      - {interval: squat, time: 30s, sides: both, on: clock}
      - {interval: squat, series: 8 x 20s/10s, weight: 8 kg}
      - {pause: towel, time: "1:30", for: rest, on: eight}
      - superset: Legs
        rounds: 3
        known: tempo-jump
        do:
          - {set: squat, reps: 8 x 2-2}
          - {repeat: squat, cue: once more, setup: 10s, easier: half range, harder: slower, known: spare-counts}
`

// What Parse reads, the schema allows.
func TestSchemaAllows(t *testing.T) {
	s := classSchema(t)
	files := map[string]string{"every key": everyKey}
	for name, read := range map[string]func() ([]byte, error){
		"demo":    func() ([]byte, error) { return fs.ReadFile(samples.Demo(), "class.yaml") },
		"harbour": func() ([]byte, error) { return os.ReadFile("testdata/harbour.yaml") },
	} {
		src, err := read()
		if err != nil {
			t.Fatal(err)
		}
		files[name] = string(src)
	}
	for name, src := range files {
		if _, problems := plan.Parse("class.yaml", []byte(src)); len(problems) > 0 {
			t.Errorf("%s is not a clean class: %s", name, listProblems(problems))
		}
		if err := validate(t, s, src); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// What is wrong in the form of a file is refused by both, line by line of the
// class that uses every key.
func TestSchemaRefuses(t *testing.T) {
	s := classSchema(t)
	for _, change := range [][2]string{
		{"onphrase: 1\n", "onphrase: 2\n"},
		{"class: Everything 45\n", ""},
		{"facing: class\n", "facing: window\n"},
		{"slot: \"45:00\"\n", "slot: [45, 0]\n"},
		{"    kind: warm-up\n", "    kind: aerobics\n"},
		{"    tracks: [tidewater.mp3, 2.mp3]\n", ""},
		{"    tracks: [tidewater.mp3, 2.mp3]\n", "    tracks: tidewater.mp3\n"},
		{"    bpm: 126.5\n", "    bpm: 300\n"},
		{"    rounds: 2\n", "    rounds: 0\n"},
		{"known: tempo-jump\n", "known: []\n"},
		{"known: tempo-jump\n", "known: {}\n"},
		{"known: {rhythm-too-fast: \"light bar, they know it\", tempo-jump: null}", "known: [[rhythm-too-fast]]"},
		{"    taught: half\n", "    tought: half\n"},
		{"times: 2\n", "times: 65\n"},
		{"{move: march, counts: 16}", "{move: march}"},
		{"{move: march, add: arms overhead}", "{move: march, add: arms overhead, becomes: heel curl}"},
		{"        build: layering\n", ""},
		{", range: half", ", range: some"},
		{"reps: \"4 x 2-2, 16 x 1-1\", ", ""},
		{"sides: right, on: count", "sides: right, on: clock"},
		{"time: 30s, sides: both", "time: 30s, series: 8 x 20s/10s"},
		{"time: 30s, sides: both, ", ""},
		{"time: 30s, sides: both", "time: 30, sides: both"},
		{"{pause: towel, ", "{pause: towel, set: squat, "},
		{"for: rest", "for: fun"},
		{"weight: heavy", "weight: 6"},
		{", impact: low", ", impact: huge"},
	} {
		src := strings.Replace(everyKey, change[0], change[1], 1)
		if src == everyKey {
			t.Fatalf("%q is not there", change[0])
		}
		if _, problems := plan.Parse("class.yaml", []byte(src)); len(problems) == 0 {
			t.Errorf("Parse accepts %q for %q", change[1], change[0])
		}
		if validate(t, s, src) == nil {
			t.Errorf("the schema accepts %q for %q", change[1], change[0])
		}
	}
}

// everyFigure uses every key that a moves file may have.
const everyFigure = `onphrase: 1
moves:
  - {name: sled push, also: [sled], class: sled, pattern: push, counts: 8, least: 4 counts, source: my coach, switches: false, one-sided: true, impact: none, equipment: [sled]}
limits:
  - {class: sled, fine: 2s, too fast: 1s, too slow: 4s, path: 0.5m, down: {fine: 0.8s}, up: {fine: 0.7s, evidence: assumption, source: my coach}, ballistic: true, evidence: common practice, source: my coach}
bands:
  - {kind: strength, inside: 110-120, outer: 100-130, source: my studio}
  - {kind: stretch, inside: up to 90}
needs:
  - {for: weights, time: 16 counts, source: our racks}
`

// What ParseCatalog reads, the schema of the moves file allows; what is wrong
// in its form, both refuse.
func TestMovesSchema(t *testing.T) {
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(plan.MovesSchema))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("moves.schema.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("moves.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	if _, problems := plan.ParseCatalog("moves.yaml", []byte(everyFigure), plan.Builtin()); len(problems) > 0 {
		t.Fatal(listProblems(problems))
	}
	if err := validate(t, s, everyFigure); err != nil {
		t.Error(err)
	}
	for _, change := range [][2]string{
		{"onphrase: 1\n", "onphrase: 2\n"}, {"fine: 2s, ", ""}, {"evidence: common practice", "evidence: hearsay"},
		{"kind: strength", "kind: mixed"}, {"inside: 110-120, ", ""}, {"for: weights", "for: rest"},
		{"time: 16 counts, ", ""},
		{"path: 0.5m", "way: 0.5m"}, {"impact: none", "impact: huge"},
	} {
		src := strings.Replace(everyFigure, change[0], change[1], 1)
		if _, problems := plan.ParseCatalog("moves.yaml", []byte(src), plan.Builtin()); src == everyFigure ||
			len(problems) == 0 {
			t.Errorf("ParseCatalog accepts %q for %q", change[1], change[0])
		}
		if validate(t, s, src) == nil {
			t.Errorf("the schema accepts %q for %q", change[1], change[0])
		}
	}
}
