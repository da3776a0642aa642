package fit

import (
	"flag"
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
var classes = flag.Uint64("classes", 10, "how many random classes each property is held against")

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
			fmt.Fprintf(&b, "      - superset: pair\n        rounds: 2\n        do:\n          - %s\n          - %s\n",
				randomItem(r, 8), randomItem(r, 8))
		case 2:
			b.WriteString("      - {interval: march, series: 3 x 20s/10s}\n")
		}
	}
	j.Src = []byte(b.String())
	return j
}

func forClasses(t *testing.T, do func(t *testing.T, j Job)) {
	t.Helper()
	for seed := range *classes {
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
				rest := j.Prices.left(slices.DeleteFunc(slices.Clone(before.Findings),
					func(f align.Finding) bool { return f.Part == class.Parts[i].Name }))
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

// A class that has been fitted stays as it is, also where something is left
// that no change is worth removing.
func TestFittedStays(t *testing.T) {
	fitted, left, further := 0, 0, 0
	forClasses(t, func(t *testing.T, j Job) {
		res, err := Search(j)
		if err != nil {
			t.Fatal(err)
		}
		best := res.Plans[0]
		once, err := j.once()
		if err != nil {
			t.Fatal(err)
		}
		if len(best.Changes) > len(once.Plans[0].Changes) {
			further++
			t.Logf("after a first plan of %d changes it goes on to %d", len(once.Plans[0].Changes), len(best.Changes))
			if best.Cost >= once.Plans[0].Cost {
				t.Errorf("went on from a cost of %d to %d\n%s", once.Plans[0].Cost, best.Cost, j.Src)
			}
		}
		inFile(t, j.Src, best.Changes)
		j.Src = best.Src
		res, err = Search(j)
		if err != nil {
			t.Fatal(err)
		}
		if more := len(res.Plans[0].Changes); more > 0 {
			t.Errorf("%d changes of a fitted class\n%s", more, j.Src)
		}
		if j.Prices.left(best.After.Findings) == 0 {
			fitted++
		} else {
			left++
		}
	})
	t.Logf("%d fitted with nothing left, %d with something left; %d went on after a first plan", fitted, left, further)
	if uint64(min(fitted, left)) < *classes/5 {
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

// inFile holds changes to lines of the file that have what they are about.
func inFile(t *testing.T, src []byte, changes []Change) {
	t.Helper()
	lines := strings.Split(string(src), "\n")
	for _, c := range changes {
		text := ""
		if c.Line >= 1 && c.Line <= len(lines) {
			text = lines[c.Line-1]
		}
		item, _, _ := strings.Cut(c.Words, ":")
		named := strings.Contains(text, item) || c.Kind == Start || c.Kind == BPM || c.Kind == Hold || c.Kind == Swap ||
			c.Kind == OnPhrase
		if !named || strings.HasPrefix(strings.TrimSpace(text), "#") {
			t.Errorf("line %d is %q, which %q is not about\n%s", c.Line, text, c.Words, src)
		}
	}
}

// Where a first plan leaves something that further changes are worth, they are
// part of the plan: the reps of one set are changed twice.
func TestGoesOn(t *testing.T) {
	const seed = 14
	j := randomJob(seed)
	once, err := j.once()
	if err != nil {
		t.Fatal(err)
	}
	all, err := Search(j)
	if err != nil {
		t.Fatal(err)
	}
	first, best := once.Plans[0], all.Plans[0]
	if len(best.Changes) <= len(first.Changes) || best.Cost >= first.Cost {
		t.Errorf("%d changes at a cost of %d, after %d at %d", len(best.Changes), best.Cost, len(first.Changes), first.Cost)
	}
	if best.Price+j.Prices.left(best.After.Findings)+j.Prices.caused(best.New) != best.Cost {
		t.Errorf("a price of %d and a cost of %d", best.Price, best.Cost)
	}
	inFile(t, j.Src, best.Changes)
	t.Logf("%+v", best.Changes)
}
