package main

import (
	"cmp"
	"context"
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"sort"

	"onphrase/beat"
)

// edition is how another file of a song compares with the one that the class
// was made to.
type edition struct {
	alike bool    // its counts and phrases follow each other in the same way
	later float64 // how much later they fall [s], negative for earlier
}

// fits tells whether the class can be taught to it as it is.
func (e edition) fits() bool { return e.alike && math.Abs(e.later) <= editionError }

const (
	// editionError is how far apart two hearings of one count may be [s]; a
	// tenth of a count at 180 BPM.
	editionError = 0.033
	// editionShift is how much earlier or later another edition is looked for
	// [s]: a fade or a spoken beginning.
	editionShift = 15
	// editionShare is how many of the counts and of the phrases that both have
	// must agree.
	editionShare = 0.8
	// editionOverlap is how much of the song the other must have: the ends of two
	// editions may differ.
	editionOverlap = 0.6
)

// mostCounts is more than any song has: two hours at 240 BPM.
const mostCounts = 2 * 60 * 240

// compare finds the least shift by which one hearing of a song is the other.
// Where phrases are all alike, larger ones would do as well.
func compare(was, is beat.Track) edition {
	for _, d := range shifts(was, is) {
		if agree(was.Beats, is.Beats, d) >= editionShare && agree(starts(was), starts(is), d) >= editionShare {
			return edition{true, d + fine(was.Beats, is.Beats, d)}
		}
	}
	return edition{}
}

// shifts lists what may be the shift, the smallest first.
func shifts(was, is beat.Track) []float64 {
	all := []float64{0}
	for _, a := range starts(was) {
		for _, b := range starts(is) {
			if math.Abs(b-a) <= editionShift {
				all = append(all, b-a)
			}
		}
	}
	slices.SortFunc(all, func(a, b float64) int {
		return cmp.Compare(math.Abs(a), math.Abs(b))
	})
	return slices.Compact(all)
}

func starts(t beat.Track) []float64 {
	all := make([]float64, len(t.Phrases))
	for i, p := range t.Phrases {
		all[i] = p.Time
	}
	return all
}

// agree is the share of moments that have one of the others at their place, of
// those that lie between the first and the last of the others.
func agree(was, is []float64, shift float64) float64 {
	n, both := 0, 0
	for _, a := range was {
		a += shift
		if len(is) == 0 || a < is[0]-editionError || a > is[len(is)-1]+editionError {
			continue
		}
		both++
		if d, ok := off(is, a); ok && math.Abs(d) <= editionError {
			n++
		}
	}
	if float64(both) < editionOverlap*float64(len(was)) || both == 0 {
		return 0
	}
	return float64(n) / float64(both)
}

// off is how much later than a moment the nearest of the others is.
func off(all []float64, t float64) (float64, bool) {
	i := sort.SearchFloat64s(all, t)
	best, ok := 0.0, false
	for _, j := range []int{i - 1, i} {
		if j >= 0 && j < len(all) && (!ok || math.Abs(all[j]-t) < math.Abs(best)) {
			best, ok = all[j]-t, true
		}
	}
	return best, ok
}

// fine is what is left between the counts after a shift: the median.
func fine(was, is []float64, shift float64) float64 {
	var left []float64
	for _, a := range was {
		if d, ok := off(is, a+shift); ok && math.Abs(d) <= editionError {
			left = append(left, d)
		}
	}
	if len(left) == 0 {
		return 0
	}
	sort.Float64s(left)
	return left[len(left)/2]
}

// analysisIn finds what was heard in the songs of a package, by their names.
func analysisIn(files []unpacked) (map[string]beat.Track, error) {
	tracks := map[string]beat.Track{}
	for _, f := range files {
		if f.name != packedAnalysis {
			continue
		}
		var a struct {
			Schema string       `json:"schema"`
			Tracks []beat.Track `json:"tracks"`
		}
		if err := json.Unmarshal(f.content, &a); err != nil {
			return nil, fmt.Errorf("%s cannot be read: %w", f.name, err)
		}
		if a.Schema != analysisSchema {
			return nil, fmt.Errorf("%s is %q, this program reads %s", f.name, a.Schema, analysisSchema)
		}
		for _, t := range a.Tracks {
			if len(t.Beats) > mostCounts || len(t.Phrases) > mostCounts/beat.PhraseLen {
				return nil, fmt.Errorf("%s: more counts than any song has", f.name)
			}
			tracks[t.File] = t
		}
	}
	return tracks, nil
}

// listenTo compares the files that have only the name of a song with what was
// heard in the song itself.
func (a *analyst) listenTo(ctx context.Context, songs []whereabouts, was map[string]beat.Track) error {
	var list []input
	var which []int
	for i, w := range songs {
		if w.at != "" && !w.same {
			list, which = append(list, input{path: w.at}), append(which, i)
		}
	}
	if len(list) == 0 {
		return nil
	}
	results, err := a.all(ctx, list)
	if err != nil {
		return err
	}
	for n, r := range results {
		w := &songs[which[n]]
		if t, ok := was[w.File]; ok && t.Problem == "" && r.track.Problem == "" {
			w.edition = compare(t, r.track)
		}
	}
	return nil
}
