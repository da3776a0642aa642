package decode

import (
	"bytes"
	"runtime"
	"testing"
	"time"
)

// silentFrames are n MP3 frames of silence: a header and nothing.
func silentFrames(header string, n int) []byte {
	h, ok := parseMP3Header([]byte(header))
	if !ok {
		panic("no header: " + header)
	}
	return bytes.Repeat(append([]byte(header), make([]byte, h.size()-mp3HeaderSize)...), n)
}

const (
	stereo128 = "\xFF\xFB\x90\x64" // MPEG-1 layer III, 128 kbit/s, 44.1 kHz, joint stereo
	mono64    = "\xFF\xF3\x80\xC4" // MPEG-2 layer III, 64 kbit/s, 22.05 kHz, mono
)

// infoFrameOf is an info frame that claims any number of frames.
func infoFrameOf(frames string, delay string) []byte {
	f := silentFrames(stereo128, 1)
	copy(f[36:], "Xing\x00\x00\x00\x01"+frames+"LAME3.100")
	copy(f[36+12+21:], delay)
	return f
}

// Whatever sizes a file claims, opening and reading it takes little memory and
// little time.
func TestHostileSizes(t *testing.T) {
	t.Setenv("PATH", "")
	const most, perByte = 8 << 20, 150 // all that is allocated, most of it given back at once [bytes]
	huge := "\xFF\xFF\xFF\xFF"
	for _, c := range []struct {
		name string
		file []byte
	}{
		{"ID3", []byte("ID3\x04\x00\x00\x7F\x7F\x7F\x7F")},
		{"many ID3", bytes.Repeat([]byte("ID3\x04\x00\x00\x00\x00\x00\x00"), 200000)},
		{"APE", joined([]byte("APETAGEX\xD0\x07\x00\x00"+huge+huge), make([]byte, 64))},
		{"frames", joined(infoFrameOf(huge, "\xFF\xFF\xFF"), silentFrames(stereo128, 50))},
		{"frames and a gap", joined(infoFrameOf(huge, "\x24\x04\xEC"), silentFrames(stereo128, 50), noise(1<<20),
			silentFrames(stereo128, 50))},
		{"no frames", joined(infoFrameOf("\x00\x00\x00\x00", "\xFF\xFF\xFF"), silentFrames(stereo128, 50))},
		{"wav", wavBytes(fmtChunk(wavPCM, 64, 44100, 32), sized(pcm16, 0xFFFFFFFE))},
		{"wav fmt", wavBytes(sized(fmtChunk(wavPCM, 1, 44100, 16), 0xFFFFFFFE))},
		{"wav chunks", wavBytes(bytes.Repeat(chunk("junk", nil), 200000))},
		{"flac", joined([]byte("fLaC\x00\x00\x00\x22\xFF\xFF\xFF\xFF"+huge), bytes.Repeat([]byte(huge), 20))},
		{"flac syncs", joined(flacHeader(), bytes.Repeat([]byte{0xFF, 0xF8, 0xC9, 0x18}, 200000))},
		{"flac blocks", joined([]byte("fLaC"), flacHeader()[4:42], bytes.Repeat([]byte{1, 0, 0, 0}, 500000))},
		{"mp4", joined(box("ftyp", []byte("isom")), []byte("\x00\x00\x00\x01moov\x7F\xFF\xFF\xFF\xFF\xFF\xFF\xFF"))},
		{"mp4 boxes", joined(box("ftyp", []byte("isom")), bytes.Repeat(box("trak"), 200000))},
	} {
		t.Run(c.name, func(t *testing.T) {
			path := writeFile(t, "music", c.file)
			var before, after runtime.MemStats
			runtime.ReadMemStats(&before)
			began := time.Now()
			if s, err := Open(path, Auto); err == nil {
				buf := make([]float32, 4096)
				for err == nil {
					_, err = s.Read(buf)
				}
				s.Close()
			}
			runtime.ReadMemStats(&after)
			if used := after.TotalAlloc - before.TotalAlloc; used > most+uint64(len(c.file))*perByte {
				t.Errorf("%d bytes for a file of %d", used, len(c.file))
			}
			if took := time.Since(began); took > 20*time.Second {
				t.Errorf("took %s", took)
			}
		})
	}
}

// flacHeader is the start of a FLAC file, 44.1 kHz, stereo, 16 bit, of no
// stated length.
func flacHeader() []byte {
	b := []byte("fLaC\x80\x00\x00\x22\x10\x00\x10\x00\x00\x00\x00\x00\x00\x00\x0A\xC4\x42\xF0\x00\x00\x00\x00")
	return append(b, make([]byte, 16)...)
}
