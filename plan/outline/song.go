package outline

import (
	"math"
	"slices"

	"onphrase/plan"
)

// Song is what is known of a piece of music.
type Song struct {
	File     string          // in the music folder, with / between folders
	BPM      float64         // counts a minute
	Phrases  []int           // counts of each phrase, in order, the first that can be taught to first
	Loudness float64         // [LUFS]; 0 when unknown
	Suits    []plan.PartKind // that it suits, as the library says; none: what its tempo suits
}

// phraseCounts is a whole phrase.
const phraseCounts = 32

// seconds is the time of a number of whole phrases [s].
func (s Song) seconds(phrases int) float64 { return float64(phrases*phraseCounts) * 60 / s.BPM }

// runs lists the stretches of whole phrases between odd ones, by their number
// of phrases. odd tells whether a tag or a bridge comes before the stretch.
func (s Song) runs() []run {
	var all []run
	whole, odd := 0, false
	for _, counts := range append(slices.Clone(s.Phrases), 0) {
		if counts == phraseCounts {
			whole++
			continue
		}
		if whole > 0 {
			all = append(all, run{whole, odd})
		}
		whole, odd = 0, whole > 0 || odd
	}
	return all
}

type run struct {
	phrases int
	odd     bool
}

// shelf hands out songs, each as seldom as there are others.
type shelf struct {
	songs []Song
	used  map[string]int
	loud  float64 // mean loudness of the songs of which it is known [LUFS]
}

func newShelf(songs []Song) *shelf {
	s := &shelf{used: map[string]int{}}
	for _, song := range songs {
		if len(song.runs()) > 0 && song.BPM > 0 {
			s.songs = append(s.songs, song)
		}
	}
	known := 0.0
	for _, song := range s.songs {
		if song.Loudness != 0 {
			s.loud += song.Loudness
			known++
		}
	}
	s.loud /= max(1, known)
	return s
}

// choice is a song chosen for a part.
type choice struct {
	Song
	again bool // played in a part before
	suits bool // its tempo is usual for the part
}

// take finds the song for a kind of part that is not one of those taken for it
// already: the least used, then one whose tempo suits, then the nearest to it.
// A song of another tempo is taken only where none that suits is left.
func (s *shelf) take(kind plan.PartKind, but []choice) (choice, bool) {
	best, least := -1, math.Inf(1)
	for i, song := range s.songs {
		if slices.ContainsFunc(but, func(c choice) bool { return c.File == song.File }) {
			continue
		}
		if c := s.cost(song, kind); c < least {
			best, least = i, c
		}
	}
	if best < 0 {
		return choice{}, false
	}
	song := s.songs[best]
	s.used[song.File]++
	return choice{song, s.used[song.File] > 1, slices.Contains(song.kinds(), kind)}, true
}

// The prices of a song for a part: a tempo that does not suit is dearer than
// any number of times that a song was played before.
const (
	wrongTempo  = 1000
	playedAgain = 100
	perKind     = 5   // that the song suits besides: the only song for strength is not for the warm-up
	perLU       = 0.5 // of energy that the part does not want
)

func (s *shelf) cost(song Song, kind plan.PartKind) float64 {
	band := plan.Builtin().Bands[kind].Inside
	middle := (band.Low + band.High) / 2
	if band.Low == 0 {
		middle = band.High - 5 // up to 100: as near to walking as it gets
	}
	suits := song.kinds()
	cost := math.Abs(song.BPM-middle) + playedAgain*float64(s.used[song.File]) + perKind*float64(len(suits))
	if !slices.Contains(suits, kind) {
		cost += wrongTempo
	}
	if song.Loudness == 0 {
		return cost
	}
	switch over := song.Loudness - s.loud; kind { // quiet songs for both ends, loud ones for cardio
	case plan.WarmUp, plan.CoolDown:
		cost += perLU * over
	case plan.Cardio:
		cost -= perLU * over
	}
	return cost
}

// kinds are the kinds of part that the song suits.
func (s Song) kinds() []plan.PartKind {
	if len(s.Suits) > 0 {
		return s.Suits
	}
	var all []plan.PartKind
	for kind, band := range plan.Builtin().Bands {
		if band.Inside.Has(s.BPM) {
			all = append(all, kind)
		}
	}
	return all
}
