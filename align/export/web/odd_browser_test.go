package web

import (
	"net/http"
	"net/http/httptest"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"onphrase/align"
)

// Names that try to be code stay names in all views.
func TestHostileRuns(t *testing.T) {
	file := filepath.Join(t.TempDir(), "class.html")
	if err := os.WriteFile(file, []byte(written(t, hostileMap(t))), 0o644); err != nil {
		t.Fatal(err)
	}
	b := newTab(t, 390, 844)
	for _, view := range []string{"desk", "wall", "stage"} {
		b.show(file, view)
		ask[seen](b, atFrame)
		if !ask[bool](b, `window.hacked === undefined && document.scripts.length === 2 && !document.querySelector("img")`) {
			t.Errorf("%s: a name was run", view)
		}
	}
	if got := ask[string](b, `document.title`); !strings.Contains(got, "<img src=x") {
		t.Errorf("title %q", got)
	}
	b.forgive("ERR_FILE_NOT_FOUND") // the music of such names is not there
}

// The same file works when it is served.
func TestServed(t *testing.T) {
	file := pageFile(t, mapOf(t, follow))
	server := httptest.NewServer(http.FileServer(http.Dir(filepath.Dir(file))))
	defer server.Close()
	b := newTab(t, 1024, 768)
	b.allowed = server.URL
	b.visit(server.URL + "/" + url.PathEscape(filepath.Base(file)) + "#stage")
	b.do(chromedp.KeyEvent(" "))
	b.eval(`new Promise(done => { const a = document.getElementById("music"); const look = () => a.currentTime > 0.3 && !a.paused ? done() : setTimeout(look, 20); look(); })`)
	if s := ask[seen](b, atFrame); !shows(s, truth(t, "tidewater")) {
		t.Errorf("at %.3f s: shown %q", s.At, s.Place)
	}
}

// Without the music beside it the page says so, and can still be tapped.
func TestMissingMusic(t *testing.T) {
	file := filepath.Join(t.TempDir(), "class.html")
	if err := os.WriteFile(file, []byte(written(t, mapOf(t, follow))), 0o644); err != nil {
		t.Fatal(err)
	}
	b := newTab(t, 390, 844)
	b.show(file, "stage")
	b.eval(`new Promise(done => { const look = () => document.getElementById("status").innerText ? done() : setTimeout(look, 20); look(); })`)
	b.keep("missing-390")
	if got := b.text("status"); !strings.Contains(got, "tidewater is not beside this page") {
		t.Errorf("said %q", got)
	}
	b.click("drawer")
	b.click("source")
	b.eval(tapNow)
	if got := ask[seen](b, atFrame).Place; !strings.HasPrefix(got, "phrase 1, count 1") {
		t.Errorf("tapped, it shows %q", got)
	}
	b.forgive("ERR_FILE_NOT_FOUND")
}

// A song in which no beat was found has no counts: its items are gone through
// by hand. A class without parts says so.
func TestNoCounts(t *testing.T) {
	class := strings.Replace(follow, "slow-ferry.mp3", "gone.mp3", 1)
	class = strings.Replace(class, "start: phrase 2", "", 1)
	m := mapOf(t, class)
	b := newTab(t, 1024, 768)
	b.show(pageFile(t, m), "stage")
	b.choose(1)
	for _, want := range []string{"Squat", "Squat", "One-arm row", "One-arm row", "March"} {
		ask[seen](b, atFrame)
		if got := b.text("move"); got != want {
			t.Errorf("shown %q, want %q", got, want)
		}
		b.eval(`document.body.dispatchEvent(new KeyboardEvent("keydown", { key: "ArrowRight", bubbles: true }))`)
	}
	b.keep("no-counts-1024")
	b.show(pageFile(t, &align.CountMap{Class: "Nothing yet"}), "stage")
	if got := ask[string](b, `document.body.innerText`); !strings.Contains(got, "no parts yet") {
		t.Errorf("an empty class shows %q", got)
	}
	b.keep("empty-1024")
}
