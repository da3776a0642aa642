package chart

import (
	"encoding/json"
	"fmt"
	"strings"
)

// readTurns reads a .json chart of a song that two sing in turn: bpm, and notes,
// a list of stretches of one bar (lengthInSteps sixteenths, or sectionBeats
// counts), each of which may change the tempo and says who sings. The song
// starts with the first count of the first bar. A section is where another
// takes over; its name ends with the counts that the one before had.
//
// Ref: the format of its open-source game and of the engines built on it; from
// memory.
func readTurns(data []byte) (*Chart, error) {
	type stretch struct {
		Steps  float64 `json:"lengthInSteps"`
		Beats  float64 `json:"sectionBeats"`
		Must   bool    `json:"mustHitSection"`
		Change bool    `json:"changeBPM"`
		BPM    float64 `json:"bpm"`
	}
	type song struct {
		Name  json.RawMessage `json:"song"`
		BPM   float64         `json:"bpm"`
		Notes []stretch       `json:"notes"`
	}
	// Some editors leave nulls behind the end of the text.
	data = []byte(strings.TrimRight(string(data), "\x00 \r\n\t"))
	var outer song
	if err := json.Unmarshal(data, &outer); err != nil {
		return nil, err
	}
	inner := outer
	if len(outer.Notes) == 0 {
		if err := json.Unmarshal(outer.Name, &inner); err != nil {
			return nil, fmt.Errorf("no song in it")
		}
	}
	if inner.BPM <= 0 || len(inner.Notes) == 0 {
		return nil, fmt.Errorf("no song in it")
	}
	c := &Chart{}
	if err := json.Unmarshal(inner.Name, &c.Title); err != nil {
		c.Title = ""
	}
	bpm, t, held := inner.BPM, 0.0, 0.0
	for i, n := range inner.Notes {
		was := bpm
		if n.Change && n.BPM > 0 {
			bpm = n.BPM
		}
		beats := n.Beats
		if beats <= 0 {
			beats = n.Steps / 4
		}
		if beats <= 0 {
			beats = 4
		}
		meter := max(1, int(beats+0.5))
		if i == 0 || bpm != was || meter != c.Anchors[len(c.Anchors)-1].Meter {
			c.Anchors = append(c.Anchors, Anchor{Time: t, Period: 60 / bpm, Meter: meter})
		}
		if i > 0 && n.Must != inner.Notes[i-1].Must {
			c.Sections = append(c.Sections, Section{t, fmt.Sprintf("%s %g", Turn, held)})
			held = 0
		}
		held += beats
		t += beats * 60 / bpm
	}
	return c, nil
}
