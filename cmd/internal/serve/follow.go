package serve

import (
	"context"
	"time"
)

// LookEvery is how often files are looked at for changes.
const LookEvery = time.Second

// Follow calls changed whenever state is another than before, until the context
// ends. Where changed answers yes, what it has done to the state is no change.
func Follow(ctx context.Context, state func() string, changed func() bool) {
	tick := time.NewTicker(LookEvery)
	defer tick.Stop()
	seen := state()
	for {
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
		}
		now := state()
		if now == seen {
			continue
		}
		seen = now
		if changed() {
			seen = state()
		}
	}
}
