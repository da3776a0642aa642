package synth

import "math"

const (
	targetPower = -15.2 // mean square of the loud blocks, bass left out [dB]; about -14 LUFS
	ceiling     = 0.84  // highest sample, with room for what a lossy encoder adds (-1.5 dBFS)
)

// master makes a mix as loud as music is sold, and keeps it below the ceiling.
func master(b *buffer) {
	var low [2]filter
	for i := range low {
		low[i].tune(28, 0, b.rate)
	}
	for i := range b.l {
		low[0].feed(float64(b.l[i]))
		low[1].feed(float64(b.r[i]))
		b.l[i], b.r[i] = float32(low[0].high), float32(low[1].high)
	}
	glue(b)
	gain := math.Pow(10, (targetPower-power(b))/20)
	for i := range b.l {
		b.l[i], b.r[i] = warm(b.l[i], gain), warm(b.r[i], gain)
	}
	limit(b)
}

// glue is a slow compressor: where the mix is loud it turns it down by a share
// of the excess [dB], so that a breakdown is not lost beside a drop.
func glue(b *buffer) {
	const attack, release, below, share = 0.03, 0.5, 10, 0.3 // [s], [s], [dB] under the mean, of the excess
	threshold := power(b) - below
	up, down := 1-math.Exp(-1/(attack*b.rate)), 1-math.Exp(-1/(release*b.rate))
	level := 0.0
	for i := range b.l {
		x := float64(b.l[i])*float64(b.l[i]) + float64(b.r[i])*float64(b.r[i])
		pace := down
		if x > level {
			pace = up
		}
		level += pace * (x - level)
		if excess := 10*math.Log10(level+1e-12) - threshold; excess > 0 {
			g := float32(math.Pow(10, -share*excess/20))
			b.l[i] *= g
			b.r[i] *= g
		}
	}
}

// warm is a gentle saturation that rounds the highest peaks.
func warm(x float32, gain float64) float32 {
	const knee = 1.5
	return float32(knee * math.Tanh(gain*float64(x)/knee))
}

// power is the mean square of the blocks that are not much quieter than the
// rest, bass left out as the ear does [dB]. It is a rough ITU-R BS.1770: a
// high pass in place of the K filter, one gate, 10 LU below the mean.
func power(b *buffer) float64 {
	const block = 0.4 // [s]
	var f [2]filter
	f[0].tune(90, 0, b.rate)
	f[1].tune(90, 0, b.rate)
	n := max(1, int(block*b.rate))
	var blocks []float64
	sum := 0.0
	for i := range b.l {
		f[0].feed(float64(b.l[i]))
		f[1].feed(float64(b.r[i]))
		sum += f[0].high*f[0].high + f[1].high*f[1].high
		if (i+1)%n == 0 {
			blocks = append(blocks, sum/float64(n))
			sum = 0
		}
	}
	gate := mean(blocks, 0) / 10
	return 10 * math.Log10(math.Max(mean(blocks, gate), 1e-12))
}

// mean is the mean of the values above gate, 0 if there are none.
func mean(values []float64, gate float64) float64 {
	sum, n := 0.0, 0
	for _, v := range values {
		if v > gate {
			sum += v
			n++
		}
	}
	if n == 0 {
		return 0
	}
	return sum / float64(n)
}

// limit keeps every sample at or below the ceiling: it sees a peak coming and
// is down by the time it arrives, then lets go slowly.
func limit(b *buffer) {
	const ahead, release = 0.003, 0.09 // [s]
	n := max(1, int(ahead*b.rate))
	ease := 1 - math.Exp(-1/(release*b.rate))
	need := make([]float64, len(b.l)+n) // gain that each sample asks for, held for the look-ahead
	for i := range need {
		need[i] = 1
	}
	for i := range b.l {
		peak := math.Max(math.Abs(float64(b.l[i])), math.Abs(float64(b.r[i])))
		if peak > ceiling {
			for k := range n {
				need[i+k] = math.Min(need[i+k], ceiling/peak)
			}
		}
	}
	// need[i+k] now covers the n samples before i+n: the sound is read n behind,
	// and the gain is smoothed by a mean over those n, which ends on the target.
	held, sum := 1.0, float64(n)
	window := make([]float64, n)
	for i := range window {
		window[i] = 1
	}
	for i := range need {
		held = math.Min(need[i], held+ease*(1-held))
		sum += held - window[i%n]
		window[i%n] = held
		if k := i - n + 1; k >= 0 && k < len(b.l) {
			g := float32(sum / float64(n))
			b.l[k] *= g
			b.r[k] *= g
		}
	}
}
