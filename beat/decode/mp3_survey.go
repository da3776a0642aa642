package decode

import (
	"errors"
	"fmt"
	"io"
)

// mp3Survey is what one pass over the headers of a file tells, before any
// sound is decoded.
type mp3Survey struct {
	start, end int64 // of the sound in the file, tags excluded [bytes]
	first      mp3Header
	info       mp3Info
	tagged     bool  // the first frame is an info frame, not sound
	frames     int64 // of sound
	stereo     bool  // any frame has two channels
	intensity  int   // frames that the built-in decoder gets wrong, by cause
	misSized   int
	lead       int64 // junk before the first frame [bytes]
	skipped    int64 // junk between frames [bytes]
	gaps       int
	changed    bool // the stream ends where one of another kind begins
	other      mp3Header
}

// errNoFrames says that nothing in a file is an MPEG audio stream.
var errNoFrames = errors.New("no MPEG audio frames")

// surveyMP3 reads the headers of a whole file of the given size [bytes].
func surveyMP3(r io.ReaderAt, size int64) (mp3Survey, error) {
	s := mp3Survey{start: skipTags(r, size)}
	s.end = trimTags(r, s.start, size)
	scan := newMP3Scanner(r, s.start, s.end)
	for n := 0; ; n++ {
		f, err := scan.next()
		if err != nil {
			break
		}
		if n == 0 {
			s.first = f.header
			s.info, s.tagged = readMP3Info(f.header, f.data)
			if s.tagged {
				continue
			}
		}
		s.count(f.header)
	}
	s.lead, s.skipped, s.gaps = scan.lead, scan.skipped, scan.gaps
	s.changed, s.other = scan.changed, scan.other
	if !scan.locked {
		return s, errNoFrames
	}
	return s, nil
}

// count enters one frame of sound.
func (s *mp3Survey) count(h mp3Header) {
	s.frames++
	s.stereo = s.stereo || h.channels() == 2
	if h.intensity() {
		s.intensity++
	}
	if h.misSized() {
		s.misSized++
	}
}

// misSized reports whether go-mp3 takes the frame for one byte shorter than it
// is: at half rates it halves the length after adding the padding.
func (h mp3Header) misSized() bool {
	const slots = 144
	return h.version != mpeg1 && (slots*h.bitrate/h.rate+h.padding)/2 != h.size()
}

// unsupported says why the built-in decoder must leave the file alone; empty
// when it need not.
func (s *mp3Survey) unsupported() string {
	switch {
	case s.first.layer != 3:
		return fmt.Sprintf("MPEG audio layer %d", s.first.layer)
	case s.first.version == mpeg25:
		return "MPEG-2.5 layer III"
	case s.intensity > 0:
		return fmt.Sprintf("MP3 with intensity stereo (%d of %d frames)", s.intensity, s.frames)
	case s.misSized > 0:
		return fmt.Sprintf("MP3 at %d Hz with padded frames", s.first.rate)
	}
	return ""
}

// samples is the length of all frames of sound [samples per channel].
func (s *mp3Survey) samples() int64 { return s.frames * int64(s.first.samples()) }
