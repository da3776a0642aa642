package decode

import (
	"bytes"
	"encoding/binary"
	"io"
	"strconv"
)

const (
	id3v2Header = 10  // [bytes]
	id3v1Size   = 128 // [bytes]
	apeHeader   = 32  // [bytes]
	maxTags     = 64  // at either end of a file; more are made to waste time
)

// id3v2Size is the length of the ID3v2 tag that b starts with, header and
// footer included [bytes]; 0 when there is none.
//
// Ref: id3.org, ID3v2.4 structure, section 3.1.
func id3v2Size(b []byte) int64 {
	if len(b) < id3v2Header || string(b[:3]) != "ID3" || b[3] == 0xFF || b[4] == 0xFF {
		return 0
	}
	var size int64
	for _, c := range b[6:id3v2Header] {
		if c >= 0x80 {
			return 0
		}
		size = size<<7 | int64(c)
	}
	size += id3v2Header
	const footerFlag = 0x10
	if b[5]&footerFlag != 0 {
		size += id3v2Header
	}
	return size
}

// apeSize is the length of the APE tag whose header or footer b is [bytes], 0
// when it is neither. Ref: APEv2 specification, tags header.
func apeSize(b []byte) int64 {
	if len(b) < apeHeader || string(b[:8]) != "APETAGEX" {
		return 0
	}
	size := int64(binary.LittleEndian.Uint32(b[12:])) // items and footer
	const hasHeader = 1 << 31
	if binary.LittleEndian.Uint32(b[20:])&hasHeader != 0 {
		size += apeHeader
	}
	return size
}

// skipTags returns where the sound begins: behind the ID3v2 and APE tags that
// stand at the start, in any number. A tag that claims more than there is does
// not count.
func skipTags(r io.ReaderAt, end int64) int64 {
	return skipAll(r, end, func(b []byte) int64 { return max(id3v2Size(b), apeSize(b)) })
}

// skipID3 does the same for ID3v2 tags alone, the only ones that all players
// know at the start of a file.
func skipID3(r io.ReaderAt, end int64) int64 { return skipAll(r, end, id3v2Size) }

func skipAll(r io.ReaderAt, end int64, tagSize func([]byte) int64) int64 {
	var at int64
	for range maxTags {
		size := tagSize(readAt(r, at, apeHeader))
		if size == 0 || at+size > end {
			break
		}
		at += size
	}
	return at
}

// trimTags returns where the sound ends: before the ID3v1, APE and Lyrics3 tags
// that stand at the end.
func trimTags(r io.ReaderAt, start, end int64) int64 {
	for range maxTags {
		size := tailTag(r, end)
		if size <= 0 || end-size < start {
			break
		}
		end -= size
	}
	return end
}

// tailTag is the length of the tag that ends at end [bytes], 0 for none.
func tailTag(r io.ReaderAt, end int64) int64 {
	if bytes.HasPrefix(readAt(r, end-id3v1Size, 3), []byte("TAG")) {
		return id3v1Size
	}
	if size := apeSize(readAt(r, end-apeHeader, apeHeader)); size > 0 {
		return size
	}
	// Lyrics3 v2 closes with its size in six digits and a mark.
	const lyricsDigits, lyricsMark = 6, "LYRICS200"
	foot := readAt(r, end-lyricsDigits-int64(len(lyricsMark)), lyricsDigits+len(lyricsMark))
	if bytes.HasSuffix(foot, []byte(lyricsMark)) {
		if n, err := strconv.Atoi(string(foot[:lyricsDigits])); err == nil {
			return int64(n + len(foot))
		}
	}
	return 0
}

// readAt returns up to n bytes from offset at; fewer at the end of the file.
func readAt(r io.ReaderAt, at int64, n int) []byte {
	if at < 0 {
		return nil
	}
	b := make([]byte, n)
	got, _ := r.ReadAt(b, at)
	return b[:got]
}
