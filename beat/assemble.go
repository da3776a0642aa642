package beat

import (
	"cmp"
	"math"
	"slices"

	"onphrase/beat/bar"
	"onphrase/beat/phrase"
	"onphrase/beat/reading"
)

// addBeats joins the parts' beats and what they say about the tempo.
func (t *Track) addBeats(parts []part) {
	var tempi []tempoOf
	for _, p := range parts {
		skip := 0 // counts that are the last of the part before
		for skip < len(p.Beats) && len(t.Beats) > 0 && p.Beats[skip] < t.Beats[len(t.Beats)-1]+p.Period/2 {
			skip++
		}
		beats, trust := p.Beats[skip:], trustOf(p)
		if len(beats) < 2 || trust == 0 {
			t.Unsteady = append(t.Unsteady, [2]float64{p.From, p.To})
			continue
		}
		t.Unsteady = append(t.Unsteady, p.unsure...)
		if len(t.Beats) > 0 {
			t.TempoChanges = append(t.TempoChanges, TempoChange{Time: beats[0], BPM: p.bpmFrom(skip)})
		}
		t.TempoChanges = append(t.TempoChanges, p.steps(skip)...)
		t.Beats = append(t.Beats, beats...)
		t.Trust.Beat += trust * float64(len(beats))
		for _, q := range p.tempi() {
			q.rivals = rivals(p.readings, 1-trust)
			tempi = append(tempi, q)
		}
	}
	if len(tempi) > 0 {
		m := median(tempi)
		t.BPM, t.Alternatives = m.bpm, m.rivals
	}
	if len(t.Beats) > 0 {
		t.Trust.Beat /= float64(len(t.Beats))
	}
}

// addJumps names the counts at which the counting jumps within a song, and trusts
// it no more than the longest run of it.
func (t *Track) addJumps(jumps, songs []int) {
	jumps = slices.DeleteFunc(jumps, func(i int) bool { return nearAny(songs, i, jumpReach) })
	t.Trust.Beat *= longestRun(jumps, len(t.Beats))
	t.doubt(jumps)
}

// tempoOf is the tempo of some counts.
type tempoOf struct {
	bpm    float64
	counts int
	rivals []Rival
}

// median is the tempo of the median count: half of the counts are no faster.
func median(tempi []tempoOf) tempoOf {
	slices.SortStableFunc(tempi, func(a, b tempoOf) int { return cmp.Compare(a.bpm, b.bpm) })
	left := 0
	for _, t := range tempi {
		left += t.counts
	}
	left = (left + 1) / 2
	for _, t := range tempi {
		if left -= t.counts; left <= 0 {
			return t
		}
	}
	return tempi[len(tempi)-1]
}

const (
	rivalOdds  = 0.02 // below it a rival is not worth a word
	sameTempo  = 0.04 // relative
	mostRivals = 3
)

// rivals adds up the odds of the readings at other tempi than the first's. All
// readings but the first share what odds are left.
func rivals(all []reading.Reading, left float64) []Rival {
	var out []Rival
	others := 0.0
	for _, r := range all[1:] {
		others += r.Odds
	}
	for _, r := range all {
		bpm := 60 / r.Period
		if near(bpm, 60/all[0].Period) {
			continue
		}
		i := slices.IndexFunc(out, func(o Rival) bool { return near(o.BPM, bpm) })
		if i < 0 {
			out = append(out, Rival{BPM: bpm})
			i = len(out) - 1
		}
		if others > 0 { // else the first is certain, and nothing is left to share
			out[i].Odds += left * r.Odds / others
		}
	}
	out = slices.DeleteFunc(out, func(r Rival) bool { return r.Odds < rivalOdds })
	slices.SortStableFunc(out, func(a, b Rival) int { return cmp.Compare(b.Odds, a.Odds) })
	return out[:min(len(out), mostRivals)]
}

func near(a, b float64) bool { return math.Abs(math.Log(a/b)) < sameTempo }

// seams are the first counts of the stretches that follow a change of tempo.
func (t *Track) seams() []int {
	var out []int
	for _, c := range t.TempoChanges {
		if i, found := slices.BinarySearch(t.Beats, c.Time); found {
			out = append(out, i)
		}
	}
	return out
}

// addBars takes over the bars found; fresh are the counts at which they may begin
// anew. It says how far each count agrees with the others about count 1, 0-1.
func (t *Track) addBars(b bar.Bars, fresh []int) (agreed []float64) {
	t.Meter = b.Meter
	t.BeatInBar = b.BeatInBar
	slips := t.slips(fresh)
	agreed = t.agreed(fresh)
	t.Trust.Count1 = b.Trust * t.Trust.Beat * average(agreed)
	t.doubt(slips)
	return agreed
}

// addPhrases takes over the phrases found.
func (t *Track) addPhrases(found []phrase.Phrase, agreed []float64) {
	energies := map[phrase.Energy]Energy{phrase.Low: Low, phrase.Medium: Medium, phrase.High: High}
	all := average(agreed)
	for _, p := range found {
		trust := PhraseTrust(p.Trust, t.Trust.Count1*agreed[p.Beat]/all)
		t.Phrases = append(t.Phrases, Phrase{
			Time: t.Beats[p.Beat], Beat: p.Beat, Counts: p.Counts, Kind: KindOf(p.Counts),
			Trust: trust, Energy: energies[p.Energy],
		})
		t.Trust.Phrase += trust / float64(len(found))
	}
	Suggest(t.Phrases)
}
