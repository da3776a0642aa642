package reading

import "math"

// Course is what goes on sounding through a stretch of music: rows of levels,
// added up, so that the mean between any two times is a difference.
type Course struct {
	fps   float64
	first int // frame of the first row
	width int
	sums  []float64 // of the rows before each frame, width values a frame
}

// NewCourse adds up the frames from..to-1 of a sound, frame i at i/fps [s]; row
// is what sounds in one of them.
func NewCourse(fps float64, from, to int, row func(i int) []float32) Course {
	c := Course{fps: fps, first: from}
	for i := from; i < to; i++ {
		levels := row(i)
		if c.sums == nil {
			c.width = len(levels)
			c.sums = make([]float64, c.width, c.width*(to-from+1))
		}
		before := c.sums[len(c.sums)-c.width:]
		for j, v := range levels {
			c.sums = append(c.sums, before[j]+float64(v))
		}
	}
	return c
}

// Centred takes the levels relative to their means: of a spectrum, most is the
// same from start to end.
func (c Course) Centred() Course {
	last := c.frames()
	for j := range c.width {
		mean := c.sums[last*c.width+j] / float64(max(1, last))
		for i := range last + 1 {
			c.sums[i*c.width+j] -= float64(i) * mean
		}
	}
	return c
}

// frames is the number of rows.
func (c Course) frames() int {
	if c.width == 0 {
		return 0
	}
	return len(c.sums)/c.width - 1
}

// until adds up everything before each of some times [s], width values a time.
func (c Course) until(times []float64) []float64 {
	out := make([]float64, 0, len(times)*c.width)
	last := c.frames()
	for _, t := range times {
		at := min(float64(last), max(0, t*c.fps+0.5-float64(c.first))) // a frame reaches half of one to either side
		i := min(int(at), max(0, last-1))
		share := at - float64(i)
		before, after := c.sums[i*c.width:(i+1)*c.width], c.sums[min(last, i+1)*c.width:]
		for j, v := range before {
			out = append(out, v+share*(after[j]-v))
		}
	}
	return out
}

// changes are how much differs, at each of some times but the ends, what sounds
// over so many of them before and after: the cosine distance, 0-2.
func (c Course) changes(until []float64, over int) []float64 {
	last := len(until)/max(1, c.width) - 1
	var out []float64
	for i := 1; i < last; i++ {
		now := until[i*c.width : (i+1)*c.width]
		before, after := until[max(0, i-over)*c.width:], until[min(last, i+over)*c.width:]
		var ab, aa, bb float64
		for j, v := range now {
			a, b := v-before[j], after[j]-v
			ab, aa, bb = ab+a*b, aa+a*a, bb+b*b
		}
		change := 0.0
		if aa > 0 && bb > 0 {
			change = 1 - ab/math.Sqrt(aa*bb)
		}
		out = append(out, change)
	}
	return out
}
