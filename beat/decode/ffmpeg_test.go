package decode

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"
)

// fakeFFmpeg puts a shell script in the place of ffmpeg for one test.
func fakeFFmpeg(t *testing.T, script string) {
	t.Helper()
	if runtime.GOOS == "windows" {
		t.Skip("NOT CHECKED: needs a shell")
	}
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "ffmpeg"), []byte("#!/bin/sh\n"+script), 0o700); err != nil {
		t.Fatal(err)
	}
	t.Setenv("PATH", dir+string(os.PathListSeparator)+os.Getenv("PATH"))
}

// aiff looks like a file for ffmpeg.
func aiff(t *testing.T) string {
	t.Helper()
	return writeFile(t, "music.aiff", []byte("FORM\x00\x00\x00\x04AIFF"))
}

// shortStall makes a child count as hung soon.
func shortStall(t *testing.T) {
	t.Helper()
	before := stallLimit
	stallLimit = 1500 * time.Millisecond
	t.Cleanup(func() { stallLimit = before })
}

// script makes a fake ffmpeg write a WAV file of no known size to its output.
func script(t *testing.T, after string) string {
	t.Helper()
	wav := wavBytes(fmtChunk(wavPCM, 1, 44100, 16), sized(chunk("data", noise(882)), 0xFFFFFFFF))
	return fmt.Sprintf("cat '%s'\n%s\n", writeFile(t, "out.wav", wav), after)
}

func TestFFmpegFails(t *testing.T) {
	shortStall(t)
	for _, c := range []struct{ name, script, open, read string }{
		{name: "hangs at once", script: "exec sleep 60", open: "ffmpeg: no sound for 1.5s, given up"},
		{name: "refuses", script: "echo one >&2; echo 'two: broken' >&2; exit 1", open: "ffmpeg: two: broken"},
		{name: "says nothing", script: "exit 1", open: "ffmpeg: AIFF could not be decoded"},
		{name: "hangs later", script: script(t, "exec sleep 60"), read: "ffmpeg: no sound for 1.5s, given up"},
		{name: "dies later", script: script(t, "echo lost >&2; exit 3"), read: "ffmpeg: lost"},
		{name: "is killed", script: script(t, "kill -9 $$"), read: "ffmpeg: it stopped before the end"},
		{name: "leaves a child behind", script: script(t, "sleep 60 & exit 0"), read: "ffmpeg: no sound for 1.5s, given up"},
		{name: "talks without end", script: "yes >&2 & exec sleep 60", open: "ffmpeg: no sound for 1.5s, given up"},
	} {
		t.Run(c.name, func(t *testing.T) {
			fakeFFmpeg(t, c.script)
			began := time.Now()
			s, err := Open(aiff(t), Auto)
			if c.open != "" {
				if err == nil || err.Error() != c.open {
					t.Errorf("Open: %v, want %s", err, c.open)
				}
			} else if err != nil {
				t.Fatal(err)
			} else {
				defer s.Close()
				got, err := readAll(s)
				if got.length() != 441 || (err != nil || c.read != "") && (err == nil || err.Error() != c.read) {
					t.Errorf("Read: %d samples, %v; want 441, %s", got.length(), err, c.read)
				}
			}
			if took := time.Since(began); took > 20*time.Second {
				t.Errorf("took %s", took)
			}
		})
	}
}

func TestFFmpegMissing(t *testing.T) {
	m4a := ffmpegEncode(t, synth(44100, 1, 0.2), "music.m4a")
	t.Setenv("PATH", "")
	for path, name := range map[string]string{aiff(t): "AIFF", m4a: "M4A (AAC)"} {
		_, err := Open(path, Auto)
		var problem *Error
		if !errors.As(err, &problem) || problem.Msg != name+" needs ffmpeg, which is not there" ||
			problem.Hint != installFFmpeg {
			t.Errorf("got %v", err)
		}
	}
}

// Closing early ends the child and leaves nothing running.
func TestFFmpegEarlyClose(t *testing.T) {
	path := ffmpegEncode(t, synth(44100, 2, 30), "music.m4a")
	before := runtime.NumGoroutine()
	for range 5 {
		s, err := Open(path, Auto)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := s.Read(make([]float32, 100)); err != nil {
			t.Fatal(err)
		}
		s.Close()
		if child := s.sound.(*ffmpegStream).child; child.ProcessState == nil {
			t.Error("the child was not waited for")
		}
	}
	for range 50 {
		if runtime.NumGoroutine() <= before {
			return
		}
		time.Sleep(20 * time.Millisecond)
	}
	t.Errorf("%d goroutines, %d before", runtime.NumGoroutine(), before)
}

// No name of a file is taken for an option or an address.
func TestFFmpegNames(t *testing.T) {
	music, err := os.ReadFile(ffmpegEncode(t, synth(44100, 1, 0.5), "music.m4a"))
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(t.TempDir())
	for _, name := range []string{"-version", "http:song.m4a", "concat:a|b.m4a", "50%d.m4a", "a 'b' \"c\".m4a", "é日.m4a"} {
		if err := os.WriteFile(name, music, 0o600); err != nil {
			t.Fatal(err)
		}
		if got := ours(t, name, Auto); got.length() < 22050 {
			t.Errorf("%s: %d samples", name, got.length())
		}
	}
}

// With ffmpeg for everything the built-in formats give the same music.
func TestFFmpegForAll(t *testing.T) {
	music := synth(44100, 2, 2)
	for _, path := range []string{
		lame(t, music, "-b", "192"), withFLAC()(t, music), writeFile(t, "music.wav", wav16(music)),
	} {
		program(t, "ffmpeg", "ffmpeg")
		builtin, child := ours(t, path, Builtin), ours(t, path, FFmpeg)
		if builtin.length() != child.length() || builtin.format != child.format {
			t.Errorf("%s: %d samples of %s, by ffmpeg %d of %s", path, builtin.length(), builtin.format, child.length(),
				child.format)
		}
		if a := align(child.left(), builtin.left(), 20000, 100); a.late != 0 || a.fit < 0.99 {
			t.Errorf("%s: %+v", path, a)
		}
	}
}

// What ffmpeg is asked for when a built-in decoder passes is said.
func TestFFmpegNote(t *testing.T) {
	got := ours(t, lame(t, synth(44100, 2, 1), "-b", "80", "--resample", "22.05"), Auto)
	if want := []string{"MP3 at 22050 Hz with padded frames: decoded by ffmpeg"}; !slices.Equal(got.notes, want) {
		t.Errorf("notes %q", got.notes)
	}
	if strings.Contains(strings.Join(got.notes, ""), "late") {
		t.Error("a tagged file is not late")
	}
}
