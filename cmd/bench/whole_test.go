package main

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"onphrase/beat/decode"
)

// A song is heard, scored and printed as a whole: plain drums and a bass, whose
// counts are known because we put them there.
func TestAPlainSongIsMeasured(t *testing.T) {
	dir := t.TempDir()
	writeDrums(t, filepath.Join(dir, "a.wav"), 124, 96, 0)
	var truth strings.Builder
	for k := range 96 {
		fmt.Fprintf(&truth, "%.6f\t%d\n", 0.2+float64(k)*60/124, k%4+1)
	}
	for name, text := range map[string]string{
		"a.beats":      truth.String(),
		"a.sections":   fmt.Sprintf("%.4f\tChorus\n", 0.2+32*60.0/124),
		"manifest.tsv": "id\tsource\tstyle\tbpm\tbpm_kind\tmaker\tvocals\na\tours\tdrums\t124\tconstant\twe\tnone\n",
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	songs, err := findSongs(dir)
	if err != nil {
		t.Fatal(err)
	}
	r, err := measure(songs[0], decode.Auto, nil)
	if err != nil {
		t.Fatal(err)
	}
	if r.F < 0.97 || r.CMLt < 0.97 || !r.Acc1 || r.bpmError > 0.1 || r.miss != "" {
		t.Errorf("F %.3f, CMLt %.3f, %.2f BPM, miss %q", r.F, r.CMLt, r.track.BPM, r.miss)
	}
	if len(r.found) != 1 {
		t.Errorf("the chorus is not held against it: %+v", r.found)
	}
	var out bytes.Buffer
	report(&out, []result{r}, 1)
	if got := line(t, out.String(), "ours"); got[0] != "1" || got[1] != fmt.Sprintf("%.3f", r.F) {
		t.Errorf("its row: %v", got)
	}
}

// What is left out is left out: without the grid counts are where they are
// heard, and not on one line.
func TestAStageIsLeftOut(t *testing.T) {
	dir := t.TempDir()
	file := filepath.Join(dir, "a.wav")
	writeDrums(t, file, 124, 64, 0.008)
	s := song{file: file, beats: []float64{0.2, 0.2 + 60.0/124}, position: []int{1, 2}, bpm: 124}
	whole, err := measure(s, decode.Auto, nil)
	if err != nil {
		t.Fatal(err)
	}
	without, err := measure(s, decode.Auto, mustParse(t, "grid"))
	if err != nil {
		t.Fatal(err)
	}
	if spread(whole.track.Beats) > 2e-4 || spread(without.track.Beats) < 2e-3 {
		t.Errorf("the counts' distances spread %.6f s with the grid and %.6f s without",
			spread(whole.track.Beats), spread(without.track.Beats))
	}
}

func TestAnalyseAlone(t *testing.T) {
	file := filepath.Join(t.TempDir(), "a.wav")
	writeDrums(t, file, 124, 64, 0)
	for _, c := range []struct {
		first, want float64
		deaf        bool
	}{{0, 0.2 + 64*60.0/124 + 1, true}, {12.5, 12.5, true}, {12.5, 12.5, false}} {
		var out bytes.Buffer
		if err := analyseAlone(&out, file, decode.Auto, c.first, c.deaf); err != nil {
			t.Fatal(err)
		}
		length, peak, err := readAlone(out.String())
		if err != nil || math.Abs(length-c.want) > 0.01 || peak <= 0 {
			t.Errorf("%+v: %.2f s, %.0f MiB, %v", c, length, peak, err)
		}
	}
	if err := analyseAlone(io.Discard, "none.wav", decode.Auto, 0, true); err == nil {
		t.Error("a file that is not there is analysed")
	}
}

func TestFilesForTheCost(t *testing.T) {
	dir := folder(t, map[string]string{"small": "x", "large": "xxxx", "middle": "xx"})
	var songs []song
	for i := range 13 {
		songs = append(songs, song{file: fmt.Sprint(i)})
	}
	if got := strings.Join(some(songs), " "); got != "0 2 4 6 8 10" {
		t.Errorf("some of 13: %s", got)
	}
	if got := strings.Join(some(songs[:2]), " "); got != "0 1" {
		t.Errorf("some of 2: %s", got)
	}
	var files []string
	for _, name := range []string{"small", "large", "middle", "none"} {
		files = append(files, filepath.Join(dir, name))
	}
	if got := filepath.Base(largest(files)); got != "large" {
		t.Errorf("the largest is %s", got)
	}
}

func TestCostsAreRatios(t *testing.T) {
	trials := []trial{{name: "whole", cpu: 6}, {name: "decoding", cpu: 1.5}, {name: aubioName, cpu: 4}}
	var out bytes.Buffer
	writeCosts(&out, trials, 3)
	for name, want := range map[string]string{
		"whole": "2.00 1.00 1.50", "decoding": "0.50 0.25 0.38", aubioName: "1.33 0.67 1.00",
	} {
		if got := strings.Join(line(t, out.String(), name), " "); got != want {
			t.Errorf("%s: %s, not %s", name, got, want)
		}
	}
	out.Reset()
	writeCosts(&out, trials[:2], 3)
	if got := strings.Join(line(t, out.String(), "decoding"), " "); got != "0.50 0.25 -" {
		t.Errorf("without the other program: %s", got)
	}
}

// spread is how far the distances of neighbours lie apart [s].
func spread(beats []float64) float64 {
	low, high := math.Inf(1), 0.0
	for i := 1; i < len(beats); i++ {
		low, high = min(low, beats[i]-beats[i-1]), max(high, beats[i]-beats[i-1])
	}
	return high - low
}

// writeDrums writes a bass drum on every count, a snare on 2 and 4, hats on the
// eighths and a bass note on 1: 16-bit mono at 44.1 kHz, counts from 0.2 s on,
// by chance up to loose [s] early or late.
func writeDrums(t *testing.T, file string, bpm float64, counts int, loose float64) {
	t.Helper()
	const rate = 44100
	x := make([]float64, int((0.2+float64(counts)*60/bpm+1)*rate))
	noise := rand.New(rand.NewPCG(1, 2))
	hit := func(at, gain, decay float64, wave func(t float64) float64) {
		for i := int(at * rate); i < len(x) && i < int((at+5*decay)*rate); i++ {
			s := float64(i)/rate - at
			x[i] += gain * math.Exp(-s/decay) * wave(s)
		}
	}
	hiss := func(float64) float64 { return 2*noise.Float64() - 1 }
	for k := range counts {
		at := 0.2 + float64(k)*60/bpm + loose*(2*noise.Float64()-1)
		hit(at, 0.5, 0.08, func(s float64) float64 { return math.Sin(2 * math.Pi * (50*s + 3*(1-math.Exp(-s/0.02)))) })
		if k%2 == 1 {
			hit(at, 0.25, 0.05, hiss)
		}
		if k%4 == 0 {
			root := 55 * math.Exp2(float64([]int{0, 5, 7, 3}[k/4%4])/12)
			hit(at, 0.2, 0.5, func(s float64) float64 { return math.Sin(2 * math.Pi * root * s) })
		}
		hit(at, 0.05, 0.02, hiss)
		hit(at+30/bpm, 0.08, 0.02, hiss)
	}
	head := []byte("RIFF\x00\x00\x00\x00WAVEfmt ")
	head = binary.LittleEndian.AppendUint32(head, 16)
	head = append(head, 1, 0, 1, 0)
	head = binary.LittleEndian.AppendUint32(head, rate)
	head = binary.LittleEndian.AppendUint32(head, 2*rate)
	head = append(head, 2, 0, 16, 0)
	head = append(head, "data"...)
	head = binary.LittleEndian.AppendUint32(head, uint32(2*len(x)))
	for _, v := range x {
		head = binary.LittleEndian.AppendUint16(head, uint16(int16(32767*math.Tanh(v))))
	}
	binary.LittleEndian.PutUint32(head[4:], uint32(len(head)-8))
	if err := os.WriteFile(file, head, 0o644); err != nil {
		t.Fatal(err)
	}
}
