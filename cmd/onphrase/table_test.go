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
