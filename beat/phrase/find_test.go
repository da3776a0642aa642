package phrase_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/beat/bar"
	"onphrase/beat/phrase"
	"onphrase/beat/spectral"
)

// section is a stretch of an invented song: how many bars of which material.
// The same letter sounds the same each time, apart from a little noise.
type section struct {
	material byte
	bars     int
}

const silence = '-' // material in which no count is heard

// perform makes up the sound of a song in 4/4, beat by beat.
func perform(song []section) (*bar.Sound, bar.Bars) {
	const meter = 4
	noise := rand.New(rand.NewPCG(1, 2))
	s := &bar.Sound{}
	b := bar.Bars{Meter: meter}
	for _, sec := range song {
		for i := range sec.bars * meter {
			// Each material has its own rhythm and colour, the same in every
			// bar, and its own chords, which come round every 4 bars.
			row := func(n, cycle int) []float64 {
				own := rand.New(rand.NewPCG(uint64(sec.material), uint64(n*cycle+i%cycle)))
				x := make([]float64, n)
				for j := range x {
					x[j] = own.Float64() + 0.05*noise.Float64()
				}
				return x
			}
			onset := row(len(spectral.Ranges)*bar.Parts, meter)
			if sec.material == silence {
				clear(onset)
			}
			s.Onset = append(s.Onset, onset)
			s.Level = append(s.Level, row(20, meter))
			s.Chroma = append(s.Chroma, unit(row(12, 4*meter)))
			s.Bass = append(s.Bass, unit(row(12, 4*meter)))
			b.BeatInBar = append(b.BeatInBar, i%meter+1)
		}
	}
	return s, b
}

func unit(x []float64) []float64 {
	sum := 0.0
	for _, v := range x {
		sum += v * v
	}
	for i := range x {
		x[i] /= math.Sqrt(sum)
	}
	return x
}

// counts are the lengths of phrases, after the counts before the first.
func counts(phrases []phrase.Phrase) []int {
	if len(phrases) == 0 {
		return nil
	}
	out := []int{phrases[0].Beat}
	for _, p := range phrases {
		out = append(out, p.Counts)
	}
	return out
}

func TestFind(t *testing.T) {
	for _, c := range []struct {
		name string
		song []section
		want []int // lead-in, then phrases [counts]
	}{
		{"plain", []section{{'v', 8}, {'c', 8}, {'v', 8}, {'c', 8}}, []int{0, 32, 32, 32, 32}},
		{"a tag of 4 counts", []section{{'v', 8}, {'c', 8}, {'t', 1}, {'v', 8}, {'c', 8}}, []int{0, 32, 32, 4, 32, 32}},
		{"a tag of 8 counts", []section{{'v', 8}, {'c', 8}, {'t', 2}, {'v', 8}, {'c', 8}}, []int{0, 32, 32, 8, 32, 32}},
		{"a bridge of 16", []section{{'v', 8}, {'c', 8}, {'v', 8}, {'c', 8}, {'b', 4}, {'c', 8}},
			[]int{0, 32, 32, 32, 32, 16, 32}},
		{"a short phrase of 24", []section{{'v', 8}, {'c', 8}, {'b', 6}, {'v', 8}, {'c', 8}}, []int{0, 32, 32, 24, 32, 32}},
		{"a section of 64 is two phrases", []section{{'v', 8}, {'c', 16}, {'v', 8}}, []int{0, 32, 32, 32, 32}},
		{"an intro of 16", []section{{'i', 4}, {'v', 8}, {'c', 8}, {'v', 8}, {'c', 8}}, []int{0, 16, 32, 32, 32, 32}},
		{"a lead-in without counts", []section{{silence, 5}, {'v', 8}, {'c', 8}, {'v', 8}}, []int{20, 32, 32, 32}},
		{"counts after the last sound", []section{{'v', 8}, {'c', 8}, {'v', 8}, {silence, 3}}, []int{0, 32, 32, 32}},
		{"a breakdown in which no count is heard", []section{{'v', 8}, {'c', 8}, {silence, 8}, {'c', 8}},
			[]int{0, 32, 32, 32, 32}},
		{"nothing", nil, nil},
		{"one bar", []section{{'v', 1}}, []int{0, 4}},
	} {
		sound, bars := perform(c.song)
		if d := cmp.Diff(c.want, counts(phrase.Find(sound, bars))); d != "" {
			t.Errorf("%s (-want +got):\n%s", c.name, d)
		}
	}
}

// A whole phrase is two quadruple hypermeasures: hypermeter counts bars as
// meter counts beats, and where neither the grouping nor the accents break it,
// bars go in fours and pairs of fours; an added or dropped bar starts the count
// afresh after it.
//
// Ref: Cone 1968, "Musical Form and Musical Performance"; Lerdahl & Jackendoff
// 1983, "A Generative Theory of Tonal Music" (metrical well-formedness);
// Rothstein 1989, "Phrase Rhythm in Tonal Music" (expansions). From memory.
func TestHypermeter(t *testing.T) {
	const hypermeasure = 4 * 4 // bars, counts in each
	sound, bars := perform([]section{{'v', 8}, {'c', 8}, {'v', 8}, {'t', 1}, {'c', 8}, {'v', 8}})
	at := []int{0, 2 * hypermeasure, 4 * hypermeasure, 6 * hypermeasure, 6*hypermeasure + 4, 8*hypermeasure + 4}
	var got []int
	for _, p := range phrase.Find(sound, bars) {
		got = append(got, p.Beat)
	}
	if d := cmp.Diff(at, got); d != "" {
		t.Errorf("phrases start at beats (-want +got):\n%s", d)
	}
}

