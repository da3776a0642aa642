package main

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"onphrase/plan"
)

// registerMoves adds the flag that names the user's own moves.
func registerMoves(cmd *cobra.Command, file *string) {
	cmd.Flags().StringVar(file, "moves", "", "a `FILE` of your own moves, limits and tempo bands (default: moves.yaml in your configuration folder, where there is one)")
}

// catalog is the built-in moves and the user's own. Her file in the
// configuration folder need not exist; one that she names must.
func catalog(s *streams, file string) (*plan.Catalog, error) {
	path := file
	if path == "" {
		dir, err := os.UserConfigDir()
		if err != nil {
			return plan.Builtin(), nil
		}
		path = filepath.Join(dir, "onphrase", "moves.yaml")
	}
	src, err := readLimited(path, classLimit)
	switch {
	case errors.Is(err, fs.ErrNotExist) && file == "":
		return plan.Builtin(), nil
	case err != nil:
		return nil, failed("", "%s: %s", path, reason(err))
	}
	own, problems := plan.ParseCatalog(path, src, plan.Builtin())
	if err := problemsIn(s, path, problems); err != nil {
		return nil, err
	}
	return own, nil
}
