package synth

import "fmt"

// Song describes a piece of music to be made. The zero value of every field
// but Sections has a sensible meaning.
type Song struct {
	Title    string
	BPM      float64 // counts per minute, 40-240; 0 means 120
	Meter    int     // counts in a bar, 3 or 4; 0 means 4
	Style    Style
	Key      Key
	Seed     uint64  // another seed, another song
	Rate     int     // of the rendered sound [Hz], 8000-96000; 0 means 44100
	Lead     float64 // silence at the very start [s]
	Ambient  float64 // sound without a beat before the first count [s]
	PickUp   int     // counts before the first count 1, 0-7
	Sections []Section
	Feel     Feel
}

// Feel is how far the playing is from a machine's.
type Feel struct {
	Swing  float64 // 0-1: how late the off-beats come; 1 is a triplet shuffle, -1 straight in every style
	Jitter float64 // standard deviation of every note from its place [s], 0-0.03
	Drift  float64 // greatest departure from the tempo, as a fraction, 0-0.1
}

// Key is the scale a song is in.
type Key struct {
	Root  int // semitones above C, 0-11
	Minor bool
}

// The tempi a song can have [counts per minute].
const slowest, fastest = 40, 240

// check panics on a Song that cannot be made: it was written by a programmer.
func (s Song) check() {
	bad := func(what string, v any) { panic(fmt.Sprintf("synth: song %q: %s %v out of range", s.Title, what, v)) }
	switch {
	case s.BPM < slowest || s.BPM > fastest:
		bad("tempo", s.BPM)
	case s.Meter != 3 && s.Meter != 4:
		bad("meter", s.Meter)
	case s.Rate < 8000 || s.Rate > 96000:
		bad("rate", s.Rate)
	case s.PickUp < 0 || s.PickUp > 7:
		bad("pick-up", s.PickUp)
	case s.Lead < 0:
		bad("silence at the start", s.Lead)
	case s.Ambient < 0:
		bad("ambient intro", s.Ambient)
	case s.Feel.Drift < 0 || s.Feel.Drift > 0.1:
		bad("drift", s.Feel.Drift)
	case s.Feel.Jitter < 0 || s.Feel.Jitter > 0.03:
		bad("jitter", s.Feel.Jitter)
	case s.Feel.Swing < -1 || s.Feel.Swing > 1:
		bad("swing", s.Feel.Swing)
	case len(s.Sections) == 0:
		bad("number of sections", 0)
	}
	if _, ok := manners[s.Style]; !ok {
		bad("style", s.Style)
	}
	for _, sec := range s.Sections {
		if _, ok := layersOf[sec.Part]; !ok {
			bad("part", sec.Part)
		}
		if sec.Counts <= 0 {
			bad(string(sec.Part)+" counts", sec.Counts)
		}
		if sec.BPM != 0 && (sec.BPM < slowest || sec.BPM > fastest) {
			bad(string(sec.Part)+" tempo", sec.BPM)
		}
	}
}

// withDefaults fills in what the zero value stands for.
func (s Song) withDefaults() Song {
	if s.BPM == 0 {
		s.BPM = 120
	}
	if s.Meter == 0 {
		s.Meter = 4
	}
	if s.Rate == 0 {
		s.Rate = 44100
	}
	if s.Style == "" {
		s.Style = FourOnFloor
	}
	s.check()
	return s
}
