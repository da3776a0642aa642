package decode

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	maker "onphrase/samples/synth"
)

// Another title, picture or tag leaves the sound what it is, in every format;
// other music, or the same music encoded once more, is another sound. The tags
// are written by ffmpeg, which is not ours.
func TestIdentity(t *testing.T) {
	ffmpeg, err := exec.LookPath("ffmpeg")
	if err != nil {
		t.Skip("NO FFMPEG: that a retagged file is known again is not checked")
	}
	dir := t.TempDir()
	music := func(name string, bpm float64) string {
		path := filepath.Join(dir, name)
		f, err := os.Create(path)
		if err != nil {
			t.Fatal(err)
		}
		if err := maker.Clicks(maker.Steady(bpm, 4, 16, 0.5), 22050).WriteWAV(f, 1); err != nil {
			t.Fatal(err)
		}
		if err := f.Close(); err != nil {
			t.Fatal(err)
		}
		return path
	}
	run := func(args ...string) {
		t.Helper()
		out, err := exec.Command(ffmpeg, append([]string{"-v", "error", "-nostdin"}, args...)...).CombinedOutput()
		if err != nil {
			t.Fatalf("ffmpeg %v: %v\n%s", args, err, out)
		}
	}
	id := func(path string) string {
		t.Helper()
		s, err := Identity(path)
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	slow, fast := music("slow.wav", 100), music("fast.wav", 120)
	seen := map[string]string{}
	for _, ending := range []string{".wav", ".flac", ".mp3", ".m4a", ".ogg", ".opus"} {
		a, b := filepath.Join(dir, "a"+ending), filepath.Join(dir, "b"+ending)
		again := filepath.Join(dir, "retagged"+ending)
		encode := []string{"-fflags", "+bitexact", "-flags:a", "+bitexact"}
		run(append(append([]string{"-i", slow}, encode...), a)...)
		run(append(append([]string{"-i", fast}, encode...), b)...)
		run("-i", a, "-c", "copy", "-metadata", "title=Slow Ferry", "-metadata", "artist=The Harbour Nine", again)
		if bytesOf(t, a) == bytesOf(t, again) {
			t.Fatalf("%s: the tags changed nothing in the file", ending)
		}
		if id(a) != id(again) {
			t.Errorf("%s: another title makes it another sound", ending)
		}
		if id(a) == id(b) {
			t.Errorf("%s: other music is the same sound", ending)
		}
		if other, ok := seen[id(a)]; ok {
			t.Errorf("%s and %s are the same sound", ending, other)
		}
		seen[id(a)] = ending
	}
}

func bytesOf(t *testing.T, path string) string {
	t.Helper()
	b, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// Tags of every kind round an MP3, and files that are no sound.
func TestIdentityMP3Tags(t *testing.T) {
	src, err := os.ReadFile(filepath.Join("..", "..", "samples", "demo", "music", "tidewater.mp3"))
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	write := func(name string, b []byte) string {
		path := filepath.Join(dir, name)
		if err := os.WriteFile(path, b, 0o644); err != nil {
			t.Fatal(err)
		}
		return path
	}
	plain, err := Identity(write("a.mp3", src))
	if err != nil {
		t.Fatal(err)
	}
	id3v2 := append([]byte("ID3\x04\x00\x00\x00\x00\x00\x64"), make([]byte, 100)...)
	id3v1 := append([]byte("TAG"), make([]byte, 125)...)
	tagged, err := Identity(write("b.mp3", append(append(id3v2, src[skipID3(bytes.NewReader(src), int64(len(src))):]...),
		id3v1...)))
	if err != nil || tagged != plain {
		t.Errorf("tags before and behind: %q, %v, want %q", tagged, err, plain)
	}
	cut, err := Identity(write("c.mp3", src[:len(src)*3/4]))
	if err != nil || cut == plain {
		t.Errorf("a file cut short is the same sound: %q, %v", cut, err)
	}
	for name, b := range map[string][]byte{"empty.mp3": nil, "text.mp3": []byte("water at 12:30"),
		"head.flac": []byte("fLaC\x00\x00")} {
		if id, err := Identity(write(name, b)); err == nil {
			t.Errorf("%s: %q, want an error", name, id)
		}
	}
}
