package main

import (
	"archive/zip"
	"context"
	"fmt"
	"math"
	"os"
	"path"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"onphrase/cmd/internal/parcel"
	"onphrase/cmd/internal/told"
	"onphrase/plan/say"
)

type unpackOptions struct {
	listenFlags
	file, dir, music string
}

const unpackLong = `Unpacks what 'onphrase pack' made into a folder, by default one named after the
package, and reports which of its songs are missing. A song is known by its
content, whatever its name. A file that has only its name is listened to: it may
be the same music, or an edition that begins earlier or later.

Files that are there already and differ are never replaced, and nothing is
written outside of the folder. The exit code is 3 when a song is missing,
elsewhere or another edition.`

func newUnpackCmd(s *streams) *cobra.Command {
	o := &unpackOptions{}
	cmd := &cobra.Command{
		Use:   "unpack PACKAGE [DIR]",
		Short: "Unpack a class and say which songs are missing",
		Long:  unpackLong,
		Example: `  onphrase unpack harbour.zip
  onphrase unpack harbour.zip saturday --music ~/Music`,
		Args: takes(1, 2, "a package"),
		RunE: func(cmd *cobra.Command, args []string) error {
			o.file = args[0]
			o.dir = strings.TrimSuffix(filepath.Base(o.file), filepath.Ext(o.file))
			if len(args) > 1 {
				o.dir = args[1]
			}
			return runUnpack(cmd.Context(), s, o)
		},
	}
	o.register(cmd)
	cmd.Flags().StringVar(&o.music, "music", "", "look for the songs in this `FOLDER` of yours, too")
	cmd.ValidArgsFunction = cobra.FixedCompletions([]string{"zip"}, cobra.ShellCompDirectiveFilterFileExt)
	return cmd
}

func runUnpack(ctx context.Context, s *streams, o *unpackOptions) error {
	z, err := zip.OpenReader(o.file)
	if err != nil {
		return told.Failed("'onphrase pack' makes packages", "%s: %s", o.file, told.Reason(err))
	}
	defer z.Close()
	files, err := parcel.Read(&z.Reader)
	if err != nil {
		return told.Failed("nothing was written", "%s: %s", o.file, err)
	}
	list, err := parcel.List(files)
	if err != nil {
		return told.Failed("nothing was written; 'onphrase pack' makes packages", "%s: %s", o.file, err)
	}
	heard, err := parcel.Analysis(files)
	if err != nil {
		return told.Failed("nothing was written", "%s: %s", o.file, err)
	}
	listener, err := o.analyst(s)
	if err != nil {
		return err
	}
	if err := os.MkdirAll(o.dir, 0o755); err != nil {
		return told.Failed("", "%s: %s", o.dir, told.Reason(err))
	}
	root, err := os.OpenRoot(o.dir)
	if err != nil {
		return told.Failed("", "%s: %s", o.dir, told.Reason(err))
	}
	defer root.Close()
	fresh, err := parcel.Unpack(root, files)
	if err != nil {
		return told.Failed("unpack into another folder: onphrase unpack PACKAGE DIR", "%s", err)
	}
	s.say("%s: %s, %d new", o.dir, say.Many(len(files), "file"), fresh)
	songs, err := parcel.Find(list, o.dir, o.music)
	if err != nil {
		return err
	}
	if err := parcel.Compare(ctx, songs, heard, listener.all); err != nil {
		return err
	}
	return report(s, list, songs, o)
}

// report says of every song whether it is there.
func report(s *streams, list *parcel.Manifest, songs []parcel.Whereabouts, o *unpackOptions) error {
	t := &table{cols: []column{{head: "song", least: leastName}, {head: "is"}, {head: "what to do", least: 30}}}
	all := true
	for _, w := range songs {
		all = all && w.There()
		state, help := standing(w, filepath.Join(o.dir, filepath.FromSlash(path.Join(list.Music, w.File))))
		t.add(w.File, state, help)
	}
	if len(songs) > 0 {
		if err := t.write(s.out, s.width); err != nil {
			return err
		}
	}
	fmt.Fprintf(s.out, "\nOpen %s in a browser; read %s first.\n", filepath.Join(o.dir, parcel.PageName),
		filepath.Join(o.dir, parcel.StartName))
	if !all {
		return said(exitFindings)
	}
	return nil
}

// standing says how a song stands and what to do about it.
func standing(w parcel.Whereabouts, home string) (state, help string) {
	switch {
	case w.Same && w.Home:
		return "there", ""
	case w.Same:
		return "elsewhere", fmt.Sprintf("copy %s to %s", w.At, home)
	case w.Fits() && w.Home:
		return "there", "another file: its counts and phrases fall in the same places"
	case w.Fits():
		return "elsewhere", fmt.Sprintf("copy %s to %s (another file: its counts and phrases fall in the same places)", w.At,
			home)
	case w.Alike:
		when := "later"
		if w.Later < 0 {
			when = "earlier"
		}
		return "other edition", fmt.Sprintf("%s: its counts and phrases come %.2f s %s; put it there as %s and run onphrase map again", w.At, math.Abs(w.Later), when, home)
	case w.At != "":
		return "other music?", fmt.Sprintf("%s has the name, but other counts; listen before you teach to it", w.At)
	}
	return "missing", fmt.Sprintf("%s, as %s", parcel.SongLine(w.Song), home)
}
