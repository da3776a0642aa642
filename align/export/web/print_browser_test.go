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
	for class, m := range map[string]*align.CountMap{"demo": mapOf(t, demoClass(t)), "long": mapOf(t, longClass())} {
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

func checkPrint(t *testing.T, b *tab, m *align.CountMap, name string, paper chromedp.PaperSize) {
	t.Helper()
	pdf, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPaper(paper), chromedp.PDFLandscape(), chromedp.PDFMargin(10/25.4)))
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
	n := 1
	for i, p := range m.Parts {
		sheets := sheetsOf(m, i)
		if long := p.Part == "Without end"; long != (len(sheets) > 1) {
			t.Errorf("%s: %d sheets for %s", name, len(sheets), p.Part)
		}
		for _, s := range sheets {
			n++
			checkSheet(t, name, file, n, p.Part, s)
		}
	}
	info := program(t, "pdfinfo", file)
	if want := "Pages: " + strconv.Itoa(n); !strings.Contains(strings.Join(strings.Fields(info), " "), want) {
		t.Errorf("%s: want %s in\n%s", name, want, info)
	}
}

var word = regexp.MustCompile(`<word xMin="([0-9.-]+)" yMin="([0-9.-]+)" xMax="([0-9.-]+)" yMax="([0-9.-]+)">`)

func checkSheet(t *testing.T, paper, file string, page int, part string, s sheet) {
	t.Helper()
	n := strconv.Itoa(page)
	text := strings.Join(strings.Fields(program(t, "pdftotext", "-f", n, "-l", n, "-layout", file, "-")), " ")
	for _, want := range append([]string{part, s.More}, cautions...) {
		if !strings.Contains(text, want) {
			t.Errorf("%s, sheet %s: no %q", paper, n, want)
		}
	}
	for _, l := range s.Lines {
		if l.Thin && len(l.Where) > 0 && !strings.Contains(text, l.Where[0]) {
			t.Errorf("%s, sheet %s: no %q", paper, n, l.Where[0])
		}
		for _, w := range strings.Fields(strings.Join(slices.Concat([]string{l.What, l.Dose, l.Time}, l.Notes, l.Where), " ")) {
			if !strings.Contains(text, w) {
				t.Errorf("%s, sheet %s: %q of %q is missing", paper, n, w, l.What)
			}
		}
	}
	box := program(t, "pdftotext", "-f", n, "-l", n, "-bbox", file, "-")
	size := regexp.MustCompile(`<page width="([0-9.]+)" height="([0-9.]+)">`).FindStringSubmatch(box)
	if size == nil {
		t.Fatalf("no size in %s", box)
	}
	for _, w := range word.FindAllStringSubmatch(box, -1) {
		if number(t, w[1]) < 0 || number(t, w[2]) < 0 || number(t, w[3]) > number(t, size[1]) || number(t, w[4]) > number(t, size[2]) {
			t.Errorf("%s, sheet %s: a word is off the paper: %s", paper, n, w[0])
		}
	}
}

func program(t *testing.T, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(name, args...).CombinedOutput()
	if err != nil {
		t.Fatalf("%s: %s: %s", name, err, out)
	}
	return string(out)
}
