package main

import (
	"fmt"
	"path/filepath"
	"strings"
	"sync"
	"time"

	"onphrase/plan/say"
)

// redraw is the least time between two drawings of the progress line.
const redraw = 100 * time.Millisecond

// progress tells, while tracks are analysed, how far the work is. On a
// terminal it is a line that moves; elsewhere it stays silent until the end.
type progress struct {
	s     *streams
	begun time.Time

	mu     sync.Mutex
	total  int
	done   int
	known  int // of those done, the ones from the cache
	failed int
	drawn  time.Time
}

func newProgress(s *streams, total int) *progress {
	return &progress{s: s, total: total, begun: time.Now()}
}

// Reading says that a track has been heard up to a time [s].
func (p *progress) Reading(path string, at float64) {
	if !p.s.live {
		return
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	if time.Since(p.drawn) < redraw {
		return
	}
	p.drawn = time.Now()
	head := fmt.Sprintf("analysing %d of %d  %s  ", p.done+1, p.total, say.Clock(at))
	name := say.Clip(filepath.Base(path), defaultWidth-1-len(head))
	fmt.Fprintf(p.s.err, "\r\x1b[K%s%s", head, name)
}

// Finished counts a track.
func (p *progress) Finished(fromCache, ok bool) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.done++
	if fromCache {
		p.known++
	}
	if !ok {
		p.failed++
	}
}

// end wipes the line and says in one what was done.
func (p *progress) end() {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.s.live {
		fmt.Fprint(p.s.err, "\r\x1b[K")
	}
	var more []string
	if p.known > 0 {
		more = append(more, fmt.Sprintf("%d from the cache", p.known))
	}
	if p.failed > 0 {
		more = append(more, fmt.Sprintf("%d without a result", p.failed))
	}
	extra := ""
	if len(more) > 0 {
		extra = " (" + strings.Join(more, ", ") + ")"
	}
	p.s.say("%s analysed%s in %.1f s", say.Many(p.done, "track"), extra, time.Since(p.begun).Seconds())
}
