// Package told makes errors for the person in front of the screen: what went
// wrong, in plain words, and the way out where there is one.
package told

import (
	"errors"
	"fmt"
	"io/fs"
)

// Error is an error with the way out.
type Error struct {
	Hint string // empty where there is none
	err  error
}

// Error says what went wrong.
func (e *Error) Error() string { return e.err.Error() }

// Unwrap gives the cause, where the message was made with %w.
func (e *Error) Unwrap() error { return errors.Unwrap(e.err) }

// Failed says that the work could not be done, and what to do about it. The
// hint may be empty.
func Failed(hint, format string, args ...any) error {
	return &Error{Hint: hint, err: fmt.Errorf(format, args...)}
}

// Reason is the heart of a file error, without the operation and the path that
// stand beside it anyway.
func Reason(err error) string {
	var pathErr *fs.PathError
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return "no such file"
	case errors.As(err, &pathErr):
		return pathErr.Err.Error()
	}
	return fmt.Sprint(err)
}
