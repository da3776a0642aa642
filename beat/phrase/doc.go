// Package phrase groups the bars of a track into phrases.
//
// Every bar gets the odds that a phrase starts there, from what changes and
// what begins to repeat; the list of phrases is then the likeliest one under
// these odds and the usual lengths of phrases. A phrase of 8 bars is only the
// commonest: the count starts afresh wherever the music does.
package phrase
