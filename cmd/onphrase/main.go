// Command onphrase aligns a group-fitness class to the instructor's own music:
// it finds the counts and phrases of her files, lays the class on them, and
// writes a count map she can teach from, with honest flags.
//
// Results go to standard output, talk and progress to standard error. It exits
// with 0 when all is clean, 1 when something failed, 2 on wrong usage and 3
// when there are findings to fix.
package main

import (
	"context"
	"os"
	"os/signal"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	// After the first Ctrl-C, which ends the work in order, a second one kills.
	context.AfterFunc(ctx, stop)
	os.Exit(int(run(ctx, os.Args[1:], terminalStreams())))
}
