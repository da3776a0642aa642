package synth

// Truth is where everything is, on the timeline of the rendered sound.
type Truth struct {
	Beats   []Beat
	Phrases []Phrase // in order, covering every beat once
	End     float64  // where the last count ends; the sound rings on a little [s]
}

// Beat is one count.
type Beat struct {
	Time  float64 // [s]
	InBar int     // 1 is count 1 of a bar
}

// Phrase is a run of counts that belong together: 32 of them, or whatever a
// section has left over.
type Phrase struct {
	Time   float64 // of its first count [s]
	Beat   int     // index of its first count in Truth.Beats
	Counts int
	Label  string // the section's part, or "pick-up"
}

// Truth says where every count and phrase of the song falls.
func (s Song) Truth() Truth {
	s = s.withDefaults()
	g := newGrid(s)
	t := Truth{End: g.end()}
	add := func(start, counts, inBar int, label string) {
		t.Phrases = append(t.Phrases, Phrase{Time: g.times[start], Beat: start, Counts: counts, Label: label})
		for i := range counts {
			t.Beats = append(t.Beats, Beat{Time: g.times[start+i], InBar: (inBar+i)%s.Meter + 1})
		}
	}
	if s.PickUp > 0 {
		add(0, s.PickUp, 8*s.Meter-s.PickUp, "pick-up")
	}
	for _, p := range phrasesOf(s) { // a bar starts anew with every phrase
		add(p.start+s.PickUp, p.counts, 0, string(p.part))
	}
	return t
}

// span is one phrase of a song as the composer sees it.
type span struct {
	part   Part
	start  int // count, from the first count 1
	counts int
	nth    int  // of its section, from 0
	last   bool // of its section
	first  bool // of the song
}

// phrasesOf cuts the sections into phrases of 8 bars; what a section has left
// over is a phrase of its own.
func phrasesOf(s Song) []span {
	var spans []span
	at := 0
	for _, sec := range s.Sections {
		whole := 8 * s.Meter
		for nth, left := 0, sec.Counts; left > 0; nth++ {
			n := min(whole, left)
			left -= n
			spans = append(spans, span{part: sec.Part, start: at, counts: n, nth: nth, last: left == 0, first: at == 0})
			at += n
		}
	}
	return spans
}
