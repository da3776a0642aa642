package desk

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"slices"
	"strings"
	"sync"
	"time"
)

// Desk answers requests, one after the other. It is what all tabs share.
type Desk struct {
	home Home
	now  func() time.Time
	hub  hub

	mu     sync.Mutex
	folder string   // of the songs on show; empty when none is open
	songs  []*song  // of that folder, in order
	names  []string // what ids stand for: every path that was ever named to a browser
	ids    map[string]string
	class  *class        // nil when none is open
	wake   chan struct{} // there is something to hear
	first  string        // the song to be heard next
}

// New is a desk over a home. now is the clock, for "in which class and when".
func New(home Home, now func() time.Time) *Desk {
	return &Desk{home: home, now: now, ids: map[string]string{}, wake: make(chan struct{}, 1)}
}

// Refusal is an answer in plain words: what is wrong, and what to do.
type Refusal struct {
	Say  string `json:"say"`
	Hint string `json:"hint"`
}

func (r *Refusal) Error() string { return r.Say }

func refuse(hint, format string, args ...any) error {
	return &Refusal{Say: fmt.Sprintf(format, args...), Hint: hint}
}

// handler answers one kind of request. It is called with the desk locked.
type handler func(d *Desk, ctx context.Context, fields json.RawMessage) (any, error)

// answering is a handler whose fields are read into a struct first. What a
// screen sends and the struct does not know is a slip of ours, and refused.
func answering[F any](f func(d *Desk, ctx context.Context, fields F) (any, error)) handler {
	return func(d *Desk, ctx context.Context, raw json.RawMessage) (any, error) {
		var fields F
		if err := json.Unmarshal(raw, &fields); err != nil {
			return nil, refuse("", "not understood: %v", err)
		}
		return f(d, ctx, fields)
	}
}

// requests are all that can be asked, by name.
func requests() map[string]handler {
	return map[string]handler{
		"state": answering((*Desk).state), "browse": answering((*Desk).browse), "open": answering((*Desk).open),
		"demo":  answering((*Desk).demo),
		"songs": answering((*Desk).allSongs), "song": answering((*Desk).oneSong), "hear": answering((*Desk).hearNext),
		"fix": answering((*Desk).fix), "unfix": answering((*Desk).unfix), "checked": answering((*Desk).checked),
		"class": answering((*Desk).classNow), "act": answering((*Desk).act), "undo": answering((*Desk).undo),
		"redo": answering((*Desk).redo), "text": answering((*Desk).text), "ways": answering((*Desk).ways),
		"take": answering((*Desk).take), "moves": answering((*Desk).moves), "grades": answering((*Desk).grades),
		"taps": answering((*Desk).taps), "tapped-in": answering((*Desk).tappedIn),
	}
}

// Do answers a request in JSON. What fails for a reason that she can do
// something about is an answer with "ok": false, "say" and "hint".
func (d *Desk) Do(ctx context.Context, request []byte) []byte {
	var head struct {
		Do string `json:"do"`
	}
	if err := json.Unmarshal(request, &head); err != nil {
		return answer(nil, refuse("", "not a request"))
	}
	all := requests()
	f, ok := all[head.Do]
	if !ok {
		return answer(nil, refuse("", "%q cannot be asked; it may be %s", head.Do,
			strings.Join(slices.Sorted(maps.Keys(all)), ", ")))
	}
	d.mu.Lock()
	defer d.mu.Unlock()
	return answer(f(d, ctx, request))
}

// answer is JSON with "ok" in front of the fields of a struct.
func answer(v any, err error) []byte {
	var r *Refusal
	var c *conflictError
	switch {
	case errors.As(err, &c):
		v = c.conflict
	case errors.As(err, &r):
		v = r
	case err != nil:
		v = &Refusal{Say: err.Error()}
	}
	body, jsonErr := json.Marshal(v)
	if jsonErr != nil {
		body, err = []byte(`{"say":"an answer could not be written"}`), jsonErr
	}
	head := fmt.Sprintf(`{"ok":%t`, err == nil)
	if rest := strings.TrimPrefix(string(body), "{"); rest != "}" && len(rest) < len(body) {
		return []byte(head + "," + rest)
	}
	return []byte(head + "}")
}

// Told is the answer to what was not asked in JSON, such as a dropped song.
func Told(say string, err error) []byte {
	return answer(struct {
		Say string `json:"say"`
	}{say}, err)
}
