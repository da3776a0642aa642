package main

import (
	"bytes"
	"fmt"
	"go/format"
)

// group is some clues in a row.
type group struct {
	name string
	n    int
}

// The clues in the order of package reading.
var (
	soundGroups = []group{
		{"kick", 10}, {"bass", 10}, {"mid", 10}, {"snare", 10}, {"hat", 10}, {"novelty", 10},
		{"repetition after 1, 2, 3, 4, 6, 8 beats", 6}, {"tempo: octaves from the usual, squared, above, below", 4},
		{"kick and snare a beat apart, by turns", 2},
		{"chords: change over 1 beat on each place, every 2nd, 3rd, 4th, 8th beat", 10}, {"over 2", 10}, {"over 4", 10},
		{"bass notes, likewise", 10}, {"over 2", 10}, {"over 4", 10},
		{"spectrum, likewise", 10}, {"over 2", 10}, {"over 4", 10},
		{"level: 1/4, 1/3, 1/2, 2/3, 3/4, 1, 4/3, 3/2, 2, 3, 4 of the repetition", 11},
	}
	heardGroups = []group{
		{"by sound", 1}, {"beat, 1/4, 1/3, 1/2, 2/3, 3/4", 6}, {"every 2nd, 3rd, 4th beat stands out", 3},
		{"likelihood of the counts, of the ones", 2}, {"shared with the ear's own counts, these themselves, at one level", 3},
		{"tempo: octaves from the usual, squared", 2},
	}
)

// source is the weights as the Go file that holds them.
func source(weights, heardWeights []float64) ([]byte, error) {
	var b bytes.Buffer
	b.WriteString(`package reading

// weights are the log-odds that each clue of the sound adds, fitted by multinomial
// logistic regression on music rendered for the purpose (beat/learn/reading).
// No track that accuracy is reported on was among it.
var weights = []float64{
	// beat, 1/4, 1/3, 1/2, 2/3, 3/4; every 2nd, 3rd, 4th beat; every 2nd half
`)
	list(&b, soundGroups, weights)
	b.WriteString(`}

// heardWeights are the log-odds that each clue of the ear adds, after the weight
// of all clues by sound together; fitted likewise, on music new to the ear.
var heardWeights = []float64{
`)
	list(&b, heardGroups, heardWeights)
	b.WriteString("}\n")
	return format.Source(b.Bytes())
}

func list(b *bytes.Buffer, groups []group, weights []float64) {
	for _, g := range groups {
		b.WriteString("\t")
		for _, v := range weights[:g.n] {
			fmt.Fprintf(b, "%.3f, ", v)
		}
		fmt.Fprintf(b, "// %s\n", g.name)
		weights = weights[g.n:]
	}
}
