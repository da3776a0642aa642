package export

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"onphrase/align"
)

// csvHead names the columns, with the names of the JSON form.
var csvHead = []string{
	"part", "track", "row", "kind", "item", "side", "phrase", "count", "counts", "reps", "rhythm",
	"track_time", "class_time", "seconds", "cue_time", "cue_counts", "placed", "pass", "passes",
	"moves", "weight", "range", "cue", "easier", "harder",
	"stage", "rounds", "pattern", "so_far", "of_all", "load_seconds", "line", "findings",
}

// writeCSV writes a line a row after RFC 4180. What a row's findings say is
// its last cell; those about the whole class follow in lines of their own.
func writeCSV(w io.Writer, m *align.CountMap) error {
	c := csv.NewWriter(w)
	c.UseCRLF = true
	if err := c.Write(csvHead); err != nil {
		return err
	}
	found := map[int][]string{}
	for _, f := range m.Findings {
		for _, row := range append([]int{f.Row}, f.Also...) {
			found[row] = append(found[row], fmt.Sprintf("%s: %s; try: %s", f.Severity, f.Message, f.Fix))
		}
	}
	for _, f := range m.Known {
		for _, row := range append([]int{f.Row}, f.Also...) {
			found[row] = append(found[row], fmt.Sprintf("yours: %s; %s", f.Message, f.Reason))
		}
	}
	for _, r := range m.Rows {
		if err := c.Write(csvCells(r, strings.Join(found[r.Row], " / "))); err != nil {
			return err
		}
	}
	for _, f := range found[0] {
		line := make([]string, len(csvHead))
		line[len(line)-1] = cell(f)
		if err := c.Write(line); err != nil {
			return err
		}
	}
	c.Flush()
	return c.Error()
}

// csvCells are the cells of a row. A rhythm is in words, because a spreadsheet
// takes 2-2 for the second of February.
func csvCells(r align.Row, found string) []string {
	seconds := func(v float64) string {
		if !r.Placed { // unknown, not nought
			return ""
		}
		return strconv.FormatFloat(v, 'f', 3, 64)
	}
	return []string{
		cell(r.Part), cell(r.Track), strconv.Itoa(r.Row), string(r.Kind), cell(r.Item), r.Side,
		figure(r.Phrase), figure(r.Count), strconv.Itoa(r.Counts), figure(r.Reps), r.Rhythm.Words(),
		seconds(r.TrackTime), seconds(r.ClassTime), seconds(r.Seconds), seconds(r.CueTime), strconv.Itoa(r.CueCounts),
		strconv.FormatBool(r.Placed), figure(r.Pass), figure(r.Passes),
		cell(align.Sequence(r.Moves)), cell(r.Weight), string(r.Range), cell(r.Cue), cell(r.Easier), cell(r.Harder),
		figure(r.Stage), cell(strings.Join(append(roundsOf(r), turnOf(r)...), ", ")), cell(r.Pattern), figure(r.SoFar),
		figure(r.OfAll), loadOf(r),
		figure(r.Line), cell(found),
	}
}

// loadOf is a set's time under load [s], nothing for other rows.
func loadOf(r align.Row) string {
	if r.Load == 0 {
		return ""
	}
	return strconv.FormatFloat(r.Load, 'f', 3, 64)
}

// cell makes text harmless: a spreadsheet runs a cell that begins with one
// of these characters as a formula. The apostrophe makes it text.
func cell(s string) string {
	s = strings.ReplaceAll(s, "\x00", "")
	if s != "" && strings.ContainsRune("=+-@\t\r\n＝＋－＠", []rune(s)[0]) {
		return "'" + s
	}
	return s
}
