package web

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// The screen is kept on from the first tap, and asked for again when the page
// is seen again: the browser lets go of it when the page is hidden.
//
// Ref: W3C Screen Wake Lock API, 7 (managing wake locks).
func TestWakeLock(t *testing.T) {
	b := newTab(t, 1024, 768)
	b.show(pageFile(t, mapOf(t, follow)), "stage")
	b.eval(`window.asked = 0; Object.defineProperty(navigator, "wakeLock", { configurable: true, value: { request: kind => {
		asked++; const lock = new EventTarget(); window.letGo = () => lock.dispatchEvent(new Event("release")); return kind === "screen" ? Promise.resolve(lock) : Promise.reject(); } } });
		Object.defineProperty(document, "visibilityState", { configurable: true, get: () => window.unseen ? "hidden" : "visible" });`)
	b.click("source")
	b.eval(tapNow)
	if n := ask[float64](b, `Promise.resolve().then(() => asked)`); n != 1 {
		t.Fatalf("asked %.0f times to keep the screen on", n)
	}
	b.eval(`unseen = true; letGo(); document.dispatchEvent(new Event("visibilitychange"))`)
	b.eval(`unseen = false; document.dispatchEvent(new Event("visibilitychange"))`)
	if n := ask[float64](b, `Promise.resolve().then(() => asked)`); n != 2 {
		t.Errorf("seen again, it has asked %.0f times, want 2", n)
	}
	b.eval(tapNow)
	if n := ask[float64](b, `Promise.resolve().then(() => asked)`); n != 2 {
		t.Errorf("asked %.0f times while the screen is kept on", n)
	}
}

// Kept from running like a page behind a locked screen, or loaded anew because
// the phone threw it out of memory, the page is on the right count when it is
// back.
func TestSleep(t *testing.T) {
	song := truth(t, "slow-ferry")
	b := newTab(t, 1024, 768)
	b.show(pageFile(t, mapOf(t, follow)), "stage")
	b.choose(1)
	b.click("source")
	b.eval(tapNow)
	tapped := ask[float64](b, `window.tapped`)
	right := func(when string) {
		t.Helper()
		s := ask[seen](b, atFrame)
		at := song.Phrases[1].Time + (s.Clock-tapped)/1000
		if a, z := countIn(song, at-0.02), countIn(song, at+0.005); !strings.HasPrefix(s.Place, a+",") &&
			!strings.HasPrefix(s.Place, z+",") {
			t.Errorf("%s: shown %q, want %q", when, s.Place, z)
		}
	}
	right("at once")
	b.eval(`(() => { const end = Date.now() + 2500; while (Date.now() < end); })()`)
	right("after a time without frames and timers")
	b.do(chromedp.Reload()) // until it has loaded: the old page answers nothing more
	b.eval(`new Promise(done => { const look = () => document.readyState === "complete" && document.getElementById("place").innerText ? requestAnimationFrame(done) : setTimeout(look, 20); look(); })`)
	right("loaded anew")
}
