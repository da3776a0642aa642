package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"golang.org/x/term"
)

// defaultWidth is assumed where there is no terminal to ask [columns].
const defaultWidth = 80

// streams is the outside world of a command: what it reads and writes, and
// what the reader's screen can show.
type streams struct {
	in  io.Reader
	out io.Writer // the product
	err io.Writer // the talk

	live  bool // err is a terminal: progress may move
	color bool // out is a terminal and nobody asked for no colour
	width int  // of out [columns]
}

// terminalStreams looks at the real terminal and the NO_COLOR variable
// (no-color.org: any value but the empty one turns colour off).
func terminalStreams() *streams {
	s := &streams{in: os.Stdin, out: os.Stdout, err: os.Stderr, width: defaultWidth}
	s.live = term.IsTerminal(int(os.Stderr.Fd())) && os.Getenv("TERM") != "dumb"
	if !term.IsTerminal(int(os.Stdout.Fd())) {
		return s
	}
	s.color = os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb"
	if w, _, err := term.GetSize(int(os.Stdout.Fd())); err == nil && w > 0 {
		s.width = w
	}
	return s
}

// say writes one line of talk. It begins with the program's name, in lower
// case and without a full stop, so that it can be told from other programs'.
func (s *streams) say(format string, args ...any) {
	fmt.Fprintf(s.err, "onphrase: "+format+"\n", args...)
}

// report says what went wrong and the way out.
func (s *streams) report(f *failure) {
	if f.msg != "" {
		s.say("%s", strings.ReplaceAll(f.msg, "\n", "\n  "))
	}
	if f.hint != "" {
		s.say("hint: %s", f.hint)
	}
}
