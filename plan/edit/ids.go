package edit

import (
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

// An ID names an entry of a list for as long as it is written as it is: by its
// path and a sum of its own bytes, PATH#SUM. A line may move; an entry that
// was changed elsewhere is another.

// sumLen is the length of the sum [hex digits].
const sumLen = 10

// IDs gives the ID of every entry of every list, by its path.
func IDs(src []byte) (map[string]string, error) {
	f, err := open(src)
	if err != nil {
		return nil, err
	}
	all := map[string]string{}
	f.entries(f.root, "", func(path string, at place) { all[path] = path + "#" + f.sum(at) })
	return all, nil
}

// Lines gives the path of every entry of every list by the line on which it
// begins, from 1.
func Lines(src []byte) (map[int]string, error) {
	f, err := open(src)
	if err != nil {
		return nil, err
	}
	all := map[int]string{}
	f.entries(f.root, "", func(path string, at place) {
		if n := at.node(); n.Kind == yaml.MappingNode {
			if _, taken := all[n.Line]; !taken {
				all[n.Line] = path
			}
		}
	})
	return all, nil
}

// entries calls do for every entry of every list.
func (f *file) entries(n *yaml.Node, path string, do func(string, place)) {
	join := func(step string) string { return strings.TrimPrefix(path+"/"+step, "/") }
	switch n.Kind {
	case yaml.MappingNode:
		for i := 0; i+1 < len(n.Content); i += 2 {
			f.entries(n.Content[i+1], join(n.Content[i].Value), do)
		}
	case yaml.SequenceNode:
		for i, c := range n.Content {
			do(join(itoa(i)), place{n, i})
			f.entries(c, join(itoa(i)), do)
		}
	}
}

// sum is that of an entry's own bytes, without its place in the line.
func (f *file) sum(at place) string {
	text, err := f.raw(at)
	if err != nil {
		text = fmt.Sprint(at.node().Line) // written in a way that is never changed here
	}
	from := ""
	if !flow(at.list) {
		from = indent(at.list)
	}
	sum := sha256.Sum256([]byte(strings.TrimSpace(shift(text, from, "", f.eol))))
	return hex.EncodeToString(sum[:])[:sumLen]
}

// Find gives the path of an entry in a file that is not the one its ID was
// given for: the only place where it is written just so. ErrGone says that it is
// not there any more, or that there are several and no telling which is meant.
func Find(src []byte, id string) (string, error) {
	path, sum, ok := strings.Cut(id, "#")
	if !ok {
		return path, nil
	}
	f, err := open(src)
	if err != nil {
		return "", err
	}
	var found []string
	f.entries(f.root, "", func(p string, at place) {
		if f.sum(at) == sum {
			found = append(found, p)
		}
	})
	if len(found) != 1 {
		return "", ErrGone
	}
	return found[0], nil
}

// ErrGone says that what an ID names was changed or taken away elsewhere.
var ErrGone = fmt.Errorf("edit: what this was about has been changed elsewhere meanwhile")

// pathOf is the path in an ID.
func pathOf(id string) string {
	path, _, _ := strings.Cut(id, "#")
	return path
}

func itoa(n int) string { return strconv.Itoa(n) }

// atoi is the number of a step that is known to be one.
func atoi(s string) int {
	n, err := strconv.Atoi(s)
	if err != nil {
		return -1
	}
	return n
}
