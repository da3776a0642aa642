package decode

import (
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"slices"
	"strings"
	"testing"
)

// encoding is one way of storing the music, and what decoding must give.
type encoding struct {
	name     string
	make     func(t testing.TB, s sound) string
	format   string
	child    bool // decoded by ffmpeg also in auto mode
	rate     int  // [Hz]; 0: that of the music
	lossless bool // the samples must be those that went in, to 16 bit
	late     int  // after the music, in any player [samples]
}

var encodings = []encoding{
	{name: "wav", format: "WAV", lossless: true,
		make: func(t testing.TB, s sound) string { return writeFile(t, "music.wav", wav16(s)) }},
	{name: "wav 24 bit", format: "WAV", lossless: true, make: withFFmpeg("music.wav", "-c:a", "pcm_s24le")},
	{name: "wav float", format: "WAV", lossless: true, make: withFFmpeg("music.wav", "-c:a", "pcm_f32le")},
	{name: "wav rf64", format: "WAV", lossless: true, make: withFFmpeg("music.wav", "-rf64", "always")},
	{name: "flac", format: "FLAC", lossless: true, make: withFLAC("-8")},
	{name: "flac 24 bit", format: "FLAC", lossless: true, make: withFFmpeg("music.flac", "-sample_fmt", "s32")},
	{name: "mp3 constant", format: "MP3", make: withLAME("-b", "192")},
	{name: "mp3 variable", format: "MP3", make: withLAME("-V", "2")},
	{name: "mp3 average", format: "MP3", make: withLAME("--abr", "140")},
	{name: "mp3 joint low", format: "MP3", make: withLAME("-b", "64", "-m", "j", "--resample", "44.1")},
	{name: "mp3 checksums", format: "MP3", make: withLAME("-b", "128", "-p")},
	{name: "mp3 untagged", format: "MP3", late: 1105, make: withLAME("-b", "128", "-t")},
	{name: "mp3 by libav", format: "MP3", make: withFFmpeg("music.mp3", "-b:a", "160k")},
	{name: "mp3 22.05 kHz", format: "MP3", rate: 22050, make: withLAME("-b", "64", "--resample", "22.05")},
	{name: "mp3 48 kHz", format: "MP3", rate: 48000, make: withLAME("-b", "128", "--resample", "48")},
	{name: "mp3 32 kHz", format: "MP3", rate: 32000, make: withLAME("-b", "96", "--resample", "32")},
	{name: "mp3 padded 22.05 kHz", format: "MP3", child: true, rate: 22050,
		make: withLAME("-b", "80", "--resample", "22.05")},
	{name: "mpeg 2.5", format: "MP3", child: true, rate: 11025, make: withLAME("-b", "32", "--resample", "11.025")},
	{name: "layer II", format: "MPEG layer II", child: true, late: 481, make: withFFmpeg("music.mp2", "-b:a", "192k")},
	{name: "m4a", format: "M4A (AAC)", child: true, make: withFFmpeg("music.m4a", "-c:a", "aac", "-b:a", "160k")},
	{name: "alac", format: "M4A (ALAC)", child: true, lossless: true, make: withFFmpeg("music.m4a", "-c:a", "alac")},
	{name: "raw aac", format: "AAC", child: true, late: 1024, make: withFFmpeg("music.aac", "-c:a", "aac")},
	{name: "ogg vorbis", format: "Ogg Vorbis", child: true,
		make: withFFmpeg("music.ogg", "-c:a", "libvorbis", "-q:a", "6")},
	{name: "opus", format: "Opus", child: true, rate: 48000, make: withFFmpeg("music.opus", "-b:a", "160k")},
	{name: "aiff", format: "AIFF", child: true, lossless: true, make: withFFmpeg("music.aiff")},
	{name: "a-law in wav", format: "WAV", child: true, make: withFFmpeg("music.wav", "-c:a", "pcm_alaw")},
}

func withFFmpeg(name string, options ...string) func(testing.TB, sound) string {
	return func(t testing.TB, s sound) string { return ffmpegEncode(t, s, name, options...) }
}

func withLAME(options ...string) func(testing.TB, sound) string {
	return func(t testing.TB, s sound) string { return lame(t, s, options...) }
}

func withFLAC(options ...string) func(testing.TB, sound) string {
	return func(t testing.TB, s sound) string {
		t.Helper()
		args := append([]string{program(t, "flac", "flac"), "--silent"}, options...)
		return encode(t, s, "music.flac", append(args, "-o", "OUT", "IN")...)
	}
}

