package phrase

import (
	_ "embed"
	"fmt"
	"math"
	"strconv"
	"strings"
	"sync"
)

// Network turns the clues of a bar, and of the bars around it, into the
// log-odds that a phrase starts there: a linear model, and beside it one layer
// of hidden units, for what only means something together. That the drums
// differ from those of the bar before marks the bar after a crash as much as
// the crash, and the fill as much as what follows it.
type Network struct {
	Floor  []float64   // the least deviation that each clue is measured by
	Linear []float64   // of each input, the constant last
	Hidden [][]float64 // likewise, a row a unit
	Out    []float64   // of each hidden unit
}

const (
	// widest is how many deviations one bar may stand out by: a single clue,
	// however strong, proves nothing.
	widest = 4
	// still is a deviation below which nothing varies.
	still = 1e-9
)

// offsets are the bars whose clues speak for a bar, relative to it; lags are
// those whose clues, before and after it, are taken together.
var (
	offsets = [...]int{-1, 0, 1}
	lags    = [...]int{4, 8}
)

// InputCount is the number of inputs for so many clues, the constant among them.
func InputCount(clues int) int { return clues*(len(offsets)+len(lags)) + 1 }

// Inputs are what the network sees of each bar: the clues in deviations from
// their mean over the track, no less than the floor of each, of the bars
// around.
func (n *Network) Inputs(clues [][]float64) [][]float64 {
	bars := len(clues[0])
	scaled := make([][]float64, len(clues))
	for k, x := range clues {
		scaled[k] = standardized(x, n.Floor[k])
	}
	out := make([][]float64, bars)
	for i := range out {
		row := make([]float64, 0, InputCount(len(clues)))
		for _, d := range offsets {
			for k := range scaled {
				row = append(row, within(scaled[k], i+d))
			}
		}
		for _, lag := range lags {
			for k := range scaled {
				row = append(row, (within(scaled[k], i-lag)+within(scaled[k], i+lag))/2)
			}
		}
		out[i] = append(row, 1)
	}
	return out
}

func within(x []float64, i int) float64 {
	if i < 0 || i >= len(x) {
		return 0
	}
	return x[i]
}

// Odds gives the log-odds of a bar by its inputs, and what each hidden unit
// makes of them.
func (n *Network) Odds(input []float64) (odds float64, hidden []float64) {
	odds, hidden = dot(n.Linear, input), make([]float64, len(n.Hidden))
	for h, w := range n.Hidden {
		hidden[h] = math.Tanh(dot(w, input))
		odds += n.Out[h] * hidden[h]
	}
	return odds, hidden
}

func dot(a, b []float64) float64 {
	total := 0.0
	for i, v := range a {
		total += v * b[i]
	}
	return total
}

// Spread is the mean and the deviation of what is a number in x.
func Spread(x []float64) (mean, deviation float64) {
	square, n := 0.0, 0.0
	for _, v := range x {
		if !math.IsNaN(v) {
			mean += v
			square += v * v
			n++
		}
	}
	mean /= max(1, n)
	return mean, math.Sqrt(max(0, square/max(1, n)-mean*mean))
}

// standardized is x in deviations from its mean; what is no number becomes 0.
// Where next to nothing varies the floor keeps noise from being taken for a
// mark.
func standardized(x []float64, floor float64) []float64 {
	mean, deviation := Spread(x)
	deviation = math.Hypot(deviation, floor) + still
	out := make([]float64, len(x))
	for i, v := range x {
		if !math.IsNaN(v) {
			out[i] = min(widest, max(-widest, (v-mean)/deviation))
		}
	}
	return out
}

//go:embed weights.txt
var weightsFile string

// trained is the network with its weights, fitted by 'beat/learn/phrases fit'.
var trained = sync.OnceValue(func() *Network {
	n, err := parseNetwork(weightsFile)
	if err != nil {
		panic(fmt.Sprintf("phrase: the embedded weights: %v", err)) // a broken build
	}
	return n
})

// parseNetwork reads what Text wrote: a line for the floors, one for the linear
// weights, one for the weights of the hidden units, then one for each of these.
func parseNetwork(text string) (*Network, error) {
	var rows [][]float64
	for line := range strings.Lines(text) {
		var row []float64
		for field := range strings.FieldsSeq(line) {
			v, err := strconv.ParseFloat(field, 64)
			if err != nil {
				return nil, err
			}
			row = append(row, v)
		}
		rows = append(rows, row)
	}
	const head = 3
	if len(rows) < head || len(rows[0]) != ClueCount || len(rows[2]) != len(rows)-head {
		return nil, fmt.Errorf("%d lines, not the floors of %d clues and weights for them", len(rows), ClueCount)
	}
	for _, row := range append(rows[head:], rows[1]) {
		if len(row) != InputCount(ClueCount) {
			return nil, fmt.Errorf("%d weights for %d inputs", len(row), InputCount(ClueCount))
		}
	}
	return &Network{Floor: rows[0], Linear: rows[1], Out: rows[2], Hidden: rows[head:]}, nil
}

// Text is the network as it is kept.
func (n *Network) Text() string {
	var b strings.Builder
	for _, row := range append([][]float64{n.Floor, n.Linear, n.Out}, n.Hidden...) {
		for i, v := range row {
			if i > 0 {
				b.WriteByte(' ')
			}
			b.WriteString(strconv.FormatFloat(v, 'g', 4, 64))
		}
		b.WriteByte('\n')
	}
	return b.String()
}
