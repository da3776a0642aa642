package main

import (
	"os/exec"
	"path/filepath"
	"testing"

	"onphrase/beat"
	"onphrase/beat/decode"
	"onphrase/beat/score"
)

// TestKnownTempo counts real recordings whose true counts are known: songs of a
// Debian package that come with the tempo they were played to. They are rock with
// guitars, played and not rendered. Song and guitar are two files, mixed here.
//
// Ref: package fretsonfire-songs-sectoid, each song's notes.mid (one tempo, its
// tick 0 at the start of the sound); tick0 is the place of the sound's first attack after
// that, measured.
func TestKnownTempo(t *testing.T) {
	const folder = "/usr/share/games/fretsonfire/data/songs/sectoid"
	const seconds = "60"
	for _, song := range []struct {
		name       string
		bpm, tick0 float64 // [1/min], [s]
	}{
		{"Escape from chaosland", 135, 0.024},
		{"Feelings", 95, 0.029},
		{"War of freedom", 140, 0.041},
	} {
		t.Run(song.name, func(t *testing.T) {
			files, err := filepath.Glob(filepath.Join(folder, song.name, "*.ogg"))
			if err != nil || len(files) != 2 {
				t.Skip("needs Debian's fretsonfire-songs-sectoid")
			}
			ffmpeg, err := exec.LookPath("ffmpeg")
			if err != nil {
				t.Skip("needs ffmpeg")
			}
			wav := filepath.Join(t.TempDir(), "song.wav")
			mix := exec.Command(ffmpeg, "-v", "error", "-i", files[0], "-i", files[1], "-filter_complex", "amix=inputs=2", "-t",
				seconds, wav)
			if out, err := mix.CombinedOutput(); err != nil {
				t.Fatalf("ffmpeg: %v\n%s", err, out)
			}
			stream, err := decode.Open(wav, decode.Builtin)
			if err != nil {
				t.Fatal(err)
			}
			defer stream.Close()
			got, err := beat.Analyze(stream)
			if err != nil {
				t.Fatal(err)
			}
			var truth []float64
			for at := song.tick0; at < got.Duration; at = song.tick0 + float64(len(truth))*60/song.bpm {
				truth = append(truth, at)
			}
			if f := score.Beats(truth, got.Beats).F; f < 0.95 {
				t.Errorf("F of the counts %.3f, want at least 0.95 (%.1f BPM heard, %.1f played)", f, got.BPM, song.bpm)
			}
		})
	}
}
