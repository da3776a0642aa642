package decode

import (
	"encoding/binary"
	"testing"
)

// id3Frame is a text frame of ID3v2.3.
func id3Frame(id, text string) []byte {
	b := binary.BigEndian.AppendUint32([]byte(id), uint32(len(text)+1))
	return joined(b, []byte{0, 0, 0}, []byte(text))
}

func id3Tag(frames ...[]byte) []byte {
	body := joined(frames...)
	n := len(body)
	return joined([]byte{'I', 'D', '3', 3, 0, 0, byte(n >> 21), byte(n >> 14 & 0x7F), byte(n >> 7 & 0x7F), byte(n & 0x7F)}, body)
}

func TestReadTags(t *testing.T) {
	for _, c := range []struct {
		name string
		file []byte
		want Tags
	}{
		{"mp3", id3Tag(id3Frame("TIT2", "Tidewater"), id3Frame("TPE1", "The Lamplighters"), id3Frame("TBPM", "128")),
			Tags{"Tidewater", "The Lamplighters", 128}},
		{"comma", id3Tag(id3Frame("TBPM", " 127,5 ")), Tags{BPM: 127.5}},
		{"no tempo", id3Tag(id3Frame("TIT2", "Slow Ferry"), id3Frame("TBPM", "0")), Tags{Title: "Slow Ferry"}},
		{"not a number", id3Tag(id3Frame("TBPM", "NaN")), Tags{}},
		{"lines", id3Tag(id3Frame("TIT2", "Two\nlines\x1b[31m ")), Tags{Title: "Two lines [31m"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := ReadTags(writeFile(t, "music.mp3", joined(c.file, make([]byte, 200))))
			if err != nil || got != c.want {
				t.Errorf("%+v, %v; want %+v", got, err, c.want)
			}
		})
	}
}

func TestReadTagsOfFormats(t *testing.T) {
	music := synth(44100, 1, 0.5)
	for _, name := range []string{"music.mp3", "music.flac", "music.m4a", "music.ogg"} {
		path := ffmpegEncode(t, music, name, "-metadata", "title=Tidewater", "-metadata", "artist=The Lamplighters")
		if got, err := ReadTags(path); err != nil || got.Title != "Tidewater" || got.Artist != "The Lamplighters" {
			t.Errorf("%s: %+v, %v", name, got, err)
		}
	}
}

func TestReadNoTags(t *testing.T) {
	if got, err := ReadTags(writeFile(t, "music.wav", wav16(synth(8000, 1, 0.1)))); err == nil || got != (Tags{}) {
		t.Errorf("%+v, %v", got, err)
	}
}
