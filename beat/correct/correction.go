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
)

// Correction is one thing that a person has set.
type Correction struct {
	Kind   Kind
	Time   float64 // on the gapless timeline [s]; not for Half and Double
	Counts int     // of Counts alone: 1 to MostCounts
}

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
