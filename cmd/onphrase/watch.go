package main

import (
	"context"

	"onphrase/cmd/internal/aligned"
	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/serve"
)

// watch shows the class again whenever one of its files changes, until the
// context ends. A class with a problem is reported and not shown.
func (o *pageOptions) watch(ctx context.Context, s *streams, v *serve.Site, l *aligned.Class) {
	serve.Follow(ctx, func() string { return o.state(l) }, func() bool {
		again, err := o.align(ctx, s, o.path)
		if ctx.Err() != nil {
			return false
		}
		if err == nil {
			l = again
			err = v.Show(l)
		}
		if err != nil {
			s.report(asFailure(err))
			s.say("the page shows the class as it was before")
			return false
		}
		s.say("%s has changed; the page shows it", o.path)
		return true
	})
}

// state is when the files of a class were last changed, and how large they are.
// The music folder is among them: a song that was missing may come.
func (c *classFlags) state(l *aligned.Class) string {
	return disk.Stamp(append(c.sources(l), aligned.MusicFolder(l.Path, l.Class)))
}
