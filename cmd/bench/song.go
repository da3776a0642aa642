package main

import (
	"bufio"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"

	"onphrase/beat/score"
)

// song is a track of the corpus with its truth.
type song struct {
	id, file      string
	source, style string
	constant      bool   // one tempo throughout
	doubt         string // octave, downbeat, or nothing
	beats         []float64
	position      []int
	phrases       []score.Section // without pick-ups, which belong to no phrase
	bpm           float64
	maker, vocals string // as the manifest says; "" where it says nothing
	marks         []mark // where its chart says that a part starts
}

// findSongs lists the audio files of a folder that have truth beside them.
func findSongs(dir string) ([]song, error) {
	truths, err := filepath.Glob(filepath.Join(dir, "*.beats"))
	if err != nil {
		return nil, err
	}
	manifest, err := readManifest(filepath.Join(dir, "manifest.tsv"))
	if err != nil {
		return nil, err
	}
	var songs []song
	for _, truth := range truths {
		stem := strings.TrimSuffix(truth, ".beats")
		file := audioBeside(stem)
		if file == "" {
			continue
		}
		s := song{id: filepath.Base(stem), file: file}
		row := manifest[s.id]
		s.source, s.style, s.doubt = family(row["source"]), row["style"], row["doubt"]
		s.constant = row["bpm_kind"] == "constant"
		s.maker, s.vocals = row["maker"], row["vocals"]
		if s.beats, s.position, _, err = readTimes(truth); err != nil {
			return nil, err
		}
		if s.phrases, err = readPhrases(stem + ".phrases"); err != nil {
			return nil, err
		}
		if s.marks, err = readMarks(stem + ".sections"); err != nil {
			return nil, err
		}
		if s.bpm, err = strconv.ParseFloat(row["bpm"], 64); err != nil {
			s.bpm = 60 / medianInterval(s.beats)
		}
		songs = append(songs, s)
	}
	if len(songs) == 0 {
		return nil, fmt.Errorf("%s: no audio file with a .beats file beside it", dir)
	}
	return songs, nil
}

func audioBeside(stem string) string {
	for _, ext := range []string{".mp3", ".wav", ".flac", ".m4a", ".ogg", ".opus"} {
		if _, err := os.Stat(stem + ext); err == nil {
			return stem + ext
		}
	}
	return ""
}

// family is a source without what follows the colon.
func family(source string) string {
	name, _, _ := strings.Cut(source, ":")
	return name
}

// readManifest maps id to the columns of its row; a folder may have none.
func readManifest(file string) (map[string]map[string]string, error) {
	rows := map[string]map[string]string{}
	data, err := os.ReadFile(file)
	if os.IsNotExist(err) {
		return rows, nil
	}
	if err != nil {
		return nil, err
	}
	lines := strings.Split(string(data), "\n")
	head := strings.Split(lines[0], "\t")
	for _, line := range lines[1:] {
		cells := strings.Split(line, "\t")
		row := map[string]string{}
		for i, c := range cells[:min(len(cells), len(head))] {
			row[head[i]] = c
		}
		rows[row["id"]] = row
	}
	return rows, nil
}

// pickUp labels the counts before the first phrase.
const pickUp = "pickup"

// readPhrases reads where phrases start; a track may have none.
func readPhrases(file string) ([]score.Section, error) {
	times, counts, labels, err := readTimes(file)
	if os.IsNotExist(err) {
		return nil, nil
	}
	var out []score.Section
	for i, t := range times {
		if !strings.HasSuffix(labels[i], pickUp) {
			out = append(out, score.Section{Time: t, Counts: counts[i]})
		}
	}
	return out, err
}

// readTimes reads lines of seconds, a whole number, and perhaps a label.
func readTimes(file string) (times []float64, numbers []int, labels []string, err error) {
	f, err := os.Open(file)
	if err != nil {
		return nil, nil, nil, err
	}
	defer f.Close()
	lines := bufio.NewScanner(f)
	for n := 1; lines.Scan(); n++ {
		cells := strings.Fields(lines.Text())
		if len(cells) < 2 {
			continue
		}
		t, err := strconv.ParseFloat(cells[0], 64)
		if err != nil {
			return nil, nil, nil, fmt.Errorf("%s:%d: %w", file, n, err)
		}
		k, err := strconv.Atoi(cells[1])
		if err != nil {
			return nil, nil, nil, fmt.Errorf("%s:%d: %w", file, n, err)
		}
		times, numbers, labels = append(times, t), append(numbers, k), append(labels, cells[len(cells)-1])
	}
	return times, numbers, labels, lines.Err()
}

func medianInterval(beats []float64) float64 {
	var d []float64
	for i := 1; i < len(beats); i++ {
		d = append(d, beats[i]-beats[i-1])
	}
	if len(d) == 0 {
		return 0
	}
	slices.Sort(d)
	return d[len(d)/2]
}
