package synth

import (
	"math"
	"strings"
	"testing"
)

// The tables of the styles are whole bars of known marks.
func TestManners(t *testing.T) {
	for _, style := range Styles() {
		m, ok := manners[style]
		if !ok {
			t.Fatalf("%s has no manner", style)
		}
		bar := m.bar()
		check := func(what, line, marks string) {
			if len(line) == 0 || len(line)%bar != 0 {
				t.Errorf("%s: %s has %d steps, want whole bars of %d", style, what, len(line), bar)
			}
			if rest := strings.Trim(line, marks); rest != "" {
				t.Errorf("%s: %s has unknown marks in %q", style, what, rest)
			}
		}
		check("bass", m.bass, ".rofsROFS")
		check("stab", m.stab, ".123456789")
		for _, ln := range m.drums {
			check("drums", ln.steps, ".123456789")
		}
	}
	if len(manners) != len(Styles()) {
		t.Errorf("%d manners for %d styles", len(manners), len(Styles()))
	}
}

// Every style plays in three and in four, whatever its own bar.
func TestMetersFitEveryStyle(t *testing.T) {
	for _, style := range Styles() {
		for _, meter := range []int{3, 4} {
			s := Song{Style: style, Meter: meter,
				Sections: []Section{{Part: Drop, Counts: 64}, {Part: Outro, Counts: 7}}}.withDefaults()
			sc := compose(s, newGrid(s))
			if len(sc[kick]) == 0 || len(sc[bass]) == 0 || len(sc[lead]) == 0 {
				t.Errorf("%s in %d: a drop without kick, bass or hook", style, meter)
			}
		}
	}
}

// Swing moves the off-beat from the middle of a count to two thirds of it, and
// leaves the counts alone. Shuffle timing of 2:1 is the musical definition.
func TestSwing(t *testing.T) {
	tests := []struct {
		style     Style
		swing     float64
		pos, want float64
	}{
		{Shuffle, 0, 5, 5}, {Shuffle, 0, 5.5, 5 + 2.0/3}, {Shuffle, -1, 5.5, 5.5},
		{HipHop, 1, 5.25, 5 + 1.0/3}, {HipHop, 1, 5.5, 5.5}, {HipHop, 1, 5.75, 5 + 5.0/6},
		{FourOnFloor, 0, 5.25, 5.25}, {FourOnFloor, 0, -0.5, -0.5},
	}
	for _, tt := range tests {
		m := manners[tt.style]
		c := &composer{manner: m, swing: m.swing}
		if tt.swing != 0 {
			c.swing = max(0, tt.swing)
		}
		if got := c.lilt(tt.pos); math.Abs(got-tt.want) > 1e-9 {
			t.Errorf("%s, swing %g: %g is played at %.4f, want %.4f", tt.style, tt.swing, tt.pos, got, tt.want)
		}
	}
}

// A breakdown has no drums, and an intro's first half nothing else.
func TestArrangement(t *testing.T) {
	s := Song{BPM: 120, Sections: []Section{{Part: Intro, Counts: 32}, {Part: Breakdown, Counts: 32}}}.withDefaults()
	sc := compose(s, newGrid(s))
	for _, in := range []instrument{kick, snare, clap, hat, openHat, ride, crash, shaker, tambourine, tom} {
		for _, n := range sc[in] {
			if n.at >= 16 {
				t.Errorf("drum %d plays at %.2f s, in the breakdown", in, n.at)
			}
		}
	}
	for _, in := range []instrument{stab, pad, bass, lead} {
		if len(sc[in]) > 0 && sc[in][0].at < 8 {
			t.Errorf("instrument %d plays at %.2f s, before the second half of the intro", in, sc[in][0].at)
		}
	}
	if len(sc[pad]) == 0 || len(sc[pluck]) == 0 {
		t.Error("the breakdown has no pad or no melody")
	}
}

// The hook comes back in every phrase of a drop, and chords move on.
func TestHookRepeatsAndChordsMove(t *testing.T) {
	s := Song{BPM: 120, Seed: 5, Sections: []Section{{Part: Drop, Counts: 64}}}.withDefaults()
	sc := compose(s, newGrid(s))
	half := len(sc[lead]) / 2
	for i := range half {
		a, b := sc[lead][i], sc[lead][half+i]
		if a.pitch != b.pitch || math.Abs(b.at-a.at-16) > 1e-9 {
			t.Fatalf("note %d of the hook is %g at %.2f s, and %g at %.2f s in the next phrase", i, a.pitch, a.at, b.pitch, b.at)
		}
	}
	for _, minor := range []bool{false, true} {
		for _, roots := range progressions[minor] {
			moves := 0
			for i := range roots {
				if roots[i] != roots[(i+1)%4] {
					moves++
				}
			}
			if moves < 3 {
				t.Errorf("progression %v moves %d times in 4 bars", roots, moves)
			}
		}
	}
}

// Pitches against the equal temperament of ISO 16 (A4 = 440 Hz): middle C is
// 261.626 Hz, the A below the bass clef 55 Hz.
func TestPitch(t *testing.T) {
	tests := []struct{ pitch, hz float64 }{{69, 440}, {60, 261.6256}, {33, 55}}
	for _, tt := range tests {
		if got := hertz(tt.pitch); math.Abs(got-tt.hz) > 1e-3 {
			t.Errorf("note %g is %.4f Hz, want %.4f", tt.pitch, got, tt.hz)
		}
	}
	h := harmony{key: Key{Root: 9, Minor: true}, tones: 3} // A minor: A C E
	for step, want := range map[int]float64{0: 69, 2: 72, 4: 76, 7: 81, -1: 67, -7: 57} {
		if got := h.pitch(step); got != want {
			t.Errorf("step %d of A minor is note %g, want %g", step, got, want)
		}
	}
}
