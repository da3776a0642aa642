package decode

import "testing"

// Frame lengths of ISO/IEC 11172-3 and 13818-3: 144 (layer III at half rate 72,
// layer I 12 in slots of 4) times bit rate over sample rate, plus padding.
func TestMP3Header(t *testing.T) {
	for _, c := range []struct {
		name, header                    string
		layer, rate, size, samples, chs int
	}{
		{"128 kbit/s", "\xFF\xFB\x90\x64", 3, 44100, 417, 1152, 2},
		{"padded", "\xFF\xFB\x92\x64", 3, 44100, 418, 1152, 2},
		{"320 kbit/s at 48 kHz", "\xFF\xFB\xE4\x44", 3, 48000, 960, 1152, 2},
		{"mono with checksum", "\xFF\xFA\x90\xC4", 3, 44100, 417, 1152, 1},
		{"half rate", "\xFF\xF3\x80\xC4", 3, 22050, 208, 576, 1},
		{"quarter rate", "\xFF\xE3\x40\xC4", 3, 11025, 208, 576, 1},
		{"layer II", "\xFF\xFD\xA4\x04", 2, 48000, 576, 1152, 2},
		{"layer I", "\xFF\xFF\xC4\x04", 1, 48000, 384, 384, 2},
		{"free format", "\xFF\xFB\x00\x64", 3, 44100, 0, 1152, 2},
	} {
		h, ok := parseMP3Header([]byte(c.header))
		if !ok || h.layer != c.layer || h.rate != c.rate || h.size() != c.size || h.samples() != c.samples ||
			h.channels() != c.chs {
			t.Errorf("%s: %+v, size %d, samples %d", c.name, h, h.size(), h.samples())
		}
	}
	for name, b := range map[string]string{
		"short": "\xFF\xFB\x90", "no sync": "\xFF\x1B\x90\x64", "reserved version": "\xFF\xEB\x90\x64",
		"reserved layer": "\xFF\xF9\x90\x64", "reserved bit rate": "\xFF\xFB\xF0\x64",
		"reserved sample rate": "\xFF\xFB\x9C\x64", "reserved emphasis": "\xFF\xFB\x90\x66",
	} {
		if h, ok := parseMP3Header([]byte(b)); ok {
			t.Errorf("%s: read as %+v", name, h)
		}
	}
}

// What go-mp3 takes for one byte shorter than it is: half rates whose frames,
// without padding, end on a whole byte pair.
func TestMisSized(t *testing.T) {
	for _, c := range []struct {
		name, header string
		want         bool
	}{
		{"80 kbit/s padded", "\xFF\xF3\x92\xC4", true},
		{"80 kbit/s", "\xFF\xF3\x90\xC4", false},
		{"64 kbit/s padded", "\xFF\xF3\x82\xC4", false},
		{"full rate padded", "\xFF\xFB\x92\x64", false},
	} {
		h, ok := parseMP3Header([]byte(c.header))
		if !ok || h.misSized() != c.want {
			t.Errorf("%s: %v", c.name, !c.want)
		}
	}
}

func TestMP3Info(t *testing.T) {
	stereo, _ := parseMP3Header([]byte(stereo128))
	guarded, _ := parseMP3Header([]byte("\xFF\xFA\x90\x64"))
	mono, _ := parseMP3Header([]byte(mono64))
	xing := func(at int, flags string, fields string) []byte {
		b := make([]byte, 417)
		copy(b[at:], "Xing\x00\x00\x00"+flags+fields)
		return b
	}
	lameField := "LAME3.100" + string(make([]byte, 12)) + "\x24\x04\xEC" // 576 and 1260
	vbri := make([]byte, 417)
	copy(vbri[36:], "VBRI\x00\x01\x00\x00\x00\x00\x00\x00\x00\x00\x00\x00\x01\x02")
	for _, c := range []struct {
		name   string
		header mp3Header
		frame  []byte
		want   mp3Info
		found  bool
	}{
		{"LAME", stereo, xing(36, "\x01", "\x00\x00\x00\xC1"+lameField), mp3Info{"Xing", 193, true, 576, 1260}, true},
		{"all fields", stereo, xing(36, "\x0F", "\x00\x00\x00\xC1\x00\x01\x00\x00"+string(make([]byte, 104))+lameField),
			mp3Info{"Xing", 193, true, 576, 1260}, true},
		{"behind a checksum", guarded, xing(38, "\x01", "\x00\x00\x00\xC1"+lameField), mp3Info{"Xing", 193, true, 576, 1260},
			true},
		{"mono at half rate", mono, xing(13, "\x01", "\x00\x00\x00\xC1"+lameField), mp3Info{"Xing", 193, true, 576, 1260},
			true},
		{"no delay", stereo, xing(36, "\x01", "\x00\x00\x00\xC1"), mp3Info{kind: "Xing", frames: 193}, true},
		{"another encoder", stereo, xing(36, "\x01", "\x00\x00\x00\xC1ABCD1.0"), mp3Info{kind: "Xing", frames: 193}, true},
		{"cut", stereo, xing(36, "\x0F", "")[:50], mp3Info{kind: "Xing"}, true},
		{"VBRI", stereo, vbri, mp3Info{kind: "VBRI", frames: 258}, true},
		{"sound", stereo, silentFrames(stereo128, 1), mp3Info{}, false},
		{"too short", stereo, []byte(stereo128), mp3Info{}, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, found := readMP3Info(c.header, c.frame)
			if got != c.want || found != c.found {
				t.Errorf("%+v, %v; want %+v, %v", got, found, c.want, c.found)
			}
		})
	}
}

