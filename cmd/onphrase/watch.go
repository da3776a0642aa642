package main

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"
)

// lookEvery is how often the files of a class are looked at for changes.
const lookEvery = time.Second

// watch shows the class again whenever one of its files changes, until the
// context ends. A class with a problem is reported and not shown.
func (o *pageOptions) watch(ctx context.Context, s *streams, v *site, l *laid) {
	tick := time.NewTicker(lookEvery)
	defer tick.Stop()
	moves, _, _ := ownMoves(o.moves)
	seen := state(l, moves)
	for {
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
		}
		now := state(l, moves)
		if now == seen {
			continue
		}
		seen = now
		again, err := o.lay(ctx, s, o.path)
		if ctx.Err() != nil {
			return
		}
		if err == nil {
			l = again
			seen = state(l, moves)
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
func state(l *laid, moves string) string {
	paths := []string{l.path, moves, musicFolder(l.path, l.class)}
	for _, name := range trackNames(l.class) {
		paths = append(paths, l.files[name], l.files[name]+correctionEnding)
	}
	own := correctionFolder() // of the user, for music that lies where nothing can be written
	if kept, err := os.ReadDir(own); own != "" && err == nil {
		for _, entry := range kept {
			paths = append(paths, filepath.Join(own, entry.Name()))
		}
	}
	var b strings.Builder
	for _, p := range paths {
		if info, err := os.Stat(p); err == nil {
			fmt.Fprintf(&b, "%d %d", info.ModTime().UnixNano(), info.Size())
		}
		b.WriteString(" " + p + "\n")
	}
	return b.String()
}
