package midi

import (
	"encoding/binary"
	"slices"
)

// ticksPerSecond is the resolution of the files that Write makes.
const ticksPerSecond = 2000

// Write makes a Standard MIDI File of format 0 of the take's notes.
func (t *Take) Write() []byte {
	type event struct {
		tick int
		off  bool
		msg  [3]byte
		len  int
	}
	var events []event
	for ch, p := range t.Programs {
		events = append(events, event{msg: [3]byte{0xC0 | byte(ch), byte(p)}, len: 2})
	}
	for _, n := range t.Notes {
		ch := byte(n.Channel)
		on := int(n.At*ticksPerSecond + 0.5)
		off := max(on+1, int((n.At+n.Len)*ticksPerSecond+0.5))
		events = append(events, event{on, false, [3]byte{0x90 | ch, byte(n.Key), byte(n.Velocity)}, 3},
			event{off, true, [3]byte{0x80 | ch, byte(n.Key), 0}, 3})
	}
	slices.SortStableFunc(events, func(a, b event) int {
		if a.tick != b.tick || a.off == b.off {
			return a.tick - b.tick
		}
		if a.off {
			return -1
		}
		return 1
	})
	body := []byte{0, 0xFF, 0x51, 3, 0x0F, 0x42, 0x40} // a quarter note lasts 1 s
	last := 0
	for _, e := range events {
		body = appendNumber(body, e.tick-last)
		body = append(body, e.msg[:e.len]...)
		last = e.tick
	}
	body = append(body, 0, 0xFF, 0x2F, 0)
	out := append([]byte("MThd"), 0, 0, 0, 6, 0, 0, 0, 1, ticksPerSecond>>8, ticksPerSecond&0xFF)
	out = append(out, "MTrk"...)
	out = binary.BigEndian.AppendUint32(out, uint32(len(body)))
	return append(out, body...)
}

// appendNumber writes a quantity of variable length.
func appendNumber(b []byte, n int) []byte {
	var digits []byte
	for digits = append(digits, byte(n&0x7F)); n > 0x7F; digits = append(digits, byte(n&0x7F)|0x80) {
		n >>= 7
	}
	slices.Reverse(digits)
	return append(b, digits...)
}
