package main

import (
	"encoding/binary"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"strings"

	"golang.org/x/sync/errgroup"

	"onphrase/beat/learn/score"
	"onphrase/beat/learn/studio"
	"onphrase/beat/learn/synth"
)

const (
	shortestSong, longestSong = 80.0, 150.0 // [s]
	ringing                   = 2.0         // after the last count [s]
	musicStream               = 11          // of score.NewRand, for what a song is to be
)

// makeSongs renders songs of our own: ID.wav, ID.beats and ID.phrases each. A
// song is a pure function of its seed.
func makeSongs(args []string) error {
	f := flag.NewFlagSet("make", flag.ExitOnError)
	out := f.String("o", "", "folder for the songs")
	n := f.Int("n", 60, "how many")
	seed := f.Uint64("seed", 1, "of the first one")
	f.Parse(args)
	if err := os.MkdirAll(*out, 0o755); err != nil {
		return err
	}
	var g errgroup.Group
	g.SetLimit(runtime.GOMAXPROCS(0))
	for i := range *n {
		g.Go(func() error { return makeSong(*seed+uint64(i), *out) })
	}
	return g.Wait()
}

func makeSong(seed uint64, dir string) error {
	r := score.NewRand(seed, musicStream)
	var weights []float64
	for _, s := range score.Styles {
		weights = append(weights, s.Weight)
	}
	style := score.Styles[r.Weighted(weights)]
	song, sections := score.ComposePhrased(seed, style, r.Between(shortestSong, longestSong))
	if len(sections) == 0 {
		return fmt.Errorf("seed %d: no section fits", seed)
	}
	end := sections[len(sections)-1].Beat + sections[len(sections)-1].Counts
	song.Beats = song.Beats[:end]
	song.Length = song.Beats[end-1].Time + ringing
	sound := synth.Play(seed, song, style.Sound)
	if sound == nil {
		return fmt.Errorf("seed %d: a silent song", seed)
	}
	studio.Produce(seed, sound, nil)
	name := filepath.Join(dir, fmt.Sprintf("p%05d-%s", seed, strings.ReplaceAll(style.Name, "/", "-")))
	var beats, phrases strings.Builder
	for _, b := range song.Beats {
		fmt.Fprintf(&beats, "%.4f\t%d\n", b.Time, b.InBar)
	}
	for _, s := range sections {
		fmt.Fprintf(&phrases, "%.4f\t%d\t%s\n", song.Beats[s.Beat].Time, s.Counts, s.Name)
	}
	for ending, content := range map[string][]byte{".wav": wav(sound), ".beats": []byte(beats.String()),
		".phrases": []byte(phrases.String())} {
		if err := os.WriteFile(name+ending, content, 0o644); err != nil {
			return err
		}
	}
	return nil
}

// wav wraps mono samples. Ref: Microsoft RIFF WAVE.
func wav(x []float32) []byte {
	const head, bytesEach = 36, 2
	h := []byte("RIFF\x00\x00\x00\x00WAVEfmt \x10\x00\x00\x00\x01\x00\x01\x00")
	binary.LittleEndian.PutUint32(h[4:], uint32(head+bytesEach*len(x)))
	h = binary.LittleEndian.AppendUint32(h, synth.Rate)
	h = binary.LittleEndian.AppendUint32(h, synth.Rate*bytesEach)
	h = append(h, bytesEach, 0, 8*bytesEach, 0)
	h = append(h, "data"...)
	h = binary.LittleEndian.AppendUint32(h, uint32(bytesEach*len(x)))
	for _, v := range x {
		h = binary.LittleEndian.AppendUint16(h, uint16(int16(math.Round(float64(max(-1, min(1, v)))*math.MaxInt16))))
	}
	return h
}
