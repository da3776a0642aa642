package tap

import (
	"bytes"
	"fmt"
	"math"

	"gopkg.in/yaml.v3"

	"onphrase/beat"
)

// Ending is how the name of a file ends that keeps a Song.
const Ending = ".song.yaml"

// Song is music that she has no file of, as she tapped it in: from a stream, or
// from the studio's own player. It is kept as a small file beside her music:
//
//	onphrase: 1
//	song: Evening Tide
//	bpm: 126.4
//	phrases: [32, 32, 16, 32]   # counts of each, from the first count 1 on
type Song struct {
	Title   string
	BPM     float64 // [1/min]
	Phrases []int   // counts
}

// The bounds of a song: what is beyond is a slip of the finger.
const (
	leastBPM, mostBPM = 60, 240
	mostPhrases       = 1000
	mostCounts        = 512 // of a phrase
)

const songVersion = 1

// songFile is a Song as it is kept.
type songFile struct {
	Onphrase int     `yaml:"onphrase"`
	Song     string  `yaml:"song"`
	BPM      float64 `yaml:"bpm"`
	Phrases  []int   `yaml:"phrases,flow"`
}

// ParseSong reads a kept song. The error says what is wrong with the file.
func ParseSong(src []byte) (Song, error) {
	var f songFile
	dec := yaml.NewDecoder(bytes.NewReader(src))
	dec.KnownFields(true)
	if err := dec.Decode(&f); err != nil {
		return Song{}, fmt.Errorf("not a song that was tapped in: %w", err)
	}
	if f.Onphrase != songVersion {
		return Song{}, fmt.Errorf("onphrase: %d: this program reads version %d", f.Onphrase, songVersion)
	}
	s := Song{Title: f.Song, BPM: f.BPM, Phrases: f.Phrases}
	return s, s.Check()
}

// Check says what is wrong with a song, in words for the person who taps.
func (s Song) Check() error {
	switch {
	case s.Title == "":
		return fmt.Errorf("the song has no name yet")
	case !(s.BPM >= leastBPM && s.BPM <= mostBPM):
		return fmt.Errorf("%.0f BPM: between %d and %d is possible", s.BPM, leastBPM, mostBPM)
	case len(s.Phrases) == 0:
		return fmt.Errorf("no phrase has been counted off yet")
	case len(s.Phrases) > mostPhrases:
		return fmt.Errorf("%d phrases: at most %d are possible", len(s.Phrases), mostPhrases)
	}
	for i, n := range s.Phrases {
		if n < 1 || n > mostCounts {
			return fmt.Errorf("phrase %d has %d counts: 1 to %d are possible", i+1, n, mostCounts)
		}
	}
	return nil
}

// Bytes is the file of a song.
func (s Song) Bytes() ([]byte, error) {
	head := "# A song without a file, as it was tapped in. It may be edited.\n"
	body, err := yaml.Marshal(songFile{songVersion, s.Title, math.Round(100*s.BPM) / 100, s.Phrases})
	return append([]byte(head), body...), err
}

// Track is the song as every other: its counts are steady, from 0:00 on, where
// she tapped the first count 1. What she has counted off is certain.
func (s Song) Track(file string) beat.Track {
	t := beat.Track{
		File: file, Title: s.Title, BPM: s.BPM, Meter: barOf, Trust: beat.Trust{Beat: 1, Count1: 1, Phrase: 1},
		Corrected: true,
	}
	at := func(count int) float64 { return float64(count) * 60 / s.BPM }
	for _, counts := range s.Phrases {
		first := len(t.Beats)
		t.Phrases = append(t.Phrases, beat.Phrase{
			Time: at(first), Beat: first, Counts: counts, Kind: beat.KindOf(counts), Trust: 1, Energy: beat.Medium,
		})
		for i := range counts {
			t.Beats = append(t.Beats, at(first+i))
			t.BeatInBar = append(t.BeatInBar, i%barOf+1)
		}
	}
	t.Duration = at(len(t.Beats))
	beat.Suggest(t.Phrases)
	return t
}

// barOf is the bar in which a tapped song is counted.
const barOf = 4

// CountedOff are the phrases of a song whose starts were marked by taps [s], as
// whole counts of a pulse. The last mark is the end of the last phrase. A mark
// that is a count or less beside a whole phrase means the whole phrase: the
// thumb is not as exact as the song.
func CountedOff(p Pulse, marks []float64) []int {
	const slack = 1
	var phrases []int
	for i := 1; i < len(marks); i++ {
		n := int(math.Round((marks[i] - marks[i-1]) / p.Period))
		for _, usual := range []int{beat.PhraseLen, beat.PhraseLen / 2} {
			if n >= usual-slack && n <= usual+slack {
				n = usual
			}
		}
		if n > 0 {
			phrases = append(phrases, n)
		}
	}
	return phrases
}
