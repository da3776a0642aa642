package plan

import "fmt"

// Problem is something in a class file that cannot be understood. All of a
// file's problems are reported at once.
type Problem struct {
	Pos  Pos
	Msg  string // what was read and why it does not do
	Hint string // what was probably meant
}

// In formats the problem as file:line:column, with its hint on a second line.
func (p Problem) In(file string) string {
	s := fmt.Sprintf("%s:%d:%d: %s", file, p.Pos.Line, p.Pos.Col, p.Msg)
	if p.Hint != "" {
		s += "\n  hint: " + p.Hint
	}
	return s
}
