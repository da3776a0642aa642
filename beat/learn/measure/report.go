package main

import (
	"cmp"
	"fmt"
	"math"
	"slices"
)

// report prints a line for each group and for all.
func report(rows []row, all bool) {
	slices.SortStableFunc(rows, func(a, b row) int { return cmp.Compare(a.group, b.group) })
	fmt.Println("group\tn\tF\tCMLt\tAMLt\tAcc1\tcount 1 F\tmedian error ms")
	var music []row
	for i := 0; i < len(rows); {
		j := i
		for j < len(rows) && rows[j].group == rows[i].group {
			if r := rows[j]; all {
				fmt.Printf("  %s\t%.3f\t%.3f\t%.3f\t%.0f\t%.3f\t%.1f\tbpm %.1f want %.1f\tsure %.2f\n", r.id, r.F, r.CMLt, r.AMLt,
					r.acc1, r.one, 1000*r.err, r.bpm, r.want, r.sure)
			}
			if rows[j].want > 0 {
				music = append(music, rows[j])
			}
			j++
		}
		line(rows[i].group, rows[i:j])
		i = j
	}
	line("all music", music)
}

func line(name string, rows []row) {
	fmt.Printf("%s\t%d\t%.3f\t%.3f\t%.3f\t%.3f\t%.3f\t%.1f\n", name, len(rows),
		mean(rows, func(r row) float64 { return r.F }),
		mean(rows, func(r row) float64 { return r.CMLt }), mean(rows, func(r row) float64 { return r.AMLt }),
		mean(rows, func(r row) float64 { return r.acc1 }), mean(rows, func(r row) float64 { return r.one }),
		1000*mean(rows, func(r row) float64 { return r.err }))
}

// mean leaves out what is not a number.
func mean(rows []row, f func(row) float64) float64 {
	sum, n := 0.0, 0
	for _, r := range rows {
		if v := f(r); !math.IsNaN(v) {
			sum += v
			n++
		}
	}
	return sum / float64(max(1, n))
}
