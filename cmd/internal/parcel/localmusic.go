package parcel

import (
	"bytes"
	"errors"
	"path"
	"path/filepath"
	"strings"

	"gopkg.in/yaml.v3"

	"onphrase/plan"
)

// packedMusic is the music folder of a package whose class has it elsewhere.
const packedMusic = "music"

// localMusic is the class file as it goes into a package, and the folder in
// the package where its songs belong. A music folder that is not below the
// class file is one of this computer only: that one word of the file is changed,
// and nothing else.
func localMusic(src []byte, class *plan.Class) ([]byte, string, error) {
	folder := path.Clean(filepath.ToSlash(class.Music))
	if class.Music == "" || folder == "." {
		return src, "", nil
	}
	if filepath.IsLocal(filepath.FromSlash(folder)) {
		return src, folder, nil
	}
	changed, ok := replaceTop(src, "music", packedMusic+"/")
	if ok {
		again, problems := plan.ParseWith("", changed, class.Catalog)
		ok = len(problems) == 0 && again.Music == packedMusic+"/"
	}
	if !ok {
		return nil, "", errors.New("the music folder " + class.Music +
			" is not below the class file; write music: music/ and put the songs there")
	}
	return changed, packedMusic, nil
}

// replaceTop puts another value in the place of that of a key at the top of a
// YAML file. What stands round it, comments too, stays as it is.
func replaceTop(src []byte, key, value string) ([]byte, bool) {
	var doc yaml.Node
	if yaml.Unmarshal(src, &doc) != nil || len(doc.Content) == 0 {
		return nil, false
	}
	pairs := doc.Content[0].Content
	for i := 0; i+1 < len(pairs); i += 2 {
		if pairs[i].Value != key {
			continue
		}
		v := pairs[i+1]
		lines := bytes.SplitAfter(src, []byte("\n"))
		if v.Line > len(lines) {
			return nil, false
		}
		line := string(lines[v.Line-1])
		from := columnAt(line, v.Column)
		to := from + scalarLen(line[from:], v)
		lines[v.Line-1] = []byte(line[:from] + value + line[to:])
		return bytes.Join(lines, nil), true
	}
	return nil, false
}

// columnAt is the byte at which a column, counted in letters from 1, begins.
func columnAt(line string, column int) int {
	for i := range line {
		if column--; column <= 0 {
			return i
		}
	}
	return len(line)
}

// scalarLen is how many bytes a value takes where it is written in one line.
func scalarLen(rest string, v *yaml.Node) int {
	switch v.Style {
	case yaml.DoubleQuotedStyle:
		for i := 1; i < len(rest); i++ {
			switch rest[i] {
			case '\\':
				i++
			case '"':
				return i + 1
			}
		}
	case yaml.SingleQuotedStyle:
		for i := 1; i < len(rest); i++ {
			if rest[i] != '\'' {
				continue
			}
			if i+1 == len(rest) || rest[i+1] != '\'' {
				return i + 1
			}
			i++
		}
	case 0:
		if strings.HasPrefix(rest, v.Value) {
			return len(v.Value)
		}
	}
	return len(strings.TrimRight(rest, "\r\n"))
}
