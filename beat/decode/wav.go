package decode

import (
	"bufio"
	"encoding/binary"
	"fmt"
	"io"
	"math"
)

// wavStream reads the samples of a WAV file.
type wavStream struct {
	header  wavHeader
	in      io.Reader
	convert func(b []byte) float32
	fold    *fold
	raw     []byte
	wide    []float32 // the samples of every channel, before folding
	bad     int       // samples that are no number
}

// newWAV reads the header and stops before the first sample. An encoding that
// is not built in comes back as unsupportedError.
func newWAV(r io.Reader) (*wavStream, error) {
	in := bufio.NewReaderSize(r, 64<<10)
	h, err := readWAVHeader(in)
	if err != nil {
		return nil, err
	}
	w := &wavStream{header: h, in: in, convert: h.converter(), fold: newFold(h.channels, h.mask)}
	if w.convert == nil {
		return nil, unsupportedError(h.encoding())
	}
	if h.size >= 0 {
		w.in = io.LimitReader(in, h.size)
	}
	const blocks = 4096
	w.raw = make([]byte, blocks*h.blockSize())
	w.wide = make([]float32, 0, blocks*h.channels)
	return w, nil
}

func (w *wavStream) rate() int     { return w.header.rate }
func (w *wavStream) channels() int { return w.fold.out }

func (w *wavStream) read(dst []float32) (int, error) {
	size := w.header.blockSize()
	want := min(len(dst)/w.fold.out*size, len(w.raw))
	n, err := io.ReadFull(w.in, w.raw[:want])
	n -= n % size // the last block is not complete
	if n == 0 {
		if err == nil || err == io.ErrUnexpectedEOF {
			err = io.EOF
		}
		return 0, err
	}
	w.wide = w.wide[:0]
	for b := w.raw[:n]; len(b) > 0; b = b[w.header.bytes:] {
		v := w.convert(b)
		if v != v {
			v = 0
			w.bad++
		}
		w.wide = append(w.wide, max(-1, min(1, v)))
	}
	return w.fold.mix(dst, w.wide), nil
}

func (w *wavStream) notes() []string {
	notes := w.fold.notes()
	if w.bad > 0 {
		notes = append(notes, fmt.Sprintf("%s muted: not a number", plural(w.bad, "sample")))
	}
	return notes
}

// converter turns the first sample of a slice into [-1, 1]; nil for an encoding
// that is not built in.
func (h wavHeader) converter() func([]byte) float32 {
	le := binary.LittleEndian
	switch {
	case h.tag == wavPCM && h.bytes == 1:
		return func(b []byte) float32 { return float32(int(b[0])-1<<7) / (1 << 7) }
	case h.tag == wavPCM && h.bytes == 2:
		return func(b []byte) float32 { return float32(int16(le.Uint16(b))) / (1 << 15) }
	case h.tag == wavPCM && h.bytes == 3:
		return func(b []byte) float32 {
			return float32(int32(uint32(b[0])<<8|uint32(b[1])<<16|uint32(b[2])<<24)>>8) / (1 << 23)
		}
	case h.tag == wavPCM && h.bytes == 4:
		return func(b []byte) float32 { return float32(float64(int32(le.Uint32(b))) / (1 << 31)) }
	case h.tag == wavFloat && h.bytes == 4:
		return func(b []byte) float32 { return math.Float32frombits(le.Uint32(b)) }
	case h.tag == wavFloat && h.bytes == 8:
		return func(b []byte) float32 { return float32(math.Float64frombits(le.Uint64(b))) }
	}
	return nil
}

// wavEncodings names the commoner tags that are not built in.
var wavEncodings = map[int]string{
	0x0002: "Microsoft ADPCM", 0x0006: "A-law", 0x0007: "mu-law", 0x0011: "IMA ADPCM",
	0x0050: "MPEG layer II", 0x0055: "MP3", 0x00FF: "AAC", 0x0161: "Windows Media Audio",
}

// encoding names how the samples are stored.
func (h wavHeader) encoding() string {
	switch name, known := wavEncodings[h.tag]; {
	case known:
		return "WAV with " + name
	case h.tag == wavPCM:
		return fmt.Sprintf("WAV with %d-bit samples", h.bits)
	case h.tag == wavFloat:
		return fmt.Sprintf("WAV with %d-bit floating point samples", h.bits)
	}
	return fmt.Sprintf("WAV with encoding 0x%04x", h.tag)
}
