// Package bar decides which beat is count 1.
//
// Sound, the beat-by-beat summary of a track, is measured here; package
// phrase groups the bars by it.
package bar