// Every decoder gives the same music on the same timeline. The reference is
// ffmpeg's own decoding of the same file, and the music that was encoded.
func TestDecoders(t *testing.T) {
	for _, channels := range []int{1, 2} {
		music := synth(44100, channels, 3)
		for _, e := range encodings {
			if channels == 1 && e.child && e.name != "m4a" {
				continue // the channels of a child's output are read in one place
			}
			t.Run(fmt.Sprintf("%s/%d", e.name, channels), func(t *testing.T) {
				t.Parallel()
				program(t, "ffmpeg", "ffmpeg")
				path := e.make(t, music)
				got := ours(t, path, Auto)
				checkTimeline(t, e, music, got, theirs(t, path, got.rate, got.channels))
				checkReads(t, path, got)
				if e.child {
					checkRefused(t, path)
				} else if builtin := ours(t, path, Builtin); !slices.Equal(builtin.samples, got.samples) {
					t.Error("auto did not use the built-in decoder")
				}
			})
		}
	}
}

// checkTimeline compares what was decoded with ffmpeg's decoding and with the
// music that was encoded.
func checkTimeline(t *testing.T, e encoding, music, got, want sound) {
	t.Helper()
	rate := e.rate
	if rate == 0 {
		rate = music.rate
	}
	if got.rate != rate || got.channels != music.channels || got.format != e.format {
		t.Fatalf("%q, %d Hz, %d channels; want %q, %d Hz, %d", got.format, got.rate, got.channels, e.format, rate,
			music.channels)
	}
	if got.length() != want.length() {
		t.Errorf("%d samples, ffmpeg decodes %d", got.length(), want.length())
	}
	for _, v := range got.samples {
		if !(v >= -1 && v <= 1) {
			t.Fatalf("sample %g out of range", v)
		}
	}
	millisecond := rate / 1000
	reach := 10 * millisecond
	for _, at := range []int{4 * reach, got.length() - alignWindow - 4*reach} {
		if a := align(want.left(), got.left(), at, reach); a.late != 0 || a.fit < 0.98 {
			t.Errorf("at sample %d: %+v against ffmpeg", at, a)
		}
		if rate != music.rate {
			continue // the music was resampled: there is nothing to lay it on
		}
		if a := align(music.left(), got.left(), at, e.late+reach); abs(a.late-e.late) > millisecond || a.fit < 0.9 {
			t.Errorf("at sample %d: %+v against the music, want %d late", at, a, e.late)
		}
	}
	if e.lossless {
		checkLossless(t, music, got)
	}
}

func checkLossless(t *testing.T, music, got sound) {
	t.Helper()
	if len(got.samples) != len(music.samples) {
		t.Fatalf("%d samples, %d went in", len(got.samples), len(music.samples))
	}
	for i, v := range got.samples {
		if want := float32(math.Round(float64(music.samples[i])*32767)) / (1 << 15); v != want {
			t.Fatalf("sample %d is %v, want %v", i, v, want)
		}
	}
}

func abs(n int) int { return max(n, -n) }

// checkReads reads the file again in pieces of every size and holds what comes
// against the contract of Read.
func checkReads(t *testing.T, path string, want sound) {
	t.Helper()
	s, err := Open(path, Auto)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	if n, err := s.Read(nil); n != 0 || err != nil {
		t.Errorf("empty Read: %d, %v", n, err)
	}
	if s.Channels() == 2 {
		if n, err := s.Read(make([]float32, 1)); n != 0 || !errors.Is(err, io.ErrShortBuffer) {
			t.Errorf("Read of half a sample: %d, %v", n, err)
		}
	}
	const guard = 7
	buf := make([]float32, 4096)
	var got []float32
	for size := 2; ; size = size*5/3 + 1 {
		if size > len(buf)-1 {
			size = 2
		}
		buf[size] = guard
		n, err := s.Read(buf[:size])
		if n > size || n%s.Channels() != 0 || buf[size] != guard || n == 0 && err == nil || n > 0 && err != nil {
			t.Fatalf("Read of %d: %d, %v", size, n, err)
		}
		got = append(got, buf[:n]...)
		if err != nil {
			break
		}
	}
	if !slices.Equal(got, want.samples) {
		t.Errorf("in pieces %d samples, at once %d, or others", len(got), len(want.samples))
	}
	if n, err := s.Read(buf); n != 0 || err != io.EOF {
		t.Errorf("Read behind the end: %d, %v", n, err)
	}
	for range 2 {
		if err := s.Close(); err != nil {
			t.Errorf("Close: %v", err)
		}
	}
}

// checkRefused holds the message for a file that is not built in.
func checkRefused(t *testing.T, path string) {
	t.Helper()
	_, err := Open(path, Builtin)
	var problem *Error
	if !errors.As(err, &problem) || !strings.Contains(problem.Msg, "not built in") {
		t.Errorf("built in: %v", err)
	}
}

func TestReadAfterClose(t *testing.T) {
	s, err := Open(writeFile(t, "music.wav", wav16(synth(8000, 1, 1))), Auto)
	if err != nil {
		t.Fatal(err)
	}
	s.Close()
	if _, err := s.Read(make([]float32, 10)); !errors.Is(err, os.ErrClosed) {
		t.Errorf("got %v", err)
	}
}
