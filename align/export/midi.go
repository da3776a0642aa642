package export

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"io"
	"math"
	"sort"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// ticks is how finely a count is divided: markers are at most a quarter of a
// millisecond off at 120 BPM.
const ticks = 960

// The meta events of a tempo map.
//
// Ref: MIDI Manufacturers Association, Standard MIDI Files 1.0 (RP-001).
const (
	metaText      = 0x01
	metaName      = 0x03
	metaMarker    = 0x06
	metaCue       = 0x07
	metaEnd       = 0x2F
	metaTempo     = 0x51
	metaSignature = 0x58
)

// event is a meta event of a MIDI file.
type event struct {
	tick int
	kind byte
	data []byte
}

// writeMIDI writes a Standard MIDI File of one track without notes: the tempo
// of every stretch, bars that begin afresh on count 1 of every phrase, a
// marker for each phrase and item, a cue point for each announcement.
//
// A count is a quarter note. Text is UTF-8, which the standard leaves open.
func writeMIDI(w io.Writer, m *align.CountMap) error {
	t := newTempoMap(m)
	events := []event{text(0, metaName, m.Class)}
	for _, c := range Cautions {
		events = append(events, text(0, metaText, c))
	}
	events = append(events, t.tempi()...)
	events = append(events, t.bars()...)
	events = append(events, t.markers(m)...)
	sort.SliceStable(events, func(i, j int) bool { return events[i].tick < events[j].tick })
	events = append(events, event{max(t.last()*ticks, lastTick(events)), metaEnd, nil})

	var b bytes.Buffer
	b.WriteString("MThd\x00\x00\x00\x06\x00\x00\x00\x01") // format 0, one track
	_ = binary.Write(&b, binary.BigEndian, uint16(ticks))
	body := chunk(events)
	b.WriteString("MTrk")
	_ = binary.Write(&b, binary.BigEndian, uint32(len(body)))
	b.Write(body)
	_, err := w.Write(b.Bytes())
	return err
}

func lastTick(events []event) int { return events[len(events)-1].tick }

// chunk is the body of a track.
func chunk(events []event) []byte {
	var b []byte
	at := 0
	for _, e := range events {
		b = append(variable(b, e.tick-at), 0xFF, e.kind)
		b = append(variable(b, len(e.data)), e.data...)
		at = e.tick
	}
	return b
}

// variable appends a number in groups of seven bits, the highest first, every
// byte but the last with its top bit set.
func variable(b []byte, n int) []byte {
	for shift := 21; shift > 0; shift -= 7 {
		if n>>shift > 0 {
			b = append(b, byte(n>>shift)|0x80)
		}
	}
	return append(b, byte(n&0x7F))
}

func text(tick int, kind byte, s string) event { return event{tick, kind, []byte(say.OneLine(s))} }

func (t *tempoMap) tempi() []event {
	var all []event
	for _, s := range t.stretches() {
		n := s.micros
		all = append(all, event{s.first * ticks, metaTempo, []byte{byte(n >> 16), byte(n >> 8), byte(n)}})
	}
	return all
}

// bars writes the bars from anchor to anchor; what is left before the next
// anchor is a bar of its own.
func (t *tempoMap) bars() []event {
	var all []event
	now := 0
	set := func(count, counts int) {
		if counts == now {
			return
		}
		now = counts
		// Quarter notes, a metronome click a quarter, 8 thirty-seconds to it.
		all = append(all, event{count * ticks, metaSignature, []byte{byte(counts), 2, 24, 8}})
	}
	for i, a := range t.anchors {
		next := t.last()
		if i+1 < len(t.anchors) {
			next = t.anchors[i+1].count
		}
		whole := (next - a.count) / a.bar * a.bar
		if whole > 0 {
			set(a.count, a.bar)
		}
		if rest := next - a.count - whole; rest > 0 {
			set(a.count+whole, rest)
		}
	}
	return all
}

// markers names every phrase, every part and everything that is done, and what
// is announced before.
func (t *tempoMap) markers(m *align.CountMap) []event {
	var all []event
	for count, name := range t.phrases {
		all = append(all, text(count*ticks, metaMarker, name))
	}
	sort.Slice(all, func(i, j int) bool { return all[i].tick < all[j].tick })
	tick := func(at float64) int { return int(math.Round(t.count(at) * ticks)) }
	part := ""
	for _, a := range acts(m) {
		what := a.what
		if a.part != part {
			part = a.part
			what = part + ": " + what
		}
		all = append(all, text(tick(a.from), metaMarker, what))
		if a.words != "" {
			all = append(all, text(tick(a.cue), metaCue, "next: "+a.words))
		}
		for _, c := range a.calls {
			all = append(all, text(tick(c.ClassTime), metaCue, spoken(c.Say)))
		}
	}
	return all
}

// phraseWords names a phrase, with its length where that is not usual.
func phraseWords(n int, p align.TaughtPhrase) string {
	words := []string{fmt.Sprintf("phrase %d", n)}
	if p.Kind != "phrase" { // not of 32 counts
		words = append(words, string(p.Kind), say.Many(p.Counts, "count"))
	}
	return strings.Join(words, ", ")
}
