package library

import (
	"math/rand/v2"
	"slices"
	"testing"
)

func TestByNature(t *testing.T) {
	for _, want := range [][]string{
		{"00 intro.mp3", "01 tide.mp3", "2 wave.mp3", "10 shore.mp3"},
		{"track 2", "track 10", "Track 11"},
		{"side 01", "side 1", "side 02", "side 2b", "side 3"},
		{"élan", "elm", "Emma", "eve"},
		{"a", "A1", "a2", "aa"},
		{"9", "18446744073709551616", "18446744073709551617"}, // more than 64 bits
		{"", "0", "00", "1"},
		{"x", "x\xff", "y"}, // a name that is not UTF-8
	} {
		for range 20 {
			got := slices.Clone(want)
			rand.Shuffle(len(got), func(i, j int) { got[i], got[j] = got[j], got[i] })
			slices.SortFunc(got, ByNature)
			if !slices.Equal(got, want) {
				t.Errorf("got %q, want %q", got, want)
				break
			}
		}
	}
}

func FuzzByNature(f *testing.F) {
	f.Add("track 2", "Track 10", "track 02")
	f.Add("é", "e\u0301", "\xff")
	f.Fuzz(func(t *testing.T, a, b, c string) {
		if ByNature(a, b) != -ByNature(b, a) {
			t.Errorf("%q and %q: not the same both ways", a, b)
		}
		if (ByNature(a, b) == 0) != (a == b) {
			t.Errorf("%q and %q: alike", a, b)
		}
		if ByNature(a, b) <= 0 && ByNature(b, c) <= 0 && ByNature(a, c) > 0 {
			t.Errorf("%q, %q, %q: in a circle", a, b, c)
		}
	})
}
