package main

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"testing"

	"onphrase/beat"
	"onphrase/beat/decode"
	"onphrase/cmd/internal/disk"
	"onphrase/samples/synth"
)

func clickFile(t *testing.T) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "clicks.wav")
	var b bytes.Buffer
	if err := synth.Clicks(synth.Steady(128, 4, 64, 0.5), rate).WriteWAV(&b, 1); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, b.Bytes(), disk.FilePerm); err != nil {
		t.Fatal(err)
	}
	return path
}

// Ctrl-C while a track is being read ends the reading, and with it the
// analysis.
func TestInterruptedWhileReading(t *testing.T) {
	sound, err := decode.Open(clickFile(t), decode.Auto)
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

// An interrupted command says so, fails, and leaves no file and no entry in
// the cache.
func TestInterruptedCommand(t *testing.T) {
	t.Setenv("XDG_CACHE_HOME", filepath.Join(t.TempDir(), "cache"))
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	var out, talk bytes.Buffer
	s := &streams{in: &bytes.Buffer{}, out: &out, err: &talk, width: defaultWidth}
	if code := run(ctx, []string{"analyze", clickFile(t)}, s); code != exitFailed {
		t.Errorf("exit code %d, want %d", code, exitFailed)
	}
	if out.Len() > 0 {
		t.Errorf("standard output: %q, want nothing", out.String())
	}
	if !bytes.HasSuffix(talk.Bytes(), []byte("onphrase: interrupted\n")) {
		t.Errorf("standard error: %q, want it to end with the interruption", talk.String())
	}
	if _, err := os.Stat(os.Getenv("XDG_CACHE_HOME")); err == nil {
		t.Error("something was cached")
	}
}

// On a terminal the progress line moves and is wiped; the talk after it stands
// alone.
func TestProgressOnTerminal(t *testing.T) {
	var talk bytes.Buffer
	p := newProgress(&streams{err: &talk, live: true}, 3)
	p.reading("/music/a name much too long for one line of a terminal of eighty columns, by far.mp3", 61)
	p.reading("/music/too soon.mp3", 62)
	p.finished(false, true)
	p.finished(true, true)
	p.finished(false, false)
	p.end()
	line, rest, _ := bytes.Cut(talk.Bytes(), []byte("\r\x1b[Konphrase: "))
	if w := columns(string(bytes.TrimPrefix(line, []byte("\r\x1b[K")))); w >= defaultWidth {
		t.Errorf("the progress line takes %d columns", w)
	}
	if !bytes.HasPrefix(line, []byte("\r\x1b[Kanalysing 1 of 3  1:01  a name")) || bytes.Contains(line, []byte("too soon")) {
		t.Errorf("progress line %q", line)
	}
	if !bytes.HasPrefix(rest, []byte("3 tracks analysed (1 from the cache, 1 without a result) in ")) {
		t.Errorf("last line %q", rest)
	}
}
