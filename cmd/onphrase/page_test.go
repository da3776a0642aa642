package main

import (
	"bufio"
	"bytes"
	"context"
	"io"
	"net/http"
	"net/url"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"testing"
	"time"

	"onphrase/cmd/internal/disk"
)

const servedClass = `onphrase: 1
class: Served
music: music
parts:
  - part: Warm-up
    tracks: [one.wav]
    do:
      - {interval: march, time: 56 counts}
`

// servedFolder is a class with its music, secrets beside it, and a link to one
// of them in the music folder.
func servedFolder(t *testing.T) (class string) {
	t.Helper()
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	t.Setenv("XDG_CONFIG_HOME", t.TempDir())
	dir := t.TempDir()
	song, err := os.ReadFile(clickFile(t))
	if err == nil {
		err = os.Mkdir(filepath.Join(dir, "music"), 0o755)
	}
	class = filepath.Join(dir, "class.yaml")
	for name, text := range map[string]string{class: servedClass, filepath.Join(dir, "music", "one.wav"): string(song),
		filepath.Join(dir, "music", "other.wav"): string(song), filepath.Join(dir, "secret.txt"): "SECRET"} {
		if err == nil {
			err = os.WriteFile(name, []byte(text), disk.FilePerm)
		}
	}
	if err == nil {
		err = os.Symlink(filepath.Join(dir, "secret.txt"), filepath.Join(dir, "music", "link.wav"))
	}
	if err != nil {
		t.Fatal(err)
	}
	return class
}

// running is a page command that serves.
type running struct {
	t         *testing.T
	addresses []string
	talk      *sayings
	cancel    context.CancelFunc
	code      chan exitCode
}

// start runs the page command until its addresses are printed.
func start(t *testing.T, args ...string) *running {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	r := &running{t: t, talk: &sayings{}, cancel: cancel, code: make(chan exitCode, 1)}
	in, out := io.Pipe()
	go func() {
		r.code <- run(ctx, append([]string{"page", "--port", "0"}, args...),
			&streams{in: &bytes.Buffer{}, out: out, err: r.talk, width: defaultWidth})
		out.Close()
	}()
	lines := bufio.NewScanner(in)
	for len(r.addresses) < 1 && lines.Scan() {
		r.addresses = append(r.addresses, lines.Text())
	}
	t.Cleanup(cancel)
	if len(r.addresses) < 1 {
		code := <-r.code
		t.Fatalf("exit code %d, %s", code, r.talk.String())
	}
	return r
}

// sayings are what a running command has said so far.
type sayings struct {
	mu   sync.Mutex
	text strings.Builder
}

func (w *sayings) Write(p []byte) (int, error) {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.text.Write(p)
}

func (w *sayings) String() string {
	w.mu.Lock()
	defer w.mu.Unlock()
	return w.text.String()
}

// says waits until the command has said something.
func (r *running) says(want string) {
	r.t.Helper()
	for range 200 {
		if strings.Contains(r.talk.String(), want) {
			return
		}
		time.Sleep(100 * time.Millisecond)
	}
	r.t.Fatalf("no %q in\n%s", want, r.talk)
}

// ends stops it as Ctrl-C does and waits for the end.
func (r *running) ends() string {
	r.t.Helper()
	r.cancel()
	select {
	case code := <-r.code:
		if code != exitClean {
			r.t.Errorf("exit code %d, %s", code, r.talk.String())
		}
	case <-time.After(20 * time.Second):
		r.t.Fatal("does not end")
	}
	return r.talk.String()
}

// get asks for an address exactly as it is written.
func get(t *testing.T, base, path string, change func(*http.Request)) (status int, body string, header http.Header) {
	t.Helper()
	u, err := url.Parse(base)
	if err != nil {
		t.Fatal(err)
	}
	r := &http.Request{Method: http.MethodGet, URL: &url.URL{Scheme: "http", Host: u.Host, Opaque: path},
		Header: http.Header{}}
	if change != nil {
		change(r)
	}
	client := http.Client{Timeout: 10 * time.Second,
		CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse }}
	res, err := client.Do(r)
	if err != nil {
		t.Fatal(err)
	}
	defer res.Body.Close()
	b, err := io.ReadAll(res.Body)
	if err != nil {
		t.Fatal(err)
	}
	return res.StatusCode, string(b), res.Header
}

