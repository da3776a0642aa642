package browser

import (
	"context"
	"encoding/json"
	"errors"
	"os/exec"
	"strings"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// patience is how long a browser may take to start on a loaded machine.
const patience = time.Minute

// chromium is driven through its DevTools protocol.
type chromium struct {
	ctx   context.Context
	close func()
}

// Chromium starts it. The error says that none is installed.
func Chromium() (Browser, error) {
	path, err := firstOf("chromium", "chromium-browser", "google-chrome")
	if err != nil {
		return nil, err
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.NoSandbox,
		chromedp.Flag("disable-component-update", true), chromedp.Flag("autoplay-policy", "no-user-gesture-required"),
		chromedp.WSURLReadTimeout(patience))
	all, endAll := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, end := chromedp.NewContext(all)
	if err := chromedp.Do(ctx); err != nil {
		end()
		endAll()
		return nil, err
	}
	return &chromium{ctx, func() { end(); endAll() }}, nil
}

// firstOf is the path of the first program that is installed.
func firstOf(names ...string) (string, error) {
	for _, n := range names {
		if path, err := exec.LookPath(n); err == nil {
			return path, nil
		}
	}
	return "", errors.New("none of these is installed: " + strings.Join(names, ", "))
}

func (c *chromium) Name() string { return "chromium" }

func (c *chromium) Close() { c.close() }

func (c *chromium) Open(context.Context) (Tab, error) {
	ctx, end := chromedp.NewContext(c.ctx)
	if err := chromedp.Do(ctx); err != nil {
		end()
		return nil, err
	}
	return &chromiumTab{ctx, end}, nil
}

type chromiumTab struct {
	ctx context.Context
	end func()
}

// run is an action in a tab until the caller's context ends.
func run[T any](ctx context.Context, t *chromiumTab, a chromedp.Action[T]) (T, error) {
	mine, cancel := context.WithCancel(t.ctx)
	defer cancel()
	stop := context.AfterFunc(ctx, cancel)
	defer stop()
	out, err := chromedp.Run(mine, a)
	if err != nil && ctx.Err() != nil {
		err = errors.Join(err, ctx.Err())
	}
	return out, err
}

func (t *chromiumTab) Go(ctx context.Context, url string) error {
	_, err := run(ctx, t, chromedp.Navigate(url))
	return err
}

func (t *chromiumTab) Run(ctx context.Context, expression string, out any) error {
	text, err := run(ctx, t, chromedp.Evaluate[string](asText(expression), chromedp.EvalAwaitPromise))
	if err != nil || out == nil || text == "" {
		return err
	}
	return json.Unmarshal([]byte(text), out)
}

func (t *chromiumTab) ClickAt(ctx context.Context, x, y float64) error {
	_, err := run(ctx, t, chromedp.MouseClickXY(x, y))
	return err
}

// holds are the keys that are held with others.
var holds = map[string]chromedp.Modifier{
	"Shift": chromedp.ModifierShift, "Control": chromedp.ModifierCtrl, "Alt": chromedp.ModifierAlt,
	"Meta": chromedp.ModifierMeta,
}

func (t *chromiumTab) Press(ctx context.Context, keys ...string) error {
	for _, k := range keys {
		held, key := split(k)
		modifiers := chromedp.ModifierNone
		for _, h := range held {
			modifiers |= holds[h]
		}
		if _, err := run(ctx, t, chromedp.KeyEvent(chromiumKey(key), chromedp.KeyModifiers(modifiers))); err != nil {
			return err
		}
	}
	return nil
}

// chromiumKey is a key as chromedp writes it: the character it gives, or one of
// its own for keys that give none.
func chromiumKey(name string) string {
	for r, k := range kb.Keys {
		if k.Key == name && !k.Shift {
			return string(r)
		}
	}
	return name
}

func (t *chromiumTab) Resize(ctx context.Context, width, height int) error {
	_, err := run(ctx, t, chromedp.EmulateViewport(int64(width), int64(height)))
	return err
}

func (t *chromiumTab) Picture(ctx context.Context) ([]byte, error) {
	return run(ctx, t, chromedp.CaptureScreenshot())
}

func (t *chromiumTab) Close() error {
	t.end()
	return nil
}
