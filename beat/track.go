package beat

// Track is all that is known about one piece of music. Its JSON form is the
// "onphrase.analysis/1" contract: fields may be added, never renamed.
type Track struct {
	File     string  `json:"file"`
	Title    string  `json:"title"`
	Duration float64 `json:"duration"` // [s]
	// of the median count [1/min]: half of the counts are no faster; 0 when no steady beat was found
	BPM          float64       `json:"bpm"`
	Meter        int           `json:"meter"` // counts in a bar: 4, 3, or 2 (6/8 in dotted quarters)
	Alternatives []Rival       `json:"alternatives"`
	Beats        []float64     `json:"beats"`       // time of every count [s], strictly increasing
	BeatInBar    []int         `json:"beat_in_bar"` // 1..Meter for every count
	Phrases      []Phrase      `json:"phrases"`     // in order, without gaps, from the first trusted count 1 on
	Unsteady     [][2]float64  `json:"unsteady"`    // stretches without a trustworthy beat, from-to [s]
	TempoChanges []TempoChange `json:"tempo_changes"`
	Songs        []Song        `json:"songs"` // of a continuous mix, in order; none of a single song
	Trust        Trust         `json:"trust"`
	Loudness     float64       `json:"loudness"`  // integrated loudness after ITU-R BS.1770 [LUFS]
	Outline      Outline       `json:"outline"`   // how loud it is as it goes on, every half second
	Corrected    bool          `json:"corrected"` // a person has set some of it
	Problem      string        `json:"problem"`   // why there is no result; empty when there is one
}

// Rival is another reading of the tempo, usually half or double.
type Rival struct {
	BPM  float64 `json:"bpm"`
	Odds float64 `json:"odds"` // probability 0-1 that this reading is the one taught
}

// TempoChange says that from Time on the counts come at BPM.
type TempoChange struct {
	Time float64 `json:"time"` // [s]
	BPM  float64 `json:"bpm"`
}

// Trust holds calibrated probabilities 0-1 that an answer is right.
type Trust struct {
	Beat   float64 `json:"beat"`   // the counts
	Count1 float64 `json:"count1"` // which count is count 1
	Phrase float64 `json:"phrase"` // where the 32-count phrases start
}
