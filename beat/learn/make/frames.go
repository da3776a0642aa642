package main

import (
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"

	"onphrase/beat/decode"
	"onphrase/beat/internal/dsp"
	"onphrase/beat/spectral"
)

// measured writes ID.f32 for audio files, and copies the ID.beats beside them.
func measured(args []string) error {
	f := flag.NewFlagSet("frames", flag.ExitOnError)
	out := f.String("o", "", "folder for the result")
	f.Parse(args)
	if err := os.MkdirAll(*out, 0o755); err != nil {
		return err
	}
	for _, path := range f.Args() {
		stem := strings.TrimSuffix(path, filepath.Ext(path))
		frames, err := framesOf(path)
		if err != nil {
			return err
		}
		beats, err := os.ReadFile(stem + ".beats")
		if err != nil && !os.IsNotExist(err) {
			return err
		}
		name := filepath.Join(*out, filepath.Base(stem))
		if err := os.WriteFile(name+".beats", beats, 0o644); err != nil {
			return err
		}
		if err := os.WriteFile(name+".f32", toFloats(frames), 0o644); err != nil {
			return err
		}
	}
	return nil
}

// framesOf measures an audio file as the analysis does.
func framesOf(path string) (*spectral.Frames, error) {
	s, err := decode.Open(path, decode.Auto)
	if err != nil {
		return nil, err
	}
	defer s.Close()
	resampler := dsp.NewResampler(s.Rate(), spectral.Rate, s.Channels())
	rec := spectral.NewRecorder(s.Channels())
	in := make([]float32, 8192*s.Channels())
	var out []float64
	for {
		n, err := s.Read(in)
		out = resampler.Write(out[:0], in[:n])
		if err != nil {
			out = resampler.Flush(out)
		}
		rec.Write(out)
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, fmt.Errorf("%s: %w", path, err)
		}
	}
	f, _, _ := rec.Finish()
	return f, nil
}
