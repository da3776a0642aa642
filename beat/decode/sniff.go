package decode

import (
	"bytes"
	"io"
	"unicode"
	"unicode/utf8"
)

// finding is what a file turned out to hold.
type finding struct {
	name  string // as people call it
	place string // for messages of the built-in decoder
	// builtin opens the built-in decoder; nil where there is none. With an
	// unsupportedError it may give one that decodes a part of the file.
	builtin func(r io.ReaderAt, size int64) (decoder, error)
}

// magic recognises a format by bytes at a fixed offset.
type magic struct {
	offset int
	bytes  string
	name   string
}

// foreign are the formats that ffmpeg decodes, where one look is enough.
var foreign = []magic{
	{8, "AIFF", "AIFF"}, {8, "AIFC", "AIFF"}, {0, "RIFX", "big-endian WAV"},
	{0, "riff\x2E\x91\xCF\x11", "Wave64"}, {0, "caff", "Core Audio"}, {0, ".snd", "AU"},
	{0, "\x30\x26\xB2\x75\x8E\x66\xCF\x11", "Windows Media Audio"},
	{0, "\x1A\x45\xDF\xA3", "Matroska or WebM"}, {0, "wvpk", "WavPack"}, {0, "MAC ", "Monkey's Audio"},
	{0, "MPCK", "Musepack"}, {0, "MP+", "Musepack"}, {0, "TTA1", "True Audio"}, {0, "#!AMR", "AMR"},
	{0, "DSD ", "DSD"}, {0, "FRM8", "DSD"}, {0, "ADIF", "AAC"}, {0, "\x0B\x77", "AC-3"}, {0, "tBaK", "TAK"},
}

// silent are things that people take for music and that hold no sound.
var silent = []magic{
	{0, "MThd", "a MIDI file: notes to be played, not sound"},
	{0, "#EXTM3U", "a playlist"}, {0, "[playlist]", "a playlist"},
	{0, "%PDF", "a PDF document"}, {0, "PK\x03\x04", "a ZIP archive or office document"},
	{0, "7z\xBC\xAF\x27\x1C", "a 7z archive"}, {0, "Rar!", "a RAR archive"}, {0, "\x1F\x8B", "a gzip archive"},
	{0, "\x89PNG", "a picture"}, {0, "GIF8", "a picture"}, {0, "\xFF\xD8\xFF", "a picture"},
	{8, "WEBP", "a picture"}, {8, "AVI ", "a video in AVI"}, {0, "\x7FELF", "a program"}, {0, "MZ", "a program"},
}

func (m magic) in(b []byte) bool {
	return len(b) >= m.offset && bytes.HasPrefix(b[m.offset:], []byte(m.bytes))
}

// sniff finds out what a file holds by looking into it.
func sniff(r io.ReaderAt, size int64) (finding, error) {
	const look = 512 // [bytes]
	start := skipTags(r, size)
	head := readAt(r, start, look)
	switch {
	case bytes.HasPrefix(head, []byte("fLaC")):
		return finding{"FLAC", "flac", newFLAC}, nil
	case magic{8, "WAVE", ""}.in(head) && wavSignature(head):
		return finding{"WAV", "wav", openWAV}, nil
	case bytes.HasPrefix(head, []byte("OggS")):
		return finding{name: oggName(head)}, nil
	case magic{4, "ftyp", ""}.in(head):
		return sniffMP4(r, start, size)
	}
	for _, m := range foreign {
		if m.in(head) {
			return finding{name: m.name}, nil
		}
	}
	for _, m := range silent {
		if m.in(head) {
			return finding{}, notAudio("it looks like " + m.name)
		}
	}
	if isADTS(readAt(r, start, scanWindow)) {
		return finding{name: "AAC"}, nil
	}
	if name := mpegName(r, start, size); name != "" {
		return finding{name, "mp3", openMP3}, nil
	}
	if len(head) == 0 {
		return finding{}, notAudio("it holds tags and no sound")
	}
	if isFreeFormat(head) {
		return finding{name: "MP3 in free format"}, nil
	}
	return finding{}, notAudio(resemblance(head))
}

func wavSignature(b []byte) bool {
	switch string(b[:4]) {
	case "RIFF", "RF64", "BW64":
		return true
	}
	return false
}

func openWAV(r io.ReaderAt, size int64) (decoder, error) {
	start := skipTags(r, size)
	w, err := newWAV(io.NewSectionReader(r, start, size-start))
	if err != nil {
		return nil, err
	}
	return w, nil
}

func openMP3(r io.ReaderAt, size int64) (decoder, error) {
	s, err := surveyMP3(r, size)
	if err != nil {
		return nil, err
	}
	if reason := s.unsupported(); reason != "" {
		return nil, unsupportedError(reason)
	}
	m := newMP3(r, s)
	if s.changed {
		return m, unsupportedError("MP3 that changes its sample rate")
	}
	return m, nil
}

// mpegName names an MPEG audio stream, empty when there is none.
func mpegName(r io.ReaderAt, start, size int64) string {
	scan := newMP3Scanner(r, start, size)
	if _, err := scan.next(); err != nil {
		return ""
	}
	return mpegLayers[scan.first.layer]
}

// mpegLayers names the layers of MPEG audio.
var mpegLayers = [...]string{1: "MPEG layer I", 2: "MPEG layer II", 3: "MP3"}

// isFreeFormat reports whether b starts with a frame whose length only the next
// one tells.
func isFreeFormat(b []byte) bool {
	h, ok := parseMP3Header(b)
	return ok && h.bitrate == 0 && h.layer == 3 && h.version != mpeg25
}

// oggName names an Ogg file by the first packet of its first page.
func oggName(b []byte) string {
	const pageHeader = 28 // with one segment [bytes]
	for _, m := range []magic{
		{pageHeader, "\x01vorbis", "Ogg Vorbis"}, {pageHeader, "OpusHead", "Opus"},
		{pageHeader, "\x7FFLAC", "Ogg FLAC"}, {pageHeader, "Speex", "Speex"},
	} {
		if m.in(b) {
			return m.name
		}
	}
	return "Ogg"
}

// isADTS reports whether b holds raw AAC: three frames that follow each other.
//
// Ref: ISO/IEC 14496-3, 1.A.3.2.
func isADTS(b []byte) bool {
	const header, frames = 7, 3
	for range frames {
		if len(b) < header || b[0] != 0xFF || b[1]&0xF6 != 0xF0 {
			return false
		}
		size := int(b[3]&3)<<11 | int(b[4])<<3 | int(b[5])>>5
		if size < header || size > len(b) {
			return false
		}
		b = b[size:]
	}
	return true
}

// resemblance says what the start of a file that is no music looks like.
func resemblance(b []byte) string {
	if len(bytes.Trim(b, "\x00")) == 0 {
		return "it starts with nothing but zeros"
	}
	if bytes.HasPrefix(bytes.ToLower(bytes.TrimSpace(b)), []byte("<!doctype html")) {
		return "it looks like a web page"
	}
	for s := b; len(s) > 0; {
		c, n := utf8.DecodeRune(s)
		broken := c == utf8.RuneError && n <= 1 && len(s) >= utf8.UTFMax
		if broken || unicode.IsControl(c) && !unicode.IsSpace(c) {
			return "no kind of sound that is known here"
		}
		s = s[n:]
	}
	return "it looks like text"
}
