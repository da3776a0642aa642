package align

import (
	"testing"

	"onphrase/plan"
)

// E5-E7: seconds of one way of a repetition = counts x 60/BPM.
func TestSecondsOfPhases(t *testing.T) {
	for _, c := range []struct {
		name             string
		bpm              float64
		rhythm           string
		fastest, slowest float64
		rep, perMinute   float64
	}{
		{"E5 4-4 at 120", 120, "4-4", 2.000, 2.000, 4.000, 15},
		{"E6 2-2 at 126", 126, "2-2", 0.952, 0.952, 1.905, 31.5},
		{"E6 singles at 130", 130, "1-1", 0.462, 0.462, 0.923, 65},
		{"E7 3 down 1 up at 124", 124, "3-1", 0.484, 1.452, 1.935, 31},
		// A bench press paced by a metronome at 60 beats a minute: 30 a
		// minute, 1.0 s each way (the usual endurance test). A curl-up at 40
		// (ACSM): 20 a minute, 1.5 s each way; the partial curl-up at 50: 1.2 s.
		{"bench press test", 60, "1-1", 1.000, 1.000, 2.000, 30},
		{"curl-up test", 40, "1-1", 1.500, 1.500, 3.000, 20},
		{"partial curl-up test", 50, "1-1", 1.200, 1.200, 2.400, 25},
	} {
		t.Run(c.name, func(t *testing.T) {
			r, err := plan.ParseRhythm(c.rhythm)
			if err != nil {
				t.Fatal(err)
			}
			p := pace{rhythm: r, limit: plan.Limit{Fine: 1}, bpm: c.bpm}
			near(t, "fastest", p.hardest().Seconds(c.bpm), c.fastest, 0.0005)
			near(t, "slowest", p.slowest(), c.slowest, 0.0005)
			near(t, "rep", float64(r.Counts())*60/c.bpm, c.rep, 0.0005)
			near(t, "reps a minute", c.bpm/float64(r.Counts()), c.perMinute, 0.0005)
		})
	}
}

// The ACSM position stand of 2009 (Ratamess et al., Med Sci Sports Exerc
// 41:687) calls 1-2 s each way a moderate velocity. Against it, 4-4 is
// moderate from 120 to 240 BPM, 2-2 up to 120, singles only up to 60.
func TestModerateVelocity(t *testing.T) {
	moderate := plan.Limit{Fine: 1, TooFast: 1, Evidence: plan.Published}
	for _, c := range []struct {
		rhythm plan.Rhythm
		most   float64
	}{
		{plan.Rhythm{Down: 1, Up: 1}, 60},
		{plan.Rhythm{Down: 2, Up: 2}, 120},
		{plan.Rhythm{Down: 4, Up: 4}, 240},
	} {
		at := pace{c.rhythm, plan.FullRange, moderate, c.most}
		over := pace{c.rhythm, plan.FullRange, moderate, c.most + 1}
		if at.grade() != "" || over.grade() != Fix {
			t.Errorf("%s: %q at %v BPM, %q above", c.rhythm, at.grade(), c.most, over.grade())
		}
		near(t, "most", at.most(), c.most, 1e-9)
		near(t, "s", at.hardest().Seconds(at.bpm), 1, 1e-9)
	}
	slow := pace{plan.Rhythm{Down: 4, Up: 4}, plan.FullRange, moderate, 120}
	near(t, "4-4 at 120", slow.slowest(), 2, 1e-9)
}

// The most BPM at which a rhythm is fine at full range, by class of
// movement: worked out from the limits, our own reasoning from peak
// acceleration and the ACSM figures.
func TestMostTempo(t *testing.T) {
	for class, want := range map[string][3]float64{
		"hinge": {66, 133, 266}, "squat": {75, 150, 300}, "press": {66, 133, 266}, "row": {75, 150, 300},
		"curl": {70, 141, 282}, "raise": {48, 96, 192}, "crunch": {66, 133, 266}, "leg lift": {57, 114, 228},
	} {
		limit, ok := plan.Builtin().Limits[class]
		if !ok {
			t.Errorf("no limit for %s", class)
			continue
		}
		for i, r := range ladder[:3] {
			near(t, class+" "+r.String(), pace{r, plan.FullRange, limit, 1}.most(), want[i], 0)
		}
	}
}

// E20: a lateral raise of 0.942 m at 130 BPM: R = 2.22 on singles, 0.556 on
// 2-2 (R = 0.503 d/T²), and what is said about it.
func TestPeakLoad(t *testing.T) {
	raise := plan.Builtin().Limits["raise"]
	for rhythm, want := range map[string]float64{"1-1": 2.22, "2-2": 0.556} {
		r, _ := plan.ParseRhythm(rhythm)
		s := pace{rhythm: r, limit: raise, bpm: 130}.hardest().Seconds(130)
		near(t, "R of "+rhythm, raise.PeakLoad(s), want, 0.006)
	}
	for reps, want := range map[string]Severity{"16 x 1-1": Fix, "8 x 2-2": Watch} {
		m := Build(onePart(t, "", `{set: lateral raise, reps: "`+reps+`"}`),
			songs(song{file: "a.mp3", bpm: 130, duration: 240}))
		if f := found(t, m, "rhythm-too-fast"); f.Severity != want {
			t.Errorf("%s: %s, want %s", reps, f.Severity, want)
		}
	}
}
