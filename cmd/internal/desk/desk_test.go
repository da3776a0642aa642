package desk_test

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"onphrase/beat/correct"
)

func TestOpenAndHear(t *testing.T) {
	d, h, ids := opened(t)
	if len(ids) != 3 {
		t.Fatalf("songs %v, want 3", ids)
	}
	r := must(t, d, `{"do":"song","id":"%s"}`, ids["Tidewater"])
	for path, want := range map[string]any{"state": "heard", "bpm": 126.0, "whole": 12.0,
		"trust_word": "listen to it first", "loud": "medium"} {
		if got := at(t, r, "song", path); got != want {
			t.Errorf("%s is %v, want %v", path, got, want)
		}
	}
	if got := at(t, r, "song", "used", 0, "class"); got != "Harbour 45" {
		t.Errorf("used in %v", got)
	}
	if n := len(at(t, r, "doubts").([]any)); n != 12 {
		t.Errorf("%d doubtful places at a trust of .6, want all 12", n)
	}
	if got := at(t, must(t, d, `{"do":"song","id":"%s"}`, ids["speech"]), "song",
		"problem"); got != "no steady beat found" {
		t.Errorf("problem %v", got)
	}
	if len(h.recent) != 1 || h.recent[0].Name != "music" {
		t.Errorf("recent: %v", h.recent)
	}
}

// A browser can name nothing that it was not given.
func TestNoPathsFromBrowsers(t *testing.T) {
	d, _, _ := opened(t)
	for _, request := range []string{
		`{"do":"browse","id":"/etc"}`, `{"do":"open","id":"../.."}`, `{"do":"song","id":"999"}`, `{"do":"song","id":"-1"}`,
		`{"do":"fix","id":"0","kind":"one"}`, `{"do":"nothing"}`, `not json`, `{"do":"song","id":7}`,
	} {
		r := ask(t, d, request)
		if r["ok"] != false || r["say"] == "" {
			t.Errorf("%s: %v, want a refusal", request, r)
		}
		if s, _ := r["say"].(string); strings.Contains(s, "/home/") {
			t.Errorf("%s: the answer names a path: %s", request, s)
		}
	}
}

// lengths are the counts of the phrases, and where the first begins.
func lengths(t *testing.T, r any) string {
	t.Helper()
	s := ""
	for i, p := range at(t, r, "phrases").([]any) {
		if i == 0 {
			s = fmt.Sprint(at(t, p, "count"), ":")
		}
		s += fmt.Sprint(" ", at(t, p, "counts"))
	}
	return s
}

