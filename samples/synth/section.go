package synth

// Section is a stretch of a song with one job in the arrangement.
type Section struct {
	Part   Part
	Counts int
	BPM    float64 // counts per minute from here on in this section; 0 is the song's
}

// Part is the job a section does.
type Part string

const (
	Intro     Part = "intro"     // drums and chords, nothing else yet
	Verse     Part = "verse"     // all but the hook in full
	Build     Part = "build"     // a roll and a riser towards what follows
	Drop      Part = "drop"      // everything
	Breakdown Part = "breakdown" // no drums
	Tag       Part = "tag"       // a few extra counts
	Bridge    Part = "bridge"    // other chords, lighter drums
	Outro     Part = "outro"     // thinning out
)

// drumLevel says how much of the kit plays.
type drumLevel int

const (
	noDrums drumLevel = iota
	lightDrums
	mainDrums
	fullDrums
)

// layers is what a section lets play.
type layers struct {
	drums  drumLevel
	bass   bool
	stabs  bool    // chords in the style's rhythm
	pad    bool    // chords held
	hook   bool    // the melody on the lead
	answer bool    // the melody thinned out, on the pluck
	arp    bool    // broken chords
	rise   bool    // roll and riser
	level  float64 // of everything but the drums, 0-1
}

// layersOf is the arrangement: what each part of a song is made of.
var layersOf = map[Part]layers{
	Intro:     {drums: lightDrums, stabs: true, pad: true, level: 0.7},
	Verse:     {drums: mainDrums, bass: true, stabs: true, answer: true, level: 0.85},
	Build:     {drums: lightDrums, pad: true, arp: true, rise: true, level: 0.8},
	Drop:      {drums: fullDrums, bass: true, stabs: true, pad: true, hook: true, arp: true, level: 1},
	Breakdown: {drums: noDrums, pad: true, answer: true, arp: true, level: 0.8},
	Tag:       {drums: mainDrums, bass: true, pad: true, level: 0.8},
	Bridge:    {drums: lightDrums, bass: true, pad: true, answer: true, level: 0.8},
	Outro:     {drums: mainDrums, bass: true, stabs: true, level: 0.75},
}
