package outline

import (
	"fmt"
	"math"
	"strings"
)

// part is a section with its songs and what is done on them.
type part struct {
	Section
	songs []choice
	items []string
}

// fill gives a section its songs and fills whole phrases of them with the menu
// of its kind, until its minutes are over.
func (s Section) fill(from *shelf, turn *int) part {
	p := part{Section: s}
	m := menus[s.Kind]
	var slots []run // whole phrases to fill, song by song
	left := 60 * s.Minutes
	for left > 0 {
		c, ok := from.take(s.Kind, p.songs)
		if !ok {
			break
		}
		want := int(math.Round(left / c.seconds(1)))
		if len(p.songs) > 0 && want < leastPhrases {
			break // not worth another song
		}
		p.songs = append(p.songs, c)
		for _, r := range c.runs() {
			r.phrases = min(r.phrases, want)
			if r.phrases > 0 {
				slots = append(slots, r)
				want -= r.phrases
				left -= c.seconds(r.phrases)
			}
		}
	}
	for i, r := range slots {
		p.items = append(p.items, m.serve(r, i == 0, i == len(slots)-1, turn)...)
	}
	return p
}

// leastPhrases is how many phrases are worth another song.
const leastPhrases = 4

// serve fills one stretch of whole phrases.
func (m menu) serve(r run, opens, ends bool, turn *int) []string {
	var all []dish
	left := r.phrases
	var last []dish
	if ends {
		last = fitting(m.last, left)
	}
	left -= phrasesOf(last)
	if opens {
		for _, d := range m.first {
			if d.phrases <= left {
				all = append(all, d)
				left -= d.phrases
			}
		}
	}
	for left > 0 {
		d := m.turn[*turn%len(m.turn)]
		if d.phrases > left {
			d = m.filler
		} else {
			*turn++
		}
		all = append(all, d)
		left -= d.phrases
	}
	all = append(all, last...)
	return written(all, r.odd)
}

// fitting is the end of a list of dishes that fits into so many phrases.
func fitting(all []dish, phrases int) []dish {
	for phrasesOf(all) > phrases {
		all = all[1:]
	}
	return all
}

func phrasesOf(all []dish) int {
	sum := 0
	for _, d := range all {
		sum += d.phrases
	}
	return sum
}

// written are the items of a stretch. Behind a tag or a bridge the first waits
// for the next phrase.
func written(all []dish, odd bool) []string {
	var out []string
	for i, d := range all {
		on := ""
		if i == 0 && odd {
			on = ", on: phrase"
		}
		if strings.Contains(d.yaml, "%s") {
			out = append(out, fmt.Sprintf(d.yaml, on))
			continue
		}
		out = append(out, strings.TrimSuffix(d.yaml, "}")+on+"}")
	}
	return out
}
