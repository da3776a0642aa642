package say

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Num writes a figure with at most that many decimals, without trailing
// zeros.
func Num(v float64, decimals int) string {
	s := strconv.FormatFloat(v, 'f', decimals, 64)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	if s == "-0" {
		return "0"
	}
	return s
}

// Many writes a number with its noun: 1 count, 16 counts, 2 passes.
func Many(n int, noun string) string {
	switch {
	case n == 1:
		return "1 " + noun
	case strings.HasSuffix(noun, "s"), strings.HasSuffix(noun, "ch"):
		return fmt.Sprintf("%d %ses", n, noun)
	}
	return fmt.Sprintf("%d %ss", n, noun)
}

// Clock writes seconds as minutes and seconds, m:ss, to the nearest second;
// from an hour on with the hours, h:mm:ss.
func Clock(seconds float64) string {
	s := int(math.Round(math.Abs(seconds)))
	if s >= 3600 {
		return sign(seconds, s) + fmt.Sprintf("%d:%02d:%02d", s/3600, s/60%60, s%60)
	}
	return sign(seconds, s) + fmt.Sprintf("%d:%02d", s/60, s%60)
}

// Moment writes seconds to the tenth, m:ss.t, near enough to find a count by;
// from an hour on with the hours, h:mm:ss.t.
func Moment(seconds float64) string {
	t := int(math.Round(math.Abs(seconds) * 10))
	if t >= 36000 {
		return sign(seconds, t) + fmt.Sprintf("%d:%02d:%02d.%d", t/36000, t/600%60, t/10%60, t%10)
	}
	return sign(seconds, t) + fmt.Sprintf("%d:%02d.%d", t/600, t/10%60, t%10)
}

// sign is the minus of a figure that is not 0 once it is rounded.
func sign(v float64, rounded int) string {
	if v < 0 && rounded > 0 {
		return "-"
	}
	return ""
}
