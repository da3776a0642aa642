package main

import (
	"compress/gzip"
	"encoding/gob"
	"math"
	"os"

	"onphrase/beat/bar"
)

// heardBefore is the ending of files that keep what was heard of a song, since
// listening takes a thousand times as long as fitting. Remove them when the
// analysis changes.
const heardBefore = ".heard"

// memory is what such a file holds.
type memory struct {
	Sound *bar.Sound
	Found analysis
}

// keep writes what was heard.
func (e *example) keep(file string) error {
	f, err := os.Create(file + ".part")
	if err != nil {
		return err
	}
	defer f.Close()
	z := gzip.NewWriter(f)
	m := memory{rounded(e.sound), e.found}
	m.Found.Sound = rounded(e.found.Sound)
	if err := gob.NewEncoder(z).Encode(m); err != nil {
		return err
	}
	if err := z.Close(); err != nil {
		return err
	}
	return os.Rename(file+".part", file)
}

// recall reads what was heard.
func (e *example) recall(file string) error {
	f, err := os.Open(file)
	if err != nil {
		return err
	}
	defer f.Close()
	z, err := gzip.NewReader(f)
	if err != nil {
		return err
	}
	var m memory
	if err := gob.NewDecoder(z).Decode(&m); err != nil {
		return err
	}
	e.sound, e.found = m.Sound, m.Found
	return nil
}

// rounded is the same sound in fewer digits, which take less room.
func rounded(s *bar.Sound) *bar.Sound {
	if s == nil {
		return nil
	}
	out := *s
	out.Onset, out.Level, out.Chroma, out.Bass = coarse(s.Onset), coarse(s.Level), coarse(s.Chroma), coarse(s.Bass)
	return &out
}

func coarse(rows [][]float64) [][]float64 {
	const step = 1.0 / 1024
	out := make([][]float64, len(rows))
	for i, row := range rows {
		out[i] = make([]float64, len(row))
		for j, v := range row {
			out[i][j] = step * math.Round(v/step)
		}
	}
	return out
}
