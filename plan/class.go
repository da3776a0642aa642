package plan

// Pos is a place in a class file, both counted from 1.
type Pos struct{ Line, Col int }

// Class is a whole class, as written.
type Class struct {
	Pos     Pos
	Name    string
	Slot    float64 // minutes in the studio [s]; 0 when not given
	Music   string  // folder of the tracks, relative to the class file, as written
	Parts   []Part
	Catalog *Catalog // the built-in moves and the class's own
}

// Part is a part of a class, taught on one or more tracks in order.
type Part struct {
	Pos    Pos
	Name   string
	Kind   PartKind
	Tracks []TrackRef
	Start  Start
	BPM    float64 // play the tracks at this tempo, pitch kept; 0 as recorded
	Taught Taught
	Items  []Item
}

// TrackRef names a file in the class's music folder.
type TrackRef struct {
	Pos  Pos
	File string
}

// PartKind says what a part of the class is for.
type PartKind string

const (
	WarmUp   PartKind = "warm-up"
	Cardio   PartKind = "cardio"
	Strength PartKind = "strength"
	Core     PartKind = "core"
	CoolDown PartKind = "cool-down"
	Stretch  PartKind = "stretch"
	Mixed    PartKind = "mixed"
)

// Start is where the first item of a part begins. At most one field is set;
// none means the first trusted phrase.
type Start struct {
	Pos    Pos
	Phrase int      // from 1
	Count  int      // from 1, the first count of phrase 1 being 1
	Time   *float64 // on the track's own timeline [s]; snapped to the nearest count
}

// Taught is how the counts taught relate to the counts heard.
type Taught string

const (
	AsHeard Taught = ""
	Half    Taught = "half"   // every other beat is a count
	Double  Taught = "double" // two counts to a beat
)

// Sides says on which sides (or with which lead) an item is done.
type Sides string

const (
	NoSides Sides = ""
	Both    Sides = "both" // once right, once left
	Right   Sides = "right"
	Left    Sides = "left"
)

// Length is a stretch of counts or of seconds; exactly one is set, or neither.
type Length struct {
	Counts  int
	Seconds float64
}
