package beat

import (
	"math"
	"slices"
	"testing"
)

// counting is a track of counts a period apart, some of them late by more [s],
// from there on.
func counting(n int, period float64, late map[int]float64) *Track {
	t := &Track{Meter: 4}
	at := 0.5
	for i := range n {
		at += late[i]
		t.Beats = append(t.Beats, at)
		t.BeatInBar = append(t.BeatInBar, i%4+1)
		at += period
	}
	t.Trust.Beat = 1
	return t
}

func TestJumps(t *testing.T) {
	for _, c := range []struct {
		name string
		late map[int]float64
		want []int
	}{
		{"none", nil, nil},
		{"half a count late", map[int]float64{40: 0.25}, []int{40}},
		{"half a count early and back", map[int]float64{40: -0.25, 60: 0.25}, []int{40, 60}},
		{"a player a little late", map[int]float64{40: 0.04, 41: -0.04}, nil},
	} {
		track := counting(100, 0.5, c.late)
		if got := track.jumps(); !slices.Equal(got, c.want) {
			t.Errorf("%s: jumps %v, want %v", c.name, got, c.want)
		}
	}
}

// A jump is named, with a bar around it, and no more of the counts is trusted
// than can be right; where another song begins it is none.
func TestJumpsAreNamed(t *testing.T) {
	track := counting(100, 0.5, map[int]float64{40: 0.25})
	track.addJumps(track.jumps(), nil)
	if len(track.Unsteady) != 1 || track.Unsteady[0][0] > track.Beats[39] || track.Unsteady[0][1] < track.Beats[40] {
		t.Errorf("unsteady %v, want around %.2f", track.Unsteady, track.Beats[40])
	}
	if math.Abs(track.Trust.Beat-0.6) > 1e-9 {
		t.Errorf("trust %.2f, want that 60 of 100 counts are right", track.Trust.Beat)
	}
	track = counting(100, 0.5, map[int]float64{40: 0.25})
	track.addJumps(track.jumps(), []int{42})
	if len(track.Unsteady) > 0 || track.Trust.Beat != 1 {
		t.Errorf("where a song begins: unsteady %v, trust %.2f", track.Unsteady, track.Trust.Beat)
	}
}

// Where count 1 shifts, each count is trusted as far as others agree with it; a
// song that begins counts anew.
func TestAgreed(t *testing.T) {
	track := counting(100, 0.5, nil)
	for i := 80; i < 100; i++ {
		track.BeatInBar[i] = (i+2)%4 + 1
	}
	if got := track.slips(nil); !slices.Equal(got, []int{80}) {
		t.Errorf("shifts at %v, want 80", got)
	}
	got := track.agreed(nil)
	if math.Abs(got[0]-0.8) > 1e-9 || math.Abs(got[90]-0.2) > 1e-9 {
		t.Errorf("agreed %.2f and %.2f, want .8 and .2", got[0], got[90])
	}
	if got := track.slips([]int{80}); len(got) > 0 {
		t.Errorf("where a song begins count 1 shifts at %v", got)
	}
	if got := track.agreed([]int{80}); got[0] != 1 || got[90] != 1 {
		t.Errorf("where a song begins agreed %.2f and %.2f, want 1", got[0], got[90])
	}
}

// Counts that go on at half or double the tempo say so.
func TestLeaps(t *testing.T) {
	track := counting(60, 0.8, nil)
	last := track.Beats[len(track.Beats)-1]
	for i := range 60 {
		track.Beats = append(track.Beats, last+0.4*float64(i+1))
	}
	track.addLeaps()
	if len(track.TempoChanges) != 1 || math.Abs(track.TempoChanges[0].Time-last) > 0.01 ||
		math.Abs(track.TempoChanges[0].BPM-150) > 0.01 {
		t.Errorf("changes %v, want 150 from %.2f s on", track.TempoChanges, last)
	}
	track.addLeaps()
	if len(track.TempoChanges) != 1 {
		t.Errorf("listed twice: %v", track.TempoChanges)
	}
	drift := counting(200, 0.5, nil)
	for i := range drift.Beats {
		drift.Beats[i] = 0.5 * float64(i) * (1 + 0.0005*float64(i))
	}
	drift.addLeaps()
	if len(drift.TempoChanges) > 0 {
		t.Errorf("of a drift: %v", drift.TempoChanges)
	}
}

func TestOtherOctave(t *testing.T) {
	for bpm, want := range map[float64]float64{0: 0, 60: 120, 94.9: 189.8, 95: 0, 128: 0, 165: 0, 172: 86, 200: 100} {
		if got := (Track{BPM: bpm}).OtherOctave(); math.Abs(got-want) > 1e-9 {
			t.Errorf("%v BPM: or %v, want %v", bpm, got, want)
		}
	}
}
