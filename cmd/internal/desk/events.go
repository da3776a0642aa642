package desk

import (
	"encoding/json"
	"sync"
)

// Event is something that every tab is told.
type Event struct {
	Kind string          // state, song, hearing, class, broken
	Data json.RawMessage // the same structs as in answers
}

// waiting is how many events a tab may be behind. One that is further behind
// has missed some, and is told to look anew.
const waiting = 256

// hub hands events to those who listen.
type hub struct {
	mu   sync.Mutex
	tabs map[chan Event]bool
}

// Listen gives a channel of events until stop is called.
func (d *Desk) Listen() (events <-chan Event, stop func()) {
	c := make(chan Event, waiting)
	d.hub.mu.Lock()
	defer d.hub.mu.Unlock()
	if d.hub.tabs == nil {
		d.hub.tabs = map[chan Event]bool{}
	}
	d.hub.tabs[c] = true
	return c, func() {
		d.hub.mu.Lock()
		defer d.hub.mu.Unlock()
		delete(d.hub.tabs, c)
	}
}

// Tabs is how many listen.
func (d *Desk) Tabs() int {
	d.hub.mu.Lock()
	defer d.hub.mu.Unlock()
	return len(d.hub.tabs)
}

// tell sends an event to all tabs.
func (h *hub) tell(kind string, v any) {
	data, err := json.Marshal(v)
	if err != nil {
		panic(err) // our own structs can be written
	}
	h.mu.Lock()
	defer h.mu.Unlock()
	for c := range h.tabs {
		select {
		case c <- Event{kind, data}:
		default: // too far behind: the oldest makes room for "look anew"
			select {
			case <-c:
			default: // it has caught up meanwhile
			}
			c <- Event{Kind: "missed", Data: json.RawMessage("{}")}
		}
	}
}
