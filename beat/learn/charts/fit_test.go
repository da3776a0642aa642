package main

import (
	"encoding/binary"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"onphrase/beat/learn/charts/chart"
	"onphrase/beat/spectral"
)

// even is a chart of one tempo.
func even(bpm, first float64) *chart.Chart {
	return &chart.Chart{Anchors: []chart.Anchor{{Time: first, Period: 60 / bpm, Meter: 4}}}
}

// struck are onsets at the counts of a chart, each delayed, and quieter ones between.
func struck(c *chart.Chart, delay func(t float64) float64) onsets {
	o := onsets{curve: make([]float64, 100*spectral.OnsetRate), to: 99}
	for i := range o.curve {
		o.curve[i] = 0.2
	}
	hit := func(t, v float64) {
		k := t * spectral.OnsetRate
		for i := max(0, int(k)-4); i < min(len(o.curve), int(k)+6); i++ {
			o.curve[i] += v * max(0, 1-math.Abs(float64(i)-k)/2)
		}
	}
	for _, b := range c.Beats(0, 98) {
		hit(b.Time+delay(b.Time), 8)
		hit(b.Time+delay(b.Time)+c.Anchors[0].Period/2, 5)
	}
	return o
}

func TestOffsetIsFound(t *testing.T) {
	for _, ms := range []float64{-30, 0, 25, 60} {
		c := even(128, 0.7)
		got, share, reject := fitTo(c, struck(c, func(float64) float64 { return ms / 1000 }))
		if math.Abs(1000*got-ms) > 3 || share != 1 || reject != "" {
			t.Errorf("delayed by %g ms: found %.0f, share %.2f, %q", ms, 1000*got, share, reject)
		}
	}
}

func TestChartsThatDoNotFit(t *testing.T) {
	c := even(128, 0.7)
	for name, o := range map[string]onsets{
		"another tempo": struck(even(126.5, 0.7), func(float64) float64 { return 0 }),
		"a drift":       struck(c, func(t float64) float64 { return t * 0.003 }),
		"far beside":    struck(c, func(float64) float64 { return 0.13 }),
		"no onsets":     struck(even(128, 1e4), func(float64) float64 { return 0 }),
		"too short":     {curve: make([]float64, 1000), to: 9},
	} {
		if offset, share, reject := fitTo(c, o); reject == "" {
			t.Errorf("%s: taken, at %.0f ms with share %.2f", name, 1000*offset, share)
		}
	}
}

// The sound of the counts and of what lies between is told apart.
func TestBetweenTheCounts(t *testing.T) {
	c := even(128, 0.7)
	o := struck(c, func(float64) float64 { return 0.02 })
	if between(c, o, 0.02) {
		t.Error("a chart on its counts is taken for one between them")
	}
	if late := even(128, 0.7+30.0/128); !between(late, o, 0.02) {
		t.Error("a chart between its counts is taken for one on them")
	}
}

// A click track tells how far the onsets themselves are off: the truth of every
// song is moved by what is found.
func TestOnsetsAreInTime(t *testing.T) {
	file := filepath.Join(t.TempDir(), "clicks.wav")
	c := even(120, 0.25)
	writeClicks(t, file, c.Beats(0, 70))
	o, err := hear(file)
	if err != nil {
		t.Fatal(err)
	}
	offset, share, reject := fitTo(c, o)
	if math.Abs(offset) > 0.006 || share != 1 || reject != "" {
		t.Errorf("clicks are heard %.1f ms late, share %.2f, %q", 1000*offset, share, reject)
	}
}

