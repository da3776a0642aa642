package chart

import (
	"fmt"
	"strconv"
	"strings"
)

// Modes of a .osu file; that of the drum is not read, because music charted for
// drums is kept for tests.
const drumMode = "1"

// readCircles reads a chart of the format .osu: sections in square brackets, of
// which [TimingPoints] has lines of time [ms], length of a count [ms], counts in
// a bar, and further fields: the seventh says whether the tempo is set, and bit
// 0 of the eighth whether the climax is on.
//
// Ref: the .osu file format, as its public wiki describes it; from memory.
func readCircles(text string) (*Chart, error) {
	c := &Chart{}
	part, mode, high := "", "", false
	for line := range strings.Lines(text) {
		line = strings.TrimSpace(line)
		if strings.HasPrefix(line, "[") {
			part = line
			continue
		}
		if part == "[TimingPoints]" {
			if err := c.timingPoint(line, &high); err != nil {
				return nil, err
			}
			continue
		}
		key, value, _ := strings.Cut(line, ":")
		switch value = strings.TrimSpace(value); strings.TrimSpace(key) {
		case "AudioFilename":
			c.Audio = value
		case "Mode":
			mode = value
		case "Title":
			c.Title = value
		}
	}
	if mode == drumMode {
		return nil, fmt.Errorf("it is for drums; such charts are kept for tests")
	}
	return c, nil
}

// timingPoint reads one line. high is whether the climax was on before it.
func (c *Chart) timingPoint(line string, high *bool) error {
	f := strings.Split(line, ",")
	if len(f) < 2 {
		return nil
	}
	ms, err := strconv.ParseFloat(strings.TrimSpace(f[0]), 64)
	if err != nil {
		return fmt.Errorf("timing point %q: %w", line, err)
	}
	length, err := strconv.ParseFloat(strings.TrimSpace(f[1]), 64)
	if err != nil {
		return fmt.Errorf("timing point %q: %w", line, err)
	}
	meter := 4
	if len(f) > 2 {
		if n, err := strconv.Atoi(strings.TrimSpace(f[2])); err == nil && n > 0 {
			meter = n
		}
	}
	// A negative length sets the speed of what is played, not the tempo.
	if length > 0 {
		c.Anchors = append(c.Anchors, Anchor{Time: ms / 1000, Period: length / 1000, Meter: meter})
	}
	if len(f) < 8 {
		return nil
	}
	effects, err := strconv.Atoi(strings.TrimSpace(f[7]))
	if err != nil {
		return nil
	}
	if now := effects&1 != 0; now != *high {
		*high = now
		name := Climax
		if !now {
			name = ClimaxEnd
		}
		c.Sections = append(c.Sections, Section{ms / 1000, name})
	}
	return nil
}
