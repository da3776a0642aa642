package main

import (
	"errors"
	"fmt"

	"onphrase/cmd/internal/told"
)

// exitCode is what the shell is told.
type exitCode int

const (
	exitClean    exitCode = 0
	exitFailed   exitCode = 1
	exitUsage    exitCode = 2
	exitFindings exitCode = 3 // all worked, and there is something to fix in the class
)

// failure is an error that knows its exit code and, where there is one, the
// way out. The commands' own packages make theirs with told.Failed.
type failure struct {
	code exitCode
	msg  string // may be empty when all has been said already
	hint string
	err  error // the cause, for errors.Is
}

func (f *failure) Error() string { return f.msg }
func (f *failure) Unwrap() error { return f.err }

// usage says that the command line cannot be understood.
func usage(hint, format string, args ...any) error {
	return &failure{code: exitUsage, msg: fmt.Sprintf(format, args...), hint: hint}
}

// said ends with a code when the reasons are on the screen already.
func said(code exitCode) error { return &failure{code: code} }

// asFailure gives every error a code: those that nobody classified are
// failures of the work.
func asFailure(err error) *failure {
	var f *failure
	if errors.As(err, &f) {
		return f
	}
	var t *told.Error
	if errors.As(err, &t) {
		return &failure{code: exitFailed, msg: t.Error(), hint: t.Hint, err: err}
	}
	return &failure{code: exitFailed, msg: err.Error(), err: err}
}
