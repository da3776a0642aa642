package desk

import (
	"context"
	"slices"

	"onphrase/beat"
	"onphrase/beat/correct"
)

// detail is all that is known of one song.
type detail struct {
	Song     songAnswer     `json:"song"`
	Counts   []int          `json:"counts"` // [ms]
	InBar    []int          `json:"in_bar"`
	Phrases  []phraseAnswer `json:"phrases"`
	Outline  []float64      `json:"outline"`  // how loud, every half second [dB below the loudest]
	Unsteady [][2]int       `json:"unsteady"` // stretches without a beat to rely on [ms]
	Fixes    []fixAnswer    `json:"fixes"`
	Checked  bool           `json:"checked"`
	Doubts   []int          `json:"doubts"` // phrase starts to listen to [ms]
	Say      string         `json:"say"`    // what has just been done
}

type phraseAnswer struct {
	At     int     `json:"at"`    // [ms]
	Count  int     `json:"count"` // index of its first count
	Counts int     `json:"counts"`
	Kind   string  `json:"kind"`
	Energy string  `json:"energy"`
	Trust  float64 `json:"trust"`
	Use    string  `json:"use"`
}

// fixAnswer is a thing that she has set, by its number from 1 on.
type fixAnswer struct {
	N    int    `json:"n"`
	Text string `json:"text"`
}

func (d *Desk) oneSong(_ context.Context, f byID) (any, error) {
	s, err := d.songByID(f.ID)
	if err != nil {
		return nil, err
	}
	return d.detailOf(s, ""), nil
}

func (d *Desk) songByID(id string) (*song, error) {
	path, err := d.path(id)
	if err != nil {
		return nil, err
	}
	s := d.songAt(path)
	if s == nil {
		return nil, refuse("Go back to the songs.", "This song is not in the folder that is open.")
	}
	return s, nil
}

func (d *Desk) detailOf(s *song, say string) detail {
	t := s.track
	out := detail{
		Song: d.songOf(s, d.uses()), Counts: []int{}, InBar: append([]int{}, t.BeatInBar...), Phrases: []phraseAnswer{},
		Outline: append([]float64{}, t.Outline...), Unsteady: [][2]int{}, Fixes: []fixAnswer{}, Doubts: []int{}, Say: say,
	}
	out.Checked = out.Song.Checked
	for _, b := range t.Beats {
		out.Counts = append(out.Counts, millis(b))
	}
	for _, p := range t.Phrases {
		out.Phrases = append(out.Phrases, phraseAnswer{millis(p.Time), p.Beat, p.Counts, string(p.Kind), string(p.Energy),
			p.Trust, string(p.Use)})
	}
	for _, u := range t.Unsteady {
		out.Unsteady = append(out.Unsteady, [2]int{millis(u[0]), millis(u[1])})
	}
	for i, c := range s.heard.Fixes {
		out.Fixes = append(out.Fixes, fixAnswer{i + 1, c.String()})
	}
	out.Doubts = doubts(t)
	return out
}

// doubts are the phrase starts that are not sure enough to teach on unheard, and
// the places behind a stretch without a beat [ms].
func doubts(t beat.Track) []int {
	out := []int{}
	for _, p := range t.Phrases {
		behind := slices.ContainsFunc(t.Unsteady,
			func(u [2]float64) bool { return p.Time >= u[1] && p.Time < u[1]+float64(p.Counts)*60/max(t.BPM, 1) })
		if p.Trust < fairlySure || behind && p.Trust < 1 {
			out = append(out, millis(p.Time))
		}
	}
	return out
}

// keep lays new corrections on a song, keeps them, and tells all tabs. What
// cannot be applied is refused, and nothing is changed.
func (d *Desk) keep(s *song, after []correct.Correction, say string) (any, error) {
	if _, err := correct.Apply(s.heard.Track, after); err != nil {
		return nil, refuse("Nothing was changed.", "That is not possible here: %s.", err)
	}
	if err := d.home.Keep(s.path, s.heard.Fixes, after); err != nil {
		return nil, err
	}
	s.take(Heard{s.heard.Track, after})
	d.songChanged(s)
	return d.detailOf(s, say), nil
}

// tried is the song as it would be, without anything kept.
func (d *Desk) tried(s *song, after []correct.Correction, say string) (any, error) {
	trial := *s
	if _, err := correct.Apply(s.heard.Track, after); err != nil {
		return nil, refuse("Nothing was changed.", "That is not possible here: %s.", err)
	}
	trial.take(Heard{s.heard.Track, after})
	return d.detailOf(&trial, say), nil
}
