package tone

import "math"

// tuning is the mean place of many pitches between the semitones of the
// tempered scale of A = 440 Hz, each taken as a point on a circle.
type tuning struct{ x, y float64 }

// add counts a pitch [semitones] with a weight.
func (t *tuning) add(pitch, weight float64) {
	s, c := math.Sincos(2 * math.Pi * pitch)
	t.x += weight * c
	t.y += weight * s
}

// mean is -0.5 to 0.5 [semitones].
func (t *tuning) mean() float64 {
	if t.x == 0 && t.y == 0 {
		return 0
	}
	return math.Atan2(t.y, t.x) / (2 * math.Pi)
}

// fold brings the thirds of a semitone to pitch classes in the given tuning:
// each counts fully in the class it lies on, and fades to nothing two thirds
// of a semitone away.
func fold(frames []float32, tuning float64) []float32 {
	out := make([]float32, len(frames)/fine)
	for i, v := range frames {
		if v == 0 {
			continue
		}
		frame, bin := i/fineBins, i%fineBins
		pitch := float64(bin)/fine - tuning
		for _, class := range [2]float64{math.Floor(pitch), math.Floor(pitch) + 1} {
			if w := 1 - math.Abs(pitch-class)*fine/2; w > 0 {
				c := (int(class) + Classes) % Classes
				out[frame*Classes+c] += v * float32(w)
			}
		}
	}
	return out
}
