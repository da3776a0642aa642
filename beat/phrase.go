package beat

// PhraseLen is the number of counts in a whole phrase: 4 eights.
const PhraseLen = 32

// Phrase is a run of counts that belong together.
type Phrase struct {
	Time   float64    `json:"time"` // of its count 1 [s]
	Beat   int        `json:"beat"` // index of its count 1 in Track.Beats
	Counts int        `json:"counts"`
	Kind   PhraseKind `json:"kind"`
	Trust  float64    `json:"trust"`  // 0-1 that a phrase starts here
	Energy Energy     `json:"energy"` // relative to the other phrases of the song
	Use    Use        `json:"use"`    // suggested; see Suggest
}

// PhraseKind names a phrase by its length.
type PhraseKind string

const (
	Whole  PhraseKind = "phrase" // exactly 32 counts
	Short  PhraseKind = "short"  // 17-31 counts
	Long   PhraseKind = "long"   // more than 32 counts
	Tag    PhraseKind = "tag"    // 1-15 extra counts
	Bridge PhraseKind = "bridge" // 16 counts, between whole phrases
)

// Odd reports whether the phrase is anything but 32 counts.
func (p Phrase) Odd() bool { return p.Counts != PhraseLen }

// KindOf names a phrase of the given number of counts.
func KindOf(counts int) PhraseKind {
	switch {
	case counts == PhraseLen:
		return Whole
	case counts < 16:
		return Tag
	case counts == 16:
		return Bridge
	case counts < PhraseLen:
		return Short
	}
	return Long
}

// Energy is how full a phrase sounds beside the others of its song.
type Energy string

const (
	Low    Energy = "low"
	Medium Energy = "medium"
	High   Energy = "high"
)
