package main

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"onphrase/cmd/internal/aligned"
	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/library"
	"onphrase/cmd/internal/told"
	"onphrase/plan"
	"onphrase/plan/edit"
	"onphrase/plan/say"
)

// exchange lists what changes in a class file whose parts get other songs.
func (o *relayOptions) exchange(s *streams, was *aligned.Class) ([]edit.Change, error) {
	other, err := o.otherMusic(s, was.Class)
	if err != nil {
		return nil, err
	}
	if len(other.parts) == 0 {
		return nil, told.Failed("", "%s: no part of %s gets another song", o.music, o.path)
	}
	h, err := o.home(was, other)
	if err != nil {
		return nil, err
	}
	var changes []edit.Change
	if h.music != cleanFolder(was.Class.Music) {
		changes = append(changes, edit.SetMusic{Folder: h.music})
	}
	for i := range was.Class.Parts {
		m, changed := other.parts[i]
		if !changed {
			continue
		}
		var names []string
		for _, t := range m.Tracks {
			names = append(names, h.name(t.File))
		}
		changes = append(changes, edit.SetTracks{Part: was.Class.Parts[i].Pos, Tracks: names})
		changes = append(changes, begins(was, i, m)...)
	}
	return changes, nil
}

// begins says where a part begins on its other song, and how it is played
// there. A count or a time of the old song means nothing on another: the phrase
// it lies in stays.
func begins(was *aligned.Class, i int, m plan.PartMusic) []edit.Change {
	p := &was.Class.Parts[i]
	var out []edit.Change
	start := m.Start.Phrase
	if start == 0 && (p.Start.Time != nil || p.Start.Count > 0) {
		if tracks := was.Map.Parts[i].Tracks; len(tracks) > 0 {
			start = max(1, tracks[0].Phrase)
		}
	}
	if start > 0 && start != p.Start.Phrase {
		out = append(out, edit.SetStart{Part: p.Pos, Phrase: start})
	}
	if m.BPM > 0 && m.BPM != p.BPM {
		out = append(out, edit.SetBPM{Part: p.Pos, BPM: m.BPM})
	}
	if m.Taught != plan.AsHeard && m.Taught != p.Taught {
		out = append(out, edit.SetTaught{Part: p.Pos, Taught: m.Taught})
	}
	return out
}

// otherMusic is the music asked for.
type otherMusic struct {
	parts  map[int]plan.PartMusic // by the index of the part; other songs by their whole paths
	folder string                 // that holds them
}

func (o *relayOptions) otherMusic(s *streams, c *plan.Class) (otherMusic, error) {
	info, err := os.Stat(o.music)
	if err != nil {
		return otherMusic{}, told.Failed("", "%s: %s", o.music, told.Reason(err))
	}
	switch ext := strings.ToLower(filepath.Ext(o.music)); {
	case info.IsDir(), library.IsPlaylist(o.music):
		return o.songForSong(s, c, info.IsDir())
	case ext == ".yaml", ext == ".yml":
		return o.byPart(s, c)
	}
	return otherMusic{}, usage("it takes a folder, a playlist (.m3u8, .xspf) or a YAML file with songs for its parts",
		"%s is none of these", o.music)
}

// songForSong reads a folder or a playlist.
func (o *relayOptions) songForSong(s *streams, c *plan.Class, isFolder bool) (otherMusic, error) {
	var songs []string
	for _, in := range library.Inputs([]string{o.music}) {
		if in.Problem != "" {
			return otherMusic{}, told.Failed("", "%s: %s", in.Path, in.Problem)
		}
		path, err := filepath.Abs(in.Path)
		if err != nil {
			return otherMusic{}, err
		}
		songs = append(songs, path)
	}
	other := otherMusic{folder: commonFolder(songs)}
	if isFolder {
		other.folder, _ = filepath.Abs(o.music)
	}
	var used int
	other.parts, used = plan.SongForSong(c, songs)
	switch have := aligned.TrackNames(c); {
	case used < len(songs):
		s.say("%s has %s, the class %d: from %s on they are not used", o.music, say.Many(len(songs), "song"), len(have),
			filepath.Base(songs[used]))
	case used < len(have):
		s.say("%s has %s, the class %d: from %s on it keeps its own", o.music, say.Many(len(songs), "song"), len(have),
			have[used])
	}
	return other, nil
}

