package main

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"
	"golang.org/x/text/unicode/norm"

	"onphrase/align"
	"onphrase/beat"
	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/library"
	"onphrase/cmd/internal/told"
	"onphrase/plan"
)

// classLimit is the largest class or moves file read [bytes].
const classLimit = 4 << 20

// classFlags are the flags of every command that lays a class on its music.
type classFlags struct {
	listenFlags
	moves string
}

func (c *classFlags) register(cmd *cobra.Command) {
	c.listenFlags.register(cmd)
	registerMoves(cmd, &c.moves)
}

// classFiles offers class files to the shell.
var classFiles = cobra.FixedCompletions([]string{"yaml", "yml"}, cobra.ShellCompDirectiveFilterFileExt)

// laid is a class on its music, with the files it came from.
type laid struct {
	path   string // of the class file
	src    []byte
	class  *plan.Class
	files  found
	tracks map[string]beat.Track
	m      *align.CountMap
}

// build is lay for those who need the count map only.
func (c *classFlags) build(ctx context.Context, s *streams, path string) (*align.CountMap, error) {
	l, err := c.lay(ctx, s, path)
	if err != nil {
		return nil, err
	}
	return l.m, nil
}

// lay reads a class file, analyses its music and lays the one on the other.
// All that is wrong with the file is reported before the music is touched.
func (c *classFlags) lay(ctx context.Context, s *streams, path string) (*laid, error) {
	src, err := disk.ReadLimited(path, classLimit)
	if err != nil {
		return nil, told.Failed(classHint(err), "%s: %s", path, told.Reason(err))
	}
	return c.layText(ctx, s, path, src)
}

// layText is lay for a class file that is, or would be, at a path.
func (c *classFlags) layText(ctx context.Context, s *streams, path string, src []byte) (*laid, error) {
	listener, err := c.analyst(s)
	if err != nil {
		return nil, err
	}
	known, err := catalog(s, c.moves)
	if err != nil {
		return nil, err
	}
	class, problems := plan.ParseWith(path, src, known)
	files, missing := findMusic(musicFolder(path, class), class)
	problems = append(problems, missing...)
	if err := problemsIn(s, path, problems); err != nil {
		return nil, err
	}
	tracks, err := listener.tracks(ctx, class, files)
	if err != nil {
		return nil, err
	}
	return &laid{path, src, class, files, tracks, files.attach(align.Build(class, tracks))}, nil
}

func classHint(err error) string {
	if errors.Is(err, fs.ErrNotExist) {
		return "'onphrase demo' writes a class to start from"
	}
	return ""
}

// problemsIn reports the problems of a file, all at once.
func problemsIn(s *streams, path string, problems []plan.Problem) error {
	if len(problems) == 0 {
		return nil
	}
	for _, p := range problems {
		s.say("%s", p.In(path))
	}
	return said(exitFailed)
}

// musicFolder is where a class's tracks lie.
func musicFolder(classPath string, class *plan.Class) string {
	folder := filepath.FromSlash(class.Music)
	if filepath.IsAbs(folder) {
		return folder
	}
	return filepath.Join(filepath.Dir(classPath), folder)
}

// findMusic finds the class's tracks, or says what is missing: the folder, or
// some of them.
func findMusic(folder string, class *plan.Class) (found, []plan.Problem) {
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

// found are the files of a class's music folder: the path of each by its name
// as the class file spells it.
type found map[string]string

func (f found) names() []string {
	names := make([]string, 0, len(f))
	for name := range f {
		names = append(names, name)
	}
	return names
}

// trackFiles finds the class's tracks. The folder is listed only when one of
// them is not where it should be: it may be spelt in another Unicode form, or
// the nearest name may help.
func trackFiles(folder string, class *plan.Class) found {
	files := found{}
	missing := false
	for _, name := range trackNames(class) {
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
	for _, name := range trackNames(class) {
		for _, file := range have {
			if norm.NFC.String(name) == norm.NFC.String(filepath.ToSlash(file)) {
				files[name] = filepath.Join(folder, file)
			}
		}
	}
	return files
}

// trackNames lists the tracks of a class, each once.
func trackNames(class *plan.Class) []string {
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

// tracks analyses the music of a class. What has no result goes along with its
// problem: the rest of the class can be laid all the same.
func (a *analyst) tracks(ctx context.Context, class *plan.Class, files found) (map[string]beat.Track, error) {
	names := trackNames(class)
	list := make([]library.Input, len(names))
	for i, name := range names {
		list[i] = library.Input{Path: files[name]}
	}
	results, err := a.all(ctx, list)
	if err != nil {
		return nil, err
	}
	tracks := map[string]beat.Track{}
	for i, name := range names {
		a.tell(results[i])
		t := results[i].Track
		t.File = name
		tracks[name] = t
	}
	return tracks, nil
}
