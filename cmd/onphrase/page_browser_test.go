package main

import (
	"context"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/serve"
)

// In a real browser the page that is served has its song, and shows a change
// of the class file by itself, but not while it runs.
func TestPageReloadsInBrowser(t *testing.T) {
	path, err := exec.LookPath("chromium")
	if err != nil {
		t.Skip("NOT CHECKED: chromium is not on the PATH; apt install chromium")
	}
	class := servedFolder(t)
	r := start(t, class)
	ctx, cancel := context.WithTimeout(context.Background(), 5*time.Minute)
	defer cancel()
	ctx, endBrowser := chromedp.NewExecAllocator(ctx, append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path), chromedp.NoSandbox, chromedp.WSURLReadTimeout(3*time.Minute))...)
	defer endBrowser()
	ctx, endTab := chromedp.NewContext(ctx)
	defer endTab()
	ask := func(script string) string {
		t.Helper()
		v, err := chromedp.Run(ctx, chromedp.Evaluate[string](script, chromedp.EvalAwaitPromise))
		if err != nil {
			t.Fatalf("%s: %v", script, err)
		}
		return v
	}
	until := func(script, want string) {
		t.Helper()
		for range 150 {
			if ask(script) == want {
				return
			}
			time.Sleep(200 * time.Millisecond)
		}
		t.Fatalf("%s is %q, want %q", script, ask(script), want)
	}
	change := func(name string) {
		t.Helper()
		if err := os.WriteFile(class, []byte(strings.Replace(servedClass, "class: Served", "class: "+name, 1)),
			disk.FilePerm); err != nil {
			t.Fatal(err)
		}
	}
	if err := chromedp.Do(ctx, chromedp.Navigate(r.addresses[0])); err != nil {
		t.Fatal(err)
	}
	const ready = `document.title + (document.getElementById("music")?.readyState > 0)`
	until(ready, "Servedtrue")
	change("Second")
	until(ready, "Secondtrue")
	// Running on a tap: the change waits for the stop.
	ask(`document.getElementById("source").click(); document.getElementById("tap").dispatchEvent(new PointerEvent("pointerdown", {cancelable: true})); ""`)
	until(`document.getElementById("tap").textContent`, "Count 1 is now")
	change("Third")
	time.Sleep(4 * serve.LookEvery)
	if got := ask("document.title"); got != "Second" {
		t.Errorf("reloaded as %q while the class runs", got)
	}
	if _, page, _ := get(t, r.addresses[0], "/", nil); !strings.Contains(page, "<title>Third</title>") {
		t.Error("the server does not show the third")
	}
	ask(`document.getElementById("source").click(); ""`) // back to our own music: it stands
	until(ready, "Thirdtrue")
	r.ends()
}
