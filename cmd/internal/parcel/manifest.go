package parcel

import (
	"bytes"
	"crypto/sha256"
	_ "embed" // for the schema
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path"
	"strings"
	"unicode"
)

// schemaName names the list that a package keeps of itself.
const schemaName = "onphrase.package/1"

// ListName is the file of a package that lists it.
const ListName = "package.json"

// Schema describes that file.
//
//go:embed package.schema.json
var Schema string

// Manifest is what a package says of itself. Within /1 keys are added and
// never renamed.
type Manifest struct {
	Schema string `json:"schema"`
	Class  string `json:"class"`
	File   string `json:"file"`  // the class file in the package
	Music  string `json:"music"` // the folder in it where the songs belong, empty: beside the class file
	Songs  []Song `json:"songs"`
}

// Song is a track of the class, known by its content and by its name.
type Song struct {
	File     string  `json:"file"` // in the music folder, as the class file spells it
	Title    string  `json:"title"`
	SHA256   string  `json:"sha256"`
	Bytes    int64   `json:"bytes"`
	Duration float64 `json:"duration"` // [s]
	BPM      float64 `json:"bpm"`
	Included bool    `json:"included"` // its music is in the package
}

// content is the SHA-256 of a file, and its size.
func content(path string) (sum string, size int64, err error) {
	f, err := os.Open(path)
	if err != nil {
		return "", 0, err
	}
	defer f.Close()
	h := sha256.New()
	n, err := io.Copy(h, f)
	return hex.EncodeToString(h.Sum(nil)), n, err
}

func (m *Manifest) encode() ([]byte, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	err := enc.Encode(m)
	return b.Bytes(), err
}

// readManifest understands the list of a package.
func readManifest(src []byte) (*Manifest, error) {
	var m Manifest
	if err := json.Unmarshal(src, &m); err != nil {
		return nil, fmt.Errorf("%s cannot be read: %w", ListName, err)
	}
	if m.Schema != schemaName {
		return nil, fmt.Errorf("%s is %q, this program reads %s", ListName, m.Schema, schemaName)
	}
	for i := range m.Songs { // a title is shown on the user's screen
		m.Songs[i].Title = strings.Map(func(r rune) rune {
			if unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) {
				return -1
			}
			return r
		}, m.Songs[i].Title)
	}
	return &m, nil
}

// List finds the list of a package and makes sure that it lists names
// that stay in it.
func List(files []Unpacked) (*Manifest, error) {
	for _, f := range files {
		if f.Name != ListName {
			continue
		}
		list, err := readManifest(f.Content)
		if err != nil {
			return nil, err
		}
		for _, s := range list.Songs {
			if !harmlessName(path.Join(list.Music, s.File)) || path.IsAbs(s.File) {
				return nil, fmt.Errorf("%q is no name of a song inside a package", s.File)
			}
		}
		return list, nil
	}
	return nil, errors.New("not a package of onphrase: it has no " + ListName)
}
