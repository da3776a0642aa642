package synth

import (
	"bytes"
	"encoding/binary"
	"math"
	"os/exec"
	"testing"
)

// A click starts on the sample of its beat and not before.
func TestClicks(t *testing.T) {
	beats := Steady(128, 4, 40, 0.5)
	s := Clicks(beats, 44100)
	for i, b := range beats {
		want := int(math.Round(b.Time * 44100))
		got := want - 200
		for math.Abs(float64(s.Left[got])) < 1e-3 {
			got++
		}
		if got != want {
			t.Errorf("click %d starts on sample %d, want %d", i+1, got, want)
		}
	}
	if beats[4].InBar != 1 || beats[7].InBar != 4 || math.Abs(beats[8].Time-0.5-3.75) > 1e-9 {
		t.Errorf("an eight at 128 BPM is %.3f s, want 3.750", beats[8].Time-0.5)
	}
}

// What is written as WAV is what ffmpeg reads.
func TestWAVAgainstFFmpeg(t *testing.T) {
	if _, err := exec.LookPath("ffmpeg"); err != nil {
		t.Skip("SKIPPED: ffmpeg is not installed, so nothing outside reads the WAV files (apt install ffmpeg)")
	}
	s := Render(Song{BPM: 140, Rate: 22050, Seed: 2, Sections: []Section{{Part: Drop, Counts: 4}}})
	for channels := 1; channels <= 2; channels++ {
		var wav bytes.Buffer
		if err := s.WriteWAV(&wav, channels); err != nil {
			t.Fatal(err)
		}
		cmd := exec.Command("ffmpeg", "-v", "error", "-i", "-", "-f", "f32le", "-")
		cmd.Stdin = &wav
		raw, err := cmd.Output()
		if err != nil {
			t.Fatal(err)
		}
		if want := 4 * channels * len(s.Left); len(raw) != want {
			t.Fatalf("%d channels: ffmpeg reads %d bytes, want %d", channels, len(raw), want)
		}
		worst := 0.0
		for i := range s.Left {
			x := math.Float32frombits(binary.LittleEndian.Uint32(raw[4*channels*i:]))
			want := s.Left[i]
			if channels == 1 {
				want = (s.Left[i] + s.Right[i]) / 2
			}
			worst = max(worst, math.Abs(float64(x-want)))
		}
		// Half a step of rounding, and up to one because full scale is written
		// as 32767 and read as 32768.
		if worst > 1.5/32768 {
			t.Errorf("%d channels: a sample is %.6f off, want at most 1.5 steps of 16 bits", channels, worst)
		}
	}
}
