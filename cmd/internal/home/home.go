// Package home keeps a desk's songs and classes in the folders of this computer.
package home

import (
	"bytes"
	"context"
	"errors"
	"io"
	"net/http"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"sync"

	"onphrase/beat"
	"onphrase/beat/correct"
	"onphrase/beat/decode"
	"onphrase/beat/tap"
	"onphrase/cmd/internal/desk"
	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/library"
	"onphrase/cmd/internal/told"
	"onphrase/plan"
)

// Home is what a desk asks of this computer.
type Home struct {
	parts   Parts
	mu      sync.Mutex // one correction file at a time
	classes classesSeen
	known   sync.Once // that the moves were read
	moves   *plan.Catalog
}

// Parts are what a home is made with.
type Parts struct {
	Analyst   *library.Analyst
	Listening func() library.Listening      // is told of one song how far it is
	Moves     func() (*plan.Catalog, error) // all that are known, hers too
}

// New makes a home of its parts.
func New(p Parts) *Home { return &Home{parts: p} }

// OpenFirst opens what was named on the command line.
func (h *Home) OpenFirst(d *desk.Desk, name string) error {
	path, err := filepath.Abs(name)
	if err == nil {
		err = d.Open(path)
	}
	var r *desk.Refusal
	if errors.As(err, &r) {
		return told.Failed(r.Hint, "%s: %s", name, r.Say)
	}
	return err
}

// Root is her home folder, or the one that the program was started in.
func (h *Home) Root() string {
	if dir, err := os.UserHomeDir(); err == nil {
		return dir
	}
	dir, err := os.Getwd()
	if err != nil {
		return string(filepath.Separator)
	}
	return dir
}

// Look lists a folder: what is hidden, and what is neither folder, class nor
// music, is left out.
func (h *Home) Look(folder string) (desk.Place, error) {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return desk.Place{}, err
	}
	p := desk.Place{Name: filepath.Base(folder)}
	if up := filepath.Dir(folder); up != folder {
		p.Up = up
	}
	for _, e := range entries {
		name := e.Name()
		path := filepath.Join(folder, name)
		info, err := os.Stat(path) // a link to a folder is a folder
		switch {
		case err != nil || strings.HasPrefix(name, "."):
		case info.IsDir():
			p.Entries = append(p.Entries, desk.Entry{Path: path, Name: name, Kind: desk.Folder})
		case !info.Mode().IsRegular():
		case decode.IsAudio(name) || strings.HasSuffix(name, tap.Ending):
			p.Entries = append(p.Entries, desk.Entry{Path: path, Name: name, Kind: desk.Music})
		case isClass(path):
			p.Entries = append(p.Entries, desk.Entry{Path: path, Name: name, Kind: desk.Class})
		}
	}
	slices.SortStableFunc(p.Entries, func(a, b desk.Entry) int { return library.ByNature(a.Name, b.Name) })
	return p, nil
}

// Songs lists the songs below a folder.
func (h *Home) Songs(folder string) ([]string, error) {
	names, err := songFiles(folder)
	if err != nil {
		return nil, err
	}
	paths := make([]string, len(names))
	for i, n := range names {
		paths[i] = filepath.Join(folder, n)
	}
	return paths, nil
}

// Known is what the cache and the files beside a song know of it.
func (h *Home) Known(path string) (desk.Heard, bool, error) {
	if strings.HasSuffix(path, tap.Ending) {
		t, err := tappedTrack(path)
		return desk.Heard{Track: t}, true, err
	}
	key, err := h.parts.Analyst.Cache.Key(path, h.parts.Analyst.Mode)
	if err != nil {
		return desk.Heard{}, false, errors.New(told.Reason(err))
	}
	kept, known := h.parts.Analyst.Cache.Get(key)
	if !known {
		return desk.Heard{}, false, nil
	}
	heard, err := h.with(path, kept.Track)
	return heard, true, err
}

