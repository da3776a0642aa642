package web

import (
	"context"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/performance"
	"github.com/chromedp/chromedp"
)

// A frame of the stage costs a fraction of the 16.7 ms it has at 60 Hz. What
// is measured is the processor's time, so that a busy machine does not
// decide it.
func TestFrameCost(t *testing.T) {
	b := newTab(t, 1024, 768)
	b.do(enable(performance.Enable, performance.EnableParams{TimeDomain: performance.EnableTimeDomainThreadTicks}))
	b.show(pageFile(t, mapOf(t, demoClass(t))), "stage")
	ready := b.busy()
	t.Logf("first view after %.0f ms, %.0f ms of them the processor's",
		ask[float64](b, `performance.getEntriesByType("navigation")[0].domContentLoadedEventEnd`), 1000*ready)
	if ready > 0.5 {
		t.Errorf("the first view took %.2f s", ready)
	}
	b.do(chromedp.KeyEvent(" "))
	before := b.busy()
	frames := ask[float64](b, `new Promise(done => { let n = 0; const end = performance.now() + 3000;
		const count = () => { n++; performance.now() < end ? requestAnimationFrame(count) : done(n); }; count(); })`)
	cost := (b.busy() - before) / frames * 1000
	t.Logf("%.0f frames in 3 s, %.2f ms of processor time each", frames, cost)
	if cost > 16.7/2 {
		t.Errorf("a frame costs %.2f ms", cost)
	}
}

// busy is the processor time the page has taken [s].
func (b *tab) busy() float64 {
	b.t.Helper()
	got, err := chromedp.Run(b.ctx, func(ctx context.Context, t *chromedp.Target) (float64, error) {
		res, err := cdp.Call(ctx, t, performance.GetMetrics, cdp.Empty{})
		if err != nil {
			return 0, err
		}
		for _, m := range res.Metrics {
			if m.Name == "TaskDuration" {
				return m.Value, nil
			}
		}
		return 0, nil
	})
	if err != nil {
		b.t.Fatal(err)
	}
	return got
}
