// Package tone records the harmony of a track: which pitches sound, and which
// of them the bass plays.
package tone
