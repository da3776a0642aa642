package decode

import (
	"os"
	"slices"
	"strings"
	"testing"
)

// The checksum that the encoder left in the file tells whether every sample is
// what it was: a damaged one must not agree with it.
func TestFLACChecksum(t *testing.T) {
	for _, bits := range []string{"s16", "s32"} {
		path := ffmpegEncode(t, synth(48000, 2, 2), "music.flac", "-sample_fmt", bits)
		if got := ours(t, path, Builtin); len(got.notes) > 0 {
			t.Errorf("%s: notes %q", bits, got.notes)
		}
		b, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		const checksum = 4 + 4 + 18 // behind signature and block header
		b[checksum] ^= 1
		got := ours(t, writeFile(t, "music.flac", b), Builtin)
		if want := []string{"the samples differ from the checksum in the file"}; !slices.Equal(got.notes, want) {
			t.Errorf("%s: notes %q", bits, got.notes)
		}
	}
}

func TestFLACShapes(t *testing.T) {
	for _, c := range []struct {
		name     string
		channels int
		options  []string
	}{
		{"8 bit", 1, []string{"--bps=8"}}, {"mono", 1, nil}, {"fastest", 2, []string{"-0"}},
		{"odd block", 2, []string{"-b", "4097", "--lax"}}, {"small block", 2, []string{"-b", "16"}},
		{"no padding or seek table", 2, []string{"--no-padding", "--no-seektable"}},
		{"48 kHz", 2, nil},
	} {
		t.Run(c.name, func(t *testing.T) {
			rate := 44100
			if c.name == "48 kHz" {
				rate = 48000
			}
			music := synth(rate, c.channels, 1)
			var path string
			if c.name == "8 bit" {
				eight := ffmpegEncode(t, music, "music.wav", "-c:a", "pcm_u8")
				path = eight + ".flac"
				run(t, program(t, "flac", "flac"), "--silent", "-o", path, eight)
			} else {
				path = withFLAC(c.options...)(t, music)
			}
			got := ours(t, path, Builtin)
			want := theirs(t, path, rate, c.channels)
			if !slices.Equal(got.samples, want.samples) || len(got.notes) > 0 {
				t.Errorf("%d samples, ffmpeg %d, or others; notes %q", got.length(), want.length(), got.notes)
			}
		})
	}
}

// Five channels fold to two; the sum may not clip.
func TestFLACSurround(t *testing.T) {
	path := ffmpegEncode(t, synth(44100, 6, 1), "music.flac")
	got := ours(t, path, Builtin)
	if got.channels != 2 || got.length() != 44100 || !slices.Equal(got.notes, []string{"6 channels folded to 2"}) {
		t.Errorf("%d channels, %d samples, notes %q", got.channels, got.length(), got.notes)
	}
}

// Sound that damage made unreadable is silent, and what follows keeps its
// place.
func TestFLACDamage(t *testing.T) {
	music := synth(44100, 2, 6)
	whole, err := os.ReadFile(withFLAC("-5")(t, music))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name   string
		damage func([]byte) []byte
		lack   bool
		noted  string
	}{
		{"overwritten", overwrite(3000), false, "damaged in 1 place"},
		{"zeros", func(b []byte) []byte { return joined(b[:len(b)/2], make([]byte, 50000), b[len(b)/2+50000:]) }, false,
			"damaged in 1 place"},
		{"bytes missing", func(b []byte) []byte { return joined(b[:len(b)/2], b[len(b)/2+30000:]) }, false,
			"damaged in 1 place"},
		{"junk put in", insert(noise(9000)), false, "damaged in 1 place"},
		{"two places", func(b []byte) []byte { return overwrite(3000)(joined(b[:len(b)/4], noise(2000), b[len(b)/4+2000:])) },
			false, "damaged in 2 places"},
		{"cut", func(b []byte) []byte { return b[:len(b)*3/4] }, true, "the file is cut"},
		{"ID3 in front", func(b []byte) []byte { return joined(id3v2(3000, false), b) }, false, ""},
		{"ID3v1 behind", func(b []byte) []byte { return joined(b, id3v1()) }, false, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := ours(t, writeFile(t, "music.flac", c.damage(whole)), Builtin)
			if (got.length() != music.length()) != c.lack {
				t.Errorf("%d samples, %d went in", got.length(), music.length())
			}
			for _, at := range []int{0, got.length() - 30000} {
				if a := align(music.left(), got.left(), at, 10); a.late != 0 || a.fit < 0.999 {
					t.Errorf("at sample %d: %+v", at, a)
				}
			}
			if notes := strings.Join(got.notes, "; "); !strings.Contains(notes, c.noted) || c.noted == "" && notes != "" {
				t.Errorf("notes %q, want %q", notes, c.noted)
			}
		})
	}
}

func TestFLACProblems(t *testing.T) {
	for _, c := range []struct{ name, file, want string }{
		{"signature only", "fLaC", "flac: the header is damaged: "},
		{"header cut", "fLaC\x00\x00\x00\x22abc", "flac: the header is damaged: "},
		{"no stream information", "fLaC\x81\x00\x00\x04abcd", "flac: the file does not begin with its stream information"},
	} {
		if _, err := Open(writeFile(t, "music.flac", []byte(c.file)), Builtin); err == nil ||
			!strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%s: %v, want %s", c.name, err, c.want)
		}
	}
}
