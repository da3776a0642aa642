package synth

import "math"

// strip is an instrument's place in the mix.
type strip struct {
	gain float64
	room float64 // sent to the reverb, 0-1
	echo float64 // sent to the echo, 0-1
	duck float64 // how far the kick pushes it down, 0-1
}

// strips is the mixing desk.
var strips = [instruments]strip{
	kick:       {gain: 0.56},
	snare:      {gain: 0.68, room: 0.16},
	clap:       {gain: 0.7, room: 0.18},
	rim:        {gain: 0.26, room: 0.15, echo: 0.1},
	hat:        {gain: 0.5, room: 0.03},
	openHat:    {gain: 0.42, duck: 0.3},
	ride:       {gain: 0.32, room: 0.05},
	crash:      {gain: 0.42, room: 0.15},
	shaker:     {gain: 0.42, duck: 0.2},
	tambourine: {gain: 0.4, room: 0.08},
	tom:        {gain: 0.55, room: 0.14},
	bass:       {gain: 0.35, duck: 0.65},
	stab:       {gain: 0.34, room: 0.22, echo: 0.06, duck: 0.45},
	pad:        {gain: 0.22, room: 0.3, duck: 0.6},
	lead:       {gain: 0.38, room: 0.16, echo: 0.22, duck: 0.25},
	pluck:      {gain: 0.48, room: 0.25, echo: 0.3, duck: 0.15},
	arp:        {gain: 0.3, room: 0.16, echo: 0.25, duck: 0.45},
	riser:      {gain: 0.28, room: 0.2},
	impact:     {gain: 0.34, room: 0.2},
	wash:       {gain: 0.3, room: 0.3},
}

// mix is the desk with a song on it.
type mix struct {
	song       Song
	score      *score
	orchestra  *orchestra
	pushed     []float32 // 1 just after a kick, falling to 0
	dry, one   *buffer   // the mix so far; the instrument being played
	room, echo *buffer   // what is sent to the effects
}

func newMix(s Song, g *grid, sc *score) *mix {
	n := int((g.end() + ringing) * float64(s.Rate))
	empty := func() *buffer { return newBuffer(float64(s.Rate), n) }
	m := &mix{song: s, score: sc, orchestra: newOrchestra(s), dry: empty(), one: empty(), room: empty(), echo: empty()}
	m.pushed = pushes(sc[kick], m.dry.rate, n)
	return m
}

// play mixes every instrument and the effects.
func (m *mix) play() *buffer {
	for in := range instruments {
		if len(m.score[in]) == 0 {
			continue
		}
		m.one.clear()
		for _, n := range m.score[in] {
			m.orchestra.sound(in, m.one, n)
		}
		m.blend(strips[in])
	}
	pingPong(m.echo, 0.75*60/m.song.BPM, 0.42)
	sum(m.dry, m.echo, 1)
	sum(m.room, m.echo, 0.3)
	newHall(m.dry.rate).fill(m.room)
	sum(m.dry, m.room, 1)
	return m.dry
}

// blend puts the instrument just played through its strip.
func (m *mix) blend(s strip) {
	for i := range m.one.l {
		g := float32(s.gain * (1 - s.duck*float64(m.pushed[i])))
		l, r := g*m.one.l[i], g*m.one.r[i]
		m.dry.l[i] += l
		m.dry.r[i] += r
		m.room.l[i] += l * float32(s.room)
		m.room.r[i] += r * float32(s.room)
		m.echo.l[i] += l * float32(s.echo)
		m.echo.r[i] += r * float32(s.echo)
	}
}

// sum adds gain times src to dst.
func sum(dst, src *buffer, gain float32) {
	for i := range dst.l {
		dst.l[i] += gain * src.l[i]
		dst.r[i] += gain * src.r[i]
	}
}

// pushes is the curve of the side chain: it jumps with each kick and eases
// back over about an eighth.
func pushes(kicks []note, rate float64, n int) []float32 {
	const attack, length = 0.006, 0.22 // [s]
	out := make([]float32, n)
	for _, k := range kicks {
		first := int(k.at * rate)
		for i := range int(length * rate) {
			if first+i >= n {
				break
			}
			t := float64(i) / rate
			x := k.vel * math.Min(1, t/attack) * 0.5 * (1 + math.Cos(math.Pi*t/length))
			out[first+i] = max(out[first+i], float32(x))
		}
	}
	return out
}
