package decode

import (
	"encoding/binary"
	"errors"
	"io"
	"strings"
)

// vorbisTags reads the comments of a FLAC or Ogg file. It takes no more memory
// than the comments do, whatever sizes they and the pictures beside them claim.
func vorbisTags(r io.ReaderAt, start int64) (Tags, error) {
	var comments []byte
	if string(readAt(r, start, 4)) == "OggS" {
		comments = oggComments(r, start)
	} else {
		comments = flacComments(r, start)
	}
	if comments == nil {
		return Tags{}, errors.New("tags: no comments")
	}
	return parseComments(comments), nil
}

// maxComments is the longest block of comments that is read; pictures in it
// are of no use here [bytes].
const maxComments = 1 << 20

// flacComments returns the body of the comment block. Ref: RFC 9639, section 8.
func flacComments(r io.ReaderAt, start int64) []byte {
	const signature, header = 4, 4
	const commentBlock, last, kind = 4, 0x80, 0x7F
	at := start + signature
	for range maxTags {
		b := readAt(r, at, header)
		if len(b) < header {
			return nil
		}
		size := int(b[1])<<16 | int(b[2])<<8 | int(b[3])
		if b[0]&kind == commentBlock {
			return readAt(r, at+header, min(size, maxComments))
		}
		if b[0]&last != 0 {
			return nil
		}
		at += header + int64(size)
	}
	return nil
}

// oggComments returns the body of the second packet, which holds the comments.
// Ref: RFC 3533, section 6; RFC 7845, section 5.2.
func oggComments(r io.ReaderAt, at int64) []byte {
	const header, fullSegment = 27, 255
	var packet []byte
	packets := 0
	for len(packet) < maxComments {
		b := readAt(r, at, header+fullSegment)
		if len(b) < header || string(b[:4]) != "OggS" || len(b) < header+int(b[26]) {
			return nil
		}
		table := b[header : header+int(b[26])]
		at += int64(header + len(table))
		for _, n := range table {
			if packets == 1 {
				packet = append(packet, readAt(r, at, int(n))...)
			}
			at += int64(n)
			if n == fullSegment {
				continue
			}
			if packets++; packets == 2 {
				return afterSignature(packet)
			}
		}
	}
	return afterSignature(packet)
}

// afterSignature takes off what comments in Ogg start with.
func afterSignature(packet []byte) []byte {
	for _, s := range []string{"\x03vorbis", "OpusTags"} {
		if rest, ok := strings.CutPrefix(string(packet), s); ok {
			return []byte(rest)
		}
	}
	return nil
}

// parseComments reads NAME=value pairs. Ref: Vorbis I specification, section 5.
func parseComments(b []byte) Tags {
	field := func() (string, bool) {
		if len(b) < 4 {
			return "", false
		}
		n := int64(binary.LittleEndian.Uint32(b))
		b = b[4:]
		if n > int64(len(b)) {
			return "", false
		}
		s := string(b[:n])
		b = b[n:]
		return s, true
	}
	var t Tags
	if _, ok := field(); !ok || len(b) < 4 { // who wrote them
		return t
	}
	b = b[4:] // how many there are
	for {
		s, ok := field()
		if !ok {
			return t
		}
		name, value, _ := strings.Cut(s, "=")
		switch strings.ToUpper(name) {
		case "TITLE":
			t.Title = clean(value)
		case "ARTIST":
			t.Artist = clean(value)
		case "BPM", "TBPM":
			t.BPM = bpmHint(value)
		}
	}
}
