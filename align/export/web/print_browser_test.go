package web

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"onphrase/align"
)

// A sheet a part and one for the class, on both papers, with every word of
// every line on the paper; a part that is too long for one sheet has more, each
// with its heading and the cautions. pdfinfo and pdftotext read what was printed.
func TestPrint(t *testing.T) {
	for _, program := range []string{"pdfinfo", "pdftotext"} {
		if _, err := exec.LookPath(program); err != nil {
			t.Skip("NO POPPLER: the sheets were not looked at; install poppler-utils")
		}
	}
	b := newTab(t, 1024, 768)
	for class, m := range map[string]*align.CountMap{"demo": mapOf(t, demoClass(t)), "long": mapOf(t, longClass()),
		"crowded": crowdedMap(t)} {
		b.show(pageFile(t, m), "stage") // sheets are printed whatever is shown
		for name, paper := range map[string]chromedp.PaperSize{"A4": chromedp.PaperA4, "Letter": chromedp.PaperLetter} {
			checkPrint(t, b, m, class+"-"+name, paper)
		}
	}
}

// longClass is a class whose second part is too long for one sheet: sets that
// wait for their phrase, with much to say.
func longClass() string {
	var b strings.Builder
	b.WriteString(follow + "  - part: Without end\n    kind: mixed\n    tracks: [tidewater.mp3, slow-ferry.mp3, gantry-nine.mp3]\n    do:\n")
	for range 20 {
		b.WriteString(`      - {set: bent-over row, reps: "2 x 4-4, 2 x 2-2", sides: both, range: half, on: phrase, cue: long spine and the bar close to the legs, easier: one weight in both hands, harder: pause at the ribs for a count}` + "\n")
	}
	b.WriteString(`      - {block: A, build: add-on, sides: both, moves: [{move: march, counts: 16}, {move: grapevine, counts: 16}]}` + "\n")
	return b.String()
}

// crowdedMap is a class of many parts, each on eight songs with long names, in
// which much is found.
func crowdedMap(t *testing.T) *align.CountMap {
	songs := []string{"tidewater.mp3", "slow-ferry.mp3", "gantry-nine.mp3", "mooring-parade.mp3", "brinewalk.mp3",
		"lockkeepers-hurry.mp3", "ropewalk-shuffle.mp3", "ebb-and-lantern.mp3"}
	var b strings.Builder
	b.WriteString("onphrase: 1\nclass: A class in which nothing lands where it was meant to and that has a very long name\nslot: \"9:00\"\nparts:\n")
	for i := range 10 {
		b.WriteString("  - part: Round " + strconv.Itoa(i+1) + " of them all, legs and back and shoulders, then all of it together once more to the end\n    kind: strength\n    tracks: [" + strings.Join(songs, ", ") + "]\n    do:\n")
		for range 3 {
			b.WriteString(`      - {set: bent-over row, reps: "3 x 1-1, 5 x 2-2", weight: heavy}` + "\n" +
				`      - {set: deadlift, reps: "7 x 1-1", weight: light}` + "\n")
		}
	}
	m := mapOf(t, b.String())
	for i := range m.Parts {
		for j := range m.Parts[i].Tracks {
			song := &m.Parts[i].Tracks[j]
			song.Used, song.Title = true, strconv.Itoa(j+1)+" What the Lamplighter Hummed on Her Way Down to the Old Lighthouse"
		}
	}
	if len(m.Findings) == 0 {
		t.Fatal("nothing found")
	}
	for len(m.Findings) < 40 { // one cause is said once: so many are made here
		m.Findings = append(m.Findings, m.Findings...)
	}
	return m
}

