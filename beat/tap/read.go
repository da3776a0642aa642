package tap

import (
	"fmt"
	"math"
	"slices"

	"onphrase/beat"
	"onphrase/beat/correct"
	"onphrase/beat/internal/dsp"
)

// Reading is what taps say about a track.
type Reading struct {
	Pulse Pulse
	BPM   float64 // of the counts as they then are, where she tapped
	At    float64 // of the count that her middle tap means [s]
	Says  string  // in plain words: "as heard", "half as fast", ...
	Fixes []correct.Correction
}

// ratio is a way to count otherwise than was heard.
type ratio struct {
	step correct.Ratio
	says string
}

// ratios are the ways tried, the likeliest first.
var ratios = []ratio{
	{correct.Ratio{Num: 1, Den: 1}, "as heard"},
	{correct.Ratio{Num: 2, Den: 1}, "half as fast"},
	{correct.Ratio{Num: 1, Den: 2}, "twice as fast"},
	{correct.Ratio{Num: 3, Den: 2}, "two counts where three were heard"},
	{correct.Ratio{Num: 2, Den: 3}, "three counts where two were heard"},
	{correct.Ratio{Num: 4, Den: 3}, "three counts where four were heard"},
	{correct.Ratio{Num: 3, Den: 4}, "four counts where three were heard"},
	{correct.Ratio{Num: 3, Den: 1}, "a third as fast"},
	{correct.Ratio{Num: 1, Den: 3}, "three times as fast"},
}

// alike is how far the tempo of the taps may be from a reading's: the median of
// eight taps with 30 ms of jitter is within 3 per cent at 120 BPM.
const alike = 0.05

// Read finds the corrections after which a track's counts are those that were
// tapped [s]. one is the index of a tap that is count 1 of a phrase, or -1.
func Read(t beat.Track, taps []float64, one int) (Reading, error) {
	p, err := Fit(taps)
	if err != nil {
		return Reading{}, err
	}
	r := Reading{Pulse: p}
	heard, ok := localPeriod(t, p.At)
	if !ok {
		return r.steady(t, taps, one)
	}
	for _, way := range ratios {
		want := heard * float64(way.step.Num) / float64(way.step.Den)
		if math.Abs(math.Log(p.Period/want)) < alike {
			return r.counted(t, way, taps, one)
		}
	}
	return r.steady(t, taps, one)
}

// localPeriod is the usual step between the counts round a time, if there are
// any.
func localPeriod(t beat.Track, at float64) (float64, bool) {
	const around = 8 // counts to either side
	i, _ := slices.BinarySearch(t.Beats, at)
	from, to := max(0, i-around), min(len(t.Beats), i+around)
	if to-from < around || at < t.Beats[0]-t.Beats[1]+t.Beats[0] || at > t.Beats[len(t.Beats)-1]+10 {
		return 0, false
	}
	var steps []float64
	for k := from + 1; k < to; k++ {
		steps = append(steps, t.Beats[k]-t.Beats[k-1])
	}
	return dsp.Median(steps), true
}

// counted chooses where the counts of a ratio begin: where the taps lie nearest
// to them.
func (r Reading) counted(t beat.Track, way ratio, taps []float64, one int) (Reading, error) {
	plain := way.step == correct.Ratio{Num: 1, Den: 1}
	best := math.Inf(1)
	var then beat.Track
	for _, at := range beginnings(t, way.step, r.Pulse) {
		fix := correct.Correction{Kind: correct.Every, Step: way.step, Time: round(at)}
		asked, err := correct.Apply(t, []correct.Correction{fix})
		if err != nil {
			continue
		}
		if off := math.Abs(distance(asked.Beats, taps)); off < best {
			best, then, r.Fixes = off, asked, []correct.Correction{fix}
		}
	}
	r.Says = way.says
	switch {
	case math.IsInf(best, 1):
		return r.steady(t, taps, one)
	case plain && nearHeard(t, r.Fixes[0].Time):
		r.Fixes, then = nil, t
	case plain:
		r.Says = "between the counts that were heard"
	}
	return r.withOne(then, taps, one)
}

// nearHeard tells whether a time is one of the counts heard.
func nearHeard(t beat.Track, at float64) bool {
	return math.Abs(nearest(t.Beats, at)-at) < 0.002
}

// beginnings are the times round the taps from which a ratio can be counted:
// each heard count of one step, and half-way between them.
func beginnings(t beat.Track, step correct.Ratio, p Pulse) []float64 {
	i, _ := slices.BinarySearch(t.Beats, p.At)
	var out []float64
	for k := i - 2; k <= i+step.Num+1; k++ {
		if k < 0 || k+1 >= len(t.Beats) {
			continue
		}
		for part := range 2 * step.Den {
			share := float64(part) / float64(2*step.Den)
			out = append(out, t.Beats[k]+share*(t.Beats[k+1]-t.Beats[k]))
		}
	}
	return out
}

// early is by how much people tap before the count they mean [s].
//
// Ref: Repp 2005: some hundredths of a second (from memory).
const early = 0.02

// distance is the median of how far the taps lie after their counts [s], put
// right for tapping early.
func distance(counts, taps []float64) float64 {
	var off []float64
	for _, t := range taps {
		off = append(off, t+early-nearest(counts, t+early))
	}
	return dsp.Median(off)
}

// steady takes the taps at their word.
func (r Reading) steady(t beat.Track, taps []float64, one int) (Reading, error) {
	fix := correct.Correction{Kind: correct.Steady, BPM: math.Round(100*r.Pulse.BPM()) / 100,
		Time: round(r.Pulse.At + early)}
	if fix.BPM < correct.LeastBPM || fix.BPM > correct.MostBPM {
		return r, fmt.Errorf("%.0f taps a minute are no tempo to teach at; tap on every count", fix.BPM)
	}
	then, err := correct.Apply(t, []correct.Correction{fix})
	if err != nil {
		return r, err
	}
	r.Fixes, r.Says = []correct.Correction{fix}, "at your tempo throughout"
	return r.withOne(then, taps, one)
}

// withOne adds count 1, where she has said which tap it was, and says what the
// track then has where she tapped.
func (r Reading) withOne(then beat.Track, taps []float64, one int) (Reading, error) {
	r.At = nearest(then.Beats, r.Pulse.At+early)
	if period, ok := localPeriod(then, r.At); ok {
		r.BPM = 60 / period
	} else {
		r.BPM = then.BPM
	}
	if one < 0 || one >= len(taps) {
		return r, nil
	}
	at := nearest(then.Beats, taps[one]+early)
	for _, p := range then.Phrases {
		if math.Abs(p.Time-at) < 0.002 {
			return r, nil // a phrase begins there already
		}
	}
	r.Fixes = append(r.Fixes, correct.Correction{Kind: correct.One, Time: round(at)})
	return r, nil
}

// nearest is the time nearest to t of some in order.
func nearest(times []float64, t float64) float64 {
	i, _ := slices.BinarySearch(times, t)
	if i == len(times) || i > 0 && t-times[i-1] < times[i]-t {
		i--
	}
	return times[i]
}

// round is to the millisecond, as times are kept.
func round(t float64) float64 { return math.Round(1000*t) / 1000 }
