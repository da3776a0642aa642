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
//	facing     where the instructor looks: front, as the class does, or class, as their
//	           mirror (their right is her left, and the map says both); default: front
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
//	rounds     how often all of it is done, 1 to 20; default: 1
//	do         list of items, in the order taught; required
//
// An item is a block, a set, an interval, a pause, a superset or a repeat, by
// the key that names it. A block, set, interval or pause may have:
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
//	hold       a base move that fills every pass up to whole phrases; default: none,
//	           march where the block is built by add-on or holding
//	build      how it is built up in front of the class, see below; default: not, it is
//	           danced as written
//	layers     list of changes for build: layering, each {move: one of the block, becomes:
//	           another move} or {move: one of the block, add: words}
//
// A block that is built up is danced in stages, each filling whole phrases, each
// as many times and with each lead as the block says:
//
//	add-on     the first move, the first two, the first three: repeated as often as they
//	           go into their phrases, the rest filled with the base move
//	layering   the block as written, then with one change more each time; counts stay
//	halving    the block as written, then every move half as often and all of it twice as
//	           often, down to single repetitions: 8-8, 4-4, 2-2, 1-1
//	holding    the first move and the base move, the first two and the base move, always
//	           over the phrases that the whole block takes
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
//	time       a length; required unless there is a series
//	sides      both (the time on the right, then on the left), right or left; default: none
//	series     "8 x 20s/10s": work and rest in turn, so many times, each laid as an
//	           interval and a pause of their own; instead of time and sides
//
//	pause      what for, in words
//	time       a length; required
//	for        water, weights, floor (on to it or up) or rest; default: as its words say
//
// A superset is items done in turn; a repeat does an item or a superset above it
// once more, the last one of that name. A repeat may have words and a setup of its
// own (cue, easier, harder, setup):
//
//	superset   its name
//	rounds     how often, 1 to 20; default: 1
//	do         list of items; required
//
//	repeat     name of a block, set, interval, pause or superset above
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
// An entry of moves, in a class file or in a moves file:
//
//	name       required; one of a known name replaces the known move
//	also       list of other names
//	class      class of movement whose limit of control applies: squat, hinge, press, row,
//	           curl, raise, crunch, leg lift, swing; default: no limit
//	pattern    what it counts for in the balance of a class, one of Patterns; default: none
//	counts     counts of one repetition in choreography, 1 to 64; default: no fixed number
//	switches   true when one repetition ends on the other foot; default: false
//	one-sided  true when it works one side, so that the other must follow; default: false
//	impact     none, low or high; default: none
//	equipment  list of what it needs
//
// Names are found whatever their case, hyphens, spaces and simple plurals.
//
// # The moves file
//
// A user's own figures, one file for all her classes: the version line, then
// moves, limits, bands and needs, each a list and each optional. What it names
// takes the place of what the program comes with. A source may be left out;
// findings then say that the figure is her own.
//
//	onphrase: 1
//	limits:
//	  - {class: squat, fine: 0.90s, too fast: 0.60s}
//	bands:
//	  - {kind: strength, inside: 118-128}
//	needs:
//	  - {for: weights, time: 16 counts}
//
// An entry of limits, seconds for one phase (one way) of a repetition over its
// full range:
//
//	class      class of movement; required
//	fine       fine at or above; required
//	too fast   likely hard to control below; required
//	too slow   of a swing: above, it no longer swings; default: as before
//	path       way of the load in one phase, like 0.40m; default: as before
//	evidence   published, common practice or assumption; default: own figures
//	source     in words
//
// An entry of bands, the tempo of the music for a kind of part [BPM]:
//
//	kind       warm-up, cardio, strength, core, cool-down or stretch; required
//	inside     what suits, "122-130" or "up to 100"; required
//	outer      what still goes; default: as before, as far as it holds what suits
//	source     in words
//
// An entry of needs, the time that a change takes:
//
//	for        water, weights or floor; required
//	time       a length, like 8 counts or 10s; required
//	source     in words
package plan
