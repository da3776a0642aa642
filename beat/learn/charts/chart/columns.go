package chart

import (
	"fmt"

	"gopkg.in/yaml.v3"
)

// readColumns reads a chart of the format .qua: YAML with AudioFile and
// TimingPoints, each of StartTime [ms], Bpm and Signature (3 for three in a bar).
// What is not written is zero, or four in a bar.
//
// Ref: the format of its open-source game; from memory.
func readColumns(data []byte) (*Chart, error) {
	var file struct {
		TimingPoints []struct {
			StartTime float64 `yaml:"StartTime"`
			BPM       float64 `yaml:"Bpm"`
			Signature any     `yaml:"Signature"`
		} `yaml:"TimingPoints"`
		Bookmarks []struct {
			StartTime float64 `yaml:"StartTime"`
			Note      string  `yaml:"Note"`
		} `yaml:"Bookmarks"`
		Audio string `yaml:"AudioFile"`
		Name  string `yaml:"Title"`
	}
	if err := yaml.Unmarshal(data, &file); err != nil {
		return nil, err
	}
	c := &Chart{Title: file.Name, Audio: file.Audio}
	for _, p := range file.TimingPoints {
		if p.BPM <= 0 {
			return nil, fmt.Errorf("a tempo of %g at %g ms", p.BPM, p.StartTime)
		}
		meter := 4
		if s := fmt.Sprint(p.Signature); s == "3" || s == "Triple" {
			meter = 3
		}
		c.Anchors = append(c.Anchors, Anchor{Time: p.StartTime / 1000, Period: 60 / p.BPM, Meter: meter})
	}
	for _, b := range file.Bookmarks {
		if b.Note != "" {
			c.Sections = append(c.Sections, Section{b.StartTime / 1000, b.Note})
		}
	}
	return c, nil
}
