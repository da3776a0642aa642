package desk

import (
	"context"
	"errors"
)

// progress is how far the listening is.
type progress struct {
	Done        int     `json:"done"` // songs
	All         int     `json:"all"`
	DoneMusic   float64 `json:"done_music"` // a share of all the music, 0 to 1
	LeftSeconds float64 `json:"left_seconds"`
}

// hearNext puts a song before all others.
func (d *Desk) hearNext(_ context.Context, f byID) (any, error) {
	s, err := d.songByID(f.ID)
	if err != nil {
		return nil, err
	}
	if s.state == "failed" {
		s.state, s.why = "waiting", ""
	}
	d.first = s.path
	d.wakeUp()
	return d.stateNow(), nil
}

// wakeUp tells the one who listens that there is something to hear.
func (d *Desk) wakeUp() {
	select {
	case d.wake <- struct{}{}:
	default: // told already
	}
}

// Hear listens to the songs of the open folder, one after the other, until the
// context ends. Somebody has to call it, once.
func (d *Desk) Hear(ctx context.Context) {
	clock := newPace(d.now)
	for {
		if s := d.nextUnasked(); s != nil {
			if h, heard, err := d.home.Known(s.path); heard || err != nil {
				d.took(s, h, err, clock)
			}
			continue
		}
		s := d.next()
		if s == nil {
			select {
			case <-ctx.Done():
				return
			case <-d.wake:
				continue
			}
		}
		h, err := d.home.Hear(ctx, s.path)
		if ctx.Err() != nil {
			return
		}
		clock.heard(s.size)
		d.took(s, h, err, clock)
	}
}

// nextUnasked is a song of which nobody has asked yet whether it is known; nil
// when all have been.
func (d *Desk) nextUnasked() *song {
	d.mu.Lock()
	defer d.mu.Unlock()
	for _, s := range d.songs {
		if s.state == "waiting" && !s.asked {
			s.asked = true
			return s
		}
	}
	return nil
}

// next is the song to hear now, marked as being heard; nil when none is left.
func (d *Desk) next() *song {
	d.mu.Lock()
	defer d.mu.Unlock()
	var found *song
	for _, s := range d.songs {
		if s.state == "waiting" && (found == nil || s.path == d.first) {
			found = s
		}
	}
	if found != nil {
		found.state = "hearing"
		d.hub.tell("song", d.songOf(found, d.uses()))
	}
	return found
}

// took puts a song in its place that has been heard, or could not be.
func (d *Desk) took(s *song, h Heard, err error, clock *pace) {
	d.mu.Lock()
	defer d.mu.Unlock()
	switch {
	case err != nil:
		s.state, s.why = "failed", plainly(err)
	default:
		s.take(h)
	}
	d.songChanged(s)
	p, waiting := d.progress()
	p.LeftSeconds = clock.left(waiting)
	d.hub.tell("hearing", p)
}

// plainly is an error without what only a programmer would say.
func plainly(err error) string {
	var r *Refusal
	if errors.As(err, &r) {
		return r.Say
	}
	return err.Error()
}

// songChanged lays the open class anew, if it plays a song that has changed, and
// tells all tabs of the song.
func (d *Desk) songChanged(s *song) {
	if d.plays(s.path) {
		d.build()
	}
	d.hub.tell("song", d.songOf(s, d.uses()))
}

// progress is how far the listening is, and how much waits to be heard [bytes].
func (d *Desk) progress() (p progress, waiting int64) {
	var all int64
	for _, s := range d.songs {
		p.All++
		all += s.size
		if s.state == "waiting" || s.state == "hearing" {
			waiting += s.size
		} else {
			p.Done++
		}
	}
	if all > 0 {
		p.DoneMusic = float64(all-waiting) / float64(all)
	}
	return p, waiting
}
