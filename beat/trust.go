package beat

import "math"

const (
	// leastClarity parts music from speech, noise and free playing: of 82
	// recordings of those the clearest but steady tones had 0.013, of the 58
	// tracks of one tempo in the test corpus the least clear 0.028.
	leastClarity = 0.015
	// leastHits is the share of counts on which a sound must begin; a steady
	// tone has a period, but no beat.
	leastHits = 0.05
	// leastSure is the mean activation of the ear on its counts below which it
	// hears no music: of 20 held-out tracks of speech, noise, applause and stray
	// notes the greatest was 0.20, of 150 of music the least 0.48.
	leastSure = 0.45
	// halfSure and sureSlope turn that mean into the probability that the beats
	// are right (F at least 0.9), by hand after 150 tracks, 60 of the test corpus
	// and 90 held out: right were 6 of 13 between 0.6 and 0.7, 27 of 32 to 0.8,
	// 97 of 99 to 0.9.
	halfSure  = 0.66
	sureSlope = 18
	// unheardClarity is the least clarity of sound that the ear takes for no
	// music but that has a beat all the same: bare clicks have 0.17 or more,
	// speech and noise 0.013 or less.
	unheardClarity = 0.1
	// unheardTrust is as far as such beats are trusted: nobody measured.
	unheardTrust = 0.5
)

// trustOf is the probability that the beats of a part are right; 0 where there
// is no beat to trust.
func trustOf(p part) float64 {
	if len(p.readings) == 0 || p.clarity < p.least || p.hits < leastHits {
		return 0
	}
	if !p.heard {
		return unheardTrust
	}
	if p.sure < leastSure {
		return 0
	}
	return 1 / (1 + math.Exp(sureSlope*(halfSure-p.sure)))
}
