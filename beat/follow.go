package beat

import (
	"math"
	"slices"

	"onphrase/beat/ear"
	"onphrase/beat/grid"
	"onphrase/beat/pulse"
	"onphrase/beat/reading"
	"onphrase/beat/tempo"
)

const (
	slowest, fastest = 50.0, 215.0 // counts [1/min]

	steadiness   = 30    // of the pulse, once the tempo is known
	periodSpread = 0.005 // how far a count may stray from the tempo's period, relative
	noJump       = -1e9  // within a stretch the tempo does not jump
)

// limits are the periods that count as counts.
var limits = reading.Limits{Shortest: 60 / fastest, Longest: 60 / slowest}

// part is a stretch of a track with its beats.
type part struct {
	tempo.Stretch
	grid.Grid
	readings []reading.Reading // likeliest first, without beats and clues
	clarity  float64           // how clearly the music repeats; see tempo.Clarity
	hits     float64           // share of the counts on which a sound begins, 0-1
	heard    bool              // the ear led
	signs    Signs             // of its beats being right; none where the ear heard none
	unsure   [][2]float64      // from-to [s]: where its beats are not to be trusted
	half     float64           // probability of the beats against those half a count away, where both were counted; else 0
	least    float64           // clarity without which there is no beat
}

// parts follows the track stretch by stretch.
func (h *heard) parts(c cues) []part {
	tempi := tempo.Measure(c.bands, h.onsets.FPS)
	path := tempi.Path()
	stretches := []tempo.Stretch{{To: h.duration, Curve: path}}
	if !c.left.has(Tempo) {
		stretches = path.Stretches(h.duration)
	}
	var parts []part
	for _, s := range stretches {
		p := follow(s, h, c)
		p.clarity = tempi.Clarity(s)
		parts = append(parts, p)
	}
	h.join(parts)
	return h.oneTempo(parts, c)
}

// follow finds the beats of one stretch and puts them to where the sounds begin.
func follow(s tempo.Stretch, h *heard, c cues) part {
	all := c.readings(s)
	if len(all) == 0 {
		return part{Stretch: s}
	}
	beats := c.audible(fromStart(all[0].Beats))
	hits := grid.Hits(beats, h.attack.Energy, h.attack.FPS)
	p := part{Stretch: s, Grid: grid.Fit(beats, hits), readings: bare(all), hits: sounding(hits), heard: c.heard,
		least: c.least}
	if c.heard && p.hits < leastHits {
		return follow(s, h, c.bySound()) // it counted the gaps between the sounds
	}
	if c.heard {
		p.signs = c.signs(p.Beats, all[0].Odds)
		if p.signs.Sure < leastSure { // what it heard is not what these counts are
			c.least = max(c.least, unheardClarity)
			return follow(s, h, c.bySound())
		}
		p.unsure = p.loose(c.strength(p.Beats), hits)
	}
	if c.left.has(Grid) {
		p.Beats = beats
	}
	return p
}

// readings follows the music of a stretch at every level and weighs all ways of
// counting it, those of the ear among them.
func (c cues) readings(s tempo.Stretch) []reading.Reading {
	counts := between(c.chain.beats, s.From, s.To)
	if c.left.has(Tempo) {
		return reading.Lead(nil, counts)
	}
	if c.left.has(Octave) {
		return firstLevel(c.candidates(s), counts, s.Curve.At((s.From+s.To)/2))
	}
	return reading.Choose(c.heardOf(s))
}

// heardOf are all ways of counting a stretch, the ear's own among them, with
// their clues.
func (c cues) heardOf(s tempo.Stretch) []reading.Reading {
	all := c.candidates(s)
	var led *reading.Ear
	if c.heard {
		led = c.earOf(s)
		all = append(all, led.Own(limits)...)
	}
	reading.Listen(all, c.evidence(s), led)
	return all
}

// earOf is what the ear hears of a stretch.
func (c cues) earOf(s tempo.Stretch) *reading.Ear {
	return &reading.Ear{Beat: c.hearing.Beat, One: c.hearing.One, FPS: c.hearing.FPS,
		Counts: between(c.chain.beats, s.From, s.To)}
}

// candidates are all ways of counting a stretch, but for those that count the
// gaps between its sounds.
func (c cues) candidates(s tempo.Stretch) []reading.Reading {
	from, to := int(s.From*c.fps), min(int(s.To*c.fps), len(c.activation))
	model := pulse.Model{FPS: c.fps, Meter: 1, Steadiness: steadiness, Spread: periodSpread, Jump: noJump,
		Slots: pulse.Default(c.fps).Slots}
	all := reading.Candidates(c.activation[from:to], s.From, s.Curve, limits, model)
	return slices.DeleteFunc(all, func(r reading.Reading) bool { return c.silent(r.Beats) })
}

