// Package midi reads the MIDI files of songs, arranges them anew, and writes
// them for a synthesiser to play.
package midi

import (
	"encoding/binary"
	"errors"
	"fmt"
)

// File is what a Standard MIDI File says, in order of time.
//
// Ref: MIDI Manufacturers Association 1996, "Standard MIDI Files 1.0".
type File struct {
	Division int // ticks in a quarter note
	Notes    []Note
	Programs []Program
	Bends    []Bend
	Meters   []Meter
	Ticks    int // of the last event
}

// Note is a key held on a channel.
type Note struct {
	Tick, Len              int
	Channel, Key, Velocity int
}

// Program says which instrument a channel plays from a tick on.
type Program struct{ Tick, Channel, Number int }

// Bend is a pitch-bend (key 0) or controller message.
type Bend struct {
	Tick, Channel int
	Control       bool // a controller, not the pitch wheel
	Number, Value int
}

// Meter is a time signature.
type Meter struct{ Tick, Beats, Unit int }

// Drums is the channel of the drum kit, counted from 0.
const Drums = 9

// Read parses a Standard MIDI File of format 0 or 1.
func Read(data []byte) (*File, error) {
	if len(data) < 14 || string(data[:4]) != "MThd" {
		return nil, errors.New("midi: not a MIDI file")
	}
	f := &File{Division: int(binary.BigEndian.Uint16(data[12:]))}
	if f.Division == 0 || f.Division >= 0x8000 {
		return nil, errors.New("midi: time code instead of ticks")
	}
	for rest := data[8+binary.BigEndian.Uint32(data[4:]):]; len(rest) >= 8; {
		size := int(binary.BigEndian.Uint32(rest[4:]))
		size = min(size, len(rest)-8)
		if string(rest[:4]) == "MTrk" {
			t := track{File: f, data: rest[8 : 8+size]}
			if err := t.read(); err != nil {
				return nil, fmt.Errorf("midi: %w", err)
			}
		}
		rest = rest[8+size:]
	}
	return f, nil
}

// track is a track being read.
type track struct {
	*File
	data   []byte
	at     int
	tick   int
	status byte
	down   [16][128]int // index+1 in Notes of a key that is held
}

var errShort = errors.New("track ends within an event")

func (t *track) read() error {
	for t.at < len(t.data) {
		t.tick += t.number()
		t.Ticks = max(t.Ticks, t.tick)
		if t.at >= len(t.data) {
			return nil
		}
		if b := t.data[t.at]; b >= 0x80 {
			t.status = b
			t.at++
		}
		if t.status >= 0xF0 {
			if err := t.system(); err != nil {
				return err
			}
			continue
		}
		if err := t.message(); err != nil {
			return err
		}
	}
	return nil
}

// number reads a quantity of variable length.
func (t *track) number() int {
	n := 0
	for t.at < len(t.data) {
		b := t.data[t.at]
		t.at++
		n = n<<7 | int(b&0x7F)
		if b < 0x80 {
			break
		}
	}
	return n
}

func (t *track) system() error {
	kind := byte(0)
	if t.status == 0xFF {
		if t.at >= len(t.data) {
			return errShort
		}
		kind = t.data[t.at]
		t.at++
	}
	n := t.number()
	if t.at+n > len(t.data) {
		return errShort
	}
	if body := t.data[t.at : t.at+n]; kind == 0x58 && n >= 2 {
		t.Meters = append(t.Meters, Meter{t.tick, int(body[0]), 1 << body[1]})
	}
	t.at += n
	return nil
}

func (t *track) message() error {
	n := 2
	if s := t.status & 0xF0; s == 0xC0 || s == 0xD0 {
		n = 1
	}
	if t.at+n > len(t.data) {
		return errShort
	}
	d := t.data[t.at : t.at+n]
	t.at += n
	ch := int(t.status & 0x0F)
	switch t.status & 0xF0 {
	case 0x90:
		if d[1] > 0 {
			t.release(ch, int(d[0]))
			t.Notes = append(t.Notes, Note{t.tick, 1, ch, int(d[0]), int(d[1])})
			t.down[ch][d[0]&0x7F] = len(t.Notes)
			return nil
		}
		t.release(ch, int(d[0]))
	case 0x80:
		t.release(ch, int(d[0]))
	case 0xB0:
		t.Bends = append(t.Bends, Bend{t.tick, ch, true, int(d[0]), int(d[1])})
	case 0xC0:
		t.Programs = append(t.Programs, Program{t.tick, ch, int(d[0])})
	case 0xE0:
		t.Bends = append(t.Bends, Bend{t.tick, ch, false, 0, int(d[0]) | int(d[1])<<7})
	}
	return nil
}

// release ends a held key.
func (t *track) release(ch, key int) {
	if i := t.down[ch][key&0x7F]; i > 0 {
		n := &t.Notes[i-1]
		n.Len = max(1, t.tick-n.Tick)
		t.down[ch][key&0x7F] = 0
	}
}
