package decode

import (
	"bytes"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"
)

// mp3Case is something done to an MP3 file and what must be left of it.
type mp3Case struct {
	name    string
	damage  func(b []byte) []byte
	late    int    // behind the middle, against the music [samples]
	lack    int    // samples fewer than the music has
	noted   string // part of a note
	ffmpegs int    // how much later ffmpeg starts [samples]
	alone   bool   // ffmpeg cannot open it
}

// id3v2 is a tag with a body of n bytes.
func id3v2(n int, footer bool) []byte {
	var flags byte
	if footer {
		flags = 0x10
	}
	b := []byte{'I', 'D', '3', 4, 0, flags, byte(n >> 21 & 0x7F), byte(n >> 14 & 0x7F), byte(n >> 7 & 0x7F),
		byte(n & 0x7F)}
	b = append(b, bytes.Repeat([]byte{0xFF, 0xFB, 0x90, 0x64}, n/4+1)[:n]...) // looks like frames
	if footer {
		b = append(b, "3DI\x04\x00\x10\x00\x00\x00\x00"...)
	}
	return b
}

// apeTag is a tag with a header, as at the end or the start of a file.
func apeTag(n int) []byte {
	part := func(flags byte) []byte {
		b := append([]byte("APETAGEX\xD0\x07\x00\x00"), byte(n+32), byte((n+32)>>8), 0, 0)
		return append(b, 1, 0, 0, 0, 0, 0, 0, flags, 0, 0, 0, 0, 0, 0, 0, 0)
	}
	return slices.Concat(part(0xA0), bytes.Repeat([]byte{0xFF, 0xFB, 0}, n/3+1)[:n], part(0x80))
}

func id3v1() []byte { return append([]byte("TAG"), make([]byte, 125)...) }

// noise is junk without a pattern.
func noise(n int) []byte {
	rng := rand.New(rand.NewPCG(7, uint64(n)))
	b := make([]byte, n)
	for i := range b {
		b[i] = byte(rng.Uint32())
	}
	return b
}

// joined puts parts into one file.
func joined(parts ...[]byte) []byte { return slices.Concat(parts...) }

// overwrite puts n bytes of noise over the middle.
func overwrite(n int) func([]byte) []byte {
	return func(b []byte) []byte {
		mid := len(b) / 2
		return joined(b[:mid], noise(n), b[mid+n:])
	}
}

// insert puts bytes into the middle.
func insert(what []byte) func([]byte) []byte {
	return func(b []byte) []byte { return joined(b[:len(b)/2], what, b[len(b)/2:]) }
}

const infoFrame = 1152 // what a player that takes it for sound starts late by [samples]

var mp3Cases = []mp3Case{
	{name: "whole", damage: func(b []byte) []byte { return b }},
	{name: "ID3v2", damage: func(b []byte) []byte { return joined(id3v2(5000, false), b) }},
	{name: "several ID3v2", damage: func(b []byte) []byte {
		return joined(id3v2(500, true), id3v2(3, false), id3v2(70000, false), b)
	}},
	{name: "ID3v1", damage: func(b []byte) []byte { return joined(b, id3v1()) }},
	{name: "APE and ID3v1 behind", damage: func(b []byte) []byte { return joined(b, apeTag(3000), id3v1()) }},
	{name: "lyrics behind", damage: func(b []byte) []byte {
		return joined(b, []byte("LYRICSBEGIN"), noise(500), []byte("000511LYRICS200"), id3v1())
	}},
	{name: "APE in front", noted: "before the first frame", ffmpegs: infoFrame + 1105,
		damage: func(b []byte) []byte { return joined(apeTag(900), b) }},
	{name: "zeros in front", noted: "1000 stray bytes before the first frame: some players start 51 ms later",
		ffmpegs: infoFrame + 1105, damage: func(b []byte) []byte { return joined(make([]byte, 1000), b) }},
	{name: "junk in front", noted: "before the first frame", ffmpegs: infoFrame + 1105,
		damage: func(b []byte) []byte { return joined(noise(5000), b) }},
	{name: "ID3 larger than the file", noted: "before the first frame", alone: true,
		damage: func(b []byte) []byte { return joined([]byte("ID3\x04\x00\x00\x7F\x7F\x7F\x7F"), b) }},
	{name: "tag between frames", damage: func(b []byte) []byte {
		at := frameNear(b, len(b)/2)
		return joined(b[:at], id3v1(), b[at:])
	}, noted: "stray bytes in 1 place"},
	{name: "ID3v2 between frames", damage: func(b []byte) []byte {
		at := frameNear(b, len(b)/2)
		return joined(b[:at], id3v2(2000, false), b[at:])
	}},
	{name: "junk put in", damage: insert(noise(5000)), noted: "stray bytes in 1 place"},
	{name: "zeros put in", damage: insert(make([]byte, 20000)), noted: "stray bytes in 1 place"},
	{name: "a frame's inside overwritten", damage: func(b []byte) []byte {
		at := frameNear(b, len(b)/2) + 60
		return joined(b[:at], noise(150), b[at+150:])
	}},
	{name: "a sector overwritten", damage: overwrite(512), noted: "lost to damage"},
	{name: "many frames overwritten", damage: overwrite(9000), noted: "lost to damage"},
	{name: "bytes missing", damage: func(b []byte) []byte { return joined(b[:len(b)/2], b[len(b)/2+1000:]) },
		late: -3 * 1152, lack: 3*1152 - 407, noted: "frames of 231 are not in the file"},
	{name: "cut off", damage: func(b []byte) []byte { return b[:len(b)*3/4] }, lack: 66409, noted: "it is cut or damaged"},
	{name: "cut off within a header", damage: func(b []byte) []byte { return b[:frameNear(b, len(b)*3/4)+2] },
		lack: 66409, noted: "it is cut or damaged"},
	{name: "a header's bits flipped", damage: func(b []byte) []byte {
		b = slices.Clone(b)
		b[frameNear(b, len(b)/2)+1] ^= 0x40
		return b
	}, noted: "1 frame lost to damage"},
}

