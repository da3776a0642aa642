package plan

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// Length is a stretch of counts or of seconds; exactly one is set, or neither.
type Length struct {
	Counts  int
	Seconds float64
}

// String writes the length with its unit, as a file has it: "16 counts",
// "30s".
func (l Length) String() string {
	switch {
	case l.Counts == 1:
		return "1 count"
	case l.Counts > 0:
		return fmt.Sprintf("%d counts", l.Counts)
	}
	return fmt.Sprintf("%gs", l.Seconds)
}

const (
	countsPerEight  = 8
	countsPerPhrase = 32
	maxCounts       = 4096 // of one item: half an hour at 136 BPM
	maxSeconds      = 3600 // of one item: an hour
)

var (
	inSeconds = regexp.MustCompile(`^([0-9]{1,6}(?:\.[0-9]{1,4})?) *(?:s|secs?|seconds?)$`)
	inMinutes = regexp.MustCompile(`^([0-9]{1,4}) *(?:m|mins?|minutes?)(?: *([0-9]{1,2}) *(?:s|secs?|seconds?)?)?$`)
	inCounts  = regexp.MustCompile(`^([0-9]{1,6}) *counts?$`)
	inEights  = regexp.MustCompile(`^([0-9]{1,5}) *(?:eights?|8-counts?)$`)
	inOther   = regexp.MustCompile(`^([0-9]{1,6}) *([a-z-]*)$`)
	inPoints  = regexp.MustCompile(`^([0-9]{1,4}(?:\.[0-9]{1,2})?) *(?:mins?|minutes?)\.?$`)
	inForeign = regexp.MustCompile(
		`^([0-9]{1,4}(?:\.[0-9]{1,2})?) *(?:sek\p{L}*|seg\p{L}*|second[ei]s?|secs?|seconds?|s|'{1,2}|´{1,2}|″|′′)\.?$`)
	inEightsX = regexp.MustCompile(`^([0-9]{1,3}) *x *(?:8|eights?)$`)
	minutesOf = regexp.MustCompile(`^([0-9]{1,4}) *(?:minut\p{L}*|′|min)\.?$`)
)

// parseLength reads a length with its unit: 30s, 1m30s, 1:30 (minutes and
// seconds), 64 counts, 8 eights.
func parseLength(s string) (Length, *fault) {
	s = strings.TrimSpace(s)
	if f := inCounts.FindStringSubmatch(s); f != nil {
		return countsIn(s, integer(f[1]))
	}
	if f := inEights.FindStringSubmatch(s); f != nil {
		return countsIn(s, integer(f[1])*countsPerEight)
	}
	if f := inSeconds.FindStringSubmatch(s); f != nil {
		return secondsIn(s, number(f[1]))
	}
	if f := inMinutes.FindStringSubmatch(s); f != nil {
		return secondsIn(s, 60*number(f[1])+number("0"+f[2]))
	}
	if clock.MatchString(s) {
		t, f := parseClock(s)
		if f != nil {
			return Length{}, f
		}
		return secondsIn(s, t)
	}
	return Length{}, lengthFault(s)
}

func countsIn(s string, n int) (Length, *fault) {
	if n < 1 || n > maxCounts {
		return Length{}, &fault{msg: shown(s) + " is out of range", hint: fmt.Sprintf("from 1 to %d counts", maxCounts)}
	}
	return Length{Counts: n}, nil
}

func secondsIn(s string, t float64) (Length, *fault) {
	if t <= 0 || t > maxSeconds {
		return Length{}, &fault{msg: shown(s) + " is out of range", hint: "more than 0s, at most 60:00"}
	}
	return Length{Seconds: t}, nil
}

// parseCounts reads a bare number of counts.
func parseCounts(s string) (int, *fault) {
	n, f := whole(1, maxCounts)(s)
	if f == nil || digits.MatchString(strings.TrimSpace(s)) {
		return n, f
	}
	l, lf := parseLength(s)
	switch {
	case lf == nil && l.Counts > 0:
		f.hint = fmt.Sprintf("%d? Only the number is written here", l.Counts)
	case lf == nil:
		f.msg, f.hint = shown(s)+" is a time", "choreography takes counts, like 8"
	case strings.HasSuffix(lf.hint, "?"):
		f = lf
	}
	return 0, f
}

// lengthFault says why s is no length, and what it may have meant.
func lengthFault(s string) *fault {
	f := &fault{msg: shown(s) + " is no length",
		hint: "seconds like 30s, minutes and seconds like 1:30, or counts like 64 counts"}
	if meant := meantLength(s); meant != "" {
		f.hint = meant + "?"
		return f
	}
	other := inOther.FindStringSubmatch(s)
	if other == nil {
		if strings.HasPrefix(s, "-") {
			f.msg, f.hint = shown(s)+" is less than nothing", "30s"
		} else if strings.Contains(s, "/") {
			f.msg, f.hint = shown(s)+" is a series, not one length",
				"one length like 20s; an interval may have a series: 8 x 20s/10s"
		} else if strings.Contains(s, ",") {
			f.hint = short(strings.Replace(s, ",", ".", 1)) + "? The decimal sign is a point"
		}
		return f
	}
	n := integer(other[1])
	switch unit := other[2]; {
	case unit == "":
		f.msg = other[1] + " has no unit"
		f.hint = fmt.Sprintf("%ds or %d counts?", n, n)
	case strings.HasPrefix(unit, "phrase"):
		f.msg = shown(s) + ": phrase has two meanings"
		f.hint = fmt.Sprintf("%d counts (of 32) or %d counts (of 8)?", n*countsPerPhrase, n*countsPerEight)
	case strings.HasPrefix(unit, "beat"):
		f.hint = fmt.Sprintf("%d counts?", n)
	case strings.HasPrefix(unit, "bar") || strings.HasPrefix(unit, "measure"):
		f.hint = fmt.Sprintf("%d counts (of 4 to a bar)?", n*4)
	}
	return f
}

// spokenLengths are lengths in words.
var spokenLengths = map[string]string{
	"half a minute": "30s", "half minute": "30s", "a minute": "1:00", "one minute": "1:00",
	"a minute and a half": "1:30", "two minutes": "2:00", "an eight": "8 counts", "one eight": "8 counts",
}

// meantLength guesses what a length was to be that is written in words, in
// another language, with a point after it or as a product; empty when unclear.
func meantLength(s string) string {
	if l, ok := spokenLengths[s]; ok {
		return l
	}
	if f := inForeign.FindStringSubmatch(s); f != nil {
		return f[1] + "s"
	}
	if f := inEightsX.FindStringSubmatch(s); f != nil {
		return f[1] + " eights"
	}
	if f := inPoints.FindStringSubmatch(s); f != nil {
		return minutes(60 * number(f[1]))
	}
	if f := minutesOf.FindStringSubmatch(s); f != nil {
		return f[1] + ":00"
	}
	return ""
}

// number is the value of digits that a pattern has already checked.
func number(s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		return 0
	}
	return v
}

// integer is number for whole figures.
func integer(s string) int { return int(number(s)) }
