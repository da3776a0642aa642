package desk

import (
	"context"
	"fmt"
	"slices"

	"onphrase/beat"
	"onphrase/beat/correct"
)

// fixFields say what is to be put right, and where.
type fixFields struct {
	ID     string `json:"id"`
	Kind   string `json:"kind"`
	At     int    `json:"at"` // [ms]
	To     int    `json:"to"` // of drag [ms]
	Counts int    `json:"counts"`
	Onward bool   `json:"onward"` // of earlier and later: from here on, else in all of it
	Dry    bool   `json:"dry"`
}

// fix puts a song right by one step. The song is the one she sees, so the place
// means the count nearest to it.
func (d *Desk) fix(_ context.Context, f fixFields) (any, error) {
	s, err := d.songByID(f.ID)
	if err != nil {
		return nil, err
	}
	if len(s.track.Beats) == 0 {
		return nil, refuse("It has to be heard first.", "Nothing is known of this song yet.")
	}
	steps, err := stepsOf(s.track, f)
	if err != nil {
		return nil, err
	}
	after := slices.Clone(s.heard.Fixes)
	for i, step := range steps {
		if steps[i], err = correct.Snap(s.track, step); err != nil {
			return nil, refuse("Press a count of the song first.", "%s.", err)
		}
	}
	after = append(after, steps...)
	say := steps[len(steps)-1].String() + "."
	if f.Dry {
		return d.tried(s, after, say)
	}
	return d.keep(s, after, say)
}

// stepsOf turns what she pressed into corrections.
func stepsOf(t beat.Track, f fixFields) ([]correct.Correction, error) {
	at, to := float64(f.At)/1000, float64(f.To)/1000
	switch f.Kind {
	case "one", "phrase":
		return []correct.Correction{{Kind: correct.Kind(f.Kind), Time: at}}, nil
	case "join":
		return []correct.Correction{{Kind: correct.NoPhrase, Time: at}}, nil
	case "half", "double":
		return []correct.Correction{{Kind: correct.Kind(f.Kind)}}, nil
	case "counts":
		return []correct.Correction{{Kind: correct.Counts, Time: at, Counts: f.Counts}}, nil
	case "extra":
		return extra(t, at, f.Counts)
	case "drag":
		return []correct.Correction{{Kind: correct.NoPhrase, Time: at}, {Kind: correct.Phrase, Time: to}}, nil
	case "earlier", "later":
		by := 1
		if f.Kind == "earlier" {
			by = -1
		}
		return shifted(t, at, by, f.Onward)
	}
	return nil, refuse("", "%q is nothing that can be put right", f.Kind)
}

// phraseAt is the index of the phrase that a time lies in.
func phraseAt(t beat.Track, at float64) (int, error) {
	const slack = 0.02 // a press on its first count is in it [s]
	for i := len(t.Phrases) - 1; i >= 0; i-- {
		if t.Phrases[i].Time <= at+slack {
			return i, nil
		}
	}
	return 0, refuse("Press a count in a phrase first.", "No phrase has begun there yet.")
}

// shifted moves count 1 by a count: in all of the song, or from a phrase on, so
// that the phrase before it becomes longer or shorter by one.
func shifted(t beat.Track, at float64, by int, onward bool) ([]correct.Correction, error) {
	i, err := phraseAt(t, at)
	if err != nil {
		return nil, err
	}
	if onward && i > 0 {
		before := t.Phrases[i-1]
		if before.Counts+by < 1 {
			return nil, refuse("Join the two phrases instead.", "The phrase before has only %d counts.", before.Counts)
		}
		return []correct.Correction{{Kind: correct.Counts, Time: before.Time, Counts: before.Counts + by}}, nil
	}
	b := t.Phrases[i].Beat + by
	if b < 0 || b >= len(t.Beats) {
		return nil, refuse("", "There is no count there.")
	}
	return []correct.Correction{{Kind: correct.One, Time: t.Beats[b]}}, nil
}

// extra puts a tag of some counts where a phrase is pressed; what follows moves
// along. Inside a phrase, the phrase breaks off there.
func extra(t beat.Track, at float64, counts int) ([]correct.Correction, error) {
	if counts < 1 || counts >= beat.PhraseLen {
		return nil, refuse("", "%d extra counts: 1 to %d are possible", counts, beat.PhraseLen-1)
	}
	i, err := phraseAt(t, at)
	if err != nil {
		return nil, err
	}
	p := t.Phrases[i]
	b := p.Beat
	for b+1 < len(t.Beats) && t.Beats[b+1] <= at+0.02 {
		b++
	}
	if b == p.Beat {
		return []correct.Correction{{Kind: correct.Counts, Time: p.Time, Counts: counts}}, nil
	}
	return []correct.Correction{
		{Kind: correct.Counts, Time: p.Time, Counts: b - p.Beat},
		{Kind: correct.Counts, Time: t.Beats[b], Counts: counts},
	}, nil
}

type unfixFields struct {
	ID string `json:"id"`
	N  int    `json:"n"` // from 1; 0 is the last
}

// unfix takes one step back, the last or any other.
func (d *Desk) unfix(_ context.Context, f unfixFields) (any, error) {
	s, err := d.songByID(f.ID)
	if err != nil {
		return nil, err
	}
	n := len(s.heard.Fixes)
	if f.N == 0 {
		f.N = n
	}
	if f.N < 1 || f.N > n {
		return nil, refuse("", "Nothing is left to take back.")
	}
	taken := s.heard.Fixes[f.N-1]
	after := slices.Delete(slices.Clone(s.heard.Fixes), f.N-1, f.N)
	return d.keep(s, after, fmt.Sprintf("Taken back: %s.", taken))
}

type checkedFields struct {
	ID string `json:"id"`
	On bool   `json:"on"`
}

// checked keeps a song from being doubted, or lets it be doubted again.
func (d *Desk) checked(_ context.Context, f checkedFields) (any, error) {
	s, err := d.songByID(f.ID)
	if err != nil {
		return nil, err
	}
	after := slices.DeleteFunc(slices.Clone(s.heard.Fixes), isChecked)
	say := "It may be doubted again."
	if f.On {
		after, say = append(after, correct.Correction{Kind: correct.Checked}), "Checked by you: it is no longer doubted."
	}
	return d.keep(s, after, say)
}
