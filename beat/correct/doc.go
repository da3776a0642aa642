// Package correct applies what a person has said about a track to what was
// heard in it.
//
// A correction is a time and not an index, so that it holds when the track is
// analysed again: it means the count nearest to it. Corrections are applied in
// the order in which they were made. What a person has set is taken for
// certain (trust 1), and no later correction moves a phrase start she has set,
// unless it says so of that start itself:
//
//	one        count 1 of a phrase falls here; the phrases round it, up to those
//	           set before, move along
//	half       she counts half as fast as was heard
//	double     she counts twice as fast
//	phrase     a phrase starts here; the others stay where they are
//	no-phrase  no phrase starts here
//	counts     a phrase of so many counts starts here; those after it, up to the
//	           next one set, move along
//	every      she counts otherwise: a count falls here, and on from it every so
//	           many of those heard, such as 1 (off the beat), 3/2 or 2
//	bpm        the counts are steady throughout, one of them here
//	checked    she has listened: all of it is taken for certain
//
// It also reads and writes the small file they are kept in; where that file
// lies is the command's business.
package correct
