package main

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"strings"

	"golang.org/x/sync/errgroup"

	"onphrase/beat"
	"onphrase/beat/bar"
	"onphrase/beat/decode"
	"onphrase/beat/ear"
	"onphrase/beat/internal/dsp"
	"onphrase/beat/score"
	"onphrase/beat/spectral"
	"onphrase/beat/tone"
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
	e.name = filepath.Base(stem)
	if e.recall(stem+heardBefore) == nil {
		return e, nil
	}
	for _, ending := range []string{".wav", ".mp3", ".ogg"} {
		if _, err := os.Stat(stem + ending); err == nil {
			return e, errors.Join(e.listen(stem+ending), e.analyse(stem+ending), e.keep(stem+heardBefore))
		}
	}
	return nil, fmt.Errorf("%s: no .wav, .mp3 or .ogg beside the .beats", stem)
}

// analyse goes the whole way up to the bars.
func (e *example) analyse(path string) error {
	src, err := decode.Open(path, decode.Auto)
	if err != nil {
		return err
	}
	defer src.Close()
	t, sound, bars, err := beat.Barred(src)
	if err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	e.found = analysis{t.Beats, sound, bars, [2]float64{t.Trust.Beat, t.Trust.Count1}}
	return nil
}

// listen measures the sound at the beats as the analysis does.
func (e *example) listen(path string) error {
	src, err := decode.Open(path, decode.Auto)
	if err != nil {
		return err
	}
	defer src.Close()
	resampler := dsp.NewResampler(src.Rate(), spectral.Rate, src.Channels())
	onset := spectral.NewRecorder(src.Channels())
	harmony := tone.NewRecorder(spectral.Rate, src.Channels())
	in := make([]float32, 1<<13)
	for err == nil {
		var n int
		n, err = src.Read(in)
		out := resampler.Write(nil, in[:n])
		if err != nil {
			out = resampler.Flush(out)
		}
		onset.Write(out)
		harmony.Write(out)
	}
	if !errors.Is(err, io.EOF) {
		return fmt.Errorf("%s: %w", path, err)
	}
	frames, onsets, _ := onset.Finish()
	e.sound = bar.Measure(e.beats, frames, onsets, harmony.Frames())
	hearing := ear.Listen(frames)
	for _, t := range e.beats {
		e.sound.One = append(e.sound.One, peak(hearing.One, int(math.Round(t*hearing.FPS))))
	}
	return nil
}

// peak is the greatest value within two frames of one.
func peak(x []float64, at int) float64 {
	const near = 2
	best := 0.0
	for i := max(0, at-near); i <= min(len(x)-1, at+near); i++ {
		best = max(best, x[i])
	}
	return best
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
