package chart

import (
	"fmt"
	"strconv"
	"strings"
)

// readFrets reads a chart of the format .chart: blocks "[Name] { ... }" with lines
// "tick = ...". [Song] has Resolution, the ticks of a count, and Offset [s];
// [SyncTrack] the tempo (B, in thousandths) and metre (TS, with the power of two
// of its lower number); [Events] the sections, by name.
//
// Ref: the format as its community documents it; from memory.
func readFrets(text string) (*Chart, error) {
	c := &Chart{}
	r := ruler{}
	resolution := 192.0
	type mark struct {
		tick float64
		name string
	}
	var marks []mark
	block := ""
	for line := range strings.Lines(text) {
		line = strings.TrimSpace(line)
		if strings.HasPrefix(line, "[") {
			block = strings.Trim(line, "[]")
			continue
		}
		key, value, ok := strings.Cut(line, "=")
		if !ok {
			continue
		}
		key, value = strings.TrimSpace(key), strings.TrimSpace(value)
		tick, err := strconv.ParseFloat(key, 64)
		switch {
		case block == "Song":
			if err := c.songLine(&r, &resolution, key, strings.Trim(value, `" `)); err != nil {
				return nil, err
			}
		case err != nil:
		case block == "SyncTrack":
			r.sync(tick/resolution, strings.Fields(value))
		case block == "Events":
			event := strings.Trim(strings.TrimSpace(strings.TrimPrefix(value, "E")), `"[]`)
			c.Lyrics = c.Lyrics || strings.HasPrefix(event, "lyric ")
			for _, prefix := range []string{"section ", "prc_", "section_"} {
				if name, ok := strings.CutPrefix(event, prefix); ok {
					marks = append(marks, mark{tick / resolution, strings.ReplaceAll(name, "_", " ")})
					break
				}
			}
		}
	}
	if len(r.tempi) == 0 {
		return nil, fmt.Errorf("[SyncTrack]: no tempo in it")
	}
	c.Anchors = r.anchors()
	for _, m := range marks {
		c.Sections = append(c.Sections, Section{r.time(m.tick, false), m.name})
	}
	return c, nil
}

func (c *Chart) songLine(r *ruler, resolution *float64, key, value string) error {
	var err error
	switch key {
	case "Name":
		c.Title = value
	case "MusicStream":
		c.Audio = value
	case "Resolution":
		*resolution, err = strconv.ParseFloat(value, 64)
		if err == nil && *resolution <= 0 {
			err = fmt.Errorf("resolution: %g ticks are no count", *resolution)
		}
	case "Offset":
		r.start, err = strconv.ParseFloat(value, 64)
	}
	return err
}

// sync takes in a line of tempo or metre, at a count.
func (r *ruler) sync(beat float64, f []string) {
	if len(f) < 2 {
		return
	}
	n, err := strconv.ParseFloat(f[1], 64)
	if err != nil || n <= 0 {
		return
	}
	switch f[0] {
	case "B":
		r.tempi = append(r.tempi, change{beat, n / 1000})
	case "TS":
		lower := 2
		if len(f) > 2 {
			if p, err := strconv.Atoi(f[2]); err == nil {
				lower = p
			}
		}
		for ; lower > 2; lower-- {
			n /= 2
		}
		r.meters = append(r.meters, change{beat, n})
	}
}
