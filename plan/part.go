package plan

import (
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"
)

// Part is a part of a class, taught on one or more tracks in order.
type Part struct {
	Pos    Pos
	Name   string
	Kind   PartKind // Mixed when not given
	Tracks []TrackRef
	Start  Start
	BPM    float64 // play the tracks at this tempo, pitch kept; 0 as recorded
	Taught Taught
	Known  []Known // findings that she stands by in all of the part
	Items  []Item  // in the order done: every round, every repeat
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

// Taught is how the counts taught relate to the counts heard.
type Taught string

const (
	AsHeard Taught = ""
	Half    Taught = "half"   // every other beat is a count
	Double  Taught = "double" // two counts to a beat
)

// part reads one entry of parts.
func (r *reader) part(n *yaml.Node, c *Catalog) (Part, bool) {
	m, ok := r.mapping(n, "a part", "- part: Warm-up, and below it kind, tracks, do")
	if !ok {
		return Part{}, false
	}
	p := Part{
		Pos:    at(n),
		Name:   m.needText("part", "part: Warm-up"),
		Kind:   word(m, "kind", WarmUp, Cardio, Strength, Core, CoolDown, Stretch, Mixed),
		Tracks: m.tracks(),
		Start:  m.start(),
		BPM:    read(m, "bpm", m.take("bpm"), parseBPM),
		Taught: word(m, "taught", Half, Double),
		Known:  m.stands(),
	}
	if p.Kind == "" {
		p.Kind = Mixed
	}
	p.Items = m.rounds("", m.doList(c))
	m.done()
	return p, true
}

// tempoLow and tempoHigh bound what bpm: may ask for [BPM]; outside, it is a
// slip or a reading at half or double time.
const tempoLow, tempoHigh = 40, 240

func parseBPM(s string) (float64, *fault) {
	s = strings.TrimSpace(s)
	if bare := strings.TrimSpace(strings.TrimSuffix(s, "bpm")); bare != s && decimal.MatchString(bare) {
		return 0, &fault{msg: shown(s) + " is no number", hint: bare + "? Only the number is written here"}
	}
	if !decimal.MatchString(s) {
		return 0, &fault{msg: shown(s) + " is no tempo", hint: "beats per minute, like 126 or 127.5"}
	}
	v := number(s)
	if v < tempoLow || v > tempoHigh {
		return 0, &fault{msg: s + " beats per minute is out of range",
			hint: fmt.Sprintf("from %d to %d", tempoLow, tempoHigh)}
	}
	return v, nil
}
