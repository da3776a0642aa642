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
