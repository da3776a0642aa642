package web

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// pick chooses from a list of choices as a finger does.
func (b *tab) pick(id, value string) {
	b.eval(fmt.Sprintf(`(() => { const s = document.getElementById(%q); s.value = %q; s.dispatchEvent(new Event("change")); })()`, id, value))
}

// jumps plays from a track time and gives the time on which the music is after
// it has gone back, or 0 if it has not within some seconds.
const jumps = `new Promise(done => { const a = document.getElementById("music"), end = Date.now() + 9000; let last = %f;
  a.onseeked = () => { a.onseeked = null; const look = () => {
    if (a.currentTime < last - 1 || Date.now() > end) return done(a.currentTime < last - 1 ? a.currentTime : 0);
    last = a.currentTime; setTimeout(look, 10); }; look(); };
  a.currentTime = last; })`

// A loop goes round: an item from eight counts before it, a phrase from its
// count 1, a part from its beginning; somewhere else it is another.
func TestLoop(t *testing.T) {
	song := truth(t, "slow-ferry")
	m := mapOf(t, strings.Replace(follow, "120s", "20s", 1)) // the music goes on after it
	b := newTab(t, 1024, 768)
	b.show(pageFile(t, m), "stage")
	b.choose(1)
	b.click("rehearse")
	squat, row := m.RowsOf(1)[1], m.RowsOf(1)[3]
	if squat.Item != "squat" || row.Item != "one-arm row" {
		t.Fatalf("rows are %q and %q", squat.Item, row.Item)
	}
	second := song.Phrases[1]
	end := func(p int) float64 { return song.Phrases[p+1].Time }
	for _, c := range []struct {
		loop     string
		from, to float64
	}{
		{"phrase", second.Time, end(1)},
		{"item", song.Beats[second.Beat-8], row.TrackTime},
		{"part", 0, m.RowsOf(1)[len(m.RowsOf(1))-1].TrackTime + m.RowsOf(1)[len(m.RowsOf(1))-1].Seconds},
	} {
		b.pick("loop", c.loop)
		b.choose(1)
		b.do(chromedp.KeyEvent(kb.ArrowDown), chromedp.KeyEvent(kb.ArrowDown)) // phrase 2, the squats
		b.do(chromedp.KeyEvent(" "))
		b.eval(`new Promise(done => { const a = document.getElementById("music"); const look = () => a.currentTime > 0 && !a.paused && !a.seeking ? done() : setTimeout(look, 20); look(); })`)
		ask[seen](b, atFrame)
		if got := ask[float64](b, fmt.Sprintf(jumps, c.to-1)); math.Abs(got-c.from) > 0.7 {
			t.Errorf("loop %s: goes on from %.2f s, want %.2f", c.loop, got, c.from)
		}
		b.do(chromedp.KeyEvent(" "))
	}
	b.pick("loop", "")
	b.choose(1)
	b.do(chromedp.KeyEvent(" "))
	b.eval(`new Promise(done => setTimeout(done, 500))`)
	if got := ask[float64](b, fmt.Sprintf(strings.Replace(jumps, "9000", "2500", 1), end(1)-1)); got != 0 {
		t.Errorf("without a loop it goes back to %.2f s", got)
	}
}

// Practised at 85 %, the music is slower by that, with its pitch kept, and the
// count still right; a tap follows the slower counts too.
func TestPace(t *testing.T) {
	song := truth(t, "tidewater")
	b := newTab(t, 1024, 768)
	b.show(pageFile(t, mapOf(t, follow)), "stage")
	b.click("rehearse")
	b.pick("pace", "0.85")
	b.do(chromedp.KeyEvent(" "))
	b.eval(`new Promise(done => { const a = document.getElementById("music"); const look = () => a.currentTime > 2 ? done() : setTimeout(look, 20); look(); })`)
	s := ask[seen](b, atFrame)
	if rate := ask[float64](b, `document.getElementById("music").playbackRate`); math.Abs(rate-0.85*132/song.BPM) > 0.002 {
		t.Errorf("played at %.4f of its tempo", rate)
	}
	if !shows(s, song) || !ask[bool](b, `document.getElementById("music").preservesPitch`) {
		t.Errorf("at %.3f s: shown %q", s.At, s.Place)
	}
	if got := b.text("part"); got != "Fast, at 85 %" {
		t.Errorf("the part is %q", got)
	}
	b.do(chromedp.KeyEvent(" "))
	b.choose(1)
	b.click("source")
	b.eval(tapNow)
	b.eval(`new Promise(done => setTimeout(done, 1500))`)
	s = ask[seen](b, atFrame)
	slow := truth(t, "slow-ferry")
	at := slow.Phrases[1].Time + 0.85*(s.Clock-ask[float64](b, `window.tapped`))/1000
	if a, z := countIn(slow, at-0.02), countIn(slow, at+0.005); !strings.HasPrefix(s.Place, a+",") &&
		!strings.HasPrefix(s.Place, z+",") {
		t.Errorf("tapped, shown %q, want %q", s.Place, z)
	}
	b.click("rehearse") // put away, it is as the class has it
	ask[seen](b, atFrame)
	if got := b.text("part"); got != "Strong" {
		t.Errorf("not practising, the part is %q", got)
	}
}

// A covered move is shown when half of its counts, at most eight, are done, or
// when it is looked up; what comes is not shown at all. What was recalled is
// counted.
func TestCover(t *testing.T) {
	b := newTab(t, 1024, 768)
	b.show(pageFile(t, mapOf(t, follow)), "stage")
	b.choose(1)
	b.do(chromedp.KeyEvent(kb.ArrowDown), chromedp.KeyEvent(kb.ArrowDown), chromedp.KeyEvent("c"))
	shown := func(move, dose, next string) {
		t.Helper()
		ask[seen](b, atFrame)
		for id, want := range map[string]string{"move": move, "dose": dose, "next": next} {
			if got := strings.Join(strings.Fields(b.text(id)), " "); got != want {
				t.Errorf("%s is %q, want %q, at %s", id, got, want, b.text("place"))
			}
		}
	}
	forward := func(counts int) {
		for range counts {
			b.do(chromedp.KeyEvent(kb.ArrowRight))
		}
	}
	shown("?", "", "then ?")
	forward(7)
	shown("?", "", "then ?")
	forward(1)
	shown("Squat", "4 down 4 up", "then ?")
	b.do(chromedp.KeyEvent("r")) // what comes is looked up, and known when it has come
	shown("Squat", "4 down 4 up", "then 8 x 2 down 2 up heavy")
	forward(24)
	shown("Squat", "2 down 2 up", "then ?")
	b.do(chromedp.KeyEvent(kb.ArrowDown))
	shown("?", "", "then ?")
	b.do(chromedp.KeyEvent("r"))
	shown("One-arm row", "2 down 2 up", "then ?")
	if got := b.text("recall"); got != "0 of 2 recalled; looked up: squat, one-arm row" {
		t.Errorf("told %q", got)
	}
	// Running past the half of a move without a look, it was recalled.
	forward(15)
	b.click("source")
	b.do(chromedp.KeyEvent(kb.ArrowDown))
	b.eval(tapNow)
	b.eval(`new Promise(done => setTimeout(done, 5500))`)
	if got := b.text("recall"); !strings.HasPrefix(got, "1 of 3 recalled; looked up: squat, one-arm row") {
		t.Errorf("told %q at %s", got, b.text("place"))
	}
	b.do(chromedp.KeyEvent("c"))
	ask[seen](b, atFrame)
	if got := b.text("move"); got == "?" {
		t.Error("uncovered, the move is not shown")
	}
}
