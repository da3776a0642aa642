package plan

// Pos is a place in a class file, both counted from 1.
type Pos struct{ Line, Col int }

// Class is a whole class, as written.
type Class struct {
	Pos      Pos
	Name     string
	Slot     float64 // minutes in the studio [s]; 0 when not given
	Music    string  // folder of the tracks, relative to the class file, as written; empty: beside it
	MusicPos Pos     // of that name; of the class where it has none
	Facing   Facing
	Known    []Known // findings that she stands by in all of the class
	Parts    []Part
	Catalog  *Catalog // the built-in moves and the class's own
}

// Facing is where the instructor looks while she teaches.
type Facing string

const (
	FacingFront Facing = ""      // as the class does: her right is theirs
	FacingClass Facing = "class" // towards them, their mirror: their right is her left
)

// Sides says on which sides (or with which lead) an item is done.
type Sides string

const (
	NoSides Sides = ""
	Both    Sides = "both" // once right, once left
	Right   Sides = "right"
	Left    Sides = "left"
)

// Mirrored is the other side: where the instructor moves who faces the class.
func (s Sides) Mirrored() Sides {
	switch s {
	case Right:
		return Left
	case Left:
		return Right
	}
	return s
}

// Each lists the sides in the order they are done, one of them without a name
// when none is given.
func (s Sides) Each() []Sides {
	if s == Both {
		return []Sides{Right, Left}
	}
	return []Sides{s}
}

// Times is how often an item is done to do each of its sides once.
func (s Sides) Times() int {
	if s == Both {
		return 2
	}
	return 1
}
