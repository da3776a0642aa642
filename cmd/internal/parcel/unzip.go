package parcel

import (
	"archive/zip"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"path/filepath"
	"strings"
	"unicode"

	"onphrase/beat/decode"
	"onphrase/cmd/internal/disk"
)

// What a package may hold. A class of a hundred songs is far below.
const (
	MostPacked  = 2000      // files
	MostText    = 32 << 20  // bytes of one file that is not music
	MostAllText = 128 << 20 // bytes of all of them
)

// Unpacked is a file of a package that has been looked at and found harmless.
type Unpacked struct {
	Name    string
	Content []byte    // nil when it is music
	music   *zip.File // stored as it is, so no larger than the package
}

// Read looks at every file of a package before anything is written: the
// names must stay inside the folder they are unpacked into, and nothing may be
// larger than it says.
func Read(z *zip.Reader) ([]Unpacked, error) {
	if len(z.File) > MostPacked {
		return nil, fmt.Errorf("%d files are too many for a package", len(z.File))
	}
	var all []Unpacked
	seen := map[string]bool{}
	left := int64(MostAllText)
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
		u := Unpacked{Name: f.Name}
		if decode.IsAudio(f.Name) {
			if f.Method != zip.Store {
				return nil, fmt.Errorf("%s: music is not stored as it is, as onphrase does", f.Name)
			}
			u.music = f
		} else {
			var err error
			if u.Content, err = inflate(f, min(MostText, left)); err != nil {
				return nil, fmt.Errorf("%s: %w", f.Name, err)
			}
			left -= int64(len(u.Content))
		}
		all = append(all, u)
	}
	for _, u := range all { // a file where another needs a folder
		for dir := path.Dir(u.Name); dir != "."; dir = path.Dir(dir) {
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
