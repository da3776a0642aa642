package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"onphrase/align/export"
	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/told"
	"onphrase/samples"
)

// demoDir is where the demo goes when nobody says where.
const demoDir = "onphrase-demo"

// demoClass is the name of the class file in the demo.
const demoClass = "class.yaml"

const demoLong = `Writes a class and its music (our own, made for this demo) into a folder, by
default ` + demoDir + `, analyses the music, lays the class on it, and prints the
count map and the findings.

Files that are there already and differ are never replaced. The class has faults
in it on purpose, so that there are findings to look at; the exit code is 0 all
the same.`

func newDemoCmd(s *streams) *cobra.Command {
	o := &classFlags{}
	cmd := &cobra.Command{
		Use:   "demo [DIR]",
		Short: "Write a class with its music and run the whole job on it",
		Long:  demoLong,
		Args:  takes(0, 1, "a folder"),
		RunE: func(cmd *cobra.Command, args []string) error {
			dir := demoDir
			if len(args) > 0 {
				dir = args[0]
			}
			return runDemo(cmd, s, o, dir)
		},
	}
	o.register(cmd)
	cmd.ValidArgsFunction = cobra.FixedCompletions(nil, cobra.ShellCompDirectiveFilterDirs)
	return cmd
}

func runDemo(cmd *cobra.Command, s *streams, o *classFlags, dir string) error {
	written, err := writeDemo(dir)
	if err != nil {
		return err
	}
	class := filepath.Join(dir, demoClass)
	m, err := o.build(cmd.Context(), s, class)
	if err != nil {
		return err
	}
	if err := export.Text(s.out, m, s.style(class)); err != nil {
		return err
	}
	var b strings.Builder
	fmt.Fprintf(&b, "\nFiles (%d new):\n", written.fresh)
	for _, name := range written.names {
		fmt.Fprintf(&b, "  %s\n", name)
	}
	self, music := programName(os.Args[0]), quoted(filepath.Join(dir, "music"))
	fmt.Fprintf(&b, "\nNext:\n  %s analyze %s\n  %[1]s check %[3]s\n  %[1]s map %[3]s -o count-map.csv\n", self, music, quoted(class))
	fmt.Fprintf(&b, "Then open %s in an editor, change it, and check it again.\n", class)
	_, err = s.out.Write([]byte(b.String()))
	return err
}

// programName is what the user types to start this program, who may have no
// binary of it but only 'go run'.
func programName(started string) string {
	if strings.Contains(filepath.ToSlash(started), "/go-build") {
		return "go run ./cmd/onphrase"
	}
	return "onphrase"
}

// quoted is a path as a shell takes it.
func quoted(path string) string {
	if strings.ContainsAny(path, " '\"$&()*?;<>|`\\") {
		return "'" + strings.ReplaceAll(path, "'", `'\''`) + "'"
	}
	return path
}

// demoFiles are the files of the demo, and how many of them are new.
type demoFiles struct {
	names []string
	fresh int
}

// writeDemo copies the demo into dir. It looks at every file before it writes
// the first: where one differs from the demo's, nothing is written.
func writeDemo(dir string) (demoFiles, error) {
	demo := samples.Demo()
	var files demoFiles
	content := map[string][]byte{}
	var differ []string
	err := fs.WalkDir(demo, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		src, err := fs.ReadFile(demo, name)
		if err != nil {
			return err
		}
		dst := filepath.Join(dir, filepath.FromSlash(name))
		files.names = append(files.names, dst)
		old, err := os.ReadFile(dst)
		switch {
		case errors.Is(err, fs.ErrNotExist):
			content[dst] = src
		case err != nil:
			return err
		case !bytes.Equal(old, src):
			differ = append(differ, dst)
		}
		return nil
	})
	if err != nil {
		return files, told.Failed("choose another folder: onphrase demo DIR", "cannot write the demo into %s: %s", dir, told.Reason(err))
	}
	if len(differ) > 0 {
		return files, told.Failed("choose another folder (onphrase demo DIR), or move your own files away",
			"%s would be replaced by the demo's; nothing was written", strings.Join(differ, ", "))
	}
	for _, dst := range files.names {
		src, ok := content[dst]
		if !ok {
			continue
		}
		err := os.MkdirAll(filepath.Dir(dst), 0o755)
		if err == nil {
			err = disk.WriteWhole(dst, src)
		}
		if err != nil {
			return files, told.Failed("choose another folder: onphrase demo DIR", "cannot write %s: %s", dst, told.Reason(err))
		}
		files.fresh++
	}
	return files, nil
}
