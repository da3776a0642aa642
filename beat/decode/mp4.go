package decode

import (
	"encoding/binary"
	"io"
)

// mp4Codecs names the sample entries of sound.
var mp4Codecs = map[string]string{
	"mp4a": "M4A (AAC)", "alac": "M4A (ALAC)", "ac-3": "MP4 (AC-3)", "ec-3": "MP4 (E-AC-3)",
	"Opus": "MP4 (Opus)", "fLaC": "MP4 (FLAC)", ".mp3": "MP4 (MP3)",
}

// mp4Protected are the sample entries that only the shop's own player opens.
var mp4Protected = map[string]bool{"drms": true, "drmi": true, "enca": true, "aavd": true}

// sniffMP4 names the codec of the first sound track in an MP4 file.
func sniffMP4(r io.ReaderAt, start, size int64) (finding, error) {
	codec := mp4Codec(r, start, size, 0)
	if mp4Protected[codec] {
		return finding{}, &Error{
			Msg:  "a protected (DRM) file that only its shop's own player can open",
			Hint: "get the song as a file without protection",
		}
	}
	if name := mp4Codecs[codec]; name != "" {
		return finding{name: name}, nil
	}
	return finding{name: "MP4"}, nil
}

// mp4Path are the boxes that lead to the description of the samples.
var mp4Path = [...]string{"moov", "trak", "mdia", "minf", "stbl", "stsd"}

// mp4Codec walks the boxes between start and end and returns the type of the
// first sample entry that is sound, empty when there is none.
//
// Ref: ISO/IEC 14496-12, 4.2 and 8.5.2.
func mp4Codec(r io.ReaderAt, start, end int64, depth int) string {
	const boxes = 4096 // more than any real file has at one level
	for range boxes {
		b := readAt(r, start, 16)
		if len(b) < 8 {
			return ""
		}
		size, header := int64(binary.BigEndian.Uint32(b)), int64(8)
		switch {
		case size == 1 && len(b) == 16:
			size, header = int64(binary.BigEndian.Uint64(b[8:])), 16
		case size == 0:
			size = end - start
		}
		if size < header || size > end-start {
			return ""
		}
		if kind := string(b[4:8]); kind == mp4Path[depth] {
			if depth == len(mp4Path)-1 {
				return soundEntry(readAt(r, start+header, 16))
			}
			if codec := mp4Codec(r, start+header, start+size, depth+1); codec != "" {
				return codec
			}
		}
		start += size
	}
	return ""
}

// soundEntry is the type of the first entry of a sample description, empty for
// one that is not known as sound.
func soundEntry(b []byte) string {
	const typeOffset = 12
	if len(b) < typeOffset+4 {
		return ""
	}
	kind := string(b[typeOffset : typeOffset+4])
	if mp4Codecs[kind] == "" && !mp4Protected[kind] {
		return ""
	}
	return kind
}
