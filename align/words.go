package align

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// num writes a figure with at most that many decimals, without trailing
// zeros.
func num(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// many writes a number with its noun: 1 count, 16 counts.
func many(n int, noun string) string {
	switch {
	case n == 1:
		return "1 " + noun
	case strings.HasSuffix(noun, "s"), strings.HasSuffix(noun, "ch"):
		return fmt.Sprintf("%d %ses", n, noun)
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// Clock writes seconds as minutes and seconds, m:ss, to the nearest second.
func Clock(seconds float64) string {
	s := int(math.Round(math.Abs(seconds)))
	sign := ""
	if seconds < 0 && s > 0 {
		sign = "-"
	}
	return fmt.Sprintf("%s%d:%02d", sign, s/60, s%60)
}

// or joins ways out: "a, b or c".
func or(ways []string) string {
	if len(ways) < 2 {
		return strings.Join(ways, "")
	}
	last := len(ways) - 1
	return strings.Join(ways[:last], "; ") + "; or " + ways[last]
}

// Sequence writes the moves of a block, what repeats once: "8 x (march 2,
// step touch 2)".
func Sequence(steps []Step) string {
	var all []string
	for _, s := range steps {
		text := fmt.Sprintf("%s %d", s.Move, s.Counts)
		if len(s.With) > 0 {
			text += " with " + strings.Join(s.With, " and ")
		}
		all = append(all, text)
	}
	for n := 1; n <= len(all)/2; n++ {
		if repeats(all, n) {
			return fmt.Sprintf("%d x (%s)", len(all)/n, strings.Join(all[:n], ", "))
		}
	}
	return strings.Join(all, ", ")
}

// repeats reports whether a list is its first n entries over and over.
func repeats(all []string, n int) bool {
	if len(all)%n != 0 {
		return false
	}
	for i := range all {
		if all[i] != all[i%n] {
			return false
		}
	}
	return true
}

// SideWords is the side of the class, and the instructor's own where she faces
// it.
func (r Row) SideWords() string {
	if r.Mirror == "" {
		return r.Side
	}
	return fmt.Sprintf("%s (you %s)", r.Side, r.Mirror)
}
