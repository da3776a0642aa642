package edit

import (
	"fmt"
	"strings"

	"gopkg.in/yaml.v3"

	"onphrase/plan"
)

// SetTracks gives a part other tracks, in the form that its list has.
type SetTracks struct {
	Part   plan.Pos
	Tracks []string
}

// SetMusic names another folder of the tracks, from where the class file is.
type SetMusic struct{ Folder string }

// SetTaught says how the counts taught relate to those heard.
type SetTaught struct {
	Part   plan.Pos
	Taught plan.Taught
}

func (c SetTracks) to(f *file) error {
	m, _, err := f.entry(c.Part, "part")
	if err != nil {
		return err
	}
	n := value(m, "tracks")
	switch {
	case n == nil || n.Kind != yaml.SequenceNode:
		return f.cannot(m, "its tracks are no list")
	case len(n.Content) == len(c.Tracks):
		for i, was := range n.Content {
			if was.Value == c.Tracks[i] {
				continue
			}
			if err := f.replaceName(was, c.Tracks[i], flow(n)); err != nil {
				return err
			}
		}
		return nil
	case flow(n):
		end, err := f.end(n)
		if err != nil {
			return err
		}
		f.splice(f.offset(n), end, "["+names(c.Tracks, true)+"]")
		return nil
	}
	first := f.lines[n.Content[0].Line-1]
	last := f.lines[f.lastLine(n)]
	var b strings.Builder
	for _, t := range c.Tracks {
		b.WriteString(indent(n) + "- " + name(t, false) + f.eol)
	}
	f.splice(first, last, b.String())
	return nil
}

func (c SetMusic) to(f *file) error {
	if n := value(f.root, "music"); n != nil {
		return f.replaceName(n, c.Folder, flow(f.root))
	}
	if flow(f.root) {
		return f.cannot(f.root, "it is written in one line")
	}
	for i := 0; i+1 < len(f.root.Content); i += 2 {
		if k := f.root.Content[i]; k.Value == "class" {
			f.appendLine(f.lastLine(f.root.Content[i+1]), "music: "+name(c.Folder, false))
			return nil
		}
	}
	return f.cannot(f.root, "class is missing")
}

func (c SetTaught) to(f *file) error {
	m, _, err := f.entry(c.Part, "part")
	if err != nil {
		return err
	}
	return f.setBefore(m, "do", "taught", string(c.Taught))
}

// replaceName puts the name of a file or folder in the place of a scalar.
func (f *file) replaceName(n *yaml.Node, to string, inFlow bool) error {
	end, err := f.end(n)
	if err != nil {
		return err
	}
	if n.Kind != yaml.ScalarNode {
		return f.cannot(n, "it is not one value")
	}
	f.splice(f.offset(n), end, name(to, inFlow))
	return nil
}

func names(all []string, inFlow bool) string {
	var out []string
	for _, text := range all {
		out = append(out, name(text, inFlow))
	}
	return strings.Join(out, ", ")
}

// name writes a file name as YAML reads it back, in quotes where it needs
// them.
func name(text string, inFlow bool) string {
	if inFlow && strings.ContainsAny(text, ",[]{}") || strings.ContainsAny(text, "\u0085\u2028\u2029\ufeff") {
		return fmt.Sprintf("%q", text)
	}
	b, err := yaml.Marshal(text)
	plain := strings.TrimSuffix(string(b), "\n")
	if err != nil || strings.ContainsAny(plain, "\n") {
		return fmt.Sprintf("%q", text)
	}
	return plain
}
