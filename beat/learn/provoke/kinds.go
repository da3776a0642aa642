package main

import (
	"strings"

	"onphrase/beat/learn/score"
)

var loops = [][]int{{0, 5, 3, 4}, {0, 4, 5, 3}, {5, 3, 0, 4}, {0, 3, 4, 4}, {0, 0, 3, 4}, {0, 6, 5, 6}, {0}}

var fonts = []string{"", "", "/usr/share/sounds/sf2/TimGM6mb.sf2", "/usr/share/sounds/sf2/FluidR3_GM.sf2"}

// offbeats alternates choruses with sections in which the off-beats sound alone,
// or louder, or what is syncopated, or a pad.
func offbeats(r score.Rand) spec {
	s := spec{meter: 4, bpm: float64(90 + r.IntN(90)), lead: r.Between(0, 1.5), font: score.Pick(r,
		fonts), sound: score.Pick(r, []score.Sound{score.Electronic, score.Electronic, score.Chip,
		score.Heavy})}
	loop := score.Pick(r, loops)
	main := []patterns{
		{score.Kick: "x...", score.Clap: "....x...", score.OpenHat: "..x.", score.Bass: score.Pick(r,
			[]string{"..x.", "..x-", ".xxx", "x.u."}), score.Chord: score.Pick(r,
			[]string{"..x...x...x...x.", "x--x--x---------"})},
		{score.Kick: "x.......x.x.....", score.Snare: "....x...", score.Hat: "x.x.", score.Bass: "x.x.",
			score.Chord: "x---------------"},
		{score.Kick: "x...", score.Snare: "....x...", score.Hat: "xoXo", score.Bass: "..xx",
			score.Lead: score.Pick(r, []string{"..x...x.", "x..x..x...x..x..", "x.x."})},
	}
	off := []patterns{
		{score.OpenHat: "..X.", score.Bass: "..x.", score.Pad: "x---------------"},
		{score.Bass: "..x-", score.Lead: "..x...x...x.x.x."},
		{score.Chord: "..x-..x-", score.Hat: "..X."},
		{score.Chord: "..x...x...x...x.", score.Bass: "..x-..x-..x-..x-", score.Hat: "o.X."},
		{score.Lead: "..x-..x-..x-..x-", score.Pad: "x---------------"},
		{score.Bass: "..X.", score.Clap: "..x."},
	}
	sync := []patterns{
		{score.Chord: "x..x..x...x..x..", score.Pad: "x---------------"},
		{score.Arp: "x..x..x..x..x..x..x..x..x..x..x.", score.Hat: "..x."},
		{score.Lead: "x..x..x..x..x.x.", score.Bass: "x..x..x..x..x.x."},
		{score.Kick: "x..x..x.", score.Chord: "..x..x..x..x..x."},
		{score.Chord: "..x..x....x..x..", score.Bass: "...x..x....x..x."},
	}
	brk := []patterns{
		{score.Pad: "x---------------"},
		{score.Pad: "x---------------", score.Lead: "..x-..x---x-----"},
		{score.Pad: "x---------------", score.Riser: "x" + strings.Repeat("-", 127)},
		{score.Snare: "..x...x...x...x."},
	}
	m := score.Pick(r, main)
	pool := [][]patterns{off, sync, brk, off}
	if r.Chance(0.3) {
		s.sections = append(s.sections, section{32, score.Pick(r, score.Pick(r, pool)), loop, "intro"})
	}
	for len(s.sections) < 9 {
		if len(s.sections)%2 == 0 {
			s.sections = append(s.sections, section{32, m, loop, "chorus"})
			continue
		}
		x := score.Pick(r, score.Pick(r, pool))
		s.sections = append(s.sections, section{score.Pick(r, []int{32, 32, 64}), x, loop, "break"})
	}
	return s
}

// cross has bass drums and accents in threes and fives of sixteenths.
func cross(r score.Rand) spec {
	s := spec{meter: 4, bpm: float64(95 + r.IntN(56)), lead: r.Between(0, 1.5), font: score.Pick(r,
		fonts), sound: score.Pick(r, []score.Sound{score.Electronic, score.Chip, score.Heavy})}
	loop := score.Pick(r, loops)
	kick := score.Pick(r, []string{"x..........x....", "x..........x....", "x..x..x..x..x...",
		"x.....x....x....", "x..x......x.....", "x..x..x."})
	p := patterns{score.Kick: kick}
	if r.Chance(0.7) {
		p[score.Pick(r, []score.Part{score.Snare, score.Clap})] = score.Pick(r,
			[]string{"....x.......x...", "....x.......x...", "........x.......", "....x..x....x..x"})
	}
	if r.Chance(0.7) {
		p[score.Hat] = score.Pick(r, []string{"x.x.", "..x.", "xxxx", "x..x..x..x..x.x."})
	}
	if r.Chance(0.8) {
		p[score.Bass] = score.Pick(r, []string{kick, kick, "x..x..x...x.....", "x-------x-------", "..x."})
	}
	if r.Chance(0.7) {
		p[score.Chord] = score.Pick(r, []string{"x---------------", "x..x..x.........",
			"x..x..x..x..x..x", "..x...x."})
	}
	if r.Chance(0.4) {
		p[score.Lead] = score.Pick(r, []string{"x..x..x..x..x...", "x.x...x...x.x...", "..x...x."})
	}
	for i := 0; i < 6; i++ {
		q := patterns{}
		for k, v := range p {
			q[k] = v
		}
		if i%2 == 1 {
			delete(q, score.Pick(r, []score.Part{score.Hat, score.Chord, score.Bass, score.Lead}))
		}
		if len(q) < 2 {
			q[score.Pad] = "x---------------"
		}
		s.sections = append(s.sections, section{32, q, loop, "verse"})
	}
	return s
}

