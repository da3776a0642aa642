package main

import (
	"encoding/binary"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync/atomic"
	"time"

	"golang.org/x/sync/errgroup"

	"onphrase/beat/learn"
	"onphrase/beat/spectral"
)

// studioRun is one run of render.
type studioRun struct {
	midi, fonts, out string
	sound            bool // keep the sound as well
}

// render makes the tracks of one set and writes, for each, ID.f32 (frames of
// the front-end, float32) and ID.beats (seconds, beat in bar).
func render(args []string) error {
	f := flag.NewFlagSet("render", flag.ExitOnError)
	list := f.String("songs", "beat/learn/songs.tsv", "the list made by plan")
	set := f.String("set", "train", "which set of it")
	fonts := f.String("only", "", "only tracks with one of these soundfonts, separated by commas")
	part := f.Int("every", 1, "only every so many-th track")
	var run studioRun
	f.StringVar(&run.midi, "midi", "", "folder of MIDI files")
	f.StringVar(&run.fonts, "fonts", "", "folder of soundfonts")
	f.StringVar(&run.out, "o", "", "folder for the result")
	f.BoolVar(&run.sound, "sound", false, "write ID.wav as well")
	f.Parse(args)
	items, err := readItems(*list)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(run.out, 0o755); err != nil {
		return err
	}
	var todo []learn.Item
	for i, it := range items {
		wanted := *fonts == "" || slices.Contains(strings.Split(*fonts, ","), it.Font)
		if it.Set == *set && wanted && i%*part == 0 {
			todo = append(todo, it)
		}
	}
	return run.all(todo)
}

func (run studioRun) all(todo []learn.Item) error {
	var done, failed atomic.Int64
	start := time.Now()
	var g errgroup.Group
	g.SetLimit(runtime.GOMAXPROCS(0))
	for _, it := range todo {
		g.Go(func() error {
			if err := run.track(it); err != nil {
				fmt.Fprintf(os.Stderr, "render: %s (%s): %v\n", it.ID, it.Source, err)
				if failed.Add(1) > int64(len(todo)/20) {
					return fmt.Errorf("more than 5 %% of the tracks failed")
				}
			}
			if n := done.Add(1); n%100 == 0 {
				fmt.Fprintf(os.Stderr, "%d of %d after %.0f s\n", n, len(todo), time.Since(start).Seconds())
			}
			return nil
		})
	}
	return g.Wait()
}

// track renders one item and writes what is learnt from it.
func (run studioRun) track(it learn.Item) error {
	tmp, err := os.MkdirTemp("", "ear")
	if err != nil {
		return err
	}
	defer os.RemoveAll(tmp)
	t, err := run.perform(it, tmp)
	if err != nil {
		return err
	}
	name := filepath.Join(run.out, it.ID)
	if run.sound {
		if err := os.WriteFile(name+".wav", wav(t.sound), 0o644); err != nil {
			return err
		}
	}
	var beats strings.Builder
	for _, b := range t.beats {
		fmt.Fprintf(&beats, "%.4f\t%d\n", b.Time, b.InBar)
	}
	if err := os.WriteFile(name+".beats", []byte(beats.String()), 0o644); err != nil {
		return err
	}
	if err := os.WriteFile(name+".part", frames(t.sound), 0o644); err != nil {
		return err
	}
	return os.Rename(name+".part", name+".f32") // training may be waiting for it
}

// frames are the levels that the front-end of the analysis measures.
func frames(sound []float32) []byte {
	rec := spectral.NewRecorder(1)
	block := make([]float64, 0, 8192)
	for len(sound) > 0 {
		n := min(len(sound), cap(block))
		block = block[:0]
		for _, v := range sound[:n] {
			block = append(block, float64(v))
		}
		rec.Write(block)
		sound = sound[n:]
	}
	f, _, _ := rec.Finish()
	return toFloats(f)
}

// toFloats is the levels as bytes.
func toFloats(f *spectral.Frames) []byte {
	levels := f.Rows(0, f.Len())
	out := make([]byte, 0, 4*len(levels))
	for _, v := range levels {
		out = binary.LittleEndian.AppendUint32(out, math.Float32bits(v))
	}
	return out
}

// wav wraps mono samples at 22.05 kHz.
func wav(x []float32) []byte {
	const rate = spectral.Rate
	h := []byte("RIFF\x00\x00\x00\x00WAVEfmt \x10\x00\x00\x00\x01\x00\x01\x00")
	h = binary.LittleEndian.AppendUint32(h, rate)
	h = binary.LittleEndian.AppendUint32(h, rate*2)
	h = append(h, 2, 0, 16, 0)
	h = append(h, "data"...)
	h = binary.LittleEndian.AppendUint32(h, uint32(2*len(x)))
	binary.LittleEndian.PutUint32(h[4:], uint32(36+2*len(x)))
	return append(h, toBytes(x)...)
}
