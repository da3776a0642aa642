package edit

import (
	"errors"
	"slices"
	"strings"
)

// render writes the file with all that is replaced in it.
func (f *file) render() ([]byte, error) {
	slices.SortStableFunc(f.splices, func(a, b splice) int { return a.from - b.from })
	slices.SortFunc(f.swaps, func(a, b swapped) int { return a.a0 - b.a0 })
	for i := 1; i < len(f.splices); i++ {
		if f.splices[i-1].to > f.splices[i].from {
			return nil, errors.New("edit: two changes of the same place")
		}
	}
	for i := 1; i < len(f.swaps); i++ {
		if f.swaps[i-1].b1 > f.swaps[i].a0 {
			return nil, errors.New("edit: one item is exchanged twice")
		}
	}
	var b strings.Builder
	b.Write(f.bom)
	at := 0
	for _, s := range f.swaps {
		f.copy(&b, at, s.a0)
		f.copy(&b, s.b0, s.b1)
		f.copy(&b, s.a1, s.b0)
		f.copy(&b, s.a0, s.a1)
		at = s.b1
	}
	f.copy(&b, at, len(f.src))
	for _, s := range f.splices {
		if s.from == len(f.src) { // nothing follows that it could belong to
			b.WriteString(s.text)
		}
	}
	out := b.String()
	return []byte(out[:len(out)-f.added]), nil
}

// copy writes a stretch of the file. What is inserted at its end belongs to
// what follows.
func (f *file) copy(b *strings.Builder, from, to int) {
	for _, s := range f.splices {
		if s.from < from || s.from >= to {
			continue
		}
		b.Write(f.src[from:s.from])
		b.WriteString(s.text)
		from = s.to
	}
	b.Write(f.src[from:to])
}
