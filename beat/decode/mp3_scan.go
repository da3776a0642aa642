package decode

import (
	"bufio"
	"io"
)

// mp3Frame is one frame as it stands in the file.
type mp3Frame struct {
	header mp3Header
	data   []byte // with its header; valid until the next call
	offset int64  // in the file [bytes]
	gap    int64  // stray bytes before it, tags not counted
	cut    bool   // the next frame begins before this one is complete
}

// mp3Scanner finds the frames of a stream one after the other, past tags and
// junk. A header only counts where others that agree with it follow.
type mp3Scanner struct {
	in     *bufio.Reader
	offset int64     // of the next byte in the file
	end    int64     // of the sound in the file
	first  mp3Header // what every frame must agree with
	locked bool

	other   mp3Header // the stream that took over, if changed
	changed bool      // a stream of another kind follows
}

const (
	scanWindow = 32 << 10 // holds the longest chain of frames [bytes]
	leadLimit  = 8 << 20  // how far to look for the first frame [bytes]

	lockChain   = 3 // headers that must follow to begin
	resyncChain = 1 // to go on behind junk
	changeChain = 4 // to believe that another kind of stream begins
)

// newMP3Scanner reads the bytes from start to end of a file.
func newMP3Scanner(r io.ReaderAt, start, end int64) *mp3Scanner {
	return &mp3Scanner{
		in:     bufio.NewReaderSize(io.NewSectionReader(r, start, end-start), scanWindow),
		offset: start,
		end:    end,
	}
}

// next returns the next frame, io.EOF behind the last complete one.
func (s *mp3Scanner) next() (mp3Frame, error) {
	var gap int64
	if !s.headerAt(0) {
		var err error
		if gap, err = s.resync(); err != nil {
			return mp3Frame{}, err
		}
	}
	b, _ := s.in.Peek(mp3HeaderSize)
	h, _ := parseMP3Header(b)
	if !s.locked {
		s.first, s.locked = h, true
	}
	frame := mp3Frame{header: h, offset: s.offset, gap: gap}
	b, err := s.in.Peek(h.size())
	if err != nil {
		return mp3Frame{}, io.EOF // the last frame is not complete
	}
	if n := s.cutAt(h.size()); n > 0 {
		frame.cut, b = true, b[:n]
	}
	frame.data = b
	s.advance(len(b))
	return frame, nil
}

// advance steps over n bytes that were peeked. Their contents stay valid until
// the next Peek.
func (s *mp3Scanner) advance(n int) {
	k, _ := s.in.Discard(n)
	s.offset += int64(k)
}

// headerAt reports whether a header that fits the stream stands at offset at
// of the window. Before the first frame none does: resync must find a chain.
func (s *mp3Scanner) headerAt(at int) bool {
	if !s.locked {
		return false
	}
	b, _ := s.in.Peek(at + mp3HeaderSize)
	if len(b) < at+mp3HeaderSize {
		return false
	}
	h, ok := parseMP3Header(b[at:])
	return ok && h.bitrate > 0 && h.agrees(s.first)
}

// cutAt looks for the next frame inside one of the given size: where bytes are
// missing from the file, the header behind them comes early. It returns where,
// or 0.
func (s *mp3Scanner) cutAt(size int) int {
	b, _ := s.in.Peek(size + mp3HeaderSize)
	if len(b) < size+mp3HeaderSize || s.headerAt(size) {
		return 0
	}
	for at := mp3HeaderSize; at < size; at++ {
		if b[at] != 0xFF || !s.headerAt(at) {
			continue
		}
		if h, ok := s.chain(at, resyncChain); ok && h.agrees(s.first) {
			return at
		}
	}
	return 0
}

// chain reports whether n headers that agree follow the one at offset at of
// the window, each where the one before says. The end of the file may cut the
// chain short, but not before one more header, unless the frame fills it.
func (s *mp3Scanner) chain(at, n int) (mp3Header, bool) {
	b, _ := s.in.Peek(min(scanWindow, at+(n+1)*maxMP3Frame))
	if at+mp3HeaderSize > len(b) {
		return mp3Header{}, false
	}
	h, ok := parseMP3Header(b[at:])
	if !ok || h.bitrate == 0 {
		return h, false
	}
	at += h.size()
	for k := range n {
		if at+mp3HeaderSize > len(b) {
			return h, k > 0 || at == len(b)
		}
		next, ok := parseMP3Header(b[at:])
		if !ok || next.bitrate == 0 || !next.agrees(h) {
			return h, false
		}
		at += next.size()
	}
	return h, true
}

// maxMP3Frame is above the longest frame of any layer [bytes].
const maxMP3Frame = 2881

// resync moves to the next place where frames follow and returns how many
// bytes, tags not counted, it went over.
func (s *mp3Scanner) resync() (int64, error) {
	began := s.offset
	var gap int64
	for {
		if s.skipTag() {
			continue
		}
		if s.found() {
			break
		}
		n := s.toNextSync()
		if n == 0 || !s.locked && s.offset-began > leadLimit {
			return gap, io.EOF
		}
		gap += int64(n)
	}
	if s.changed {
		return gap, io.EOF
	}
	return gap, nil
}

// found reports whether a stream goes on (or, at first, begins) here. It notes
// when one of another kind does.
func (s *mp3Scanner) found() bool {
	if !s.locked {
		_, ok := s.chain(0, lockChain)
		return ok
	}
	h, ok := s.chain(0, resyncChain)
	if !ok {
		return false
	}
	if h.agrees(s.first) {
		return true
	}
	_, s.changed = s.chain(0, changeChain)
	s.other = h
	return s.changed
}

// skipTag steps over a tag that stands here, as where files were joined.
func (s *mp3Scanner) skipTag() bool {
	b, _ := s.in.Peek(apeHeader)
	size := max(id3v2Size(b), apeSize(b))
	if size == 0 || s.offset+size > s.end {
		return false
	}
	for size > 0 {
		step := int(min(size, scanWindow))
		s.advance(step)
		size -= int64(step)
	}
	return true
}

// toNextSync moves to the next byte that a header or a tag may begin with and
// returns how far that was, 0 at the end.
func (s *mp3Scanner) toNextSync() int {
	b, _ := s.in.Peek(1)
	if len(b) == 0 {
		return 0
	}
	b, _ = s.in.Peek(s.in.Buffered())
	step := len(b)
	for i, c := range b[1:] {
		if c == 0xFF || c == 'I' || c == 'A' { // a frame, ID3, APETAGEX
			step = i + 1
			break
		}
	}
	s.advance(step)
	return step
}
