// Package bare makes music of the fewest means: a bass drum, a snare, a hat, a
// bass and chords, all of plain oscillators and noise, in phrases that are
// marked as the song says. Composer and sounds are its own, and small enough
// for a test: what was learnt from other makers' songs is held against them.
package bare

// Rate of the sound [Hz].
const Rate = 22050

// Groove is who strikes when, in sixteenths of a bar of four (or of three), or
// in eighths of two bars of 6/8.
type Groove struct {
	Name              string
	Meter             int // counts in a bar
	Steps             int // in a count
	Kick, Snare, Hats string
	Bass              string
}

// Grooves are common ones. Common practice, no source.
var Grooves = []Groove{
	{"four on the floor", 4, 4, "x...x...x...x...", "....x.......x...", "..x...x...x...x.", "..x...x...x...x."},
	{"four, hats in eighths", 4, 4, "x...x...x...x...", "................", "x.x.x.x.x.x.x.x.", "x.x.x.x.x.x.x.x."},
	{"back beat", 4, 4, "x.......x.......", "....x.......x...", "x.x.x.x.x.x.x.x.", "x.....x.x......."},
	{"back beat, pushed", 4, 4, "x.....x.x.......", "....x.......x...", "x.x.x.x.x.x.x.x.", "x..x..x.x..x..x."},
	{"broken", 4, 4, "x.x.......x.....", "....x.......x...", "x.x.x.x.x.x.x.x.", "x.........x....."},
	{"half time", 4, 4, "x.........x.....", "........x.......", "x.x.x.x.x.x.x.x.", "x..............."},
	{"sixteenths", 4, 4, "x...x...x...x...", "....x.......x...", "xxxxxxxxxxxxxxxx", ".xxx.xxx.xxx.xxx"},
	{"bass drum alone", 4, 4, "x...x...x...x...", "................", "................", "..x...x...x...x."},
	{"waltz", 3, 4, "x...........", "....x...x...", "x...x...x...", "x..........."},
	{"waltz, driven", 3, 4, "x...........", "........x...", "x.x.x.x.x.x.", "x...x...x..."},
	{"six eight", 2, 3, "x.....x.....", "...x.....x..", "xxxxxxxxxxxx", "x.....x....."},
}

// Song is what is to be made.
type Song struct {
	Seed    uint64 // of the sounds
	BPM     float64
	Groove  Groove
	Silence float64   // before the first sound [s]
	PickUp  int       // counts before the first phrase
	Phrases []Phrase  // in order
	Chords  [][]int   // loops of scale degrees, one a bar
	Melody  [][]Sound // loops of a melody
	Minor   bool
	Crash   bool // on count 1 of each phrase
	Fill    int  // counts at the end of each phrase, of the snare or of Toms
	Toms    bool
	Build   bool // the fill doubles half way through
	Swell   int  // counts of noise that grow until count 1
	Drop    int  // counts without drums before count 1
	Hush    int  // counts without anything before count 1
	Last    bool // a last stroke on the count after the last phrase
}

// Phrase is a run of counts.
type Phrase struct {
	Counts int
	Loop   int   // index in Chords and Melody
	Out    []int // players who pause, see below
}

// Sound is a note of a melody.
type Sound struct {
	At, Len float64 // [counts]
	Degree  int
}

// The players.
const (
	Kick = iota
	Snare
	Hats
	Bass
	Chords
	Melody
)

// Truth is where counts and phrases fall.
type Truth struct {
	Beats   []float64 // [s]
	InBar   []int
	Starts  []int // index in Beats of each phrase
	Lengths []int // counts
}

// Count is how long a count lasts [s].
func (s Song) Count() float64 { return 60 / s.BPM }

// Truth says where everything falls.
func (s Song) Truth() Truth {
	var t Truth
	add := func(n, from int) {
		for i := range n {
			t.Beats = append(t.Beats, s.Silence+float64(len(t.Beats))*s.Count())
			t.InBar = append(t.InBar, (from+i)%s.Groove.Meter+1)
		}
	}
	add(s.PickUp, 12-s.PickUp) // 12: whole bars of two, three and four
	for _, p := range s.Phrases {
		t.Starts, t.Lengths = append(t.Starts, len(t.Beats)), append(t.Lengths, p.Counts)
		add(p.Counts, 0)
	}
	if s.Last {
		add(1, 0)
	}
	return t
}

// Bar is what chords and grooves go by [counts]: two bars of 6/8.
func (s Song) Bar() int {
	if s.Groove.Meter == 2 {
		return 4
	}
	return s.Groove.Meter
}
