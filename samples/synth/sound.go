package synth

import (
	"encoding/binary"
	"io"
	"math"
)

// Sound is finished stereo sound, samples in [-1, 1].
type Sound struct {
	Rate        int // [Hz]
	Left, Right []float32
}

// Duration is how long it lasts [s].
func (s *Sound) Duration() float64 { return float64(len(s.Left)) / float64(s.Rate) }

// Mono is the mean of both channels.
func (s *Sound) Mono() []float32 {
	m := make([]float32, len(s.Left))
	for i := range m {
		m[i] = (s.Left[i] + s.Right[i]) / 2
	}
	return m
}

// WriteWAV writes it as a WAV file of 16-bit samples with the channels given:
// 1 mixes them.
func (s *Sound) WriteWAV(w io.Writer, channels int) error {
	if channels == 1 {
		return writeWAV(w, s.Rate, s.Mono())
	}
	return writeWAV(w, s.Rate, s.Left, s.Right)
}

// writeWAV writes a RIFF header of 44 bytes and the samples, interleaved.
// Ref: Microsoft/IBM 1991, "Multimedia Programming Interface and Data
// Specifications 1.0", PCM wave format.
func writeWAV(w io.Writer, rate int, channels ...[]float32) error {
	const width = 2 // bytes a sample
	n := len(channels[0])
	frame := width * len(channels)
	b := make([]byte, 0, 44+n*frame)
	le := binary.LittleEndian
	b = append(b, "RIFF"...)
	b = le.AppendUint32(b, uint32(36+n*frame))
	b = append(b, "WAVEfmt "...)
	b = le.AppendUint32(b, 16)
	b = le.AppendUint16(b, 1) // PCM
	b = le.AppendUint16(b, uint16(len(channels)))
	b = le.AppendUint32(b, uint32(rate))
	b = le.AppendUint32(b, uint32(rate*frame))
	b = le.AppendUint16(b, uint16(frame))
	b = le.AppendUint16(b, 8*width)
	b = append(b, "data"...)
	b = le.AppendUint32(b, uint32(n*frame))
	for i := range n {
		for _, ch := range channels {
			x := math.Max(-1, math.Min(1, float64(ch[i])))
			b = le.AppendUint16(b, uint16(int16(math.Round(x*math.MaxInt16))))
		}
	}
	_, err := w.Write(b)
	return err
}
