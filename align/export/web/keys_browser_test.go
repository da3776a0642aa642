package web

import (
	"math"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// Everything can be reached and worked with the keyboard alone.
func TestKeyboard(t *testing.T) {
	b := newTab(t, 1024, 768)
	b.show(pageFile(t, mapOf(t, follow)), "desk")
	focus := `document.activeElement.getAttribute("aria-label") || document.activeElement.innerText || document.activeElement.id`
	b.do(chromedp.KeyEvent(kb.Tab, chromedp.KeyModifiers(chromedp.ModifierShift)))
	if got := ask[string](b, focus); got != "Wall" {
		t.Errorf("Tab back from the desk gets to %q, want the views", got)
	}
	reached := map[string]int{}
	for range 14 {
		b.do(chromedp.KeyEvent(kb.Tab))
		reached[ask[string](b, `document.activeElement.className.split(" ")[0] || document.activeElement.id`)]++
	}
	for _, want := range []string{"tile", "hear", "scroll", "main", "leg", "help"} { // two songs, two tables, the buttons
		if reached[want] == 0 {
			t.Errorf("Tab does not get to %s: %v", want, reached)
		}
	}
	b.eval(`document.querySelector(".tile").focus()`)
	b.do(chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowRight))
	b.do(chromedp.KeyEvent(kb.Enter)) // hear from there
	if at := ask[float64](b, `new Promise(done => setTimeout(() => done(document.getElementById("music").currentTime), 300))`); math.Abs(at-truth(t, "tidewater").Phrases[3].Time) > 3 {
		t.Errorf("hear from the fourth phrase plays at %.1f s", at)
	}
	if !ask[bool](b, `document.querySelectorAll(".tile")[3].getAttribute("aria-current") === "true"`) {
		t.Error("the phrase that plays is not marked")
	}
	for key, view := range map[string]string{"1": "stage", "2": "desk", "3": "wall"} {
		b.do(chromedp.KeyEvent(key))
		if got := ask[string](b, `document.body.dataset.view + location.hash`); got != view+"#"+view {
			t.Errorf("key %s shows %s", key, got)
		}
	}
	b.do(chromedp.KeyEvent("1"))
	for button, dialog := range map[string]string{"help": "keys", "size": "sizes"} {
		open := `document.getElementById("` + dialog + `").open`
		b.click(button)
		if !ask[bool](b, open) {
			t.Errorf("%s opens nothing", button)
		}
		b.keep(dialog + "-1024")
		if b.do(chromedp.KeyEvent(kb.Escape)); ask[bool](b, open) {
			t.Errorf("Escape does not close %s", dialog)
		}
	}
}
