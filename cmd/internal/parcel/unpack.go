package parcel

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/told"
)

// Unpack writes the files below a folder. It looks at every place before it
// writes the first file: where one is taken by something else, nothing is
// written. Links inside the folder are not followed out of it.
func Unpack(root *os.Root, files []Unpacked) (fresh int, err error) {
	var write []Unpacked
	var taken []string
	for _, f := range files {
		same, err := f.isThere(root)
		switch {
		case errors.Is(err, fs.ErrNotExist):
			write = append(write, f)
		case err != nil:
			return 0, fmt.Errorf("%s: %s", f.Name, told.Reason(err))
		case !same:
			taken = append(taken, f.Name)
		}
	}
	if len(taken) > 0 {
		return 0, fmt.Errorf("%s would be replaced; nothing was written", strings.Join(taken, ", "))
	}
	for _, f := range write {
		if err := f.write(root); err != nil {
			return fresh, fmt.Errorf("%s: %s", f.Name, told.Reason(err))
		}
		fresh++
	}
	return fresh, nil
}

// isThere tells whether the very same file lies in its place already.
func (u Unpacked) isThere(root *os.Root) (bool, error) {
	f, err := root.Open(filepath.FromSlash(u.Name))
	if err != nil {
		return false, err
	}
	defer f.Close()
	info, err := f.Stat()
	if err != nil || !info.Mode().IsRegular() {
		return false, err
	}
	var want io.Reader = bytes.NewReader(u.Content)
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
func (u Unpacked) write(root *os.Root) error {
	name := filepath.FromSlash(u.Name)
	if dir := filepath.Dir(name); dir != "." {
		if err := root.MkdirAll(dir, 0o755); err != nil {
			return err
		}
	}
	f, err := root.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, disk.FilePerm)
	if err != nil {
		return err
	}
	var from io.Reader = bytes.NewReader(u.Content)
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
