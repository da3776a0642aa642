package outline_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"onphrase/plan"
	"onphrase/plan/outline"
)

// shelf makes songs of so many tempos, each of a dozen phrases with a bridge
// among them.
func shelf(bpm ...float64) []outline.Song {
	var all []outline.Song
	for i, v := range bpm {
		s := outline.Song{File: fmt.Sprintf("%02d song.mp3", i+1), BPM: v, Loudness: -9 - float64(i)}
		for n := range 12 {
			s.Phrases = append(s.Phrases, 32)
			if n == 4 && i%2 == 1 {
				s.Phrases = append(s.Phrases, 16)
			}
		}
		all = append(all, s)
	}
	return all
}

func written(t *testing.T, o outline.Options, songs []outline.Song) (string, *plan.Class) {
	t.Helper()
	text, err := outline.Write(o, songs)
	if err != nil {
		t.Fatal(err)
	}
	c, problems := plan.Parse("class.yaml", []byte(text))
	for _, p := range problems {
		t.Errorf("%s", p.In("class.yaml"))
	}
	if t.Failed() {
		t.Log(text)
	}
	return text, c
}

// Whatever its length and music, a class to begin with can be read, has its
// ends, and is work in whole phrases for about as long as its slot.
func TestWriteParses(t *testing.T) {
	for minutes := outline.Least; minutes <= outline.Most; minutes += 5 {
		for name, songs := range map[string][]outline.Song{
			"many songs": shelf(124, 126, 128, 130, 132, 136, 140, 145, 118, 96, 92, 110), "one song": shelf(128), "none": nil,
		} {
			t.Run(fmt.Sprintf("%d, %s", minutes, name), func(t *testing.T) {
				_, c := written(t, outline.Options{Minutes: minutes}, songs)
				if c.Slot != float64(60*minutes) || c.Parts[0].Kind != plan.WarmUp ||
					c.Parts[len(c.Parts)-1].Kind != plan.CoolDown {
					t.Errorf("slot %g, from %s to %s", c.Slot, c.Parts[0].Kind, c.Parts[len(c.Parts)-1].Kind)
				}
				for _, p := range c.Parts {
					for _, it := range p.Items {
						if n := counts(it); n == 0 || n%32 != 0 {
							t.Errorf("%s takes %d counts", it.Name, n)
						}
					}
				}
			})
		}
	}
}

func counts(it plan.Item) int {
	switch w := it.Work.(type) {
	case plan.Block:
		return w.Counts()
	case plan.Set:
		return w.Counts()
	case plan.Interval:
		return w.Time.Counts * w.Sides.Times()
	case plan.Pause:
		return w.Time.Counts
	}
	return 0
}

// The parts together are as long as the slot without its slack.
func TestSections(t *testing.T) {
	for _, minutes := range []int{20, 30, 45, 50, 60, 90} {
		all, err := outline.Sections(minutes)
		if err != nil {
			t.Fatal(err)
		}
		sum := 0.0
		for _, s := range all {
			sum += s.Minutes
		}
		if math.Abs(sum-float64(minutes-2)) > 0.01 {
			t.Errorf("%d minutes: parts of %g", minutes, sum)
		}
	}
	for _, minutes := range []int{-1, 0, 19, 91} {
		if _, err := outline.Sections(minutes); err == nil {
			t.Errorf("%d minutes are a class", minutes)
		}
	}
}

// Songs go where their tempo suits; each is played once while there are others.
func TestSongsSuit(t *testing.T) {
	_, c := written(t, outline.Options{Minutes: 30}, shelf(124, 126, 128, 129, 132, 134, 136, 140, 145, 118, 110, 96, 92))
	played := map[string]int{}
	for _, p := range c.Parts {
		for _, track := range p.Tracks {
			if played[track.File]++; played[track.File] > 1 {
				t.Errorf("%s plays %d times", track.File, played[track.File])
			}
		}
	}
	if last := c.Parts[len(c.Parts)-1]; last.Tracks[0].File != "12 song.mp3" {
		t.Errorf("the cool-down is on %v", last.Tracks)
	}
}

// Where a song does not suit or plays again, the file says so.
func TestRemarks(t *testing.T) {
	text, _ := written(t, outline.Options{Minutes: 30, Name: `Spring "wild" #2`, Music: `music\spring`}, shelf(128))
	for _, want := range []string{
		"it plays in a part above already", "a song of up to 100 BPM would suit better", `class: "Spring \"wild\" #2"`,
		`music: "music\\spring"`,
	} {
		if !strings.Contains(text, want) {
			t.Errorf("%s is not in\n%s", want, text)
		}
	}
	text, _ = written(t, outline.Options{Minutes: 30}, nil)
	if !strings.Contains(text, "write the names of yours in their place") {
		t.Errorf("nothing says that the songs are still to be found:\n%s", text)
	}
}

// Names that mean something to YAML are only names.
func TestOddNames(t *testing.T) {
	songs := shelf(128, 126, 140, 96)
	for i, name := range []string{`it's "live" [2021] #1.mp3`, "*a: b, {c}.mp3", "ä\\é \u2028x\ty.mp3", "- no.mp3"} {
		songs[i].File = name
	}
	_, c := written(t, outline.Options{Minutes: 45}, songs)
	have := map[string]bool{}
	for _, p := range c.Parts {
		for _, track := range p.Tracks {
			have[track.File] = true
		}
	}
	if !have[songs[0].File] || !have[songs[1].File] || !have[songs[3].File] {
		t.Errorf("the names are now %v", have)
	}
}

func TestNothingToTeachTo(t *testing.T) {
	if _, err := outline.Write(outline.Options{Minutes: 30},
		[]outline.Song{{File: "a.mp3", BPM: 128, Phrases: []int{16, 8}}}); err == nil {
		t.Error("a song without phrases is taken")
	}
}
