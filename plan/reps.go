package plan

import (
	"fmt"
	"regexp"
	"strings"
	"unicode/utf8"
)

// Reps is a number of repetitions in one rhythm.
type Reps struct {
	N      int
	Rhythm Rhythm
}

// Counts is the number of counts they take.
func (r Reps) Counts() int { return r.N * r.Rhythm.Counts() }

// maxReps bounds the repetitions of one entry.
const maxReps = 500

var (
	nTimes    = regexp.MustCompile(`^ *([0-9]{1,6}) *x *`)
	nOf       = regexp.MustCompile(`^ *([0-9]{1,6}) +((?:single|pulse)s?) *$`)
	nOnly     = regexp.MustCompile(`^([0-9]{1,6}) *(?:reps?|times)?$`)
	thirdX    = regexp.MustCompile(`^([0-9]{1,3}) *x *([0-9]{1,3}) *x *(.+)$`)
	reversed  = regexp.MustCompile(`^([0-9]{1,2}-[0-9]{1,2}(?:-[0-9]{1,2}-[0-9]{1,2})?|pulses?|singles?) *x *([0-9]{1,4})$`)
	unsigned  = regexp.MustCompile(`^([0-9]{1,4}) *(?:reps?)?,? *(?:\*|@|of|at|in)? *([0-9]{1,2}-[0-9]{1,2}(?:-[0-9]{1,2}-[0-9]{1,2})?)$`)
	eachSide  = regexp.MustCompile(`^(.*[0-9a-z]) *(?:each side|per side|each|both sides|e/s|a side)$`)
	inWords   = regexp.MustCompile(`^([0-9]{1,4}) *(?:x *|reps? *)?(slow|slows|doubles?|quick|fast|singles?|pulses?)$`)
	timesHead = regexp.MustCompile(`^x *([0-9]{1,4})[ ,]+(.+)$`)
	otherList = regexp.MustCompile(`^(.+?) *(?:\+|;|&| and | then ) *(.+)$`)
)

// parseReps reads a list of repetitions: "4 x 2-2, 16 x 1-1".
func parseReps(s string) ([]Reps, *fault) {
	var all []Reps
	offset := 0
	for _, piece := range strings.Split(s, ",") {
		r, f := parseOneReps(piece)
		if f != nil {
			lead := utf8.RuneCountInString(piece) - utf8.RuneCountInString(strings.TrimLeft(piece, " "))
			f.at += offset + lead
			if all := inDigits(s); all != "" && strings.Contains(s, ",") {
				f.hint = fmt.Sprintf(`digits say it: "%s"?`, all)
			}
			return nil, f
		}
		all = append(all, r)
		offset += utf8.RuneCountInString(piece) + 1
	}
	return all, nil
}

// parseOneReps reads one entry of the list, "4 x 2-2", "16 singles".
func parseOneReps(piece string) (Reps, *fault) {
	text := strings.TrimSpace(piece)
	if f := misread(text); f != nil {
		return Reps{}, f
	}
	if f := nOf.FindStringSubmatch(text); f != nil {
		text = f[1] + " x " + f[2]
	}
	f := nTimes.FindStringSubmatch(text)
	if f == nil {
		return Reps{}, noReps(text)
	}
	if len(f[0]) == len(text) {
		return Reps{}, noReps(f[1])
	}
	n := integer(f[1])
	if n < 1 || n > maxReps {
		return Reps{}, &fault{msg: fmt.Sprintf("%d repetitions is out of range", n),
			hint: fmt.Sprintf("from 1 to %d", maxReps)}
	}
	rhythm, bad := parseRhythm(text[len(f[0]):])
	if bad != nil {
		bad.at += utf8.RuneCountInString(f[0])
		return Reps{}, bad
	}
	return Reps{N: n, Rhythm: rhythm}, nil
}

