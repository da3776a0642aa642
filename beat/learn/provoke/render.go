package main

import (
	"encoding/binary"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"onphrase/beat/learn/midi"
	"onphrase/beat/learn/score"
	"onphrase/beat/learn/studio"
	"onphrase/beat/learn/synth"
)

// render plays and produces the notes of a song: mono samples at synth.Rate.
func (s spec) render(song score.Song, seed uint64) ([]float32, error) {
	x := []float32(nil)
	if s.font == "" {
		x = synth.Play(seed, song, s.sound)
	} else {
		var err error
		if x, err = fluidsynth(s.font, midi.Band(score.NewRand(seed, 9), song)); err != nil {
			return nil, err
		}
	}
	studio.Produce(seed, x, nil)
	return x, nil
}

// fluidsynth plays a take with a soundfont.
func fluidsynth(font string, take midi.Take) ([]float32, error) {
	tmp, err := os.MkdirTemp("", "provoke")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(tmp)
	mid, raw := filepath.Join(tmp, "take.mid"), filepath.Join(tmp, "take.raw")
	if err := os.WriteFile(mid, take.Write(), 0o644); err != nil {
		return nil, err
	}
	cmd := exec.Command("fluidsynth", "-ni", "-q", "-g", "0.5", "-r", fmt.Sprint(synth.Rate), "-o", "synth.cpu-cores=1",
		"-T", "raw", "-O", "s16", "-F", raw, font, mid)
	if text, err := cmd.CombinedOutput(); err != nil {
		return nil, fmt.Errorf("fluidsynth: %w: %.300s", err, text)
	}
	b, err := os.ReadFile(raw)
	if err != nil {
		return nil, err
	}
	x := make([]float32, min(len(b)/4, int(take.Song.Length*synth.Rate)))
	for i := range x {
		left, right := int16(binary.LittleEndian.Uint16(b[4*i:])), int16(binary.LittleEndian.Uint16(b[4*i+2:]))
		x[i] = (float32(left) + float32(right)) / 65536
	}
	return x, nil
}

// write writes NAME.wav, 16 bits, no louder than it can hold, and NAME.beats.
func write(name string, x []float32, beats []score.Beat) error {
	const rate = synth.Rate
	h := []byte("RIFF\x00\x00\x00\x00WAVEfmt \x10\x00\x00\x00\x01\x00\x01\x00")
	h = binary.LittleEndian.AppendUint32(h, rate)
	h = binary.LittleEndian.AppendUint32(h, rate*2)
	h = append(h, "\x02\x00\x10\x00data"...)
	h = binary.LittleEndian.AppendUint32(h, uint32(2*len(x)))
	binary.LittleEndian.PutUint32(h[4:], uint32(36+2*len(x)))
	peak := 0.98
	for _, v := range x {
		peak = max(peak, math.Abs(float64(v)))
	}
	for _, v := range x {
		h = binary.LittleEndian.AppendUint16(h, uint16(int16(float64(v)*0.98/peak*math.MaxInt16)))
	}
	if err := os.WriteFile(name+".wav", h, 0o644); err != nil {
		return err
	}
	var text strings.Builder
	for _, b := range beats {
		fmt.Fprintf(&text, "%.4f\t%d\n", b.Time, b.InBar)
	}
	return os.WriteFile(name+".beats", []byte(text.String()), 0o644)
}
