package main

import (
	"github.com/spf13/cobra"

	"onphrase/beat"
	"onphrase/beat/decode"
	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/library"
)

// listenFlags are the flags of every command that analyses music.
type listenFlags struct {
	decoder string
	noCache bool
}

func (l *listenFlags) register(cmd *cobra.Command) {
	cmd.Flags().StringVar(&l.decoder, "decoder", "auto",
		"`how` to decode: builtin, ffmpeg, or auto (builtin where it can)")
	cmd.Flags().BoolVar(&l.noCache, "no-cache", false, "analyse anew, and do not keep the result")
	complete(cmd, "decoder", "auto", "builtin", "ffmpeg")
}

// complete offers a flag's values to the shell.
func complete(cmd *cobra.Command, flag string, values ...string) {
	// The only error is that the flag does not exist, which tests would show.
	_ = cmd.RegisterFlagCompletionFunc(flag, cobra.FixedCompletions(values, cobra.ShellCompDirectiveNoFileComp))
}

// analyst builds the analyst the flags ask for.
func (l *listenFlags) analyst(s *streams) (*analyst, error) {
	mode, err := decode.ParseMode(l.decoder)
	if err != nil {
		return nil, usage("use --decoder builtin, ffmpeg or auto", "unknown decoder %q", l.decoder)
	}
	a := &library.Analyst{Mode: mode, Cache: library.OpenCache()}
	if l.noCache {
		a.Cache = &library.Cache{}
	}
	return &analyst{a, s}, nil
}

type analyzeOptions struct {
	listenFlags
	args    []string
	moves   string
	json    bool
	phrases bool
	picture string
	clicks  string
	force   bool
}

const analyzeLong = `Finds the counts, count 1 and the 32-count phrases of your music and prints
one line for each track:

  BPM      counts a minute, from slowest to fastest where they change; "or" is
           another reading, mostly half or double, that might be the one you
           teach; classes are taught at 95-165, and of what is slower or faster
           it is the double or the half
  trust    0-100, how far counts, count 1 and phrases can be relied on; the
           lowest of the three. Listen before you rely on anything low
  count 1  the time of the first count 1 of a phrase
  phrases  how many there are; "odd" of them are not 32 counts long
  suits    the parts of a class whose usual tempo it has

A folder stands for the audio files below it, a playlist (.m3u, .m3u8, .xspf)
for its tracks. MP3, WAV and FLAC need nothing else; other formats need ffmpeg.
Results are kept in your cache folder until the file changes. A file that cannot
be analysed says why and does not stop the others; the exit code is then 1.

--picture draws every track: its phrases, numbered, each as long as it has
counts, with the time of its count 1. --clicks writes it as WAV with a click on
every count, a higher one on count 1 and the highest where a phrase starts, to
hear whether that is right. What is not, 'onphrase correct' sets.`

func newAnalyzeCmd(s *streams) *cobra.Command {
	o := &analyzeOptions{}
	cmd := &cobra.Command{
		Use:   "analyze FILE|FOLDER|PLAYLIST...",
		Short: "Show tempo, counts and phrases of your music",
		Long:  analyzeLong,
		Example: `  onphrase analyze music/
  onphrase analyze --phrases "music/slow ferry.mp3"
  onphrase analyze saturday.m3u8 --json > saturday.json`,
		Args: takes(1, -1, "a file, folder or playlist"),
		RunE: func(cmd *cobra.Command, args []string) error {
			o.args = args
			if err := oneOf(cmd, "json", "phrases"); err != nil {
				return err
			}
			return runAnalyze(cmd, s, o)
		},
	}
	o.register(cmd)
	registerMoves(cmd, &o.moves)
	cmd.Flags().BoolVar(&o.json, "json", false, "write all that was found as JSON (onphrase.analysis/1)")
	cmd.Flags().BoolVar(&o.phrases, "phrases", false, "list the phrases of every track")
	cmd.Flags().StringVar(&o.picture, "picture", "", "draw each track into this `DIR`, as SVG")
	cmd.Flags().StringVar(&o.clicks, "clicks", "", "write each track with clicks on its counts into this `DIR`, as WAV")
	cmd.Flags().BoolVar(&o.force, "force", false, "replace pictures and clicks that are there already")
	return cmd
}

func runAnalyze(cmd *cobra.Command, s *streams, o *analyzeOptions) error {
	a, err := o.analyst(s)
	if err != nil {
		return err
	}
	known, err := catalog(s, o.moves)
	if err != nil {
		return err
	}
	list := library.Inputs(o.args)
	results, err := a.all(cmd.Context(), list)
	if err != nil {
		return err
	}
	tracks := make([]beat.Track, len(results))
	bad := 0
	for i, r := range results {
		tracks[i] = r.Track
		if r.Track.Problem != "" {
			bad++
		}
		a.tell(r)
	}
	switch {
	case o.json:
		err = library.WriteAnalysis(s.out, tracks)
	case o.phrases:
		err = writePhrases(s.out, tracks)
	default:
		err = libraryTable(tracks, known).write(s.out, s.width)
	}
	files := trackWriter{a, tracks, o.force, o.sources(list)}
	if err == nil && o.picture != "" {
		err = files.drawAll(o.picture)
	}
	if err == nil && o.clicks != "" {
		err = files.clickAll(o.clicks)
	}
	if hint := doubtful(tracks); hint != "" {
		s.say("hint: %s", hint)
	}
	if err == nil && bad > 0 {
		return said(exitFailed)
	}
	return err
}

// sources are the music asked for, what corrects it and what it was named by.
func (o *analyzeOptions) sources(list []library.Input) disk.Sources {
	var music []string
	for _, in := range list {
		music = append(music, in.Path)
	}
	return append(append(library.SourcesOf(music), o.args...), movesFile(o.moves))
}
