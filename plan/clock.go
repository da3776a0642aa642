package plan

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
)

var clock = regexp.MustCompile(`^([0-9]{1,3}):([0-9]{2}(?:\.[0-9]{1,3})?)$`)

// parseClock reads minutes and seconds, m:ss or m:ss.s [s].
func parseClock(s string) (float64, *fault) {
	f := clock.FindStringSubmatch(s)
	if f == nil {
		return 0, &fault{msg: shown(s) + " is no time", hint: "minutes:seconds, like 1:02.5"}
	}
	sec := number(f[2])
	if sec >= 60 {
		return 0, &fault{msg: shown(s) + " has more than 59 seconds", hint: minutes(60*number(f[1])+sec) + "?"}
	}
	return 60*number(f[1]) + sec, nil
}

// slotLow and slotHigh bound the time in the studio [s]; less is hours
// mistaken for minutes.
const slotLow, slotHigh = 5 * 60, 4 * 3600

var longClock = regexp.MustCompile(`^([0-9]):([0-9]{2}:[0-9]{2})$`)

// parseSlot reads the time in the studio, mm:ss or h:mm:ss [s].
func parseSlot(s string) (float64, *fault) {
	s = strings.TrimSpace(s)
	hours := 0.0
	rest := s
	if f := longClock.FindStringSubmatch(s); f != nil {
		hours, rest = number(f[1]), f[2]
	}
	if !clock.MatchString(rest) {
		return 0, slotFault(s)
	}
	t, f := parseClock(rest)
	if f != nil {
		return 0, f
	}
	t += hours * 3600
	switch {
	case t < slotLow:
		// h:mm has the figures that m:ss has: one second is one minute
		return 0, &fault{msg: s + " is minutes and seconds, too short for a class",
			hint: fmt.Sprintf(`"%.0[1]f:00" for %.0[1]f minutes?`, math.Floor(t))}
	case t > slotHigh:
		return 0, &fault{msg: s + " is longer than a class can be", hint: `minutes:seconds, like "45:00"`}
	}
	return t, nil
}

func slotFault(s string) *fault {
	f := &fault{msg: shown(s) + " is no time in the studio", hint: `minutes:seconds, like "45:00"`}
	if n := leading.FindString(s); n != "" {
		f.hint = fmt.Sprintf(`"%s:00" for %s minutes?`, n, n)
	}
	return f
}

// minutes writes seconds as m:ss, with tenths where there are any.
func minutes(t float64) string {
	m := math.Floor(t / 60)
	s := strconv.FormatFloat(math.Round((t-60*m)*10)/10, 'f', -1, 64)
	if t-60*m < 10 {
		s = "0" + s
	}
	return fmt.Sprintf("%.0f:%s", m, s)
}
