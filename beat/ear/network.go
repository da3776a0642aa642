package ear

import "math"

// The shape of the network. Its width is in the weights file.
//
// Ref: Davies & Böck 2019, "Temporal convolutional networks for musical audio
// beat tracking"; Böck & Davies 2020, "Deconstruct, analyse, reconstruct: how
// to improve tempo, beat, and downbeat estimation" (two dilations side by
// side). Ours has a dense front instead of a two-dimensional one.
const (
	bands     = 54 // of spectral.Frames
	front     = 28 // channels after the first layer
	frontTaps = 3
	taps      = 5
	outputs   = 2 // beat, count 1

	// reach is how far to either side a frame's answer depends on the sound
	// [frames]: a tap for each front layer, and two taps of the wider dilation
	// 2·2ⁿ for each block n.
	reach = 2 + 2*2*(1<<blockCount-1)
	// blockCount doubles the dilation from block to block.
	blockCount = 9
	// margin is more than a layer looks or writes beyond the ends [frames]: by four
	// of the widest dilation, 1<<blockCount, and one. It is a multiple of two of
	// them, so that blocks begin where pairs of answers do (dilated.first).
	margin = 4 << blockCount
)

// network is a trained network.
type network struct {
	width         int
	mean, scale   []float32 // of each band's level
	first, second conv
	blocks        [blockCount]block
	out           conv
}

// block is a residual block: two convolutions side by side, joined and added
// to what came in.
type block struct {
	near, far dilated
	join      conv
}

// run returns the logits of the frames of level: beat and count 1, in turn.
func (n *network) run(level []float32) []float32 {
	frames := len(level) / bands
	in := newSheet(frames, bands)
	for t := range frames {
		row, x := in.row(t), level[t*bands:(t+1)*bands]
		for b := range row {
			row[b] = (x[b] - n.mean[b]) * n.scale[b]
		}
	}
	mid := newSheet(frames, front)
	n.first.over(mid, in)
	mid.elu()
	x, y, hidden := newSheet(frames, n.width), newSheet(frames, n.width), newSheet(frames, 2*n.width)
	n.second.over(x, mid)
	x.elu()
	for i := range n.blocks {
		n.blocks[i].over(y, x, hidden)
		x, y = y, x
	}
	x.elu()
	out := newSheet(frames, outputs)
	n.out.over(out, x)
	return out.rows()
}

// over writes the block's answer to in to out; hidden is scratch.
func (b *block) over(out, in, hidden *sheet) {
	b.near.over(hidden, 0, in)
	b.far.over(hidden, b.near.out, in)
	hidden.elu()
	b.join.over(out, hidden)
	sum := out.rows()
	for i, v := range in.rows() {
		sum[i] += v
	}
}

// sheet is a table of frames × channels with silence before and after.
type sheet struct {
	frames, channels int
	data             []float32
}

func newSheet(frames, channels int) *sheet {
	return &sheet{frames, channels, make([]float32, (frames+2*margin+group)*channels)}
}

// row is the channels of frame t, which may lie in the margins.
func (s *sheet) row(t int) []float32 {
	i := (t + margin) * s.channels
	return s.data[i : i+s.channels : i+s.channels]
}

// rows is the table without its margins.
func (s *sheet) rows() []float32 {
	return s.data[margin*s.channels : (margin+s.frames)*s.channels]
}

func (s *sheet) elu() { elu(s.rows()) }

func sigmoid(x float32) float64 { return 1 / (1 + math.Exp(-float64(x))) }
