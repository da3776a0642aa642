package align

// CountMap is a class laid on its music. Its JSON form is the
// "onphrase.map/1" contract: fields may be added, never renamed.
type CountMap struct {
	Class    string    `json:"class"`
	Slot     float64   `json:"slot"`   // [s], 0 when not given
	Length   float64   `json:"length"` // [s]
	Rows     []Row     `json:"rows"`
	Findings []Finding `json:"findings"`
}

// Row is one thing that happens: an item (or one side of it), a hold, a
// lead-in.
type Row struct {
	Part      string  `json:"part"`
	Track     string  `json:"track"`
	Row       int     `json:"row"` // from 1 through the whole class
	Kind      RowKind `json:"kind"`
	Item      string  `json:"item"`
	Side      string  `json:"side"`   // right, left or empty
	Phrase    int     `json:"phrase"` // from 1; 0 before the first
	Count     int     `json:"count"`  // in its phrase, from 1
	Counts    int     `json:"counts"`
	Reps      int     `json:"reps"`
	Rhythm    string  `json:"rhythm"`
	TrackTime float64 `json:"track_time"` // [s] on the track's own timeline
	ClassTime float64 `json:"class_time"` // [s] since the class began
	Seconds   float64 `json:"seconds"`    // how long it lasts, as played
	CueTime   float64 `json:"cue_time"`   // [s] since the class began: when to say it
}

// RowKind says what a row is.
type RowKind string

const (
	LeadIn      RowKind = "lead-in"
	BlockRow    RowKind = "block"
	SetRow      RowKind = "set"
	IntervalRow RowKind = "interval"
	PauseRow    RowKind = "pause"
	HoldRow     RowKind = "hold"
)
