package desk_test

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"sort"
	"strings"
	"sync"
	"testing"
	"time"

	"onphrase/beat"
	"onphrase/beat/correct"
	"onphrase/beat/tap"
	"onphrase/cmd/internal/desk"
	"onphrase/plan"
)

// fakeHome keeps songs in memory.
type fakeHome struct {
	mu      sync.Mutex
	tracks  map[string]beat.Track // by path: what would be heard
	heard   map[string]bool
	fixes   map[string][]correct.Correction
	recent  []desk.Recent
	classes []desk.ClassFile
	files   map[string][]byte // classes, by path
}

func (h *fakeHome) Root() string { return "/home" }

func (h *fakeHome) Look(folder string) (desk.Place, error) {
	if folder != "/home" && folder != "/home/music" {
		return desk.Place{}, fs.ErrNotExist
	}
	p := desk.Place{Name: path.Base(folder)}
	if folder == "/home" {
		p.Entries = []desk.Entry{{Path: "/home/music", Name: "music", Kind: desk.Folder}}
		return p, nil
	}
	p.Up = "/home"
	for _, s := range h.paths() {
		p.Entries = append(p.Entries, desk.Entry{Path: s, Name: path.Base(s), Kind: desk.Music})
	}
	return p, nil
}

func (h *fakeHome) paths() []string {
	var all []string
	for p := range h.tracks {
		all = append(all, p)
	}
	sort.Strings(all)
	return all
}

func (h *fakeHome) Songs(string) ([]string, error) { return h.paths(), nil }

func (h *fakeHome) Known(p string) (desk.Heard, bool, error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	return desk.Heard{Track: h.tracks[p], Fixes: h.fixes[p]}, h.heard[p], nil
}

func (h *fakeHome) Hear(_ context.Context, p string) (desk.Heard, error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.heard[p] = true
	return desk.Heard{Track: h.tracks[p], Fixes: h.fixes[p]}, nil
}

func (h *fakeHome) Keep(p string, before, after []correct.Correction) error {
	h.mu.Lock()
	defer h.mu.Unlock()
	if !slices.Equal(h.fixes[p], before) {
		return errors.New("changed elsewhere")
	}
	h.fixes[p] = after
	return nil
}

func (h *fakeHome) KeepTapped(folder, title string, file []byte) (string, error) {
	song, err := tap.ParseSong(file)
	p := folder + "/" + strings.ToLower(title) + tap.Ending
	h.tracks[p] = song.Track(p)
	return p, err
}

func (h *fakeHome) Size(string) int64 { return 1000 }

func (h *fakeHome) Recent() []desk.Recent { return h.recent }

func (h *fakeHome) Opened(r desk.Recent) { h.recent = append([]desk.Recent{r}, h.recent...) }

func (h *fakeHome) Classes(string) []desk.ClassFile { return h.classes }

// song has counts of a tempo from half a second on, in whole phrases.
func song(title string, bpm float64, phrases int, trust float64) beat.Track {
	t := beat.Track{Title: title, BPM: bpm, Meter: 4, Trust: beat.Trust{Beat: trust, Count1: trust, Phrase: trust},
		Loudness: -11}
	for i := range phrases * beat.PhraseLen {
		at := 0.5 + float64(i)*60/bpm
		if i%beat.PhraseLen == 0 {
			t.Phrases = append(t.Phrases, beat.Phrase{Time: at, Beat: i, Counts: beat.PhraseLen, Kind: beat.Whole, Trust: trust,
				Energy: beat.Medium})
		}
		t.Beats = append(t.Beats, at)
		t.BeatInBar = append(t.BeatInBar, i%4+1)
	}
	t.Duration = t.Beats[len(t.Beats)-1] + 1
	return t
}

// harbour is a class on two of the songs.
const harbour = `onphrase: 1
class: Harbour 45
slot: "45:00"
music: music/
parts:
  - part: Warm-up
    kind: warm-up
    tracks: [tidewater.mp3]
    do:
      - block: A
        sides: both
        moves:
          - {move: march, counts: 16}
          - {move: step touch, counts: 16}
  - part: Legs
    kind: strength
    tracks: [slow-ferry.mp3]
    do:
      - {set: squat, reps: "8 x 2-2", weight: heavy} # with the bar
      - {pause: water, time: 30s}
`

// now is when the tests happen.
var now = time.Date(2026, 3, 14, 9, 0, 0, 0, time.UTC)