// silent reports whether nothing begins on nearly any of some beats.
func (c cues) silent(beats []float64) bool {
	n := 0
	for _, v := range at(beats, c.sound, c.fps) {
		if v >= leastHeard {
			n++
		}
	}
	return float64(n) < leastHits*float64(len(beats))
}

// Readings lists all ways of counting each stretch of a piece of music, with
// their clues, twice: as if the ear heard nothing, and as it hears. The weights
// of package reading are fitted to them.
func Readings(src Source) (bySound, heard [][]reading.Reading, err error) {
	h, err := listen(src)
	if err != nil {
		return nil, nil, err
	}
	c := h.cues(ear.Listen(h.frames), nil)
	deaf := c.bySound()
	for _, s := range tempo.Measure(c.bands, c.fps).Path().Stretches(h.duration) {
		bySound = append(bySound, deaf.heardOf(s))
		if c.heard {
			heard = append(heard, c.heardOf(s))
		}
	}
	return bySound, heard, nil
}

// firstLevel takes the counts of the ear as they are, or, where it heard none,
// the level that the music repeats at most, on the beats decoded there.
func firstLevel(all []reading.Reading, counts []float64, period float64) []reading.Reading {
	if len(counts) > 0 {
		return reading.Lead(all, counts)
	}
	i := slices.IndexFunc(all, func(r reading.Reading) bool { return r.Period == period })
	if i < 0 {
		return all
	}
	return all[i : i+1]
}

// sounding is the share of hits at which a sound begins.
func sounding(hits []grid.Hit) float64 {
	n := 0
	for _, h := range hits {
		if h.Weight > 0 {
			n++
		}
	}
	return float64(n) / float64(max(1, len(hits)))
}

// early is how much before its sound a beat may be decoded [s].
const early = 0.05

// fromStart adds the count on which a track begins, where it would be decoded at the
// first sample or a little before or after it: music that was cut begins on count 1.
func fromStart(beats []float64) []float64 {
	if len(beats) < 2 {
		return beats
	}
	if before := 2*beats[0] - beats[1]; math.Abs(before) <= early {
		return slices.Insert(slices.Clone(beats), 0, max(0, before))
	}
	return beats
}

// leastHeard is the activation that shows that something sounds.
const leastHeard = 0.15

// audible leaves out the beats at both ends between which nothing begins. On the
// first sample nothing can be heard to begin: a beat there is audible if the
// track is about as loud from the start as it is a beat later.
func (c cues) audible(beats []float64) []float64 {
	first, last := len(beats), -1
	for i := range beats {
		if heardWithin(beats, i, c.sound, c.fps) {
			first, last = min(first, i), i
		}
	}
	if last < 0 {
		return nil
	}
	const asLoud = 0.75
	if first == 1 && last > 1 && beats[0] <= early && c.loudness(beats[0], beats[1]) >= asLoud*c.loudness(beats[1],
		beats[2]) {
		first = 0
	}
	return beats[first : last+1]
}

// loudness is the mean level of all bands between two times [s].
func (c cues) loudness(from, to float64) float64 {
	sum, n := 0.0, 0.0
	for i := max(0, int(from*c.frames.FPS)); i < min(c.frames.Len(), int(to*c.frames.FPS)); i++ {
		for _, v := range c.frames.At(i) {
			sum += float64(v)
			n++
		}
	}
	return sum / max(1, n)
}

// heardWithin reports whether anything begins between beat i and the next.
func heardWithin(beats []float64, i int, activation []float64, fps float64) bool {
	period := 0.0
	if i+1 < len(beats) {
		period = beats[i+1] - beats[i]
	} else if i > 0 {
		period = beats[i] - beats[i-1]
	}
	from := max(0, int((beats[i]-early)*fps))
	to := min(len(activation), int((beats[i]+period-early)*fps))
	for j := from; j < to; j++ {
		if activation[j] >= leastHeard {
			return true
		}
	}
	return false
}

// bare are readings without their beats and clues: of all rivals in a mix of
// hours, they would take the room of many minutes of its sound.
func bare(all []reading.Reading) []reading.Reading {
	out := make([]reading.Reading, len(all))
	for i, r := range all {
		out[i] = reading.Reading{Period: r.Period, Odds: r.Odds}
	}
	return out
}
