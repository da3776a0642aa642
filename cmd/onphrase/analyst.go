package main

import (
	"context"
	"runtime"

	"golang.org/x/sync/errgroup"

	"onphrase/beat"
	"onphrase/beat/decode"
	"onphrase/cmd/internal/told"
)

// songAnalyst analyses files, several at once, through the cache.
type songAnalyst struct {
	mode  decode.Mode
	cache *cache
}

// listening is told how far the work is, from several goroutines at once.
type listening interface {
	// reading says that a track has been heard up to a time [s].
	reading(path string, at float64)
	// finished counts a track, with a result or without.
	finished(fromCache, ok bool)
}

// result is what is known of one input.
type result struct {
	track beat.Track // with Problem set when there is no result
	notes []string   // what the decoder had to say
}

// all analyses every input and keeps their order. A file that fails does not
// stop the others; the only error is that of a context that was cancelled.
func (a *songAnalyst) all(ctx context.Context, list []input, p listening) ([]result, error) {
	results := make([]result, len(list))
	group, ctx := errgroup.WithContext(ctx)
	atOnce := min(runtime.GOMAXPROCS(0), max(1, len(list)))
	roomFor(atOnce)
	group.SetLimit(atOnce)
	for i, in := range list {
		group.Go(func() error {
			if err := ctx.Err(); err != nil {
				return err
			}
			var fromCache bool
			results[i], fromCache = a.one(ctx, in, p)
			p.finished(fromCache, results[i].track.Problem == "")
			return ctx.Err()
		})
	}
	return results, group.Wait()
}

// one analyses a single input, or remembers that it was, and corrects it as a
// person has asked: the cache holds what was heard.
func (a *songAnalyst) one(ctx context.Context, in input, p listening) (result, bool) {
	if in.problem != "" {
		return result{track: noTrack(in.path, in.problem)}, false
	}
	r, known := a.listened(ctx, in.path, p)
	if r.track.Problem != "" {
		return r, known
	}
	said, err := correctionsOf(in.path)
	if err == nil {
		r.track, err = said.apply(r.track)
	}
	if err != nil {
		return result{track: noTrack(in.path, err.Error())}, known
	}
	r.notes = append(r.notes, said.notes...)
	return r, known
}

// listened is what was heard in a file, now or before.
func (a *songAnalyst) listened(ctx context.Context, path string, p listening) (result, bool) {
	key, err := a.cache.key(path, a.mode)
	if err != nil {
		return result{track: noTrack(path, told.Reason(err))}, false
	}
	r, known := a.cache.get(key)
	if !known {
		r, err = a.listen(ctx, path, p)
		if err != nil {
			return result{track: noTrack(path, err.Error())}, false
		}
		a.cache.put(key, r)
	}
	r.Track.File, r.Track.Title = path, titleOf(path)
	return result{track: r.Track, notes: r.Notes}, known
}

// listen decodes a file and finds its counts.
func (a *songAnalyst) listen(ctx context.Context, path string, p listening) (remembered, error) {
	sound, err := decode.Open(path, a.mode)
	if err != nil {
		return remembered{}, err
	}
	defer sound.Close()
	heard := &heardSource{Stream: sound, ctx: ctx, tell: func(at float64) { p.reading(path, at) }}
	track, err := beat.Analyze(heard)
	if err != nil {
		return remembered{}, err
	}
	return remembered{Track: track, Notes: sound.Notes()}, nil
}

// heardSource is a stream that can be broken off and tells how far it was
// read.
type heardSource struct {
	*decode.Stream
	ctx  context.Context
	tell func(at float64)
	n    int // samples read
}

// Read fills dst with samples until the context is cancelled.
func (h *heardSource) Read(dst []float32) (int, error) {
	if err := h.ctx.Err(); err != nil {
		return 0, err
	}
	n, err := h.Stream.Read(dst)
	h.n += n
	h.tell(float64(h.n) / float64(h.Rate()*h.Channels()))
	return n, err
}

// noTrack is the entry of a file without a result.
func noTrack(path, problem string) beat.Track {
	return beat.Track{File: path, Problem: problem}
}
