package edit

import (
	"bytes"
	"encoding/json"
	"fmt"

	"gopkg.in/yaml.v3"
)

// Act is one thing that a person does to a class file by hand: the desk sends
// it as JSON. Places are paths of keys and indices from 0, such as
// parts/1/do/0/moves/2; the class itself is the empty path.
//
//	set      the value of Key at Item is Value
//	unset    Key at Item is gone
//	insert   Entry is put into the list To, before the entry At
//	delete   the entry Item is gone
//	move     the entry Item is put into the list To, before the entry At, as the
//	         list was before the move
//	copy     so is a copy of it
//	wrap     the entry Item and those that follow it, Count in all, become the
//	         content of Entry, which has no "do" yet: a superset
//	unwrap   the content of the entry Item takes its place
type Act struct {
	Act   string          `json:"act"`
	Item  string          `json:"item,omitempty"` // an ID, or a path
	Key   string          `json:"key,omitempty"`
	Value json.RawMessage `json:"value,omitempty"`
	To    string          `json:"to,omitempty"`
	At    int             `json:"at,omitempty"`
	Count int             `json:"count,omitempty"`
	Entry json.RawMessage `json:"entry,omitempty"`
}

// Do does acts to a class file, one after the other, and gives the file as it
// then is. All bytes that the acts are not about stay as they are. What comes
// out is read again: where it does not say exactly what was meant, nothing is
// done and the error says so.
func Do(src []byte, acts ...Act) ([]byte, error) {
	for _, a := range acts {
		out, err := a.do(src)
		if err != nil {
			return nil, err
		}
		src = out
	}
	return src, nil
}

// From does acts that were meant for another state of the file, which is named
// by its revision: what they are about is found again by its own bytes, where it
// is written just so in one place only. ErrGone says that it is not, or that a
// place to put something at cannot be told any more.
func From(revision string, src []byte, acts ...Act) ([]byte, error) {
	same := revision == Revision(src)
	for i, a := range acts {
		if !same && (a.Act == "insert" || a.To != "") {
			return nil, ErrGone
		}
		if !same || i > 0 {
			path, err := Find(src, a.Item)
			if err != nil {
				return nil, err
			}
			a.Item = path
		}
		out, err := Do(src, a)
		if err != nil {
			return nil, err
		}
		src = out
	}
	return src, nil
}

func (a Act) do(src []byte) ([]byte, error) {
	f, err := open(src)
	if err != nil {
		return nil, err
	}
	meant, err := treeOf(f.root)
	if err != nil {
		return nil, err
	}
	a.Item = pathOf(a.Item)
	if meant, err = a.on(meant); err != nil {
		return nil, err
	}
	out, err := a.bytes(f)
	if err != nil {
		return nil, err
	}
	var doc yaml.Node
	if err := yaml.Unmarshal(bytes.TrimPrefix(out, []byte("\ufeff")), &doc); err != nil || len(doc.Content) == 0 {
		return nil, fmt.Errorf("edit: this place of the file cannot be changed by hand here: %v", err)
	}
	is, err := treeOf(doc.Content[0])
	if err != nil {
		return nil, err
	}
	if !is.equal(meant) {
		return nil, fmt.Errorf("edit: this place of the file cannot be changed here without changing more; change it in the text")
	}
	return out, nil
}

// bytes does the act to the bytes of the file.
func (a Act) bytes(f *file) ([]byte, error) {
	switch a.Act {
	case "set":
		return f.setKey(a.Item, a.Key, a.Value)
	case "unset":
		return f.unsetKey(a.Item, a.Key)
	case "insert":
		return f.insertAt(a.To, a.At, a.Entry)
	case "delete":
		return f.deleteEntry(a.Item)
	case "move":
		return f.moveEntry(a.Item, a.To, a.At)
	case "copy":
		return f.copyEntry(a.Item, a.To, a.At)
	case "wrap":
		return f.wrapEntries(a.Item, a.Count, a.Entry)
	case "unwrap":
		return f.unwrapEntry(a.Item)
	}
	return nil, fmt.Errorf("edit: %q is no act", a.Act)
}
