package fit

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"onphrase/align"
	"onphrase/beat"
	"onphrase/plan"
)

// song is a steady track of phrases with those lengths.
func song(file string, bpm float64, lengths ...int) beat.Track {
	t := beat.Track{File: file, BPM: bpm, Meter: 4, Trust: beat.Trust{Beat: 1, Count1: 1, Phrase: 1}}
	const one = 0.5 // [s]
	for _, n := range lengths {
		i := len(t.Beats)
		t.Phrases = append(t.Phrases, beat.Phrase{Time: one + float64(i)*60/bpm, Beat: i, Counts: n, Kind: beat.KindOf(n),
			Trust: 1})
		for range n {
			at := len(t.Beats)
			t.Beats, t.BeatInBar = append(t.Beats, one+float64(at)*60/bpm), append(t.BeatInBar, at%4+1)
		}
	}
	t.Duration = one + float64(len(t.Beats))*60/bpm
	return t
}

// oddSong is a song with tags and bridges at random.
func oddSong(r *rand.Rand, phrases int) beat.Track {
	var lengths []int
	for range phrases {
		lengths = append(lengths, []int{32, 32, 32, 32, 4, 16, 8, 40}[r.IntN(8)])
	}
	return song("a.mp3", 100+float64(r.IntN(40)), lengths...)
}

// randomItem is an item of a small class, in YAML.
func randomItem(r *rand.Rand, reps int) string {
	moves := []string{"squat", "deadlift", "bent-over row", "push-up", "lateral raise"}
	rhythms := []string{"1-1", "2-2", "4-4", "3-1"}
	extra := []string{"", "", "", ", sides: both", ", on: phrase", ", setup: 8 counts"}[r.IntN(6)]
	switch r.IntN(8) {
	case 0:
		return fmt.Sprintf("{pause: water, time: %d counts}", 8+8*r.IntN(2))
	case 1:
		return fmt.Sprintf("{interval: plank, time: %ds}", 5+5*r.IntN(2))
	case 2:
		return fmt.Sprintf("{set: %s, reps: \"%d x 2-2, %d x %s\"}", moves[r.IntN(5)], 1+r.IntN(reps), 1+r.IntN(reps),
			rhythms[r.IntN(4)])
	}
	return fmt.Sprintf("{set: %s, reps: %d x %s%s}", moves[r.IntN(5)], 1+r.IntN(reps), rhythms[r.IntN(4)], extra)
}

// smallJob is a class of one part of a few items, on one song.
func smallJob(r *rand.Rand, items, reps, phrases int) Job {
	var b strings.Builder
	b.WriteString("onphrase: 1\nclass: Small # by chance\nparts:\n  - part: One\n    kind: strength\n    tracks: [a.mp3]\n")
	if r.IntN(3) == 0 {
		fmt.Fprintf(&b, "    start: phrase %d\n", 1+r.IntN(phrases))
	}
	b.WriteString("    do: # in this order\n")
	for range items {
		fmt.Fprintf(&b, "      - %s\n", randomItem(r, reps))
	}
	return Job{File: "class.yaml", Src: []byte(b.String()), Known: plan.Builtin(),
		Tracks: map[string]beat.Track{"a.mp3": oddSong(r, phrases)}, Prices: Usual()}
}

// brute is the least that a class can cost, found by making every
// combination of changes in the class itself and asking Build.
type brute struct {
	job     Job
	choices *choices
	best    int
	tried   int
}

func (b *brute) judge(part plan.Part, price int) {
	if price >= b.best {
		return
	}
	b.tried++
	m := align.Build(&plan.Class{Catalog: b.choices.class.Catalog, Parts: []plan.Part{part}}, b.job.Tracks)
	b.best = min(b.best, price+b.job.Prices.left(m.Findings))
}

// everything tries every tempo and every start, and from there on every
// change of the items.
func (b *brute) everything() {
	for _, w := range b.choices.variants {
		for start := 0; start <= w.trial.Phrases(); start++ {
			part, price := *b.choices.part, w.price
			part.Items = nil
			for _, m := range w.tweaks {
				part.BPM, _ = strconv.ParseFloat(m.detail, 64)
			}
			if start > 0 {
				part.Start = plan.Start{Phrase: start}
				was := b.choices.variants[0].trial.PhraseOf(b.choices.part.Start)
				price += b.job.Prices[Start] + b.job.Prices[Phrase]*abs(start-was)
			}
			b.from(part, 0, price)
		}
	}
}

