package decode

import (
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
