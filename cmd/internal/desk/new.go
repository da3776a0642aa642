package desk

import (
	"context"
	"path"
	"strings"

	"onphrase/align"
	"onphrase/beat"
	"onphrase/plan/outline"
)

type newFields struct {
	Name    string `json:"name"`
	Minutes int    `json:"minutes"`
}

// The lengths of a class that can be begun [min].
const leastMinutes, mostMinutes = 20, 90

// begin writes a class to begin with, on the songs of the open folder, and opens
// it. No file is replaced.
func (d *Desk) begin(_ context.Context, f newFields) (any, error) {
	f.Name = strings.TrimSpace(f.Name)
	switch {
	case d.folder == "":
		return nil, refuse("Open the folder of your songs first.", "There is no folder to make a class from.")
	case f.Name == "":
		return nil, refuse("Give it a name.", "The class has no name yet.")
	case f.Minutes < leastMinutes || f.Minutes > mostMinutes:
		return nil, refuse("", "%d minutes: %d to %d are possible.", f.Minutes, leastMinutes, mostMinutes)
	}
	songs := d.outlineSongs()
	if len(songs) == 0 {
		return nil, refuse("Wait until some have been listened to.", "None of the songs here has been heard yet.")
	}
	src, err := outline.Write(outline.Options{Name: f.Name, Music: ".", Minutes: f.Minutes}, songs)
	if err != nil {
		return nil, refuse("Listen to some songs first, or choose another length.", "No class could be made: %v.", err)
	}
	file, err := d.home.NewClass(d.folder, f.Name, []byte(src))
	if err != nil {
		return nil, unreadable(err)
	}
	return d.openPath(file)
}

// outlineSongs are the songs that can be taught to, as the outline wants them.
func (d *Desk) outlineSongs() []outline.Song {
	var all []outline.Song
	for _, s := range d.songs {
		if s.state != "heard" && s.state != "tapped" {
			continue
		}
		all = append(all, outline.Song{
			File: below(d.folder, s.path), BPM: s.track.BPM, Phrases: taughtPhrases(s.track), Loudness: s.track.Loudness,
			Suits: align.Suits(s.track.BPM, d.home.Catalog()),
		})
	}
	return all
}

// taughtPhrases are the lengths of the phrases of a track.
func taughtPhrases(t beat.Track) []int {
	var out []int
	for _, p := range t.Phrases {
		out = append(out, p.Counts)
	}
	return out
}

// below is the path of a file from a folder above it, with / between folders.
func below(folder, file string) string {
	return path.Clean(strings.TrimPrefix(strings.TrimPrefix(slashes(file), slashes(folder)), "/"))
}
