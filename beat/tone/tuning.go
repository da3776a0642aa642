package tone

import "math"

// tuningOf tells how far the notes of a whole recording lie above the
// tempered scale of A = 440 Hz [semitones], from the share of each third of a
// semitone taken as a point on a circle.
func tuningOf(frames []float32) float64 {
	var x, y float64
	for i, v := range frames {
		s, c := math.Sincos(2 * math.Pi * float64(i%fine) / fine)
		x += float64(v) * c
		y += float64(v) * s
	}
	if x == 0 && y == 0 {
		return 0
	}
	return math.Atan2(y, x) / (2 * math.Pi)
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