// byPart reads a list of music, or another class.
func (o *relayOptions) byPart(s *streams, c *plan.Class) (otherMusic, error) {
	var other otherMusic
	src, err := disk.ReadLimited(o.music, aligned.MostBytes)
	if err != nil {
		return other, told.Failed("", "%s: %s", o.music, told.Reason(err))
	}
	list, problems := plan.ParseMusic(o.music, src, c.Catalog)
	if err := problemsIn(s, o.music, problems); err != nil {
		return other, err
	}
	other.parts, problems = list.For(c)
	if err := problemsIn(s, o.music, problems); err != nil {
		return other, err
	}
	other.folder, err = filepath.Abs(aligned.MusicFolder(o.music, &plan.Class{Music: list.Music}))
	for _, m := range other.parts {
		for i := range m.Tracks {
			m.Tracks[i].File = filepath.Join(other.folder, filepath.FromSlash(m.Tracks[i].File))
		}
	}
	return other, err
}

// whole reports whether every song of the class is another one.
func (m otherMusic) whole(c *plan.Class) bool {
	for i := range c.Parts {
		p, other := m.parts[i]
		if !other || slices.ContainsFunc(p.Tracks, func(t plan.TrackRef) bool { return !filepath.IsAbs(t.File) }) {
			return false
		}
	}
	return true
}

// songHome is where the songs of the new class are looked for.
type songHome struct {
	music string // as the class file names it
	at    string // the same folder, by its whole path
}

// home finds the music folder of the new class: that of the new songs where
// they are all new, else the old one.
func (o *relayOptions) home(was *aligned.Class, other otherMusic) (songHome, error) {
	h := songHome{at: other.folder}
	if !other.whole(was.Class) {
		old, err := filepath.Abs(aligned.MusicFolder(o.path, was.Class))
		if err != nil {
			return h, err
		}
		h.at = old
		if filepath.IsAbs(filepath.FromSlash(was.Class.Music)) {
			h.music = cleanFolder(was.Class.Music)
			return h, nil
		}
	}
	beside, err := filepath.Abs(filepath.Dir(o.target()))
	if err != nil {
		return h, err
	}
	rel, err := filepath.Rel(beside, h.at)
	if err != nil { // on another drive
		rel = h.at
	}
	h.music = cleanFolder(rel)
	return h, nil
}

// name is a song as the new class file names it. What has no whole path is a
// song of the old class.
func (h songHome) name(file string) string {
	if !filepath.IsAbs(file) {
		return file
	}
	if rel, err := filepath.Rel(h.at, file); err == nil {
		return filepath.ToSlash(rel)
	}
	return filepath.ToSlash(file)
}

// cleanFolder is a folder as a class file has it: with a slash at its end, and
// the one beside the file named by a point.
func cleanFolder(folder string) string {
	return strings.TrimSuffix(filepath.ToSlash(filepath.Clean(filepath.FromSlash(folder))), "/") + "/"
}

// commonFolder is the nearest folder that holds all the files.
func commonFolder(files []string) string {
	if len(files) == 0 {
		return "."
	}
	folder := filepath.Dir(files[0])
	for _, f := range files[1:] {
		for !within(folder, f) && filepath.Dir(folder) != folder {
			folder = filepath.Dir(folder)
		}
	}
	return folder
}

// within reports whether a file lies below a folder.
func within(folder, file string) bool {
	rel, err := filepath.Rel(folder, file)
	return err == nil && filepath.IsLocal(rel)
}
