// Package samples holds the demo class: a class file an instructor could have
// written, and its music.
//
// Everything in it is invented by this project: the class, the titles, the
// musicians. The music is made by the generator in samples/synth, from the
// songs listed in samples/generate, and encoded with lame; no recording, loop
// or MIDI file of anybody else is in it, so it comes under the licence of this
// repository. Beside every song lies its exact truth, on the timeline that
// ffmpeg and browsers use (the encoder's delay removed): `.beats` has a line
// "seconds<TAB>beat in the bar" for every count, `.phrases` a line
// "seconds<TAB>counts<TAB>label" for every phrase.
//
// The class is not perfect, on purpose: it has a few slips of the kind that
// are found in front of thirty people.
package samples

import (
	"embed"
	"io/fs"
)

//go:embed demo/class.yaml demo/music/*.mp3
var demo embed.FS

//go:embed demo/music/*.beats demo/music/*.phrases
var truth embed.FS

// Demo is the class as an instructor has it: class.yaml and the folder music
// with its MP3 files.
func Demo() fs.FS { return under(demo, "demo") }

// Truth is where every count and phrase of the demo's music falls:
// tidewater.beats, tidewater.phrases, and so on.
func Truth() fs.FS { return under(truth, "demo/music") }

// under is the folder dir of what was embedded.
func under(f embed.FS, dir string) fs.FS {
	sub, err := fs.Sub(f, dir)
	if err != nil {
		panic(err) // the name is no path: a slip in this file
	}
	return sub
}
