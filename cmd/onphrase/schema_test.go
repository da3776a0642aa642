package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"onphrase/cmd/internal/disk"
)

const noisyClass = `onphrase: 1
class: Loud
parts:
  - part: Round 1
    kind: strength
    tracks: [clicks.wav]
    do:
      - {set: lateral raise, reps: "32 x 1-1"}
`

// What the commands write is what the published schemas say, for results and
// for failures.
func TestJSONAgainstSchemas(t *testing.T) {
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	music := clickFile(t)
	class := filepath.Join(filepath.Dir(music), "class.yaml")
	if err := os.WriteFile(class, []byte(noisyClass), disk.FilePerm); err != nil {
		t.Fatal(err)
	}
	tests := []struct {
		schema string
		args   []string
		code   exitCode
	}{
		{"analysis.schema.json", []string{"analyze", "--json", music}, exitClean},
		{"analysis.schema.json", []string{"analyze", "--json", music, "gone.mp3", class}, exitFailed},
		{"findings.schema.json", []string{"check", "--json", class}, exitFindings},
		{"fit.schema.json", []string{"fit", "--json", class}, exitClean},
		{"relay.schema.json", []string{"relay", "--json", class, filepath.Dir(music)}, exitFindings},
	}
	for _, tt := range tests {
		schema, err := jsonschema.NewCompiler().Compile(tt.schema)
		if err != nil {
			t.Fatal(err)
		}
		var out, talk bytes.Buffer
		s := &streams{in: &bytes.Buffer{}, out: &out, err: &talk, width: defaultWidth}
		if code := run(context.Background(), tt.args, s); code != tt.code {
			t.Fatalf("%v: exit code %d, want %d\n%s", tt.args, code, tt.code, talk.String())
		}
		got, err := jsonschema.UnmarshalJSON(&out)
		if err != nil {
			t.Fatalf("%v: %v", tt.args, err)
		}
		if err := schema.Validate(got); err != nil {
			t.Errorf("%v: %v", tt.args, err)
		}
	}
}

// Every schema is printed, is one, and says by its title what it is of.
func TestSchemaCommand(t *testing.T) {
	for _, sc := range schemas() {
		var out, talk bytes.Buffer
		s := &streams{in: &bytes.Buffer{}, out: &out, err: &talk, width: defaultWidth}
		if code := run(context.Background(), []string{"schema", sc.name}, s); code != exitClean {
			t.Fatalf("%s: exit code %d\n%s", sc.name, code, talk.String())
		}
		doc, err := jsonschema.UnmarshalJSON(&out)
		if err != nil {
			t.Fatalf("%s: %v", sc.name, err)
		}
		c := jsonschema.NewCompiler()
		if err := c.AddResource(sc.name, doc); err != nil {
			t.Fatal(err)
		}
		if _, err := c.Compile(sc.name); err != nil {
			t.Errorf("%s: %v", sc.name, err)
		}
		if title, _ := doc.(map[string]any)["title"].(string); !strings.Contains(title, sc.name) {
			t.Errorf("%s is titled %q", sc.name, title)
		}
	}
}

// The schema is no rubber stamp: it refuses a track with neither result nor
// problem.
func TestSchemaRefuses(t *testing.T) {
	schema, err := jsonschema.NewCompiler().Compile("analysis.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	for _, wrong := range []string{
		`{}`,
		`{"schema":"onphrase.analysis/2","tracks":[]}`,
		`{"schema":"onphrase.analysis/1","tracks":[{"file":"a.mp3","title":"","duration":0,"bpm":0,"meter":0,"alternatives":[],
		  "beats":[],"beat_in_bar":[],"phrases":[],"unsteady":[],"tempo_changes":[],"trust":{"beat":0,"count1":0,"phrase":0},
		  "loudness":0,"problem":""}]}`,
		`{"schema":"onphrase.analysis/1","tracks":[{"file":"a.mp3","title":"","duration":0,"bpm":0,"meter":0,"alternatives":null,
		  "beats":[],"beat_in_bar":[],"phrases":[],"unsteady":[],"tempo_changes":[],"trust":{"beat":0,"count1":0,"phrase":0},
		  "loudness":0,"problem":"no such file"}]}`,
	} {
		doc, err := jsonschema.UnmarshalJSON(bytes.NewReader([]byte(wrong)))
		if err != nil {
			t.Fatal(err)
		}
		if schema.Validate(doc) == nil {
			t.Errorf("accepted: %s", wrong)
		}
	}
}
