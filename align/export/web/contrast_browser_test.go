package web

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// lowContrast lists the texts of the page that stand out less than they must,
// each with the colours it is really drawn in: at least 4.5:1, and 3:1 for
// large type, 24 px or bold from 18.66 px on.
//
// Ref: WCAG 2.2, 1.4.3 and the definitions of contrast ratio and relative
// luminance.
const lowContrast = `(() => {
  const rgba = s => (s.match(/[\d.]+/g) || [0, 0, 0, 0]).map(Number);
  const over = (top, under) => { const a = top.length > 3 ? top[3] : 1; return [0, 1, 2].map(i => top[i] * a + under[i] * (1 - a)); };
  const ground = e => e ? over(rgba(getComputedStyle(e).backgroundColor), ground(e.parentElement)) : [255, 255, 255];
  const light = c => { const [r, g, b] = c.map(v => (v /= 255) <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4); return 0.2126 * r + 0.7152 * g + 0.0722 * b; };
  const ratio = (a, b) => { const [x, y] = [light(a), light(b)].sort((p, q) => q - p); return (x + 0.05) / (y + 0.05); };
  const out = new Set(); let n = 0;
  const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let t; t = walk.nextNode();) {
    const e = t.parentElement, s = getComputedStyle(e);
    if (!t.data.trim() || !e.getClientRects().length || s.visibility === "hidden" || s.opacity === "0") continue;
    const under = ground(e), size = parseFloat(s.fontSize), large = size >= 24 || size >= 18.66 && s.fontWeight >= 700;
    const r = ratio(over(rgba(s.color), under), under);
    n++;
    if (r < (large ? 3 : 4.5)) out.add(r.toFixed(2) + ":1, " + size + " px: " + t.data.trim().slice(0, 40));
  }
  return n ? [...out] : ["there is no text"];
})()`

// Every text of every view can be told from its ground, also where it is
// turned round, pressed or cannot be pressed, in the light and in the dark.
func TestContrastDrawn(t *testing.T) {
	file := pageFile(t, mapOf(t, demoClass(t)))
	b := newTab(t, 1024, 768)
	for _, scheme := range schemes {
		b.scheme(scheme)
		see := func(what string) {
			t.Helper()
			for _, f := range ask[[]string](b, lowContrast) {
				t.Errorf("%s, %s: %s", what, scheme, f)
			}
		}
		b.show(file, "stage")
		for _, s := range scenes {
			b.stagedAs(s.script)
			see(s.name)
		}
		for _, id := range []string{"keys", "sizes"} {
			b.eval(fmt.Sprintf(`document.getElementById(%q).showModal()`, id))
			see(id)
			b.eval(fmt.Sprintf(`document.getElementById(%q).close()`, id))
		}
		for _, view := range []string{"desk", "wall"} {
			b.show(file, view)
			see(view)
		}
	}
}

// Who wants no motion gets none: nothing on the page moves by itself, and the
// place in the song goes from count to count.
func TestLessMotion(t *testing.T) {
	b := newTab(t, 1024, 768)
	b.prefers("prefers-reduced-motion", "reduce")
	b.show(pageFile(t, mapOf(t, follow)), "desk")
	if n := ask[float64](b, `document.getAnimations().length`); n != 0 {
		t.Errorf("%.0f animations", n)
	}
	b.eval(`document.querySelector(".tile").focus()`)
	b.do(chromedp.KeyEvent(kb.Enter)) // hear from there
	b.eval(`new Promise(done => { const a = document.getElementById("music"); const look = () => a.currentTime > 1 ? done() : setTimeout(look, 20); look(); })`)
	for range 5 {
		b.eval(`new Promise(requestAnimationFrame)`)
		left := ask[float64](b, `parseFloat(document.querySelector(".cursor").style.left) / 100 * Number(document.querySelector(".cursor").parentElement.dataset.counts)`)
		if whole := float64(int(left + 0.5)); left-whole > 0.01 || whole-left > 0.01 {
			t.Errorf("the place is drawn at count %.3f", left)
		}
	}
}
