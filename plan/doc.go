// Package plan is the class as the instructor wrote it, read from YAML and
// checked for sense.
//
// Parse turns the bytes of a class file into a Class and a list of Problems,
// each with its line and column and a hint. Nothing here knows music or files.
//
// # The class file
//
// Plain YAML in UTF-8. Not read are merge keys (<<), aliases (*), tags (!) and
// a second document. All problems are found at once; where a line breaks the
// YAML itself, that line and all problems above it.
//
//	onphrase   version of the file, 1; must be the first key
//	class      name of the class; required
//	slot       time in the studio, "45:00" (mm:ss) or "1:15:00"; default: not checked
//	music      folder of the tracks, from where the class file is; default: beside it
//	moves      list of moves of one's own, see below
//	parts      list of parts, in the order taught; required
//
// A part:
//
//	part       its name; required
//	kind       warm-up, cardio, strength, core, cool-down, stretch or mixed; default: mixed
//	tracks     list of files in the music folder, played in order; required
//	start      where the first item begins: "phrase 2", "count 17" (from 1) or "1:02.5"
//	           (minutes:seconds of the track); default: the first trusted phrase
//	bpm        play the tracks at this tempo, pitch kept, 40 to 240 [BPM]; default: as recorded
//	taught     half (every other beat is a count) or double (two counts to a beat);
//	           default: every beat is a count
//	do         list of items, in the order taught; required
//
// An item is a block, a set, an interval or a pause, by the key that names it.
// Any item may have:
//
//	on         what it is laid on: phrase, eight, count or clock; default: block phrase,
//	           set eight, interval and pause the nearest eight
//	cue        the instructor's own words, one line
//	setup      time needed before it starts, a length; default: none
//	easier     an easier version, in words
//	harder     a harder version, in words
//
// A block is choreography. Its passes together fill whole phrases of 32 counts
// (whole eights where it says on: eight, to fill a bridge):
//
//	block      its label
//	sides      both (once with each lead), right or left; default: one pass, no side named
//	times      how often all of it is done, 1 to 64; default: 1
//	moves      list of {move: name in the catalogue, counts: 1 to 4096}; required
//
// A set is counted to the music:
//
//	set        name of a move in the catalogue
//	reps       "4 x 2-2, 16 x 1-1": repetitions and rhythm, a list parted by commas; required
//	weight     in words or with a unit, "heavy", "2 x 6 kg"; default: not named
//	range      full or half; default: full
//	sides      both (all of it on the right, then on the left), right or left; default: none
//
// An interval is timed work, a pause is water, a change of weights or the way
// to the floor:
//
//	interval   name of a move in the catalogue
//	pause      what for, in words
//	time       a length; required
//
// A length has a unit: "30s", "1m30s", "1:30" (minutes:seconds), "64 counts",
// "8 eights"; up to 60:00 or 4096 counts.
//
// A rhythm is counts down and up, "2-2", or down, hold, up, hold, "2-1-2-1",
// 1 to 16 each (holds may be 0); "pulse" is 1 count for both ways over a part
// of the range; "singles" is 1-1. The signs × and – may stand for x and -.
// Words that have two meanings in the trade, like 2-count and doubles, are
// refused with both meanings in digits.
//
// # Moves
//
// An entry of moves, in a class file or in a moves file of its own (which has
// the version line and moves, nothing else):
//
//	name       required; one of a known name replaces the known move
//	also       list of other names
//	class      class of movement whose limit of control applies: squat, hinge, press, row,
//	           curl, raise, crunch, leg lift, swing; default: no limit
//	pattern    what it counts for in the balance of a class, one of Patterns; default: none
//	counts     counts of one repetition in choreography, 1 to 64; default: no fixed number
//	switches   true when one repetition ends on the other foot; default: false
//	impact     none, low or high; default: none
//	equipment  list of what it needs
//
// Names are found whatever their case, hyphens, spaces and simple plurals.
package plan
