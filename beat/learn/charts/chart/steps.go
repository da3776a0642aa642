package chart

import (
	"fmt"
	"strconv"
	"strings"
)

// readSteps reads a chart for dancers (.sm, .ssc): tags "#NAME:value;", with the
// tempo, pauses, metre and labels by the count. #OFFSET is the time of count 0
// with its sign turned.
//
// Ref: the format as its open-source game documents it; from memory.
func readSteps(text string) (*Chart, error) {
	tags := stepTags(text)
	c := &Chart{Title: tags["TITLE"], Audio: tags["MUSIC"]}
	offset, err := strconv.ParseFloat(strings.TrimSpace(tags["OFFSET"]), 64)
	if err != nil {
		return nil, fmt.Errorf("#OFFSET: %w", err)
	}
	r := ruler{start: -offset}
	if r.tempi, err = stepChanges(tags["BPMS"]); err != nil {
		return nil, fmt.Errorf("#BPMS: %w", err)
	}
	if len(r.tempi) == 0 {
		return nil, fmt.Errorf("#BPMS: no tempo in it")
	}
	for _, name := range []string{"STOPS", "DELAYS"} {
		more, err := stepChanges(tags[name])
		if err != nil {
			return nil, fmt.Errorf("#%s: %w", name, err)
		}
		r.pauses = append(r.pauses, more...)
	}
	for _, t := range r.tempi {
		if t.value <= 0 {
			return nil, fmt.Errorf("#BPMS: the chart jumps at count %g, so its counts are no counts of the song", t.beat)
		}
	}
	if strings.TrimSpace(tags["WARPS"]) != "" {
		return nil, fmt.Errorf("#WARPS: the chart leaves out counts, so its counts are no counts of the song")
	}
	for _, f := range strings.Split(tags["TIMESIGNATURES"], ",") {
		var beat, upper, lower float64
		if n, _ := fmt.Sscanf(strings.TrimSpace(f), "%f=%f=%f", &beat, &upper, &lower); n == 3 && lower > 0 {
			r.meters = append(r.meters, change{beat, upper * 4 / lower})
		}
	}
	c.Anchors = r.anchors()
	for _, f := range strings.Split(tags["LABELS"], ",") {
		at, name, ok := strings.Cut(strings.TrimSpace(f), "=")
		if beat, err := strconv.ParseFloat(at, 64); ok && err == nil && name != "Song Start" {
			c.Sections = append(c.Sections, Section{r.time(beat, false), name})
		}
	}
	return c, nil
}

// stepTags are the tags before the first steps.
func stepTags(text string) map[string]string {
	var kept []string
	for line := range strings.Lines(text) {
		line, _, _ = strings.Cut(line, "//")
		kept = append(kept, line)
	}
	tags := map[string]string{}
	for _, part := range strings.Split(strings.Join(kept, "\n"), "#")[1:] {
		name, value, ok := strings.Cut(part, ":")
		name = strings.ToUpper(strings.TrimSpace(name))
		if name == "NOTEDATA" || name == "NOTES" {
			break
		}
		if _, twice := tags[name]; ok && !twice {
			value, _, _ = strings.Cut(value, ";")
			tags[name] = strings.TrimSpace(value)
		}
	}
	return tags
}

// stepChanges reads "beat=value,beat=value".
func stepChanges(list string) ([]change, error) {
	var out []change
	for _, f := range strings.Split(list, ",") {
		f = strings.TrimSpace(f)
		if f == "" {
			continue
		}
		at, value, _ := strings.Cut(f, "=")
		beat, err := strconv.ParseFloat(strings.TrimSpace(at), 64)
		if err != nil {
			return nil, err
		}
		v, err := strconv.ParseFloat(strings.TrimSpace(value), 64)
		if err != nil {
			return nil, err
		}
		out = append(out, change{beat, v})
	}
	return out, nil
}
