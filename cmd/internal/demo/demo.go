// Package demo writes the demo, a class with its music, into a folder.
package demo

import (
	"bytes"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/told"
	"onphrase/samples"
)

// Dir is where the demo goes when nobody says where.
const Dir = "onphrase-demo"

// ClassName is the name of the class file in the demo.
const ClassName = "class.yaml"

// Files are the files of the demo, and how many of them are new.
type Files struct {
	Names []string
	Fresh int
}

// Write copies the demo into dir. It looks at every file before it writes the
// first: where one differs from the demo's, nothing is written.
func Write(dir string) (Files, error) {
	demo := samples.Demo()
	var files Files
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
		files.Names = append(files.Names, dst)
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
		return files, told.Failed("choose another folder: onphrase demo DIR", "cannot write the demo into %s: %s", dir,
			told.Reason(err))
	}
	if len(differ) > 0 {
		return files, told.Failed("choose another folder (onphrase demo DIR), or move your own files away",
			"%s would be replaced by the demo's; nothing was written", strings.Join(differ, ", "))
	}
	for _, dst := range files.Names {
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
		files.Fresh++
	}
	return files, nil
}
