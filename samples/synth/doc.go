// Package synth makes music whose every count is known.
//
// A Song lists its sections (intro, verse, build, drop, ...) and the counts in
// each; the package writes drums, bass, chords and a hook for them in the
// style asked for, plays them on its own instruments and mixes the result.
// Song.Truth says where every count and phrase falls, exactly, on the timeline
// of the rendered sound: sample 0 is at 0 s.
//
// The same Song gives the same samples every time on the same processor: all
// chance comes from its Seed. Nothing is recorded and nothing is copied, so
// the music belongs to whoever makes it.
//
// The way of the data, in Render: grid (when the counts come) → compose (who
// plays what when) → play (instruments) → mix → master.
package synth
