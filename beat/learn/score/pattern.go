package score

// hits maps the characters of a pattern to how loud they are.
var hits = map[byte]float64{'X': 1, 'x': 0.8, 'o': 0.35, 'u': 0.8, 'f': 0.8}

// groove is one layer's choice for a song: a pattern and how it is varied.
type groove struct {
	part    Part
	pattern string
	vary    float64 // chance that a bar is changed
	late    float64 // behind the beat [s]
}

// at is the character for a step counted from the start of the song.
func (g groove) at(step int) byte {
	if g.pattern == "" {
		return '.'
	}
	return g.pattern[step%len(g.pattern)]
}

// held is the number of steps a note that begins at step lasts.
func (g groove) held(step int) int {
	n := 1
	for n < 16 && g.at(step+n) == '-' {
		n++
	}
	return n
}

// mutate adds, drops or moves a hit or two, rarely on a count itself.
func mutate(r Rand, pattern string, steps int) string {
	b := []byte(pattern)
	for range 1 + r.IntN(2) {
		i := r.IntN(len(b))
		if i%steps == 0 && r.Chance(0.7) {
			continue
		}
		switch {
		case b[i] == '.':
			b[i] = Pick(r, []byte("xoo"))
		case b[i] != '-':
			b[i] = '.'
		}
	}
	return string(b)
}

// borrow picks a pattern of the style, now and then that of another style with
// the same grid.
func borrow(r Rand, s Style, layer func(Style) []string, chance float64) string {
	from := layer(s)
	if r.Chance(chance) {
		if other := Pick(r, Styles); other.Steps == s.Steps && other.Meter == s.Meter && len(layer(other)) > 0 {
			from = layer(other)
		}
	}
	if len(from) == 0 {
		return ""
	}
	p := Pick(r, from)
	if r.Chance(0.3) {
		p = mutate(r, stretch(p, s.Meter*s.Steps), s.Steps)
	}
	return p
}

// stretch repeats a pattern until it fills a bar; nothing becomes a bar's rest.
func stretch(p string, n int) string {
	if p == "" {
		p = "."
	}
	out := p
	for len(out) < n {
		out += p
	}
	return out
}
