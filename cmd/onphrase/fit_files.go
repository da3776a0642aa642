package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"onphrase/align/fit"
	"onphrase/cmd/internal/aligned"
	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/told"
)

// pricesFile is the path of the user's own prices, which may be missing.
func pricesFile(file string) string { return disk.OwnFile(file, "prices.yaml") }

// priceList is the user's own prices over the usual ones. Her file in the
// configuration folder need not exist; one that she names must.
func priceList(s *streams, file string) (fit.Prices, error) {
	path := pricesFile(file)
	if path == "" {
		return fit.Usual(), nil
	}
	src, err := disk.ReadLimited(path, aligned.MostBytes)
	switch {
	case errors.Is(err, fs.ErrNotExist) && file == "":
		return fit.Usual(), nil
	case err != nil:
		return nil, told.Failed("", "%s: %s", path, told.Reason(err))
	}
	prices, problems := fit.ParsePrices(src)
	return prices, problemsIn(s, path, problems)
}

// mostCopies bounds how many copies of one file are kept beside it.
const mostCopies = 999

// rewrite replaces a file that must still be as it was read. The old content
// is kept beside it, under a name that no file has; rewrite returns its path.
func rewrite(path string, was, is []byte) (kept string, err error) {
	// Through a link, the file it points to is meant.
	if real, err := filepath.EvalSymlinks(path); err == nil {
		path = real
	}
	now, err := disk.ReadLimited(path, aligned.MostBytes)
	switch {
	case err != nil:
		return "", told.Failed("", "%s: %s", path, told.Reason(err))
	case !bytes.Equal(now, was):
		return "", told.Failed("run it again", "%s was changed meanwhile; nothing was written", path)
	}
	if kept, err = keepCopy(path, was); err != nil {
		return "", told.Failed("", "cannot keep %s as it was: %s; nothing was written", path, told.Reason(err))
	}
	return kept, disk.Wrote(path, disk.WriteWhole(path, is))
}

// keepCopy writes a copy beside a file: class.before-fit.yaml, then
// class.before-fit-2.yaml, and so on.
func keepCopy(path string, content []byte) (kept string, err error) {
	ext := filepath.Ext(path)
	stem := strings.TrimSuffix(path, ext) + ".before-fit"
	for n := 1; n <= mostCopies; n++ {
		kept = stem + ext
		if n > 1 {
			kept = fmt.Sprintf("%s-%d%s", stem, n, ext)
		}
		f, err := os.OpenFile(kept, os.O_WRONLY|os.O_CREATE|os.O_EXCL, disk.FilePerm)
		if errors.Is(err, fs.ErrExist) {
			continue
		}
		if err != nil {
			return "", err
		}
		_, err = f.Write(content)
		if err == nil {
			err = f.Sync()
		}
		if closeErr := f.Close(); err == nil {
			err = closeErr
		}
		if err != nil {
			os.Remove(kept)
		}
		return kept, err
	}
	return "", fmt.Errorf("there are %d copies of it already", mostCopies)
}
