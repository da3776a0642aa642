package decode

import (
	"math"
	"path/filepath"
	"strconv"
	"testing"
)

// Every track of the corpus lies where ffmpeg puts it: the truth about its
// beats is written on ffmpeg's timeline.
func TestCorpusTimeline(t *testing.T) {
	program(t, "ffmpeg", "ffmpeg")
	files, err := filepath.Glob("../../../shared/corpus/*.mp3")
	if err != nil {
		t.Fatal(err)
	}
	if len(files) == 0 {
		t.Skip("NOT CHECKED: no corpus at ../shared/corpus beside the repository")
	}
	const (
		wholeEvery = 12 // tracks that are decoded to their end
		opening    = 8  // [s] of the others
	)
	for i, path := range files {
		whole := i%wholeEvery == 0
		if testing.Short() && !whole {
			continue
		}
		t.Run(filepath.Base(path), func(t *testing.T) {
			t.Parallel()
			limit := opening
			if whole {
				limit = 0
			}
			checkAgainstFFmpeg(t, path, limit)
		})
	}
}

// checkAgainstFFmpeg compares the first seconds of a file, or all of it.
func checkAgainstFFmpeg(t *testing.T, path string, seconds int) {
	t.Helper()
	s, err := Open(path, Builtin)
	if err != nil {
		t.Fatal(err)
	}
	defer s.Close()
	var options []string
	most := math.MaxInt
	if seconds > 0 {
		options = []string{"-t", strconv.Itoa(seconds)}
		most = seconds * s.Rate() * s.Channels()
	}
	got, err := readSome(s, most)
	if err != nil {
		t.Fatal(err)
	}
	want := theirs(t, path, got.rate, got.channels, options...)
	if got.length() != want.length() {
		t.Errorf("%d samples, ffmpeg decodes %d", got.length(), want.length())
	}
	a, b := want.left(), got.left()
	sounding := 0
	for _, tenth := range []int{1, 5, 9} {
		at := len(b)*tenth/10 - alignWindow/2
		const silence = 1e-3 // the energy of quantised nothing, in a window
		if product(b[at:at+alignWindow], b[at:at+alignWindow]) < silence {
			continue
		}
		sounding++
		if found := align(a, b, at, got.rate/100); found.late != 0 || found.fit < 0.98 {
			t.Errorf("at %d tenths: %+v", tenth, found)
		}
	}
	if sounding == 0 {
		t.Error("nothing but silence")
	}
}
