package synth

import "math"

// Steady is a row of beats at one tempo, the first at start [s].
func Steady(bpm float64, meter, counts int, start float64) []Beat {
	beats := make([]Beat, counts)
	for i := range beats {
		beats[i] = Beat{Time: start + float64(i)*60/bpm, InBar: i%meter + 1}
	}
	return beats
}

// Clicks is a click on every beat, higher and louder on count 1 of each bar,
// and a second of silence after the last. rate is in Hz.
func Clicks(beats []Beat, rate int) *Sound {
	const length, after = 0.03, 1 // [s]
	last := 0.0
	if len(beats) > 0 {
		last = beats[len(beats)-1].Time
	}
	b := newBuffer(float64(rate), int((last+after)*float64(rate)))
	for _, beat := range beats {
		pitch, vel := 1000.0, 0.5 // [Hz]
		if beat.InBar == 1 {
			pitch, vel = 1500, 0.8
		}
		first := b.start(note{at: beat.Time})
		for i := range int(length * b.rate) {
			t := float64(i) / b.rate
			x := vel * math.Cos(2*math.Pi*pitch*t) * fall(t, length)
			b.add(first+i, x, x)
		}
	}
	return &Sound{Rate: rate, Left: b.l, Right: b.r}
}
