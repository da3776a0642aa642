package decode

import (
	"encoding/binary"
	"io"
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
	pending []float32 // decoded and trimmed, not yet read
	buf     []float32
}

// newMP3 opens a stream that the survey found fit for the built-in decoder.
func newMP3(r io.ReaderAt, s mp3Survey) *mp3Stream {
	return &mp3Stream{survey: s, scan: newMP3Scanner(r, s.start, s.end)}
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
	m.buf = m.buf[:0]
	for ; len(pcm) > 0; pcm = pcm[pcmFrame:] {
		if !m.trimmed(m.at) {
			for ch := range m.channels() {
				v := int16(binary.LittleEndian.Uint16(pcm[2*ch:]))
				m.buf = append(m.buf, float32(v)/(1<<15))
			}
		}
		m.at++
	}
	m.pending = m.buf
}

// trimmed reports whether a sample is not music but the encoder's delay or
// padding.
func (m *mp3Stream) trimmed(at int64) bool {
	info, frames := m.survey.info, m.survey.frames
	if !info.gapless {
		return false
	}
	if at < int64(info.delay+synthesisDelay) {
		return true
	}
	// Where more music was joined to the file, ffmpeg and the browsers built on
	// it take the padding out of the middle if the addition is short, and no
	// longer believe the header if it is not.
	const longAddition = 16 // part of the whole
	if frames-info.frames > info.frames/longAddition {
		return false
	}
	end := info.frames * int64(m.survey.first.samples())
	return at < end && at >= end-int64(max(0, info.padding-synthesisDelay))
}
