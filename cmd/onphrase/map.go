package main

import (
	"bytes"
	"strings"

	"github.com/spf13/cobra"

	"onphrase/align/export"
	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/told"
	"onphrase/plan/say"
)

type mapOptions struct {
	classFlags
	path   string
	format string
	out    string
	track  string
	force  bool
}

var mapLong = `Lays the class on its music and writes the count map: for every item its phrase
and count, the time in the track and in the class, when to cue it, and the
findings. The format goes by -f, else by the ending of the file named with -o,
else it is text:

` + formatLines() + `
` + say.And(timedNames()) + ` go along with sound: they are on the
timeline of the class, for its video or its rehearsal, or with --track on that of
one song as recorded, for a music player or an editor. The running orders, m3u8
and xspf, name the music from where the file is written.

The file is written whole or not at all; one that is there already is left as
it is unless --force is given, and what the map is made from is never replaced. The
exit code is 0 also when there are findings: 'onphrase check' is the command that
tells by its code.`

func newMapCmd(s *streams) *cobra.Command {
	o := &mapOptions{}
	cmd := &cobra.Command{
		Use:   "map CLASS",
		Short: "Write the count map of a class",
		Long:  mapLong,
		Example: `  onphrase map class.yaml
  onphrase map class.yaml -o saturday.csv
  onphrase map class.yaml -f markdown > saturday.md
  onphrase map class.yaml -o saturday.m3u8
  onphrase map class.yaml --track slow-ferry.mp3 -o music/slow-ferry.lrc`,
		Args: takes(1, 1, "a class file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			o.path = args[0]
			return runMap(cmd, s, o)
		},
	}
	o.register(cmd)
	cmd.Flags().StringVarP(&o.format, "format", "f", "", "the `format`: "+strings.Join(formatNames(), ", "))
	cmd.Flags().StringVarP(&o.out, "output", "o", "-", "the `FILE` to write; - is standard output")
	cmd.Flags().StringVar(&o.track, "track", "", "write what is on one `TRACK` of the class, on its own time")
	cmd.Flags().BoolVar(&o.force, "force", false, "replace a file that is there already")
	cmd.ValidArgsFunction = classFiles
	complete(cmd, "format", formatNames()...)
	return cmd
}

func runMap(cmd *cobra.Command, s *streams, o *mapOptions) error {
	format, err := o.pick()
	if err != nil {
		return err
	}
	if o.track != "" && !format.Timed {
		return usage("use it with one of "+strings.Join(timedNames(), ", "), "--track: %s is about the whole class",
			format.Name)
	}
	l, err := o.align(cmd.Context(), s, o.path)
	if err != nil {
		return err
	}
	m := l.Map
	linkFrom(m, o.out)
	if o.track != "" {
		if m, err = export.OnTrack(m, o.track); err != nil {
			return told.Failed("", "--track: %s", err)
		}
	}
	if o.out == "-" {
		return s.write(m, format, o.path)
	}
	var b bytes.Buffer
	if err := format.Write(&b, m); err != nil {
		return err
	}
	return disk.WriteFile(o.out, o.force, o.sources(l), b.Bytes())
}
