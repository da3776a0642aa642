package align

import (
	"math"
	"slices"
	"sort"

	"onphrase/beat"
	"onphrase/plan"
)

const eight = 8 // counts

// beatError is how far a count may be from its true place [s].
// Assumption: walkers match music within 5.3 +- 5.8 % (Perry et al. 2019, J
// Phys Act Health 16:1039-1046), so 20 ms, 4 % of a count at 120 BPM, is ample.
const beatError = 0.020

// grid is a track as it is taught: its counts and the phrases they fill.
// Counts are numbered from 0, the first one heard; phrases from 1, phrase 0
// being the pick-up before the first (often empty).
type grid struct {
	track   *beat.Track
	times   []float64 // of every count on the track's own timeline [s]
	phrases []phrase
	period  float64 // from count to count at the end of the track [s]
	bpm     float64 // counts a minute as taught, at the recorded tempo
	speed   float64 // 1 as recorded

	duration float64 // of the track [s]
}

// phrase is a run of counts as taught.
type phrase struct {
	first, counts int
	trust         float64
}

// newGrid gives the track as the part teaches it. The track must have beats.
func newGrid(t *beat.Track, p *plan.Part) *grid {
	g := &grid{track: t, times: t.Beats, phrases: heard(t), bpm: t.BPM, speed: 1}
	switch p.Taught {
	case plan.Half:
		g.halve()
	case plan.Double:
		g.double()
	}
	g.period = lastPeriod(g.times, g.bpm)
	if g.bpm <= 0 {
		g.bpm = 60 / g.period
	}
	g.speed = speed(p.BPM, g.bpm, t.BPM)
	g.duration = t.Duration
	if g.duration <= 0 {
		g.duration = g.time(len(g.times))
	}
	return g
}

// speed is how much faster than recorded a part is played that asks for bpm.
// A person may mean the counts she teaches or the beats she hears; nobody
// plays a track at half or double speed, so the nearer one is meant.
func speed(bpm, taught, heard float64) float64 {
	if bpm <= 0 {
		return 1
	}
	s := bpm / taught
	if h := bpm / heard; heard > 0 && math.Abs(math.Log(h)) < math.Abs(math.Log(s)) {
		return h
	}
	return s
}

// heard lists the track's phrases with the pick-up before and the tail after
// them, so that every count belongs to one.
func heard(t *beat.Track) []phrase {
	n := len(t.Beats)
	if len(t.Phrases) == 0 {
		one := max(0, slices.Index(t.BeatInBar, 1))
		return append([]phrase{{0, one, 0}}, cut(phrase{one, n - one, 0}, beat.PhraseLen)...)
	}
	out := []phrase{{0, t.Phrases[0].Beat, 0}}
	end := t.Phrases[0].Beat
	for i, p := range t.Phrases {
		next := min(p.Beat+p.Counts, n)
		if i+1 < len(t.Phrases) {
			next = t.Phrases[i+1].Beat
		}
		if next > p.Beat {
			out = append(out, phrase{p.Beat, next - p.Beat, p.Trust})
			end = next
		}
	}
	if end < n {
		out = append(out, cut(phrase{end, n - end, out[len(out)-1].trust}, beat.PhraseLen)...)
	}
	return out
}

// cut splits a phrase into pieces of at most the given number of counts.
func cut(p phrase, counts int) []phrase {
	var out []phrase
	for p.counts > 0 {
		c := min(counts, p.counts)
		out = append(out, phrase{p.first, c, p.trust})
		p.first, p.counts = p.first+c, p.counts-c
	}
	return out
}

// halve keeps every other count, so that count 1 of each phrase stays one.
// Two whole phrases heard in a row make one taught.
func (g *grid) halve() {
	var times []float64
	var out []phrase
	open := false // the last phrase is half of a whole one
	for n, p := range g.phrases {
		taught := phrase{len(times), (p.counts + 1) / 2, p.trust}
		from := p.first
		if n == 0 { // the pick-up counts down to count 1
			from += (p.counts) % 2
			taught.counts = p.counts / 2
		}
		for i := from; i < p.first+p.counts; i += 2 {
			times = append(times, g.times[i])
		}
		whole := n > 0 && p.counts == beat.PhraseLen
		if whole && open {
			out[len(out)-1].counts += taught.counts
			open = false
			continue
		}
		out, open = append(out, taught), whole
	}
	g.times, g.phrases, g.bpm = times, out, g.bpm/2
}

