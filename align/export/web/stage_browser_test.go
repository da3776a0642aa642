package web

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"onphrase/beat"
	"onphrase/plan/say"
)

// follow is a class on two songs, the first of them played faster than it was
// recorded, the second with pick-up counts and odd phrases.
const follow = `onphrase: 1
class: Follow me
slot: "8:00"
parts:
  - part: Fast
    kind: warm-up
    tracks: [tidewater.mp3]
    bpm: 132
    do:
      - block: A
        sides: both
        times: 6
        moves: [{move: march, counts: 8}, {move: step touch, counts: 8}, {move: grapevine, counts: 16}]
  - part: Strong
    kind: strength
    tracks: [slow-ferry.mp3]
    start: phrase 2
    do:
      - {set: squat, reps: "4 x 4-4, 8 x 2-2", weight: heavy}
      - {set: one-arm row, reps: "8 x 2-2", sides: both}
      - {interval: march, time: 120s}
`

// atFrame is what the stage shows and the music's own time, both of one
// frame: the page has drawn when this looks.
const atFrame = `new Promise(done => requestAnimationFrame(() => requestAnimationFrame(() => done({
  at: document.getElementById("music").currentTime,
  place: document.getElementById("place").innerText,
  left: document.getElementById("left").innerText,
  counts: document.getElementById("counts").innerText,
  digit: document.getElementById("digit").innerText,
  clock: Date.now()}))))`

type seen struct {
	At                         float64
	Place, Left, Counts, Digit string
	Clock                      float64
}

// frame is how long the music may have gone on between the page's drawing and
// our look at it [s]: two frames.
const frame = 0.033

// shows reports whether the stage shows the count of the truth.
func shows(s seen, song beat.Track) bool {
	return strings.HasPrefix(s.Place, countIn(song, s.At)+",") || strings.HasPrefix(s.Place, countIn(song, s.At-frame)+",")
}

// choose goes to a song of the class.
func (b *tab) choose(leg int) {
	b.eval(fmt.Sprintf(`(() => { const s = document.getElementById("leg"); s.value = "%d"; s.dispatchEvent(new Event("change")); })()`, leg))
}

func (b *tab) click(id string) { b.do(chromedp.Click(chromedp.CSS("#"+id), chromedp.AtLeast(1))) }

// The count shown is the count of the truth at 50 random moments of two
// songs, from the first to the last minute.
func TestFollowsMusic(t *testing.T) {
	b := newTab(t, 1024, 768)
	m := mapOf(t, follow)
	b.show(pageFile(t, m), "stage")
	random := rand.New(rand.NewPCG(4, 44))
	for leg, song := range []beat.Track{truth(t, "tidewater"), truth(t, "slow-ferry")} {
		b.choose(leg)
		b.do(chromedp.KeyEvent(" "))
		b.eval(`new Promise(done => { const a = document.getElementById("music"); const look = () => a.currentTime > 0 && !a.paused ? done() : setTimeout(look, 20); look(); })`)
		if leg == 0 {
			if rate := ask[float64](b, `document.getElementById("music").playbackRate`); math.Abs(rate-132/song.BPM) > 0.002 {
				t.Errorf("played at %.4f of its tempo, want %.4f", rate, 132/song.BPM)
			}
			if !ask[bool](b, `document.getElementById("music").preservesPitch`) {
				t.Error("the pitch is not kept")
			}
		}
		for range 25 {
			to := random.Float64() * (song.Duration - 12)
			b.eval(fmt.Sprintf(`new Promise(done => { const a = document.getElementById("music"); a.onseeked = () => done(); a.currentTime = %f; })`, to))
			s := ask[seen](b, atFrame)
			if s.At < to-0.1 {
				t.Fatalf("the music is at %.3f s, asked for %.3f s", s.At, to)
			}
			if want := countIn(song, s.At); !shows(s, song) {
				t.Errorf("%s at %.3f s: shown %q, want %q", song.Title, s.At, s.Place, want)
			}
		}
		for range 10 { // and while it plays on
			s := ask[seen](b, atFrame)
			if want := countIn(song, s.At); !shows(s, song) {
				t.Errorf("%s, playing, at %.3f s: shown %q, want %q", song.Title, s.At, s.Place, want)
			}
			music := m.Parts[leg].Tracks[0]
			if left := m.Length - music.ClassAt - s.At/music.Speed; !strings.HasPrefix(s.Left, say.Clock(left)+" left") {
				t.Errorf("%s at %.3f s: shown %q, want %.1f s", song.Title, s.At, s.Left, left)
			}
		}
		b.do(chromedp.KeyEvent(" "))
	}
}

