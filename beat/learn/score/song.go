// Package score invents music whose counts are known: styles, drum patterns,
// harmony, form and feel, as notes in seconds. It knows nothing of sound.
package score

// Song is a piece of music as played.
type Song struct {
	Style  string
	Notes  []Note
	Beats  []Beat  // the truth, in order
	Length float64 // [s]
}

// Beat is one count of a song.
type Beat struct {
	Time  float64 // [s]
	InBar int     // 1 = count 1
}

// Note is one sounding event.
type Note struct {
	At    float64 // [s]
	Len   float64 // [s]
	Key   float64 // MIDI key number; 0 for drums
	Level float64 // 0-1
	Part  Part
}

// Part says who plays a note.
type Part int

// The drums come first, so that Part < Bass tells them apart.
const (
	Kick Part = iota
	Snare
	Clap
	Rim
	Hat
	OpenHat
	Ride
	Crash
	Tom
	Shaker
	Conga
	Bell
	Bass
	Chord
	Pad
	Arp
	Lead
	Voice
	Riser
	Parts int = iota
)

// Drum reports whether p is an unpitched instrument.
func (p Part) Drum() bool { return p < Bass }
