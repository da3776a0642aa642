// Package align lays a class on the phrases of its music and reports what
// will not fit or cannot be controlled.
//
// Build takes the class and its analysed tracks and returns a CountMap: a row
// for everything that happens, with its phrase, count and times, and the
// findings. All positions come from each track's own list of counts and
// phrases, never from a tempo multiplied out.
package align
