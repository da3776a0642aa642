// Package parcel is a class in one file, for a substitute: what goes into it, how
// it is unpacked without harm, and which of its songs are there.
package parcel

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"onphrase/align"
	"onphrase/align/export"
	"onphrase/beat"
	"onphrase/cmd/internal/aligned"
	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/library"
	"onphrase/cmd/internal/told"
)

// File is a file of a package: its content, or where on this computer it is.
type File struct {
	name    string // with / between folders
	content []byte
	from    string
}

// packer gathers the files of a package.
type packer struct {
	of    *aligned.Class
	list  Manifest
	files []File
	err   error
}

// add keeps what write writes under a name. After an error nothing is added.
func (p *packer) add(name string, write func(io.Writer) error) {
	if p.err != nil {
		return
	}
	var b bytes.Buffer
	if err := write(&b); err != nil {
		p.err = fmt.Errorf("%s: %w", name, err)
		return
	}
	p.files = append(p.files, File{name: name, content: b.Bytes()})
}

// The names in a package.
const (
	PageName    = "class.html"
	StartName   = "read-me-first.txt"
	packedMoves = "moves.yaml"

	packedAnalysis = "data/analysis.json"
)

// Gather lists everything that goes into a package, sorted by name.
func Gather(l *aligned.Class, moves []byte, withMusic bool) ([]File, error) {
	p := &packer{of: l}
	p.list = Manifest{Schema: schemaName, Class: l.Class.Name, File: filepath.Base(l.Path)}
	src, music, err := localMusic(l.Src, l.Class)
	if err != nil {
		return nil, told.Failed("", "%s: %s", l.Path, err)
	}
	p.list.Music = music
	p.add(p.list.File, func(w io.Writer) error { _, err := w.Write(src); return err })
	if moves != nil {
		p.add(packedMoves, func(w io.Writer) error { _, err := w.Write(moves); return err })
	}
	if err := p.songs(withMusic); err != nil {
		return nil, err
	}
	p.sheets()
	p.analysis()
	p.add(ListName, func(w io.Writer) error {
		src, err := p.list.encode()
		if err == nil {
			_, err = w.Write(src)
		}
		return err
	})
	p.add(StartName, p.startHere)
	slices.SortFunc(p.files, func(a, b File) int { return strings.Compare(a.name, b.name) })
	seen := map[string]bool{}
	for _, f := range p.files {
		if !harmlessName(f.name) {
			return nil, told.Failed("rename it", "not every system can have a file called %q", f.name)
		}
		if seen[disk.Folded(f.name)] {
			return nil, told.Failed("rename yours", "two files of the package would be called %s", f.name)
		}
		seen[disk.Folded(f.name)] = true
	}
	return p.files, p.err
}

// songs lists the music by content and name, and takes along what a person has
// corrected of it.
func (p *packer) songs(withMusic bool) error {
	for _, name := range aligned.TrackNames(p.of.Class) {
		if !filepath.IsLocal(filepath.FromSlash(name)) {
			return told.Failed("put it into the music folder and name it there", "%s is outside of the music folder", name)
		}
		file, track := p.of.Files[name], p.of.Tracks[name]
		sum, size, err := content(file)
		if err != nil {
			return told.Failed("", "%s: %s", file, told.Reason(err))
		}
		p.list.Songs = append(p.list.Songs, Song{
			File: name, Title: track.Title, SHA256: sum, Bytes: size,
			Duration: track.Duration, BPM: track.BPM, Included: withMusic,
		})
		at := path.Join(p.list.Music, name)
		if withMusic {
			p.files = append(p.files, File{name: at, from: file})
		}
		kept, err := library.CorrectionsOf(file)
		if err != nil {
			return told.Failed("", "%s", err)
		}
		if kept.File != nil { // she may keep them in her own folder
			src, err := disk.ReadLimited(kept.Path, library.CorrectionLimit)
			if err != nil {
				return told.Failed("", "%s: %s", kept.Path, told.Reason(err))
			}
			p.files = append(p.files, File{name: at + library.CorrectionEnding, content: src})
		}
	}
	aligned.EachTrack(p.of.Map, func(t *align.Music) { t.Path = path.Join(p.list.Music, t.File) })
	return nil
}

// sheets writes the class in the forms that people and players open.
func (p *packer) sheets() {
	for _, f := range export.Formats() {
		if f.Packed != "" {
			p.sheet(f.Packed, f, p.of.Map)
		}
	}
	p.add("sheets/kit.txt", func(w io.Writer) error { return export.Kit(w, p.of.Map) })
	seen := map[string]bool{}
	for _, file := range export.Tracks(p.of.Map) {
		m, err := export.OnTrack(p.of.Map, file)
		if err != nil {
			p.err = err
			return
		}
		at := "captions/songs/" + strings.TrimSuffix(file, path.Ext(file))
		if seen[disk.Folded(at)] { // tide.mp3 and tide.wav
			at = "captions/songs/" + file
		}
		seen[disk.Folded(at)] = true
		for _, f := range export.Formats() {
			if f.EachSong {
				p.sheet(at+f.Ext, f, m)
			}
		}
	}
}

func (p *packer) sheet(name string, f export.Format, m *align.CountMap) {
	p.add(name, func(w io.Writer) error { return f.Write(w, m) })
}

// analysis writes what was heard in the music, under the names of the class
// file: where the music lies on this computer is nobody's business.
func (p *packer) analysis() {
	var tracks []beat.Track
	for _, s := range p.list.Songs {
		tracks = append(tracks, p.of.Tracks[s.File])
	}
	p.add(packedAnalysis, func(w io.Writer) error { return library.WriteAnalysis(w, tracks) })
}

// packTime is the date of every file in a package, the first that a zip file
// can hold: the same class gives the same package.
var packTime = time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)

// Write writes the package. Music is stored as it is: it is compressed
// already.
func Write(w io.Writer, files []File) error {
	z := zip.NewWriter(w)
	for _, f := range files {
		h := &zip.FileHeader{Name: f.name, Method: zip.Deflate, Modified: packTime}
		if f.from != "" {
			h.Method = zip.Store
		}
		out, err := z.CreateHeader(h)
		if err == nil && f.from != "" {
			err = copyFile(out, f.from)
		} else if err == nil {
			_, err = out.Write(f.content)
		}
		if err != nil {
			return fmt.Errorf("%s: %w", f.name, err)
		}
	}
	return z.Close()
}

func copyFile(w io.Writer, path string) error {
	f, err := os.Open(path)
	if err != nil {
		return err
	}
	defer f.Close()
	_, err = io.Copy(w, f)
	return err
}
