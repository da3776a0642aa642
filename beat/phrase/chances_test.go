package phrase

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// every calls f with each list of phrases of n bars, from the first bar or,
// with pickUp, the second, and its score.
func every(odds []float64, pickUp bool, f func(starts []int, score float64)) {
	n := len(odds)
	var from func(starts []int, score float64)
	from = func(starts []int, score float64) {
		i := starts[len(starts)-1]
		for j := i + 1; j <= min(n, i+longest); j++ {
			s := score + math.Log(shareAt(i, j, n))
			if j == n {
				f(starts, s)
				continue
			}
			from(append(slices.Clone(starts), j), s+odds[j])
		}
	}
	from([]int{0}, 0)
	if pickUp && n > 1 {
		from([]int{1}, 0)
	}
}

// The chances and the likeliest list against all lists there are, of short
// tracks: the definition of a marginal, and of a maximum.
func TestChancesOfEveryList(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 4))
	for n := 2; n <= 13; n++ {
		for _, pickUp := range []bool{false, true} {
			odds := make([]float64, n)
			for i := range odds {
				odds[i] = 3*r.NormFloat64() - 1
			}
			sum, all, best := make([]float64, n), 0.0, math.Inf(-1)
			var likely []int
			every(odds, pickUp, func(starts []int, score float64) {
				all += math.Exp(score)
				for _, s := range starts {
					sum[s] += math.Exp(score)
				}
				if score > best {
					best, likely = score, starts
				}
			})
			for i, c := range Chances(odds, pickUp) {
				if want := sum[i] / all; math.Abs(c-want) > 1e-9 {
					t.Errorf("%d bars, pick-up %v: bar %d starts a phrase with chance %.9f, by all lists %.9f", n, pickUp, i, c, want)
				}
			}
			if d := cmp.Diff(whole(likely, n), segment(odds, pickUp).starts); d != "" {
				t.Errorf("%d bars, pick-up %v: the likeliest list (-want +got)\n%s", n, pickUp, d)
			}
		}
	}
}

// Each start is trusted after its own chance and what speaks for it, the first
// after those of the second.
func TestSigns(t *testing.T) {
	odds := []float64{9, -5, -1, -5, 7, -8}
	chance := []float64{1, 0, 0.2, 0, 0.9, 0.6}
	got := signsOf([]int{0, 2, 4, 5}, odds, chance)
	const mean = (-1.0 + 3 - 6) / 3 // no more than 3, no less than -6
	want := []Signs{
		{1, LogOdds(0.2), -1, mean, 1}, {1, LogOdds(0.2), -1, mean, 0},
		{1, LogOdds(0.9), 3, mean, 0}, {1, LogOdds(0.6), -6, mean, 0},
	}
	if d := cmp.Diff(want, got); d != "" {
		t.Errorf("(-want +got)\n%s", d)
	}
	if alone := signsOf([]int{0}, odds, chance)[0]; alone != (Signs{1, 0, -6, 0, 1}) {
		t.Errorf("a phrase alone has the signs %v", alone)
	}
	if len(signsOf(nil, nil, nil)) != 0 {
		t.Error("signs of no phrase")
	}
}

// More chance is more trust, and so is more that speaks for a start of its own.
func TestTrustGrows(t *testing.T) {
	last := 0.0
	for _, p := range []float64{0.01, 0.3, 0.6, 0.9, 0.99} {
		now := Signs{1, LogOdds(p), -1, -1, 0}.trust()
		if now <= last || now >= 1 {
			t.Errorf("a chance of %g is trusted %g, less %g", p, now, last)
		}
		last = now
	}
	if first := (Signs{1, 2, -1, -1, 1}); first.trust() <= (Signs{1, 2, -1, -1, 0}).trust() {
		t.Error("the start of the song says nothing for its first phrase")
	}
}

// The weights are read as they were written, and a file that fits no network is
// refused.
func TestNetworkText(t *testing.T) {
	n := trained()
	back, err := parseNetwork(n.Text())
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(n, back); d != "" {
		t.Errorf("(-want +got)\n%s", d)
	}
	for _, text := range []string{"", "1 2 3\n", n.Text() + "1\n", "x" + n.Text()} {
		if _, err := parseNetwork(text); err == nil {
			t.Errorf("weights of %d bytes are taken", len(text))
		}
	}
}

// The log-odds of a network of one clue-wide step, worked out by hand.
func TestNetworkOdds(t *testing.T) {
	n := &Network{Linear: []float64{2, -1, 0.5}, Hidden: [][]float64{{1, 1, 0}}, Out: []float64{3}}
	odds, hidden := n.Odds([]float64{0.5, 0.25, 1})
	if want := 1.25 + 3*math.Tanh(0.75); math.Abs(odds-want) > 1e-12 || math.Abs(hidden[0]-math.Tanh(0.75)) > 1e-12 {
		t.Errorf("log-odds %g, hidden %g, want %g, %g", odds, hidden, want, math.Tanh(0.75))
	}
}

// A clue that hardly varies stays small, one that is missing is 0, and none
// stands out by more than widest.
func TestStandardized(t *testing.T) {
	x := []float64{0, 0, 0, 0.01, 0, math.NaN()}
	if got := standardized(x, 1); got[3] > 0.02 || got[5] != 0 {
		t.Errorf("measured by a floor of 1: %.3f", got)
	}
	many := make([]float64, 100)
	many[50] = 1
	if got := standardized(many, 0); got[50] != widest {
		t.Errorf("one of a hundred stands out by %g, want %d", got[50], widest)
	}
}
