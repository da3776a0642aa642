// Package song finds where one song of a continuous mix gives way to the next.
//
// A song comes back to what it has played before: a verse, a chorus, its own
// sounds and chords. Where nothing of what went before comes back, another song
// has begun.
package song