// A page that is kept from running while the music starts hears of it late,
// and follows all the same.
func TestLateStart(t *testing.T) {
	b := newTab(t, 1024, 768)
	b.show(pageFile(t, mapOf(t, follow)), "stage")
	b.choose(1)
	b.do(chromedp.KeyEvent(" "))
	b.eval(`new Promise(done => { const a = document.getElementById("music"), end = Date.now() + 8000; const look = () => {
		for (const stop = Date.now() + 150; Date.now() < stop;); // the machine is busy
		a.currentTime > 1 || Date.now() > end ? done() : setTimeout(look, 1); }; look(); })`)
	if s := ask[seen](b, atFrame); !shows(s, truth(t, "slow-ferry")) {
		t.Errorf("at %.3f s: shown %q", s.At, s.Place)
	}
}

// The class goes on to the next song by itself; the studio's system has to be
// started, so there it waits for a tap.
func TestGoesOn(t *testing.T) {
	m := mapOf(t, follow)
	b := newTab(t, 1024, 768)
	b.show(pageFile(t, m), "stage")
	b.do(chromedp.KeyEvent(" "))
	last := m.RowsOf(0)[len(m.RowsOf(0))-1]
	b.eval(fmt.Sprintf(`new Promise(done => { const a = document.getElementById("music"); const look = () => {
		if (a.readyState < 1 || a.paused) return setTimeout(look, 20);
		a.onseeked = () => done(); a.currentTime = %f; }; look(); })`, last.TrackTime+last.Seconds*m.Parts[0].Tracks[0].Speed-0.5))
	next := `new Promise(done => { const a = document.getElementById("music"); const look = () =>
		document.getElementById("leg").value === "1" && %s ? done() : setTimeout(look, 20); look(); })`
	b.eval(fmt.Sprintf(next, `a.src.endsWith("slow-ferry.mp3") && a.currentTime > 0.2 && !a.paused`))
	if rate := ask[float64](b, `document.getElementById("music").playbackRate`); rate != 1 {
		t.Errorf("the second song plays at %.3f of its tempo", rate)
	}
	b.choose(0)
	b.click("source")
	b.eval(tapNow)
	for range 40 {
		b.do(chromedp.KeyEvent(kb.ArrowDown)) // no further than the end of the song
	}
	b.eval(fmt.Sprintf(next, `true`))
	if got := b.text("tap"); got != "Tap on count 1" {
		t.Errorf("the second song, not started, asks to %q", got)
	}
}

// Without the music: a tap on count 1 starts the counts, they run on by the
// clock, also through a time in which the page was not drawn at all; another
// tap sets them right.
func TestTap(t *testing.T) {
	song := truth(t, "slow-ferry")
	first := song.Beats[song.Phrases[1].Beat] // the first item is on phrase 2
	b := newTab(t, 390, 844)
	b.show(pageFile(t, mapOf(t, follow)), "stage")
	b.choose(1)
	b.click("drawer")
	b.click("source")
	b.click("drawer")
	b.eval(tapNow)
	check := func(when string) {
		t.Helper()
		s := ask[seen](b, atFrame)
		at := first + (s.Clock-ask[float64](b, `window.tapped`))/1000
		if a, z := countIn(song, at-0.02), countIn(song, at+0.005); !strings.HasPrefix(s.Place, a+",") &&
			!strings.HasPrefix(s.Place, z+",") {
			t.Errorf("%s: shown %q, want %q", when, s.Place, z)
		}
	}
	check("at once")
	time.Sleep(1200 * time.Millisecond)
	check("after a second")
	// The page gets no time for two seconds, as behind a locked screen.
	b.eval(`(() => { const end = Date.now() + 2000; while (Date.now() < end); })()`)
	check("after two seconds without a frame")

	// She taps a quarter of a second late: the nearest count 1 is now.
	b.eval(`new Promise(done => { const wait = () => {
		const m = /count (\d+)/.exec(document.getElementById("place").innerText);
		if (Number(m[1]) % 8 === 1) setTimeout(done, 250); else requestAnimationFrame(wait); }; wait(); })`)
	b.eval(tapNow)
	s := ask[seen](b, atFrame)
	if !strings.Contains(s.Place, "count 1,") && !strings.Contains(s.Place, "count 9,") &&
		!strings.Contains(s.Place, "count 17,") && !strings.Contains(s.Place, "count 25,") {
		t.Errorf("after the second tap: %q, want count 1 of an eight", s.Place)
	}
	// One count and one phrase back and on bring her where she was.
	before := s.Place
	for _, k := range []string{kb.ArrowRight, kb.ArrowLeft, kb.ArrowDown, kb.ArrowUp} {
		b.do(chromedp.KeyEvent(k))
	}
	phraseBefore, _, _ := strings.Cut(before, ", count")
	if after := ask[seen](b, atFrame).Place; !strings.HasPrefix(after, phraseBefore) {
		t.Errorf("%q became %q", before, after)
	}
	b.keep("tap-390")
}

