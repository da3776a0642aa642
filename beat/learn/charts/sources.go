package main

import (
	"fmt"
	"os"
	"strings"
)

// source is a folder of charts of one maker or several friends.
type source struct {
	name    string // owner+repository: the folder
	part    string // learn, choose or untouched
	licence string
	use     string // learn: may go into weights; measure: only to be measured
	vocals  string // none, synthetic, sung, or ? where nobody listened
	maker   string // who the songs are by; files of one maker lie in one part
	doubt   string // "downbeat": the charts begin on any count, so where bars start is in doubt; else empty
}

// readSources reads the table, tabs between columns, its first line the names.
func readSources(file string) ([]source, error) {
	data, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	var out []source
	for n, line := range strings.Split(strings.TrimRight(string(data), "\n"), "\n") {
		f := strings.Split(line, "\t")
		if n == 0 {
			continue
		}
		if len(f) != 7 {
			const want = "repository, part, licence, use, vocals, maker, doubt"
			return nil, fmt.Errorf("%s:%d: %d columns, not the 7 of %s", file, n+1, len(f), want)
		}
		s := source{f[0], f[1], f[2], f[3], f[4], f[5], f[6]}
		if !oneOf(s.part, "learn", "choose", "untouched") || !oneOf(s.use, "learn", "measure") {
			const want = "write learn, choose or untouched, and learn or measure"
			return nil, fmt.Errorf("%s:%d: part %q and use %q: %s", file, n+1, s.part, s.use, want)
		}
		if !oneOf(s.doubt, "", "downbeat") {
			return nil, fmt.Errorf("%s:%d: doubt %q: write downbeat, or nothing", file, n+1, s.doubt)
		}
		out = append(out, s)
	}
	return out, nil
}

func oneOf(s string, of ...string) bool {
	for _, o := range of {
		if s == o {
			return true
		}
	}
	return false
}
