package correct

import (
	"fmt"
	"strconv"
	"strings"
)

// longest is the longest track a time may lie in [s]: a day.
const longest = 24 * 3600

// ParseClock reads a time of a track as people write it: 1:02.5, 0:15, 62.5,
// 1:02:03. It returns seconds.
func ParseClock(s string) (float64, error) {
	wrong := fmt.Errorf("%q is no time; write it as 1:02.5", s)
	parts := strings.Split(s, ":")
	if len(parts) > 3 {
		return 0, wrong
	}
	total := 0.0
	for i, p := range parts {
		last := i == len(parts)-1
		if p == "" || strings.Trim(p, "0123456789.") != "" || !last && strings.Contains(p, ".") {
			return 0, wrong
		}
		v, err := strconv.ParseFloat(p, 64)
		if err != nil || i > 0 && v >= 60 {
			return 0, wrong
		}
		total = total*60 + v
	}
	if total > longest {
		return 0, wrong
	}
	return total, nil
}