func newDesk(t *testing.T) (*desk.Desk, *fakeHome) {
	t.Helper()
	h := &fakeHome{
		tracks: map[string]beat.Track{
			"/home/music/slow-ferry.mp3": song("Slow Ferry", 112, 10, 0.95),
			"/home/music/tidewater.mp3":  song("Tidewater", 126, 12, 0.6),
			"/home/music/speech.mp3":     {Problem: "no steady beat found"},
		},
		heard: map[string]bool{}, fixes: map[string][]correct.Correction{},
		classes: []desk.ClassFile{{Path: "/home/harbour.yaml", Name: "Harbour 45", When: now.AddDate(0, 0, -3),
			Songs: []string{"/home/music/tidewater.mp3"}}},
	}
	h.files = map[string][]byte{"/home/harbour.yaml": []byte(harbour)}
	return desk.New(h, func() time.Time { return now }), h
}

// reply is an answer, read as the browser reads it.
type reply map[string]any

func ask(t *testing.T, d *desk.Desk, request string) reply {
	t.Helper()
	var r reply
	answer := d.Do(context.Background(), []byte(request))
	if err := json.Unmarshal(answer, &r); err != nil {
		t.Fatalf("%s: %v in %s", request, err, answer)
	}
	return r
}

// must is an answer that is no refusal.
func must(t *testing.T, d *desk.Desk, format string, args ...any) reply {
	t.Helper()
	r := ask(t, d, fmt.Sprintf(format, args...))
	if r["ok"] != true {
		t.Fatalf("%s: %v %v", fmt.Sprintf(format, args...), r["say"], r["hint"])
	}
	return r
}

// at follows names and indices into an answer.
func at(t *testing.T, v any, path ...any) any {
	t.Helper()
	for _, step := range path {
		switch s := step.(type) {
		case string:
			m, ok := v.(map[string]any)
			if r, is := v.(reply); is {
				m, ok = r, true
			}
			if !ok {
				t.Fatalf("no %q in %v", s, v)
			}
			v = m[s]
		case int:
			v = v.([]any)[s]
		}
	}
	return v
}

// hearAll listens until every song has been heard.
func hearAll(t *testing.T, d *desk.Desk) {
	t.Helper()
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	go d.Hear(ctx)
	for range 500 {
		if r := must(t, d, `{"do":"state"}`); at(t, r, "hearing", "done") == at(t, r, "hearing", "all") {
			return
		}
		time.Sleep(2 * time.Millisecond)
	}
	t.Fatal("the songs are not heard")
}

// opened is a desk with the music folder open and heard; ids are by title.
func opened(t *testing.T) (*desk.Desk, *fakeHome, map[string]string) {
	t.Helper()
	d, h := newDesk(t)
	home := must(t, d, `{"do":"browse"}`)
	must(t, d, `{"do":"open","id":"%s"}`, at(t, home, "entries", 0, "id"))
	hearAll(t, d)
	ids := map[string]string{}
	for _, s := range at(t, must(t, d, `{"do":"songs"}`), "songs").([]any) {
		ids[at(t, s, "title").(string)] = at(t, s, "id").(string)
	}
	return d, h, ids
}

func (h *fakeHome) ReadClass(p string) ([]byte, error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	if src, ok := h.files[p]; ok {
		return src, nil
	}
	return nil, fs.ErrNotExist
}

func (h *fakeHome) ReplaceClass(p string, before, after []byte) error {
	h.mu.Lock()
	defer h.mu.Unlock()
	if string(h.files[p]) != string(before) {
		return errors.New("changed elsewhere")
	}
	h.files[p] = after
	return nil
}

func (h *fakeHome) SafetyCopy(p string, src []byte) error { h.set(p+".before", src); return nil }

func (h *fakeHome) History(p string) ([]byte, error) { return h.ReadClass(p + ".history") }

func (h *fakeHome) KeepHistory(p string, kept []byte) error { h.set(p+".history", kept); return nil }

func (h *fakeHome) set(p string, src []byte) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.files[p] = src
}

func (h *fakeHome) MusicFolder(string, *plan.Class) string { return "/home/music" }

func (h *fakeHome) FindMusic(_ string, c *plan.Class) (map[string]string, []plan.Problem) {
	files := map[string]string{}
	for p := range h.tracks {
		files[path.Base(p)] = p
	}
	var names []string
	for n := range files {
		names = append(names, n)
	}
	return files, c.MissingTracks(names)
}

func (h *fakeHome) Catalog() *plan.Catalog { return plan.Builtin() }

func (h *fakeHome) NewClass(folder, name string, src []byte) (string, error) {
	p := folder + "/" + strings.ToLower(name) + ".yaml"
	h.set(p, src)
	return p, nil
}

func (h *fakeHome) Demo() (string, error) { return "/home/harbour.yaml", nil }
