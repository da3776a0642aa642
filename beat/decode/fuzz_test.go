package decode

import (
	"bytes"
	"math/rand/v2"
	"os"
	"os/exec"
	"slices"
	"testing"
	"time"
)

// slow is what no input of the size that fuzzing makes may take.
const slow = 20 * time.Second

// playAll reads a decoder to its end and returns how many samples it gave per
// channel.
func playAll(t *testing.T, d decoder) int {
	t.Helper()
	began := time.Now()
	buf := make([]float32, 1152*2)
	total := 0
	for {
		n, err := d.read(buf)
		for _, v := range buf[:n] {
			if !(v >= -1 && v <= 1) {
				t.Fatalf("sample %g", v)
			}
		}
		total += n
		if n%d.channels() != 0 || n == 0 && err == nil {
			t.Fatalf("read: %d, %v", n, err)
		}
		if err != nil {
			break
		}
	}
	d.notes()
	if took := time.Since(began); took > slow {
		t.Fatalf("took %s", took)
	}
	return total / d.channels()
}

// addEncoded adds a seed that an encoder makes, where it is installed.
func addEncoded(f *testing.F, name string, s sound, args ...string) {
	f.Helper()
	if _, err := exec.LookPath(args[0]); err != nil {
		return
	}
	b, err := os.ReadFile(encode(f, s, name, args...))
	if err != nil {
		f.Fatal(err)
	}
	f.Add(b)
}

func FuzzMP3(f *testing.F) {
	f.Add(silentFrames(stereo128, 4))
	f.Add(joined(infoFrameOf("\x00\x00\x00\x08", "\x24\x04\xEC"), silentFrames(stereo128, 8), id3v1()))
	f.Add(joined(id3v2(20, true), silentFrames(mono64, 6), noise(50), silentFrames(mono64, 6), apeTag(10)))
	f.Add(joined(silentFrames(stereo128, 4), silentFrames("\xFF\xFB\x94\x64", 6)))
	music := synth(44100, 2, 0.4)
	addEncoded(f, "a.mp3", music, "lame", "--quiet", "-b", "64", "IN", "OUT")
	addEncoded(f, "b.mp3", music, "lame", "--quiet", "-V", "5", "-m", "j", "IN", "OUT")
	addEncoded(f, "c.mp3", music, "lame", "--quiet", "-b", "32", "--resample", "22.05", "-m", "m", "IN", "OUT")
	f.Fuzz(playMP3)
}

// playMP3 decodes what may be an MP3 file. However it is damaged, every frame
// in it takes its time and no other.
func playMP3(t *testing.T, b []byte) {
	s, err := surveyMP3(bytes.NewReader(b), int64(len(b)))
	if err != nil || s.unsupported() != "" {
		return
	}
	m := newMP3(bytes.NewReader(b), s)
	total := int64(playAll(t, m))
	if want := (s.frames + m.lost) * int64(s.first.samples()); m.at != want || total > want {
		t.Fatalf("the clock slipped: %d of %d samples, %d given", m.at, want, total)
	}
	if !s.info.gapless && total != m.at {
		t.Fatalf("%d of %d samples given", total, m.at)
	}
	const shortest = 24 // [bytes]
	if m.lost > int64(len(b))/shortest {
		t.Fatalf("%d frames lost in %d bytes", m.lost, len(b))
	}
}

// Random damage of every kind, the same in each run.
func TestMP3Mutations(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 14))
	for _, options := range [][]string{{"-b", "96"}, {"-V", "4"}, {"-b", "32", "--resample", "24", "-m", "m"}} {
		whole, err := os.ReadFile(lame(t, synth(48000, 2, 1), options...))
		if err != nil {
			t.Fatal(err)
		}
		for range 40 {
			playMP3(t, mutate(rng, whole))
		}
	}
}

// mutate damages a copy of b in up to eight places.
func mutate(rng *rand.Rand, b []byte) []byte {
	b = slices.Clone(b)
	for range 1 + rng.IntN(8) {
		at := rng.IntN(len(b))
		n := min(len(b)-at, 1+rng.IntN(700))
		switch rng.IntN(6) {
		case 0:
			b[at] ^= 1 << rng.IntN(8)
		case 1:
			copy(b[at:at+n], noise(n))
		case 2:
			clear(b[at : at+n])
		case 3:
			b = slices.Delete(b, at, at+n)
		case 4:
			b = slices.Insert(b, at, noise(n)...)
		case 5: // a header, where it can be found
			if i := bytes.IndexByte(b[at:], 0xFF); i >= 0 && at+i+4 <= len(b) {
				b[at+i+1+rng.IntN(3)] ^= byte(1 << rng.IntN(8))
			}
		}
	}
	return b
}

func FuzzWAV(f *testing.F) {
	for _, c := range wavCases {
		f.Add(c.file)
	}
	f.Fuzz(func(t *testing.T, b []byte) {
		w, err := newWAV(bytes.NewReader(b))
		if err != nil {
			return
		}
		if n := playAll(t, w); n > len(b) {
			t.Fatalf("%d samples in %d bytes", n, len(b))
		}
	})
}

func FuzzFLAC(f *testing.F) {
	f.Add(flacHeader())
	music := synth(8000, 2, 0.2)
	addEncoded(f, "a.flac", music, "flac", "--silent", "-8", "-o", "OUT", "IN")
	addEncoded(f, "b.flac", synth(8000, 1, 0.2), "flac", "--silent", "-0", "--blocksize=192", "-o", "OUT", "IN")
	addEncoded(f, "c.flac", music, "ffmpeg", "-v", "error", "-i", "IN", "-sample_fmt", "s32", "OUT")
	f.Fuzz(func(t *testing.T, b []byte) {
		d, err := newFLAC(bytes.NewReader(b), int64(len(b)))
		if err != nil {
			return
		}
		const longest = 65535 // samples of the shortest frame, 10 bytes
		if n := playAll(t, d); n > (len(b)/10+1)*2*longest {
			t.Fatalf("%d samples in %d bytes", n, len(b))
		}
	})
}

func FuzzSniff(f *testing.F) {
	for _, b := range [][]byte{
		mp4("mp4a"), mp4("drms"), ogg("OpusHead"), id3v2(10, true), apeTag(5), silentFrames(stereo128, 5), flacHeader(),
		wavBytes(fmtChunk(wavPCM, 1, 44100, 16), pcm16), []byte("one two three four"), []byte("FORM\x00\x00\x00\x04AIFF"),
		joined([]byte("\xFF\xF1\x50\x80\x01\x1F\xFC\x00"), []byte("\xFF\xF1\x50\x80\x01\x1F\xFC\x00")),
	} {
		f.Add(b)
	}
	f.Fuzz(func(t *testing.T, b []byte) {
		found, err := sniff(bytes.NewReader(b), int64(len(b)))
		if (err == nil) != (found.name != "") {
			t.Fatalf("%q, %v", found.name, err)
		}
		if found.builtin == nil {
			return
		}
		if d, err := found.builtin(bytes.NewReader(b), int64(len(b))); err == nil {
			playAll(t, d)
		}
	})
}
