package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"
)

// lookedFile keeps how often a set was looked at: a line a run. Without it in
// the folder nothing is counted.
const lookedFile = "looked.tsv"

// look adds a line to the folder's looked.tsv, and says how often that makes.
func look(folder string, songs int, left, tempi string) (string, error) {
	name := filepath.Join(folder, lookedFile)
	before, err := os.ReadFile(name)
	if os.IsNotExist(err) {
		return fmt.Sprintf("\nlooked at: not counted (an empty %s in the folder of the music starts it)\n", lookedFile), nil
	}
	if err != nil {
		return "", err
	}
	f, err := os.OpenFile(name, os.O_APPEND|os.O_WRONLY, 0)
	if err != nil {
		return "", err
	}
	now := time.Now().UTC().Format(time.DateTime)
	_, err = fmt.Fprintf(f, "%s\t%d songs\tbpm %s\twithout %s\n", now, songs, tempi, left)
	if shut := f.Close(); err == nil {
		err = shut
	}
	return fmt.Sprintf("\nlooked at: %d times, this one included (%s)\n", bytes.Count(before, []byte("\n"))+1, name), err
}

// ofTempi keeps the songs of some tempi, written as 85-180; "" keeps all.
func ofTempi(songs []song, tempi string) ([]song, error) {
	if tempi == "" {
		return songs, nil
	}
	low, high, _ := strings.Cut(tempi, "-")
	from, err := strconv.ParseFloat(low, 64)
	to, err2 := strconv.ParseFloat(high, 64)
	if err != nil || err2 != nil || from > to {
		return nil, fmt.Errorf("-bpm %q: write it as 85-180", tempi)
	}
	songs = slices.DeleteFunc(songs, func(s song) bool { return s.bpm < from || s.bpm > to })
	if len(songs) == 0 {
		return nil, fmt.Errorf("-bpm %s: no song of these tempi", tempi)
	}
	return songs, nil
}
