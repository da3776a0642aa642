package fit

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"onphrase/align"
	"onphrase/beat"
	"onphrase/plan"
)

// classes is how many random classes each property is held against.
const classes = 10

// randomJob is a class of two parts with rounds, supersets and repeats.
func randomJob(seed uint64) Job {
	r := rand.New(rand.NewPCG(seed, 11))
	var b strings.Builder
	b.WriteString("onphrase: 1\nclass: Random   # by chance\n\nparts:\n")
	j := Job{File: "class.yaml", Known: plan.Builtin(), Tracks: map[string]beat.Track{}, Prices: Usual()}
	for p := range 2 {
		file := fmt.Sprintf("%c.mp3", 'a'+p)
		tr := oddSong(r, 10)
		tr.File = file
		j.Tracks[file] = tr
		fmt.Fprintf(&b, "  # part %d\n  - part: Part %d\n    kind: strength\n    tracks: [%s]\n", p, p, file)
		if r.IntN(8) == 0 {
			b.WriteString("    rounds: 2\n")
		}
		b.WriteString("    do:\n      - {set: goblet squat, reps: 8 x 2-2}\n")
		for i := range 2 + r.IntN(3) {
			if r.IntN(3) == 0 {
				fmt.Fprintf(&b, "      # item %d\n", i)
			}
			fmt.Fprintf(&b, "      - %s\n", randomItem(r, 16))
		}
		switch r.IntN(4) {
		case 0:
			b.WriteString("      - {repeat: goblet squat}\n")
		case 1:
			fmt.Fprintf(&b, "      - superset: pair\n        rounds: 2\n        do:\n          - %s\n          - %s\n", randomItem(r, 8), randomItem(r, 8))
		case 2:
			b.WriteString("      - {interval: march, series: 3 x 20s/10s}\n")
		}
	}
	j.Src = []byte(b.String())
	return j
}

func forClasses(t *testing.T, do func(t *testing.T, j Job)) {
	t.Helper()
	for seed := range uint64(classes) {
		if t.Run(fmt.Sprint("seed ", seed), func(t *testing.T) { do(t, randomJob(seed)) }); t.Failed() {
			return
		}
	}
}

func parsed(t testing.TB, src []byte) *plan.Class {
	t.Helper()
	c, problems := plan.Parse("class.yaml", src)
	for _, p := range problems {
		t.Fatalf("%s\n%s", p.In("class.yaml"), src)
	}
	return c
}

// What the search says of a part is what the checks say of the file with the
// changes: each plan removes what it claims to.
func TestChangesDoWhatTheySay(t *testing.T) {
	plans, removed, cuts := 0, 0, 0
	forClasses(t, func(t *testing.T, j Job) {
		class := parsed(t, j.Src)
		before := align.Build(class, j.Tracks)
		for i := range class.Parts {
			ways, cut := j.part(class, i)
			if cut {
				cuts++
			}
			for n, w := range ways {
				p, err := j.judge(before, w.changes)
				if err != nil {
					t.Fatalf("%v\n%s", err, j.Src)
				}
				// The other part stays as it is.
				rest := j.Prices.left(slices.DeleteFunc(slices.Clone(before.Findings), func(f align.Finding) bool { return f.Part == class.Parts[i].Name }))
				if got := p.Price + j.Prices.left(p.After.Findings) - rest; got != w.cost {
					t.Errorf("part %d, plan %d: the search says %d, the checks %d\n%s\n%s", i, n, w.cost, got, j.Src, p.Src)
				}
				plans++
				removed += len(p.Gone)
			}
		}
	})
	t.Logf("%d plans remove %d findings; %d parts have too many ways", plans, removed, cuts)
	if removed < plans/2 {
		t.Error("the cases say little")
	}
}

// A class that has been fitted, with nothing left to mend, stays as it is.
func TestFittedStays(t *testing.T) {
	fitted, left, again := 0, 0, 0
	forClasses(t, func(t *testing.T, j Job) {
		res, err := Search(j)
		if err != nil {
			t.Fatal(err)
		}
		best := res.Plans[0]
		j.Src = best.Src
		res, err = Search(j)
		if err != nil {
			t.Fatal(err)
		}
		more := len(res.Plans[0].Changes)
		if j.Prices.left(best.After.Findings) == 0 {
			fitted++
			if more > 0 {
				t.Errorf("%d changes of a fitted class\n%s", more, j.Src)
			}
			return
		}
		left++
		if more > 0 {
			again++
		}
	})
	t.Logf("%d fitted; of %d with something left, %d change again", fitted, left, again)
	if fitted < classes/5 {
		t.Error("the cases say little")
	}
}

// Lines that no change is about stay as they are, to the byte.
func TestOtherLinesStay(t *testing.T) {
	forClasses(t, func(t *testing.T, j Job) {
		res, err := Search(j)
		if err != nil {
			t.Fatal(err)
		}
		was := strings.SplitAfter(string(j.Src), "\n")
		for _, p := range res.Plans {
			touched := map[int]bool{}
			for _, c := range p.Changes {
				if c.Kind != Hold && c.Kind != Start && c.Kind != BPM {
					touched[c.Line] = true
				}
				if c.Kind == Swap || c.Kind == Start {
					return // lines move; or start: was there
				}
			}
			is := strings.SplitAfter(string(p.Src), "\n")
			for i, line := range was {
				if !touched[i+1] && !slices.Contains(is, line) {
					t.Errorf("line %d is gone: %q\n%s", i+1, line, p.Src)
				}
			}
		}
	})
}
