package decode

import (
	"bytes"
	"encoding/binary"
	"os"
	"strings"
	"testing"
)

// box is one box of an MP4 file.
func box(kind string, parts ...[]byte) []byte {
	body := joined(parts...)
	return joined(binary.BigEndian.AppendUint32(nil, uint32(len(body)+8)), []byte(kind), body)
}

// mp4 is an MP4 file with one track of a codec.
func mp4(codec string) []byte {
	stsd := box("stsd", make([]byte, 8), box(codec, make([]byte, 28)))
	track := box("trak", box("tkhd", make([]byte, 80)), box("mdia", box("minf", box("stbl", stsd))))
	return joined(box("ftyp", []byte("M4A \x00\x00\x00\x00")), box("mdat", make([]byte, 99)), box("moov", track))
}

func ogg(packet string) []byte {
	return joined([]byte("OggS\x00\x02"), make([]byte, 20), []byte{1, byte(len(packet))}, []byte(packet))
}

func TestSniff(t *testing.T) {
	freeFormat := bytes.Repeat(joined([]byte{0xFF, 0xFB, 0x00, 0x64}, make([]byte, 500)), 40)
	for _, c := range []struct{ name, file, want string }{
		{"aac", string(mp4("mp4a")), "M4A (AAC)"}, {"alac", string(mp4("alac")), "M4A (ALAC)"},
		{"video only", string(mp4("avc1")), "MP4"}, {"no tracks", string(box("ftyp", []byte("isom"))), "MP4"},
		{"protected", string(mp4("drms")), "a protected (DRM) file"},
		{"vorbis", string(ogg("\x01vorbis")), "Ogg Vorbis"}, {"opus", string(ogg("OpusHead")), "Opus"},
		{"ogg flac", string(ogg("\x7FFLAC")), "Ogg FLAC"}, {"other ogg", string(ogg("???")), "Ogg"},
		{"aiff", "FORM\x00\x00\x00\x04AIFF", "AIFF"}, {"wma", "\x30\x26\xB2\x75\x8E\x66\xCF\x11", "Windows Media Audio"},
		{"webm", "\x1A\x45\xDF\xA3", "Matroska or WebM"},
		{"tagged aiff", string(id3v2(50, false)) + "FORM\x00\x00\x00\x04AIFF", "AIFF"},
		{"free format", string(freeFormat), "MP3 in free format"},

		{"one byte", "a", "not an audio file: it looks like text"},
		{"text", "Count 1 is on the first kick.\n" + strings.Repeat("five six seven eight ", 50),
			"not an audio file: it looks like text"},
		{"text in another script", strings.Repeat("ритм ", 200), "not an audio file: it looks like text"},
		{"web page", "  <!DOCTYPE html><html>", "not an audio file: it looks like a web page"},
		{"midi", "MThd\x00\x00\x00\x06", "not an audio file: it looks like a MIDI file: notes to be played, not sound"},
		{"playlist", "#EXTM3U\nsong.mp3\n", "not an audio file: it looks like a playlist"},
		{"zip", "PK\x03\x04", "not an audio file: it looks like a ZIP archive or office document"},
		{"jpeg", "\xFF\xD8\xFF\xE0\x00\x10JFIF", "not an audio file: it looks like a picture"},
		{"zeros", strings.Repeat("\x00", 100000), "not an audio file: it starts with nothing but zeros"},
		{"ones", strings.Repeat("\xFF", 100000), "not an audio file: no kind of sound that is known here"},
		{"noise", string(noise(1 << 20)), "not an audio file: no kind of sound that is known here"},
		{"tag only", string(id3v2(500, false)), "not an audio file: it holds tags and no sound"},
		{"one header", "\xFF\xFB\x90\x64", "not an audio file: no kind of sound that is known here"},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Setenv("PATH", "")
			_, err := Open(writeFile(t, "music.mp3", []byte(c.file)), Auto)
			if err == nil || !strings.HasPrefix(err.Error(), c.want) {
				t.Errorf("got %v\nwant %s", err, c.want)
			}
		})
	}
}

func TestOpenNoFile(t *testing.T) {
	dir := t.TempDir()
	if _, err := Open(dir+"/none.mp3", Auto); !os.IsNotExist(err) {
		t.Errorf("no file: %v", err)
	}
	for path, want := range map[string]string{
		dir:                            "not an audio file: it is a folder",
		writeFile(t, "empty.mp3", nil): "not an audio file: it is empty",
		os.DevNull:                     "not an audio file: it is not a regular file",
	} {
		if _, err := Open(path, Auto); err == nil || err.Error() != want {
			t.Errorf("%s: %v, want %s", path, err, want)
		}
	}
}

func TestParseMode(t *testing.T) {
	for _, m := range []Mode{Auto, Builtin, FFmpeg} {
		if got, err := ParseMode(string(m)); got != m || err != nil {
			t.Errorf("%s: %q, %v", m, got, err)
		}
	}
	if _, err := ParseMode("native"); err == nil ||
		err.Error() != `decoder "native": unknown; it is auto, builtin or ffmpeg` {
		t.Errorf("got %v", err)
	}
}

func TestIsAudio(t *testing.T) {
	for name, want := range map[string]bool{
		"a.mp3": true, "A.MP3": true, "music/a.b.flac": true, "a.m4a": true, "a.opus": true,
		"a": false, "mp3": false, "a.mp3.txt": false, "a.yaml": false, "a.mp4": false,
	} {
		if IsAudio(name) != want {
			t.Errorf("%s: %v", name, !want)
		}
	}
	for _, e := range Extensions() {
		if !IsAudio("song" + e) {
			t.Errorf("%s is listed and not recognised", e)
		}
	}
}
