package decode

import (
	"path/filepath"
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
	const every = 12 // in a short run
	for i, path := range files {
		if testing.Short() && i%every != 0 {
			continue
		}
		t.Run(filepath.Base(path), func(t *testing.T) {
			t.Parallel()
			got := ours(t, path, Builtin)
			want := theirs(t, path, got.rate, got.channels)
			if got.length() != want.length() {
				t.Errorf("%d samples, ffmpeg decodes %d", got.length(), want.length())
			}
			reach := got.rate / 100
			a, b := want.left(), got.left()
			for _, part := range []int{1, 5, 9} { // tenths of the track
				if found := align(a, b, len(b)*part/10, reach); found.late != 0 || found.fit < 0.98 {
					t.Errorf("at %d tenths: %+v", part, found)
				}
			}
		})
	}
}
