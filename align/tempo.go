package align

import "math"

// tempo is the counts a minute as taught and played on the counts from and up
// to to. It names the tempo of the whole track where the difference is no more
// than single counts found a few milliseconds early or late would make.
func (g *grid) tempo(from, to int) float64 {
	whole := g.bpm * g.speed
	if local := g.localTempo(from, to); math.Abs(local/whole-1) > steadyTempo {
		return local
	}
	return whole
}

// steadyTempo is how far the tempo of a few counts may be from that of the
// track and still be the same: people notice no step below about 1.5 %.
//
// Ref: Drake & Botte 1993.
const steadyTempo = 0.01

// leastCounts are the fewest that give a tempo: 16 counts, each of them up to
// beatError off, give it within 0.5 %.
const leastCounts = 2 * eight

// localTempo is the slope of the line through the times of these counts, so
// that no single one decides it.
func (g *grid) localTempo(from, to int) float64 {
	if spare := leastCounts - (to - from); spare > 0 {
		from -= spare / 2
		to = from + leastCounts
	}
	last := len(g.times) - 1
	from, to = max(0, min(from, last-leastCounts)), min(last, max(to, leastCounts))
	if to <= from {
		return g.bpm * g.speed
	}
	middle := float64(from+to) / 2
	sum, square := 0.0, 0.0
	for i := from; i <= to; i++ {
		d := float64(i) - middle
		sum += d * (g.times[i] - g.times[from])
		square += d * d
	}
	return 60 * square / sum * g.speed
}

// tempo is that of the counts the row lies on.
func (r *placedRow) tempo() float64 { return r.music.grid.tempo(r.from, r.to) }

// tempoOn is the tempo of what a part does on a track, and the slowest and the
// fastest of its rows there [BPM]; that of the track where no row is on it.
func (p *placedPart) tempoOn(m *music) (usual, low, high float64) {
	usual = m.grid.bpm * m.grid.speed
	low, high = math.Inf(1), 0
	first, last := -1, -1
	for i := range p.rows {
		r := &p.rows[i]
		if r.music != m || !r.Kind.Work() || r.to <= r.from {
			continue
		}
		if first < 0 {
			first = r.from
		}
		last = r.to
		low, high = min(low, r.tempo()), max(high, r.tempo())
	}
	if first < 0 {
		return usual, usual, usual
	}
	return m.grid.tempo(first, last), low, high
}
