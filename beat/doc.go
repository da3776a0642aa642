// Package beat finds where the counts of a piece of music fall.
//
// Sound goes in as a stream of samples and comes out as a Track: every count,
// which of them is count 1, the list of 32-count phrases with the odd ones
// named, and how far each of these can be trusted. The stages live in the
// packages below this one; each takes and returns plain slices (samples,
// frames, seconds, indices), so that any of them can be replaced.
//
// All times are seconds on the gapless timeline, the one that ffmpeg and
// browsers use: 0 is the first real sample, with the encoder's delay removed.
package beat
