package fit

import (
	"math"

	"onphrase/align"
)

// Kind is a kind of change, by the name it has in a file of prices.
type Kind string

// The kinds of change, what makes one dearer, and what it costs to leave a
// finding as it is.
const (
	Reps     Kind = "reps"
	Rep      Kind = "rep"
	Uneven   Kind = "uneven"
	Split    Kind = "split"
	Moved    Kind = "moved"
	Slower   Kind = "slower"
	Hold     Kind = "hold"
	Held     Kind = "held"
	OnPhrase Kind = "on phrase"
	Start    Kind = "start"
	Phrase   Kind = "phrase"
	Swap     Kind = "swap"
	BPM      Kind = "bpm"
	Percent  Kind = "percent"
	Time     Kind = "time"
	TimeStep Kind = "time step"
	Watch    Kind = "watch"
	Fix      Kind = "fix"
)

// Price is what a change costs. The unit is one repetition more or fewer;
// only the proportions matter.
type Price struct {
	Kind  Kind
	Price int
	What  string
}

// Table lists the prices that the program comes with. They say how much a
// change is felt by an instructor who knows her class by heart: another
// number of repetitions little, another order a lot.
//
// Common practice, no source.
var Table = []Price{
	{Reps, 2, "another number of repetitions in a rhythm"},
	{Rep, 1, "and for every repetition more or fewer"},
	{Uneven, 1, "and when the number is no longer a multiple of 4; three times that when it is odd"},
	{Split, 4, "some repetitions of a set in a slower rhythm, or in that of its neighbour"},
	{Moved, 1, "and for every repetition that changes its rhythm"},
	{Slower, 6, "the next slower rhythm in the same counts"},
	{Hold, 4, "a hold before an item"},
	{Held, 1, "and for every 8 counts held, or waited for a phrase"},
	{OnPhrase, 3, "an item waits for the next phrase (on: phrase)"},
	{Start, 5, "a part starts on another phrase"},
	{Phrase, 1, "and for every phrase earlier or later"},
	{Swap, 8, "two sets change places"},
	{BPM, 8, "a part is played at another tempo, at most 5 % faster or slower than recorded"},
	{Percent, 2, "and for every per cent of it"},
	{Time, 2, "another length of timed work or of a pause"},
	{TimeStep, 1, "and for every 8 counts or 5 s longer or shorter"},
	{Watch, 200, "to leave something to watch as it is, or cause it"},
	{Fix, 1000, "to leave something to fix as it is, or cause it"},
}

// Prices are the prices that a search goes by.
type Prices map[Kind]int

// Usual are the prices of the table.
func Usual() Prices {
	p := Prices{}
	for _, e := range Table {
		p[e.Kind] = e.Price
	}
	return p
}

// repsBy is the price of so many repetitions where there were others.
func (p Prices) repsBy(was, is int) int {
	return p[Reps] + p[Rep]*abs(is-was) + p[Uneven]*max(0, uneven(is)-uneven(was))
}

// uneven grades a number of repetitions: instructors count them in fours, so
// that they fill eights, and in pairs. Common practice, no source.
func uneven(n int) int {
	switch {
	case n%4 == 0:
		return 0
	case n%2 == 0:
		return 1
	}
	return 3
}

// held is the price of so many counts of waiting.
func (p Prices) held(counts int) int { return p[Held] * ((counts + eight - 1) / eight) }

// tally is the price of leaving so many findings.
func (p Prices) tally(n align.Tally) int { return n.Fix*p[Fix] + n.Watch*p[Watch] }

// tempo is the price of another tempo.
func (p Prices) tempo(recorded, bpm float64) int {
	return p[BPM] + p[Percent]*int(math.Ceil(100*math.Abs(bpm/recorded-1)))
}

func abs(n int) int { return max(n, -n) }

// eight is 8 counts.
const eight = 8
