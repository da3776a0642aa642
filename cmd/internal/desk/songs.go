package desk

import (
	"context"
	"path"
	"slices"
	"strings"
	"time"

	"onphrase/align"
	"onphrase/beat"
	"onphrase/beat/correct"
	"onphrase/beat/tap"
)

// song is one song of the open folder and how far it is with it.
type song struct {
	path  string
	size  int64  // [bytes]
	state string // waiting, hearing, heard, failed, tapped
	asked bool   // whether it is known already
	heard Heard
	track beat.Track // as she has put it right
	why   string     // it failed, in plain words
}

func (s *song) tapped() bool { return strings.HasSuffix(s.path, tap.Ending) }

// take puts what is known of a song in its place.
func (s *song) take(h Heard) {
	s.heard, s.track = h, h.corrected()
	switch {
	case h.Track.Problem != "":
		s.state, s.why = "failed", h.Track.Problem
	case s.tapped():
		s.state = "tapped"
	default:
		s.state = "heard"
	}
}

// songAnswer is a song as the screens show it.
type songAnswer struct {
	ID        string       `json:"id"`
	File      string       `json:"file"`
	Title     string       `json:"title"`
	State     string       `json:"state"`
	BPM       float64      `json:"bpm"`
	Rival     *rivalAnswer `json:"rival"`
	Whole     int          `json:"whole"`
	Odd       int          `json:"odd"`
	Seconds   float64      `json:"seconds"`
	Trust     float64      `json:"trust"`
	TrustWord string       `json:"trust_word"`
	Loud      string       `json:"loud"`
	Suits     []string     `json:"suits"`
	Used      []useAnswer  `json:"used"`
	Checked   bool         `json:"checked"`
	Corrected bool         `json:"corrected"`
	Problem   string       `json:"problem"`
	Strip     [][4]int     `json:"strip"` // of each phrase: start [ms], counts, energy 0-2, odd 0 or 1
	Music     string       `json:"music"` // the address of its sound, empty when it has none
}

type rivalAnswer struct {
	BPM  float64 `json:"bpm"`
	Word string  `json:"word"`
}

// useAnswer is a class that plays the song.
type useAnswer struct {
	Class string `json:"class"`
	When  string `json:"when"`
	Ago   int    `json:"ago"` // her latest class is 0
}

func (d *Desk) allSongs(context.Context, noFields) (any, error) {
	out := struct {
		Songs []songAnswer `json:"songs"`
	}{[]songAnswer{}}
	used := d.uses()
	for _, s := range d.songs {
		out.Songs = append(out.Songs, d.songOf(s, used))
	}
	return out, nil
}

// openFolder makes a folder the one on show. Its songs are heard one after the
// other, those first of which all is known already.
func (d *Desk) openFolder(folder string) error {
	paths, err := d.home.Songs(folder)
	if err != nil {
		return err
	}
	d.folder, d.songs = folder, nil
	for _, p := range paths {
		d.songs = append(d.songs, d.unheard(p))
	}
	d.wakeUp()
	return nil
}

// unheard is a song that has come into view.
func (d *Desk) unheard(path string) *song {
	return &song{path: path, size: d.home.Size(path), state: "waiting"}
}

func (d *Desk) songAt(path string) *song {
	i := slices.IndexFunc(d.songs, func(s *song) bool { return s.path == path })
	if i < 0 {
		return nil
	}
	return d.songs[i]
}