// A set is made from a folder as it comes: charts by their kind, sounds of
// several parts mixed, the truth moved to where the sound is.
func TestSetIsMade(t *testing.T) {
	if _, err := exec.LookPath("ffmpeg"); err != nil {
		t.Skip("no ffmpeg")
	}
	root, out := t.TempDir(), t.TempDir()
	c := even(120, 0.03) // the sound comes 30 ms after the chart
	for _, dir := range []string{"our+band/data/moth", "our+band/songs/moth", "our+band/kite", "other+band/kite"} {
		if err := os.MkdirAll(filepath.Join(root, dir), 0o755); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range []string{
		"our+band/songs/moth/Inst", "our+band/songs/moth/Voices", "our+band/kite/kite", "other+band/kite/kite",
	} {
		wav := filepath.Join(root, name+".wav")
		writeClicks(t, wav, c.Beats(0, 70))
		ogg := filepath.Join(root, name+".ogg")
		if text, err := exec.Command("ffmpeg", "-v", "error", "-i", wav, ogg).CombinedOutput(); err != nil {
			t.Skipf("this ffmpeg writes no .ogg: %s", text)
		}
	}
	bar := `{"lengthInSteps":16,"mustHitSection":%t}`
	bars := []string{fmt.Sprintf(bar, false), fmt.Sprintf(bar, false), fmt.Sprintf(bar, true)}
	moth := `{"song":{"song":"Moth","bpm":120,"notes":[` + strings.Join(bars, ",") + `]}}`
	write(t, filepath.Join(root, "our+band/data/moth/moth-hard.json"), moth)
	for _, band := range []string{"our", "other"} {
		write(t, filepath.Join(root, band+"+band/kite/kite.sm"), "#TITLE:Kite;#MUSIC:kite.ogg;#OFFSET:0;#BPMS:0=120;")
	}
	copyTo := filepath.Join(root, "our+band/other/other.ogg") // a chart of another tempo: left out
	if err := os.MkdirAll(filepath.Dir(copyTo), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := copyFile(copyTo, filepath.Join(root, "our+band/kite/kite.ogg")); err != nil {
		t.Fatal(err)
	}
	write(t, filepath.Join(root, "our+band/other/other.sm"), "#TITLE:Other;#OFFSET:0;#BPMS:0=117;")
	list := filepath.Join(root, "sources.tsv")
	write(t, list, "repository\tpart\tlicence\tuse\tvocals\tmaker\tdoubt\n"+
		"our+band\tlearn\tours\tlearn\tnone\twe\t\nother+band\tchoose\tours\tmeasure\t?\tthey\t\n")
	if err := run(root, list, out, ""); err != nil {
		t.Fatal(err)
	}
	beats := readFile(t, filepath.Join(out, "learn/our_moth.beats"))
	var first float64
	var one int
	if _, err := fmt.Sscan(beats, &first, &one); err != nil || math.Abs(first-0.03) > 0.006 || one != 1 {
		t.Errorf("the first count is at %.4f s, count %d, not at 0.030: %v", first, one, err)
	}
	s := readFile(t, filepath.Join(out, "learn/our_moth.sections"))
	if !strings.HasSuffix(s, "\tturn 8\n") || !strings.HasPrefix(s, "4.03") {
		t.Errorf("sections %q", s)
	}
	m := readFile(t, filepath.Join(out, "learn/manifest.tsv"))
	if !strings.Contains(m, "our_kite\tour+band\tsm\t120.000\tconstant\t\twe\tnone\tlearn\tours\t") {
		t.Errorf("manifest:\n%s", m)
	}
	if left, err := filepath.Glob(filepath.Join(out, "learn/our_other.*")); err != nil || len(left) > 0 {
		t.Errorf("of a song that does not fit is left: %v, %v", left, err)
	}
	// A song that lies in two folders is taken once.
	if _, err := os.Stat(filepath.Join(out, "choose")); err == nil {
		t.Error("one song lies in two parts")
	}
}

func TestSourcesOfTheRepository(t *testing.T) {
	sources, err := readSources("sources.tsv")
	if err != nil {
		t.Fatal(err)
	}
	parts := map[string]string{}
	for _, s := range sources {
		if old, ok := parts[s.maker]; ok && old != s.part {
			t.Errorf("%s: in the parts %s and %s", s.maker, old, s.part)
		}
		parts[s.maker] = s.part
		if s.use == "learn" && s.part != "learn" {
			t.Errorf("%s may be learnt from, but lies in %s", s.name, s.part)
		}
	}
}

// writeClicks writes short noises, 16-bit mono at 22050 Hz.
func writeClicks(t *testing.T, file string, beats []chart.Beat) {
	t.Helper()
	const rate = 22050
	x := make([]int16, 71*rate)
	for _, b := range beats {
		from := int(b.Time * rate)
		for i := range rate / 20 {
			seed := uint32(from+i) * 2654435761
			x[from+i] = int16(float64(int16(seed>>16)) * 0.5 * math.Exp(-float64(i)/300))
		}
	}
	head := []byte("RIFF\x00\x00\x00\x00WAVEfmt ")
	head = binary.LittleEndian.AppendUint32(head, 16)
	for _, v := range []uint16{1, 1} {
		head = binary.LittleEndian.AppendUint16(head, v)
	}
	head = binary.LittleEndian.AppendUint32(head, rate)
	head = binary.LittleEndian.AppendUint32(head, 2*rate)
	for _, v := range []uint16{2, 16} {
		head = binary.LittleEndian.AppendUint16(head, v)
	}
	head = append(head, "data"...)
	head = binary.LittleEndian.AppendUint32(head, uint32(2*len(x)))
	for _, v := range x {
		head = binary.LittleEndian.AppendUint16(head, uint16(v))
	}
	binary.LittleEndian.PutUint32(head[4:], uint32(len(head)-8))
	if err := os.WriteFile(file, head, 0o644); err != nil {
		t.Fatal(err)
	}
}

func write(t *testing.T, file, text string) {
	t.Helper()
	if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}

func readFile(t *testing.T, file string) string {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	return string(data)
}
