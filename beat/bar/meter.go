package bar

import "math"

// The meters, in beats a bar.
const (
	fourFour  = 4 // taken unless there is strong evidence for another
	threeFour = 3
	sixEight  = 2 // dotted quarters
)

const (
	leastBeats = 12 // fewer cannot tell the meters apart

	// tripleShare is the share of what begins within the beats that begins on
	// their thirds from which the beats are dotted quarters: of 64 songs in 6/8,
	// 12/8 or with a shuffle 61 had more.
	tripleShare = 0.6

	// halfBar is how much less than count 1 the middle of a bar of four may stand
	// out, as a share of how far count 1 stands above the other two, and be a
	// count 1 as well: so in 21 of 32 songs in 6/8, in 2 of 32 in 12/8 or with a
	// shuffle. She counts both to eight; in doubt, then, bars of four.
	halfBar = 0.4
)

// meter is the number of beats in a bar, threes being how much speaks for three
// [log-odds]. Music in 6/8 is told from 12/8 only where every second beat is as
// good a count 1 as every fourth.
func meter(evidence []float64, threes float64, triple bool) int {
	if len(evidence) < leastBeats {
		return fourFour
	}
	if threes > 0 {
		return threeFour
	}
	if triple && halvesAlike(evidence) {
		return sixEight
	}
	return fourFour
}

// triple reports whether the beats part into thirds.
func triple(s *Sound) bool {
	thirds, all := 0.0, 0.0
	for _, v := range s.Inner {
		thirds += v[0]
		all += v[0] + v[1]
	}
	return all > 0 && thirds > tripleShare*all
}

// halvesAlike reports whether the two halves of a bar of four begin alike.
func halvesAlike(evidence []float64) bool {
	var mean [fourFour]float64
	for phase := range mean {
		n := 0.0
		for i := phase; i < len(evidence); i += fourFour {
			mean[phase] += evidence[i]
			n++
		}
		mean[phase] /= n
	}
	one := argmax(mean[:])
	others := max(mean[(one+1)%fourFour], mean[(one+3)%fourFour])
	return mean[one]-mean[(one+2)%fourFour] < halfBar*(mean[one]-others)
}

// combFit is how far the evidence on the best phase of every n-th beat stands
// above chance [standard errors].
func combFit(evidence []float64, n int) float64 {
	square := 0.0
	for _, v := range evidence {
		square += v * v
	}
	if square == 0 {
		return 0
	}
	deviation := math.Sqrt(square / float64(len(evidence)))
	best := math.Inf(-1)
	for phase := range n {
		sum, count := 0.0, 0.0
		for i := phase; i < len(evidence); i += n {
			sum += evidence[i]
			count++
		}
		best = max(best, sum/(deviation*math.Sqrt(count)))
	}
	return best
}
