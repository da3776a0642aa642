package beat

import (
	"slices"

	"onphrase/beat/reading"
	"onphrase/beat/tempo"
)

// evidence is what the readings of a stretch are weighed by.
func (c cues) evidence(s tempo.Stretch) reading.Evidence {
	course := func(fps float64, frames int, row func(i int) []float32) reading.Course {
		return reading.NewCourse(fps, min(frames, int(s.From*fps)), min(frames, int(s.To*fps)+1), row)
	}
	return reading.Evidence{
		Curves: append(slices.Clone(c.bands), c.novelty),
		FPS:    c.fps,
		Courses: []reading.Course{
			course(c.tones.FPS, c.tones.Len(), c.tones.ChromaAt),
			course(c.tones.FPS, c.tones.Len(), c.tones.BassAt),
			course(c.frames.FPS, c.frames.Len(), c.colour).Centred(),
		},
		Period: s.Curve.At,
	}
}

// together is how many bands of the spectrum are heard as one: half an octave.
const together = 4

// colour is frame i of the spectrum, coarsely.
func (c cues) colour(i int) []float32 {
	var out []float32
	for bands := range slices.Chunk(c.frames.At(i), together) {
		sum := float32(0)
		for _, v := range bands {
			sum += v
		}
		out = append(out, sum/float32(len(bands)))
	}
	return out
}
