package export

import (
	"fmt"
	"io"
	"sort"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// writeLRC writes a line for everything that begins and everything that is
// announced, as music players show them beside a song.
//
// The format has no standard. Common practice, no source: tags such as
// [ti:title], then [mm:ss.xx] before every line, UTF-8.
func writeLRC(w io.Writer, m *align.CountMap) error {
	var b strings.Builder
	n := milliseconds(m.Length) / 1000
	fmt.Fprintf(&b, "[ti:%s]\n[length:%02d:%02d]\n[re:onphrase]\n", lrcText.Replace(say.OneLine(m.Class)), n/60, n%60)
	all := notes(acts(m))
	sort.SliceStable(all, func(i, j int) bool { return all[i].from < all[j].from })
	for _, l := range all {
		fmt.Fprintf(&b, "[%s]%s\n", lrcStamp(l.from), lrcText.Replace(l.text))
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// lrcStamp writes a time as mm:ss.xx. What is a little early is shown early,
// not late.
func lrcStamp(seconds float64) string {
	n := milliseconds(seconds) / 10
	return fmt.Sprintf("%02d:%02d.%02d", n/6000, n/100%60, n%100)
}

// lrcText replaces the brackets that stand for times, which the format has no
// way to write, and the signs of playerText.
var lrcText = strings.NewReplacer("[", "(", "]", ")", "<", "‹", ">", "›", "{", "(", "}", ")", `\`, "/")
