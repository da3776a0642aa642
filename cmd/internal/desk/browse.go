package desk

import (
	"context"
	"errors"
	"io/fs"
)

// placeAnswer is a folder as it is looked at.
type placeAnswer struct {
	ID      string        `json:"id"`
	Name    string        `json:"name"`
	Up      string        `json:"up"`
	Entries []entryAnswer `json:"entries"`
}

type entryAnswer struct {
	ID   string    `json:"id"`
	Kind EntryKind `json:"kind"`
	Name string    `json:"name"`
}

type byID struct {
	ID string `json:"id"`
}

// browse lists a folder, the home folder when none is named.
func (d *Desk) browse(_ context.Context, f byID) (any, error) {
	at := d.home.Root()
	if f.ID != "" {
		var err error
		if at, err = d.path(f.ID); err != nil {
			return nil, err
		}
	}
	place, err := d.home.Look(at)
	if err != nil {
		return nil, unreadable(err)
	}
	out := placeAnswer{ID: d.id(at), Name: place.Name, Entries: []entryAnswer{}}
	if place.Up != "" {
		out.Up = d.id(place.Up)
	}
	for _, e := range place.Entries {
		out.Entries = append(out.Entries, entryAnswer{d.id(e.Path), e.Kind, e.Name})
	}
	return out, nil
}

// unreadable says in plain words why a folder or a file cannot be opened.
func unreadable(err error) error {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return refuse("It may have been moved, or its drive is not connected.", "It is no longer there.")
	case errors.Is(err, fs.ErrPermission):
		return refuse("Choose another folder, or allow it in the settings of the computer.",
			"This computer does not let us look in there.")
	}
	return err
}

// open opens a folder of songs, or a class with the folder it plays from.
func (d *Desk) open(ctx context.Context, f byID) (any, error) {
	path, err := d.path(f.ID)
	if err != nil {
		return nil, err
	}
	return d.openPath(path)
}

// demo opens the demo, which is written first where it is not there.
func (d *Desk) demo(context.Context, noFields) (any, error) {
	path, err := d.home.Demo()
	if err != nil {
		return nil, err
	}
	return d.openPath(path)
}

// Open opens what was named when the program was started.
func (d *Desk) Open(path string) error {
	d.mu.Lock()
	defer d.mu.Unlock()
	_, err := d.openPath(path)
	return err
}

func (d *Desk) openPath(path string) (any, error) {
	if _, err := d.home.ReadClass(path); err == nil {
		if err := d.openClass(path); err != nil {
			return nil, unreadable(err)
		}
		d.home.Opened(Recent{Path: path, Kind: Class, Name: d.class.name(), When: d.now()})
		return d.changed(), nil
	}
	place, err := d.home.Look(path)
	if err != nil {
		return nil, unreadable(err)
	}
	if err := d.openFolder(path); err != nil {
		return nil, unreadable(err)
	}
	d.class = nil
	d.home.Opened(Recent{Path: path, Kind: Folder, Name: place.Name, When: d.now()})
	return d.changed(), nil
}

// changed tells all tabs the new state, and gives it.
func (d *Desk) changed() State {
	s := d.stateNow()
	d.hub.tell("state", s)
	return s
}
