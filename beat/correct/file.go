package correct

import (
	"bytes"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"
)

// File is what a person has corrected of one track, as it is kept. In YAML:
//
//	onphrase: 1
//	track: slow-ferry.mp3         # for people; the sound decides
//	sound: sha256:9f2c…           # of the sound, not of tags
//	corrections:                  # in the order they were made
//	  - half
//	  - one: 0:15.412
//	  - counts: 16
//	    at: 1:02.031
type File struct {
	Track string
	Sound string
	List  []Correction
	Lines []int // of each of List, from 1

	doc *yaml.Node // with the person's comments
}

// Problem is something wrong in a file.
type Problem struct {
	Line int // from 1
	Msg  string
}

// In writes a problem with its place: path:line: what is wrong.
func (p Problem) In(path string) string { return fmt.Sprintf("%s:%d: %s", path, p.Line, p.Msg) }

// fileVersion is the one that is written and read.
const fileVersion = "1"

// head explains a new file to those who open it.
const head = `What a person corrected of what onphrase heard in the track beside it,
in the order it was done. Written by 'onphrase correct'; it may be edited.`

// NewFile is one without corrections yet.
func NewFile(track, sound string) *File {
	doc := &yaml.Node{Kind: yaml.MappingNode, HeadComment: head}
	for _, pair := range [][2]string{{"onphrase", fileVersion}, {"track", track}, {"sound", sound}} {
		value := &yaml.Node{}
		value.SetString(pair[1])
		if pair[0] == "onphrase" {
			value.Tag = "!!int"
		}
		doc.Content = append(doc.Content, &yaml.Node{Kind: yaml.ScalarNode, Value: pair[0]}, value)
	}
	doc.Content = append(doc.Content, &yaml.Node{Kind: yaml.ScalarNode, Value: "corrections"},
		&yaml.Node{Kind: yaml.SequenceNode})
	return &File{Track: track, Sound: sound, doc: &yaml.Node{Kind: yaml.DocumentNode, Content: []*yaml.Node{doc}}}
}

// Parse reads a file, or finds all that is wrong with it.
func Parse(src []byte) (*File, []Problem) {
	var doc yaml.Node
	if err := yaml.Unmarshal(src, &doc); err != nil {
		return nil, []Problem{yamlProblem(err)}
	}
	if len(doc.Content) == 0 || doc.Content[0].Kind != yaml.MappingNode {
		return nil, []Problem{{1, "not a file of corrections; delete it, or restore it"}}
	}
	p := &parser{file: &File{doc: &doc}}
	p.top(doc.Content[0])
	if len(p.problems) > 0 {
		return nil, p.problems
	}
	return p.file, nil
}

// yamlProblem takes the line out of what the YAML library says.
func yamlProblem(err error) Problem {
	msg := strings.TrimPrefix(err.Error(), "yaml: ")
	p := Problem{Line: 1, Msg: msg}
	var line int
	if n, _ := fmt.Sscanf(msg, "line %d:", &line); n == 1 {
		_, rest, _ := strings.Cut(msg, ": ")
		p = Problem{Line: line, Msg: rest}
	}
	p.Msg = "cannot be read as YAML: " + p.Msg
	return p
}

// Bytes is the file as it is kept.
func (f *File) Bytes() ([]byte, error) {
	var b bytes.Buffer
	enc := yaml.NewEncoder(&b)
	enc.SetIndent(2)
	if err := enc.Encode(f.doc); err != nil {
		return nil, err
	}
	return b.Bytes(), enc.Close()
}

// Add appends a correction.
func (f *File) Add(c Correction) {
	list := f.list()
	list.Style = 0 // one to a line, also where the list was empty: []
	list.Content = append(list.Content, nodeOf(c))
	f.List = append(f.List, c)
	f.Lines = append(f.Lines, 0)
}

// Replace makes the list another one. What both have at the beginning and at
// the end stays as it is written, with the person's comments.
func (f *File) Replace(after []Correction) {
	first := 0
	for first < min(len(f.List), len(after)) && f.List[first] == after[first] {
		first++
	}
	last := 0
	for last < min(len(f.List), len(after))-first && f.List[len(f.List)-1-last] == after[len(after)-1-last] {
		last++
	}
	list := f.list()
	list.Style = 0
	var nodes []*yaml.Node
	for _, c := range after[first : len(after)-last] {
		nodes = append(nodes, nodeOf(c))
	}
	end := len(f.List) - last
	list.Content = slices.Replace(list.Content, first, end, nodes...)
	f.Lines = slices.Replace(f.Lines, first, end, make([]int, len(nodes))...)
	f.List = slices.Clone(after)
}

// Undo takes the last correction away and returns it.
func (f *File) Undo() (Correction, bool) {
	n := len(f.List)
	if n == 0 {
		return Correction{}, false
	}
	last := f.List[n-1]
	list := f.list()
	list.Content = slices.Delete(list.Content, n-1, n)
	f.List, f.Lines = f.List[:n-1], f.Lines[:n-1]
	return last, true
}

// list is the node of the corrections.
func (f *File) list() *yaml.Node {
	pairs := f.doc.Content[0].Content
	for i := 0; i+1 < len(pairs); i += 2 {
		if pairs[i].Value == "corrections" {
			if pairs[i+1].Kind != yaml.SequenceNode { // the key stood alone
				*pairs[i+1] = yaml.Node{Kind: yaml.SequenceNode}
			}
			return pairs[i+1]
		}
	}
	panic("correct: a file without its list") // Parse and NewFile see to that
}

func nodeOf(c Correction) *yaml.Node {
	scalar := func(s string) *yaml.Node { return &yaml.Node{Kind: yaml.ScalarNode, Value: s} }
	switch c.Kind {
	case Half, Double, Checked:
		return scalar(string(c.Kind))
	case Counts, Every, Steady:
		figure := map[Kind]string{
			Counts: fmt.Sprint(c.Counts), Every: c.Step.String(), Steady: strconv.FormatFloat(c.BPM, 'f', -1, 64),
		}[c.Kind]
		return &yaml.Node{Kind: yaml.MappingNode, Content: []*yaml.Node{
			scalar(string(c.Kind)), scalar(figure), scalar("at"), scalar(Clock(c.Time)),
		}}
	}
	return &yaml.Node{Kind: yaml.MappingNode, Content: []*yaml.Node{scalar(string(c.Kind)), scalar(Clock(c.Time))}}
}
