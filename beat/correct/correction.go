package correct

import (
	"fmt"
	"math"
)

// Kind says what is corrected.
type Kind string

const (
	One      Kind = "one"
	Half     Kind = "half"
	Double   Kind = "double"
	Phrase   Kind = "phrase"
	NoPhrase Kind = "no-phrase"
	Counts   Kind = "counts"
	Every    Kind = "every"
	Steady   Kind = "bpm"
	Checked  Kind = "checked"
)

// Correction is one thing that a person has set.
type Correction struct {
	Kind   Kind
	Time   float64 // on the gapless timeline [s]; not for Half, Double and Checked
	Counts int     // of Counts alone: 1 to MostCounts
	Step   Ratio   // of Every alone: from one count to the next
	BPM    float64 // of Steady alone
}

// Ratio is a length in counts as they were heard: Num/Den of one.
type Ratio struct{ Num, Den int }

// MostRatio is the largest number in a ratio: people hear no others.
const MostRatio = 4

func (r Ratio) String() string {
	if r.Den == 1 {
		return fmt.Sprint(r.Num)
	}
	return fmt.Sprintf("%d/%d", r.Num, r.Den)
}

// The tempi that a person may set [1/min].
const (
	LeastBPM = 30.0
	MostBPM  = 300.0
)

// hasAt tells of a correction that has a figure of its own, and its time apart.
func (k Kind) hasAt() bool { return k == Counts || k == Every || k == Steady }

// timeless are the corrections of a whole track.
func (k Kind) timeless() bool { return k == Half || k == Double || k == Checked }

// MostCounts is the most that one phrase may be given: 16 whole ones. More is
// a slip of the keyboard.
const MostCounts = 512

// String says it as a person would.
func (c Correction) String() string {
	switch c.Kind {
	case One:
		return "count 1 of a phrase at " + Clock(c.Time)
	case Half:
		return "counted half as fast"
	case Double:
		return "counted twice as fast"
	case Phrase:
		return "a phrase starts at " + Clock(c.Time)
	case NoPhrase:
		return "no phrase starts at " + Clock(c.Time)
	case Every:
		return fmt.Sprintf("a count at %s and at every %s of those heard", Clock(c.Time), c.Step)
	case Steady:
		return fmt.Sprintf("%.2f BPM throughout, with a count at %s", c.BPM, Clock(c.Time))
	case Checked:
		return "checked: all of it is right"
	}
	return fmt.Sprintf("the phrase at %s has %s", Clock(c.Time), many(c.Counts))
}

func many(counts int) string {
	if counts == 1 {
		return "1 count"
	}
	return fmt.Sprintf("%d counts", counts)
}

// Clock writes seconds as m:ss.sss, to the millisecond; ParseClock reads it.
func Clock(seconds float64) string {
	ms := int(math.Round(seconds * 1000))
	return fmt.Sprintf("%d:%02d.%03d", ms/60000, ms/1000%60, ms%1000)
}
