package main

import (
	"runtime"
	"runtime/debug"
)

// roomy sets the memory as cmd/onphrase does, so that what is measured is what
// people get.
func roomy() {
	const percent, each = 200, 220 << 20
	debug.SetGCPercent(percent)
	debug.SetMemoryLimit(int64(runtime.GOMAXPROCS(0)) * each)
}
