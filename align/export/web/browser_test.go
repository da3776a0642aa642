package web

import (
	"context"
	"flag"
	"fmt"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

var shots = flag.String("shots", "", "keep pictures of every view in this `folder`")

// patience is how long the browser may take for one test. The tests need
// seconds; a busy machine many more.
const patience = 5 * time.Minute

// chromium starts one browser for all tests, or says why there is none.
var chromium = sync.OnceValues(func() (context.Context, error) {
	for _, name := range []string{"chromium", "chromium-browser", "google-chrome"} {
		path, err := exec.LookPath(name)
		if err != nil {
			continue
		}
		options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox,
			chromedp.Flag("disable-component-update", true), chromedp.WSURLReadTimeout(patience))
		ctx, _ := chromedp.NewExecAllocator(context.Background(), options...)
		ctx, closeBrowser = chromedp.NewContext(ctx)
		return ctx, chromedp.Do(ctx)
	}
	return nil, fmt.Errorf("NO BROWSER: the page was not tried in one; install chromium")
})

var closeBrowser = func() {}

func TestMain(m *testing.M) {
	flag.Parse()
	code := m.Run()
	closeBrowser()
	os.Exit(code)
}

// tab is a page in a browser, and what went wrong in it.
type tab struct {
	t   *testing.T
	ctx context.Context

	mu       sync.Mutex
	allowed  string   // address it may ask besides files
	problems []string // errors, exceptions, requests to anywhere else
}

// newTab opens an empty tab; it skips the test where there is no browser.
func newTab(t *testing.T, w, h int64) *tab {
	t.Helper()
	browser, err := chromium()
	if browser == nil {
		t.Skip(err)
	}
	if err != nil {
		t.Fatal(err)
	}
	ctx, cancel := context.WithTimeout(browser, patience)
	t.Cleanup(cancel)
	ctx, end := chromedp.NewContext(ctx)
	t.Cleanup(end)
	b := &tab{t: t, ctx: ctx}
	b.do(enable(network.Enable, network.EnableParams{}), enable(runtime.Enable, cdp.Empty{}),
		enable(log.Enable, cdp.Empty{}))
	if err := chromedp.Listen(ctx, b.hear); err != nil {
		t.Fatal(err)
	}
	b.size(w, h)
	t.Cleanup(b.complain)
	return b
}

func enable[P any](cmd cdp.Command[P, cdp.Empty], p P) chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, cmd, p)
		return err
	})
}

// hear notes what must not happen.
func (b *tab) hear(event any) {
	said := ""
	switch e := event.(type) {
	case *runtime.EventExceptionThrown:
		said = "exception: " + e.ExceptionDetails.Text
		if x := e.ExceptionDetails.Exception; x != nil {
			said += " " + x.Description
		}
	case *runtime.EventConsoleAPICalled:
		said = "console: " + string(e.Type)
	case *log.EventEntryAdded:
		said = "log: " + e.Entry.Text
	case *network.EventRequestWillBeSent:
		if u := e.Request.URL; (b.allowed == "" || !strings.HasPrefix(u, b.allowed)) && !strings.HasPrefix(u, "file:") &&
			!strings.HasPrefix(u, "data:") && !strings.HasPrefix(u, "blob:") {
			said = "request: " + u
		}
	}
	if said != "" {
		b.mu.Lock()
		defer b.mu.Unlock()
		b.problems = append(b.problems, said)
	}
}

func (b *tab) complain() {
	b.mu.Lock()
	defer b.mu.Unlock()
	for _, p := range b.problems {
		b.t.Error(p)
	}
}

// forgive drops the problems noted so far that contain the words.
func (b *tab) forgive(words string) {
	b.mu.Lock()
	defer b.mu.Unlock()
	var kept []string
	for _, p := range b.problems {
		if !strings.Contains(p, words) {
			kept = append(kept, p)
		}
	}
	b.problems = kept
}

func (b *tab) do(steps ...chromedp.Action[chromedp.Void]) {
	b.t.Helper()
	if err := chromedp.Do(b.ctx, steps...); err != nil {
		b.t.Fatal(err)
	}
}

func (b *tab) size(w, h int64) { b.do(chromedp.EmulateViewport(w, h)) }

var schemes = []string{"light", "dark"}

// scheme asks for light or dark colours.
func (b *tab) scheme(name string) { b.prefers("prefers-color-scheme", name) }

// prefers sets a wish of the user, as CSS names it.
func (b *tab) prefers(feature, value string) {
	b.t.Helper()
	b.do(enable(emulation.SetEmulatedMedia,
		emulation.SetEmulatedMediaParams{Features: []*emulation.MediaFeature{{Name: feature, Value: value}}}))
}

// show opens a file from disk in one of its views.
func (b *tab) show(file, view string) {
	b.t.Helper()
	u := url.URL{Scheme: "file", Path: file, Fragment: view}
	b.visit(u.String())
}

// visit opens an address and waits until it is drawn.
func (b *tab) visit(address string) {
	b.t.Helper()
	b.do(chromedp.Navigate("about:blank"), chromedp.Navigate(address))
	b.eval("new Promise(done => requestAnimationFrame(() => requestAnimationFrame(done)))")
}

// eval runs a script, waiting for what it promises, and drops its value.
func (b *tab) eval(script string) {
	b.t.Helper()
	b.do(chromedp.Evaluate[chromedp.Void](script, chromedp.EvalAwaitPromise))
}

// ask is the value of a script.
func ask[T any](b *tab, script string) T {
	b.t.Helper()
	v, err := chromedp.Run(b.ctx, chromedp.Evaluate[T](script, chromedp.EvalAwaitPromise))
	if err != nil {
		b.t.Fatalf("%s: %s", script, err)
	}
	return v
}

// text is what an element shows.
func (b *tab) text(id string) string {
	b.t.Helper()
	return ask[string](b, fmt.Sprintf("document.getElementById(%q).innerText", id))
}

// keep saves a picture when -shots asks for it.
func (b *tab) keep(name string) {
	if *shots == "" {
		return
	}
	png, err := chromedp.Run(b.ctx, chromedp.CaptureScreenshot())
	if err == nil {
		err = os.WriteFile(filepath.Join(*shots, name+".png"), png, 0o644)
	}
	if err != nil {
		b.t.Error(err)
	}
}
