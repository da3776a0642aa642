package synth

// patch is the recipe of a pitched sound.
type patch struct {
	shape   wave
	unison  int     // oscillators a note
	spread  float64 // between the outermost of them [semitones]
	width   float64 // how far they stand apart, 0-1
	bend    float64 // pulse width, or depth of a bell at the stroke [rad]
	ratio   float64 // of a bell's bending sine
	sub     float64 // a sine an octave below, 0-1
	attack  float64 // [s]
	decay   float64 // to the held level [s]
	hold    float64 // level held, 0-1
	release float64 // [s]
	cutoff  float64 // of the low pass when it rests [Hz]
	open    float64 // how far the stroke opens it [octaves]
	close   float64 // how fast it closes again [s]
	ring    float64 // resonance, 0-1
	vibrato float64 // [semitones]
	drive   float64 // saturation; 0 none
}

// The sounds. Each is a place between dark and bright, struck and bowed.
var (
	roundBass = patch{shape: triangle, unison: 1, sub: 0.5, attack: 0.003, decay: 0.25, hold: 0.5, release: 0.06,
		cutoff: 420, open: 1.6, close: 0.12, ring: 0.3, drive: 1.6}
	sawBass = patch{shape: saw, unison: 2, spread: 0.12, sub: 0.5, attack: 0.003, decay: 0.2, hold: 0.6, release: 0.05,
		cutoff: 380, open: 2.4, close: 0.14, ring: 0.35, drive: 1.4}
	pickBass = patch{shape: pulse, bend: 0.35, unison: 1, sub: 0.45, attack: 0.002, decay: 0.35, hold: 0.35, release: 0.06,
		cutoff: 520, open: 2, close: 0.08, ring: 0.15, drive: 1.5}
	subBass = patch{shape: triangle, unison: 1, sub: 0.7, attack: 0.005, decay: 0.5, hold: 0.7, release: 0.1, cutoff: 300,
		open: 1.4, close: 0.1, drive: 2}

	organ = patch{shape: drawbars, unison: 2, spread: 0.06, width: 0.5, attack: 0.004, decay: 0.16, hold: 0.35,
		release: 0.1, cutoff: 4200, open: 1, close: 0.15}
	superStab = patch{shape: saw, unison: 3, spread: 0.3, width: 0.9, attack: 0.004, decay: 0.22, hold: 0.25,
		release: 0.15, cutoff: 1800, open: 2.2, close: 0.18, ring: 0.2}
	guitarStab = patch{shape: saw, unison: 2, spread: 0.1, width: 0.6, attack: 0.002, decay: 0.5, hold: 0.2, release: 0.12,
		cutoff: 2200, open: 1.5, close: 0.2, ring: 0.15, drive: 2.2}
	keys = patch{shape: bell, bend: 1.6, ratio: 1, unison: 2, spread: 0.05, width: 0.4, attack: 0.002, decay: 1.1,
		hold: 0.15, release: 0.2, cutoff: 3500, open: 0.8, close: 0.4}
	pluckStab = patch{shape: pulse, bend: 0.25, unison: 2, spread: 0.12, width: 0.7, attack: 0.002, decay: 0.2, hold: 0.05,
		release: 0.15, cutoff: 900, open: 2.3, close: 0.1, ring: 0.3}

	warmPad = patch{shape: saw, unison: 3, spread: 0.22, width: 1, attack: 0.3, decay: 0.5, hold: 0.8, release: 0.6,
		cutoff: 1700, open: 0.6, close: 1}
	brightPad = patch{shape: saw, unison: 3, spread: 0.3, width: 1, attack: 0.2, decay: 0.6, hold: 0.8, release: 0.6,
		cutoff: 2600, open: 1.2, close: 1.5, ring: 0.1}

	squareLead = patch{shape: pulse, bend: 0.4, unison: 2, spread: 0.1, width: 0.4, attack: 0.006, decay: 0.3, hold: 0.6,
		release: 0.12, cutoff: 2600, open: 1.4, close: 0.25, ring: 0.25, vibrato: 0.12}
	sawLead = patch{shape: saw, unison: 4, spread: 0.28, width: 0.8, attack: 0.006, decay: 0.35, hold: 0.65, release: 0.18,
		cutoff: 3800, open: 1.3, close: 0.3, ring: 0.15, vibrato: 0.08}
	whistle = patch{shape: triangle, unison: 2, spread: 0.06, width: 0.4, attack: 0.02, decay: 0.3, hold: 0.7,
		release: 0.15, cutoff: 4000, open: 0.5, close: 0.3, vibrato: 0.2}
	brass = patch{shape: saw, unison: 3, spread: 0.14, width: 0.5, attack: 0.02, decay: 0.25, hold: 0.6, release: 0.1,
		cutoff: 900, open: 2.4, close: 0.3, ring: 0.1, vibrato: 0.1, drive: 1.2}

	mallet = patch{shape: bell, bend: 2.2, ratio: 4, unison: 1, attack: 0.001, decay: 0.45, hold: 0, release: 0.25,
		cutoff: 5000}
	glass = patch{shape: bell, bend: 1.5, ratio: 3.5, unison: 2, spread: 0.06, width: 0.8, attack: 0.001, decay: 0.9,
		hold: 0, release: 0.4, cutoff: 7000}
	softArp = patch{shape: triangle, unison: 2, spread: 0.1, width: 0.8, attack: 0.002, decay: 0.18, hold: 0.1,
		release: 0.12, cutoff: 2600, open: 1, close: 0.1}
	sawArp = patch{shape: saw, unison: 2, spread: 0.14, width: 0.9, attack: 0.002, decay: 0.16, hold: 0.05, release: 0.1,
		cutoff: 2000, open: 2.2, close: 0.09, ring: 0.3}
)
