// Package chart reads where people put the beats, bars and sections of a song:
// the charts of music games that are played along with records.
//
// Of every format only the timing is read, never the notes to be played.
package chart

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strings"
)

// Chart is what a chart says of its song. Times are seconds in the game's
// timeline, which may differ from the sound's by some tens of milliseconds.
type Chart struct {
	Title    string
	Audio    string // file name of the sound beside the chart; "" where the format says none
	Anchors  []Anchor
	Sections []Section
	Lyrics   bool // there are words to be sung in it
}

// Anchor is a place from which counts go on evenly until the next anchor.
type Anchor struct {
	Time   float64 // of a count [s]
	Period float64 // from count to count [s]
	Meter  int     // counts in a bar, at least 1
	Count  int     // which count of its bar it is, from 0
}

// Section is a place that the chart marks.
type Section struct {
	Time float64 // [s]
	Name string
}

// Names of sections that a format marks without words.
const (
	Climax    = "kiai"     // the part that the chart's maker finds strongest; most often the chorus
	ClimaxEnd = "kiai end" // where it ends
	Turn      = "turn"     // another of two singers takes over; the counts of the one before follow the name
)

// Beat is a count of the song.
type Beat struct {
	Time float64 // [s]
	One  int     // which count of its bar, from 1
}

// Beats lays the counts out between from and to [s]. Before the first anchor
// they go on backwards as they begin.
func (c *Chart) Beats(from, to float64) []Beat {
	var out []Beat
	for i, a := range c.Anchors {
		end := to
		if i+1 < len(c.Anchors) {
			// A count that falls within half a count of the next anchor is that anchor.
			end = min(end, c.Anchors[i+1].Time-min(a.Period, c.Anchors[i+1].Period)/2)
		}
		k := 0
		if i == 0 {
			k = int(math.Ceil((from - a.Time) / a.Period))
		}
		for ; ; k++ {
			t := a.Time + float64(k)*a.Period
			if t >= end {
				break
			}
			if t >= from {
				out = append(out, Beat{t, mod(a.Count+k, a.Meter) + 1})
			}
		}
	}
	return out
}

// BPM is the tempo that most of the time until end [s] has [counts/min].
func (c *Chart) BPM(end float64) float64 {
	long := map[float64]float64{}
	best := 0.0
	for i, a := range c.Anchors {
		to := end
		if i+1 < len(c.Anchors) {
			to = c.Anchors[i+1].Time
		}
		bpm := math.Round(60000/a.Period) / 1000
		if long[bpm] += to - a.Time; best == 0 || long[bpm] > long[best] {
			best = bpm
		}
	}
	return best
}

// Steady reports whether the counts have one tempo and no gap.
func (c *Chart) Steady() bool {
	for i := 1; i < len(c.Anchors); i++ {
		a, b := c.Anchors[i-1], c.Anchors[i]
		k := (b.Time - a.Time) / a.Period
		if math.Abs(a.Period/b.Period-1) > 1e-4 || math.Abs(k-math.Round(k)) > 0.02 {
			return false
		}
	}
	return true
}

func mod(a, n int) int { return ((a % n) + n) % n }

// Read reads a chart by its file name and content. It knows .sm, .ssc, .osu,
// .qua, .chart, and .json of songs sung in turn.
func Read(name string, data []byte) (*Chart, error) {
	data = withoutMark(data)
	var c *Chart
	var err error
	switch ext := strings.ToLower(filepath.Ext(name)); ext {
	case ".sm", ".ssc":
		c, err = readSteps(string(data))
	case ".osu":
		c, err = readCircles(string(data))
	case ".qua":
		c, err = readColumns(data)
	case ".chart":
		c, err = readFrets(string(data))
	case ".json":
		c, err = readTurns(data)
	default:
		return nil, fmt.Errorf("%s: no chart: the name ends in %q", name, ext)
	}
	if err == nil {
		err = c.check()
	}
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return c, nil
}

// withoutMark drops the byte order mark of a text in UTF-8.
func withoutMark(data []byte) []byte {
	return []byte(strings.TrimPrefix(string(data), "\ufeff"))
}

// check finds what no song can have, and puts anchors and sections in order.
func (c *Chart) check() error {
	if len(c.Anchors) == 0 {
		return fmt.Errorf("no tempo in it")
	}
	slices.SortStableFunc(c.Anchors, func(a, b Anchor) int { return compare(a.Time, b.Time) })
	slices.SortStableFunc(c.Sections, func(a, b Section) int { return compare(a.Time, b.Time) })
	for _, a := range c.Anchors {
		if !(a.Period > 0.03 && a.Period < 10) || a.Meter < 1 || math.IsNaN(a.Time) || math.Abs(a.Time) > 1e5 {
			const want = "no tempo to count to"
			return fmt.Errorf("at %.3f s: %.1f counts per minute, %d in a bar: %s", a.Time, 60/a.Period, a.Meter, want)
		}
	}
	return nil
}

func compare(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}
