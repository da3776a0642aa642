package main

import (
	"context"
	"errors"
	"io/fs"

	"github.com/spf13/cobra"

	"onphrase/align"
	"onphrase/beat"
	"onphrase/cmd/internal/aligned"
	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/library"
	"onphrase/cmd/internal/told"
	"onphrase/plan"
)

// classFlags are the flags of every command that aligns a class to its music.
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

// build is align for those who need the count map only.
func (c *classFlags) build(ctx context.Context, s *streams, path string) (*align.CountMap, error) {
	l, err := c.align(ctx, s, path)
	if err != nil {
		return nil, err
	}
	return l.Map, nil
}

// align reads a class file, listens to its music and aligns the one to the other.
// All that is wrong with the file is reported before the music is touched.
func (c *classFlags) align(ctx context.Context, s *streams, path string) (*aligned.Class, error) {
	src, err := disk.ReadLimited(path, aligned.MostBytes)
	if err != nil {
		return nil, told.Failed(classHint(err), "%s: %s", path, told.Reason(err))
	}
	return c.alignText(ctx, s, path, src)
}

// alignText is align for a class file that is, or would be, at a path.
func (c *classFlags) alignText(ctx context.Context, s *streams, path string, src []byte) (*aligned.Class, error) {
	listener, err := c.analyst(s)
	if err != nil {
		return nil, err
	}
	known, err := catalog(s, c.moves)
	if err != nil {
		return nil, err
	}
	class, problems := plan.ParseWith(path, src, known)
	files, missing := aligned.FindMusic(aligned.MusicFolder(path, class), class)
	problems = append(problems, missing...)
	problems = append(problems, class.UnknownFindings(checkCodes())...)
	if err := problemsIn(s, path, problems); err != nil {
		return nil, err
	}
	tracks, err := listener.tracks(ctx, class, files)
	if err != nil {
		return nil, err
	}
	return &aligned.Class{
		Path: path, Src: src, Class: class, Files: files, Tracks: tracks, Map: files.Attach(align.Build(class, tracks)),
	}, nil
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

// tracks analyses the music of a class. What has no result goes along with its
// problem: the rest of the class can be aligned all the same.
func (a *analyst) tracks(ctx context.Context, class *plan.Class, files aligned.Files) (map[string]beat.Track, error) {
	names := aligned.TrackNames(class)
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
