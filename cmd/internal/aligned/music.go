package aligned

import (
	"os"
	"path/filepath"

	"golang.org/x/text/unicode/norm"

	"onphrase/align"
	"onphrase/cmd/internal/library"
	"onphrase/plan"
)

// MusicFolder is where a class's tracks lie.
func MusicFolder(classPath string, class *plan.Class) string {
	folder := filepath.FromSlash(class.Music)
	if filepath.IsAbs(folder) {
		return folder
	}
	return filepath.Join(filepath.Dir(classPath), folder)
}

// FindMusic finds the class's tracks, or says what is missing: the folder, or
// some of them.
func FindMusic(folder string, class *plan.Class) (Files, []plan.Problem) {
	if isFolder(folder) {
		files := trackFiles(folder, class)
		return files, class.MissingTracks(files.names())
	}
	var beside []string
	parent := filepath.Dir(filepath.Clean(folder))
	entries, _ := os.ReadDir(parent) // without any, nothing is near
	for _, e := range entries {
		if isFolder(filepath.Join(parent, e.Name())) {
			beside = append(beside, e.Name())
		}
	}
	return nil, []plan.Problem{class.MissingFolder(beside)}
}

func isFolder(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.IsDir()
}

// Files are the files of a class's music folder: the path of each by its name
// as the class file spells it.
type Files map[string]string

func (f Files) names() []string {
	names := make([]string, 0, len(f))
	for name := range f {
		names = append(names, name)
	}
	return names
}

// trackFiles finds the class's tracks. The folder is listed only when one of
// them is not where it should be: it may be spelt in another Unicode form, or
// the nearest name may help.
func trackFiles(folder string, class *plan.Class) Files {
	files := Files{}
	missing := false
	for _, name := range TrackNames(class) {
		path := filepath.Join(folder, filepath.FromSlash(name))
		if info, err := os.Stat(path); err == nil && !info.IsDir() {
			files[name] = path
		} else {
			missing = true
		}
	}
	if !missing {
		return files
	}
	have, err := library.AudioFiles(folder)
	if err != nil {
		return files
	}
	for _, file := range have {
		files[filepath.ToSlash(file)] = filepath.Join(folder, file)
	}
	for _, name := range TrackNames(class) {
		for _, file := range have {
			if norm.NFC.String(name) == norm.NFC.String(filepath.ToSlash(file)) {
				files[name] = filepath.Join(folder, file)
			}
		}
	}
	return files
}

// TrackNames lists the tracks of a class, each once.
func TrackNames(class *plan.Class) []string {
	var names []string
	seen := map[string]bool{}
	for _, part := range class.Parts {
		for _, t := range part.Tracks {
			if !seen[t.File] {
				seen[t.File] = true
				names = append(names, t.File)
			}
		}
	}
	return names
}

// Attach tells a count map where the files of its tracks are.
func (f Files) Attach(m *align.CountMap) *align.CountMap {
	EachTrack(m, func(t *align.Music) { t.Path = f[t.File] })
	return m
}

// EachTrack does something to every track of a count map.
func EachTrack(m *align.CountMap, do func(*align.Music)) {
	for i := range m.Parts {
		for j := range m.Parts[i].Tracks {
			do(&m.Parts[i].Tracks[j])
		}
	}
}
