package align

import (
	"fmt"
	"strings"
)

// Sequence writes the moves of a block, what repeats once: "8 x (march 2,
// step touch 2)".
func Sequence(steps []Step) string {
	var all []string
	for _, s := range steps {
		text := fmt.Sprintf("%s %d", s.Move, s.Counts)
		if len(s.With) > 0 {
			text += " with " + strings.Join(s.With, " and ")
		}
		all = append(all, text)
	}
	for n := 1; n <= len(all)/2; n++ {
		if repeats(all, n) {
			return fmt.Sprintf("%d x (%s)", len(all)/n, strings.Join(all[:n], ", "))
		}
	}
	return strings.Join(all, ", ")
}

// repeats reports whether a list is its first n entries over and over.
func repeats(all []string, n int) bool {
	if len(all)%n != 0 {
		return false
	}
	for i := range all {
		if all[i] != all[i%n] {
			return false
		}
	}
	return true
}

// SideWords is the side of the class, and the instructor's own where she faces
// it.
func (r Row) SideWords() string {
	if r.Mirror == "" {
		return r.Side
	}
	return fmt.Sprintf("%s (you %s)", r.Side, r.Mirror)
}