// frameNear is the offset of the first frame from an offset on.
func frameNear(b []byte, at int) int {
	scan := newMP3Scanner(bytes.NewReader(b), 0, int64(len(b)))
	for {
		f, err := scan.next()
		if err != nil || f.offset >= int64(at) {
			return int(f.offset)
		}
	}
}

// Whatever is done to a file, the music that is left keeps its place.
func TestMP3Damage(t *testing.T) {
	music := synth(44100, 2, 6)
	for _, kind := range []struct{ name, options string }{{"constant", "-b128"}, {"variable", "-V4"}} {
		path := lame(t, music, kind.options)
		whole, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range mp3Cases {
			t.Run(c.name+"/"+kind.name, func(t *testing.T) {
				t.Parallel()
				c.check(t, music, whole, kind.name == "constant")
			})
		}
	}
}

// check decodes the damaged file. The figures for missing bytes hold at a
// constant bit rate.
func (c mp3Case) check(t *testing.T, music sound, whole []byte, constant bool) {
	t.Helper()
	path := writeFile(t, "music.mp3", c.damage(whole))
	got := ours(t, path, Builtin)
	if want := music.length() - c.lack; got.length() != want && (constant || c.lack == 0) {
		t.Errorf("%d samples, want %d", got.length(), want)
	}
	const reach = 300
	start := align(music.left(), got.left(), 4000, reach)
	end := align(music.left(), got.left(), got.length()-alignWindow-10000, abs(c.late)+reach)
	if start.late != 0 || start.fit < 0.9 {
		t.Errorf("the start lies at %+v", start)
	}
	if constant && (end.late != c.late || end.fit < 0.8) {
		t.Errorf("the end lies at %+v, want %d late", end, c.late)
	}
	if notes := strings.Join(got.notes, "; "); !strings.Contains(notes, c.noted) || c.noted == "" && notes != "" {
		t.Errorf("notes %q, want %q", notes, c.noted)
	}
	if c.alone || !constant {
		return
	}
	theirs := theirs(t, path, 44100, 2)
	if a := align(theirs.left(), got.left(), 6000, c.ffmpegs+reach); a.late != -c.ffmpegs || a.fit < 0.98 {
		t.Errorf("against ffmpeg %+v, want %d late", a, -c.ffmpegs)
	}
}

// Music joined to a file plays on; what its header says of the end then holds
// for the middle.
func TestMP3Joined(t *testing.T) {
	music := synth(44100, 2, 6)
	tagged, err := os.ReadFile(lame(t, music, "-b", "128"))
	if err != nil {
		t.Fatal(err)
	}
	plain, err := os.ReadFile(lame(t, music, "-b", "128", "-t"))
	if err != nil {
		t.Fatal(err)
	}
	for name, b := range map[string][]byte{
		"two files":    joined(tagged, tagged),
		"untagged":     joined(plain, plain),
		"a short more": joined(tagged, plain[:frameNear(plain, 4000)]),
	} {
		t.Run(name, func(t *testing.T) {
			path := writeFile(t, "music.mp3", b)
			got, want := ours(t, path, Builtin), theirs(t, path, 44100, 2)
			at := got.length() - alignWindow - 3000
			if a := align(want.left(), got.left(), at, 500); a.late != 0 || a.fit < 0.98 {
				t.Errorf("the end lies at %+v against ffmpeg", a)
			}
		})
	}
	with := ours(t, writeFile(t, "music.mp3", joined(tagged, id3v1(), id3v2(300, false), tagged)), Builtin)
	without := ours(t, writeFile(t, "music.mp3", joined(tagged, tagged)), Builtin)
	if !slices.Equal(with.samples, without.samples) {
		t.Errorf("tags where files were joined changed the sound: %d samples, %d without", with.length(), without.length())
	}
}

func TestMP3ChangedRate(t *testing.T) {
	first, err := os.ReadFile(lame(t, synth(44100, 2, 3), "-b", "128"))
	if err != nil {
		t.Fatal(err)
	}
	second, err := os.ReadFile(lame(t, synth(48000, 2, 3), "-b", "128"))
	if err != nil {
		t.Fatal(err)
	}
	path := writeFile(t, "music.mp3", joined(first, second))
	got := ours(t, path, Builtin)
	if got.length() != 3*44100 || !strings.Contains(strings.Join(got.notes, ";"),
		"stops at 3s: the sound goes on at 48000 Hz") {
		t.Errorf("built in: %d samples, notes %q", got.length(), got.notes)
	}
	program(t, "ffmpeg", "ffmpeg")
	got, want := ours(t, path, Auto), theirs(t, path, 44100, 2)
	if got.length() != want.length() || got.length() < 5*44100 {
		t.Errorf("auto: %d samples, ffmpeg %d", got.length(), want.length())
	}
	t.Setenv("PATH", "")
	if got := ours(t, path, Auto); got.length() != 3*44100 {
		t.Errorf("auto without ffmpeg: %d samples", got.length())
	}
}