func TestFix(t *testing.T) {
	const count = 60000 / 112.0 // [ms]
	when := func(n int) int { return int(500 + float64(n)*count + 0.5) }
	for _, c := range []struct{ name, fields, want string }{
		{"count 1 one later in all of it", fmt.Sprintf(`"kind":"later","at":%d`, when(32)),
			"1: 32 32 32 32 32 32 32 32 32 31"},
		{"count 1 one earlier from here on", fmt.Sprintf(`"kind":"earlier","at":%d,"onward":true`, when(96)),
			"0: 32 32 31 32 32 32 32 32 32 32 1"},
		{"four extra counts in a phrase", fmt.Sprintf(`"kind":"extra","at":%d,"counts":4`, when(64)),
			"0: 32 32 4 32 32 32 32 32 32 32 28"},
		{"a phrase starts here", fmt.Sprintf(`"kind":"phrase","at":%d`, when(48)), "0: 32 16 16 32 32 32 32 32 32 32 32"},
		{"joined", fmt.Sprintf(`"kind":"join","at":%d`, when(32)), "0: 64 32 32 32 32 32 32 32 32"},
		{"dragged", fmt.Sprintf(`"kind":"drag","at":%d,"to":%d`, when(32), when(36)), "0: 36 28 32 32 32 32 32 32 32 32"},
		{"half as fast", `"kind":"half"`, "0: 32 32 32 32 32"},
	} {
		d, _, ids := opened(t)
		before := lengths(t, must(t, d, `{"do":"song","id":"%s"}`, ids["Slow Ferry"]))
		dry := must(t, d, `{"do":"fix","id":"%s","dry":true,%s}`, ids["Slow Ferry"], c.fields)
		if got := lengths(t, dry); got != c.want {
			t.Errorf("%s, dry: %s, want %s", c.name, got, c.want)
		}
		if got := lengths(t, must(t, d, `{"do":"song","id":"%s"}`, ids["Slow Ferry"])); got != before {
			t.Errorf("%s: a trial changed the song", c.name)
		}
		done := must(t, d, `{"do":"fix","id":"%s",%s}`, ids["Slow Ferry"], c.fields)
		if got := lengths(t, done); got != c.want {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
		for len(at(t, done, "fixes").([]any)) > 0 {
			done = must(t, d, `{"do":"unfix","id":"%s","n":0}`, ids["Slow Ferry"])
		}
		if got := lengths(t, done); got != before {
			t.Errorf("%s, taken back: %s, want %s", c.name, got, before)
		}
	}
}

// What cannot be is refused, and nothing is changed; neither is it where
// somebody else changed the corrections meanwhile.
func TestFixRefused(t *testing.T) {
	d, h, ids := opened(t)
	for _, fields := range []string{`"kind":"one","at":99999999`, `"kind":"squash"`,
		`"kind":"extra","at":500,"counts":900`, `"kind":"extra","at":1,"counts":-1`} {
		if r := ask(t, d, fmt.Sprintf(`{"do":"fix","id":"%s",%s}`, ids["Slow Ferry"], fields)); r["ok"] != false {
			t.Errorf("%s: %v", fields, r)
		}
	}
	h.fixes["/home/music/slow-ferry.mp3"] = []correct.Correction{{Kind: correct.Half}}
	if r := ask(t, d, fmt.Sprintf(`{"do":"fix","id":"%s","kind":"double"}`, ids["Slow Ferry"])); r["ok"] != false {
		t.Errorf("a change from elsewhere was overwritten: %v", r)
	}
}

func TestCheckedIsNoLongerDoubted(t *testing.T) {
	d, _, ids := opened(t)
	r := must(t, d, `{"do":"checked","id":"%s","on":true}`, ids["Tidewater"])
	if n := len(at(t, r, "doubts").([]any)); n != 0 || at(t, r, "song", "trust_word") != "sure" {
		t.Errorf("%d doubts, %v", n, at(t, r, "song", "trust_word"))
	}
	r = must(t, d, `{"do":"checked","id":"%s","on":false}`, ids["Tidewater"])
	if n := len(at(t, r, "doubts").([]any)); n != 12 {
		t.Errorf("%d doubts after it was taken back", n)
	}
}

// A song whose count 1 is out is put right by taps with 30 ms of jitter, within
// a count's phase of the truth.
func TestTapsPutCount1Right(t *testing.T) {
	d, _, ids := opened(t)
	r := rand.New(rand.NewPCG(7, 8))
	const period = 60000 / 126.0
	var taps []string
	for i := range 12 { // from the third count of phrase 3 on
		taps = append(taps, fmt.Sprint(int(500+float64(66+i)*period+30*(2*r.Float64()-1))))
	}
	request := fmt.Sprintf(`{"do":"taps","id":"%s","taps":[%s],"one":0`, ids["Tidewater"], strings.Join(taps, ","))
	dry := must(t, d, "%s", request+`,"dry":true}`)
	if got := lengths(t, at(t, dry, "song")); !strings.HasPrefix(got, "2: 32 32 32") {
		t.Errorf("dry: %s, want phrases from count 2 on; it says %v", got, at(t, dry, "say"))
	}
	kept := must(t, d, "%s", request+`}`)
	if got := lengths(t, at(t, kept, "song")); !strings.HasPrefix(got, "2: 32 32 32") {
		t.Errorf("kept: %s; it says %v", got, at(t, kept, "say"))
	}
}

func TestTappedIn(t *testing.T) {
	d, h, _ := opened(t)
	var taps, marks []string
	for i := range 33 {
		taps = append(taps, fmt.Sprint(1000+int(float64(i)*60000/124)))
	}
	for _, n := range []int{0, 32, 64, 96, 112} {
		marks = append(marks, fmt.Sprint(1000+int(float64(n)*60000/124)))
	}
	request := fmt.Sprintf(`{"do":"tapped-in","title":"Studio Tune","taps":[%s],"marks":[%s]`, strings.Join(taps, ","),
		strings.Join(marks, ","))
	if got := fmt.Sprint(at(t, must(t, d, "%s", request+`,"dry":true}`), "phrases")); got != "[32 32 32 16]" {
		t.Errorf("phrases %s", got)
	}
	r := must(t, d, "%s", request+`}`)
	if got := at(t, r, "song", "state"); got != "tapped" {
		t.Errorf("state %v", got)
	}
	if bpm := at(t, r, "song", "bpm").(float64); bpm < 123.9 || bpm > 124.1 {
		t.Errorf("%.2f BPM, want 124 within a tenth", bpm)
	}
	if _, ok := h.tracks["/home/music/studio tune.song.yaml"]; !ok {
		t.Error("nothing was kept")
	}
	if path, ok := d.SongFile(at(t, r, "song", "id").(string)); ok {
		t.Errorf("%s can be played, but has no sound", path)
	}
}
