package beat

const (
	looseOver   = 4 // counts on either side that certainty is averaged over: two bars
	fewestLoose = 8 // counts: less is a fill
)

// loose are the stretches of a part in which its beats are not to be trusted,
// from-to [s]: the ear hardly hears them, and no straight line carries them
// there from where it does.
func (p part) loose(strength []float64) [][2]float64 {
	if p.Steady {
		return nil
	}
	var out [][2]float64
	first := 0 // of the run of counts hardly heard
	for k := 0; k <= len(p.Beats); k++ {
		if k < len(p.Beats) && average(strength[max(0, k-looseOver):min(len(strength), k+looseOver+1)]) < leastSure {
			continue
		}
		if k-first >= fewestLoose {
			out = append(out, [2]float64{p.Beats[first], p.Beats[k-1] + p.Period})
		}
		first = k + 1
	}
	return out
}

func average(x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += v
	}
	return sum / float64(max(1, len(x)))
}
