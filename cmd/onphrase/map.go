package main

import (
	"bytes"
	"strings"

	"github.com/spf13/cobra"
)

type mapOptions struct {
	classFlags
	path   string
	format string
	out    string
	force  bool
}

const mapLong = `Lays the class on its music and writes the count map: for every item its phrase
and count, the time in the track and in the class, when to cue it, and the
findings. The format goes by -f, else by the ending of the file named with -o,
else it is text.

The file is written whole or not at all; one that is there already is left as
it is unless --force is given. The exit code is 0 also when there are findings:
'onphrase check' is the command that tells by its code.`

func newMapCmd(s *streams) *cobra.Command {
	o := &mapOptions{}
	cmd := &cobra.Command{
		Use:   "map CLASS",
		Short: "Write the count map of a class",
		Long:  mapLong,
		Example: `  onphrase map class.yaml
  onphrase map class.yaml -o saturday.csv
  onphrase map class.yaml -f markdown > saturday.md`,
		Args: takes(1, 1, "a class file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			o.path = args[0]
			return runMap(cmd, s, o)
		},
	}
	o.register(cmd)
	cmd.Flags().StringVarP(&o.format, "format", "f", "", "the `format`: "+strings.Join(formatNames(), ", "))
	cmd.Flags().StringVarP(&o.out, "output", "o", "-", "the `FILE` to write; - is standard output")
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
	m, err := o.build(cmd.Context(), s, o.path)
	if err != nil {
		return err
	}
	linkFrom(m, o.out)
	if o.out == "-" {
		return s.write(m, format, o.path)
	}
	var b bytes.Buffer
	if err := format.Write(&b, m); err != nil {
		return err
	}
	return writeFile(o.out, o.force, b.Bytes())
}
