package parcel

import (
	"fmt"
	"io"
	"path"
	"strings"

	"onphrase/align/export"
	"onphrase/plan/say"
)

// textWidth is that of the words to read first [columns].
const textWidth = 80

// Licences is the word about music that is handed on.
const Licences = "Music that is handed on needs the right to copy it: a licence to play recordings in a class usually " +
	"does not give it. Local law decides."

// startHere writes what a substitute reads first. She may have no onphrase.
func (p *packer) startHere(w io.Writer) error {
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	para := func(text string) { line("%s\n", strings.Join(say.Wrap(text, textWidth), "\n")) }
	line("%s\n", p.of.Class.Name)
	line("All there is to teach this class. Nothing needs to be installed for it.\n")
	line("%-22s open it in a browser: stage, desk, and sheets to print", PageName)
	line("%-22s the class part by part, what to say and when, the kit", "sheets/")
	line("%-22s the songs in order, for a music player", "running-order.m3u8")
	line("%-22s captions for the class and lines for each song", "captions/")
	line("%-22s the class itself; onphrase reads it, and so do people", p.list.File)
	line("%-22s for programs\n", "data/, "+ListName)
	where := "beside this file"
	if p.list.Music != "" {
		where = "into the folder " + p.list.Music + " beside this file"
	}
	if len(p.list.Songs) > 0 && p.list.Songs[0].Included {
		para("The songs are in this package. " + Licences)
	} else {
		para("The songs are not in this package. Put your own copies " + where + ", under these names, " +
			"and the page plays them. Without them it runs on a tap on count 1.")
	}
	for _, s := range p.list.Songs {
		line("  %s", SongLine(s))
	}
	line("")
	para("Another edition of a song may begin earlier or later: before class, listen whether count 1 on the page is " +
		"count 1 in the music. 'onphrase unpack' tells which songs are the same.")
	if p.of.Map.Slot > 0 {
		line("Length: %s of a slot of %s.\n", say.Clock(p.of.Map.Length), say.Clock(p.of.Map.Slot))
	}
	for _, c := range export.Cautions {
		para(c)
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// SongLine names a song as a person looks for it.
func SongLine(s Song) string {
	text := s.File
	if s.Title != "" && s.Title != strings.TrimSuffix(path.Base(s.File), path.Ext(s.File)) {
		text = fmt.Sprintf("%s (%s)", s.Title, s.File)
	}
	if s.Duration > 0 {
		text += ", " + say.Clock(s.Duration)
	}
	if s.BPM > 0 {
		text += fmt.Sprintf(", %.1f BPM", s.BPM)
	}
	return text
}
