package decode

import (
	"fmt"
	"time"
)

// notes says what a person should know about the times in this file.
func (m *mp3Stream) notes() []string {
	s := &m.survey
	var notes []string
	say := func(format string, args ...any) { notes = append(notes, fmt.Sprintf(format, args...)) }
	if !s.info.gapless {
		const usualDelay = 576 + synthesisDelay // LAME's, the commonest
		say("no encoder delay in the file: the music starts up to %d ms late, in players too",
			m.span(usualDelay).Milliseconds())
	} else if s.lead > 0 {
		// ffmpeg and Chromium then take the info frame for sound; mpg123 does not.
		say("%s before the first frame: some players start %d ms later", plural(s.lead, "stray byte"),
			m.span(s.info.delay+synthesisDelay+s.first.samples()).Milliseconds())
	}
	if s.gaps > 0 {
		say("stray bytes in %s: players may be up to 0.1 s early or late behind each", plural(s.gaps, "place"))
	}
	if m.lost > 0 {
		say("%s lost to damage, silence in their place", plural(m.lost, "frame"))
	}
	if missing := s.missing() - m.lost; missing > 0 {
		say("%s of %d are not in the file: it is cut or damaged", plural(missing, "frame"), s.info.frames)
	}
	if s.changed {
		at := m.span(int(s.frames) * s.first.samples())
		say("stops at %s: the sound goes on at %d Hz instead of %d", at.Round(time.Second/10), s.other.rate, s.first.rate)
	}
	return append(notes, m.core.notes()...)
}

// span is how long so many samples last, to the millisecond.
func (m *mp3Stream) span(samples int) time.Duration {
	d := time.Duration(float64(samples) / float64(m.rate()) * float64(time.Second))
	return d.Round(time.Millisecond)
}
