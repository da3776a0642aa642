package synth

import "math"

// instrument is one voice of the band; each has a strip of its own in the mix.
type instrument int

const (
	kick instrument = iota
	snare
	clap
	rim
	hat
	openHat
	ride
	crash
	shaker
	tambourine
	tom
	bass
	stab
	pad
	lead
	pluck
	arp
	riser
	impact
	wash
	instruments // how many there are
)

// note is one sound to be made.
type note struct {
	at    float64 // [s]
	dur   float64 // until it is let go [s]
	pitch float64 // MIDI note number, 69 = 440 Hz
	vel   float64 // loudness, 0-1
	pan   float64 // -1 left to 1 right
}

// score is what every instrument plays.
type score [instruments][]note

// hertz is the frequency of a MIDI note number [Hz].
func hertz(pitch float64) float64 { return 440 * math.Exp2((pitch-69)/12) }
