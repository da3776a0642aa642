package main

import (
	"encoding/csv"
	"fmt"
	"os"
	"syscall"
)

// writeCSV writes one line a track.
func writeCSV(file string, all []result) error {
	f, err := os.Create(file)
	if err != nil {
		return err
	}
	w := csv.NewWriter(f)
	w.Write([]string{"id", "source", "style", "F", "CMLt", "AMLt", "count1", "phrase", "bpm", "truth", "trust", "miss",
		"error_ms", "bias_ms"})
	for _, r := range all {
		n := func(v float64) string { return fmt.Sprintf("%.3f", v) }
		w.Write([]string{r.id, r.source, r.style, n(r.F), n(r.CMLt), n(r.AMLt), n(r.one), n(r.phrase), n(r.track.BPM),
			n(r.bpm),
			n(r.track.Trust.Beat), r.miss, n(1000 * median(absolute(r.errs))), n(1000 * median(r.errs))})
	}
	w.Flush()
	if err := w.Error(); err != nil {
		f.Close()
		return err
	}
	return f.Close()
}

// cpuSeconds is the CPU time that this process and its ended children took.
func cpuSeconds() float64 {
	sum := 0.0
	for _, who := range []int{syscall.RUSAGE_SELF, syscall.RUSAGE_CHILDREN} {
		var u syscall.Rusage
		if syscall.Getrusage(who, &u) == nil {
			sum += seconds(u.Utime) + seconds(u.Stime)
		}
	}
	return sum
}

func seconds(t syscall.Timeval) float64 { return float64(t.Sec) + float64(t.Usec)/1e6 }
