package edit

import (
	"encoding/json"
	"errors"
	"strings"
)

// raw is an entry as it is written, as lines: with its comments and its dash.
func (f *file) raw(at place) (string, error) {
	if !flow(at.list) {
		from, to := f.extent(at)
		text := string(f.src[from:to])
		if !strings.HasSuffix(text, f.eol) {
			text += f.eol
		}
		return text, nil
	}
	end, err := f.end(at.node())
	if err != nil {
		return "", err
	}
	return "- " + string(f.src[f.offset(at.node()):end]) + f.eol, nil
}

// shift moves lines to another indentation. Lines that are further left than
// the first, such as comments from the margin, stay at the margin.
func shift(text, from, to, eol string) string {
	lines := strings.SplitAfter(text, eol)
	var b strings.Builder
	for _, l := range lines {
		if strings.TrimSpace(l) == "" {
			b.WriteString(l)
			continue
		}
		rest, ok := strings.CutPrefix(l, from)
		if !ok {
			b.WriteString(l)
			continue
		}
		b.WriteString(to + rest)
	}
	return b.String()
}

// carried is an entry as lines for another list.
func (f *file) carried(at place, list string) (string, error) {
	text, err := f.raw(at)
	if err != nil {
		return "", err
	}
	l, err := f.node(list)
	if err != nil {
		return "", err
	}
	if flow(l) && len(l.Content) > 0 {
		return "", f.cannot(l, "its entries are written in one line")
	}
	to, err := f.dash(list, l)
	if err != nil {
		return "", err
	}
	from := ""
	if !flow(at.list) {
		from = indent(at.list)
	}
	return shift(text, from, to, f.eol), nil
}

func (f *file) copyEntry(item, list string, index int) ([]byte, error) {
	at, err := f.placeAt(item)
	if err != nil {
		return nil, err
	}
	l, err := f.node(list)
	if err != nil {
		return nil, err
	}
	if flow(l) && len(l.Content) > 0 {
		end, err := f.end(at.node())
		if err != nil {
			return nil, err
		}
		return f.rendered(f.flowInsert(l, index, string(f.src[f.offset(at.node()):end])))
	}
	text, err := f.carried(at, list)
	if err != nil {
		return nil, err
	}
	return f.rendered(f.putLines(list, l, index, text))
}

// moveEntry puts a copy in the new place first and takes the old one out then:
// where both are written in one go, places would depend on each other.
func (f *file) moveEntry(item, list string, index int) ([]byte, error) {
	if list == item || strings.HasPrefix(list, item+"/") {
		return nil, errors.New("edit: nothing can be moved into itself")
	}
	from, i, err := parent(item)
	if err != nil {
		return nil, err
	}
	if from == list && (index == i || index == i+1) {
		return f.render() // it is there already
	}
	out, err := f.copyEntry(item, list, index)
	if err != nil {
		return nil, err
	}
	again, err := open(out)
	if err != nil {
		return nil, err
	}
	return again.deleteEntry(shifted(item, list, index))
}

// shifted is the path of an entry after another was put into a list.
func shifted(path, list string, index int) string {
	rest, ok := strings.CutPrefix(path, list+"/")
	if !ok {
		return path
	}
	here, below, deeper := strings.Cut(rest, "/")
	n := atoi(here)
	if index <= n {
		n++
	}
	path = list + "/" + itoa(n)
	if deeper {
		path += "/" + below
	}
	return path
}

func (f *file) wrapEntries(item string, count int, entry json.RawMessage) ([]byte, error) {
	first, err := f.placeAt(item)
	if err != nil {
		return nil, err
	}
	l := first.list
	if flow(l) {
		return nil, f.cannot(l, "its entries are written in one line")
	}
	if count < 1 || first.index+count > len(l.Content) {
		return nil, errors.New("edit: there are not so many entries")
	}
	head, err := treeOfJSON(entry)
	if err != nil {
		return nil, err
	}
	from, _ := f.extent(first)
	_, to := f.extent(place{l, first.index + count - 1})
	dash := indent(l)
	var b strings.Builder
	for i, k := range head.keys {
		lead := dash + "  "
		if i == 0 {
			lead = dash + "- "
		}
		b.WriteString(lead + k + ": " + head.items[i].spell(false, false) + f.eol)
	}
	b.WriteString(dash + "  do:" + f.eol)
	b.WriteString(shift(string(f.src[from:to]), dash, dash+"    ", f.eol))
	f.splice(from, to, b.String())
	return f.render()
}

func (f *file) unwrapEntry(item string) ([]byte, error) {
	at, err := f.placeAt(item)
	if err != nil {
		return nil, err
	}
	inside, err := f.node(item + "/do")
	if err != nil {
		return nil, err
	}
	if flow(at.list) || flow(at.node()) || flow(inside) || len(inside.Content) == 0 {
		return nil, f.cannot(at.node(), "its entries are written in one line")
	}
	from, to := f.extent(at)
	first, _ := f.extent(place{inside, 0})
	_, last := f.extent(place{inside, len(inside.Content) - 1})
	text := shift(string(f.src[first:last]), indent(inside), indent(at.list), f.eol)
	f.splice(from, max(to, last), text)
	return f.render()
}
