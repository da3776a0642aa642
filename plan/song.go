package plan

import (
	"fmt"
	"path"
	"regexp"
	"strings"

	"golang.org/x/text/unicode/norm"

	"onphrase/plan/say"
)

// Song is a piece of music that a class may name.
type Song struct {
	File  string // in the music folder, with / between folders
	Title string // as its tags have it; empty when unknown
}

// songRules are the ways to name a song, the surest first. The first rule by
// which any song is meant decides.
var songRules = []func(name string, s Song) bool{
	func(name string, s Song) bool { return norm.NFC.String(name) == norm.NFC.String(s.File) },
	func(name string, s Song) bool {
		return strings.EqualFold(name, s.File) || strings.EqualFold(name, path.Base(s.File))
	},
	func(name string, s Song) bool {
		return say.Fold(name) == say.Fold(stem(s.File)) || say.Fold(name) == say.Fold(stem(path.Base(s.File)))
	},
	func(name string, s Song) bool { return s.Title != "" && say.Fold(name) == say.Fold(s.Title) },
	func(name string, s Song) bool { return unnumbered(stem(path.Base(s.File))) == say.Fold(name) },
	sameNumber,
	func(name string, s Song) bool {
		return partOf(say.Fold(name), say.Fold(stem(s.File))) || partOf(say.Fold(name), say.Fold(s.Title))
	},
}

// PickSong finds the song that a name means: its file name, with or without
// what stands behind the point; its title; the number that its file name
// begins with; or a part of these. Case, hyphens and spaces do not matter.
// Where several songs are meant, or none, the problem says which there are; its
// place is left to the caller.
func PickSong(name string, songs []Song) (Song, *Problem) {
	name = norm.NFC.String(strings.TrimSpace(name))
	for _, means := range songRules {
		var meant []Song
		for _, s := range songs {
			if means(name, Song{norm.NFC.String(s.File), norm.NFC.String(s.Title)}) {
				meant = append(meant, s)
			}
		}
		switch len(meant) {
		case 0:
			continue
		case 1:
			return meant[0], nil
		}
		return Song{}, &Problem{
			Msg:  fmt.Sprintf("track %s may be any of %d songs", shown(name), len(meant)),
			Hint: "which: " + several(meant) + "?",
		}
	}
	p := &Problem{Msg: fmt.Sprintf("track %s is none of the songs", shown(name))}
	if len(songs) > 0 {
		p.Hint = nearestFile(name, fileNames(songs))
	}
	return Song{}, p
}

// PickSongs puts the file of the song that it means in the place of every name
// in the class, and returns a problem for every name that means none or
// several. A folder without any music is one problem, of the line that names
// it.
func (c *Class) PickSongs(songs []Song) []Problem {
	if len(songs) == 0 {
		return c.MissingTracks(nil)
	}
	var all []Problem
	for i := range c.Parts {
		for j := range c.Parts[i].Tracks {
			t := &c.Parts[i].Tracks[j]
			s, p := PickSong(t.File, songs)
			if p != nil {
				p.Pos = t.Pos
				p.Msg = strings.Replace(p.Msg, "is none of the songs", "is not in "+c.folder(), 1)
				all = append(all, *p)
				continue
			}
			t.File = s.File
		}
	}
	return all
}

func stem(file string) string { return strings.TrimSuffix(file, path.Ext(file)) }

var (
	leadingNumber = regexp.MustCompile(`^0*([0-9]{1,3})(?:[ ._-]+|$)`)
	onlyNumber    = regexp.MustCompile(`^#?0*([0-9]{1,3})\.?$`)
)

// sameNumber compares a name that is only a number with the number that a file
// name begins with: 7 is "07 - Tidewater.mp3".
func sameNumber(name string, s Song) bool {
	n, of := onlyNumber.FindStringSubmatch(name), leadingNumber.FindStringSubmatch(stem(path.Base(s.File)))
	return n != nil && of != nil && n[1] == of[1]
}

// unnumbered is a file name, folded, without the number it begins with.
func unnumbered(name string) string { return say.Fold(leadingNumber.ReplaceAllString(name, "")) }

// shortestPart bounds the part of a name that stands for the whole: shorter
// ones are in too many songs that are bought tomorrow.
const shortestPart = 3

func partOf(part, whole string) bool {
	return len([]rune(part)) >= shortestPart && strings.Contains(whole, part)
}

// mostNamed bounds the songs that a hint names.
const mostNamed = 5

// several lists songs for a hint.
func several(songs []Song) string {
	names := fileNames(songs)
	for i, n := range names {
		names[i] = short(n)
	}
	if len(names) > mostNamed {
		return strings.Join(names[:mostNamed], ", ") + fmt.Sprintf(" or one of %d more", len(names)-mostNamed)
	}
	return say.Or(names)
}

func fileNames(songs []Song) []string {
	var names []string
	for _, s := range songs {
		names = append(names, s.File)
	}
	return names
}
