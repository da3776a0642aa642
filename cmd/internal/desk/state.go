package desk

import (
	"context"
	"time"
)

// State is what is open and how it stands.
type State struct {
	Recent  []recentState `json:"recent"`
	Folder  *named        `json:"folder"` // null when none is open
	Class   *classState   `json:"class"`  // null when none is open
	Hearing progress      `json:"hearing"`
}

type named struct {
	ID   string `json:"id"`
	Name string `json:"name"`
}

type recentState struct {
	ID    string    `json:"id"`
	Kind  EntryKind `json:"kind"`
	Name  string    `json:"name"`
	Where string    `json:"where"`
	When  string    `json:"when"`
}

// classState is the open class: fine, or broken with its problems.
type classState struct {
	ID       string    `json:"id"`
	Name     string    `json:"name"`
	Revision string    `json:"revision"`
	State    string    `json:"state"` // fine, broken, none
	Problems []problem `json:"problems"`
}

// problem is something that cannot be read in a class file.
type problem struct {
	Line    int    `json:"line"`
	Message string `json:"message"`
	Hint    string `json:"hint"`
}

type noFields struct{}

func (d *Desk) state(context.Context, noFields) (any, error) { return d.stateNow(), nil }

func (d *Desk) stateNow() State {
	s := State{Recent: []recentState{}}
	s.Hearing, _ = d.progress()
	for _, r := range d.home.Recent() {
		s.Recent = append(s.Recent, recentState{d.id(r.Path), r.Kind, r.Name, r.Where, ago(d.now(), r.When)})
	}
	s.Class = d.stateOfClass()
	if d.folder != "" {
		s.Folder = &named{d.id(d.folder), baseName(d.folder)}
	}
	return s
}

// ago is a day as one says it today.
func ago(now, then time.Time) string {
	if then.IsZero() {
		return ""
	}
	midnight := time.Date(now.Year(), now.Month(), now.Day(), 0, 0, 0, 0, now.Location())
	switch {
	case !then.Before(midnight):
		return "today"
	case !then.Before(midnight.AddDate(0, 0, -1)):
		return "yesterday"
	case !then.Before(midnight.AddDate(0, 0, -6)):
		return then.Weekday().String()
	}
	return then.Format("2 January 2006")
}
