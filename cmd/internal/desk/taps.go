package desk

import (
	"context"
	"fmt"
	"slices"

	"onphrase/beat/correct"
	"onphrase/beat/tap"
)

type tapFields struct {
	ID   string `json:"id"`
	Taps []int  `json:"taps"` // on the track's timeline [ms]
	One  int    `json:"one"`  // the tap that was count 1 of a phrase, or -1
	Dry  bool   `json:"dry"`
}

// tapsAnswer is what was understood of taps, and the song as it then is.
type tapsAnswer struct {
	Say     string  `json:"say"`
	BPM     float64 `json:"bpm"`
	At      int     `json:"at"` // [ms]
	Reading string  `json:"reading"`
	Song    any     `json:"song"`
}

// mostTaps is how many taps are looked at: the pairs of all are compared.
const mostTaps = 512

// taps puts a song right by tapping along.
func (d *Desk) taps(_ context.Context, f tapFields) (any, error) {
	s, err := d.songByID(f.ID)
	if err != nil {
		return nil, err
	}
	if len(f.Taps) > mostTaps {
		return nil, refuse("Tap again, for half a minute or so.", "These are more taps than are needed.")
	}
	r, err := tap.Read(s.track, secondsOf(f.Taps), f.One)
	if err != nil {
		return nil, refuse("Nothing was changed.", "%s.", err)
	}
	out := tapsAnswer{BPM: r.BPM, At: millis(r.At), Reading: r.Says}
	out.Say = fmt.Sprintf("%.1f BPM, %s; snapped to %s.", r.BPM, r.Says, correct.Clock(r.At))
	after := append(slices.Clone(s.heard.Fixes), r.Fixes...)
	if len(r.Fixes) == 0 {
		out.Say = fmt.Sprintf("%.1f BPM, just as it was heard. Nothing needs to be changed.", r.BPM)
	}
	if f.Dry || len(r.Fixes) == 0 {
		out.Song, err = d.tried(s, after, out.Say)
	} else {
		out.Song, err = d.keep(s, after, out.Say)
	}
	return out, err
}

func secondsOf(ms []int) []float64 {
	out := make([]float64, len(ms))
	for i, t := range ms {
		out[i] = float64(t) / 1000
	}
	return out
}

type tappedInFields struct {
	Title string `json:"title"`
	Taps  []int  `json:"taps"`  // on any clock [ms]
	Marks []int  `json:"marks"` // the starts of phrases on the same clock, and the end [ms]
	Dry   bool   `json:"dry"`
}

type tappedInAnswer struct {
	Say     string      `json:"say"`
	BPM     float64     `json:"bpm"`
	Phrases []int       `json:"phrases"`
	Song    *songAnswer `json:"song"` // null while nothing is kept
}

// tappedIn makes a song that she has no file of: its tempo from taps, its
// phrases counted off.
func (d *Desk) tappedIn(_ context.Context, f tappedInFields) (any, error) {
	if len(f.Taps) > mostTaps {
		f.Taps = f.Taps[len(f.Taps)-mostTaps:]
	}
	pulse, err := tap.Fit(secondsOf(f.Taps))
	if err != nil {
		return nil, refuse("", "%s.", err)
	}
	made := tap.Song{Title: f.Title, BPM: pulse.BPM(), Phrases: tap.CountedOff(pulse, secondsOf(f.Marks))}
	out := tappedInAnswer{BPM: made.BPM, Phrases: append([]int{}, made.Phrases...)}
	if f.Dry {
		return out, nil
	}
	if d.folder == "" {
		return nil, refuse("Open the folder of your songs first.", "There is no folder to keep it in.")
	}
	if err := made.Check(); err != nil {
		return nil, refuse("", "%s.", err)
	}
	file, err := made.Bytes()
	if err != nil {
		return nil, err
	}
	path, err := d.home.KeepTapped(d.folder, made.Title, file)
	if err != nil {
		return nil, unreadable(err)
	}
	s := d.unheard(path)
	s.take(Heard{Track: made.Track(path)})
	d.songs = append(d.songs, s)
	answer := d.songOf(s, d.uses())
	out.Song, out.Say = &answer, fmt.Sprintf("Kept beside your music: %s, %.1f BPM, %d phrases.", made.Title, made.BPM,
		len(made.Phrases))
	d.hub.tell("song", answer)
	return out, nil
}
