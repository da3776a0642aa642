package decode

import (
	"encoding/binary"
	"io"
	"slices"
)

// mp3Stream plays an MP3 file on the gapless timeline.
type mp3Stream struct {
	survey  mp3Survey
	scan    *mp3Scanner
	core    mp3Core
	begun   bool      // the info frame, if any, is behind us
	held    *mp3Frame // read, and decoded once the lost frames are filled in
	filling int64     // frames of silence before it
	lost    int64     // frames filled in so far
	at      int64     // samples so far, before trimming [samples per channel]
	trims   []trim
	pending []float32 // decoded and trimmed, not yet read
	buf     []float32
}

// newMP3 opens a stream that the survey found fit for the built-in decoder.
func newMP3(r io.ReaderAt, s mp3Survey) *mp3Stream {
	return &mp3Stream{survey: s, scan: newMP3Scanner(r, s.start, s.end), trims: s.trims()}
}

func (m *mp3Stream) rate() int { return m.survey.first.rate }

func (m *mp3Stream) channels() int {
	if m.survey.stereo {
		return 2
	}
	return 1
}

func (m *mp3Stream) read(dst []float32) (int, error) {
	for len(m.pending) == 0 {
		if err := m.fill(); err != nil {
			return 0, err
		}
	}
	n := copy(dst, m.pending)
	m.pending = m.pending[n:]
	return n, nil
}

// fill puts one frame into pending: the next, or one of silence for one that
// was lost before it.
func (m *mp3Stream) fill() error {
	if m.held == nil {
		if err := m.next(); err != nil {
			return err
		}
	}
	if m.filling > 0 {
		m.filling--
		m.lost++
		m.core.reset()
		m.play(m.core.silence(m.held.header))
		return nil
	}
	m.play(m.core.decode(*m.held))
	m.held = nil
	return nil
}

// next reads the next frame of sound into held.
func (m *mp3Stream) next() error {
	f, err := m.scan.next()
	if err != nil {
		return err
	}
	first := !m.begun
	m.begun = true
	if first && m.survey.tagged {
		return m.next()
	}
	m.held = &f
	if !first {
		m.filling = m.survey.lost(f.gap, m.survey.missing()-m.lost)
	}
	return nil
}

// play takes one frame's samples, as the core gives them, into pending.
func (m *mp3Stream) play(pcm []byte) {
	channels, samples := m.channels(), len(pcm)/pcmFrame
	m.buf = slices.Grow(m.buf[:0], samples*channels)[:samples*channels]
	for at := 0; len(pcm) >= pcmFrame; at += channels {
		m.buf[at] = pcmValue(pcm)
		if channels == 2 {
			m.buf[at+1] = pcmValue(pcm[pcmFrame/2:])
		}
		pcm = pcm[pcmFrame:]
	}
	for _, t := range slices.Backward(m.trims) {
		from, to := t.within(m.at, samples)
		m.buf = slices.Delete(m.buf, from*channels, to*channels)
	}
	m.pending = m.buf
	m.at += int64(samples)
}

func pcmValue(pcm []byte) float32 {
	return float32(int16(binary.LittleEndian.Uint16(pcm))) / (1 << 15)
}
