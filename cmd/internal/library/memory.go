package library

import "runtime/debug"

// roomFor sets how much memory may be taken while so many tracks are analysed
// at once. The MP3 decoder throws away 130 MB for every minute of music, and
// what is kept of a song is a few; collecting that garbage as often as Go does
// by itself takes time. So it may grow to twice of what is kept, but for a mix of
// hours not beyond the limit.
func roomFor(tracks int) {
	const (
		percent = 200       // garbage to what is kept
		each    = 220 << 20 // limit for a track [bytes]
	)
	debug.SetGCPercent(percent)
	debug.SetMemoryLimit(int64(max(1, tracks)) * each)
}
