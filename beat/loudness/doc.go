// Package loudness measures how loud a whole piece of music is, so that the
// tracks of a class can be compared.
//
// It follows ITU-R BS.1770-4: each channel goes through the K filter, which
// weighs frequencies roughly as the head and the ear do; power is taken over
// blocks of 400 ms; blocks that are silent or much quieter than the rest are
// left out. The result is in LUFS: decibels below full scale, so that -9 is
// louder than -14. It says nothing about how loud a room is.
package loudness
