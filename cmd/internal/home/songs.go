package home

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"onphrase/beat"
	"onphrase/beat/tap"
	"onphrase/cmd/internal/aligned"
	"onphrase/cmd/internal/desk"
	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/library"
	"onphrase/plan"
)

// songFiles lists the songs below a folder: files of sound, and those that were
// tapped in.
func songFiles(folder string) ([]string, error) {
	files, err := library.AudioFiles(folder)
	if err != nil {
		return nil, err
	}
	tapped, err := filepath.Glob(filepath.Join(folder, "*"+tap.Ending))
	if err != nil {
		return nil, err
	}
	for _, t := range tapped {
		files = append(files, filepath.Base(t))
	}
	return files, nil
}

// tappedTrack is a song without a file of sound.
func tappedTrack(path string) (beat.Track, error) {
	src, err := disk.ReadLimited(path, library.CorrectionLimit)
	if err != nil {
		return beat.Track{}, err
	}
	song, err := tap.ParseSong(src)
	if err != nil {
		return beat.Track{}, err
	}
	return song.Track(path), nil
}

// recentFile is where it is kept what was open last.
func recentFile() string { return disk.OwnFile("", "recent.json") }

// mostRecent is how many are kept.
const mostRecent = 8

// Recent lists what was open last and is still there. What cannot be read
// counts as nothing: it is a convenience.
func (h *Home) Recent() []desk.Recent {
	var all []desk.Recent
	src, err := os.ReadFile(recentFile())
	if err != nil || json.Unmarshal(src, &all) != nil {
		return nil
	}
	return slices.DeleteFunc(all, func(r desk.Recent) bool {
		_, err := os.Stat(r.Path)
		return err != nil
	})
}

// Opened keeps that something was open. It is no loss where it cannot.
func (h *Home) Opened(r desk.Recent) {
	r.Where = filepath.Base(filepath.Dir(r.Path))
	all := slices.DeleteFunc(h.Recent(), func(was desk.Recent) bool { return was.Path == r.Path })
	all = append([]desk.Recent{r}, all...)
	src, err := json.MarshalIndent(all[:min(len(all), mostRecent)], "", "  ")
	if err == nil && os.MkdirAll(filepath.Dir(recentFile()), 0o755) == nil {
		_ = disk.WriteWhole(recentFile(), src)
	}
}

// classesSeen remembers the classes round a folder for a moment: every song
// that was heard asks for them.
type classesSeen struct {
	folder string
	when   time.Time
	all    []desk.ClassFile
}

// seenFor is how long they are remembered.
const seenFor = 3 * time.Second

// Classes lists the classes in a folder of songs, in the folder above it, and
// beside it.
func (h *Home) Classes(folder string) []desk.ClassFile {
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.classes.folder != folder || time.Since(h.classes.when) > seenFor {
		h.classes = classesSeen{folder, time.Now(), classesRound(folder)}
	}
	return slices.Clone(h.classes.all)
}

func classesRound(folder string) []desk.ClassFile {
	above := filepath.Dir(folder)
	var found []desk.ClassFile
	for _, pattern := range []string{filepath.Join(folder, "*"), filepath.Join(above, "*"),
		filepath.Join(above, "*", "*")} {
		for _, ending := range []string{".yaml", ".yml"} {
			files, err := filepath.Glob(pattern + ending)
			if err != nil {
				continue // a folder whose name looks like a pattern
			}
			for _, f := range files {
				seen := slices.ContainsFunc(found, func(c desk.ClassFile) bool { return c.Path == f })
				if c, ok := classFile(f); ok && !seen {
					found = append(found, c)
				}
			}
		}
	}
	return found
}

// isClass tells whether a file looks like a class.
func isClass(path string) bool {
	_, ok := readClass(path)
	return ok
}

// readClass is the file of what looks like a class.
func readClass(path string) (src []byte, ok bool) {
	ext := strings.ToLower(filepath.Ext(path))
	if ext != ".yaml" && ext != ".yml" {
		return nil, false
	}
	src, err := disk.ReadLimited(path, aligned.MostBytes)
	text := string(src)
	return src, err == nil && strings.Contains(text, "onphrase:") && strings.Contains(text, "parts:")
}

// classFile reads of a class what the songs want to know: its name, its date,
// which songs it plays.
func classFile(path string) (desk.ClassFile, bool) {
	src, ok := readClass(path)
	info, err := os.Stat(path)
	if !ok || err != nil {
		return desk.ClassFile{}, false
	}
	class, _ := plan.Parse(path, src) // a class with faults plays songs, too
	if class == nil {
		return desk.ClassFile{}, false
	}
	c := desk.ClassFile{Path: path, Name: class.Name, When: info.ModTime()}
	for _, name := range aligned.TrackNames(class) {
		c.Songs = append(c.Songs, filepath.Join(aligned.MusicFolder(path, class), filepath.FromSlash(name)))
	}
	return c, true
}