// The page and its songs can be read, and nothing else, however it is asked
// for and by whom.
func TestPageServesOnlyTheClass(t *testing.T) {
	class := servedFolder(t)
	r := start(t, class)
	at := r.addresses[0]
	status, page, _ := get(t, at, "/", nil)
	if status != http.StatusOK || !strings.Contains(page, "<title>Served</title>") ||
		!strings.Contains(page, "music/1/one.wav") {
		t.Fatalf("%d: %.300s", status, page)
	}
	status, song, _ := get(t, at, "/music/1/one.wav", func(r *http.Request) { r.Header.Set("Range", "bytes=0-3") })
	if status != http.StatusPartialContent || song != "RIFF" {
		t.Errorf("a part of the song: %d %q", status, song)
	}
	for _, path := range []string{
		"/class.yaml", "/../class.yaml", "/../secret.txt", "/music/../../secret.txt", "/music/1/../../../secret.txt",
		"/music/1/..%2f..%2fsecret.txt",
		"/%2e%2e/secret.txt", `/..\secret.txt`, "/music/1/%2e%2e%5csecret.txt", "/music", "/music/", "/music/1", "/music/1/",
		"/music/2/other.wav",
		"/music/1/other.wav", "/music/1/link.wav", "/music/link.wav", "/link.wav", "/" + filepath.ToSlash(class),
		"//" + filepath.ToSlash(class),
		"/music/1/one.wav/", "/music/1/one.wav%00", "/music/1//one.wav", "/.", "/etc/passwd",
		"/music/1/one.wav.onphrase.yaml", "/index.html",
	} {
		if status, body, _ := get(t, at, path, nil); status != http.StatusNotFound && status != http.StatusBadRequest &&
			status != http.StatusMisdirectedRequest || strings.Contains(body, "SECRET") || strings.Contains(body, "RIFF") {
			t.Errorf("%s: %d %.60q", path, status, body)
		}
	}
	host := strings.TrimSuffix(strings.TrimPrefix(at, "http://"), "/")
	for name, c := range map[string]struct {
		change func(*http.Request)
		want   int
	}{
		"localhost": {func(r *http.Request) { r.Host = strings.Replace(host, "127.0.0.1", "localhost", 1) },
			http.StatusOK},
		"foreign host": {func(r *http.Request) { r.Host = "evil.example" }, http.StatusMisdirectedRequest},
		"foreign host, port": {func(r *http.Request) { r.Host = "evil.example:" + host[strings.Index(host, ":")+1:] },
			http.StatusMisdirectedRequest},
		"other port":     {func(r *http.Request) { r.Host = "127.0.0.1:1" }, http.StatusMisdirectedRequest},
		"own origin":     {func(r *http.Request) { r.Header.Set("Origin", "http://"+host) }, http.StatusOK},
		"foreign origin": {func(r *http.Request) { r.Header.Set("Origin", "http://evil.example") }, http.StatusForbidden},
		"null origin":    {func(r *http.Request) { r.Header.Set("Origin", "null") }, http.StatusForbidden},
		"embedded": {func(r *http.Request) {
			r.Header.Set("Sec-Fetch-Site", "cross-site")
			r.Header.Set("Sec-Fetch-Mode", "no-cors")
		}, http.StatusForbidden},
		"followed a link": {func(r *http.Request) {
			r.Header.Set("Sec-Fetch-Site", "cross-site")
			r.Header.Set("Sec-Fetch-Mode", "navigate")
		}, http.StatusOK},
		"written to": {func(r *http.Request) { r.Method = http.MethodPost }, http.StatusMethodNotAllowed},
	} {
		if status, _, header := get(t, at, "/", c.change); status != c.want ||
			header.Get("X-Content-Type-Options") != "nosniff" {
			t.Errorf("%s: %d, want %d", name, status, c.want)
		}
	}
	// Another file in the place of a song is not served.
	song1 := filepath.Join(filepath.Dir(class), "music", "one.wav")
	if err := os.Remove(song1); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(filepath.Join(filepath.Dir(class), "secret.txt"), song1); err != nil {
		t.Fatal(err)
	}
	if status, body, _ := get(t, at, "/music/1/one.wav", nil); status != http.StatusNotFound ||
		strings.Contains(body, "SECRET") {
		t.Errorf("a link in the place of a song: %d %.60q", status, body)
	}
	if talk := r.ends(); !strings.Contains(talk, "onphrase: stopped") {
		t.Errorf("talk: %s", talk)
	}
}

// A change of the class file reaches the page that is open; one with a problem
// does not, and is told. Ctrl-C ends the streams too, and leaves nothing
// running.
func TestPageFollowsTheClass(t *testing.T) {
	class := servedFolder(t)
	before := runtime.NumGoroutine()
	r := start(t, class)
	res, err := http.Get(r.addresses[0] + "events")
	if err != nil {
		t.Fatal(err)
	}
	defer res.Body.Close()
	events := bufio.NewScanner(res.Body)
	first := nextEdition(t, events)
	rewrite := func(from, to string) {
		t.Helper()
		if err := os.WriteFile(class, []byte(strings.Replace(servedClass, from, to, 1)), disk.FilePerm); err != nil {
			t.Fatal(err)
		}
	}
	rewrite("time: 56 counts", "time: 56")
	r.says("the page shows the class as it was before")
	if _, page, _ := get(t, r.addresses[0], "/", nil); !strings.Contains(page, "<title>Served</title>") {
		t.Error("a class with a problem took the page away")
	}
	rewrite("class: Served", "class: Served again")
	if second := nextEdition(t, events); second == first {
		t.Error("the edition did not change")
	}
	if _, page, _ := get(t, r.addresses[0], "/", nil); !strings.Contains(page, "<title>Served again</title>") {
		t.Error("the page did not change")
	}
	talk := r.ends()
	for _, want := range []string{"class.yaml:8:", "the page shows the class as it was before", "class.yaml has changed"} {
		if !strings.Contains(talk, want) {
			t.Errorf("no %q in\n%s", want, talk)
		}
	}
	for events.Scan() { // the stream has ended, with what was under way
	}
	res.Body.Close()
	http.DefaultClient.CloseIdleConnections()
	for range 50 {
		if runtime.NumGoroutine() <= before {
			return
		}
		time.Sleep(100 * time.Millisecond)
	}
	t.Errorf("%d goroutines before, %d after", before, runtime.NumGoroutine())
}

// nextEdition reads the next event.
func nextEdition(t *testing.T, events *bufio.Scanner) string {
	t.Helper()
	for events.Scan() {
		if data, ok := strings.CutPrefix(events.Text(), "data: "); ok {
			return data
		}
	}
	t.Fatalf("the stream ended: %v", events.Err())
	return ""
}
