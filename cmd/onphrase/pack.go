package main

import (
	"bytes"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/parcel"
	"onphrase/plan/say"
)

type packOptions struct {
	classFlags
	path      string
	out       string
	withMusic bool
	force     bool
}

const packLong = `Puts all that is needed to teach a class into one zip file, for a substitute or
for yourself: the page, the sheets, what to say and when, the kit, the running
order, captions, the class file with your corrections, and what was heard in the
music. It opens on any computer, with or without onphrase.

The songs are not in it, but how to recognise them by content and name, so that
'onphrase unpack' can tell which are missing. --with-music takes them along.
` + parcel.Licences + `

The same class gives the same package, byte for byte.`

func newPackCmd(s *streams) *cobra.Command {
	o := &packOptions{}
	cmd := &cobra.Command{
		Use:   "pack CLASS",
		Short: "Put a class into one file for a substitute",
		Long:  packLong,
		Example: `  onphrase pack class.yaml -o harbour.zip
  onphrase unpack harbour.zip`,
		Args: takes(1, 1, "a class file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			o.path = args[0]
			return runPack(cmd, s, o)
		},
	}
	o.register(cmd)
	cmd.Flags().StringVarP(&o.out, "output", "o", "", "the `FILE` to write (default: the class file's name with .zip)")
	cmd.Flags().BoolVar(&o.withMusic, "with-music", false, "take the songs along")
	cmd.Flags().BoolVar(&o.force, "force", false, "replace a file that is there already")
	cmd.ValidArgsFunction = classFiles
	return cmd
}

func runPack(cmd *cobra.Command, s *streams, o *packOptions) error {
	l, err := o.align(cmd.Context(), s, o.path)
	if err != nil {
		return err
	}
	_, moves, err := ownMoves(o.moves)
	if err != nil {
		return err
	}
	files, err := parcel.Gather(l, moves, o.withMusic)
	if err != nil {
		return err
	}
	if o.out == "" {
		o.out = strings.TrimSuffix(o.path, filepath.Ext(o.path)) + ".zip"
	}
	var b bytes.Buffer
	if err := parcel.Write(&b, files); err != nil {
		return err
	}
	if err := disk.WriteFile(o.out, o.force, o.sources(l), b.Bytes()); err != nil {
		return err
	}
	s.say("%s: %s, %.1f MB", o.out, say.Many(len(files), "file"), float64(b.Len())/1e6)
	if o.withMusic {
		s.say("%s", parcel.Licences)
	}
	return nil
}
