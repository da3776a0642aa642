package main

import (
	"fmt"
	"strings"
)

// around is how many lines that stay are shown round those that change.
const around = 3

// unified writes the difference of two texts line by line, with the fewest
// lines taken out and put in, in the unified form that other programs read.
//
// Ref: IEEE Std 1003.1-2017, diff, "Diff -u Output Format".
func unified(was, is, wasName, isName string) string {
	a, b := splitLines(was), splitLines(is)
	all := differ(a, b)
	var out strings.Builder
	fmt.Fprintf(&out, "--- %s\n+++ %s\n", wasName, isName)
	for i := 0; i < len(all); {
		if all[i].sign == ' ' {
			i++
			continue
		}
		from, to := max(0, i-around), i
		for j := i; j < len(all) && j <= to+2*around; j++ {
			if all[j].sign != ' ' {
				to = j
			}
		}
		end := min(len(all), to+1+around)
		writeHunk(&out, all[from:end])
		i = end
	}
	return out.String()
}

// line is one of a difference: ' ' stays, '-' goes, '+' comes. a and b are
// the lines before it in either text.
type line struct {
	sign byte
	text string
	a, b int
}

// splitLines splits a text behind its line ends.
func splitLines(text string) []string {
	lines := strings.SplitAfter(text, "\n")
	if lines[len(lines)-1] == "" {
		lines = lines[:len(lines)-1]
	}
	return lines
}

// differ finds the longest common lines of two texts by dynamic programming.
func differ(a, b []string) []line {
	common := make([][]int, len(a)+1) // of a[i:] and b[j:]
	for i := range common {
		common[i] = make([]int, len(b)+1)
	}
	for i := len(a) - 1; i >= 0; i-- {
		for j := len(b) - 1; j >= 0; j-- {
			if a[i] == b[j] {
				common[i][j] = common[i+1][j+1] + 1
			} else {
				common[i][j] = max(common[i+1][j], common[i][j+1])
			}
		}
	}
	var out []line
	for i, j := 0, 0; i < len(a) || j < len(b); {
		switch {
		case i < len(a) && j < len(b) && a[i] == b[j]:
			out = append(out, line{' ', a[i], i, j})
			i, j = i+1, j+1
		case j == len(b) || i < len(a) && common[i+1][j] >= common[i][j+1]:
			out = append(out, line{'-', a[i], i, j})
			i++
		default:
			out = append(out, line{'+', b[j], i, j})
			j++
		}
	}
	return out
}

func writeHunk(out *strings.Builder, hunk []line) {
	inA, inB := 0, 0
	for _, l := range hunk {
		if l.sign != '+' {
			inA++
		}
		if l.sign != '-' {
			inB++
		}
	}
	fmt.Fprintf(out, "@@ -%s +%s @@\n", span(hunk[0].a, inA), span(hunk[0].b, inB))
	for _, l := range hunk {
		out.WriteByte(l.sign)
		out.WriteString(l.text)
		if !strings.HasSuffix(l.text, "\n") {
			out.WriteString("\n\\ No newline at end of file\n")
		}
	}
}

// span writes where lines stand; of none, the line before them.
func span(before, n int) string {
	if n == 0 {
		return fmt.Sprintf("%d,0", before)
	}
	return fmt.Sprintf("%d,%d", before+1, n)
}
