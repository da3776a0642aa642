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
	convert converter
	fold    *fold
	raw     []byte
	wide    []float32 // the samples of every channel, before folding
	bad     int       // samples that are no number
}

// converter turns samples of one encoding into [-1, 1] and says how many were
// no number; those are 0.
type converter func(dst []float32, b []byte) (bad int)

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
	w.wide = make([]float32, blocks*h.channels)
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
	samples := n / w.header.bytes
	if w.fold.in == w.fold.out {
		w.bad += w.convert(dst[:samples], w.raw[:n])
		return samples, nil
	}
	w.bad += w.convert(w.wide[:samples], w.raw[:n])
	return w.fold.mix(dst, w.wide[:samples]), nil
}

func (w *wavStream) notes() []string {
	notes := w.fold.notes()
	if w.bad > 0 {
		notes = append(notes, fmt.Sprintf("%s muted: not a number", plural(w.bad, "sample")))
	}
	return notes
}

// converter is that of the samples; nil for an encoding that is not built in.
func (h wavHeader) converter() converter {
	le := binary.LittleEndian
	switch {
	case h.tag == wavPCM && h.bytes == 1:
		return each(1, func(b []byte) float32 { return float32(int(b[0])-1<<7) / (1 << 7) })
	case h.tag == wavPCM && h.bytes == 2:
		return each(2, func(b []byte) float32 { return float32(int16(le.Uint16(b))) / (1 << 15) })
	case h.tag == wavPCM && h.bytes == 3:
		return each(3, func(b []byte) float32 {
			return float32(int32(uint32(b[0])<<8|uint32(b[1])<<16|uint32(b[2])<<24)>>8) / (1 << 23)
		})
	case h.tag == wavPCM && h.bytes == 4:
		return each(4, func(b []byte) float32 { return float32(float64(int32(le.Uint32(b))) / (1 << 31)) })
	case h.tag == wavFloat && h.bytes == 4:
		return singles
	case h.tag == wavFloat && h.bytes == 8:
		return each(8, func(b []byte) float32 { return float32(math.Float64frombits(le.Uint64(b))) })
	}
	return nil
}

// each converts samples of so many bytes one by one.
func each(size int, value func(b []byte) float32) converter {
	return func(dst []float32, b []byte) (bad int) {
		for i := range dst {
			v := value(b[i*size:])
			if !(v >= -1 && v <= 1) {
				v, bad = within(v, bad)
			}
			dst[i] = v
		}
		return bad
	}
}

// singles is each for what ffmpeg sends, which is too much for a call a sample.
func singles(dst []float32, b []byte) (bad int) {
	for i := range dst {
		v := math.Float32frombits(binary.LittleEndian.Uint32(b))
		if !(v >= -1 && v <= 1) {
			v, bad = within(v, bad)
		}
		dst[i], b = v, b[4:]
	}
	return bad
}

// within brings a sample that is not in [-1, 1] there, and counts it as bad if it
// is no number.
func within(v float32, bad int) (float32, int) {
	if v != v {
		return 0, bad + 1
	}
	return max(-1, min(1, v)), bad
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
