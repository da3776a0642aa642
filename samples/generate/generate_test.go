package main

import (
	"encoding/binary"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"

	"onphrase/samples/synth"
)

const music = "../demo/music"

// The truth files beside the music are those of the songs as listed.
func TestTruthFiles(t *testing.T) {
	for _, s := range songs {
		truth := s.song.Truth()
		for ext, want := range map[string]string{".beats": beatLines(truth), ".phrases": phraseLines(truth)} {
			got, err := os.ReadFile(filepath.Join(music, s.file+ext))
			if err != nil {
				t.Error(err)
			} else if string(got) != want {
				t.Errorf("%s%s is not the song's truth: run go run ./samples/generate", s.file, ext)
			}
		}
	}
}

func needFFmpeg(t *testing.T) {
	t.Helper()
	if _, err := exec.LookPath("ffmpeg"); err != nil {
		t.Skip("SKIPPED: ffmpeg is not installed, so the MP3 files are not held against the songs (apt install ffmpeg)")
	}
}

// Each MP3 file, decoded by ffmpeg, is its song at lag 0: what the truth says
// of the one is true of the other.
func TestMP3IsTheSong(t *testing.T) {
	needFFmpeg(t)
	for _, s := range songs {
		short := s.song
		short.Sections = short.Sections[:1] // what comes later does not change it
		sound := synth.Render(short)
		from := int((short.Lead + short.Ambient + 1) * float64(sound.Rate))
		want := sound.Mono()[from:]
		got := decode(t, s.file, sound.Rate)[from:]
		const reach, window = 1200, 3 // [samples], more than an encoder's delay; [s]
		lag, likeness := bestLag(got, want, window*sound.Rate, reach)
		if lag != 0 || likeness < 0.95 {
			t.Errorf("%s.mp3 is most like its song %d samples late (correlation %.3f), want 0 (above 0.95)", s.file, lag,
				likeness)
		}
	}
}

// decode is the file as ffmpeg plays it, mono.
func decode(t *testing.T, file string, rate int) []float32 {
	t.Helper()
	raw, err := exec.Command("ffmpeg", "-v", "error", "-i", filepath.Join(music, file+".mp3"),
		"-t", "25", "-ac", "1", "-f", "f32le", "-").Output()
	if err != nil {
		t.Fatalf("%s: ffmpeg: %v", file, err)
	}
	out := make([]float32, len(raw)/4)
	for i := range out {
		out[i] = math.Float32frombits(binary.LittleEndian.Uint32(raw[4*i:]))
	}
	return out
}

// bestLag is by how many samples got is later than want where the two are most
// alike, and the correlation there.
func bestLag(got, want []float32, n, reach int) (lag int, likeness float64) {
	likeness = math.Inf(-1)
	for l := -reach; l <= reach; l++ {
		var gw, gg, ww float64
		for i := reach; i < reach+n; i += 3 {
			g, w := float64(got[i+l]), float64(want[i])
			gw, gg, ww = gw+g*w, gg+g*g, ww+w*w
		}
		if r := gw / math.Sqrt(gg*ww); r > likeness {
			lag, likeness = l, r
		}
	}
	return lag, likeness
}

// Loudness by ffmpeg's EBU R 128 meter, both loudspeakers playing the mono
// file: -14 LUFS is what music is commonly delivered at, no source.
func TestLoudness(t *testing.T) {
	needFFmpeg(t)
	integrated := regexp.MustCompile(`(?s)Summary:.*I:\s+(-?[\d.]+) LUFS`)
	silence := regexp.MustCompile(`silence_start: ([\d.]+)`)
	for _, s := range songs {
		log, err := exec.Command("ffmpeg", "-hide_banner", "-nostats", "-i", filepath.Join(music, s.file+".mp3"),
			"-af", "silencedetect=n=-50dB:d=0.5,ebur128=dualmono=true", "-f", "null", "-").CombinedOutput()
		if err != nil {
			t.Fatalf("%s: ffmpeg: %v\n%s", s.file, err, log)
		}
		m := integrated.FindSubmatch(log)
		if m == nil {
			t.Fatalf("%s: ffmpeg gave no loudness", s.file)
		}
		if lufs, _ := strconv.ParseFloat(string(m[1]), 64); math.Abs(lufs+14) > 1 {
			t.Errorf("%s has %.1f LUFS, want -14 within 1", s.file, lufs)
		}
		for _, m := range silence.FindAllSubmatch(log, -1) {
			if at, _ := strconv.ParseFloat(string(m[1]), 64); at > 0 && at < s.song.Truth().End { // at 0 it is the song's Lead
				t.Errorf("%s is silent at %.1f s", s.file, at)
			}
		}
	}
}
