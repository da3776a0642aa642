package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"onphrase/cmd/internal/browser"
	"onphrase/cmd/internal/demo"
)

// safeBuffer is written by the desk and read by the test.
type safeBuffer struct {
	mu sync.Mutex
	b  bytes.Buffer
}

func (s *safeBuffer) Write(p []byte) (int, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.b.Write(p)
}

func (s *safeBuffer) String() string {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.b.String()
}

// servedDesk serves a desk over a home folder of its own that holds the demo,
// and gives its address.
func servedDesk(t *testing.T, home string) string {
	t.Helper()
	t.Setenv("HOME", home)
	t.Setenv("XDG_CONFIG_HOME", filepath.Join(home, "config"))
	if _, err := demo.Write(filepath.Join(home, demo.Dir)); err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithCancel(context.Background())
	out := &safeBuffer{}
	s := &streams{in: &bytes.Buffer{}, out: out, err: &safeBuffer{}, width: defaultWidth}
	o := &deskOptions{listenFlags: listenFlags{decoder: "auto"}, noOpen: true}
	ended := make(chan error, 1)
	go func() { ended <- runDesk(ctx, s, o, "", true) }()
	t.Cleanup(func() {
		cancel()
		<-ended
	})
	for range 200 {
		if line, _, ok := strings.Cut(out.String(), "\n"); ok {
			return line
		}
		time.Sleep(20 * time.Millisecond)
	}
	t.Fatal("no address")
	return ""
}

// desktop is a tab on the desk, with the few words that tests need.
type desktop struct {
	t   *testing.T
	tab browser.Tab
	ctx context.Context
}

func (d *desktop) must(err error) {
	d.t.Helper()
	if err != nil {
		d.t.Fatal(err)
	}
}

func (d *desktop) click(selector string) { d.t.Helper(); d.must(browser.Click(d.ctx, d.tab, selector)) }

func (d *desktop) wait(expression string) {
	d.t.Helper()
	d.must(browser.Wait(d.ctx, d.tab, expression))
}

func (d *desktop) press(keys ...string) { d.t.Helper(); d.must(d.tab.Press(d.ctx, keys...)) }

func (d *desktop) run(expression string, out any) {
	d.t.Helper()
	d.must(d.tab.Run(d.ctx, expression, out))
}

// text clicks the button or link with a text.
func (d *desktop) text(label string) {
	d.t.Helper()
	mark := fmt.Sprintf(`(() => { const e = [...document.querySelectorAll("button, a, label")].find(
		b => b.offsetParent && b.textContent.trim().startsWith(%q)); if (!e) return false;
		document.querySelectorAll("[data-marked]").forEach(m => m.removeAttribute("data-marked"));
		e.setAttribute("data-marked", ""); return true; })()`, label)
	d.wait(mark)
	d.click("[data-marked]")
}

// starts are browsers by name.
type starts map[string]func() (browser.Browser, error)

// browsers runs a test in each browser that is installed.
func browsers(t *testing.T, with starts, test func(t *testing.T, open func(address string) *desktop)) {
	if testing.Short() {
		t.Skip("SKIPPED: drives two browsers")
	}
	for name, start := range with {
		t.Run(name, func(t *testing.T) {
			b, err := start()
			if err != nil {
				t.Skipf("SKIPPED: NO BROWSER: %v", err)
			}
			defer b.Close()
			ctx, cancel := context.WithTimeout(context.Background(), 4*time.Minute)
			defer cancel()
			test(t, func(address string) *desktop {
				tab, err := b.Open(ctx)
				if err != nil {
					t.Fatal(err)
				}
				d := &desktop{t, tab, ctx}
				d.must(tab.Resize(ctx, 1280, 900))
				d.must(tab.Go(ctx, address))
				return d
			})
		})
	}
}

