// Package fit looks for the cheapest set of changes of a class after which
// every item starts where it should, can be controlled at the tempo of its
// music, and comes to an end before the music does.
//
// What may change: repetitions of a set, from half to double; some of them in
// a slower rhythm or in that of their neighbour (a set that fills eights goes
// on filling them); a rhythm that is too fast, to
// a slower one in the same counts; a hold before an item; an item that waits
// for the next phrase; the length of timed work and of pauses, from half to
// double; the phrase a part starts on; the order of two neighbouring sets done
// with the same things; the tempo, within 5 % of the recording, where that brings
// a rhythm under control. Everything has
// its price (Table), and so have findings that are left or caused.
//
// Of what is written in one place and done several times (rounds, repeats) one
// decision holds for all. Where the best plan leaves something, the search goes
// on from the class as that plan makes it, and what it finds becomes part of the
// plan: a class that has been fitted stays as it is.
//
// The search is exact within those changes: each part by itself, since parts
// share nothing but the clock, and then whole classes against all checks of
// package align, whose word is the last: a plan costs what the checks find in
// the file as changed.
package fit
