package main

import (
	"bufio"
	"fmt"
	"math"
	"os"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"onphrase/beat"
)

// mark is a place that a chart marks and where we expect a phrase to start.
type mark struct {
	time float64 // [s]
	kind string  // chorus, part or turn
}

// found is what the analysis says at a mark.
type found struct {
	mark
	start  bool    // a phrase starts there
	one    bool    // count 1 is there
	rule   bool    // counting 32s from the song's true first count 1 gets there
	inside bool    // it lies in a phrase
	trust  float64 // of that phrase
	late   int     // counts since that phrase's start
}

const (
	chorus = "chorus" // the chorus, refrain or climax starts
	part   = "part"   // a part with another name starts: a verse, a bridge
	turn   = "turn"   // another voice takes over, after at least longTurn counts of the one before

	longTurn   = 16    // half a phrase [counts]
	markWindow = 0.07  // as oneWindow [s]
	onChart    = 0.020 // how near its chart's count 1 a mark must be to count [s]
)

var (
	chorusName = regexp.MustCompile(`(?i)^(chorus|refrain|hook|drop|kiai$)`)
	endName    = regexp.MustCompile(`(?i)(^| )end$`)
	turnName   = regexp.MustCompile(`^turn (\d+)$`)
)

// readMarks reads ID.sections, lines of seconds, tab, name; a song may have none.
// A chorus in several parts is marked by its first.
func readMarks(file string) ([]mark, error) {
	f, err := os.Open(file)
	if os.IsNotExist(err) {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	defer f.Close()
	var out []mark
	was := false
	lines := bufio.NewScanner(f)
	for n := 1; lines.Scan(); n++ {
		at, name, ok := strings.Cut(lines.Text(), "\t")
		t, err := strconv.ParseFloat(at, 64)
		if !ok || err != nil {
			return nil, fmt.Errorf("%s:%d: %q is not seconds, tab, name", file, n, lines.Text())
		}
		is := chorusName.MatchString(name)
		switch held := turnName.FindStringSubmatch(name); {
		case held != nil:
			if n, err := strconv.Atoi(held[1]); err == nil && n >= longTurn {
				out = append(out, mark{t, turn})
			}
		case is && !was:
			out = append(out, mark{t, chorus})
		case !is && name != "" && !endName.MatchString(name):
			out = append(out, mark{t, part})
		}
		was = is
	}
	return out, lines.Err()
}

// measureMarks holds the track against the choruses and other parts that start on
// a count 1 of the chart.
func (r *result) measureMarks() {
	truth := ones(r.beats, r.position, 1)
	if len(truth) == 0 {
		return
	}
	bars := ones(r.track.Beats, r.track.BeatInBar, 1)
	first, _ := slices.BinarySearch(r.beats, truth[0])
	for _, m := range r.marks {
		if _, d := nearest(truth, m.time); m.kind == turn || d > onChart {
			continue
		}
		_, toOne := nearest(bars, m.time)
		at, _ := nearest(r.beats, m.time)
		f := found{mark: m, one: toOne <= markWindow, rule: (at-first)%beat.PhraseLen == 0}
		f.among(r.track)
		r.found = append(r.found, f)
	}
}

// among finds the phrase that starts at the mark, or that it lies in.
func (f *found) among(t beat.Track) {
	count, _ := nearest(t.Beats, f.time)
	for _, p := range t.Phrases {
		switch {
		case math.Abs(p.Time-f.time) <= markWindow:
			f.start, f.inside, f.trust, f.late = true, true, p.Trust, 0
			return
		case p.Beat <= count && count < p.Beat+p.Counts:
			f.inside, f.trust, f.late = true, p.Trust, count-p.Beat
		}
	}
}

// nearest is the index of the nearest of times, and how far it is [s].
func nearest(times []float64, t float64) (int, float64) {
	if len(times) == 0 {
		return -1, math.Inf(1)
	}
	i, _ := slices.BinarySearch(times, t)
	if i == len(times) || i > 0 && t-times[i-1] < times[i]-t {
		i--
	}
	return i, math.Abs(times[i] - t)
}

// marked is the share of the marks of a kind that start with a phrase; "-" where
// there are none.
func marked(rs []result, kind string) string {
	hit, n := 0, 0
	for _, r := range rs {
		for _, f := range r.found {
			if f.kind == kind {
				n++
				hit += int(share(f.start))
			}
		}
	}
	return portion(hit, n)
}

// portion is a share to three places; "-" of nothing.
func portion(hit, n int) string {
	if n == 0 {
		return "-"
	}
	return fmt.Sprintf("%.3f", float64(hit)/float64(n))
}
