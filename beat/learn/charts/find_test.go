package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// The sound of a chart is what it names, the parts beside it, or the only sound
// there; where that is not clear there is none.
func TestSoundsOfACharts(t *testing.T) {
	root := t.TempDir()
	for _, name := range []string{
		"named/Kite.OGG", "named/other.ogg", "parts/song.ogg", "parts/guitar.ogg", "parts/preview.ogg", "alone/x.mp3",
		"two/x.mp3", "two/y.mp3", "band/songs/moth/Inst.ogg", "band/songs/moth/Voices-b.ogg", "band/songs/moth/Voices.ogg",
	} {
		file := filepath.Join(root, name)
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		write(t, file, "")
	}
	const band = "band/songs/moth/Inst.ogg band/songs/moth/Voices-b.ogg band/songs/moth/Voices.ogg"
	for _, c := range []struct{ chart, names, want string }{
		{"named/a.sm", "kite.ogg", "named/Kite.OGG"},
		{"named/a.sm", "missing.ogg", ""},
		{"parts/notes.chart", "other.ogg", "parts/guitar.ogg parts/song.ogg"},
		{"named/notes.chart", "kite.ogg", "named/Kite.OGG"},
		{"alone/a.osu", "", "alone/x.mp3"},
		{"two/a.osu", "", ""},
		{"band/data/moth/moth-hard.json", "", band},
		{"band/data/moth/easy.json", "", band},
		{"band/data/bee/bee.json", "", ""},
	} {
		chart := even(120, 0)
		chart.Audio = c.names
		var got []string
		for _, f := range soundsOf(root, filepath.Join(root, c.chart), chart) {
			got = append(got, strings.TrimPrefix(f, root+"/"))
		}
		if strings.Join(got, " ") != c.want {
			t.Errorf("%s, which names %q: %v, not %q", c.chart, c.names, got, c.want)
		}
	}
}

// Of several charts of one song the one that marks most is taken.
func TestTheChartWithMostMarks(t *testing.T) {
	root := t.TempDir()
	for name, kiai := range map[string]string{"a": "0", "b": "1", "c": "0"} {
		text := "[General]\nAudioFilename: x.mp3\n[TimingPoints]\n0,500,4,2,0,60,1,0\n8000,-100,4,2,0,60,0," + kiai + "\n"
		write(t, filepath.Join(root, name+".osu"), text)
	}
	write(t, filepath.Join(root, "x.mp3"), "")
	write(t, filepath.Join(root, "d.json"), "[1]") // not every .json is a chart
	got, err := findPairs(root, source{name: "we+songs"})
	if err != nil || len(got) != 1 {
		t.Fatalf("%d pairs, %v", len(got), err)
	}
	if filepath.Base(got[0].file) != "b.osu" || len(got[0].chart.Sections) != 1 {
		t.Errorf("taken is %s", got[0].file)
	}
}

func TestDescription(t *testing.T) {
	s := song{pair: pair{id: "we_kite", file: "kite.ssc", chart: even(120, 0)}, bpm: 120}
	s.source = source{name: "we+songs", part: "learn", licence: "ours", use: "learn", vocals: "none", maker: "we"}
	if got := s.describe(); !strings.HasPrefix(got, "learn/we_kite: we+songs (ssc), licence: ours, by we, 120.00 BPM") ||
		!strings.HasSuffix(got, "vocals: none, may be learnt from") {
		t.Error(got)
	}
	s.source.use, s.chart.Lyrics = "measure", true
	if got := s.describe(); !strings.HasSuffix(got, "vocals: sung, only to measure") {
		t.Error(got)
	}
}

func TestBadSources(t *testing.T) {
	head := "repository\tpart\tlicence\tuse\tvocals\tmaker\tdoubt\n"
	for _, row := range []string{
		"a\tlearn", "a\tteach\tx\tlearn\tx\tx\t", "a\tlearn\tx\tsell\tx\tx\t", "a\tlearn\tx\tlearn\tx\tx\tnone",
	} {
		file := filepath.Join(t.TempDir(), "sources.tsv")
		write(t, file, head+row+"\n")
		if _, err := readSources(file); err == nil || !strings.Contains(err.Error(), "sources.tsv:2") {
			t.Errorf("%q: %v", row, err)
		}
	}
}