// Hear listens to a song and keeps what it heard.
func (h *Home) Hear(ctx context.Context, path string) (desk.Heard, error) {
	r, _ := h.parts.Analyst.Listened(ctx, path, h.parts.Listening())
	return h.with(path, r.Track)
}

// with adds what she has set of a song.
func (h *Home) with(path string, t beat.Track) (desk.Heard, error) {
	t.File, t.Title = path, library.TitleOf(path)
	heard := desk.Heard{Track: t}
	if t.Problem != "" {
		return heard, nil
	}
	said, err := library.CorrectionsOf(path)
	if err != nil {
		return heard, err
	}
	if said.File != nil {
		heard.Fixes = said.File.List
	}
	return heard, nil
}

// Keep replaces the corrections of a song, if nobody else has meanwhile.
func (h *Home) Keep(path string, before, after []correct.Correction) error {
	h.mu.Lock()
	defer h.mu.Unlock()
	said, err := library.CorrectionsOf(path)
	if err != nil {
		return err
	}
	if said.File == nil {
		sound, err := decode.Identity(path)
		if err != nil {
			return err
		}
		said.File = correct.NewFile(filepath.Base(path), sound)
	}
	if !slices.Equal(said.File.List, before) {
		return &desk.Refusal{Say: "What is set of this song was changed elsewhere meanwhile.",
			Hint: "Load the page again to see it."}
	}
	said.File.Replace(after)
	return said.Save()
}

// KeepTapped writes a tapped song under its title; where that is taken, with a
// number.
func (h *Home) KeepTapped(folder, title string, file []byte) (string, error) {
	return writeNumbered(folder, title, tap.Ending, file)
}

// NewClass writes a class under its name; where that is taken, with a number.
func (h *Home) NewClass(folder, name string, src []byte) (string, error) {
	return writeNumbered(folder, name, ".yaml", src)
}

// writeNumbered writes a file that takes no other's place.
func writeNumbered(folder, title, ending string, content []byte) (string, error) {
	base := fileName(title)
	for n := 1; ; n++ {
		name := base
		if n > 1 {
			name += " " + strconv.Itoa(n)
		}
		path := filepath.Join(folder, name+ending)
		err := disk.WriteExclusive(path, bytes.NewReader(content))
		if !errors.Is(err, os.ErrExist) {
			return path, err
		}
	}
}

// fileName is a title as the name of a file on every system.
func fileName(title string) string {
	name := strings.Map(func(r rune) rune {
		if r < ' ' || strings.ContainsRune(`/\:*?"<>|`, r) {
			return '-'
		}
		return r
	}, strings.TrimSpace(title))
	if name = strings.Trim(name, ". "); name == "" {
		return "song"
	}
	return name
}

// Size is the length of a song in bytes.
func (h *Home) Size(path string) int64 {
	info, err := os.Stat(path)
	if err != nil {
		return 0
	}
	return info.Size()
}

// Play serves the sound of a song.
func (h *Home) Play(w http.ResponseWriter, r *http.Request, path string) {
	f, err := os.Open(path)
	if err != nil {
		http.NotFound(w, r)
		return
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil || !info.Mode().IsRegular() {
		http.NotFound(w, r)
		return
	}
	http.ServeContent(w, r, filepath.Base(path), info.ModTime(), f)
}

// Drop copies a song into the folder that is open.
func (h *Home) Drop(_ context.Context, folder, name string, song io.Reader) (string, error) {
	if !decode.IsAudio(name) {
		return "", &desk.Refusal{Say: name + " is no music that can be read here."}
	}
	path := filepath.Join(folder, fileName(name))
	switch err := disk.WriteExclusive(path, song); {
	case errors.Is(err, os.ErrExist):
		return "", &desk.Refusal{Say: name + " is there already; nothing was replaced."}
	case err != nil:
		return "", &desk.Refusal{Say: name + " could not be copied: " + told.Reason(err) + "."}
	}
	return name + " was copied into " + filepath.Base(folder) + ".", nil
}