// The info frame is never played, and delay and padding come off: 8 frames less
// 576 + 529 and 1260 - 529 samples.
func TestMP3Trim(t *testing.T) {
	for _, c := range []struct {
		name string
		file []byte
		want int
	}{
		{"tagged", joined(infoFrameOf("\x00\x00\x00\x08", "\x24\x04\xEC"), silentFrames(stereo128, 8)), 8*1152 - 1105 - 731},
		{"short padding", joined(infoFrameOf("\x00\x00\x00\x08", "\x24\x00\x00"), silentFrames(stereo128, 8)), 8*1152 - 1105},
		{"number of frames unknown", joined(infoFrameOf("\x00\x00\x00\x00", "\x24\x04\xEC"), silentFrames(stereo128, 8)),
			8*1152 - 1105},
		{"delay longer than the sound", joined(infoFrameOf("\x00\x00\x00\x02", "\xFF\xF0\x00"), silentFrames(stereo128, 2)),
			0},
		{"untagged", silentFrames(stereo128, 8), 8 * 1152},
		{"one frame", silentFrames(stereo128, 1), 1152},
		{"info frame alone", infoFrameOf("\x00\x00\x00\x08", "\x24\x04\xEC"), 0},
	} {
		t.Run(c.name, func(t *testing.T) {
			if got := ours(t, writeFile(t, "music.mp3", c.file), Builtin); got.length() != c.want {
				t.Errorf("%d samples, want %d", got.length(), c.want)
			}
		})
	}
}

func TestMP3Unsupported(t *testing.T) {
	intensity := joined(silentFrames(stereo128, 5), silentFrames("\xFF\xFB\x90\x54", 1), silentFrames(stereo128, 5))
	for _, c := range []struct {
		name string
		file []byte
		want string
	}{
		{"intensity stereo", intensity, "MP3 with intensity stereo (1 of 11 frames) is not built in (let ffmpeg decode it)"},
		{"layer I", silentFrames("\xFF\xFF\xC4\x04", 9), "MPEG layer I is not built in (let ffmpeg decode it)"},
		{"layer II", silentFrames("\xFF\xFD\xA4\x04", 9), "MPEG layer II is not built in (let ffmpeg decode it)"},
		{"MPEG-2.5", silentFrames("\xFF\xE3\x40\xC4", 9), "MPEG-2.5 layer III is not built in (let ffmpeg decode it)"},
		{"padding lost", silentFrames("\xFF\xF3\x92\xC4", 9),
			"MP3 at 22050 Hz with padded frames is not built in (let ffmpeg decode it)"},
	} {
		if _, err := Open(writeFile(t, "music.mp3", c.file), Builtin); err == nil || err.Error() != c.want {
			t.Errorf("%s: %v, want %s", c.name, err, c.want)
		}
	}
}

// A frame that looks back on bytes that are missing, or says more than it can
// hold, is silent and takes its time.
func TestMP3Core(t *testing.T) {
	starved := silentFrames(stereo128, 1)
	starved[4] = 0x10 // main_data_begin 32
	tooLong := silentFrames(stereo128, 1)
	copy(tooLong[6:], "\xFF\xFF\xFF\xFF")
	got := ours(t, writeFile(t, "music.mp3",
		joined(starved, silentFrames(stereo128, 3), tooLong, silentFrames(stereo128, 3))), Builtin)
	if got.length() != 8*1152 {
		t.Errorf("%d samples", got.length())
	}
	for _, v := range got.samples {
		if v != 0 {
			t.Fatalf("sample %v is not silent", v)
		}
	}
	want := []string{"1 damaged frame muted", "1 frame muted: bytes that they need are missing"}
	if n := len(got.notes); n != 3 || got.notes[1] != want[0] || got.notes[2] != want[1] {
		t.Errorf("notes %q, want %q", got.notes, want)
	}
}
