package ear

import (
	"fmt"

	"onphrase/beat/spectral"
)

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
	return trained().listen(f, blockFrames)
}

// ListenWith is Listen with the network of a weights file: so candidates are
// measured before one is embedded.
func ListenWith(weights []byte, f *spectral.Frames) (Activation, error) {
	n, err := parse(weights)
	if err != nil {
		return Activation{}, fmt.Errorf("ear: %w", err)
	}
	return n.listen(f, blockFrames), nil
}

// listen works in blocks. Each is heard with all the surroundings that its
// frames depend on, so the result does not depend on the size of the blocks.
func (n *network) listen(f *spectral.Frames, block int) Activation {
	frames := f.Len()
	a := Activation{FPS: f.FPS, Beat: make([]float64, frames), One: make([]float64, frames)}
	for from := 0; from < frames; from += block {
		to := min(frames, from+block)
		low, high := max(0, (from-reach)/margin*margin), min(frames, to+reach)
		out := n.run(f.Rows(low, high))
		for i := from; i < to; i++ {
			a.Beat[i] = sigmoid(out[2*(i-low)])
			a.One[i] = sigmoid(out[2*(i-low)+1])
		}
	}
	return a
}
