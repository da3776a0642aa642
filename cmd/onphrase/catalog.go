package main

import (
	"errors"
	"io/fs"

	"github.com/spf13/cobra"

	"onphrase/cmd/internal/aligned"
	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/told"
	"onphrase/plan"
)

// registerMoves adds the flag that names the user's own moves.
func registerMoves(cmd *cobra.Command, file *string) {
	cmd.Flags().StringVar(file, "moves", "", "a `FILE` of your own moves, limits and tempo bands (default: moves.yaml in your configuration folder, where there is one)")
}

// catalog is the built-in moves and the user's own.
func catalog(s *streams, file string) (*plan.Catalog, error) {
	path, src, err := ownMoves(file)
	if err != nil {
		return nil, err
	}
	if src == nil {
		return plan.Builtin(), nil
	}
	own, problems := plan.ParseCatalog(path, src, plan.Builtin())
	if err := problemsIn(s, path, problems); err != nil {
		return nil, err
	}
	return own, nil
}

// movesFile is the path of the user's own moves file, which may be missing.
func movesFile(file string) string { return disk.OwnFile(file, "moves.yaml") }

// ownMoves reads the user's own moves file, nil where she has none. Her file
// in the configuration folder need not exist; one that she names must.
func ownMoves(file string) (path string, src []byte, err error) {
	if path = movesFile(file); path == "" {
		return "", nil, nil
	}
	src, err = disk.ReadLimited(path, aligned.MostBytes)
	switch {
	case errors.Is(err, fs.ErrNotExist) && file == "":
		return path, nil, nil
	case err != nil:
		return path, nil, told.Failed("", "%s: %s", path, told.Reason(err))
	}
	return path, append([]byte{}, src...), nil // not nil, also when it is empty
}