// Counts before the first bar move every phrase and nothing else.
func TestPickUpShiftsThePhrases(t *testing.T) {
	sound, bars := perform([]section{{'v', 8}, {'c', 8}, {'t', 1}, {'v', 8}})
	want := phrase.Find(sound, bars)
	for n := 1; n < 4; n++ {
		late := &bar.Sound{
			Onset: append(sound.Onset[:n:n], sound.Onset...), Level: append(sound.Level[:n:n], sound.Level...),
			Chroma: append(sound.Chroma[:n:n], sound.Chroma...), Bass: append(sound.Bass[:n:n], sound.Bass...),
		}
		lateBars := bar.Bars{Meter: 4}
		for i := range late.Len() {
			lateBars.BeatInBar = append(lateBars.BeatInBar, (i-n+4)%4+1)
		}
		got := phrase.Find(late, lateBars)
		for i := range got {
			got[i].Beat -= n
		}
		if d := cmp.Diff(counts(want), counts(got)); d != "" {
			t.Errorf("%d counts of pick-up (-want +got):\n%s", n, d)
		}
	}
}

// The phrases follow each other without gaps and hold whole bars, whatever
// the sound: trust is a probability.
func TestPhrasesOfNoise(t *testing.T) {
	for seed := range uint64(30) {
		r := rand.New(rand.NewPCG(seed, 5))
		var song []section
		for range 1 + r.IntN(8) {
			song = append(song, section{byte('a' + r.IntN(20)), 1 + r.IntN(20)})
		}
		sound, bars := perform(song)
		found := phrase.Find(sound, bars)
		for i, p := range found {
			if i > 0 && p.Beat != found[i-1].Beat+found[i-1].Counts {
				t.Errorf("%v: phrase %d starts at beat %d, the one before ends at %d", song, i, p.Beat, found[i-1].Beat+
					found[i-1].Counts)
			}
			if p.Counts < 4 || p.Counts > 32 || p.Counts%4 != 0 || bars.BeatInBar[p.Beat] != 1 {
				t.Errorf("%v: phrase of %d counts from beat %d", song, p.Counts, p.Beat)
			}
			if !(p.Trust >= 0 && p.Trust <= 1) {
				t.Errorf("%v: trust %g", song, p.Trust)
			}
		}
	}
}

func TestEnergyIsRelativeToTheSong(t *testing.T) {
	for _, gain := range []float64{0, 3} { // log level: a gain adds to all of it
		sound, bars := perform([]section{{'v', 8}, {'m', 8}, {'c', 8}})
		for i, row := range sound.Level {
			for j := range row {
				row[j] += gain + float64(i/32)
			}
		}
		var got []phrase.Energy
		for _, p := range phrase.Find(sound, bars) {
			got = append(got, p.Energy)
		}
		if d := cmp.Diff([]phrase.Energy{phrase.Low, phrase.Medium, phrase.High}, got); d != "" {
			t.Errorf("gain %g (-want +got):\n%s", gain, d)
		}
	}
}

// A three-hour class in one file must not take minutes or gigabytes.
func BenchmarkFindThreeHours(b *testing.B) {
	var song []section
	for i := range 700 {
		song = append(song, section{byte(i), 8})
	}
	sound, bars := perform(song)
	b.ReportAllocs()
	for b.Loop() {
		phrase.Find(sound, bars)
	}
}

// A tag repeats what its phrase ends with or brings something of its own; the
// phrases on either side are whole. It stands where the change of sound says,
// not one phrase earlier.
func TestTagStandsWhereItSounds(t *testing.T) {
	for _, c := range []struct {
		name string
		song []section
		want []int
	}{
		{"after the second phrase", []section{{'A', 8}, {'B', 8}, {'T', 1}, {'A', 8}, {'B', 8}}, []int{0, 32, 32, 4, 32, 32}},
		{"after the first", []section{{'A', 8}, {'T', 1}, {'B', 8}, {'A', 8}, {'B', 8}}, []int{0, 32, 4, 32, 32, 32}},
	} {
		if diff := cmp.Diff(c.want, counts(phrase.Find(perform(c.song)))); diff != "" {
			t.Errorf("%s (-want +got)\n%s", c.name, diff)
		}
	}
}

// In 6/8 she counts on to eight over four bars of two; phrases are of 32
// counts there, too, and start on the half of a pair where the music does.
func TestBarsOfTwo(t *testing.T) {
	for _, pickUp := range []int{0, 2} {
		s, b := perform([]section{{'A', 8}, {'B', 8}, {'A', 8}, {'B', 8}})
		for i, p := range b.BeatInBar {
			if p == 1 {
				s.Onset[i][0]++ // a kick on every second count 1
			}
		}
		if pickUp > 0 { // the song sets in half way through a bar of four
			s.Onset, s.Level, s.Chroma, s.Bass = s.Onset[pickUp:], s.Level[pickUp:], s.Chroma[pickUp:], s.Bass[pickUp:]
			b.BeatInBar = b.BeatInBar[pickUp:]
		}
		b.Meter = 2
		for i, p := range b.BeatInBar {
			b.BeatInBar[i] = (p-1)%2 + 1
		}
		got := counts(phrase.Find(s, b))
		want := []int{0, 32, 32, 32, 32}
		if pickUp > 0 {
			want = []int{2, 28, 32, 32, 32} // its first bar of four is not whole
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("set in on count %d (-want +got)\n%s", pickUp+1, diff)
		}
	}
}