func checkPrint(t *testing.T, b *tab, m *align.CountMap, name string, paper chromedp.PaperSize) {
	t.Helper()
	pdf, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPaper(paper), chromedp.PDFLandscape(),
		chromedp.PDFMargin(10/25.4)))
	if err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), name+".pdf")
	if *shots != "" {
		file = filepath.Join(*shots, name+".pdf")
	}
	if err := os.WriteFile(file, pdf, 0o644); err != nil {
		t.Fatal(err)
	}
	sheets, _ := summariesOf(documentOf(m, cautions))
	if crowded := strings.HasPrefix(name, "crowded"); crowded != (len(sheets) > 1) {
		t.Errorf("%s: %d sheets for the summary", name, len(sheets))
	}
	n := 0
	for _, s := range sheets {
		n++
		checkSummary(t, name, file, n, m, s)
	}
	for i, p := range m.Parts {
		sheets := sheetsOf(m, i)
		if long := p.Part == "Without end"; long != (len(sheets) > 1) {
			t.Errorf("%s: %d sheets for %s", name, len(sheets), p.Part)
		}
		for _, s := range sheets {
			n++
			checkSheet(t, name, file, n, p, s)
		}
	}
	info := program(t, "pdfinfo", file)
	if want := "Pages: " + strconv.Itoa(n); !strings.Contains(strings.Join(strings.Fields(info), " "), want) {
		t.Errorf("%s: want %s in\n%s", name, want, info)
	}
}

var word = regexp.MustCompile(`<word xMin="([0-9.-]+)" yMin="([0-9.-]+)" xMax="([0-9.-]+)" yMax="([0-9.-]+)">`)

// checkSummary holds a sheet of the class as a whole against what it is made of.
func checkSummary(t *testing.T, paper, file string, page int, m *align.CountMap, s summary) {
	t.Helper()
	words := []string{m.Class, s.More}
	if s.Again {
		words = append(words, "continued")
	}
	for _, p := range s.Parts {
		words = append(append(words, p.Name, p.Span), p.Music...)
	}
	for _, f := range s.Found {
		words = append(words, f.Label, f.Where, f.Message, f.Fix)
	}
	checkWords(t, paper, file, page, words)
}

func checkSheet(t *testing.T, paper, file string, page int, p align.Part, s sheet) {
	t.Helper()
	words := append([]string{p.Part, s.More}, musicOf(p)...)
	for _, l := range s.Lines {
		words = append(words, slices.Concat([]string{l.What, l.Dose, l.Time}, l.Notes, l.Where)...)
	}
	text := checkWords(t, paper, file, page, words)
	for _, l := range s.Lines {
		if l.Thin && len(l.Where) > 0 && !strings.Contains(text, l.Where[0]) {
			t.Errorf("%s, sheet %d: no %q", paper, page, l.Where[0])
		}
	}
}

// checkWords looks for the cautions and every word on a sheet, as often as it is said, none of them off
// the paper. It returns what can be read.
func checkWords(t *testing.T, paper, file string, page int, words []string) string {
	t.Helper()
	n := strconv.Itoa(page)
	text := strings.Join(strings.Fields(program(t, "pdftotext", "-f", n, "-l", n, "-layout", file, "-")), " ")
	for _, want := range cautions {
		if !strings.Contains(text, want) {
			t.Errorf("%s, sheet %s: no %q", paper, n, want)
		}
	}
	seen := map[string]int{}
	// lines end after a hyphen, too
	for _, w := range strings.FieldsFunc(strings.Join(words, " "), func(r rune) bool { return r == ' ' || r == '-' }) {
		if seen[w]++; strings.Count(text, w) < seen[w] {
			t.Errorf("%s, sheet %s: %q is missing", paper, n, w)
		}
	}
	box := program(t, "pdftotext", "-f", n, "-l", n, "-bbox", file, "-")
	size := regexp.MustCompile(`<page width="([0-9.]+)" height="([0-9.]+)">`).FindStringSubmatch(box)
	if size == nil {
		t.Fatalf("no size in %s", box)
	}
	for _, w := range word.FindAllStringSubmatch(box, -1) {
		if number(t, w[1]) < 0 || number(t, w[2]) < 0 || number(t, w[3]) > number(t, size[1]) ||
			number(t, w[4]) > number(t, size[2]) {
			t.Errorf("%s, sheet %s: a word is off the paper: %s", paper, n, w[0])
		}
	}
	return text
}

func program(t *testing.T, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(name, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %s: %s", name, err, out)
	}
	return string(out)
}
