package main

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
)

// followers are the programs that are not ours: aubio 0.4.9, Essentia 0.1.3 for
// JavaScript (Degara et al. 2012) and music-tempo 1.0.3, which is BeatRoot
// (Dixon 2007).
var followers = []string{"aubio", "essentia", "beatroot"}

// track is a recording and what every program heard in it.
type track struct {
	id, kind, pack, style string
	ours                  heard
	others                map[string][]float64 // counts of the followers [s]
	truth                 []float64            // counts [s]; only of kind mapped
	ones                  []float64            // counts 1 of the truth [s]
}

// heard is what we say of a track.
type heard struct {
	BPM          float64   `json:"bpm"`
	Beats        []float64 `json:"beats"`
	BeatInBar    []int     `json:"beat_in_bar"`
	Problem      string    `json:"problem"`
	Alternatives []struct {
		BPM float64 `json:"bpm"`
	} `json:"alternatives"`
	Trust struct {
		Beat   float64 `json:"beat"`
		Count1 float64 `json:"count1"`
	} `json:"trust"`
}

// readTracks reads the table and what DIR holds of its tracks. A track that we
// have not analysed is left out, and said so.
func readTracks(table, dir string) ([]track, error) {
	data, err := os.ReadFile(table)
	if err != nil {
		return nil, err
	}
	lines := strings.Split(strings.TrimSpace(string(data)), "\n")
	var all []track
	for i, line := range lines[1:] {
		cells := strings.Split(line, "\t")
		if len(cells) < 7 {
			return nil, fmt.Errorf("%s:%d: %d columns, want at least 7", table, i+2, len(cells))
		}
		t := track{id: cells[0], kind: cells[1], pack: cells[2], style: cells[3], others: map[string][]float64{}}
		if t.ours, err = readOurs(filepath.Join(dir, "ours", t.id+".json")); errors.Is(err, fs.ErrNotExist) {
			fmt.Fprintf(os.Stderr, "real: %s is not there: left out\n", t.id)
			continue
		} else if err != nil {
			return nil, err
		}
		for _, f := range followers {
			if t.others[f], _, err = readBeats(filepath.Join(dir, f, t.id+".beats")); err != nil {
				return nil, err
			}
		}
		if t.truth, t.ones, err = readBeats(filepath.Join(dir, "truth", t.id+".beats")); err != nil {
			return nil, err
		}
		all = append(all, t)
	}
	return all, nil
}

func readOurs(file string) (heard, error) {
	data, err := os.ReadFile(file)
	if err != nil {
		return heard{}, err
	}
	var out struct{ Tracks []heard }
	if err := json.Unmarshal(data, &out); err != nil || len(out.Tracks) != 1 {
		return heard{}, fmt.Errorf("%s: not the analysis of one track: %w", file, err)
	}
	return out.Tracks[0], nil
}

// readBeats reads a time [s] from each line, and whether a 1 follows it. A file
// that is not there holds none.
func readBeats(file string) (beats, ones []float64, err error) {
	f, err := os.Open(file)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil, nil
	}
	if err != nil {
		return nil, nil, err
	}
	defer f.Close()
	for lines := bufio.NewScanner(f); lines.Scan(); {
		cells := strings.Fields(lines.Text())
		if len(cells) == 0 {
			continue
		}
		t, err := strconv.ParseFloat(cells[0], 64)
		if err != nil {
			return nil, nil, fmt.Errorf("%s: %w", file, err)
		}
		beats = append(beats, t)
		if len(cells) > 1 && cells[1] == "1" {
			ones = append(ones, t)
		}
	}
	slices.Sort(beats)
	return beats, ones, nil
}

// countOnes are our counts 1 [s].
func (h heard) countOnes() []float64 {
	var out []float64
	for i, t := range h.Beats {
		if h.BeatInBar[i] == 1 {
			out = append(out, t)
		}
	}
	return out
}
