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
}

// Formats lists the formats, the first being the default.
func Formats() []Format {
	return []Format{
		{Name: "text", Ext: ".txt", About: "an aligned table for a terminal or a printer", Write: writeText},
		{Name: "csv", Ext: ".csv", About: "rows for a spreadsheet (RFC 4180, UTF-8)", Write: writeCSV},
		{Name: "json", Ext: ".json", About: "everything, for programs (onphrase.map/1)", Write: writeJSON},
		{Name: "markdown", Ext: ".md", About: "tables for notes and web pages", Write: writeMarkdown},
		{Name: "page", Ext: ".html", About: "one page to teach from, offline, with the music beside it", Write: writePage},
		{Name: "cues", Ext: ".cues.txt", About: "what to say and when, at class time and the song's", Write: writeCues},
		{Name: "webvtt", Ext: ".vtt", About: "captions: what is done, what comes next, what to call out", Write: writeWebVTT, Timed: true},
		{Name: "chapters", Ext: ".chapters.vtt", About: "WebVTT chapters: parts, and the items in them", Write: writeChapters, Timed: true},
		{Name: "srt", Ext: ".srt", About: "the captions for players without WebVTT", Write: writeSRT, Timed: true},
		{Name: "lrc", Ext: ".lrc", About: "the captions as lines beside a song", Write: writeLRC, Timed: true},
		{Name: "midi", Ext: ".mid", About: "tempo map with markers for phrases and items (SMF)", Write: writeMIDI, Timed: true},
		{Name: "m3u8", Ext: ".m3u8", About: "running order for music players", Write: writeM3U8},
		{Name: "xspf", Ext: ".xspf", About: "running order with notes (XSPF 1)", Write: writeXSPF},
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
