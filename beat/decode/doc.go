// Package decode turns an audio file into samples on the gapless timeline.
//
// Open looks at what a file holds, not at what it is called, and picks a
// decoder: MP3, WAV and FLAC are built in; everything else (M4A, ALAC, Ogg
// Vorbis, Opus, AIFF, the MP3 variants that the built-in decoder gets wrong)
// goes through an ffmpeg child process where one is on the PATH.
//
// Time 0 is the first real sample: the delay that an MP3 encoder adds is taken
// off where the file says how long it is, and left where it does not, so that
// a time found here is the time that ffmpeg and browsers show. A damaged frame
// becomes silence of the same length; the clock never slips.
//
// Everything streams: memory stays bounded whatever a file claims.
package decode
