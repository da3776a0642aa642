package edit

import (
	"strings"

	"gopkg.in/yaml.v3"
)

// Entry is a part of a class file as it is written: the class, a part, an item,
// a move of a block. It is what a screen shows of it, and what acts name.
type Entry struct {
	ID    string              // PATH#SUM; of the class the empty path
	Path  string              //
	Line  int                 // on which it begins, from 1
	Keys  []string            // in the order written
	Text  map[string]string   // values that are one text, by key
	Texts map[string][]string // lists of texts, by key
	Lists map[string][]Entry  // lists of entries, by key
}

// Read gives a class file as entries.
func Read(src []byte) (Entry, error) {
	f, err := open(src)
	if err != nil {
		return Entry{}, err
	}
	sums := map[string]string{}
	f.entries(f.root, "", func(path string, at place) { sums[path] = f.sum(at) })
	return read(f.root, "", sums), nil
}

func read(n *yaml.Node, path string, sums map[string]string) Entry {
	e := Entry{ID: path + "#" + sums[path], Path: path, Line: n.Line,
		Keys: []string{}, Text: map[string]string{}, Texts: map[string][]string{}, Lists: map[string][]Entry{}}
	for i := 0; i+1 < len(n.Content) && n.Kind == yaml.MappingNode; i += 2 {
		key, v := n.Content[i].Value, n.Content[i+1]
		e.Keys = append(e.Keys, key)
		if v.Kind != yaml.SequenceNode {
			e.Text[key] = v.Value
			continue
		}
		for k, c := range v.Content {
			if c.Kind == yaml.MappingNode {
				e.Lists[key] = append(e.Lists[key], read(c, strings.TrimPrefix(path+"/"+key+"/"+itoa(k), "/"), sums))
			} else {
				e.Texts[key] = append(e.Texts[key], c.Value)
			}
		}
	}
	return e
}
