package main

import (
	_ "embed" // for the schema
	"encoding/json"
	"io"

	"onphrase/align"
	"onphrase/align/fit"
)

// relaySchema describes what writeJSON writes.
//
//go:embed relay.schema.json
var relaySchema string

// relayJSON is the contract onphrase.relay/1.
type relayJSON struct {
	Schema string          `json:"schema"`
	Class  string          `json:"class"`
	File   string          `json:"file"` // written, empty when none was
	Slot   float64         `json:"slot"`
	Was    float64         `json:"was_length"`
	Is     float64         `json:"is_length"`
	Parts  []relayPartJSON `json:"parts"`
	Gone   []align.Finding `json:"gone"`
	Left   []align.Finding `json:"left"`
	New    []align.Finding `json:"new"`
	Way    *wayJSON        `json:"way_out"`
}

type relayPartJSON struct {
	Part string     `json:"part"`
	Was  musicJSON  `json:"was"`
	Is   musicJSON  `json:"is"`
	Work []workJSON `json:"work"`
}

type musicJSON struct {
	ClassTime float64    `json:"class_time"`
	Seconds   float64    `json:"seconds"`
	Tracks    []songJSON `json:"tracks"`
}

type songJSON struct {
	File    string  `json:"file"`
	Title   string  `json:"title"`
	BPM     float64 `json:"bpm"` // counts a minute as taught and played
	Phrase  int     `json:"phrase"`
	Problem string  `json:"problem"`
}

type workJSON struct {
	Kind   align.RowKind `json:"kind"`
	Item   string        `json:"item"`
	Side   string        `json:"side"`
	Reps   int           `json:"reps"`
	Rhythm string        `json:"rhythm"`
	Was    align.Spell   `json:"was"`
	Is     align.Spell   `json:"is"`
}

type wayJSON struct {
	Price   int          `json:"price"`
	Changes []fit.Change `json:"changes"`
}

func (o *relayOptions) writeJSON(w io.Writer, r exchanged) error {
	out := relayJSON{
		Schema: "onphrase.relay/1", Class: r.is.Class.Name, File: o.out, Slot: r.is.Class.Slot,
		Was: r.was.Map.Length, Is: r.is.Map.Length, Parts: []relayPartJSON{},
		Gone: append([]align.Finding{}, r.Gone...), Left: append([]align.Finding{}, r.Left...),
		New: append([]align.Finding{}, r.New...),
	}
	for _, p := range r.Parts {
		part := relayPartJSON{Part: p.Is.Part, Was: musicOf(p.Was), Is: musicOf(p.Is), Work: []workJSON{}}
		for _, m := range p.Work {
			part.Work = append(part.Work, workJSON{m.Kind, m.Item, m.Side, m.Reps, m.Rhythm, m.Was, m.Is})
		}
		out.Parts = append(out.Parts, part)
	}
	if r.way != nil {
		out.Way = &wayJSON{r.way.Price, r.way.Changes}
	}
	enc := json.NewEncoder(w)
	enc.SetEscapeHTML(false)
	return enc.Encode(out)
}

func musicOf(p align.Part) musicJSON {
	m := musicJSON{ClassTime: p.ClassTime, Seconds: p.Seconds, Tracks: []songJSON{}}
	for _, t := range p.Tracks {
		m.Tracks = append(m.Tracks, songJSON{t.File, t.Title, t.Played, t.Phrase, t.Problem})
	}
	return m
}
