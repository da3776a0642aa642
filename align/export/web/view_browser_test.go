package web

import (
	"fmt"
	"strings"
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

// scenes are moments of a class on the stage, by the script that brings the
// page there. to(kind, into) goes some counts into the first row of a kind,
// or from its end where into is negative; the last row of a song is "end". The
// later ones go on from those before them.
var scenes = []struct{ name, script string }{
	{"start", `0`},
	{"set", `to("set", 3)`},
	{"block", `to("block", 70)`},
	{"interval", `to("interval", 20)`},
	{"pause", `to("pause", 5)`},
	{"change", `to("end", -3)`},
	{"over", `to("end", -2, data.legs.length - 1)`},
	{"drawer", `to("set", 3); press("drawer")`},
	{"covered", `press("rehearse"); press("cover")`},
	{"looked", `press("look")`},
	{"tap", `press("rehearse"); press("source"); to("end", 0)`},
}

const directions = `(async () => {
  const data = JSON.parse(document.getElementById("data").textContent);
  const press = id => document.getElementById(id).click();
  const to = (kind, into, first = 0) => {
    const leg = data.legs.findIndex((l, i) => i >= first && (kind === "end" || l.rows.some(r => r.kind === kind)));
    const rows = data.legs[leg].rows, row = kind === "end" ? rows[rows.length - 1] : rows.find(r => r.kind === kind);
    const choice = document.getElementById("leg");
    choice.value = String(leg);
    choice.dispatchEvent(new Event("change"));
    const counts = row.from + (into < 0 ? row.counts : 0) + into - (rows[0].from < 0 ? 0 : rows[0].from);
    for (let i = 0; i < counts; i++) document.body.dispatchEvent(new KeyboardEvent("keydown", { key: "ArrowRight", bubbles: true }));
  };
  const drawn = async () => { for (let i = 0; i < 4; i++) await new Promise(requestAnimationFrame); };
  %s;
  await drawn();
})()`

// stagedAs brings the stage to a scene.
func (b *tab) stagedAs(script string) { b.eval(fmt.Sprintf(directions, script)) }

// capitals are the heights of capitals [mm] of what must be read from 2 m, on
// a screen of some CSS pixels to the inch. Capitals are 0.7 of the type size.
const capitals = `Object.fromEntries([["move", "#move"], ["rhythm", "#dose:not(.name)"], ["reps", "#reps:not([hidden]) b"], ["digit", "#digit"], ["counts", "#counts b"], ["next", "#next .what"]]
  .map(([name, e]) => [name, document.querySelector(e)]).filter(([, e]) => e && e.innerText)
  .map(([name, e]) => [name, parseFloat(getComputedStyle(e).fontSize) * 0.7 / (%d / 25.4)]))`

// At 2 m 20 to 22 minutes of arc are 11.6 to 12.8 mm, the least of 16 is 9.3
// mm. On a tablet no line is below the least but long names of what comes; on
// a phone held upright, 62 mm wide, neither are those of the move and the
// rhythm that are longer than the seven letters which fit, and those are
// never below 5.5 mm, which 1.2 m is the most for.
//
// Ref: ISO 9241-3, as quoted.
func TestReadable(t *testing.T) {
	file := pageFile(t, mapOf(t, demoClass(t)))
	for _, screen := range []struct{ w, h, perInch int64 }{{1024, 768, 132}, {390, 844, 160}} {
		b := newTab(t, screen.w, screen.h)
		b.show(file, "stage")
		for leg := range 10 {
			b.choose(leg)
			for range 12 {
				b.do(chromedp.KeyEvent(kb.ArrowDown))
				ask[seen](b, atFrame)
				for name, mm := range ask[map[string]float64](b, fmt.Sprintf(capitals, screen.perInch)) {
					if mm < leastCapital(name, screen.w) {
						t.Errorf("%d wide, %s, %s: capitals of %s are %.1f mm", screen.w, b.text("place"), b.text("move"), name, mm)
					}
				}
				for _, f := range ask[[]string](b, fault) {
					t.Errorf("%s: %s", b.text("place"), f)
				}
			}
		}
	}
}

// leastCapital is how high capitals must be at least [mm].
func leastCapital(name string, width int64) float64 {
	const least, near = 9.3, 5.5
	if name == "next" || width < 500 && (name == "move" || name == "rhythm") {
		return near
	}
	return least
}

// Every view on every screen, in the light and in the dark, from a file.
func TestViews(t *testing.T) {
	file := pageFile(t, mapOf(t, demoClass(t)))
	for _, scheme := range schemes {
		for _, size := range sizes {
			t.Run(fmt.Sprintf("%s %d", scheme, size[0]), func(t *testing.T) {
				b := newTab(t, size[0], size[1])
				b.scheme(scheme)
				b.show(file, "stage")
				for _, s := range scenes {
					b.stagedAs(s.script)
					b.sound(fmt.Sprintf("stage-%s-%d-%s", s.name, size[0], scheme))
				}
				b.show(file, "desk")
				b.stagedAs(`to("set", 3)`)
				b.sound(fmt.Sprintf("desk-%d-%s", size[0], scheme))
				b.eval(`document.querySelectorAll("#desk .part")[1].scrollIntoView()`)
				b.keep(fmt.Sprintf("desk-part-%d-%s", size[0], scheme))
				b.show(file, "wall")
				b.keep(fmt.Sprintf("wall-%d-%s", size[0], scheme))
			})
		}
	}
}

// sound keeps the picture of what is shown and reports its faults.
func (b *tab) sound(name string) {
	b.t.Helper()
	b.keep(name)
	for _, f := range ask[[]string](b, fault) {
		b.t.Errorf("%s: %s", name, f)
	}
}

// Her own side is on a song's picture where there is room for it, else it is
// told of the piece that is pointed at.
func TestHerSideHasRoom(t *testing.T) {
	b := newTab(t, 1024, 768)
	class := strings.NewReplacer("slot:", "facing: class\nslot:", `one-arm row, reps: "8 x 2-2"`,
		`single-leg deadlift, reps: "4 x 2-2"`).Replace(follow)
	b.show(pageFile(t, mapOf(t, class)), "desk")
	const seen = `[...document.querySelectorAll(".piece .you")].filter(e => e.getClientRects().length > 0)`
	if ask[int](b, seen+".length") == 0 {
		t.Error("no side of hers on a wide screen")
	}
	if tight := ask[[]string](b, seen+`.map(e => e.closest(".piece")).filter(e => e.clientWidth < 150).map(e => e.innerText)`); len(tight) > 0 {
		t.Errorf("half a phrase has no room for %q", tight)
	}
	b.size(280, 900)
	if n := ask[int](b, seen+".length"); n > 0 {
		t.Errorf("%d on a narrow one, where the dose would be cut", n)
	}
	if said := ask[string](b, `document.querySelector(".piece .you").closest("[title]").title`); !strings.HasSuffix(said,
		"right (you left)") {
		t.Errorf("told: %q", said)
	}
}
