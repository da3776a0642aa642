package align

import (
	"fmt"
	"strings"

	"onphrase/plan"
)

// Rhythm is how a repetition of a row goes. The zero Rhythm is that of a row
// without repetitions. In JSON it is text, as the class file has it.
type Rhythm struct{ plan.Rhythm }

// Phase is one way of a repetition, or a hold at the end of a way.
type Phase struct {
	Word   string `json:"word"` // down, hold, up
	Counts int    `json:"counts"`
}

// String writes the rhythm as the class file has it: 2-2, pulse; nothing for
// the zero Rhythm.
func (r Rhythm) String() string {
	if r == (Rhythm{}) {
		return ""
	}
	return r.Rhythm.String()
}

// Phases takes the rhythm apart: 2-2 is down and up, 2-1-2-1 has holds. A
// pulse, which is less than a count each way, has none.
func (r Rhythm) Phases() []Phase {
	all := []Phase{}
	for _, p := range []Phase{{"down", r.Down}, {"hold", r.Hold}, {"up", r.Up}, {"hold", r.Rest}} {
		if p.Counts > 0 {
			all = append(all, p)
		}
	}
	return all
}

// Words writes the rhythm in full: 2 down 2 up.
func (r Rhythm) Words() string {
	var words []string
	for _, p := range r.Phases() {
		words = append(words, fmt.Sprintf("%d %s", p.Counts, p.Word))
	}
	if words == nil {
		return r.String()
	}
	return strings.Join(words, " ")
}

// MarshalText writes the rhythm as String does.
func (r Rhythm) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// UnmarshalText reads what MarshalText writes.
func (r *Rhythm) UnmarshalText(b []byte) (err error) {
	*r = Rhythm{}
	if len(b) > 0 {
		r.Rhythm, err = plan.ParseRhythm(string(b))
	}
	return err
}

// RangeWords names the range of a set that is not done over the whole of it.
func (r Row) RangeWords() string {
	if r.Range == plan.HalfRange {
		return "half range"
	}
	return ""
}
