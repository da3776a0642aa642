package reading

import "math"

// places are where a beat is listened to, as shares of its period: the beat,
// and the sixteenths and triplets between it and the next.
var places = []float64{0, 0.25, 1. / 3, 0.5, 2. / 3, 0.75}

const (
	onPlace = 0 // indices in places
	halfway = 3

	// slack is how far from a place its sound may begin [s].
	slack = 0.025
	// leastSound keeps the logarithm of a silent place finite; onsets are
	// evened out to a root mean square of 1.
	leastSound = 0.1
	// usualPeriod is the period that people move to most readily [s].
	//
	// Ref: van Noorden & Moelants 1999, "Resonance in the perception of
	// musical pulse" (about 120 to the minute).
	usualPeriod = 0.5
)

// Clues is what tells one reading from another, in the order of weights.
type Clues []float64

// Evidence is the sound of a stretch of music.
type Evidence struct {
	// Curves are what begins, evened out, frame i at i/FPS [s]: the onsets of
	// each of spectral.Ranges, then the novelty of the harmony.
	Curves [][]float64
	FPS    float64
	// Courses are what goes on: the pitch classes above the bass, those of the
	// bass, and the spectrum.
	Courses []Course
	// Period is that at which the music repeats itself most clearly [s].
	Period func(t float64) float64
}

// hear collects the clues of one reading.
func (e Evidence) hear(r Reading) Clues {
	times := placesOf(r.Beats)
	sound := sample(times, e.Curves, e.FPS)
	var c Clues
	for _, band := range sound {
		for _, place := range band {
			c = append(c, math.Log(leastSound+mean(place)))
		}
		for _, every := range []int{2, 3, 4} {
			c = append(c, turn(band[onPlace], every))
		}
		c = append(c, turn(band[halfway], 2))
	}
	c = append(c, repetition(sound)...)
	c = append(c, tempoClues(r.Beats)...)
	c = append(c, backBeat(sound[kick][onPlace], sound[snare][onPlace])...)
	c = append(c, changeClues(times, e.Courses)...)
	return append(c, levelClues(r.Period/e.periodOf(r.Beats))...)
}

// periodOf is that of the music's repetition in the middle of some beats [s].
func (e Evidence) periodOf(beats []float64) float64 {
	if len(beats) == 0 {
		return e.Period(0)
	}
	return e.Period((beats[0] + beats[len(beats)-1]) / 2)
}

// kick and snare are indices in the evidence.
const kick, snare = 0, 3

// backBeat says how much kick and snare alternate from beat to beat, as they do
// at the level of the count: how much more of the one meets the other a beat
// away than on its own beat, relative, and by how much they outweigh each other
// by turns [log-units].
func backBeat(kick, snare []float64) []float64 {
	var same, next, kk, ss float64
	for i := 1; i+1 < len(kick); i++ {
		same += kick[i] * snare[i]
		next += kick[i] * (snare[i-1] + snare[i+1]) / 2
		kk += kick[i] * kick[i]
		ss += snare[i] * snare[i]
	}
	if kk == 0 || ss == 0 {
		return []float64{0, 0}
	}
	var lead [2][]float64 // of the kick, on even beats and on odd
	for i := range kick {
		lead[i%2] = append(lead[i%2], math.Log((leastSound+kick[i])/(leastSound+snare[i])))
	}
	return []float64{(next - same) / math.Sqrt(kk*ss), math.Abs(mean(lead[0]) - mean(lead[1]))}
}

// repeats are the distances at which music repeats itself [beats].
var repeats = []int{1, 2, 3, 4, 6, 8}

// repetition is how alike beats sound that lie some beats apart: the
// correlation of everything sampled of them, -1 to 1.
func repetition(sound [][][]float64) []float64 {
	beats := len(sound[0][onPlace])
	rows := make([][]float64, beats)
	for i := range rows {
		rows[i] = make([]float64, 0, len(sound)*len(places))
	}
	for _, band := range sound {
		for _, place := range band {
			m := mean(place)
			for i, v := range place {
				rows[i] = append(rows[i], v-m)
			}
		}
	}
	out := make([]float64, len(repeats))
	for j, lag := range repeats {
		var ab, aa float64
		for i := lag; i < beats; i++ {
			for d, v := range rows[i] {
				ab += v * rows[i-lag][d]
				aa += (v*v + rows[i-lag][d]*rows[i-lag][d]) / 2
			}
		}
		if aa > 0 {
			out[j] = ab / aa
		}
	}
	return out
}

// tempoClues say how far the tempo is from the usual, in octaves.
func tempoClues(beats []float64) []float64 {
	if len(beats) < 2 {
		return make([]float64, 4)
	}
	period := (beats[len(beats)-1] - beats[0]) / float64(len(beats)-1)
	x := math.Log2(usualPeriod / period)
	return []float64{x, x * x, max(0, x-0.25), max(0, -x-0.25)}
}

// sample is the onset strength by band, place and beat; times are those of
// placesOf.
func sample(times, bands [][]float64, fps float64) [][][]float64 {
	sound := make([][][]float64, len(bands))
	for b, curve := range bands {
		sound[b] = make([][]float64, len(times))
		for p, at := range times {
			row := make([]float64, 0, len(at))
			for _, t := range at {
				row = append(row, peak(curve, t*fps, slack*fps))
			}
			sound[b][p] = row
		}
	}
	return sound
}

// placesOf are the times at which each of some beats but the last is listened
// to [s], by places.
func placesOf(beats []float64) [][]float64 {
	times := make([][]float64, len(places))
	for p, share := range places {
		for i := 0; i+1 < len(beats); i++ {
			times[p] = append(times[p], beats[i]+share*(beats[i+1]-beats[i]))
		}
	}
	return times
}

// peak is the greatest value of x within reach of a position.
func peak(x []float64, pos, reach float64) float64 {
	m := 0.0
	for i := max(0, int(math.Ceil(pos-reach))); i <= min(len(x)-1, int(pos+reach)); i++ {
		m = max(m, x[i])
	}
	return m
}

// turn is how regularly x returns every so many beats: the amplitude of that
// period relative to the mean, 0-1.
func turn(x []float64, every int) float64 {
	re, im, sum := 0.0, 0.0, 0.0
	for i, v := range x {
		s, c := math.Sincos(2 * math.Pi * float64(i%every) / float64(every))
		re += v * c
		im += v * s
		sum += v
	}
	return math.Hypot(re, im) / (sum + leastSound*float64(len(x)) + 1e-9)
}

func mean(x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += v
	}
	return sum / max(1, float64(len(x)))
}
