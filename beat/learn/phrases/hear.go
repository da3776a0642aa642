package main

import (
	"bufio"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"strings"

	"golang.org/x/sync/errgroup"

	"onphrase/beat"
	"onphrase/beat/bar"
	"onphrase/beat/decode"
	"onphrase/beat/score"
)

// example is a track with its truth, heard at its true beats: what is learnt
// from it is about bars and phrases alone.
type example struct {
	name     string
	beats    []float64 // [s]
	position []int     // in the bar, from 1
	phrases  []score.Section
	sound    *bar.Sound
	found    analysis
	marks    []mark // of a chart
}

// mark is a place that a chart names.
type mark struct {
	time float64 // [s]
	name string
}

// turn is where another one sings: no section, but phrases start on some of them.
const turn = "turn"

// marks reads a line each of seconds and a name; a song may have none.
func marks(file string) ([]mark, error) {
	text, err := os.ReadFile(file)
	if os.IsNotExist(err) {
		return nil, nil
	}
	var out []mark
	for line := range strings.Lines(string(text)) {
		m := mark{}
		if n, _ := fmt.Sscan(line, &m.time, &m.name); n == 2 {
			out = append(out, m)
		}
	}
	return out, err
}

// analysis is what the whole analysis finds before the phrases.
type analysis struct {
	Beats []float64  // [s]
	Sound *bar.Sound // at them; nil where no beat was found
	Bars  bar.Bars
	Trust [2]float64 // in beats and count 1
}

// meter is the number of counts in a bar.
func (e *example) meter() int {
	m := 1
	for _, p := range e.position {
		m = max(m, p)
	}
	return m
}

// examples hears every track of some folders that has ID.beats beside it.
func examples(dirs []string) ([]*example, error) {
	var files []string
	for _, dir := range dirs {
		found, err := filepath.Glob(filepath.Join(dir, "*.beats"))
		if err != nil {
			return nil, err
		}
		files = append(files, found...)
	}
	if len(files) == 0 {
		return nil, fmt.Errorf("no song with a .beats file in %q", dirs)
	}
	out := make([]*example, len(files))
	var g errgroup.Group
	g.SetLimit(runtime.GOMAXPROCS(0))
	for i, file := range files {
		g.Go(func() (err error) {
			out[i], err = hear(strings.TrimSuffix(file, ".beats"))
			return err
		})
	}
	return out, g.Wait()
}

func hear(stem string) (*example, error) {
	e := &example{}
	times, numbers, _, err := lines(stem + ".beats")
	if err != nil {
		return nil, err
	}
	e.beats, e.position = times, numbers
	times, numbers, labels, err := lines(stem + ".phrases")
	if err != nil && !os.IsNotExist(err) {
		return nil, err
	}
	for i, t := range times {
		if !strings.HasSuffix(labels[i], "pickup") {
			e.phrases = append(e.phrases, score.Section{Time: t, Counts: numbers[i]})
		}
	}
	if e.marks, err = marks(stem + ".sections"); err != nil {
		return nil, err
	}
	e.name = filepath.Base(stem)
	if e.recall(stem+heardBefore) == nil {
		return e, nil
	}
	for _, ending := range []string{".wav", ".mp3", ".ogg", ".opus", ".flac"} {
		if _, err := os.Stat(stem + ending); err == nil {
			return e, errors.Join(e.listen(stem+ending), e.keep(stem+heardBefore))
		}
	}
	return nil, fmt.Errorf("%s: no sound beside the .beats", stem)
}

// listen goes the whole way up to the bars, and measures the sound at the true
// beats as well.
func (e *example) listen(path string) error {
	src, err := decode.Open(path, decode.Auto)
	if err != nil {
		return err
	}
	defer src.Close()
	h, err := beat.Hear(src, e.beats)
	if err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	e.sound = h.Truth
	e.found = analysis{h.Beats, h.Sound, h.Bars, [2]float64{h.Trust.Beat, h.Trust.Count1}}
	return nil
}

// lines reads seconds, a whole number and perhaps a label from each line.
func lines(file string) (times []float64, numbers []int, labels []string, err error) {
	f, err := os.Open(file)
	if err != nil {
		return nil, nil, nil, err
	}
	defer f.Close()
	in := bufio.NewScanner(f)
	for n := 1; in.Scan(); n++ {
		var t float64
		var k int
		var label string
		if read, err := fmt.Sscan(in.Text(), &t, &k, &label); read < 2 {
			return nil, nil, nil, fmt.Errorf("%s:%d: %w", file, n, err)
		}
		times, numbers, labels = append(times, t), append(numbers, k), append(labels, label)
	}
	return times, numbers, labels, in.Err()
}
