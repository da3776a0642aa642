package loudness

import (
	"bytes"
	"encoding/binary"
	"math"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"
)

// ffmpegSays measures with ffmpeg's ebur128 filter.
func ffmpegSays(t *testing.T, stdin []byte, input ...string) float64 {
	t.Helper()
	args := append([]string{"-hide_banner", "-v", "info"}, input...)
	cmd := exec.Command("ffmpeg", append(args, "-af", "ebur128=framelog=verbose", "-f", "null", "-")...)
	cmd.Stdin = bytes.NewReader(stdin)
	out, err := cmd.CombinedOutput()
	if err != nil {
		t.Fatalf("ffmpeg: %v\n%s", err, out)
	}
	m := regexp.MustCompile(`I:\s+(-?[\d.]+) LUFS`).FindSubmatch(out)
	if m == nil {
		t.Fatalf("no loudness in\n%s", out)
	}
	v, err := strconv.ParseFloat(string(m[1]), 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func needFFmpeg(t *testing.T) {
	t.Helper()
	if _, err := exec.LookPath("ffmpeg"); err != nil {
		t.Skip("NOT CHECKED: ffmpeg is not on the PATH; apt install ffmpeg")
	}
}

// tolerance is 0.1 LU, and what ffmpeg's figure is rounded by [LU].
const tolerance = 0.15

func TestAgainstFFmpeg(t *testing.T) {
	needFFmpeg(t)
	for _, c := range []struct {
		name           string
		rate, channels int
		samples        []float32
	}{
		{"noise 48 kHz", 48000, 2, hiss(2 * 48000 * 12)},
		{"noise 44.1 kHz", 44100, 2, hiss(2 * 44100 * 12)},
		{"noise 22.05 kHz", 22050, 2, hiss(2 * 22050 * 12)},
		{"one channel", 44100, 1, hiss(44100 * 12)},
		{"tone and silence", 44100, 2, append(sine(44100, 2, tone{-10, 4}, tone{-40, 6}), make([]float32, 2*44100*5)...)},
	} {
		t.Run(c.name, func(t *testing.T) {
			var raw []byte
			for _, v := range c.samples {
				raw = binary.LittleEndian.AppendUint32(raw, math.Float32bits(v))
			}
			want := ffmpegSays(t, raw, "-f", "f32le", "-ar", strconv.Itoa(c.rate), "-ac", strconv.Itoa(c.channels), "-i",
				"pipe:0")
			if got := measure(t, c.rate, c.channels, c.samples); math.Abs(got-want) > tolerance {
				t.Errorf("%.2f LUFS, ffmpeg %.1f", got, want)
			}
		})
	}
}

// Rendered music of the corpus, as ffmpeg decodes it.
func TestMusicAgainstFFmpeg(t *testing.T) {
	needFFmpeg(t)
	files, err := filepath.Glob("../../../shared/corpus/*.mp3")
	if err != nil {
		t.Fatal(err)
	}
	if len(files) == 0 {
		t.Skip("NOT CHECKED: no corpus at ../shared/corpus beside the repository")
	}
	const every = 10
	for i := 0; i < len(files); i += every {
		t.Run(filepath.Base(files[i]), func(t *testing.T) {
			raw, err := exec.Command("ffmpeg", "-v", "error", "-i", files[i], "-f", "f32le", "-ac", "2", "-ar", "44100",
				"-").Output()
			if err != nil {
				t.Fatal(err)
			}
			samples := make([]float32, len(raw)/4)
			for i := range samples {
				samples[i] = math.Float32frombits(binary.LittleEndian.Uint32(raw[4*i:]))
			}
			want := ffmpegSays(t, raw, "-f", "f32le", "-ar", "44100", "-ac", "2", "-i", "pipe:0")
			if got := measure(t, 44100, 2, samples); math.Abs(got-want) > tolerance {
				t.Errorf("%.2f LUFS, ffmpeg %.1f", got, want)
			}
		})
	}
}
