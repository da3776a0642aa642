package bare

import (
	"math"
	"math/rand/v2"
	"slices"
)

const ringing = 2.0 // after the last count [s]

// player renders one song.
type player struct {
	Song
	r   *rand.Rand
	out []float64
	kit kit
}

// Render makes the sound, mono, with nothing louder than 1.
func (s Song) Render() []float32 {
	t := s.Truth()
	p := &player{Song: s, r: rand.New(rand.NewPCG(s.Seed, 0x50))}
	p.out = make([]float64, int((t.Beats[len(t.Beats)-1]+s.Count()+ringing)*Rate))
	p.kit = newKit(p.r)
	for i := range s.PickUp {
		p.strike(p.kit.snare, t.Beats[i], 0.6)
	}
	for i, start := range t.Starts {
		p.phrase(t.Beats[start], s.Phrases[i], i+1 < len(t.Starts) || s.Last)
	}
	if s.Last {
		last := t.Beats[len(t.Beats)-1]
		p.strike(p.kit.kick, last, 1)
		p.strike(p.kit.crash, last, 0.7)
		p.chord(last, 1.5, s.Chords[0][0])
	}
	peak := 1e-9
	for _, v := range p.out {
		peak = max(peak, math.Abs(v))
	}
	sound := make([]float32, len(p.out))
	for i, v := range p.out {
		sound[i] = float32(0.9 * v / peak)
	}
	return sound
}

// phrase plays one phrase; another follows.
func (p *player) phrase(at float64, ph Phrase, follows bool) {
	end := at + float64(ph.Counts)*p.Count()
	drumsEnd, allEnd, fillFrom := end, end, end
	if follows && ph.Counts > p.Fill && ph.Counts > p.Drop {
		drumsEnd = end - float64(p.Drop)*p.Count()
		allEnd = end - float64(p.Hush)*p.Count()
		fillFrom = end - float64(p.Fill)*p.Count()
		p.fill(fillFrom, min(drumsEnd, allEnd))
		if p.Swell > 0 && p.Hush == 0 {
			p.swell(end-float64(p.Swell)*p.Count(), end)
		}
	}
	drumsEnd = min(drumsEnd, allEnd)
	if p.Crash {
		p.strike(p.kit.crash, at, 0.8)
	}
	playing := func(k int) bool { return !slices.Contains(ph.Out, k) }
	g := p.Groove
	n := ph.Counts * g.Steps
	for i := range n {
		t := at + float64(i)/float64(g.Steps)*p.Count()
		for k, line := range []string{g.Kick, g.Snare, g.Hats} {
			if t < drumsEnd-1e-6 && line[i%len(line)] == 'x' && playing(k) && !(k == Snare && t > fillFrom-1e-6) {
				p.strike([]drum{p.kit.kick, p.kit.snare, p.kit.hat}[k], t, []float64{1, 0.8, 0.5}[k])
			}
		}
		loop := p.Chords[ph.Loop]
		degree := loop[i/g.Steps/p.Bar()%len(loop)]
		if t < allEnd-1e-6 && g.Bass[i%len(g.Bass)] == 'x' && playing(Bass) {
			p.tone(p.kit.bass, t, 0.8/float64(g.Steps)*2*p.Count(), p.key(degree)-12, 0.7)
		}
		if i%(g.Steps*p.Bar()) == 0 && playing(Chords) && t < allEnd-1e-6 {
			p.chord(t, min(float64(p.Bar())*p.Count()*0.95, allEnd-t), degree)
		}
	}
	if playing(Melody) {
		p.melody(at, allEnd, p.Melody[ph.Loop])
	}
}

func (p *player) melody(at, end float64, line []Sound) {
	last := line[len(line)-1].At
	loop := math.Ceil((last+0.01)/float64(p.Bar())) * float64(p.Bar()) * p.Count()
	for from := at; from < end-1e-6; from += loop {
		for _, n := range line {
			if t := from + n.At*p.Count(); t < end-1e-6 {
				p.tone(p.kit.lead, t, min(n.Len*p.Count(), end-t), p.key(n.Degree)+24, 0.35)
			}
		}
	}
}

// fill plays eighths, or sixteenths, of growing strength until a time [s].
func (p *player) fill(from, to float64) {
	counts := float64(p.Fill)
	step := 0.5
	if p.Fill <= 2 {
		step = 0.25
	}
	for c := 0.0; c < counts; c += step {
		if p.Build && c >= counts/2 {
			step = 0.25
		}
		t := from + c*p.Count()
		if t >= to-1e-6 {
			return
		}
		d := p.kit.snare
		if p.Toms {
			d = p.kit.tom(c / counts)
		}
		p.strike(d, t, 0.5+0.5*c/counts)
	}
}

// key is the MIDI key of a scale degree in the octave below middle C.
func (p *player) key(degree int) float64 {
	scale := []int{0, 2, 4, 5, 7, 9, 11}
	if p.Minor {
		scale = []int{0, 2, 3, 5, 7, 8, 10}
	}
	return float64(48 + p.kit.root + 12*(degree/7) + scale[degree%7])
}

// chord plays a triad.
func (p *player) chord(at, length float64, degree int) {
	for _, k := range []int{0, 2, 4} {
		p.tone(p.kit.chord, at, length, p.key(degree+k)+12, 0.3)
	}
}
