package align

import "onphrase/plan"

// CountMap is a class laid on its music. Its JSON form is the
// "onphrase.map/1" contract: fields may be added, never renamed. All times
// are rounded to the millisecond.
type CountMap struct {
	Class    string    `json:"class"`
	Slot     float64   `json:"slot"`   // [s], 0 when not given
	Length   float64   `json:"length"` // [s]
	Parts    []Part    `json:"parts"`
	Rows     []Row     `json:"rows"`
	Findings []Finding `json:"findings"` // the gravest first, then in the order of the class
	Known    []Finding `json:"known"`    // those that the instructor stands by

	Facing  string  `json:"facing"` // class when the instructor faces it, or empty
	Summary Summary `json:"summary"`
}

// Part is one part of the class and the music it is taught on.
type Part struct {
	Part      string  `json:"part"`
	Kind      string  `json:"kind"`
	Row       int     `json:"row"`        // its first row, 0 when it has none
	ClassTime float64 `json:"class_time"` // when it begins [s]
	Seconds   float64 `json:"seconds"`    // how long it lasts
	Tracks    []Music `json:"tracks"`
}

// RowsOf lists the rows of the part with that index.
func (m *CountMap) RowsOf(part int) []Row {
	first := m.Parts[part].Row
	if first == 0 {
		return nil
	}
	for _, p := range m.Parts[part+1:] {
		if p.Row > 0 {
			return m.Rows[first-1 : p.Row-1]
		}
	}
	return m.Rows[first-1:]
}

// Music is a track as a part uses it.
type Music struct {
	File     string  `json:"file"`
	Title    string  `json:"title"`
	BPM      float64 `json:"bpm"`      // counts a minute as taught, at the recorded tempo
	Played   float64 `json:"played"`   // counts a minute as taught and played, on the counts that the part uses
	Speed    float64 `json:"speed"`    // 1 as recorded, 1.05 five per cent faster
	Start    float64 `json:"start"`    // where the first item may begin [s], on the track's own timeline
	Phrase   int     `json:"phrase"`   // the phrase that Start is in
	Left     float64 `json:"left"`     // music left after the last row on it [s], as played
	ClassAt  float64 `json:"class_at"` // class time of the track's 0:00 [s]
	Duration float64 `json:"duration"` // [s] as recorded
	Problem  string  `json:"problem"`  // why nothing could be laid on it, or empty
	Used     bool    `json:"used"`     // whether any row is on it
	Loudness float64 `json:"loudness"` // [LUFS], 0 when unknown
	Counts   int     `json:"counts"`   // counts that the music lasts
	Phrases  int     `json:"phrases"`  // phrases as taught
	Odd      int     `json:"odd"`      // of them not 32 counts

	Slowest float64 `json:"slowest"` // row of the part on it [counts a minute], as played
	Fastest float64 `json:"fastest"`

	Corrected bool `json:"corrected"` // a person has set some of what was heard in it

	Path   string  `json:"-"` // of the file, from where what is written lies; empty when that is not known
	Taught *Taught `json:"-"` // nil when nothing could be laid on it
}

// Row is one thing that happens: an item (or one side, pass or rhythm of
// it), a hold, a lead-in, a change of track.
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
	Rhythm    Rhythm  `json:"rhythm"`
	TrackTime float64 `json:"track_time"` // [s] on the track's own timeline
	ClassTime float64 `json:"class_time"` // [s] since the class began
	Seconds   float64 `json:"seconds"`    // how long it lasts, as played
	CueTime   float64 `json:"cue_time"`   // [s] since the class began: when to say it

	// how many counts before it starts that is: 4 or 8, 0 when there is nothing to say
	CueCounts int        `json:"cue_counts"`
	Placed    bool       `json:"placed"` // placedRow on a track; otherwise phrase, count and track time are unknown
	Pass      int        `json:"pass"`   // of a block, from 1; 0 for other items
	Passes    int        `json:"passes"`
	Line      int        `json:"line"` // in the class file
	Cue       string     `json:"cue"`  // the instructor's own words
	Weight    string     `json:"weight"`
	Range     plan.Range `json:"range"`
	Easier    string     `json:"easier"`
	Harder    string     `json:"harder"`
	Moves     []Step     `json:"moves"`    // of a block
	EndLead   string     `json:"end_lead"` // the leg that would lead on after a block

	Stage  int     `json:"stage"`  // of a block that is built up, from 1; 0 for other items
	Stages int     `json:"stages"` // 1 for a block that is danced as written
	Rounds []Round `json:"rounds"` // that the row belongs to, the outermost first

	ByClock bool    `json:"by_clock"`     // timed by the clock, whatever the music does
	Mirror  string  `json:"mirror"`       // the side of an instructor who faces the class, or empty
	Pattern string  `json:"pattern"`      // of the move of a set: squat, hinge, push
	SoFar   int     `json:"so_far"`       // repetitions of that pattern up to the end of this row
	OfAll   int     `json:"of_all"`       // repetitions of that pattern in the class
	Load    float64 `json:"load_seconds"` // seconds under load of a set

	// of a set: light, medium, heavy, body weight, not named, or the weight as written
	LoadClass string `json:"load_class"`

	Marks []Mark `json:"marks"` // what to count down, in order
}

// Round is one of the times that something is done.
type Round struct {
	Of     string `json:"of"` // the superset or the move of a series; empty for the part
	Round  int    `json:"round"`
	Rounds int    `json:"rounds"`
	Series bool   `json:"series"` // a turn of timed work, not a round of several items
}

// Mark is a moment of timed work to call out.
type Mark struct {
	ClassTime float64 `json:"class_time"` // [s]
	Say       string  `json:"say"`
}

// Step is one move of a block.
type Step struct {
	Move   string `json:"move"`
	Count  int    `json:"count"` // in the row, from 1
	Counts int    `json:"counts"`
	Lead   string `json:"lead"` // right, left or empty

	With []string `json:"with"` // what the layers have added
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
	ChangeRow   RowKind = "change" // of track within a part
)

// Work reports whether the row is something the class does, as written.
func (k RowKind) Work() bool {
	return k == BlockRow || k == SetRow || k == IntervalRow || k == PauseRow
}
