package main

import (
	"os"
	"path"
	"path/filepath"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"onphrase/cmd/internal/library"
	"onphrase/cmd/internal/told"
)

// whereabouts is where a song of a package was found.
type whereabouts struct {
	song
	at   string // the file, empty when there is none
	same bool   // its content is that of the song the class was made to
	home bool   // it lies where the class looks for it

	library.Edition // of a file that has only the name
}

// there tells whether the class can be taught to it as it is.
func (w whereabouts) there() bool { return w.home && (w.same || w.Fits()) }

// find looks for the songs in their folder, and in the user's own music, by
// content first and then by name.
func find(list *manifest, dir, own string) ([]whereabouts, error) {
	var have []string
	if own != "" {
		files, err := library.AudioFiles(own)
		if err != nil {
			return nil, told.Failed("", "%s: %s", own, told.Reason(err))
		}
		for _, f := range files {
			have = append(have, filepath.Join(own, f))
		}
	}
	var all []whereabouts
	for _, s := range list.Songs {
		home := filepath.Join(dir, filepath.FromSlash(path.Join(list.Music, s.File)))
		w := whereabouts{song: s}
		if same, ok := s.is(home); ok {
			w.at, w.same, w.home = home, same, true
		}
		if !w.same {
			s.among(have, &w)
		}
		all = append(all, w)
	}
	return all, nil
}

// among looks for the song in a list of files.
func (s song) among(have []string, w *whereabouts) {
	for _, file := range have {
		if same, ok := s.is(file); ok && same {
			w.at, w.same, w.home = file, true, false
			return
		}
	}
	for _, file := range have {
		if w.at == "" && s.called(file) {
			w.at = file
		}
	}
}

// is tells whether a file is there, and whether it is the very song. Only a
// file of the same size is read.
func (s song) is(file string) (same, ok bool) {
	info, err := os.Stat(file)
	if err != nil || !info.Mode().IsRegular() {
		return false, false
	}
	if info.Size() != s.Bytes {
		return false, true
	}
	sum, _, err := content(file)
	return err == nil && sum == s.SHA256, true
}

// called tells whether a file has the song's name or title, whatever its
// folder, format, capitals and hyphens.
func (s song) called(file string) bool {
	name := bare(file)
	return name != "" && (name == bare(s.File) || name == letters(s.Title))
}

func bare(file string) string {
	name := path.Base(filepath.ToSlash(file))
	return letters(strings.TrimSuffix(name, path.Ext(name)))
}

// letters are the letters and digits of a text, in small letters.
func letters(s string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) || unicode.Is(unicode.M, r) {
			return unicode.ToLower(r)
		}
		return -1
	}, norm.NFC.String(s))
}
