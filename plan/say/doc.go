// Package say writes figures, times, nouns and lists the way people read
// them, fits text into columns, and finds the word that was meant by a
// mistyped one. It knows nothing of classes or music, so that every other
// package can write with it.
package say
