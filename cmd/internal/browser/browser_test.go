package browser_test

import (
	"bytes"
	"context"
	"fmt"
	"image/png"
	"net/http"
	"net/http/httptest"
	"testing"
	"time"

	"onphrase/cmd/internal/browser"
)

const trial = `<!doctype html><title>Trial</title><button id="b">Press</button><input id="i">
<script>
window.log = [];
document.getElementById("b").addEventListener("click", function (e) { log.push("click " + e.isTrusted); });
document.addEventListener("keydown", function (e) { log.push((e.ctrlKey ? "Control+" : "") + e.key); });
</script>`

// Every act of a tab does in each browser what it says.
func TestTabs(t *testing.T) {
	page := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) {
		w.Header().Set("Content-Type", "text/html")
		fmt.Fprint(w, trial)
	}))
	defer page.Close()
	for name, start := range map[string]func() (browser.Browser, error){"chromium": browser.Chromium,
		"firefox": browser.Firefox} {
		t.Run(name, func(t *testing.T) {
			b, err := start()
			if err != nil {
				t.Skipf("SKIPPED: %v", err)
			}
			defer b.Close()
			ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
			defer cancel()
			tab, err := b.Open(ctx)
			if err != nil {
				t.Fatal(err)
			}
			must := func(err error) {
				t.Helper()
				if err != nil {
					t.Fatal(err)
				}
			}
			must(tab.Resize(ctx, 390, 844))
			must(tab.Go(ctx, page.URL))
			must(browser.Click(ctx, tab, "#b"))
			must(browser.Click(ctx, tab, "#i"))
			must(tab.Press(ctx, "h", "i", "Enter", "Control+z", "ArrowLeft"))
			var log []string
			must(browser.Wait(ctx, tab, "log.includes('ArrowLeft')"))
			must(tab.Run(ctx, "log", &log))
			want := "[click true h i Enter Control+z ArrowLeft]"
			var keys []string
			for _, l := range log {
				if l != "Control" && l != "Control+Control" { // the key that is held
					keys = append(keys, l)
				}
			}
			if got := fmt.Sprint(keys); got != want {
				t.Errorf("the page saw %s, want %s", got, want)
			}
			var title string
			must(tab.Run(ctx, "Promise.resolve(document.title)", &title))
			if title != "Trial" {
				t.Errorf("title %q", title)
			}
			data, err := tab.Picture(ctx)
			must(err)
			picture, err := png.Decode(bytes.NewReader(data))
			must(err)
			if got := picture.Bounds().Size(); got.X != 390 || got.Y != 844 {
				t.Errorf("a picture of %v, want 390x844", got)
			}
			if err := tab.Run(ctx, "nothing.there", nil); err == nil {
				t.Error("an exception in the page is no error")
			}
			must(tab.Close())
		})
	}
}
