package main

import (
	"bufio"
	"bytes"
	"fmt"
	"os"
	"runtime"
	"runtime/debug"
	"syscall"
)

// roomy sets the memory as cmd/onphrase does, so that what is measured is what
// people get.
func roomy() {
	const percent, each = 200, 220 << 20
	debug.SetGCPercent(percent)
	debug.SetMemoryLimit(int64(runtime.GOMAXPROCS(0)) * each)
}

// peakMemory is the greatest resident memory of this process so far [MiB].
//
// Linux is asked for that of the program that runs now (VmHWM): its ru_maxrss,
// of a process that another one started, begins with the size of that other one.
func peakMemory() (float64, error) {
	if status, err := os.ReadFile("/proc/self/status"); err == nil {
		lines := bufio.NewScanner(bytes.NewReader(status))
		for lines.Scan() {
			var kib float64
			if _, err := fmt.Sscanf(lines.Text(), "VmHWM: %f kB", &kib); err == nil {
				return kib / 1024, nil
			}
		}
	}
	var usage syscall.Rusage
	if err := syscall.Getrusage(syscall.RUSAGE_SELF, &usage); err != nil {
		return 0, fmt.Errorf("this system does not tell the memory of a process: %w", err)
	}
	perMiB := 1 << 10 // most count in KiB
	if runtime.GOOS == "darwin" {
		perMiB = 1 << 20
	}
	return float64(usage.Maxrss) / float64(perMiB), nil
}
