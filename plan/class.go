package plan

// Pos is a place in a class file, both counted from 1.
type Pos struct{ Line, Col int }

// Class is a whole class, as written.
type Class struct {
	Pos     Pos
	Name    string
	Slot    float64 // minutes in the studio [s]; 0 when not given
	Music   string  // folder of the tracks, relative to the class file, as written; empty: beside it
	Parts   []Part
	Catalog *Catalog // the built-in moves and the class's own
}

// Sides says on which sides (or with which lead) an item is done.
type Sides string

const (
	NoSides Sides = ""
	Both    Sides = "both" // once right, once left
	Right   Sides = "right"
	Left    Sides = "left"
)

// Times is how often an item is done to do each of its sides once.
func (s Sides) Times() int {
	if s == Both {
		return 2
	}
	return 1
}
