package decode

import (
	"path/filepath"
	"slices"
	"strings"
)

// extensions are the names that files of sound go by. Video is left out: a
// folder of music is searched for these, and Open takes any file.
var extensions = []string{
	".aac", ".ac3", ".aif", ".aifc", ".aiff", ".alac", ".ape", ".au", ".bwf", ".caf", ".flac", ".m4a", ".m4b",
	".mka", ".mp2", ".mp3", ".mpc", ".oga", ".ogg", ".opus", ".rf64", ".snd", ".tta", ".w64", ".wav", ".wave",
	".wma", ".wv",
}

// Extensions lists the file name extensions of audio, with their dots, in
// order.
func Extensions() []string { return slices.Clone(extensions) }

// IsAudio reports whether a file goes by a name that audio files have.
func IsAudio(name string) bool {
	_, found := slices.BinarySearch(extensions, strings.ToLower(filepath.Ext(name)))
	return found
}
