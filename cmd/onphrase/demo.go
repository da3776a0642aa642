package main

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"onphrase/align/export"
	"onphrase/cmd/internal/demo"
)

const demoLong = `Writes a class and its music (our own, made for this demo) into a folder, by
default ` + demo.Dir + `, analyses the music, lays the class on it, and prints the
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
			dir := demo.Dir
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
	written, err := demo.Write(dir)
	if err != nil {
		return err
	}
	class := filepath.Join(dir, demo.ClassName)
	m, err := o.build(cmd.Context(), s, class)
	if err != nil {
		return err
	}
	if err := export.Text(s.out, m, s.style(class)); err != nil {
		return err
	}
	var b strings.Builder
	fmt.Fprintf(&b, "\nFiles (%d new):\n", written.Fresh)
	for _, name := range written.Names {
		fmt.Fprintf(&b, "  %s\n", name)
	}
	self, music := programName(os.Args[0]), quoted(filepath.Join(dir, "music"))
	fmt.Fprintf(&b, "\nNext:\n  %s analyze %s\n  %[1]s check %[3]s\n  %[1]s map %[3]s -o count-map.csv\n", self, music,
		quoted(class))
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
