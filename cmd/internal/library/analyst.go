// Package library is a person's own music: the files that she names, in folders
// and playlists; what was heard in each, now or before; what she has corrected
// of it; and whether two files are one song.
package library

import (
	"context"
	"runtime"

	"golang.org/x/sync/errgroup"

	"onphrase/beat"
	"onphrase/beat/decode"
	"onphrase/cmd/internal/told"
)

// Analyst analyses files, several at once, through the cache.
type Analyst struct {
	Mode  decode.Mode
	Cache *Cache
}

// Listening is told how far the work is, from several goroutines at once.
type Listening interface {
	// Reading says that a track has been heard up to a time [s].
	Reading(path string, at float64)
	// Finished counts a track, with a result or without.
	Finished(fromCache, ok bool)
}

// Result is what is known of one input.
type Result struct {
	Track beat.Track // with Problem set when there is no result
	Notes []string   // what the decoder had to say
}

// All analyses every input and keeps their order. A file that fails does not
// stop the others; the only error is that of a context that was cancelled.
func (a *Analyst) All(ctx context.Context, list []Input, p Listening) ([]Result, error) {
	results := make([]Result, len(list))
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
			p.Finished(fromCache, results[i].Track.Problem == "")
			return ctx.Err()
		})
	}
	return results, group.Wait()
}

// one analyses a single input, or remembers that it was, and corrects it as a
// person has asked: the cache holds what was heard.
func (a *Analyst) one(ctx context.Context, in Input, p Listening) (Result, bool) {
	if in.Problem != "" {
		return Result{Track: noTrack(in.Path, in.Problem)}, false
	}
	r, known := a.Listened(ctx, in.Path, p)
	if r.Track.Problem != "" {
		return r, known
	}
	said, err := CorrectionsOf(in.Path)
	if err == nil {
		r.Track, err = said.Apply(r.Track)
	}
	if err != nil {
		return Result{Track: noTrack(in.Path, err.Error())}, known
	}
	r.Notes = append(r.Notes, said.Notes...)
	return r, known
}

// Listened is what was heard in a file, now or before.
func (a *Analyst) Listened(ctx context.Context, path string, p Listening) (Result, bool) {
	key, err := a.Cache.Key(path, a.Mode)
	if err != nil {
		return Result{Track: noTrack(path, told.Reason(err))}, false
	}
	r, known := a.Cache.Get(key)
	if !known {
		r, err = a.listen(ctx, path, p)
		if err != nil {
			return Result{Track: noTrack(path, err.Error())}, false
		}
		a.Cache.put(key, r)
	}
	r.Track.File, r.Track.Title = path, TitleOf(path)
	return Result(r), known
}

// listen decodes a file and finds its counts.
func (a *Analyst) listen(ctx context.Context, path string, p Listening) (Remembered, error) {
	sound, err := decode.Open(path, a.Mode)
	if err != nil {
		return Remembered{}, err
	}
	defer sound.Close()
	heard := &heardSource{Stream: sound, ctx: ctx, tell: func(at float64) { p.Reading(path, at) }}
	track, err := beat.Analyze(heard)
	if err != nil {
		return Remembered{}, err
	}
	return Remembered{Track: track, Notes: sound.Notes()}, nil
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
