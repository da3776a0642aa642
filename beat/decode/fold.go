package decode

import (
	"fmt"
	"math"
)

// fold brings any number of channels down to the two that analysis and ear
// need. Mono and stereo pass unchanged.
type fold struct {
	in, out     int
	left, right []float32 // gain of each channel in the mix
}

// speaker is the bit of a channel in the mask of WAV and FLAC.
type speaker uint32

const (
	frontLeft speaker = 1 << iota
	frontRight
	frontCentre
	lowFrequency
	backLeft
	backRight
	leftOfCentre
	rightOfCentre
	backCentre
	sideLeft
	sideRight
)

// usualMasks are the speakers by number of channels where a file names none.
//
// Ref: FLAC format, channel assignment (RFC 9639, section 9.1.3).
var usualMasks = [...]speaker{
	3: frontLeft | frontRight | frontCentre,
	4: frontLeft | frontRight | backLeft | backRight,
	5: frontLeft | frontRight | frontCentre | backLeft | backRight,
	6: frontLeft | frontRight | frontCentre | lowFrequency | backLeft | backRight,
	7: frontLeft | frontRight | frontCentre | lowFrequency | backCentre | sideLeft | sideRight,
	8: frontLeft | frontRight | frontCentre | lowFrequency | backLeft | backRight | sideLeft | sideRight,
}

// newFold prepares the mix of in channels, in the order of the mask's bits.
//
// Ref: ITU-R BS.775-3, annex 4: centre and surround at -3 dB, no LFE. The sum
// is brought down so that it cannot clip.
func newFold(in int, mask uint32) *fold {
	f := &fold{in: in, out: min(in, 2)}
	if in <= 2 {
		return f
	}
	speakers := listSpeakers(in, mask)
	f.left, f.right = make([]float32, in), make([]float32, in)
	var sumLeft, sumRight float64
	for _, s := range speakers {
		left, right := s.gains()
		sumLeft += left
		sumRight += right
	}
	for i, s := range speakers {
		left, right := s.gains()
		f.left[i], f.right[i] = float32(left/max(1, sumLeft)), float32(right/max(1, sumRight))
	}
	return f
}

// listSpeakers is the speaker of each channel, 0 for one without.
func listSpeakers(in int, mask uint32) []speaker {
	m := speaker(mask)
	if m == 0 && in < len(usualMasks) {
		m = usualMasks[in]
	}
	list := make([]speaker, in)
	i := 0
	for bit := frontLeft; bit != 0 && i < in; bit <<= 1 {
		if m&bit != 0 {
			list[i] = bit
			i++
		}
	}
	return list
}

// gains is the part of a speaker in the left and the right channel.
func (s speaker) gains() (left, right float64) {
	const minus3dB = math.Sqrt2 / 2
	switch s {
	case frontLeft:
		return 1, 0
	case frontRight:
		return 0, 1
	case lowFrequency:
		return 0, 0
	case backLeft, sideLeft, leftOfCentre:
		return minus3dB, 0
	case backRight, sideRight, rightOfCentre:
		return 0, minus3dB
	}
	return minus3dB, minus3dB // the centre, and what stands nowhere
}

// mix writes the channels of src to dst and returns how many samples it wrote.
func (f *fold) mix(dst, src []float32) int {
	if f.in == f.out {
		return copy(dst, src)
	}
	n := 0
	for ; len(src) >= f.in; src = src[f.in:] {
		var l, r float32
		for ch, v := range src[:f.in] {
			l += v * f.left[ch]
			r += v * f.right[ch]
		}
		dst[n], dst[n+1] = l, r
		n += 2
	}
	return n
}

func (f *fold) notes() []string {
	if f.in == f.out {
		return nil
	}
	return []string{fmt.Sprintf("%d channels folded to 2", f.in)}
}
