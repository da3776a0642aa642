package score

import (
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// counts are the beats of a song at 120 a minute, in sections of n counts.
func song(lengths ...int) (sections []Section, beats []float64) {
	const period = 0.5
	at := 0
	for _, n := range lengths {
		sections = append(sections, Section{Time: float64(at) * period, Counts: n})
		for range n {
			beats = append(beats, float64(at)*period)
			at++
		}
	}
	return sections, beats
}

func TestPhrases(t *testing.T) {
	for _, c := range []struct {
		name                string
		reference, estimate []int
		want                Match
	}{
		{"the same", []int{32, 32, 4, 32}, []int{32, 32, 4, 32}, Match{1, 1, 1}},
		{"a long section read as two phrases", []int{32, 64, 32}, []int{32, 32, 32, 32}, Match{1, 1, 1}},
		{"two phrases read as a long section", []int{32, 32}, []int{64}, Match{2. / 3, 1, 0.5}},
		{"a long section cut off the 32", []int{32, 64}, []int{32, 16, 48}, Match{0.8, 2. / 3, 1}},
		{"the tag missed: all starts after it are late", []int{32, 4, 32, 32}, []int{32, 32, 32, 4}, Match{0.5, 0.5, 0.5}},
		{"nothing found", []int{32, 32}, nil, Match{}},
	} {
		reference, beats := song(c.reference...)
		estimate, _ := song(c.estimate...)
		got := Phrases(reference, estimate, beats)
		near := cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) < 1e-9 })
		if d := cmp.Diff(c.want, got, near); d != "" {
			t.Errorf("%s: (-want +got)\n%s", c.name, d)
		}
	}
}

func TestPhraseStartsWithinHalfACount(t *testing.T) {
	reference, beats := song(32, 32)
	for _, c := range []struct{ late, want float64 }{{0, 1}, {0.24, 1}, {-0.24, 1}, {0.26, 0}, {-0.26, 0}} {
		estimate, _ := song(32, 32)
		for i := range estimate {
			estimate[i].Time += c.late
		}
		if got := Phrases(reference, estimate, beats).F; got != c.want {
			t.Errorf("%g s late at 120 counts a minute: F %g, want %g", c.late, got, c.want)
		}
	}
}

func TestOddPhrases(t *testing.T) {
	reference, beats := song(16, 32, 4, 32, 16, 64, 8)
	estimate, _ := song(16, 32, 4, 32, 32, 48, 8)
	want := []OddCase{{Time: 24, Counts: 4, Found: 4}, {Time: 42, Counts: 16, Found: 32}}
	if d := cmp.Diff(want, OddPhrases(reference, estimate, beats)); d != "" {
		t.Errorf("intros, endings and double phrases are not odd (-want +got)\n%s", d)
	}
}