// tapNow taps with the finger and remembers when.
const tapNow = `(() => { window.tapped = Date.now(); document.getElementById("tap").dispatchEvent(new PointerEvent("pointerdown", { bubbles: true, cancelable: true })); })()`

// A set is told by its figures, and announced 8 counts early where weights
// change, 4 where only the move does.
func TestStageSays(t *testing.T) {
	b := newTab(t, 1024, 768)
	b.show(pageFile(t, mapOf(t, follow)), "stage")
	at := func(leg int, phrases, counts int) {
		b.choose(leg)
		for range phrases {
			b.do(chromedp.KeyEvent(kb.ArrowDown))
		}
		for range counts {
			b.do(chromedp.KeyEvent(kb.ArrowRight))
		}
		ask[seen](b, atFrame)
	}
	want := func(id, text string) {
		t.Helper()
		if got := strings.Join(strings.Fields(b.text(id)), " "); !strings.Contains(got, text) {
			t.Errorf("%s: %q, want %q", id, got, text)
		}
	}
	loud := func(yes bool) {
		t.Helper()
		if ask[bool](b, `document.getElementById("next").classList.contains("loud")`) != yes {
			t.Errorf("announced is %v at %s", !yes, b.text("counts"))
		}
	}
	at(1, 2, 0) // phrase 2: squats begin
	want("move", "Squat")
	want("dose", "4 down 4 up")
	want("reps", "4 reps")
	want("digit", "8")
	want("counts", "32 counts")
	want("next", "8 x 2 down 2 up")
	loud(false)
	at(1, 2, 29)
	want("reps", "1 rep")
	want("digit", "3")
	loud(true)
	want("place", "phrase 2, count 30")
	at(0, 1, 2)
	want("move", "March")
	want("side", "lead right")
	b.do(chromedp.KeyEvent("m"))
	ask[seen](b, atFrame)
	want("side", "lead right (you left)")
	loud(false)
	b.do(chromedp.KeyEvent(kb.ArrowRight), chromedp.KeyEvent(kb.ArrowRight))
	ask[seen](b, atFrame)
	loud(true)
	want("next", "Step touch")
	want("counts", "4 counts")
	at(0, 1, 29) // the last move of the block's first pass
	want("move", "Grapevine")
	want("counts", "3 counts")
	want("next", "March, left (you right)") // hers: she faces the class, and the class goes left
	loud(true)
}

// What an item is done with and what is to be said of it are shown together
// while it is being done, as are the easier and the harder way.
func TestStageShowsAllOfAnItem(t *testing.T) {
	class := strings.Replace(follow, "weight: heavy}",
		"weight: heavy, range: half, cue: small and low, easier: no bar, harder: pause}", 1)
	file := pageFile(t, mapOf(t, class))
	for _, size := range sizes {
		b := newTab(t, size[0], size[1])
		b.show(file, "stage")
		b.stagedAs(`to("set", 3)`)
		b.keep(fmt.Sprintf("stage-all-%d", size[0]))
		got := strings.Join(strings.Fields(b.text("now")), " ")
		want := []string{"Squat", "heavy, half range", "say: small and low"}
		if size[1] > 640 { // a phone lying on its side has no room for more
			want = append(want, "easier: no bar; harder: pause")
		}
		for _, w := range want {
			if !strings.Contains(got, w) {
				t.Errorf("%d wide: %q, without %q", size[0], got, w)
			}
		}
		for _, f := range ask[[]string](b, fault) {
			t.Errorf("%d wide: %s", size[0], f)
		}
		b.stagedAs(`press("rehearse"); press("cover"); to("set", 0)`)
		if got := strings.Fields(b.text("now")); len(got) > 1 {
			t.Errorf("%d wide, covered: %q", size[0], got)
		}
	}
}
