// Package learn holds the manifests of the music that the ear is trained on.
// How to make that music and how to train: README.md.
package learn

import (
	_ "embed"
	"fmt"
	"strings"
)

//go:embed heldout.tsv
var heldOutTSV string

// Held is a piece of music that must not be trained on.
type Held struct{ Kind, Name string }

// HeldOut lists the grooves and MIDI files of the test corpus.
func HeldOut() []Held {
	var out []Held
	for _, f := range rows(heldOutTSV) {
		out = append(out, Held{f[0], f[1]})
	}
	return out
}

// IsHeldOut reports whether a groove ("casio:Dance1End") or file
// ("simutrans-data/10-Easy-driving") belongs to the test corpus.
func IsHeldOut(kind, name string) bool {
	for _, h := range HeldOut() {
		same := strings.EqualFold(name, h.Name)
		variant := kind == "groove" && strings.HasPrefix(strings.ToLower(name), strings.ToLower(h.Name))
		if h.Kind == kind && (same || variant) {
			return true
		}
	}
	return false
}

// rows splits a TSV with # comments.
func rows(tsv string) [][]string {
	var out [][]string
	for line := range strings.Lines(tsv) {
		line = strings.TrimRight(line, "\r\n")
		if line != "" && !strings.HasPrefix(line, "#") {
			out = append(out, strings.Split(line, "\t"))
		}
	}
	return out
}

// HeldSet is the set whose tracks stay as they were first rendered, so that
// figures can be compared: what the music has gained since is not for it.
const HeldSet = "held"

// Item is one track to be rendered.
type Item struct {
	ID     string // also seeds the rendering
	Set    string // train, check (to choose by) or held (to report): grooves, files, seeds and a soundfont of their own
	Kind   string // synth, midi or noise
	Source string // style, MIDI file ("package/name", "mma/groove") or kind of noise
	Seed   uint64
	Font   string // soundfont; "synth" plays a MIDI file, "-" everything else on our synthesiser
}

// String is the item as a line of songs.tsv.
func (it Item) String() string {
	return fmt.Sprintf("%s\t%s\t%s\t%s\t%d\t%s", it.ID, it.Set, it.Kind, it.Source, it.Seed, it.Font)
}

// ParseItems reads songs.tsv.
func ParseItems(tsv string) ([]Item, error) {
	var out []Item
	for i, f := range rows(tsv) {
		if len(f) != 6 {
			return nil, fmt.Errorf("songs: row %d: %d fields, want 6", i+1, len(f))
		}
		it := Item{ID: f[0], Set: f[1], Kind: f[2], Source: f[3], Font: f[5]}
		if _, err := fmt.Sscan(f[4], &it.Seed); err != nil {
			return nil, fmt.Errorf("songs: row %d: seed: %w", i+1, err)
		}
		out = append(out, it)
	}
	return out, nil
}
