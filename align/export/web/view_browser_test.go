package web

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

var sizes = [][2]int64{{390, 844}, {844, 390}, {1024, 768}, {1440, 900}}

// fault lists what a view must not do: be wider than the screen, cut the
// words that are read from afar, have a control without a name or too small
// for a finger (WCAG 2.2, 2.5.8: 24 by 24 CSS pixels).
const fault = `(() => {
  const out = [];
  const seen = e => e.getClientRects().length > 0;
  if (document.scrollingElement.scrollWidth > innerWidth) {
    const wide = [...document.querySelectorAll("body *")].filter(e => seen(e) && !e.closest(".scroll") && e.getBoundingClientRect().right > innerWidth + 1);
    out.push("the page is " + document.scrollingElement.scrollWidth + " wide: " + wide.slice(0, 4).map(e => e.outerHTML.slice(0, 90)).join(" | "));
  }
  for (const id of ["move", "digit", "counts", "dose", "left"]) {
    const e = document.getElementById(id);
    if (!seen(e)) continue;
    const b = e.getBoundingClientRect(), p = e.parentElement.getBoundingClientRect();
    if (e.scrollWidth > e.clientWidth + 1 || b.right > innerWidth + 1 || b.top < p.top - 1 || b.bottom > p.bottom + 1) out.push("#" + id + " is cut: " + e.innerText);
  }
  for (const e of document.querySelectorAll("button, a, select, input")) {
    if (!seen(e)) continue;
    const name = e.getAttribute("aria-label") || e.innerText || (e.labels && e.labels[0] && e.labels[0].innerText);
    const b = e.getBoundingClientRect();
    if (!name) out.push("no name: " + e.outerHTML.slice(0, 80));
    if (b.width < 24 || b.height < 24) out.push("small, " + b.width.toFixed() + " x " + b.height.toFixed() + ": " + name);
  }
  return out;
})()`

// inTheMiddle goes to the second song, some counts into its fifth phrase.
const inTheMiddle = `(async () => {
  const leg = document.getElementById("leg");
  leg.value = "2";
  leg.dispatchEvent(new Event("change"));
  const key = k => document.body.dispatchEvent(new KeyboardEvent("keydown", { key: k, bubbles: true }));
  for (const k of ["ArrowDown", "ArrowDown", "ArrowDown", "ArrowDown", "ArrowRight", "ArrowRight", "ArrowRight"]) key(k);
  for (let i = 0; i < 5; i++) await new Promise(requestAnimationFrame);
})()`

// capitals are the heights of capitals [mm] of what must be read from 2 m, on
// a tablet of 132 pixels to the inch. Capitals are 0.7 of the type size.
const capitals = `Object.fromEntries([["move", "#move"], ["rhythm", "#dose"], ["digit", "#digit"], ["counts", "#counts b"], ["next", "#next .what"]]
  .map(([name, e]) => [name, parseFloat(getComputedStyle(document.querySelector(e)).fontSize) * 0.7 / (132 / 25.4)]))`

// On a tablet at 2 m: 20 to 22 minutes of arc, 11.6 to 12.8 mm; no line may
// be below the least of 16, 9.3 mm.
//
// Ref: ISO 9241-3, as quoted.
func TestReadable(t *testing.T) {
	b := newTab(t, 1024, 768)
	b.show(pageFile(t, mapOf(t, demoClass(t))), "stage")
	for leg := range 10 {
		b.choose(leg)
		for range 12 {
			b.do(chromedp.KeyEvent(kb.ArrowDown))
			ask[seen](b, atFrame)
			for name, mm := range ask[map[string]float64](b, capitals) {
				if mm < 9.3 && !(name == "next" && mm > 5.8) { // a long name of what comes may be shown smaller
					t.Errorf("%s: capitals of %s are %.1f mm", b.text("move"), name, mm)
				}
			}
			for _, f := range ask[[]string](b, fault) {
				t.Errorf("%s: %s", b.text("place"), f)
			}
		}
	}
}

// Every view on every screen, in the light and in the dark, from a file.
func TestViews(t *testing.T) {
	file := pageFile(t, mapOf(t, demoClass(t)))
	b := newTab(t, 390, 844)
	for _, size := range sizes {
		b.size(size[0], size[1])
		for _, view := range []string{"stage", "desk", "wall"} {
			b.show(file, view)
			b.eval(inTheMiddle)
			if view != "wall" { // a sheet of paper is as wide as it is
				for _, f := range ask[[]string](b, fault) {
					t.Errorf("%s at %dx%d: %s", view, size[0], size[1], f)
				}
			}
			b.keep(fmt.Sprintf("%s-%d", view, size[0]))
		}
	}
}
