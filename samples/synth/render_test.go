package synth

import (
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"math"
	"runtime"
	"testing"
)

// Each kick of a plain intro starts at the time its count has in the truth.
func TestKicksAreOnTheTruth(t *testing.T) {
	tests := map[string]Song{
		"plain":   {BPM: 126},
		"slow":    {BPM: 70, Seed: 1},
		"fast":    {BPM: 150, Seed: 2, Style: Trance},
		"32 kHz":  {BPM: 104, Seed: 3, Style: Dembow, Rate: 32000},
		"drift":   {BPM: 118, Seed: 4, Feel: Feel{Drift: 0.05}},
		"swing":   {BPM: 100, Seed: 5, Feel: Feel{Swing: 1}},
		"pick-up": {BPM: 128, Seed: 6, PickUp: 3},
		"ambient": {BPM: 122, Seed: 7, Ambient: 3.21},
		"lead":    {BPM: 122, Seed: 8, Lead: 0.37},
	}
	for name, s := range tests {
		// Of an intro, the first four bars have nothing but kick and hats.
		s.Sections = []Section{{Part: Intro, Counts: 16}}
		sound, truth := Render(s), s.Truth()
		skip := s.PickUp
		if s.Ambient > 0 {
			skip++ // the first kick stands in the ring of what came before
		}
		for i, b := range truth.Beats[skip : len(truth.Beats)-4] { // a fill covers the last bar
			if late := onset(sound, b.Time) - b.Time; math.Abs(late) > 0.002 {
				t.Errorf("%s: the kick of count %d starts %+.1f ms from the truth, want within 2", name, i+1, 1000*late)
			}
		}
	}
}

// onset is where the loudest rise within 40 ms of a time begins [s]: the first
// sample to reach a fifth of the peak there.
func onset(s *Sound, at float64) float64 {
	const reach = 0.04
	from := max(0, int((at-reach)*float64(s.Rate)))
	to := min(len(s.Left), int((at+reach)*float64(s.Rate)))
	peak := 0.0
	for _, x := range s.Left[from:to] {
		peak = max(peak, math.Abs(float64(x)))
	}
	for i, x := range s.Left[from:to] {
		if math.Abs(float64(x)) > peak/5 {
			return float64(from+i) / float64(s.Rate)
		}
	}
	return math.NaN()
}

// Every style makes sound that is loud enough, never clips and never stops.
func TestEveryStyleSounds(t *testing.T) {
	for _, style := range Styles() {
		s := Song{Title: string(style), BPM: 124, Style: style, Seed: 9, Rate: 16000}
		if style == Waltz {
			s.Meter = 3
		}
		s.Sections = []Section{{Part: Verse, Counts: 24}, {Part: Drop, Counts: 24}, {Part: Breakdown, Counts: 24}}
		sound, truth := Render(s), s.Truth()
		for i := range sound.Left {
			if l, r := float64(sound.Left[i]), float64(sound.Right[i]); !(math.Abs(l) <= ceiling+1e-6 && math.Abs(r) <= ceiling+
				1e-6) {
				t.Fatalf("%s: sample %d is %g, %g, above the ceiling %g", style, i, l, r, ceiling)
			}
		}
		verse, drop := level(sound, 0, truth.Phrases[1].Time), level(sound, truth.Phrases[1].Time, truth.Phrases[2].Time)
		if drop < verse+0.7 || drop < -20 {
			t.Errorf("%s: the drop has %.1f dB, the verse %.1f: no contrast", style, drop, verse)
		}
		for at := 0.0; at+0.5 < truth.End; at += 0.25 {
			if level(sound, at, at+0.5) < -50 {
				t.Errorf("%s: silence at %.2f s", style, at)
			}
		}
	}
}

// level is the mean power between two times [dB of full scale].
func level(s *Sound, from, to float64) float64 {
	sum, n := 0.0, 0
	for i := int(from * float64(s.Rate)); i < int(to*float64(s.Rate)) && i < len(s.Left); i++ {
		sum += float64(s.Left[i])*float64(s.Left[i]) + float64(s.Right[i])*float64(s.Right[i])
		n += 2
	}
	return 10 * math.Log10(sum/float64(n)+1e-12)
}

// The same song twice is the same sound; another seed is another.
func TestDeterminism(t *testing.T) {
	s := Song{BPM: 120, Rate: 16000, Style: Funk, Seed: 11, Feel: Feel{Jitter: 0.01, Drift: 0.02},
		Sections: []Section{{Part: Drop, Counts: 16}, {Part: Build, Counts: 16}}}
	first, second := fingerprint(Render(s)), fingerprint(Render(s))
	if first != second {
		t.Error("the same song gave two sounds")
	}
	s.Seed++
	if fingerprint(Render(s)) == first {
		t.Error("another seed gave the same sound")
	}
	// Other processors may fuse a multiplication with an addition, as the Go
	// specification allows, and so round otherwise.
	const golden = "793ad960789cd741"
	if runtime.GOARCH == "amd64" && first != golden {
		t.Errorf("the sound has the fingerprint %s, want %s: if the generator was changed on purpose, make the demo anew and set this", first, golden)
	}
}

// fingerprint is a hash of the samples at 16 bits.
func fingerprint(s *Sound) string {
	h := sha256.New()
	for i := range s.Left {
		var b [4]byte
		binary.LittleEndian.PutUint16(b[:], uint16(int16(s.Left[i]*math.MaxInt16)))
		binary.LittleEndian.PutUint16(b[2:], uint16(int16(s.Right[i]*math.MaxInt16)))
		h.Write(b[:])
	}
	return hex.EncodeToString(h.Sum(nil))[:16]
}
