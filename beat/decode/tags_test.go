package decode

import (
	"encoding/binary"
	"strings"
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
	return joined([]byte{'I', 'D', '3', 3, 0, 0, byte(n >> 21), byte(n >> 14 & 0x7F), byte(n >> 7 & 0x7F), byte(n & 0x7F)},
		body)
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
	long := "title=Tidewater " + strings.Repeat("é", 400)
	for name, hint := range map[string]float64{
		"music.mp3": 128, "music.flac": 128, "music.m4a": 0, "music.ogg": 128, "music.opus": 128,
	} {
		path := ffmpegEncode(t, music, name, "-metadata", long, "-metadata", "artist=The Lamplighters",
			"-metadata", "TBPM=128")
		want := Tags{strings.TrimPrefix(long, "title="), "The Lamplighters", hint}
		if got, err := ReadTags(path); err != nil || got != want {
			t.Errorf("%s: %+v, %v", name, got, err)
		}
	}
}

// Comments whose sizes are false give what can be read.
func TestFalseComments(t *testing.T) {
	block := func(body string) []byte {
		return joined([]byte("fLaC\x84\x00\x00"), []byte{byte(len(body))}, []byte(body))
	}
	for _, c := range []struct {
		name string
		file []byte
		want Tags
	}{
		{"nothing", block(""), Tags{}},
		{"huge vendor", block("\xFF\xFF\xFF\xFF\x00\x00\x00\x00\x07\x00\x00\x00TITLE=a"), Tags{}},
		{"one, then huge", block("\x00\x00\x00\x00\xFF\xFF\xFF\xFF\x07\x00\x00\x00title=a\xFF\xFF\xFF\xFFx"),
			Tags{Title: "a"}},
		{"cut", block("\x00\x00\x00\x00\x01\x00\x00\x00\x07\x00\x00\x00TIT"), Tags{}},
	} {
		if got, err := ReadTags(writeFile(t, "music.flac", c.file)); err != nil || got != c.want {
			t.Errorf("%s: %+v, %v", c.name, got, err)
		}
	}
	if got, err := ReadTags(writeFile(t, "music.ogg", ogg("OpusHead"))); err == nil {
		t.Errorf("no comments: %+v", got)
	}
}

func FuzzTags(f *testing.F) {
	f.Add(joined(id3Tag(id3Frame("TIT2", "Tidewater"), id3Frame("TBPM", "128")), make([]byte, 200)))
	f.Add(joined([]byte("fLaC\x84\x00\x00\x13\x00\x00\x00\x00\x01\x00\x00\x00\x07\x00\x00\x00title=a")))
	f.Add(joined(ogg("\x01vorbis"), ogg("\x03vorbis\x00\x00\x00\x00\x01\x00\x00\x00\x07\x00\x00\x00title=a")))
	f.Add(mp4("mp4a"))
	f.Fuzz(func(t *testing.T, b []byte) {
		path := writeFile(t, "music", b)
		tags, _ := ReadTags(path)
		if tags.BPM != 0 && !(tags.BPM >= minHint && tags.BPM <= maxHint) {
			t.Fatalf("tempo %v", tags.BPM)
		}
		if tags.Title != clean(tags.Title) || tags.Artist != clean(tags.Artist) {
			t.Fatalf("%q, %q", tags.Title, tags.Artist)
		}
	})
}

func TestReadNoTags(t *testing.T) {
	if got, err := ReadTags(writeFile(t, "music.wav", wav16(synth(8000, 1, 0.1)))); err == nil || got != (Tags{}) {
		t.Errorf("%+v, %v", got, err)
	}
}
