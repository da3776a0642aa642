package decode

import (
	"encoding/binary"
	"fmt"
	"io"

	"github.com/hajimehoshi/go-mp3"
)

// mp3Core turns frames into samples, one frame in, one frame out. go-mp3 does
// the decoding; around it the core guards the bit reservoir (what a frame takes
// from the bytes of those before it), catches panics, and gives silence for
// what cannot be decoded.
type mp3Core struct {
	feed      mp3Feed
	dec       *mp3.Decoder
	reservoir int // bytes that the next frame may look back on
	buf       []byte
	pcm       []byte // one frame, 16 bit, always two channels

	starved int // frames muted because bytes before them are missing
	damaged int // frames muted because their contents make no sense
}

// pcmFrame is one sample of both channels as go-mp3 gives it [bytes].
const pcmFrame = 4

// decode returns the frame's samples, 16 bit, two channels, little endian. The
// slice is valid until the next call.
func (c *mp3Core) decode(f mp3Frame) []byte {
	c.silence(f.header)
	if f.cut || !c.load(f) || !c.run() {
		c.damaged++
		c.reset()
		clear(c.pcm)
	}
	return c.pcm
}

// silence returns a frame's worth of silence, valid until the next call.
func (c *mp3Core) silence(h mp3Header) []byte {
	size := h.samples() * pcmFrame
	if cap(c.pcm) < size {
		c.pcm = make([]byte, size)
	}
	c.pcm = c.pcm[:size]
	clear(c.pcm)
	return c.pcm
}

// reset forgets everything that frames before left behind.
func (c *mp3Core) reset() {
	c.dec, c.reservoir = nil, 0
}

// load puts the frame into the feed, muted where its bytes cannot be right. It
// reports false for a frame too short to hold its own side information.
func (c *mp3Core) load(f mp3Frame) bool {
	h := f.header
	at := h.body()
	mainSize := len(f.data) - at - h.sideInfo()
	if mainSize < 0 {
		return false
	}
	c.buf = append(c.buf[:0], f.data...)
	side := c.buf[at : at+h.sideInfo()]
	info := readSideInfo(h, side)
	back := info.back
	switch {
	case back > c.reservoir:
		c.starved++
		back = c.reservoir
		muteSideInfo(h, side, back)
	case info.bits > 8*(back+mainSize) || !info.plausible:
		c.damaged++
		muteSideInfo(h, side, back)
	}
	c.reservoir = back + mainSize
	c.feed.frame = c.buf
	return true
}

// run decodes the frame in the feed into c.pcm. A panic of the decoder counts
// as a damaged frame: it owns no other goroutine and no resource.
func (c *mp3Core) run() (ok bool) {
	defer func() {
		if recover() != nil {
			ok = false
		}
	}()
	if c.dec == nil {
		dec, err := mp3.NewDecoder(&c.feed)
		if err != nil {
			return false
		}
		c.dec = dec
	}
	_, err := io.ReadFull(c.dec, c.pcm)
	return err == nil && len(c.feed.frame) == 0
}

// mp3Feed hands one frame to the decoder and then says that there is no more.
type mp3Feed struct{ frame []byte }

func (f *mp3Feed) Read(p []byte) (int, error) {
	if len(f.frame) == 0 {
		return 0, io.EOF
	}
	n := copy(p, f.frame)
	f.frame = f.frame[n:]
	return n, nil
}

// sideInfo is what the core must know of a frame's side information.
type sideInfo struct {
	back      int  // main_data_begin: bytes taken from frames before
	bits      int  // length of all granules [bit]
	plausible bool // every field is within what the standard allows
}

// readSideInfo reads the side information of a layer III frame.
//
// Ref: ISO/IEC 11172-3 2.4.1.7 and 13818-3 2.4.1.7.
func readSideInfo(h mp3Header, b []byte) sideInfo {
	r := bitReader{b: b}
	info := sideInfo{plausible: true}
	granules, scaleBits, tail := 2, 4, 3 // preflag, scale, table of count1
	channels := h.channels()
	if h.version == mpeg1 {
		const scfsi = 4
		info.back = r.bits(9)
		r.bits([3]int{0, 5, 3}[channels] + channels*scfsi)
	} else {
		granules, scaleBits, tail = 1, 9, 2
		info.back = r.bits(8)
		r.bits(channels) // private
	}
	const maxBigValues = 288 // pairs of the 576 lines
	for range granules * channels {
		info.bits += r.bits(12)
		if r.bits(9) > maxBigValues {
			info.plausible = false
		}
		r.bits(8 + scaleBits) // gain, scale factors
		if r.bits(1) == 1 {   // a window other than the long one
			const longBlock = 0
			if r.bits(2) == longBlock {
				info.plausible = false
			}
			r.bits(1 + 2*5 + 3*3) // mixed, tables, gains
		} else {
			r.bits(3*5 + 4 + 3) // tables, regions
		}
		r.bits(tail)
	}
	return info
}

// muteSideInfo makes a frame silent and keeps its bytes for those that follow.
func muteSideInfo(h mp3Header, b []byte, back int) {
	clear(b)
	if h.version == mpeg1 {
		binary.BigEndian.PutUint16(b, uint16(back<<7))
	} else {
		b[0] = byte(back)
	}
}

// bitReader reads big-endian bit fields of up to 32 bits.
type bitReader struct {
	b  []byte
	at int // [bit]
}

func (r *bitReader) bits(n int) int {
	v := 0
	for range n {
		v <<= 1
		if i := r.at >> 3; i < len(r.b) {
			v |= int(r.b[i]>>(7-r.at&7)) & 1
		}
		r.at++
	}
	return v
}

// notes says how many frames are silent and why.
func (c *mp3Core) notes() []string {
	var notes []string
	if c.damaged > 0 {
		notes = append(notes, fmt.Sprintf("%s muted", plural(c.damaged, "damaged frame")))
	}
	if c.starved > 0 {
		notes = append(notes, fmt.Sprintf("%s muted: bytes that they need are missing", plural(c.starved, "frame")))
	}
	return notes
}
