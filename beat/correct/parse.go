package correct

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

// parser gathers what is wrong with a file while it reads it.
type parser struct {
	file     *File
	problems []Problem
}

func (p *parser) wrong(n *yaml.Node, format string, args ...any) {
	p.problems = append(p.problems, Problem{max(n.Line, 1), fmt.Sprintf(format, args...)})
}

// topKeys are those a file must have.
var topKeys = []string{"onphrase", "track", "sound", "corrections"}

func (p *parser) top(m *yaml.Node) {
	values := p.pairs(m, topKeys)
	for _, key := range topKeys {
		if values[key] == nil {
			p.wrong(m, "%s: is missing", key)
		}
	}
	if n := values["onphrase"]; n != nil && n.Value != fileVersion {
		p.wrong(n, "onphrase: %s: this program reads version %s", n.Value, fileVersion)
	}
	if n := values["track"]; n != nil {
		p.file.Track = n.Value
	}
	if n := values["sound"]; n != nil {
		if p.file.Sound = n.Value; n.Kind != yaml.ScalarNode || n.Value == "" {
			p.wrong(n, "sound: is empty; it binds the file to its track")
		}
	}
	list := values["corrections"]
	switch {
	case list == nil || list.Tag == "!!null":
	case list.Kind != yaml.SequenceNode:
		p.wrong(list, "corrections: a list is expected, each entry on a line that begins with -")
	default:
		for _, n := range list.Content {
			p.entry(n)
		}
	}
}

// pairs reads a mapping whose keys are all among those known.
func (p *parser) pairs(m *yaml.Node, known []string) map[string]*yaml.Node {
	values := map[string]*yaml.Node{}
	for i := 0; i+1 < len(m.Content); i += 2 {
		key := m.Content[i]
		switch {
		case !slices.Contains(known, key.Value):
			p.wrong(key, "unknown word %q; it may be %s", key.Value, strings.Join(known, ", "))
		case values[key.Value] != nil:
			p.wrong(key, "%s: is there twice", key.Value)
		default:
			values[key.Value] = m.Content[i+1]
		}
	}
	return values
}

// entryKeys are those of one correction.
var entryKeys = []string{string(One), string(Phrase), string(NoPhrase), string(Counts), string(Every),
	string(Steady), "at"}

// entry reads one correction.
func (p *parser) entry(n *yaml.Node) {
	before := len(p.problems)
	var c Correction
	switch n.Kind {
	case yaml.ScalarNode:
		if c.Kind = Kind(n.Value); !c.Kind.timeless() {
			p.wrong(n, "%q: half, double, checked, or a word with a time such as one: 0:15.4 is expected", n.Value)
		}
	case yaml.MappingNode:
		c = p.mapping(n)
	default:
		p.wrong(n, "a correction such as one: 0:15.4 is expected")
	}
	if len(p.problems) == before {
		p.file.List = append(p.file.List, c)
		p.file.Lines = append(p.file.Lines, n.Line)
	}
}

func (p *parser) mapping(n *yaml.Node) Correction {
	values := p.pairs(n, entryKeys)
	var c Correction
	for _, kind := range []Kind{One, Phrase, NoPhrase, Counts, Every, Steady} {
		v := values[string(kind)]
		switch {
		case v == nil:
		case c.Kind != "":
			p.wrong(v, "%s and %s in one entry; begin a new one with -", c.Kind, kind)
		default:
			c.Kind = kind
		}
	}
	time := values["at"]
	switch {
	case c.Kind == "":
		p.wrong(n, "says not what to correct")
		return c
	case !c.Kind.hasAt() && time != nil:
		p.wrong(time, "at: belongs to counts, every and bpm; %s has its own time", c.Kind)
	case c.Kind.hasAt() && time == nil:
		p.wrong(n, "%s: needs at: and a time", c.Kind)
	case c.Kind == Counts:
		c.Counts = p.number(values[string(Counts)])
	case c.Kind == Every:
		c.Step = p.ratio(values[string(Every)])
	case c.Kind == Steady:
		c.BPM = p.tempo(values[string(Steady)])
	default:
		time = values[string(c.Kind)]
	}
	if time != nil {
		at, err := ParseClock(time.Value)
		if err != nil {
			p.wrong(time, "%s", err)
		}
		c.Time = at
	}
	return c
}

func (p *parser) number(n *yaml.Node) int {
	v, err := strconv.Atoi(n.Value)
	if err != nil || v < 1 || v > MostCounts {
		p.wrong(n, "counts: %q: a whole number from 1 to %d is expected", n.Value, MostCounts)
	}
	return v
}

// ratio reads 2 or 3/2.
func (p *parser) ratio(n *yaml.Node) Ratio {
	num, den, parted := strings.Cut(n.Value, "/")
	if !parted {
		den = "1"
	}
	r := Ratio{}
	var errNum, errDen error
	r.Num, errNum = strconv.Atoi(num)
	r.Den, errDen = strconv.Atoi(den)
	if errNum != nil || errDen != nil || min(r.Num, r.Den) < 1 || max(r.Num, r.Den) > MostRatio {
		p.wrong(n, "every: %q: a number from 1 to %d, or two such as 3/2, is expected", n.Value, MostRatio)
	}
	return r
}

func (p *parser) tempo(n *yaml.Node) float64 {
	v, err := strconv.ParseFloat(n.Value, 64)
	if err != nil || !(v >= LeastBPM && v <= MostBPM) {
		p.wrong(n, "bpm: %q: a number from %.0f to %.0f is expected", n.Value, LeastBPM, MostBPM)
	}
	return v
}
