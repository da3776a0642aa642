package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"testing"

	"onphrase/cmd/internal/disk"
	"onphrase/plan/say"
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
	p.Reading("/music/a name much too long for one line of a terminal of eighty columns, by far.mp3", 61)
	p.Reading("/music/too soon.mp3", 62)
	p.Finished(false, true)
	p.Finished(true, true)
	p.Finished(false, false)
	p.end()
	line, rest, _ := bytes.Cut(talk.Bytes(), []byte("\r\x1b[Konphrase: "))
	if w := say.Columns(string(bytes.TrimPrefix(line, []byte("\r\x1b[K")))); w >= defaultWidth {
		t.Errorf("the progress line takes %d columns", w)
	}
	if !bytes.HasPrefix(line, []byte("\r\x1b[Kanalysing 1 of 3  1:01  a name")) ||
		bytes.Contains(line, []byte("too soon")) {
		t.Errorf("progress line %q", line)
	}
	if !bytes.HasPrefix(rest, []byte("3 tracks analysed (1 from the cache, 1 without a result) in ")) {
		t.Errorf("last line %q", rest)
	}
}
