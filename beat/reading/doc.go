// Package reading chooses between readings of the same music: beats at
// another metrical level or on another phase, all of which fit the onsets.
//
// Each reading is heard as a whole. What sounds on its beats, between them and
// on every second and fourth of them, band by band, makes a row of clues; a
// linear model turns the clues into odds. It is the arrangement that tells: a
// kick on the beat and a hat between, a snare on every second beat, a period
// people move to. Where the ear hears music, all that is one clue beside what
// the ear hears on and between the beats of the reading, how well these explain
// it, and whether its own counts keep to one level.
package reading