// from tries everything from item k on.
func (b *brute) from(part plan.Part, k, price int) {
	if k == len(b.choices.entries) {
		b.judge(part, price)
		return
	}
	b.withHolds(part, k, price, func(part plan.Part, price int) {
		b.options(part, k, price, func(p plan.Part, price int) { b.from(p, k+1, price) })
		if !b.choices.entries[k].swaps {
			return
		}
		b.options(part, k+1, price+b.job.Prices[Swap], func(p plan.Part, price int) {
			b.withHolds(p, k, price, func(p plan.Part, price int) {
				b.options(p, k, price, func(p plan.Part, price int) { b.from(p, k+2, price) })
			})
		})
	})
}

// withHolds goes on without a hold before item k and with every hold there
// may be: where the part has got to, Build says.
func (b *brute) withHolds(part plan.Part, k, price int, next func(plan.Part, int)) {
	next(part, price)
	if b.choices.entries[k].place == noHold {
		return
	}
	in, left := b.at(part)
	for n := 1; n <= left; n++ {
		if (in-1+n)%8 != 0 && n != left {
			continue
		}
		hold := plan.Item{Name: "hold", Work: plan.Pause{Time: plan.Length{Counts: n}, Kind: plan.Rest}}
		if (in-1)%8 != 0 {
			hold.On = plan.OnCount
		}
		p := part
		p.Items = append(slices.Clone(p.Items), hold)
		next(p, price+b.job.Prices[Hold]+b.job.Prices[Held]*((n+7)/8))
	}
}

// at is where the part has got to: the number of the count in its phrase, and
// the counts to the end of the phrase.
func (b *brute) at(part plan.Part) (in, left int) {
	trial, _ := align.NewTrial(b.choices.class, &part, b.job.Tracks)
	state, _ := trial.Begin(part.Start)
	for i := range part.Items {
		state, _ = trial.Next(state, &part.Items[i])
	}
	return state.InPhrase, state.Left
}

func (b *brute) options(part plan.Part, k, price int, next func(plan.Part, int)) {
	for _, o := range b.choices.entries[k].options {
		p := part
		p.Items = append(slices.Clone(p.Items), o.item)
		cost := price + o.price
		if o.waits {
			cost += b.job.Prices.held(b.waited(p))
		}
		if cost < b.best {
			next(p, cost)
		}
	}
}

// waited is how many counts the last item of a part waits.
func (b *brute) waited(part plan.Part) int {
	m := align.Build(&plan.Class{Catalog: b.choices.class.Catalog, Parts: []plan.Part{part}}, b.job.Tracks)
	n, last := 0, part.Items[len(part.Items)-1]
	end := len(m.Rows)
	for i := end - 1; i >= 0; i-- {
		if r := m.Rows[i]; r.Kind == align.HoldRow {
			n += r.Counts
		} else if !r.Kind.Work() || r.Line != last.Pos.Line {
			break
		}
	}
	return n
}

// fewer leaves choices a few options of every item, so that all combinations
// can be gone through.
func (r *choices) fewer(by *rand.Rand, most int) {
	for k := range r.entries {
		s := &r.entries[k]
		for len(s.options) > most {
			i := 1 + by.IntN(len(s.options)-1)
			s.options, s.items = slices.Delete(s.options, i, i+1), slices.Delete(s.items, i, i+1)
		}
	}
}

// The search finds the least that any combination of changes costs.
func TestOptimalAgainstBruteForce(t *testing.T) {
	const cases = 24
	changed, left, tried := 0, 0, 0
	for n := range uint64(cases) {
		r := rand.New(rand.NewPCG(n, 7))
		items := 2 + int(n%4)/3
		j := smallJob(r, items, 6, 3)
		class, problems := plan.Parse(j.File, j.Src)
		if len(problems) > 0 {
			t.Fatal(problems[0].In("class.yaml"))
		}
		choices, _ := newChoices(class, 0, j.Tracks, j.Prices)
		choices.fewer(r, 10/items)
		got := newSearch(choices, []effort{forBest, forOthers}[n%2]).found()
		b := &brute{job: j, choices: choices, best: got.cost + 1}
		b.everything()
		if b.best != got.cost {
			t.Errorf("class %d: search %d, brute force %d (of %d classes)\n%s", n, got.cost, b.best, b.tried, j.Src)
		}
		tried += b.tried
		if len(got.tweaks) > 0 {
			changed++
		}
		if got.left > 0 {
			left++
		}
	}
	t.Logf("%d of %d classes are changed, %d keep findings; %d combinations", changed, cases, left, tried)
	if changed < cases/3 {
		t.Error("the cases say little")
	}
}