// waltz is in three, of few instruments.
func waltz(r score.Rand) spec {
	s := spec{meter: 3, bpm: float64(88 + r.IntN(80)), lead: r.Between(0, 1.5), font: score.Pick(r,
		fonts), sound: score.Pick(r, []score.Sound{score.Electronic, score.Acoustic, score.Soft,
		score.Chip})}
	loop := score.Pick(r, loops)
	kick := score.Pick(r, []string{"x...........", "x.......x...", "x...", "x.........x.", "x.....x....."})
	p := patterns{score.Kick: kick}
	if r.Chance(0.7) {
		p[score.Pick(r, []score.Part{score.Snare, score.Clap})] = score.Pick(r, []string{"....x...x...",
			"........x...", "....x...", "............x..........."})
	}
	if r.Chance(0.7) {
		p[score.Hat] = score.Pick(r, []string{"x.x.", "x...", "....x...x...", "xxxx", "..x."})
	}
	if r.Chance(0.85) {
		p[score.Bass] = score.Pick(r, []string{"x-----------", "x-------x-..", "x.x.x.x.x.x.",
			"x...........x...f..."})
	}
	if r.Chance(0.75) {
		p[score.Chord] = score.Pick(r, []string{"x-----------", "....x-..x-..", "x.x.x.x.x.x.",
			"x--x--x--x--"})
	}
	if r.Chance(0.6) {
		p[score.Lead] = score.Pick(r, []string{"x---..x-x-..", "x-------x---", "x-x-x-x-x-x-",
			"x---------------x-------"})
	}
	for i := 0; i < 5; i++ {
		q := patterns{}
		for k, v := range p {
			q[k] = v
		}
		if i%2 == 1 {
			delete(q, score.Pick(r, []score.Part{score.Hat, score.Chord, score.Bass, score.Lead, score.Kick}))
		}
		if len(q) < 2 {
			q[score.Pad] = "x-----------"
		}
		s.sections = append(s.sections, section{48, q, loop, "verse"})
	}
	return s
}

// sparse is a bass drum on 1 and on the last sixteenth of 3 with few others.
func sparse(r score.Rand) spec {
	s := spec{meter: 4, bpm: float64(95 + 5*r.IntN(12)), lead: r.Between(0, 0.5), font: score.Pick(r,
		fonts), sound: score.Pick(r, []score.Sound{score.Electronic, score.Electronic, score.Chip,
		score.Heavy})}
	loop := score.Pick(r, loops)
	kick := score.Pick(r, []string{"x..........x....", "x..........x....", "x..........x....",
		"x..........x..x.", "x..x.......x...."})
	p := patterns{score.Kick: kick}
	switch r.IntN(4) {
	case 0:
		p[score.Snare] = "....x.......x..."
	case 1:
		p[score.Clap] = "........x......."
	case 2:
		p[score.Snare] = "....x..x....x..x"
	}
	switch r.IntN(4) {
	case 0:
		p[score.Hat] = "..x."
	case 1:
		p[score.Hat] = "x.xx"
	}
	switch r.IntN(4) {
	case 0, 1:
		p[score.Bass] = "x----------x----"
	case 2:
		p[score.Bass] = "x---------------"
	}
	switch r.IntN(5) {
	case 0:
		p[score.Pad] = "x---------------"
	case 1:
		p[score.Chord] = "x--x--x--x--x---"
	case 2:
		p[score.Chord] = "..x-....x-......"
	case 3:
		p[score.Chord] = "x----------x----"
	}
	switch r.IntN(3) {
	case 0:
		p[score.Lead] = "x--x--x---x-x---"
	case 1:
		p[score.Lead] = "..x..x....x..x.."
	}
	for i := 0; i < 5; i++ {
		s.sections = append(s.sections, section{32, p, loop, "verse"})
	}
	return s
}

// late is such a bass drum with whatever else, on the beat or off it.
func late(r score.Rand) spec {
	s := spec{meter: 4, bpm: float64(95 + 5*r.IntN(12)), font: score.Pick(r, fonts),
		sound: score.Pick(r, []score.Sound{score.Electronic, score.Chip, score.Heavy, score.Acoustic})}
	loop := score.Pick(r, loops)
	kick := "x..........x...."
	p := patterns{score.Kick: kick}
	pick := func(part score.Part, all ...string) {
		if v := score.Pick(r, all); v != "" {
			p[part] = v
		}
	}
	pick(score.Snare, "", "", "....x.......x...", "........x.......", "......x.....x...", "...x..x....x..x.")
	pick(score.Hat, "", "", "..x.", "x.x.", "xxxx", "x..x..x..x..x.x.")
	pick(score.Bass, "", "x----------x----", "x----------x----", "x---------------", "x..x..x....x..x.")
	pick(score.Chord, "", "", "x----------x----", "x--x--x--x--x---", "..x-....x-......", "x---------------")
	pick(score.Lead, "", "", "x--x--x--x--x---", "x-.x-.x-.x.x-...", "x---x---x---x---")
	if len(p) == 1 {
		p[score.Pad] = "x---------------"
	}
	for i := 0; i < 4; i++ {
		s.sections = append(s.sections, section{32, p, loop, "verse"})
	}
	return s
}
