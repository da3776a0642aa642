package library

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding/charmap"

	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/told"
)

// playlistLimit is the largest playlist read [bytes]: some 100,000 lines.
const playlistLimit = 16 << 20

// IsPlaylist goes by the name's ending.
func IsPlaylist(name string) bool {
	switch strings.ToLower(filepath.Ext(name)) {
	case ".m3u", ".m3u8", ".xspf":
		return true
	}
	return false
}

// entry is a line of a playlist.
type entry struct {
	line     int
	location string // path or URL, as written
}

// playlist reads the entries of a playlist. What cannot be found is an input
// with a problem that names the playlist's line.
func playlist(path string) []Input {
	src, err := disk.ReadLimited(path, playlistLimit)
	if err != nil {
		return []Input{{Path: path, Problem: told.Reason(err)}}
	}
	read := readM3U
	if strings.EqualFold(filepath.Ext(path), ".xspf") {
		read = readXSPF
	}
	entries, err := read(src)
	list := make([]Input, 0, len(entries)+1)
	for _, e := range entries {
		list = append(list, locate(path, e))
	}
	switch {
	case err != nil:
		list = append(list, Input{Path: path, Problem: err.Error()})
	case len(entries) == 0:
		list = append(list, Input{Path: path, Problem: "no tracks in this playlist"})
	}
	return list
}

// readM3U reads one path or URL a line. Lines that begin with # are comments
// or extensions, of which none is needed. Text that is not UTF-8 is taken for
// Windows-1252, which old players write.
func readM3U(src []byte) ([]entry, error) {
	src = bytes.TrimPrefix(src, []byte("\ufeff"))
	if !utf8.Valid(src) {
		if latin, err := charmap.Windows1252.NewDecoder().Bytes(src); err == nil {
			src = latin
		}
	}
	var entries []entry
	for i, line := range strings.Split(strings.ReplaceAll(string(src), "\r", ""), "\n") {
		line = strings.TrimSpace(line)
		if line != "" && !strings.HasPrefix(line, "#") {
			entries = append(entries, entry{line: i + 1, location: line})
		}
	}
	return entries, nil
}

// readXSPF reads the first location of every track.
//
// Ref: XSPF version 1, xspf.org/spec, 4.1.1.2.14.1.1.1.1.
func readXSPF(src []byte) ([]entry, error) {
	var entries []entry
	d := xml.NewDecoder(bytes.NewReader(src))
	d.CharsetReader = func(label string, in io.Reader) (io.Reader, error) {
		return charmap.Windows1252.NewDecoder().Reader(in), nil
	}
	inTrack, found := false, false
	for {
		tok, err := d.Token()
		if errors.Is(err, io.EOF) {
			return entries, nil
		}
		line, _ := d.InputPos()
		if err != nil {
			return entries, fmt.Errorf("line %d: not a playlist that can be read: %s", line, err)
		}
		switch t := tok.(type) {
		case xml.StartElement:
			switch {
			case t.Name.Local == "track":
				inTrack, found = true, false
			case t.Name.Local == "location" && inTrack && !found:
				var text string
				if err := d.DecodeElement(&text, &t); err != nil {
					return entries, fmt.Errorf("line %d: not a playlist that can be read: %s", line, err)
				}
				entries = append(entries, entry{line: line, location: strings.TrimSpace(text)})
				found = true
			}
		case xml.EndElement:
			if t.Name.Local == "track" {
				if !found {
					entries = append(entries, entry{line: line})
				}
				inTrack = false
			}
		}
	}
}

// locate finds the file an entry means.
func locate(list string, e entry) Input {
	place := fmt.Sprintf("%s:%d", list, e.line)
	if e.location == "" {
		return Input{Path: place, Problem: place + ": the track has no location"}
	}
	readings, err := readings(e.location)
	if err != nil {
		return Input{Path: e.location, Problem: fmt.Sprintf("%s: %s", place, err)}
	}
	for _, path := range readings {
		if !filepath.IsAbs(path) {
			path = filepath.Join(filepath.Dir(list), path)
		}
		info, err := os.Stat(path)
		switch {
		case err != nil:
			continue
		case info.IsDir():
			return Input{Path: path, Problem: place + ": a folder, not a track"}
		case IsPlaylist(path):
			return Input{Path: path, Problem: place + ": a playlist inside a playlist is not followed"}
		}
		return Input{Path: path}
	}
	return Input{Path: e.location, Problem: place + ": no such file"}
}

// scheme matches the beginning of a URL. Two letters at least, so that it is
// not the drive of a Windows path.
var scheme = regexp.MustCompile(`^[A-Za-z][A-Za-z0-9+.-]+:`)

// drive matches the path of a file URL that names a Windows drive.
var drive = regexp.MustCompile(`^/[A-Za-z]:/`)

// readings are the paths a location may stand for, the likeliest first: as
// written, then without percent-encoding, then with the separators of Windows.
func readings(location string) ([]string, error) {
	if m := scheme.FindString(location); m != "" && strings.HasPrefix(location[len(m):], "/") {
		return fileURL(location)
	}
	paths := []string{filepath.FromSlash(location)}
	if plain, err := url.PathUnescape(location); err == nil && plain != location {
		paths = append(paths, filepath.FromSlash(plain))
	}
	for _, p := range paths {
		if strings.Contains(p, `\`) {
			paths = append(paths, filepath.FromSlash(strings.ReplaceAll(p, `\`, "/")))
		}
	}
	return paths, nil
}

// fileURL is the path of a file: URL; any other URL is not on this computer.
//
// Ref: RFC 8089, section 2 and appendix E.2.
func fileURL(location string) ([]string, error) {
	u, err := url.Parse(location)
	if err != nil {
		return nil, fmt.Errorf("not a URL that can be read: %q", location)
	}
	if !strings.EqualFold(u.Scheme, "file") {
		return nil, fmt.Errorf("%s: is not a file on this computer", u.Scheme)
	}
	if u.Host != "" && !strings.EqualFold(u.Host, "localhost") {
		return nil, fmt.Errorf("the file is on another computer, %s", u.Host)
	}
	path := u.Path
	if drive.MatchString(path) {
		path = path[1:]
	}
	return []string{filepath.FromSlash(path)}, nil
}
