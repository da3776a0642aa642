package decode

import (
	"fmt"
	"strconv"
)

// Error says why a file gives no sound, in words for the person whose file it
// is.
type Error struct {
	Place string // where it was found, such as "wav"; may be empty
	Msg   string
	Hint  string // the way out; may be empty
}

func (e *Error) Error() string {
	s := e.Msg
	if e.Place != "" {
		s = e.Place + ": " + s
	}
	if e.Hint != "" {
		s += " (" + e.Hint + ")"
	}
	return s
}

// notAudio is the error for a file that holds no sound; looks says what it
// seems to be instead.
func notAudio(looks string) error {
	return &Error{Msg: "not an audio file: " + looks}
}

// unsupportedError names an encoding that no built-in decoder handles, so that
// ffmpeg may.
type unsupportedError string

func (e unsupportedError) Error() string { return string(e) }

// plural writes a number of things: "1 frame", "3 frames".
func plural[N int | int64](n N, thing string) string {
	s := strconv.FormatInt(int64(n), 10) + " " + thing
	if n != 1 {
		s += "s"
	}
	return s
}

// recovered turns a panic of a decoding library into an error. Defer it with
// the address of the error that the function returns.
func recovered(err *error) {
	if p := recover(); p != nil {
		*err = fmt.Errorf("the decoder failed: %v", p)
	}
}
