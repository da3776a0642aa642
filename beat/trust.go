package beat

import (
	"math"

	"onphrase/beat/phrase"
)

const (
	// leastClarity parts music from speech, noise and free playing: of 82
	// recordings of those the clearest but steady tones had 0.013, of the 58
	// tracks of one tempo in the test corpus the least clear 0.028.
	leastClarity = 0.015
	// leastHits is the share of counts on which a sound must begin; a steady
	// tone has a period, but no beat.
	leastHits = 0.05
	// leastSure is the mean activation of the ear below which it hears no music on
	// counts, and sound leads: of the sounds without a beat that were rendered for the
	// purpose the greatest was 0.06, of the music that it heard right the least
	// 0.32 (beat/learn/trust).
	leastSure = 0.2
	// sureAlone is the mean activation from which the ear's word is enough: of 300
	// sounds without a beat the greatest was 0.31 with the network before, chords at random. Some music
	// that it hears right, at 0.44 and more, repeats no more clearly than they do.
	sureAlone = 0.4
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
	if p.half > 0 {
		return p.half * p.signs.trust()
	}
	return p.signs.trust()
}

// Signs tell how far the beats of a stretch are to be trusted.
type Signs struct {
	Sure  float64 // mean activation of the ear on them, 0-1
	Share float64 // of all its activation, what falls on them, 0-1
	Odds  float64 // of this way of counting among its rivals, 0-1
}

const (
	onCount   = 0.05  // activation that falls on a count is no further off [s]
	leastOdds = 1e-3  // odds below which nothing is told any more
	mostSign  = 0.995 // of a share of activation, beyond which nothing is told
)

// Values are the signs as the weights of trust take them, the constant first.
func (s Signs) Values() []float64 {
	sure := min(mostSign, max(1-mostSign, s.Sure))
	return []float64{1, math.Log(sure / (1 - sure)), s.Share, math.Log(max(leastOdds, s.Odds))}
}

// trust is the probability that the beats are right: F of 0.9 or more.
func (s Signs) trust() float64 {
	logOdds := 0.0
	for i, v := range s.Values() {
		logOdds += trustWeights[i] * v
	}
	return 1 / (1 + math.Exp(-logOdds))
}

// signs are what the ear and the odds of their reading tell of beats.
func (c cues) signs(beats []float64, odds float64) Signs {
	return Signs{
		Sure:  certainty(beats, c.hearing.Beat, c.hearing.FPS),
		Share: share(beats, c.hearing.Beat, c.hearing.FPS),
		Odds:  odds,
	}
}

// share is how much of the activation x between the first beat [s] and the last
// falls on beats, 0-1.
func share(beats, x []float64, fps float64) float64 {
	if len(beats) == 0 {
		return 0
	}
	on, all := 0.0, 0.0
	from, to := int((beats[0]-onCount)*fps), int((beats[len(beats)-1]+onCount)*fps)
	for i := max(0, from); i <= min(to, len(x)-1); i++ {
		t := float64(i) / fps
		all += x[i]
		if math.Abs(beats[nearest(beats, t)]-t) <= onCount {
			on += x[i]
		}
	}
	return on / max(all, math.SmallestNonzeroFloat64)
}

// PhraseTrust is how far a phrase start is to be trusted, 0-1, given the trust
// in it where bars are right and the trust in count 1: both have to be right.
func PhraseTrust(start, count1 float64) float64 {
	logOdds := barsWeights[0] + barsWeights[1]*phrase.LogOdds(count1)
	return start / (1 + math.Exp(-logOdds))
}
