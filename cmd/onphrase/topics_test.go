package main

import (
	"bytes"
	"context"
	"strings"
	"testing"

	"onphrase/plan"
	"onphrase/plan/say"
)

// The samples in the help are files that can be read.
func TestTopicSamples(t *testing.T) {
	if _, problems := plan.Parse("class.yaml", []byte(unindented(classSample))); len(problems) > 0 {
		t.Error(problems)
	}
	if _, problems := plan.ParseCatalog("moves.yaml", []byte(unindented(movesSample)), plan.Builtin()); len(problems) > 0 {
		t.Error(problems)
	}
}

func unindented(text string) string {
	return strings.TrimPrefix(strings.ReplaceAll("\n"+text, "\n  ", "\n"), "\n")
}

// Every key of a schema has its line in the help, with a meaning; nothing is
// wider than the screen.
func TestTopicsSayEverything(t *testing.T) {
	for _, topic := range topics() {
		var out, talk bytes.Buffer
		s := &streams{in: &bytes.Buffer{}, out: &out, err: &talk, width: defaultWidth}
		if code := run(context.Background(), []string{"help", topic.name}, s); code != exitClean {
			t.Fatalf("%s: exit code %d\n%s", topic.name, code, talk.String())
		}
		for _, line := range strings.Split(out.String(), "\n") {
			if say.Columns(line) > defaultWidth {
				t.Errorf("%s: too wide: %q", topic.name, line)
			}
		}
		root := readKeys(topic.schema)
		n := 0
		for _, o := range topic.objects {
			if root.object(o.path).Node == nil {
				t.Fatalf("%s: no %q in the schema", topic.name, o.path)
			}
			for _, k := range root.object(o.path).keys(root) {
				n++
				if k.schema.text("description") == "" {
					t.Errorf("%s: %s of %q has no meaning", topic.name, k.name, o.path)
				}
				if !strings.Contains(out.String(), "\n  "+k.name+" ") {
					t.Errorf("%s: %s of %q is not in the help", topic.name, k.name, o.path)
				}
			}
		}
		if n < 20 {
			t.Errorf("%s: %d keys only", topic.name, n)
		}
	}
}
