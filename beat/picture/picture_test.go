package picture

import (
	"bytes"
	"encoding/xml"
	"io"
	"strings"
	"testing"

	"onphrase/beat"
)

func track() beat.Track {
	t := beat.Track{File: "a.mp3", Title: `Salt & <Rope> "7"`, BPM: 120, Meter: 4, Duration: 61,
		Outline: beat.Outline{-6, 0, -14}, Unsteady: [][2]float64{{30, 34}}}
	for i := range 112 {
		t.Beats = append(t.Beats, 4+float64(i)/2)
	}
	at := 0
	for _, n := range []int{32, 32, 20, 4, 16} {
		t.Phrases = append(t.Phrases, beat.Phrase{Time: t.Beats[at], Beat: at, Counts: n, Kind: beat.KindOf(n)})
		at += n
	}
	beat.Suggest(t.Phrases)
	return t
}

// texts draws a track and gives all text of the picture, in order; that it is
// XML is checked by reading it.
func texts(t *testing.T, tr beat.Track) (string, []string) {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, tr); err != nil {
		t.Fatal(err)
	}
	src := b.String()
	var list []string
	for dec := xml.NewDecoder(&b); ; {
		token, err := dec.Token()
		if err == io.EOF {
			return src, list
		}
		if err != nil {
			t.Fatalf("%v\n%s", err, src)
		}
		if text, ok := token.(xml.CharData); ok && strings.TrimSpace(string(text)) != "" {
			list = append(list, string(text))
		}
	}
}

// Every phrase has its number, the time of its count 1 and its length; the odd
// ones a torn edge and their kind; the unsteady stretch is hatched.
func TestWrite(t *testing.T) {
	src, list := texts(t, track())
	all := strings.Join(list, "|")
	for _, want := range []string{
		`Salt & <Rope> "7"`, "lead-in|0:00.0|", "|1|0:04.0|32 counts|", "|2|0:20.0|32 counts|", "|3|0:36.0|short 20 counts|",
		"|4|0:46.0|tag 4|hold|", "|5|0:48.0|bridge 16 counts|finish|", "suggested use (common practice)", "3 not 32 counts",
		"after|0:56.0",
	} {
		if !strings.Contains(all, want) {
			t.Errorf("%q is missing in %s", want, all)
		}
	}
	// The lead-in of 4 s is drawn by the count; the second half second, its
	// loudest, is as high as the drawing goes: 54 px.
	if want := "H42.0L42.0 "; !strings.Contains(src, want) {
		t.Errorf("no outline: %s", want)
	}
	if n := strings.Count(src, `stroke-width="4"/>`); n != 3 {
		t.Errorf("%d torn edges, want 3", n)
	}
	if n := strings.Count(src, `fill="url(#loose)"`); n != 1 {
		t.Errorf("%d hatched stretches, want 1: it lies in phrase 2 alone", n)
	}
}

// A phrase is as long as it has counts, and no line is longer than four.
func TestPlaces(t *testing.T) {
	list := places(track())
	for i, p := range list {
		if p.phrase && p.w > leastWidth && p.w != perCount*float64(len(p.times)-1) {
			t.Errorf("%s: %g wide with %d counts", p.name, p.w, len(p.times)-1)
		}
		if p.x+p.w > margin+lineCounts*perCount+1 {
			t.Errorf("%s ends at %g", p.name, p.x+p.w)
		}
		if i > 0 && p.y == list[i-1].y && p.x != list[i-1].x+list[i-1].w {
			t.Errorf("%s begins at %g, %s ends at %g", p.name, p.x, list[i-1].name, list[i-1].x+list[i-1].w)
		}
	}
}

func TestHostile(t *testing.T) {
	tr := track()
	tr.Title, tr.File = "\x00</svg><script>\xff", "b.mp3"
	tr.Phrases = nil
	src, _ := texts(t, tr)
	if strings.Contains(src, "<script>") {
		t.Error(src)
	}
}
