package fit

import (
	"strings"
	"testing"

	"onphrase/beat"
	"onphrase/plan"
)

// What a part starts on instead of is what its file says, also where the song
// does not have it.
func TestWordsOfStart(t *testing.T) {
	for start, want := range map[string]string{
		"phrase 99": " instead of phrase 99, which the song does not have",
		"count 999": " instead of count 999, which the song does not have",
		"'59:00'":   " instead of 3540 s, which the song does not have",
		"phrase 1":  "starts on phrase 2 instead of phrase 1, 7.5 s more of music before it",
	} {
		src := "onphrase: 1\nclass: T\nparts:\n  - part: One\n    kind: strength\n    tracks: [a.mp3]\n    start: " + start +
			"\n    do: [{set: squat, reps: 8 x 2-2}]\n"
		prices := Usual()
		prices[Start], prices[Phrase] = 1, 1
		res, err := Search(Job{File: "class.yaml", Src: []byte(src), Known: plan.Builtin(),
			Tracks: map[string]beat.Track{"a.mp3": song("a.mp3", 128, 16, 32, 32)}, Prices: prices})
		if err != nil {
			t.Fatal(err)
		}
		changes := res.Plans[0].Changes
		if len(changes) == 0 || changes[0].Kind != Start || !strings.HasSuffix(changes[0].Words, want) {
			t.Errorf("start: %s: %+v, want %q", start, changes, want)
		}
	}
}
