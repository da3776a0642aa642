package main

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

// packageSchema names the list that a package keeps of itself.
const packageSchema = "onphrase.package/1"

// packageList is the file of a package that lists it.
const packageList = "package.json"

// packageJSON describes that file.
//
//go:embed package.schema.json
var packageJSON string

// manifest is what a package says of itself. Within /1 keys are added and
// never renamed.
type manifest struct {
	Schema string `json:"schema"`
	Class  string `json:"class"`
	File   string `json:"file"`  // the class file in the package
	Music  string `json:"music"` // the folder in it where the songs belong, empty: beside the class file
	Songs  []song `json:"songs"`
}

// song is a track of the class, known by its content and by its name.
type song struct {
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

func (m *manifest) encode() ([]byte, error) {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	enc.SetIndent("", "  ")
	err := enc.Encode(m)
	return b.Bytes(), err
}

// readManifest understands the list of a package.
func readManifest(src []byte) (*manifest, error) {
	var m manifest
	if err := json.Unmarshal(src, &m); err != nil {
		return nil, fmt.Errorf("%s cannot be read: %w", packageList, err)
	}
	if m.Schema != packageSchema {
		return nil, fmt.Errorf("%s is %q, this program reads %s", packageList, m.Schema, packageSchema)
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

// manifestIn finds the list of a package and makes sure that it lists names
// that stay in it.
func manifestIn(files []unpacked) (*manifest, error) {
	for _, f := range files {
		if f.name != packageList {
			continue
		}
		list, err := readManifest(f.content)
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
	return nil, errors.New("not a package of onphrase: it has no " + packageList)
}
