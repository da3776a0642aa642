package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
)

// columns of a part's manifest.tsv; cmd/bench reads those it knows.
const columns = "id\tsource\tstyle\tbpm\tbpm_kind\tdoubt\tmaker\tvocals\tuse\tlicence\toffset_ms\tfits"

// writeTables writes manifest.tsv of each part, and README with a line a song.
func writeTables(out string, songs []*song) error {
	tables := map[string]*strings.Builder{}
	var readme strings.Builder
	for _, s := range songs {
		t := tables[s.source.part]
		if t == nil {
			t = &strings.Builder{}
			fmt.Fprintln(t, columns)
			tables[s.source.part] = t
		}
		fmt.Fprintln(t, s.row())
		fmt.Fprintln(&readme, s.describe())
	}
	for part, t := range tables {
		if err := os.WriteFile(filepath.Join(out, part, "manifest.tsv"), []byte(t.String()), 0o644); err != nil {
			return err
		}
	}
	return os.WriteFile(filepath.Join(out, "README"), []byte(readme.String()), 0o644)
}

func (s *song) row() string {
	kind := "constant"
	if !s.steady {
		kind = "varying"
	}
	return fmt.Sprintf("%s\t%s\t%s\t%.3f\t%s\t%s\t%s\t%s\t%s\t%s\t%.0f\t%.2f", s.id, s.source.name, s.format(),
		s.bpm, kind, s.source.doubt, s.source.maker, s.vocals(), s.source.use, s.source.licence, 1000*s.offset, s.share)
}

func (s *song) describe() string {
	use := "only to measure"
	if s.source.use == "learn" {
		use = "may be learnt from"
	}
	return fmt.Sprintf("%s/%s: %s (%s), licence: %s, by %s, %.2f BPM, vocals: %s, %s",
		s.source.part, s.id, s.source.name, s.format(), s.source.licence, s.source.maker, s.bpm, s.vocals(), use)
}

// format is the ending of the chart's name.
func (s *song) format() string { return strings.TrimPrefix(filepath.Ext(s.file), ".") }

// vocals is who sings, as far as the chart or its source says.
func (s *song) vocals() string {
	if s.chart.Lyrics {
		return "sung"
	}
	return s.source.vocals
}
