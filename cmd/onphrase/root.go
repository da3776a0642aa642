package main

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
)

// run is the whole program but for the process around it.
func run(ctx context.Context, args []string, s *streams) exitCode {
	root := newRootCmd(s)
	root.SetArgs(args)
	err := root.ExecuteContext(ctx)
	if ctx.Err() != nil && (err == nil || errors.Is(err, context.Canceled)) {
		s.say("interrupted")
		return exitFailed
	}
	if err == nil {
		return exitClean
	}
	f := asFailure(err)
	s.report(f)
	return f.code
}

const rootLong = `onphrase aligns a class to your own music: it finds the counts and 32-count
phrases of your files, lays every move, set and interval of the class on them,
and flags what will not fit or is likely hard to control at that tempo.

Limits are advice drawn from the sources named. People differ; the
instructor's qualification, the participants' clearance and local rules decide.`

const rootExample = `  onphrase demo                      write a class with its music and run the job on it
  onphrase analyze music/            what is in your music
  onphrase check class.yaml          what to fix before you teach it
  onphrase map class.yaml -o map.csv the count map`

func newRootCmd(s *streams) *cobra.Command {
	root := &cobra.Command{
		Use:           "onphrase",
		Short:         "Align a class to your own music",
		Long:          rootLong,
		Example:       rootExample,
		Version:       version(),
		SilenceErrors: true,
		SilenceUsage:  true,
		Args:          knownCommand,
		RunE: func(cmd *cobra.Command, _ []string) error {
			return runDesk(cmd.Context(), s, &deskOptions{listenFlags: listenFlags{decoder: "auto"}, port: usualPort,
				open: openBrowser}, "", false)
		},
	}
	// By itself it opens the desk, also by a double click; its help is about the
	// commands.
	cobra.MousetrapHelpText = ""
	root.SetUsageTemplate(strings.Replace(root.UsageTemplate(), "{{if .Runnable}}", "{{if and .Runnable .HasParent}}", 1))
	root.SuggestionsMinimumDistance = 2 // slips of the keyboard
	root.SetIn(s.in)
	root.SetOut(s.out)
	root.SetErr(s.err)
	root.SetVersionTemplate("{{.Version}}\n")
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error {
		return usage(helpOf(cmd), "%s", flagProblem(err))
	})
	addGroups(root, grouped(s))
	root.AddCommand(newTopicCmds(s)...)
	root.InitDefaultHelpCmd()
	if help, _, err := root.Find([]string{"help"}); err == nil {
		help.Args = knownTopic
	}
	return root
}

// knownCommand refuses a verb that does not exist and names the nearest.
func knownCommand(cmd *cobra.Command, args []string) error {
	if len(args) == 0 {
		return nil
	}
	return usage(nearest(cmd, args[0]), "unknown command %q", args[0])
}

// knownTopic refuses help about what does not exist.
func knownTopic(cmd *cobra.Command, args []string) error {
	about, rest, err := cmd.Root().Find(args)
	if err != nil || len(rest) == 0 {
		return err
	}
	return usage(nearest(about, rest[0]), "unknown help topic %q", strings.Join(args, " "))
}

// nearest is a hint to the commands below one that are nearest to a word.
func nearest(cmd *cobra.Command, word string) string {
	if near := cmd.SuggestionsFor(word); len(near) > 0 {
		return "did you mean " + strings.Join(near, " or ") + "?"
	}
	return helpOf(cmd)
}

// takes checks the number of arguments; what names them as the help does.
func takes(least, most int, what string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		switch {
		case len(args) < least:
			return usage(helpOf(cmd), "%s: %s is missing", cmd.Name(), what)
		case most >= 0 && len(args) > most:
			return usage(helpOf(cmd), "%s: unexpected argument %q", cmd.Name(), args[most])
		}
		return nil
	}
}

// oneOf refuses flags that exclude each other.
func oneOf(cmd *cobra.Command, flags ...string) error {
	var given []string
	for _, f := range flags {
		if cmd.Flags().Changed(f) {
			given = append(given, "--"+f)
		}
	}
	if len(given) > 1 {
		return usage("choose one of them", "%s exclude each other", strings.Join(given, " and "))
	}
	return nil
}

func helpOf(cmd *cobra.Command) string {
	return fmt.Sprintf("run '%s --help'", cmd.CommandPath())
}
