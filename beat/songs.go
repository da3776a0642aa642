package beat

import (
	"slices"

	"onphrase/beat/bar"
	"onphrase/beat/phrase"
)

// Song is one of the songs of a continuous mix.
type Song struct {
	Time float64 `json:"time"` // at which it begins, or has taken over [s]
	Beat int     `json:"beat"` // index of the count there in Track.Beats
	BPM  float64 `json:"bpm"`  // of its median count [1/min]
}

// addSongs takes over the counts at which the second song and those after it
// begin; of a single song nothing is listed.
func (t *Track) addSongs(starts []int) {
	if len(starts) == 0 {
		return
	}
	all := append([]int{0}, starts...)
	for i, from := range all {
		to := len(t.Beats)
		if i+1 < len(all) {
			to = all[i+1]
		}
		t.Songs = append(t.Songs, Song{Time: t.Beats[from], Beat: from, BPM: t.pace(from, to)})
	}
}

// pace is the tempo of the median count of those from..to-1 [1/min].
func (t *Track) pace(from, to int) float64 {
	var all []tempoOf
	for i := from; i+1 < to; i++ {
		first, last := max(from, i-paceOver), min(to-1, i+paceOver)
		all = append(all, tempoOf{bpm: 60 * float64(last-first) / (t.Beats[last] - t.Beats[first]), counts: 1})
	}
	if len(all) == 0 {
		return t.BPM
	}
	return median(all).bpm
}

// phrasesOf finds the phrases of each song by itself: they start afresh with it.
func phrasesOf(s *bar.Sound, bars bar.Bars, songs []int) []phrase.Phrase {
	var out []phrase.Phrase
	from := 0
	for _, to := range append(slices.Clone(songs), s.Len()) {
		own := bars
		own.BeatInBar = bars.BeatInBar[from:to]
		for _, p := range phrase.Find(s.Between(from, to), own) {
			p.Beat += from
			out = append(out, p)
		}
		from = to
	}
	return out
}
