package main

import (
	"context"
	"fmt"
	"os"
	"strings"
	"time"

	"onphrase/cmd/internal/aligned"
)

// lookEvery is how often the files of a class are looked at for changes.
const lookEvery = time.Second

// watch shows the class again whenever one of its files changes, until the
// context ends. A class with a problem is reported and not shown.
func (o *pageOptions) watch(ctx context.Context, s *streams, v *site, l *aligned.Class) {
	tick := time.NewTicker(lookEvery)
	defer tick.Stop()
	seen := o.state(l)
	for {
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
		}
		now := o.state(l)
		if now == seen {
			continue
		}
		seen = now
		again, err := o.align(ctx, s, o.path)
		if ctx.Err() != nil {
			return
		}
		if err == nil {
			l = again
			seen = o.state(l)
			err = v.show(l)
		}
		if err != nil {
			s.report(asFailure(err))
			s.say("the page shows the class as it was before")
			continue
		}
		s.say("%s has changed; the page shows it", o.path)
	}
}

// state is when the files of a class were last changed, and how large they are.
// The music folder is among them: a song that was missing may come.
func (c *classFlags) state(l *aligned.Class) string {
	var b strings.Builder
	for _, p := range append(c.sources(l), aligned.MusicFolder(l.Path, l.Class)) {
		if info, err := os.Stat(p); err == nil {
			fmt.Fprintf(&b, "%d %d", info.ModTime().UnixNano(), info.Size())
		}
		b.WriteString(" " + p + "\n")
	}
	return b.String()
}
