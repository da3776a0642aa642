package main

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
	"unicode"

	"onphrase/beat/decode"
	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/told"
)

// What a package may hold. A class of a hundred songs is far below.
const (
	mostPacked  = 2000      // files
	mostText    = 32 << 20  // bytes of one file that is not music
	mostAllText = 128 << 20 // bytes of all of them
)

// unpacked is a file of a package that has been looked at and found harmless.
type unpacked struct {
	name    string
	content []byte    // nil when it is music
	music   *zip.File // stored as it is, so no larger than the package
}

// readZip looks at every file of a package before anything is written: the
// names must stay inside the folder they are unpacked into, and nothing may be
// larger than it says.
func readZip(z *zip.Reader) ([]unpacked, error) {
	if len(z.File) > mostPacked {
		return nil, fmt.Errorf("%d files are too many for a package", len(z.File))
	}
	var all []unpacked
	seen := map[string]bool{}
	left := int64(mostAllText)
	for _, f := range z.File {
		if strings.HasSuffix(f.Name, "/") && f.UncompressedSize64 == 0 {
			continue // a folder comes with its files
		}
		if err := harmless(f); err != nil {
			return nil, err
		}
		key := disk.Folded(f.Name)
		if seen[key] {
			return nil, fmt.Errorf("two files are called %s", f.Name)
		}
		seen[key] = true
		u := unpacked{name: f.Name}
		if decode.IsAudio(f.Name) {
			if f.Method != zip.Store {
				return nil, fmt.Errorf("%s: music is not stored as it is, as onphrase does", f.Name)
			}
			u.music = f
		} else {
			var err error
			if u.content, err = inflate(f, min(mostText, left)); err != nil {
				return nil, fmt.Errorf("%s: %w", f.Name, err)
			}
			left -= int64(len(u.content))
		}
		all = append(all, u)
	}
	for _, u := range all { // a file where another needs a folder
		for dir := path.Dir(u.name); dir != "."; dir = path.Dir(dir) {
			if seen[disk.Folded(dir)] {
				return nil, fmt.Errorf("%s is a file and a folder", dir)
			}
		}
	}
	return all, nil
}

// harmless refuses what is not a plain file of a harmless name.
func harmless(f *zip.File) error {
	if !harmlessName(f.Name) {
		return fmt.Errorf("%q is no name of a file inside a package", f.Name)
	}
	if !f.Mode().IsRegular() {
		return fmt.Errorf("%s is not a plain file", f.Name)
	}
	return nil
}

// harmlessName tells whether a name stays inside the folder, on every system:
// to some, \ parts folders, : names a drive or a hidden stream, and a dot or a
// blank at the end is not there.
func harmlessName(name string) bool {
	if !filepath.IsLocal(filepath.FromSlash(name)) || !fs.ValidPath(name) {
		return false
	}
	bad := func(r rune) bool {
		return strings.ContainsRune(`\:`, r) || unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r)
	}
	for _, part := range strings.Split(name, "/") {
		if strings.ContainsFunc(part, bad) || strings.TrimRight(part, ". ") != part {
			return false
		}
	}
	return true
}

// inflate reads at most so many bytes, whatever the package says of its size.
func inflate(f *zip.File, most int64) ([]byte, error) {
	if f.UncompressedSize64 > uint64(most) {
		return nil, errTooLarge
	}
	r, err := f.Open()
	if err != nil {
		return nil, err
	}
	defer r.Close()
	b, err := io.ReadAll(io.LimitReader(r, most+1))
	if err == nil && int64(len(b)) > most {
		err = errTooLarge
	}
	return append([]byte{}, b...), err
}

var errTooLarge = errors.New("larger than anything onphrase packs")

// unpackInto writes the files below a folder. It looks at every place before it
// writes the first file: where one is taken by something else, nothing is
// written. Links inside the folder are not followed out of it.
func unpackInto(root *os.Root, files []unpacked) (fresh int, err error) {
	var write []unpacked
	var taken []string
	for _, f := range files {
		same, err := f.isThere(root)
		switch {
		case errors.Is(err, fs.ErrNotExist):
			write = append(write, f)
		case err != nil:
			return 0, fmt.Errorf("%s: %s", f.name, told.Reason(err))
		case !same:
			taken = append(taken, f.name)
		}
	}
	if len(taken) > 0 {
		return 0, fmt.Errorf("%s would be replaced; nothing was written", strings.Join(taken, ", "))
	}
	for _, f := range write {
		if err := f.write(root); err != nil {
			return fresh, fmt.Errorf("%s: %s", f.name, told.Reason(err))
		}
		fresh++
	}
	return fresh, nil
}

// isThere tells whether the very same file lies in its place already.
func (u unpacked) isThere(root *os.Root) (bool, error) {
	f, err := root.Open(filepath.FromSlash(u.name))
	if err != nil {
		return false, err
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil || !info.Mode().IsRegular() {
		return false, err
	}
	var want io.Reader = bytes.NewReader(u.content)
	if u.music != nil {
		r, err := u.music.Open()
		if err != nil {
			return false, err
		}
		defer r.Close()
		want = r
	}
	return sameContent(f, want)
}

// sameContent compares two streams to their ends.
func sameContent(a, b io.Reader) (bool, error) {
	const block = 64 << 10 // bytes
	x, y := make([]byte, block), make([]byte, block)
	for {
		n, errA := io.ReadFull(a, x)
		m, errB := io.ReadFull(b, y)
		if n != m || !bytes.Equal(x[:n], y[:m]) {
			return false, nil
		}
		if errA != nil || errB != nil {
			ended := func(err error) bool { return err == io.EOF || err == io.ErrUnexpectedEOF }
			return ended(errA) && ended(errB), nil
		}
	}
}

// write puts the file into its place, which must be free. A file that could
// not be written whole is removed.
func (u unpacked) write(root *os.Root) error {
	name := filepath.FromSlash(u.name)
	if dir := filepath.Dir(name); dir != "." {
		if err := root.MkdirAll(dir, 0o755); err != nil {
			return err
		}
	}
	f, err := root.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, disk.FilePerm)
	if err != nil {
		return err
	}
	var from io.Reader = bytes.NewReader(u.content)
	if u.music != nil {
		r, err := u.music.Open()
		if err != nil {
			return errors.Join(err, f.Close(), root.Remove(name))
		}
		defer r.Close()
		from = r
	}
	_, err = io.Copy(f, from)
	if closeErr := f.Close(); err == nil {
		err = closeErr
	}
	if err != nil {
		_ = root.Remove(name)
	}
	return err
}
