package beat

import "onphrase/beat/reading"

// OtherOctave is the other tempo at which music of this one may be counted, where
// no class is taught at it [1/min]: half of it where it is faster, double where it
// is slower; 0 where one is.
func (t Track) OtherOctave() float64 {
	switch {
	case t.BPM > reading.FastestTaught:
		return t.BPM / 2
	case t.BPM > 0 && t.BPM < reading.SlowestTaught:
		return 2 * t.BPM
	}
	return 0
}
