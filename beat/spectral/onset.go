package spectral

import "math"

// Onsets says how much new sound begins, frame by frame, in several bands.
type Onsets struct {
	FPS  float64     // frames per second; frame i belongs to time i/FPS [s]
	Band [][]float32 // one curve for each of Ranges, all of the same length
}

// Range is a stretch of the spectrum [Hz].
type Range struct {
	Name     string
	From, To float64
}

// Ranges are the bands of Onsets, from kick to cymbal.
var Ranges = []Range{
	{"kick", 0, 130},
	{"bass", 130, 400},
	{"mid", 400, 1600},
	{"snare", 1600, 6000},
	{"hat", 6000, 11025},
}

// Len is the number of frames.
func (o *Onsets) Len() int { return len(o.Band[0]) }

const (
	// fluxLag is the number of frames back to what is compared: the time in
	// which the window of a frame falls to about half [frames].
	fluxLag = 2
	// compression is how far below the present level a sound still counts.
	compression = 300
	// levelMemory is how long a loud moment keeps the level up [s].
	levelMemory = 8.0
	// quietest is the level below which there is no sound, only rounding.
	quietest = 1e-5
	// quietestShare keeps the level from sinking into reverberation and
	// coding noise, relative to the loudest moment so far.
	quietestShare = 1e-3
)

// flux measures new sound in log-magnitude frames: the rise of each band over
// the greatest of its neighbourhood a little earlier, so that a vibrato, which
// only moves between bands, does not count.
//
// Magnitudes are taken relative to a running level, which makes the result
// independent of the track's gain.
//
// Ref: Böck & Widmer 2013, "Maximum filter vibrato suppression for onset
// detection" (DAFx); ours has 8 bands to the octave instead of 24.
type flux struct {
	group   []int // index in Ranges of each filter band
	count   []float64
	past    [fluxLag + 1][]float64 // the last frames, log magnitude, max-filtered
	now     []float64
	frames  int
	level   float64
	loudest float64
}

func newFlux(centres []float64) *flux {
	f := &flux{group: make([]int, len(centres)), count: make([]float64, len(Ranges)), now: make([]float64, len(centres))}
	for i, c := range centres {
		for j, r := range Ranges {
			if c >= r.From && c < r.To {
				f.group[i] = j
				f.count[j]++
			}
		}
	}
	for i := range f.past {
		f.past[i] = make([]float64, len(centres))
	}
	return f
}

// add appends one value to each curve of o.
func (f *flux) add(o *Onsets, magnitude []float64) {
	peak := 0.0
	for _, m := range magnitude {
		peak = max(peak, m)
	}
	f.loudest = max(f.loudest, peak)
	f.level = max(f.level*math.Exp(-1/(levelMemory*o.FPS)), peak, f.loudest*quietestShare, quietest)
	for i, m := range magnitude { // Log1p would be exact for what nobody hears, and take twice as long
		f.now[i] = math.Log(1 + compression*m/f.level)
	}
	before := f.past[f.frames%len(f.past)]
	var rise [16]float64
	for i, v := range f.now {
		if d := v - before[i]; d > 0 {
			rise[f.group[i]] += d
		}
	}
	for j := range o.Band {
		v := rise[j] / f.count[j]
		if f.frames < fluxLag {
			v = 0
		}
		o.Band[j] = append(o.Band[j], float32(v))
	}
	maxFilter(f.past[(f.frames+fluxLag)%len(f.past)], f.now)
	f.frames++
}

// maxFilter writes the greatest of each value and its two neighbours.
func maxFilter(dst, x []float64) {
	for i := range x {
		m := x[i]
		if i > 0 {
			m = max(m, x[i-1])
		}
		if i+1 < len(x) {
			m = max(m, x[i+1])
		}
		dst[i] = m
	}
}
