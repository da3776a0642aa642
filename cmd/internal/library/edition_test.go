package library

import (
	"math"
	"testing"

	"onphrase/beat"
)

// heardAs is a song of so many phrases at 120 BPM as it is heard in a file that
// begins so much later, every count a little off.
func heardAs(phrases int, later, wobble float64) beat.Track {
	t := beat.Track{BPM: 120}
	for i := range phrases * beat.PhraseLen {
		at := later + 1 + float64(i)*0.5 + wobble*math.Sin(float64(i))
		if i%beat.PhraseLen == 0 {
			t.Phrases = append(t.Phrases, beat.Phrase{Time: at, Beat: i, Counts: beat.PhraseLen})
		}
		t.Beats = append(t.Beats, at)
	}
	return t
}

// lost is a song in whose file the first phrase was not heard.
func lost(t beat.Track) beat.Track {
	t.Phrases = t.Phrases[1:]
	return t
}

// Another file of a song is known by where its counts and phrases fall,
// whatever was cut from its beginning or end; other music is not.
func TestCompare(t *testing.T) {
	song := heardAs(10, 0, 0)
	tag := heardAs(10, 0, 0)
	for i := range tag.Phrases[3:] { // a bridge of 16 counts before the fourth
		tag.Phrases[3+i].Time += 8
	}
	other := heardAs(10, 0, 0)
	for i := range other.Beats {
		other.Beats[i] *= 0.97
	}
	for i := range other.Phrases {
		other.Phrases[i].Time *= 0.97
	}
	for name, c := range map[string]struct {
		is    beat.Track
		alike bool
		fits  bool
		later float64
	}{
		"the same":          {song, true, true, 0},
		"heard differently": {heardAs(10, 0.004, 0.006), true, true, 0.004},
		"padded":            {heardAs(10, 0.05, 0), true, false, 0.05},
		"a count later":     {heardAs(10, 0.5, 0.004), true, false, 0.5},
		"silence in front":  {heardAs(10, 3.2, 0.004), true, false, 3.2},
		"trimmed":           {heardAs(10, -0.7, 0), true, false, -0.7},
		"fades earlier":     {heardAs(9, 0, 0), true, true, 0},
		"other tempo":       {other, false, false, 0},
		"other phrases":     {tag, false, false, 0},
		"first phrase lost": {lost(heardAs(10, -0.7, 0)), true, false, -0.7},
		"half of it":        {heardAs(5, 0, 0), false, false, 0},
		"nothing heard":     {beat.Track{}, false, false, 0},
	} {
		got := Compare(song, c.is)
		if got.Alike != c.alike || got.Fits() != c.fits || math.Abs(got.Later-c.later) > 0.005 {
			t.Errorf("%s: %+v, want %+v", name, got, c)
		}
	}
}