// double puts a count between every two. A whole phrase heard makes two.
func (g *grid) double() {
	n := len(g.times)
	last := lastPeriod(g.times, g.bpm)
	times := make([]float64, 0, 2*n)
	for i, t := range g.times {
		next := t + last
		if i+1 < n {
			next = g.times[i+1]
		}
		times = append(times, t, (t+next)/2)
	}
	out := []phrase{{0, 2 * g.phrases[0].counts, 0}}
	for _, p := range g.phrases[1:] {
		out = append(out, cut(phrase{2 * p.first, 2 * p.counts, p.trust}, beat.PhraseLen)...)
	}
	g.times, g.phrases, g.bpm = times, out, 2*g.bpm
}

// lastPeriod is the time from count to count at the end of the track [s]: the
// median over the last two phrases, so that no single count decides it.
func lastPeriod(times []float64, bpm float64) float64 {
	var steps []float64
	for i := max(1, len(times)-2*beat.PhraseLen); i < len(times); i++ {
		steps = append(steps, times[i]-times[i-1])
	}
	if len(steps) == 0 {
		return 60 / bpm
	}
	sort.Float64s(steps)
	return steps[len(steps)/2]
}

// time is when a count falls on the track's own timeline [s]. Counts before
// the first and after the last go on at the tempo next to them.
func (g *grid) time(i int) float64 {
	n := len(g.times)
	switch {
	case i < 0:
		return g.times[0] + float64(i)*g.firstPeriod()
	case i >= n:
		return g.times[n-1] + float64(i-n+1)*g.period
	}
	return g.times[i]
}

func (g *grid) firstPeriod() float64 {
	k := min(len(g.times)-1, beat.PhraseLen)
	if k < 1 {
		return g.period
	}
	return (g.times[k] - g.times[0]) / float64(k)
}

// index is the first count at or after a time.
func (g *grid) index(t float64) int {
	t -= beatError
	n := len(g.times)
	if n > 0 && t > g.times[n-1] {
		return n - 1 + int(math.Ceil((t-g.times[n-1])/g.period))
	}
	return sort.SearchFloat64s(g.times, t)
}

// nearest is the count nearest to a time.
func (g *grid) nearest(t float64) int {
	i := g.index(t)
	if i > 0 && t-g.time(i-1) < g.time(i)-t {
		return i - 1
	}
	return i
}

// end is the number of counts that sound whole before the music ends. The
// last one counts when at least half of it is there.
func (g *grid) end() int {
	n := len(g.times)
	for n > 0 && g.time(n)-g.period/2 > g.duration {
		n--
	}
	return n
}

// position is where a count is among the phrases.
type position struct {
	phrase int // from 1; 0 before the first
	count  int // in its phrase, from 1
	left   int // counts to the end of the phrase, this one included
	trust  float64
}

// at says where a count is. Past the music, phrases of 32 counts go on.
func (g *grid) at(i int) position {
	last := g.phrases[len(g.phrases)-1]
	if end := last.first + last.counts; i >= end {
		k := (i - end) / beat.PhraseLen
		in := (i - end) % beat.PhraseLen
		return position{len(g.phrases) + k, in + 1, beat.PhraseLen - in, 0}
	}
	n := sort.Search(len(g.phrases), func(n int) bool {
		return g.phrases[n].first+g.phrases[n].counts > i
	})
	p := g.phrases[n]
	return position{n, i - p.first + 1, p.first + p.counts - i, p.trust}
}

// phraseStart is the first count of phrase n; past the music, phrases of 32
// counts go on.
func (g *grid) phraseStart(n int) int {
	if n < len(g.phrases) {
		return g.phrases[n].first
	}
	last := g.phrases[len(g.phrases)-1]
	return last.first + last.counts + (n-len(g.phrases))*beat.PhraseLen
}
