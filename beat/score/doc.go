// Package score compares beats and tempi with a reference.
//
// Times are in seconds and increasing. Every measure is 0 (nothing right) to 1
// (all right); beats before Trim are left out by Beats, as is usual, since
// nobody can tap along before having heard some music.
//
// Ref: Davies, Degara & Plumbley 2009, "Evaluation methods for musical audio
// beat tracking algorithms" (QMUL C4DM-TR-09-06), which names the sources of
// the single measures. Where the report leaves details open, the conventions
// are those of mir_eval (Raffel et al. 2014, ISMIR), so that figures can be
// compared with published ones.
package score
