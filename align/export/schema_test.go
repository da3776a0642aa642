package export

import (
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"onphrase/align"
)

// mapSchema compiles the schema; a strict one allows no key that it does not
// describe, which the published one does, so that keys can be added.
func mapSchema(t *testing.T, strict bool) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(strings.NewReader(MapSchema))
	if err != nil {
		t.Fatal(err)
	}
	if strict {
		closeObjects(doc)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("map.schema.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("map.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func closeObjects(v any) {
	switch v := v.(type) {
	case map[string]any:
		if _, ok := v["properties"].(map[string]any); ok {
			v["additionalProperties"] = false
		}
		for _, inner := range v {
			closeObjects(inner)
		}
	case []any:
		for _, inner := range v {
			closeObjects(inner)
		}
	}
}

func TestMapSchema(t *testing.T) {
	for name, m := range map[string]*align.CountMap{"demo": demoMap(t), "drifting": driftMap(t), "empty": {}} {
		doc, err := jsonschema.UnmarshalJSON(strings.NewReader(written(t, "json", m)))
		if err != nil {
			t.Fatal(err)
		}
		if err := mapSchema(t, true).Validate(doc); err != nil {
			t.Errorf("%s: %v (describe new keys in map.schema.json)", name, err)
		}
	}
}

// The schema refuses what the contract does not allow, and lets keys of later
// versions through.
func TestMapSchemaRefuses(t *testing.T) {
	good := written(t, "json", demoMap(t))
	for _, c := range []struct {
		from, to string
		ok       bool
	}{
		{`"schema": "onphrase.map/1"`, `"schema": "onphrase.map/2"`, false},
		{`"kind": "set"`, `"kind": "exercise"`, false},
		{`"side": "right"`, `"side": "R"`, false},
		{`"phrase": 1`, `"phrase": "1"`, false},
		{`"severity": "fix"`, `"severity": "error"`, false},
		{`"class_time": 0`, `"class_time": -1`, false},
		{`"cue_counts"`, `"cue_count"`, false},
		{`"facing": ""`, `"facing": "", "later": [1]`, true},
	} {
		src := strings.Replace(good, c.from, c.to, 1)
		if src == good {
			t.Fatalf("%s is not there", c.from)
		}
		doc, err := jsonschema.UnmarshalJSON(strings.NewReader(src))
		if err != nil {
			t.Fatal(err)
		}
		if err := mapSchema(t, false).Validate(doc); (err == nil) != c.ok {
			t.Errorf("%s for %s: %v", c.to, c.from, err)
		}
	}
}
