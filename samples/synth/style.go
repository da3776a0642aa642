package synth

// Style is how the band plays.
type Style string

const (
	FourOnFloor Style = "four-on-the-floor"
	Trance      Style = "trance"      // four on the floor with a rolling bass
	BackBeat    Style = "back-beat"   // rock and dance-pop: snare on 2 and 4
	HalfTime    Style = "half-time"   // snare on 3
	HipHop      Style = "hip-hop"     // slow, swung 16ths
	Funk        Style = "funk"        // 16ths with ghost notes
	Shuffle     Style = "shuffle"     // triplets
	Dembow      Style = "dembow"      // 3-3-2 snare over a steady kick
	DrumAndBass Style = "drum & bass" // broken beat
	Waltz       Style = "waltz"       // three counts in a bar
)

// Styles lists every style, in a fixed order.
func Styles() []Style {
	return []Style{FourOnFloor, Trance, BackBeat, HalfTime, HipHop, Funk, Shuffle, Dembow, DrumAndBass, Waltz}
}

// manner is what makes a style: a line of steps for each voice (16 to a bar
// of four, 12 to a bar of three), and how the off-beats lie.
type manner struct {
	drums  []line
	bass   string  // r root, o octave, f fifth, s seventh below; lower case short, upper case held
	stab   string  // 1-9 loudness
	swing  float64 // 0-1
	eighth bool    // the swing is of eighths, not of 16ths
	three  bool    // its bar has three counts
	tones  int     // notes in a chord
	patch  band
}

// bar is how many steps the style's own bar has.
func (m manner) bar() int {
	if m.three {
		return 12
	}
	return 16
}

// line is what one drum voice plays: a step is silent (.) or 1-9 loud.
type line struct {
	voice instrument
	from  drumLevel // the least level of drums at which it plays
	steps string
}

// band is the choice of sounds of a style.
type band struct{ bass, stab, pad, lead, pluck, arp patch }

