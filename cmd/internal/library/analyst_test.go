package library

import (
	"context"
	"errors"
	"path/filepath"
	"testing"

	"onphrase/beat"
	"onphrase/beat/decode"
)

// Ctrl-C while a track is being read ends the reading, and with it the
// analysis.
func TestInterruptedWhileReading(t *testing.T) {
	sound, err := decode.Open(filepath.Join("..", "..", "..", "samples", "demo", "music", "tidewater.mp3"), decode.Auto)
	if err != nil {
		t.Fatal(err)
	}
	defer sound.Close()
	ctx, cancel := context.WithCancel(context.Background())
	reads := 0
	heard := &heardSource{Stream: sound, ctx: ctx, tell: func(float64) { reads++; cancel() }}
	if _, err := beat.Analyze(heard); !errors.Is(err, context.Canceled) {
		t.Errorf("Analyze returned %v, want an error that is context.Canceled", err)
	}
	if reads != 1 {
		t.Errorf("%d reads, want 1", reads)
	}
}
