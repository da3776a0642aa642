package synth

import (
	"math/rand/v2"
)

// ringing is how long the sound rings on after the last count [s].
const ringing = 1.5

// Render makes the sound of a song. It panics on a song that cannot be made,
// such as one without sections or at 500 counts a minute.
func Render(s Song) *Sound {
	s = s.withDefaults()
	g := newGrid(s)
	sc := compose(s, g)
	b := newMix(s, g, sc).play()
	master(b)
	return &Sound{Rate: s.Rate, Left: b.l, Right: b.r}
}

// orchestra turns notes into sound.
type orchestra struct {
	kit  kit
	band band
	rng  noise
}

func newOrchestra(s Song) *orchestra {
	rng := noise(rand.New(rand.NewPCG(s.Seed, 6)).Uint64() | 1)
	return &orchestra{kit: newKit(&rng), band: manners[s.Style].patch, rng: rng}
}

// sound plays one note of an instrument.
func (o *orchestra) sound(in instrument, b *buffer, n note) {
	k, rng := o.kit, &o.rng
	switch in {
	case kick:
		k.kick(b, n, rng)
	case snare:
		k.snare(b, n, rng)
	case clap:
		k.clap(b, n, rng)
	case rim:
		k.rim(b, n, rng)
	case tom:
		k.tom(b, n, rng)
	case hat:
		k.strike(hatAlloy, b, n, rng)
	case openHat:
		k.strike(openAlloy, b, n, rng)
	case ride:
		k.strike(rideAlloy, b, n, rng)
	case crash:
		k.strike(crashAlloy, b, n, rng)
	case tambourine:
		k.strike(jingleAlloy, b, n, rng)
	case shaker:
		k.shake(b, n, rng)
	case riser:
		rise(b, n, rng)
	case impact:
		boom(b, n, rng)
	case wash:
		breathe(b, n, rng)
	default:
		o.patch(in).play(b, n, rng)
	}
}

// patch is the recipe of a pitched instrument.
func (o *orchestra) patch(in instrument) patch {
	switch in {
	case bass:
		return o.band.bass
	case stab:
		return o.band.stab
	case pad:
		return o.band.pad
	case lead:
		return o.band.lead
	case arp:
		return o.band.arp
	}
	return o.band.pluck
}
