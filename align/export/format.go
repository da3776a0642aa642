package export

import (
	"fmt"
	"io"
	"path"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// Format is a way to write a count map.
type Format struct {
	Name  string // as asked for: text, csv
	Ext   string // of a file, with its dot
	About string // one line
	Write func(io.Writer, *align.CountMap) error

	// Timed says that the file goes along with sound, on the timeline of the
	// class or, given OnTrack's map, of one track.
	Timed bool

	// Packed is the name of the class in this format among the files for a
	// substitute, with / between folders; empty where it is not among them.
	// EachSong says that there is one for every song as well.
	Packed   string
	EachSong bool
}

// Formats lists the formats, the first being the default.
func Formats() []Format {
	return []Format{
		{
			Name: "text", Ext: ".txt", Write: writeText,
			About:  "an aligned table for a terminal or a printer",
			Packed: "sheets/count-map.txt",
		},
		{
			Name: "csv", Ext: ".csv", Write: writeCSV,
			About:  "rows for a spreadsheet (RFC 4180, UTF-8)",
			Packed: "sheets/count-map.csv",
		},
		{
			Name: "json", Ext: ".json", Write: writeJSON,
			About:  "everything, for programs (onphrase.map/1)",
			Packed: "data/count-map.json",
		},
		{
			Name: "markdown", Ext: ".md", Write: writeMarkdown,
			About:  "tables for notes and web pages",
			Packed: "sheets/count-map.md",
		},
		{
			Name: "page", Ext: ".html", Write: writePage,
			About:  "one page to teach from, offline, with the music beside it",
			Packed: "class.html",
		},
		{
			Name: "cues", Ext: ".cues.txt", Write: writeCues,
			About:  "what to say and when, at class time and the song's",
			Packed: "sheets/cues.txt",
		},
		{
			Name: "webvtt", Ext: ".vtt", Write: writeWebVTT,
			About:  "captions: what is done, what comes next, what to call out",
			Packed: "captions/class.vtt", Timed: true,
		},
		{
			Name: "chapters", Ext: ".chapters.vtt", Write: writeChapters,
			About:  "WebVTT chapters: parts, and the items in them",
			Packed: "captions/class.chapters.vtt", Timed: true,
		},
		{
			Name: "srt", Ext: ".srt", Write: writeSRT,
			About:  "the captions for players without WebVTT",
			Packed: "captions/class.srt", Timed: true,
		},
		{
			Name: "lrc", Ext: ".lrc", Write: writeLRC,
			About: "the captions as lines beside a song",
			Timed: true, EachSong: true,
		},
		{
			Name: "midi", Ext: ".mid", Write: writeMIDI,
			About:  "tempo map with markers for phrases and items (SMF)",
			Packed: "captions/class.mid", Timed: true, EachSong: true,
		},
		{
			Name: "m3u8", Ext: ".m3u8", Write: writeM3U8,
			About:  "running order for music players",
			Packed: "running-order.m3u8",
		},
		{
			Name: "xspf", Ext: ".xspf", Write: writeXSPF,
			About:  "running order with notes (XSPF 1)",
			Packed: "running-order.xspf",
		},
	}
}

// ForFile returns the format that a file's name asks for, by its longest
// ending that stands for one.
func ForFile(name string) (Format, error) {
	var best Format
	for _, f := range Formats() {
		if strings.HasSuffix(strings.ToLower(name), f.Ext) && len(f.Ext) > len(best.Ext) {
			best = f
		}
	}
	if best.Ext == "" {
		return Find(path.Ext(name))
	}
	return best, nil
}

// Find returns the format of a name or a file name's extension. An unknown
// name is answered with the nearest one.
func Find(name string) (Format, error) {
	want := strings.ToLower(strings.TrimSpace(name))
	var names []string
	for _, f := range Formats() {
		if want == f.Name || want == f.Ext || "."+want == f.Ext {
			return f, nil
		}
		names = append(names, f.Name)
	}
	err := fmt.Errorf("no format %q; there are %s", name, strings.Join(names, ", "))
	if best, ok := say.Nearest(want, names); ok {
		err = fmt.Errorf("no format %q; did you mean %s? There are %s", name, best, strings.Join(names, ", "))
	}
	return Format{}, err
}
