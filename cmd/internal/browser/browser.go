// Package browser drives real browsers, without a window, for tests of screens:
// Chromium and Firefox, through one small set of acts that a person has too.
// Only tests use it.
package browser

import (
	"context"
	"fmt"
	"time"
)

// Tab is one page in a browser.
type Tab interface {
	// Go loads an address and waits until it is loaded.
	Go(ctx context.Context, url string) error
	// Run works an expression out in the page, waits for it if it is a promise,
	// and puts its JSON value in out, unless that is nil.
	Run(ctx context.Context, expression string, out any) error
	// ClickAt presses and releases the mouse at a place of the window [CSS px].
	ClickAt(ctx context.Context, x, y float64) error
	// Press strikes keys, one after the other: characters, or names as in
	// KeyboardEvent.key, such as Enter; Shift+Tab holds the first.
	Press(ctx context.Context, keys ...string) error
	// Resize sets the size of what is seen [CSS px].
	Resize(ctx context.Context, width, height int) error
	// Picture is what is seen, as PNG.
	Picture(ctx context.Context) ([]byte, error)
	// Close closes the tab.
	Close() error
}

// Browser is a program with tabs.
type Browser interface {
	Name() string
	Open(ctx context.Context) (Tab, error)
	Close()
}

// asText makes an expression give its value as JSON: both browsers say the same
// then, and a promise is waited for.
func asText(expression string) string {
	return "(async () => JSON.stringify(await (" + expression + ")) ?? '')()"
}

// pollEvery is how often Wait looks.
const pollEvery = 50 * time.Millisecond

// Wait waits until an expression is true in the page. Its error says what it
// waited for.
func Wait(ctx context.Context, t Tab, expression string) error {
	tick := time.NewTicker(pollEvery)
	defer tick.Stop()
	for {
		var yes bool
		err := t.Run(ctx, "Boolean("+expression+")", &yes)
		if err == nil && yes {
			return nil
		}
		select {
		case <-ctx.Done():
			return fmt.Errorf("waited for %s: %w (last answer: %v, %v)", expression, ctx.Err(), yes, err)
		case <-tick.C:
		}
	}
}

// Click brings the element that a selector finds into view and clicks its
// middle with the mouse, as a person would: something that lies over it gets
// the click.
func Click(ctx context.Context, t Tab, selector string) error {
	if err := Wait(ctx, t, fmt.Sprintf("document.querySelector(%q)", selector)); err != nil {
		return err
	}
	var at [2]float64
	place := fmt.Sprintf(`(() => {
		const e = document.querySelector(%q);
		e.scrollIntoView({block: "center", inline: "center", behavior: "instant"});
		const r = e.getBoundingClientRect();
		return [r.left + r.width / 2, r.top + r.height / 2];
	})()`, selector)
	if err := t.Run(ctx, place, &at); err != nil {
		return fmt.Errorf("%s: %w", selector, err)
	}
	return t.ClickAt(ctx, at[0], at[1])
}
