package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"onphrase/beat"
	"onphrase/beat/click"
	"onphrase/beat/decode"
	"onphrase/beat/picture"
	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/told"
)

// The endings of what is written of a track, after its name.
const (
	pictureEnding = ".svg"
	clicksEnding  = ".clicks.wav"
)

// trackWriter writes a file for every track.
type trackWriter struct {
	*analyst
	tracks []beat.Track
	force  bool
	read   disk.Sources
}

// drawAll writes a picture of every track into a folder.
func (w trackWriter) drawAll(dir string) error {
	return w.each(dir, pictureEnding, func(t beat.Track) ([]byte, error) {
		var b bytes.Buffer
		err := picture.Write(&b, t)
		return b.Bytes(), err
	})
}

// clickAll writes every track with clicks on its counts into a folder.
func (w trackWriter) clickAll(dir string) error {
	return w.each(dir, clicksEnding, func(t beat.Track) ([]byte, error) {
		sound, err := decode.Open(t.File, w.Mode)
		if err != nil {
			return nil, err
		}
		defer sound.Close()
		b, err := click.WAV(sound, click.Of(t))
		if err != nil {
			return nil, told.Failed("", "%s: %s", t.File, err)
		}
		return b, nil
	})
}

// each writes a file for every track that has a result, and says which belongs
// to which. One that cannot be written does not stop the others; it is said,
// and the command fails.
func (w trackWriter) each(dir, ending string, content func(beat.Track) ([]byte, error)) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return told.Failed("", "%s: %s", dir, told.Reason(err))
	}
	bad := false
	taken := map[string]bool{}
	for _, t := range w.tracks {
		if t.Problem != "" {
			continue
		}
		path := filepath.Join(dir, freeName(t.File, taken)+ending)
		b, err := content(t)
		if err == nil {
			err = disk.WriteFile(path, w.force, w.read, b)
		}
		if err != nil {
			bad = true
			w.s.report(asFailure(err))
			continue
		}
		w.s.say("%s, of %s", path, t.File)
	}
	if bad {
		return said(exitFailed)
	}
	return nil
}

// freeName names what is written of a track by the track's own name; tide.mp3
// and tide.wav, or two of one name, must not write over each other.
func freeName(file string, taken map[string]bool) string {
	base := filepath.Base(file)
	name := strings.TrimSuffix(base, filepath.Ext(base))
	for n := 1; taken[disk.Folded(name)]; n++ {
		name = base
		if n > 1 {
			name = fmt.Sprintf("%s-%d", base, n)
		}
	}
	taken[disk.Folded(name)] = true
	return name
}