// By keys alone: the demo's class is opened, an item chosen, moved, changed and
// taken out; every step is undone, and the file is the first again.
func TestDeskClassByKeys(t *testing.T) {
	browsers(t, starts{"chromium": browser.Chromium, "firefox": browser.Firefox}, func(t *testing.T, open func(string) *desktop) {
		home := t.TempDir()
		d := open(servedDesk(t, home))
		class := filepath.Join(home, demo.Dir, demo.ClassName)
		before, err := os.ReadFile(class)
		if err != nil {
			t.Fatal(err)
		}
		d.wait(`document.querySelector("h1")`)
		d.tabTo("Look at the demo")
		d.press("Enter")
		d.wait(`document.querySelector("h1").textContent === "Harbour Strong 30"`)
		d.wait(`document.querySelectorAll(".tile").length > 60 && !document.querySelector(".song-head em")`)
		d.press("ArrowDown", "ArrowDown", "ArrowDown", "ArrowDown", "ArrowDown", "ArrowDown")
		d.wait(`document.querySelector(".inspector h2")`)
		d.press(">")
		d.wait(`document.getElementById("told").textContent.startsWith("Moved later")`)
		d.press("Delete")
		d.wait(`document.getElementById("told").textContent.startsWith("Taken out")`)
		if now, err := os.ReadFile(class); err != nil || bytes.Equal(now, before) {
			t.Errorf("the file was not changed: %v", err)
		}
		d.press("u")
		d.wait(`document.getElementById("told").textContent.startsWith("Undone: Taken out")`)
		d.press("u")
		d.wait(`document.getElementById("told").textContent.startsWith("Undone: Moved")`)
		if now, err := os.ReadFile(class); err != nil || !bytes.Equal(now, before) {
			t.Errorf("undone, the file is another: %v", err)
		}
		d.press("r")
		d.wait(`document.getElementById("told").textContent.startsWith("Done again: Moved")`)
		d.press("u")
		d.wait(`document.getElementById("told").textContent.startsWith("Undone: Moved")`)
	})
}

// tabTo presses Tab until what has the focus begins with a text.
func (d *desktop) tabTo(label string) {
	d.t.Helper()
	for range 60 {
		d.press("Tab")
		var on string
		d.run(`document.activeElement.textContent.trim()`, &on)
		if strings.HasPrefix(on, label) {
			return
		}
	}
	d.t.Fatalf("no Tab leads to %q", label)
}

// A class of 30 minutes is made from the demo's music by clicks alone; a
// suggestion is taken; all of it is undone.
func TestDeskNewClassByClicks(t *testing.T) {
	browsers(t, starts{"chromium": browser.Chromium}, func(t *testing.T, open func(string) *desktop) {
		home := t.TempDir()
		d := open(servedDesk(t, home))
		d.text("Open a class or a folder of songs")
		d.text(demo.Dir)
		d.text("music")
		d.text("Use this folder")
		d.wait(`document.querySelectorAll(".song.heard").length === 8`)
		d.text("Start")
		d.text("New class")
		d.click("#new-name")
		d.press("M", "o", "n", "d", "a", "y")
		d.text("30 minutes")
		d.text("Make this class")
		d.wait(`document.querySelector("h1").textContent === "Monday"`)
		file := filepath.Join(home, demo.Dir, "music", "Monday.yaml")
		before, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		d.wait(`document.querySelectorAll(".part").length >= 3`)
		d.click(".part[data-part='1'] .part-head button:last-child")
		d.wait(`document.querySelector(".inspector input[type=search]")`)
		d.click(".inspector input[type=search]")
		d.press("s", "q", "u", "a", "t")
		d.wait(`[...document.querySelectorAll(".inspector .line b")].some(b => b.textContent === "squat")`)
		d.click(".inspector .line")
		d.wait(`document.getElementById("told").textContent.startsWith("Added")`)
		d.click(".inspector .dose select")
		d.press("ArrowDown", "Enter")
		d.press("Escape")
		d.text("Undo")
		d.wait(`document.getElementById("told").textContent.startsWith("Undone")`)
		for range 3 {
			var left bool
			d.run(`!document.querySelector(".bench").parentElement.querySelector(".ways button").disabled`, &left)
			if !left {
				break
			}
			d.click(".ways button")
			time.Sleep(300 * time.Millisecond)
		}
		if now, err := os.ReadFile(file); err != nil || !bytes.Equal(now, before) {
			t.Errorf("undone, the class is another: %v", err)
		}
	})
}

// The README's picture of the desk is the demo's class, drawn anew by
// 'go test ./cmd/onphrase -run DeskPicture -picture'.
func TestDeskPicture(t *testing.T) {
	if !*drawAnew {
		return
	}
	b, err := browser.Chromium()
	if err != nil {
		t.Fatal(err)
	}
	defer b.Close()
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	tab, err := b.Open(ctx)
	if err != nil {
		t.Fatal(err)
	}
	d := &desktop{t, tab, ctx}
	d.must(tab.Resize(ctx, 1180, 1000))
	d.must(tab.Go(ctx, servedDesk(t, t.TempDir())))
	d.text("Look at the demo")
	d.wait(`document.querySelectorAll(".tile").length > 60 && !document.querySelector(".song-head em")`)
	d.run(`document.querySelectorAll(".piece.set")[0].click()`, nil)
	d.run(`(() => { const p = document.querySelectorAll(".part")[0]; p.scrollIntoView(); scrollBy(0, -70); return 1; })()`,
		nil)
	time.Sleep(time.Second) // until all is drawn
	png, err := tab.Picture(ctx)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(deskPicture, png, 0o644); err != nil {
		t.Fatal(err)
	}
}

// deskPicture is where it is kept.
const deskPicture = "../../samples/desk.png"
