package main

import (
	"context"

	"onphrase/beat"
	"onphrase/cmd/internal/library"
	"onphrase/cmd/internal/told"
)

// analyst listens to music and shows on the screen how far it is.
type analyst struct {
	*library.Analyst
	s *streams
}

// all analyses every input, in their order.
func (a *analyst) all(ctx context.Context, list []library.Input) ([]library.Result, error) {
	p := newProgress(a.s, len(list))
	results, err := a.Analyst.All(ctx, list, p)
	p.end()
	return results, err
}

// tell passes on what the decoder had to say.
func (a *analyst) tell(r library.Result) {
	for _, note := range r.Notes {
		a.s.say("%s: %s", r.Track.File, note)
	}
}

// heard is the analysis of a track before any correction.
func (a *analyst) heard(ctx context.Context, path string) (beat.Track, error) {
	p := newProgress(a.s, 1)
	r, fromCache := a.Listened(ctx, path, p)
	p.Finished(fromCache, r.Track.Problem == "")
	p.end()
	if ctx.Err() != nil {
		return r.Track, ctx.Err()
	}
	a.tell(r)
	if r.Track.Problem != "" {
		return r.Track, told.Failed("", "%s: %s", path, r.Track.Problem)
	}
	return r.Track, nil
}
