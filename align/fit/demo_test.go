package fit

import (
	"bytes"
	"io/fs"
	"strconv"
	"strings"
	"testing"

	"onphrase/align"
	"onphrase/beat"
	"onphrase/plan"
	"onphrase/samples"
)

// demoJob is the demo class on the counts and phrases that its music was made
// from.
func demoJob(t testing.TB) Job {
	t.Helper()
	src, err := fs.ReadFile(samples.Demo(), "class.yaml")
	if err != nil {
		t.Fatal(err)
	}
	class, problems := plan.Parse("class.yaml", src)
	for _, p := range problems {
		t.Error(p.In("class.yaml"))
	}
	j := Job{File: "class.yaml", Src: src, Known: plan.Builtin(), Tracks: map[string]beat.Track{}, Prices: Usual()}
	for _, p := range class.Parts {
		for _, ref := range p.Tracks {
			j.Tracks[ref.File] = trueTrack(t, ref.File)
		}
	}
	return j
}

// trueTrack reads the truth beside a demo track.
func trueTrack(t testing.TB, file string) beat.Track {
	t.Helper()
	tr := beat.Track{File: file, Meter: 4, Trust: beat.Trust{Beat: 1, Count1: 1, Phrase: 1}}
	stem := strings.TrimSuffix(file, ".mp3")
	for _, f := range truthLines(t, stem+".beats") {
		at, _ := strconv.ParseFloat(f[0], 64)
		in, _ := strconv.Atoi(f[1])
		tr.Beats, tr.BeatInBar = append(tr.Beats, at), append(tr.BeatInBar, in)
	}
	for _, f := range truthLines(t, stem+".phrases") {
		at, _ := strconv.ParseFloat(f[0], 64)
		n, _ := strconv.Atoi(f[1])
		i := 0
		for i < len(tr.Beats) && tr.Beats[i] < at-0.02 {
			i++
		}
		n = min(n, len(tr.Beats)-i)
		tr.Phrases = append(tr.Phrases, beat.Phrase{Time: at, Beat: i, Counts: n, Kind: beat.KindOf(n), Trust: 1})
	}
	n := len(tr.Beats)
	tr.BPM = 60 * float64(n-1) / (tr.Beats[n-1] - tr.Beats[0])
	tr.Duration = tr.Beats[n-1] + 60/tr.BPM
	return tr
}

func truthLines(t testing.TB, name string) [][]string {
	t.Helper()
	b, err := fs.ReadFile(samples.Truth(), name)
	if err != nil {
		t.Fatal(err)
	}
	var out [][]string
	for _, l := range strings.Split(strings.TrimSpace(string(b)), "\n") {
		out = append(out, strings.Fields(l))
	}
	return out
}

func TestDemo(t *testing.T) {
	j := demoJob(t)
	res, err := Search(j)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range res.Before.Findings {
		if ours(f) {
			t.Logf("before: %s %s, %s: %s", f.Severity, f.Code, f.Part, f.Message)
		}
	}
	for i, p := range res.Plans {
		t.Logf("plan %d: price %d cost %d", i+1, p.Price, p.Cost)
		for _, c := range p.Changes {
			t.Logf("  %s, line %d: %s (%d)", c.Part, c.Line, c.Words, c.Price)
		}
		for _, f := range p.After.Findings {
			if ours(f) && f.Severity != align.Note {
				t.Errorf("left: %s %s, %s: %s", f.Severity, f.Code, f.Part, f.Message)
			}
		}
		for _, f := range p.New {
			t.Logf("  new: %s %s, %s: %s", f.Severity, f.Code, f.Part, f.Message)
		}
	}
}

// The same class and music give the same plans, whatever order maps are in.
func TestSameAgain(t *testing.T) {
	j := demoJob(t)
	first, err := Search(j)
	if err != nil {
		t.Fatal(err)
	}
	again, err := Search(j)
	if err != nil {
		t.Fatal(err)
	}
	for i := range first.Plans {
		if !bytes.Equal(first.Plans[i].Src, again.Plans[i].Src) {
			t.Errorf("plan %d is another one", i+1)
		}
	}
}