// misread recognises what people write for a list of repetitions and the
// file writes otherwise.
func misread(text string) *fault {
	if f := thirdX.FindStringSubmatch(text); f != nil {
		return &fault{msg: shown(text) + " repeats a set", hint: fmt.Sprintf("%d x %s in one go? Or rounds: %s on a superset",
			integer(f[1])*integer(f[2]), short(f[3]), f[1])}
	}
	if f := reversed.FindStringSubmatch(text); f != nil {
		return &fault{msg: shown(text) + " has the rhythm first", hint: fmt.Sprintf("%s x %s?", f[2], f[1])}
	}
	if f := eachSide.FindStringSubmatch(text); f != nil {
		return &fault{msg: shown(text) + " has words after the rhythm",
			hint: fmt.Sprintf("%s, and sides: both as a key of its own", short(f[1]))}
	}
	if f := otherList.FindStringSubmatch(text); f != nil {
		return &fault{msg: shown(text) + " is no list", hint: fmt.Sprintf(`commas part the entries: "%s, %s"`, short(f[1]),
			short(f[2]))}
	}
	return nil
}

// wordRhythms are what the words for a rhythm most likely mean.
var wordRhythms = map[string]string{
	"slow": "4-4", "slows": "4-4", "double": "2-2", "doubles": "2-2",
	"quick": "1-1", "fast": "1-1", "single": "1-1", "singles": "1-1",
	"pulse": "pulse", "pulses": "pulse",
}

// worded says what a rhythm in words may mean, which no two instructors agree
// on.
func worded(n, word string) *fault {
	f := &fault{msg: shown(n + " " + word)}
	switch word {
	case "double", "doubles":
		f.msg += " has two meanings"
		f.hint = fmt.Sprintf("%s x 2-2 (2 down 2 up, 4 counts a rep), or %s x 1-1 twice on one side?", n, n)
	case "slow", "slows":
		f.msg += " does not say how slow"
		f.hint = fmt.Sprintf("%s x %s or %s x %s?", n, digitsOf(4, 4), n, digitsOf(2, 2))
	default:
		f.msg += " does not say how fast"
		f.hint = fmt.Sprintf("%s x %s?", n, digitsOf(1, 1))
	}
	return f
}

// inDigits writes a list of repetitions in words out as it was most likely
// meant; empty when an entry is something else.
func inDigits(s string) string {
	var all []string
	for _, piece := range strings.Split(s, ",") {
		text := strings.TrimSpace(piece)
		if f := inWords.FindStringSubmatch(text); f != nil {
			text = f[1] + " x " + wordRhythms[f[2]]
		} else if _, bad := parseOneReps(text); bad != nil {
			return ""
		}
		all = append(all, text)
	}
	return strings.Join(all, ", ")
}

// noReps says why an entry without a number and an x is none.
func noReps(text string) *fault {
	f := &fault{msg: shown(text) + " is no number of repetitions in a rhythm", hint: "like 8 x 2-2"}
	switch {
	case text == "":
		f.msg, f.hint = "an entry is missing beside a comma", `like "4 x 2-2, 16 x 1-1"`
	case strings.HasPrefix(text, "-"):
		f.msg = shown(text) + " is less than nothing"
	case nOnly.MatchString(text):
		n := nOnly.FindStringSubmatch(text)[1]
		f.msg = text + " has no rhythm"
		f.hint = fmt.Sprintf("%s x 2-2 (2 down 2 up) or %s x 1-1 (1 down 1 up)?", n, n)
	case inWords.MatchString(text):
		m := inWords.FindStringSubmatch(text)
		return worded(m[1], m[2])
	case timesHead.MatchString(text):
		m := timesHead.FindStringSubmatch(text)
		f.hint = fmt.Sprintf("%s x %s?", m[1], m[2])
	case unsigned.MatchString(text):
		m := unsigned.FindStringSubmatch(text)
		f.hint = fmt.Sprintf("%s x %s?", m[1], m[2])
	default:
		if _, bad := parseRhythm(text); bad == nil {
			f.msg, f.hint = shown(text)+" has no number of repetitions", fmt.Sprintf("8 x %s?", text)
		}
	}
	return f
}
