package main

import (
	"context"

	"onphrase/beat"
	"onphrase/cmd/internal/told"
)

// analyst listens to music and shows on the screen how far it is.
type analyst struct {
	*songAnalyst
	s *streams
}

// all analyses every input, in their order.
func (a *analyst) all(ctx context.Context, list []input) ([]result, error) {
	p := newProgress(a.s, len(list))
	results, err := a.songAnalyst.all(ctx, list, p)
	p.end()
	return results, err
}

// tell passes on what the decoder had to say.
func (a *analyst) tell(r result) {
	for _, note := range r.notes {
		a.s.say("%s: %s", r.track.File, note)
	}
}

// heard is the analysis of a track before any correction.
func (a *analyst) heard(ctx context.Context, path string) (beat.Track, error) {
	p := newProgress(a.s, 1)
	r, fromCache := a.listened(ctx, path, p)
	p.finished(fromCache, r.track.Problem == "")
	p.end()
	if ctx.Err() != nil {
		return r.track, ctx.Err()
	}
	a.tell(r)
	if r.track.Problem != "" {
		return r.track, told.Failed("", "%s: %s", path, r.track.Problem)
	}
	return r.track, nil
}
