package decode

import (
	"encoding/binary"
	"errors"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"
)

// sound is decoded or synthesised music, channels interleaved.
type sound struct {
	rate, channels int
	samples        []float32
	format         string
	notes          []string
}

func (s sound) length() int { return len(s.samples) / s.channels }

// left is the first channel.
func (s sound) left() []float32 {
	out := make([]float32, s.length())
	for i := range out {
		out[i] = s.samples[i*s.channels]
	}
	return out
}

// synth makes music that is nowhere alike, so that a lag shows: drums at an
// uneven pace over a chord, the channels different.
func synth(rate, channels int, seconds float64) sound {
	rng := rand.New(rand.NewPCG(20, 26))
	n := int(seconds * float64(rate))
	s := sound{rate: rate, channels: channels, samples: make([]float32, n*channels)}
	next, since, bright := 0, 0, false
	for i := range n {
		if i >= next {
			next = i + rate/8 + rng.IntN(rate/4)
			since, bright = i, rng.IntN(2) == 0
		}
		t := float64(i) / float64(rate)
		age := float64(i-since) / float64(rate)
		hit := math.Sin(2*math.Pi*55*age) * math.Exp(-age*18) * 0.5
		if bright {
			hit = rng.NormFloat64() * 0.12 * math.Exp(-age*40)
		}
		for ch := range channels {
			tone := 0.1*math.Sin(2*math.Pi*(220+110*float64(ch))*t) + 0.02*rng.NormFloat64()
			s.samples[i*channels+ch] = float32(hit + tone)
		}
	}
	return s
}

// program returns the path of a program, or skips the test and says which
// Debian package has it.
func program(t testing.TB, name, debian string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err != nil {
		t.Skipf("NOT CHECKED: %s is not on the PATH; apt install %s", name, debian)
	}
	return path
}

// run runs a program and fails the test when it fails.
func run(t testing.TB, args ...string) []byte {
	t.Helper()
	cmd := exec.Command(args[0], args[1:]...)
	out, err := cmd.Output()
	if err != nil {
		var exit *exec.ExitError
		if errors.As(err, &exit) {
			t.Fatalf("%v: %v\n%s", args, err, exit.Stderr)
		}
		t.Fatalf("%v: %v", args, err)
	}
	return out
}

// writeFile writes a file for one test and returns its path.
func writeFile(t testing.TB, name string, b []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, b, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

// wav16 is a sound as a 16-bit WAV file.
func wav16(s sound) []byte {
	data := make([]byte, 0, 2*len(s.samples))
	for _, v := range s.samples {
		data = binary.LittleEndian.AppendUint16(data, uint16(int16(math.Round(float64(max(-1, min(1, v)))*32767))))
	}
	return wavBytes(fmtChunk(wavPCM, s.channels, s.rate, 16), chunk("data", data))
}

// encode runs a music encoder on a sound and returns the path of what it made.
// In args, IN and OUT stand for the WAV file and the result.
func encode(t testing.TB, s sound, name string, args ...string) string {
	t.Helper()
	in := writeFile(t, "in.wav", wav16(s))
	out := filepath.Join(filepath.Dir(in), name)
	for i, a := range args {
		switch a {
		case "IN":
			args[i] = in
		case "OUT":
			args[i] = out
		}
	}
	run(t, args...)
	return out
}

// lame encodes to MP3.
func lame(t testing.TB, s sound, options ...string) string {
	t.Helper()
	args := append([]string{program(t, "lame", "lame"), "--quiet"}, options...)
	return encode(t, s, "music.mp3", append(args, "IN", "OUT")...)
}

// ffmpegEncode encodes with ffmpeg to the format that the name asks for.
func ffmpegEncode(t testing.TB, s sound, name string, options ...string) string {
	t.Helper()
	args := append([]string{program(t, "ffmpeg", "ffmpeg"), "-v", "error", "-i", "IN"}, options...)
	return encode(t, s, name, append(args, "OUT")...)
}

// ours decodes a whole file with this package.
func ours(t testing.TB, path string, mode Mode) sound {
	t.Helper()
	s, err := Open(path, mode)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	out, err := readAll(s)
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// readAll reads a stream to its end.
func readAll(s *Stream) (sound, error) { return readSome(s, math.MaxInt) }

// readSome reads up to most samples of a stream, channels counted one by one.
func readSome(s *Stream, most int) (sound, error) {
	out := sound{rate: s.Rate(), channels: s.Channels(), format: s.Format()}
	buf := make([]float32, 5000)
	for most > 0 {
		n, err := s.Read(buf[:min(most, len(buf))])
		out.samples = append(out.samples, buf[:n]...)
		most -= n
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return out, err
		}
	}
	out.notes = s.Notes()
	return out, nil
}

// theirs decodes a file with ffmpeg, called directly.
func theirs(t testing.TB, path string, rate, channels int, options ...string) sound {
	t.Helper()
	args := []string{program(t, "ffmpeg", "ffmpeg"), "-v", "quiet", "-i", path, "-map", "0:a:0",
		"-f", "f32le", "-ac", strconv.Itoa(channels), "-ar", strconv.Itoa(rate)}
	raw := run(t, append(append(args, options...), "-")...)
	s := sound{rate: rate, channels: channels, samples: make([]float32, len(raw)/4)}
	for i := range s.samples {
		s.samples[i] = math.Float32frombits(binary.LittleEndian.Uint32(raw[4*i:]))
	}
	return s
}

// alignment is how a piece of one sound lies on another.
type alignment struct {
	late int     // how much later the piece is [samples]
	fit  float64 // normalised correlation there, 1 for equal shape
}

// alignWindow is the length of the piece that align compares [samples].
const alignWindow = 8000

// align looks for the piece of got at offset at in ref, up to reach samples to
// either side.
func align(ref, got []float32, at, reach int) alignment {
	best := alignment{fit: math.Inf(-1)}
	if at < 0 || at+alignWindow > len(got) {
		return best
	}
	piece := got[at : at+alignWindow]
	energy := product(piece, piece)
	for start := max(0, at-reach); start <= min(at+reach, len(ref)-alignWindow); start++ {
		under := ref[start : start+alignWindow]
		const floor = 1e-9 // keeps silence from dividing by nothing
		if fit := product(under, piece) / (math.Sqrt(energy*product(under, under)) + floor); fit > best.fit {
			best = alignment{late: at - start, fit: fit}
		}
	}
	return best
}

func product(a, b []float32) float64 {
	var sum float64
	for i, v := range a {
		sum += float64(v) * float64(b[i])
	}
	return sum
}