// songOf puts a song into words.
func (d *Desk) songOf(s *song, used map[string][]useAnswer) songAnswer {
	t := s.track
	out := songAnswer{
		ID: d.id(s.path), File: baseName(s.path), Title: t.Title, State: s.state, BPM: t.BPM,
		Seconds: t.Duration, Suits: []string{}, Used: append([]useAnswer{}, used[s.path]...), Problem: s.why,
		Corrected: t.Corrected, Strip: [][4]int{}, Checked: slices.ContainsFunc(s.heard.Fixes, isChecked),
	}
	if out.Title == "" {
		out.Title = strings.TrimSuffix(strings.TrimSuffix(out.File, tap.Ending), path.Ext(out.File))
	}
	if !s.tapped() {
		out.Music = soundAddress(out.ID, out.File)
	}
	if s.state != "heard" && s.state != "tapped" {
		return out
	}
	for _, p := range t.Phrases {
		odd := 0
		if p.Odd() {
			odd = 1
		}
		out.Odd += odd
		out.Strip = append(out.Strip, [4]int{millis(p.Time), p.Counts, fullness[p.Energy], odd})
	}
	out.Whole = len(t.Phrases) - out.Odd
	for _, kind := range align.Suits(t.BPM, d.home.Catalog()) {
		out.Suits = append(out.Suits, string(kind))
	}
	out.Rival = rivalOf(t)
	out.Trust = min(t.Trust.Beat, t.Trust.Count1, t.Trust.Phrase)
	out.TrustWord = trustWord(out.Trust)
	out.Loud = loudWord(t.Loudness)
	return out
}

// soundAddress is where a browser gets the sound of a song; the ending tells it
// what it is.
func soundAddress(id, file string) string { return "/music/" + id + "/song" + path.Ext(file) }

func isChecked(c correct.Correction) bool { return c.Kind == correct.Checked }

var fullness = map[beat.Energy]int{beat.Low: 0, beat.Medium: 1, beat.High: 2}

// rivalOf is the likeliest other reading of a tempo.
func rivalOf(t beat.Track) *rivalAnswer {
	var best beat.Rival
	for _, r := range t.Alternatives {
		if r.Odds > best.Odds {
			best = r
		}
	}
	if best.BPM == 0 || t.BPM == 0 {
		return nil
	}
	word := "another way to count"
	switch ratio := best.BPM / t.BPM; {
	case ratio > 1.9 && ratio < 2.1:
		word = "twice as fast"
	case ratio > 0.48 && ratio < 0.53:
		word = "half as fast"
	}
	return &rivalAnswer{best.BPM, word}
}

// The trusts at which a word changes: of ten that are called sure, nine or more
// are right.
const (
	sure       = 0.9
	fairlySure = 0.7
)

// trustWord says how far to trust what was heard.
func trustWord(trust float64) string {
	switch {
	case trust >= sure:
		return "sure"
	case trust >= fairlySure:
		return "fairly sure"
	}
	return "listen to it first"
}

// Between which loudness [LUFS] a song is neither quiet nor loud: produced
// dance music lies round -9, speech and ballads below -16 (common practice, no
// source).
const quietest, loudest = -16, -9

// loudWord says how loud a song is as recorded.
func loudWord(lufs float64) string {
	switch {
	case lufs == 0:
		return ""
	case lufs < quietest:
		return "quiet"
	case lufs > loudest:
		return "loud"
	}
	return "medium"
}

// uses are the classes that play each song, the latest first.
func (d *Desk) uses() map[string][]useAnswer {
	classes := d.home.Classes(d.folder)
	slices.SortStableFunc(classes, func(a, b ClassFile) int { return b.When.Compare(a.When) })
	out := map[string][]useAnswer{}
	for i, c := range classes {
		for _, p := range c.Songs {
			out[p] = append(out[p], useAnswer{c.Name, day(c.When), i})
		}
	}
	return out
}

// day is a date as it is written.
func day(t time.Time) string {
	if t.IsZero() {
		return ""
	}
	return t.Format("2 January")
}

func millis(s float64) int { return int(s*1000 + 0.5) }

// Folder is the folder of songs that is open.
func (d *Desk) Folder() (string, error) {
	d.mu.Lock()
	defer d.mu.Unlock()
	if d.folder == "" {
		return "", refuse("Open the folder of your songs first.", "There is no folder to put it in.")
	}
	return d.folder, nil
}

// Look looks for songs that have come into the open folder.
func (d *Desk) Look() error {
	d.mu.Lock()
	defer d.mu.Unlock()
	paths, err := d.home.Songs(d.folder)
	if err != nil {
		return unreadable(err)
	}
	for _, p := range paths {
		if d.songAt(p) == nil {
			s := d.unheard(p)
			d.songs = append(d.songs, s)
			d.hub.tell("song", d.songOf(s, d.uses()))
		}
	}
	d.wakeUp()
	return nil
}
