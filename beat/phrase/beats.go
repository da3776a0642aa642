package phrase

import (
	"onphrase/beat/bar"
	"onphrase/beat/spectral"
)

const (
	// topBands is the number of bands, counted from the highest, in which a
	// cymbal is heard: an octave and a half.
	topBands = 12
	// lowBands is the number of bands, counted from the lowest, of bass and
	// bass drum: two octaves.
	lowBands = 16
)

// barBeats is what count 1 of each bar sounds like, and the counts around it.
type barBeats struct {
	brightOne, brightRest             []float64 // level of the highest bands: on count 1, on the others
	brightBefore                      []float64 // likewise on the counts of the bar before
	kickOne, cymbalOne                []float64 // onset on count 1 itself
	loud, loudOne, loudLast, loudRest []float64 // mean level: of the bar, its count 1, its last, all but count 1
	brightFall                        []float64 // how much brighter count 1 is than the others
	one                               []float64 // how likely the ear takes it for count 1
	lowRest                           []float64 // level of the lowest bands on all but count 1
	swell                             []float64 // how much brighter the last count is than the first
	onsetLast, onsetRest              []float64 // onset of all kinds on the last count and on all but count 1
}

func beatsOf(s *bar.Sound, starts []int, meter int) *barBeats {
	b := &barBeats{}
	bands := len(s.Level[0])
	bright := func(i int) float64 { return sum(s.Level[i][max(0, bands-topBands):]) }
	low := func(i int) float64 { return sum(s.Level[i][:min(bands, lowBands)]) / lowBands }
	loud := func(i int) float64 { return sum(s.Level[i]) / float64(bands) }
	begun := func(i int) float64 { return sum(s.Onset[i]) / float64(len(s.Onset[i])) }
	top := (len(spectral.Ranges) - 1) * bar.Parts
	over := func(of func(int) float64, from, to int) float64 {
		total := 0.0
		from = max(0, from)
		for i := from; i < to; i++ {
			total += of(i)
		}
		return total / float64(max(1, to-from))
	}
	for _, start := range starts {
		end := min(s.Len(), start+meter)
		b.brightOne = append(b.brightOne, bright(start))
		b.brightRest = append(b.brightRest, over(bright, start+1, end))
		b.brightBefore = append(b.brightBefore, over(bright, start-meter, start))
		b.brightFall = append(b.brightFall, bright(start)-over(bright, start+1, end))
		if s.One != nil {
			b.one = append(b.one, s.One[start])
		} else {
			b.one = append(b.one, 0)
		}
		b.kickOne = append(b.kickOne, s.Onset[start][0])
		b.cymbalOne = append(b.cymbalOne, s.Onset[start][top])
		b.loud = append(b.loud, over(loud, start, end))
		b.loudOne = append(b.loudOne, loud(start))
		b.loudLast = append(b.loudLast, loud(end-1))
		b.loudRest = append(b.loudRest, over(loud, start+1, end))
		b.lowRest = append(b.lowRest, over(low, start+1, end))
		b.swell = append(b.swell, bright(end-1)-bright(start))
		b.onsetLast = append(b.onsetLast, begun(end-1))
		b.onsetRest = append(b.onsetRest, over(begun, start+1, end))
	}
	return b
}

func sum(x []float64) float64 {
	total := 0.0
	for _, v := range x {
		total += v
	}
	return total
}

// barTails are the onsets of each bar without its count 1: a crash falls on
// that, a fill leads up to it.
type barTails struct {
	rest [][]float64 // of all counts but the first, one after the other
	last [][]float64 // of the last two
}

func tailsOf(s *bar.Sound, starts []int, meter int) barTails {
	const last = 2
	var t barTails
	for _, start := range starts {
		end := min(s.Len(), start+meter)
		t.rest = append(t.rest, join(s.Onset[min(start+1, end-1):end], max(1, meter-1)))
		t.last = append(t.last, join(s.Onset[max(start, end-last):end], last))
	}
	return t
}