// manners is a table, hence its length.
var manners = map[Style]manner{
	FourOnFloor: {
		drums: []line{
			{kick, lightDrums, "9...9...9...9..."},
			{hat, lightDrums, "..6...6...6...64"},
			{clap, mainDrums, "....8.......8..."},
			{hat, mainDrums, "3.4.3.4.3.4.3.43"},
			{openHat, fullDrums, "..7...7...7...7."},
			{shaker, fullDrums, "3254325432543254"},
			{rim, fullDrums, "...4..4....4..4....4..4....4.44."},
		},
		bass: "..r.r.r...r.o.r...r.r.r...r.f.o.",
		stab: "..7..6....7..6....7..6....7.6...", tones: 4,
		patch: band{roundBass, organ, warmPad, squareLead, mallet, softArp},
	},
	Trance: {
		drums: []line{
			{kick, lightDrums, "9...9...9...9..."},
			{hat, lightDrums, "..5...5...5...5."},
			{clap, mainDrums, "....7.......7..."},
			{openHat, mainDrums, "..7...7...7...7."},
			{hat, fullDrums, "5364536453645364"},
			{ride, fullDrums, "5...5...5...5..."},
		},
		bass: ".rrr.rrr.rrr.rro",
		stab: "7..7..7...7..7..", tones: 3,
		patch: band{sawBass, superStab, brightPad, sawLead, glass, sawArp},
	},
	BackBeat: {
		drums: []line{
			{kick, lightDrums, "9.....5.9.......9.....5.9.8....."},
			{hat, lightDrums, "6.4.6.4.6.4.6.4."},
			{snare, mainDrums, "....9.......9......49..3....9..."},
			{kick, fullDrums, "....7.......7..."},
			{openHat, fullDrums, "..............6."},
			{clap, fullDrums, "....6.......6..."},
			{tambourine, fullDrums, "5.3.7.3.5.3.7.3."},
		},
		bass: "R.r.r.r.R.r.r.r.R.r.r.r.R.r.f.o.",
		stab: "7.....6...5...6.", tones: 3,
		patch: band{pickBass, guitarStab, warmPad, sawLead, mallet, softArp},
	},
	HalfTime: {
		drums: []line{
			{kick, lightDrums, "9.....4...5.....9.......6..4...."},
			{hat, lightDrums, "5.3.5.3.5.3.5.3."},
			{snare, mainDrums, "........9......."},
			{rim, mainDrums, "...3..3......4.."},
			{openHat, fullDrums, "......5...............5.......6."},
			{shaker, fullDrums, "4343434343434343"},
		},
		bass: "R.........r.f...R.......s..r....",
		stab: "7...............6.......5.......", tones: 4,
		patch: band{subBass, keys, warmPad, whistle, glass, softArp},
	},
	HipHop: {
		drums: []line{
			{kick, lightDrums, "9..5......8.....9..5...59.....4."},
			{hat, lightDrums, "6.5.6.5.6.5.6.56"},
			{snare, mainDrums, "....9.......9......29..2....9..2"},
			{openHat, fullDrums, "..............5."},
			{clap, fullDrums, "....6.......6..."},
			{shaker, fullDrums, "4.2.4.2.4.2.4.2."},
		},
		bass: "R.....r...f.....R.....r...s.o...", stab: "..6.....6.......", swing: 0.55, tones: 4,
		patch: band{subBass, keys, warmPad, whistle, mallet, softArp},
	},
	Funk: {
		drums: []line{
			{kick, lightDrums, "9..6......7..4..9.....6...7....."},
			{hat, lightDrums, "7353735373537353"},
			{snare, mainDrums, "....9..2.2..9..2....9..2.2..9.42"},
			{openHat, fullDrums, "......6.......................6."},
			{tambourine, fullDrums, "..4...6...4...6."},
			{clap, fullDrums, "....5.......5..."},
		},
		bass: "r..r..o...r.sr..r..r..o...f.s.o.", stab: "...6..5..6......", swing: 0.2, tones: 4,
		patch: band{pickBass, keys, warmPad, brass, mallet, softArp},
	},
	Shuffle: {
		drums: []line{
			{kick, lightDrums, "9.....4.9.....4."},
			{hat, lightDrums, "6.5.6.5.6.5.6.5."},
			{snare, mainDrums, "....9.......9......29.....2.9..."},
			{ride, fullDrums, "6...6.5.6...6.5."},
			{tambourine, fullDrums, "....7.......7..."},
		},
		bass: "r.r.f.f.s.f.o.f.r.r.f.f.o.s.f.r.", stab: "..6...7...6...7.", swing: 1, eighth: true, tones: 4,
		patch: band{pickBass, organ, warmPad, brass, mallet, softArp},
	},
	Dembow: {
		drums: []line{
			{kick, lightDrums, "9...8...9...8..."},
			{hat, lightDrums, "..5...5...5...5."},
			{snare, mainDrums, "...8..8....8..8."},
			{rim, mainDrums, "...4..4....4..4."},
			{shaker, fullDrums, "4354435443544354"},
			{clap, fullDrums, "......6.......6."},
		},
		bass: "r..r..r.r..r..o.r..r..r.s..f..r.", stab: "...6..6....6..6.", tones: 3,
		patch: band{subBass, pluckStab, warmPad, whistle, mallet, softArp},
	},
	DrumAndBass: {
		drums: []line{
			{kick, lightDrums, "9.........8....."},
			{hat, lightDrums, "6.5.6.5.6.5.6.5."},
			{snare, mainDrums, "....9..3.2..9..."},
			{ride, fullDrums, "5...5...5...5..."},
			{shaker, fullDrums, "3343334333433343"},
		},
		bass: "R.........r.....S.........f.r...", stab: "......6.........", tones: 4,
		patch: band{sawBass, keys, brightPad, squareLead, glass, sawArp},
	},
	Waltz: {
		drums: []line{
			{kick, lightDrums, "9..........."},
			{hat, lightDrums, "5...4...4..."},
			{snare, mainDrums, "....6...7..."},
			{ride, fullDrums, "6...5...5.4."},
			{tambourine, fullDrums, "....5...5..."},
		},
		bass: "R.......f...R.......o...", stab: "....6...6...", three: true, tones: 3,
		patch: band{pickBass, guitarStab, warmPad, whistle, mallet, softArp},
	},
}
