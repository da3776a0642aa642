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
)

// The endings of what is written of a track, after its name.
const (
	pictureEnding = ".svg"
	clicksEnding  = ".clicks.wav"
)

// drawAll writes a picture of every track into a folder.
func (a *analyst) drawAll(dir string, force bool, tracks []beat.Track) error {
	return a.each(dir, pictureEnding, force, tracks, func(t beat.Track) ([]byte, error) {
		var b bytes.Buffer
		err := picture.Write(&b, t)
		return b.Bytes(), err
	})
}

// clickAll writes every track with clicks on its counts into a folder.
func (a *analyst) clickAll(dir string, force bool, tracks []beat.Track) error {
	return a.each(dir, clicksEnding, force, tracks, func(t beat.Track) ([]byte, error) {
		sound, err := decode.Open(t.File, a.mode)
		if err != nil {
			return nil, err
		}
		defer sound.Close()
		b, err := click.WAV(sound, click.Of(t))
		if err != nil {
			return nil, failed("", "%s: %s", t.File, err)
		}
		return b, nil
	})
}

// each writes a file for every track that has a result. One that cannot be
// written does not stop the others; it is said, and the command fails.
func (a *analyst) each(dir, ending string, force bool, tracks []beat.Track,
	content func(beat.Track) ([]byte, error)) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return failed("", "%s: %s", dir, reason(err))
	}
	bad := false
	taken := map[string]bool{}
	for _, t := range tracks {
		if t.Problem != "" {
			continue
		}
		path := filepath.Join(dir, freeName(t.File, taken)+ending)
		err := a.write(path, force, t, content)
		if err != nil {
			bad = true
			a.s.report(asFailure(err))
			continue
		}
		a.s.say("%s", path)
	}
	if bad {
		return said(exitFailed)
	}
	return nil
}

func (a *analyst) write(path string, force bool, t beat.Track, content func(beat.Track) ([]byte, error)) error {
	b, err := content(t)
	if err != nil {
		return err
	}
	return writeFile(path, force, b)
}

// freeName names what is written of a track by the track's own name; tide.mp3
// and tide.wav, or two of one name, must not write over each other.
func freeName(file string, taken map[string]bool) string {
	base := filepath.Base(file)
	name := strings.TrimSuffix(base, filepath.Ext(base))
	for n := 1; taken[folded(name)]; n++ {
		name = base
		if n > 1 {
			name = fmt.Sprintf("%s-%d", base, n)
		}
	}
	taken[folded(name)] = true
	return name
}
