package desk_test

import (
	"context"
	"strings"
	"testing"
	"time"

	"onphrase/cmd/internal/desk"
)

// openedClass is a desk with the class open and its songs heard.
func openedClass(t *testing.T) (*desk.Desk, *fakeHome) {
	t.Helper()
	d, h := newDesk(t)
	must(t, d, `{"do":"demo"}`)
	hearAll(t, d)
	return d, h
}

func TestOpenClass(t *testing.T) {
	d, _ := openedClass(t)
	r := must(t, d, `{"do":"state"}`)
	if at(t, r, "class", "name") != "Harbour 45" || at(t, r, "class", "state") != "fine" ||
		at(t, r, "folder", "name") != "music" {
		t.Errorf("state %v", r)
	}
	m, edition := d.Map()
	if m == nil || edition == "" || len(m.Rows) < 4 {
		t.Fatalf("no count map: %v", m)
	}
	if p := m.Parts[1].Tracks[0].Path; !strings.HasPrefix(p, "music/") {
		t.Errorf("the sound of the second song is at %q", p)
	}
}

// A file that is broken elsewhere leaves the class as it was, with its
// problems; mended, it is read anew. One that is gone is said, too.
func TestBrokenClass(t *testing.T) {
	d, h := openedClass(t)
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	go d.Watch(ctx)
	set := func(src string) {
		h.mu.Lock()
		defer h.mu.Unlock()
		if h.files["/home/harbour.yaml"] = []byte(src); src == "" {
			delete(h.files, "/home/harbour.yaml")
		}
	}
	becomes := func(state string) reply {
		t.Helper()
		for range 200 {
			if r := must(t, d, `{"do":"state"}`); at(t, r, "class", "state") == state {
				return r
			}
			time.Sleep(20 * time.Millisecond)
		}
		t.Fatalf("the class does not become %s", state)
		return nil
	}
	before, _ := d.Map()
	set(strings.Replace(harbour, "kind: strength", "kind: strenth", 1))
	r := becomes("broken")
	if line := at(t, r, "class", "problems", 0, "line"); line != 16.0 {
		t.Errorf("the problem is in line %v, want 16", line)
	}
	if m, _ := d.Map(); m != before {
		t.Error("a broken file changed what is on show")
	}
	set(strings.Replace(harbour, "8 x 2-2", "4 x 4-4", 1))
	becomes("fine")
	if m, _ := d.Map(); m == before {
		t.Error("the mended file is not read")
	}
	set("")
	becomes("broken")
	set(harbour)
	becomes("fine")
}
