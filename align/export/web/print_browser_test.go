package web

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"onphrase/align"
)

// A sheet a part and one for the class, on both papers, with every word of
// every line on the paper. pdfinfo and pdftotext read what was printed.
func TestPrint(t *testing.T) {
	for _, program := range []string{"pdfinfo", "pdftotext"} {
		if _, err := exec.LookPath(program); err != nil {
			t.Skip("NO POPPLER: the sheets were not looked at; install poppler-utils")
		}
	}
	m := mapOf(t, demoClass(t))
	b := newTab(t, 1024, 768)
	b.show(pageFile(t, m), "stage") // sheets are printed whatever is shown
	for name, paper := range map[string]chromedp.PaperSize{"A4": chromedp.PaperA4, "Letter": chromedp.PaperLetter} {
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
		info := program(t, "pdfinfo", file)
		if want := "Pages: " + strconv.Itoa(1+len(m.Parts)); !strings.Contains(strings.Join(strings.Fields(info), " "), want) {
			t.Errorf("%s: want %s in\n%s", name, want, info)
			continue
		}
		for i := range m.Parts {
			checkSheet(t, name, file, m, i)
		}
	}
}

var word = regexp.MustCompile(`<word xMin="([0-9.-]+)" yMin="([0-9.-]+)" xMax="([0-9.-]+)" yMax="([0-9.-]+)">`)

func checkSheet(t *testing.T, paper, file string, m *align.CountMap, part int) {
	t.Helper()
	n := strconv.Itoa(2 + part)
	text := strings.Join(strings.Fields(program(t, "pdftotext", "-f", n, "-l", n, "-layout", file, "-")), " ")
	for _, want := range append([]string{m.Parts[part].Part}, cautions...) {
		if !strings.Contains(text, want) {
			t.Errorf("%s, sheet %s: no %q", paper, n, want)
		}
	}
	for _, l := range linesOf(m.RowsOf(part)) {
		for _, w := range strings.Fields(l.What + " " + l.Dose + " " + l.Time) {
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
