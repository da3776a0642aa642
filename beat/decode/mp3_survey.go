package decode

import (
	"errors"
	"fmt"
	"io"
	"math"
)

// mp3Survey is what one pass over the headers of a file tells, before any
// sound is decoded.
type mp3Survey struct {
	start, end int64 // of the sound in the file, tags excluded [bytes]
	first      mp3Header
	info       mp3Info
	tagged     bool  // the first frame is an info frame, not sound
	frames     int64 // of sound
	bytes      int64 // of these frames
	bitrate    int   // of the first of them [bit/s]
	constant   bool  // they all have it
	stereo     bool  // any of them has two channels
	intensity  int   // frames that the built-in decoder gets wrong, by cause
	misSized   int
	lead       int64 // bytes before the first frame that are no ID3 tag
	gaps       int   // places between frames where stray bytes stand
	changed    bool  // the stream ends where one of another kind begins
	other      mp3Header
}

// errNoFrames says that nothing in a file is an MPEG audio stream.
var errNoFrames = errors.New("no MPEG audio frames")

// surveyMP3 reads the headers of a whole file of the given size [bytes].
func surveyMP3(r io.ReaderAt, size int64) (mp3Survey, error) {
	s := mp3Survey{start: skipTags(r, size), constant: true}
	s.end = trimTags(r, s.start, size)
	scan := newMP3Scanner(r, s.start, s.end)
	for n := 0; ; n++ {
		f, err := scan.next()
		if err != nil {
			break
		}
		if n > 0 {
			s.count(f)
			continue
		}
		s.first = f.header
		s.lead = f.offset - skipID3(r, size)
		if s.info, s.tagged = readMP3Info(f.header, f.data); !s.tagged {
			f.gap = 0 // what stands before the first frame is no damage
			s.count(f)
		}
	}
	s.changed, s.other = scan.changed, scan.other
	if !scan.locked {
		return s, errNoFrames
	}
	return s, nil
}

// count enters one frame of sound.
func (s *mp3Survey) count(f mp3Frame) {
	h := f.header
	if s.frames == 0 {
		s.bitrate = h.bitrate // the info frame may have another
	}
	s.constant = s.constant && h.bitrate == s.bitrate
	s.frames++
	s.bytes += int64(h.size())
	s.stereo = s.stereo || h.channels() == 2
	if h.intensity() {
		s.intensity++
	}
	if h.misSized() {
		s.misSized++
	}
	if f.gap > 0 {
		s.gaps++
	}
}

// missing is how many frames the file should have and has not, where it says
// how many it should.
func (s *mp3Survey) missing() int64 { return max(0, s.info.frames-s.frames) }

// lost is how many frames stood in a gap of so many bytes before damage made
// them unreadable. Bytes that were put in rather than overwritten held none:
// then no frame is missing, or at a constant bit rate the gap is no whole
// number of frames. missing is how many are not yet accounted for.
func (s *mp3Survey) lost(gap, missing int64) int64 {
	if gap == 0 || s.frames == 0 {
		return 0
	}
	mean := float64(s.bytes) / float64(s.frames)
	n := math.Round(float64(gap) / mean)
	const padding = 2 // the most that rounding moves the end of a frame [bytes]
	if s.constant && math.Abs(float64(gap)-n*mean) > padding {
		return 0
	}
	switch {
	case s.info.frames > 0:
		return min(int64(n), missing)
	case s.constant:
		return int64(n)
	}
	return 0
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
		return mpegLayers[s.first.layer]
	case s.first.version == mpeg25:
		return "MPEG-2.5 layer III"
	case s.intensity > 0:
		return fmt.Sprintf("MP3 with intensity stereo (%d of %d frames)", s.intensity, s.frames)
	case s.misSized > 0:
		return fmt.Sprintf("MP3 at %d Hz with padded frames", s.first.rate)
	}
	return ""
}
