package ear

import "onphrase/beat/spectral"

// Activation says how likely a count is at each frame.
type Activation struct {
	FPS  float64   // frames per second; frame i belongs to time i/FPS [s]
	Beat []float64 // any count, 0-1
	One  []float64 // a count 1, 0-1; never much above Beat
}

// blockFrames is how many frames are worked on at a time: over five minutes of
// music, so that a song is one block and a long mix needs no more memory.
const blockFrames = 16384

// Listen hears the counts of a track. f must come from spectral.Recorder: the
// network knows no other front-end.
func Listen(f *spectral.Frames) Activation {
	return listen(f, blockFrames)
}

// listen works in blocks. Each is heard with all the surroundings that its
// frames depend on, so the result does not depend on the size of the blocks.
func listen(f *spectral.Frames, block int) Activation {
	n := f.Len()
	a := Activation{FPS: f.FPS, Beat: make([]float64, n), One: make([]float64, n)}
	for from := 0; from < n; from += block {
		to := min(n, from+block)
		low, high := max(0, from-reach), min(n, to+reach)
		out := trained.run(f.Level[low*bands : high*bands])
		for i := from; i < to; i++ {
			a.Beat[i] = sigmoid(out[2*(i-low)])
			a.One[i] = sigmoid(out[2*(i-low)+1])
		}
	}
	return a
}
