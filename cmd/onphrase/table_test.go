package main

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

func TestTable(t *testing.T) {
	library := &table{cols: []column{{head: "file", least: 6}, {head: "BPM", right: true}, {head: "suits", least: 8}}}
	library.add("slow-ferry.mp3", "96.0", "cool-down, stretch")
	library.add("日本.mp3", "128.0", "–")
	library.add("x.mp3", "no steady beat found")
	tests := []struct {
		name   string
		screen int
		want   string
	}{
		{"wide", 60, `
file              BPM  suits
slow-ferry.mp3   96.0  cool-down, stretch
日本.mp3        128.0  –
x.mp3           no steady beat found
`},
		{"narrow: long cells go on below", 34, `
file            BPM  suits
slow-          96.0  cool-down,
ferry.mp3            stretch
日本.mp3      128.0  –
x.mp3         no steady beat found
`},
		{"too narrow for its least widths", 5, `
file      BPM  suits
slow-    96.0  cool-
ferry.         down,
mp3            stretch
日本.m  128.0  –
p3
x.mp3   no
        stead
        y
        beat
        found
`},
	}
	for _, tt := range tests {
		var b strings.Builder
		if err := library.write(&b, tt.screen); err != nil {
			t.Fatal(err)
		}
		if diff := cmp.Diff(strings.TrimPrefix(tt.want, "\n"), b.String()); diff != "" {
			t.Errorf("%s: -want +got\n%s", tt.name, diff)
		}
	}
}

func TestWrap(t *testing.T) {
	tests := []struct {
		text string
		most int
		want []string
	}{
		{"", 10, []string{""}},
		{"warm-up", 10, []string{"warm-up"}},
		{"warm-up, strength", 8, []string{"warm-up,", "strength"}},
		{"warm-up, strength", 9, []string{"warm-up,", "strength"}},
		{"unbreakable", 4, []string{"unbr", "eaka", "ble"}},
		{"日本語の曲", 4, []string{"日本", "語の", "曲"}},
		{"日", 1, []string{"日"}},
	}
	for _, tt := range tests {
		if diff := cmp.Diff(tt.want, wrap(tt.text, tt.most)); diff != "" {
			t.Errorf("wrap(%q, %d): -want +got\n%s", tt.text, tt.most, diff)
		}
	}
}

// Widths after Unicode Standard Annex 11; the examples are ours.
func TestColumns(t *testing.T) {
	for text, want := range map[string]int{"": 0, "tag": 3, "日本": 4, "été": 3, "e\u0301te\u0301": 3, "ｗ": 2, "–": 1} {
		if got := columns(text); got != want {
			t.Errorf("columns(%q) = %d, want %d", text, got, want)
		}
	}
}

func TestClip(t *testing.T) {
	for _, tt := range []struct {
		text string
		most int
		want string
	}{
		{"short.mp3", 20, "short.mp3"},
		{"a very long title of a song.mp3", 13, "a very…ng.mp3"},
		{"日本語の曲名です.mp3", 9, "日本…mp3"},
	} {
		got := clip(tt.text, tt.most)
		if got != tt.want || columns(got) > tt.most {
			t.Errorf("clip(%q, %d) = %q (%d columns), want %q", tt.text, tt.most, got, columns(got), tt.want)
		}
	}
}

func TestClock(t *testing.T) {
	for _, tt := range []struct {
		seconds       float64
		clock, moment string
	}{
		{0, "0:00", "0:00.0"},
		{59.96, "1:00", "1:00.0"},
		{192.04, "3:12", "3:12.0"},
		{3599.7, "1:00:00", "59:59.7"},
		{5400, "1:30:00", "90:00.0"},
	} {
		if c, m := clock(tt.seconds), moment(tt.seconds); c != tt.clock || m != tt.moment {
			t.Errorf("%v s: %s and %s, want %s and %s", tt.seconds, c, m, tt.clock, tt.moment)
		}
	}
}
