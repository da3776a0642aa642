package bar

import (
	"math"

	"onphrase/beat/spectral"
	"onphrase/beat/tone"
)

// Parts is the number of parts a beat is heard in: sixteenths.
const Parts = 4

// Sound is what each beat of a track sounds like. All but Bands have one row
// for each beat.
type Sound struct {
	Bands  []float64    // centre of each band of Level [Hz]
	Onset  [][]float64  // new sound of each range of spectral.Ranges and part of the beat: range·Parts + part
	Level  [][]float64  // mean level of each band of spectral.Frames
	Chroma [][]float64  // pitch classes above the bass, unit length, or all 0 when nothing sounds
	Bass   [][]float64  // pitch classes of the bass, likewise
	Inner  [][2]float64 // new sound within the beat: on its thirds, and on its quarters
	One    []float64    // how likely the ear takes the beat for count 1, 0-1; nil when nobody listened
}

// Len is the number of beats.
func (s *Sound) Len() int { return len(s.Onset) }

// Between is the sound of beats from..to-1.
func (s *Sound) Between(from, to int) *Sound {
	out := &Sound{
		Bands: s.Bands, Onset: s.Onset[from:to], Level: s.Level[from:to], Chroma: s.Chroma[from:to], Bass: s.Bass[from:to],
		Inner: s.Inner[from:to],
	}
	if s.One != nil {
		out.One = s.One[from:to]
	}
	return out
}

// Measure hears each beat of a track. A beat lasts until the next one, the
// last as long as the one before it. beats are times [s], increasing.
func Measure(beats []float64, frames *spectral.Frames, onsets *spectral.Onsets, tones *tone.Frames) *Sound {
	s := &Sound{Bands: frames.Bands}
	for i, t := range beats {
		period := beatPeriod(beats, i)
		s.Onset = append(s.Onset, onsetParts(onsets, t, period))
		s.Inner = append(s.Inner, inner(onsets, t, period))
		s.Level = append(s.Level, meanRows(frames.FPS, frames.Len(), frames.At, t, t+period, false))
		s.Chroma = append(s.Chroma, meanRows(tones.FPS, tones.Len(), tones.ChromaAt, t, t+period, true))
		s.Bass = append(s.Bass, meanRows(tones.FPS, tones.Len(), tones.BassAt, t, t+period, true))
	}
	return s
}

func beatPeriod(beats []float64, i int) float64 {
	switch {
	case i+1 < len(beats):
		return beats[i+1] - beats[i]
	case i > 0:
		return beats[i] - beats[i-1]
	}
	return 0.5
}

// onsetParts is the strongest onset in each range within an eighth of a beat
// of each sixteenth.
func onsetParts(o *spectral.Onsets, start, period float64) []float64 {
	row := make([]float64, len(o.Band)*Parts)
	for part := range Parts {
		for band, curve := range o.Band {
			row[band*Parts+part] = strongest(curve, o.FPS, start+period*float64(part)/Parts, period/(2*Parts))
		}
	}
	return row
}

// inner adds up the strongest onsets of all ranges on the thirds of a beat, and
// on its quarters, within a 24th of the beat: thirds and quarters lie a 12th
// apart. The beat itself belongs to neither.
func inner(o *spectral.Onsets, start, period float64) (sum [2]float64) {
	for k, parts := range [2]int{3, 4} {
		for part := 1; part < parts; part++ {
			for _, curve := range o.Band {
				sum[k] += strongest(curve, o.FPS, start+period*float64(part)/float64(parts), period/24)
			}
		}
	}
	return sum
}

// strongest is the greatest value of a curve within some seconds of a time.
func strongest(curve []float32, fps, centre, within float64) float64 {
	best := 0.0
	for i := max(0, int(math.Round((centre-within)*fps))); i <= min(len(curve)-1,
		int(math.Round((centre+within)*fps))); i++ {
		best = max(best, float64(curve[i]))
	}
	return best
}

// meanRows averages the frames centred between two times [s]; the nearest one
// where none is. unit scales the result to length 1.
func meanRows(fps float64, n int, at func(int) []float32, from, to float64, unit bool) []float64 {
	if n == 0 {
		return nil
	}
	first := min(n-1, max(0, int(math.Ceil(from*fps))))
	last := min(n-1, max(first, int(math.Ceil(to*fps))-1))
	sum := make([]float64, len(at(0)))
	for i := first; i <= last; i++ {
		for j, v := range at(i) {
			sum[j] += float64(v)
		}
	}
	scale := 1 / float64(last-first+1)
	if unit {
		scale = 0
		if length := math.Sqrt(dot(sum, sum)); length > 0 {
			scale = 1 / length
		}
	}
	for j := range sum {
		sum[j] *= scale
	}
	return sum
}

func dot(a, b []float64) float64 {
	sum := 0.0
	for i := range a {
		sum += a[i] * b[i]
	}
	return sum
}
