package parcel

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

// Whereabouts is where a song of a package was found.
type Whereabouts struct {
	Song
	At   string // the file, empty when there is none
	Same bool   // its content is that of the song the class was made to
	Home bool   // it lies where the class looks for it

	library.Edition // of a file that has only the name
}

// There tells whether the class can be taught to it as it is.
func (w Whereabouts) There() bool { return w.Home && (w.Same || w.Fits()) }

// Find looks for the songs in their folder, and in the user's own music, by
// content first and then by name.
func Find(list *Manifest, dir, own string) ([]Whereabouts, error) {
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
	var all []Whereabouts
	for _, s := range list.Songs {
		home := filepath.Join(dir, filepath.FromSlash(path.Join(list.Music, s.File)))
		w := Whereabouts{Song: s}
		if same, ok := s.is(home); ok {
			w.At, w.Same, w.Home = home, same, true
		}
		if !w.Same {
			s.among(have, &w)
		}
		all = append(all, w)
	}
	return all, nil
}

// among looks for the song in a list of files.
func (s Song) among(have []string, w *Whereabouts) {
	for _, file := range have {
		if same, ok := s.is(file); ok && same {
			w.At, w.Same, w.Home = file, true, false
			return
		}
	}
	for _, file := range have {
		if w.At == "" && s.called(file) {
			w.At = file
		}
	}
}

// is tells whether a file is there, and whether it is the very song. Only a
// file of the same size is read.
func (s Song) is(file string) (same, ok bool) {
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
func (s Song) called(file string) bool {
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
