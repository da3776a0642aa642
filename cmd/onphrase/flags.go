package main

import (
	"errors"
	"fmt"

	"github.com/spf13/pflag"
)

// flagProblem says in plain words what is wrong with a flag.
func flagProblem(err error) string {
	var wrong *pflag.InvalidValueError
	if !errors.As(err, &wrong) {
		return err.Error()
	}
	flag := wrong.GetFlag()
	switch flag.Value.Type() {
	case "int":
		return fmt.Sprintf("--%s takes a whole number, not %q", flag.Name, wrong.GetValue())
	case "bool":
		return fmt.Sprintf("--%s stands alone, without %q", flag.Name, wrong.GetValue())
	}
	return err.Error()
}
