package decode

import (
	"encoding/binary"
	"fmt"
	"io"
	"time"
)

// mp3Stream plays an MP3 file on the gapless timeline.
type mp3Stream struct {
	survey  mp3Survey
	scan    *mp3Scanner
	core    mp3Core
	tagged  bool      // the info frame is still to be stepped over
	at      int64     // samples decoded so far, before trimming
	pending []float32 // decoded and trimmed, not yet read
	buf     []float32
}

// newMP3 opens a stream that the survey found fit for the built-in decoder.
func newMP3(r io.ReaderAt, s mp3Survey) *mp3Stream {
	return &mp3Stream{survey: s, scan: newMP3Scanner(r, s.start, s.end), tagged: s.tagged}
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
		if err := m.frame(); err != nil {
			return 0, err
		}
	}
	n := copy(dst, m.pending)
	m.pending = m.pending[n:]
	return n, nil
}

// frame decodes the next frame into pending.
func (m *mp3Stream) frame() error {
	f, err := m.scan.next()
	if err != nil {
		return err
	}
	if m.tagged {
		m.tagged = false
		return nil
	}
	pcm := m.core.decode(f)
	channels := m.channels()
	m.buf = m.buf[:0]
	n := int64(len(pcm) / pcmFrame)
	for i := range n {
		if m.trimmed(m.at + i) {
			continue
		}
		for ch := range channels {
			v := int16(binary.LittleEndian.Uint16(pcm[int(i)*pcmFrame+2*ch:]))
			m.buf = append(m.buf, float32(v)/(1<<15))
		}
	}
	m.at += n
	m.pending = m.buf
	return nil
}

// trimmed reports whether a sample is not music but the encoder's delay or
// padding. Where files were joined the padding stands in the middle, and only
// the padding is taken out, as ffmpeg does.
func (m *mp3Stream) trimmed(at int64) bool {
	info := m.survey.info
	if !info.gapless {
		return false
	}
	if at < int64(info.delay+synthesisDelay) {
		return true
	}
	end := info.frames * int64(m.survey.first.samples())
	return at < end && at >= end-int64(max(0, info.padding-synthesisDelay))
}

func (m *mp3Stream) notes() []string {
	s := m.survey
	var notes []string
	if !s.info.gapless {
		const usualDelay = 576 + synthesisDelay // LAME's, the commonest
		late := time.Duration(usualDelay) * time.Second / time.Duration(s.first.rate)
		notes = append(notes, fmt.Sprintf(
			"no encoder delay in the file: times may be %d ms late against the original, as in any player",
			late.Round(time.Millisecond).Milliseconds()))
	}
	if s.lead > 0 {
		notes = append(notes, fmt.Sprintf("%s before the first frame", plural(int(s.lead), "stray byte")))
	}
	if s.gaps > 0 {
		notes = append(notes, fmt.Sprintf("%s skipped in %s", plural(int(s.skipped), "stray byte"), plural(s.gaps, "place")))
	}
	if missing := s.info.frames - s.frames; missing > 0 && s.info.frames > 0 {
		notes = append(notes, fmt.Sprintf("%d of %d frames are missing: the file is cut or damaged", missing, s.info.frames))
	}
	if s.changed {
		at := time.Duration(float64(s.samples()) / float64(s.first.rate) * float64(time.Second))
		notes = append(notes, fmt.Sprintf("stops at %s: the sound goes on at %d Hz instead of %d",
			at.Round(time.Second/10), s.other.rate, s.first.rate))
	}
	return append(notes, m.core.notes()...)
}
