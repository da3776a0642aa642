package main

import (
	"bytes"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"onphrase/align/fit"
	"onphrase/cmd/internal/demo"
	"onphrase/samples"
)

// A file that was changed after it was read is left alone, and so is every
// copy kept before.
func TestRewrite(t *testing.T) {
	path := filepath.Join(t.TempDir(), "class.yaml")
	write := func(text string) {
		t.Helper()
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	read := func(path string) string {
		t.Helper()
		b, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		return string(b)
	}
	write("changed by hand")
	if _, err := rewrite(path, []byte("as it was"), []byte("new")); err == nil ||
		!strings.Contains(err.Error(), "changed meanwhile") {
		t.Errorf("written over a change: %v", err)
	}
	if got := read(path); got != "changed by hand" {
		t.Errorf("the file is now %q", got)
	}
	var kept []string
	for _, text := range []string{"one", "two", "three"} {
		write(text)
		old, err := rewrite(path, []byte(text), []byte("new"))
		if err != nil {
			t.Fatal(err)
		}
		kept = append(kept, old)
		if read(path) != "new" || read(old) != text {
			t.Errorf("%q is kept as %q, the file is %q", text, read(old), read(path))
		}
	}
	if read(kept[0]) != "one" || read(kept[1]) != "two" || filepath.Base(kept[1]) != "class.before-fit-2.yaml" {
		t.Errorf("an older copy was replaced: %v", kept)
	}
	if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
		t.Errorf("the file's mode is now %v (%v)", info.Mode(), err)
	}
}

// Differences at random, applied by the patch program (GNU patch), give the
// other text; and they are no longer than those of the diff program.
func TestUnifiedAgainstPatch(t *testing.T) {
	for _, name := range []string{"patch", "diff"} {
		if _, err := exec.LookPath(name); err != nil {
			t.Skipf("%s is not installed: the difference is held against nothing", name)
		}
	}
	r := rand.New(rand.NewPCG(1, 2))
	for n := range 60 {
		dir := t.TempDir()
		var was, is strings.Builder
		for i := range 5 + r.IntN(40) {
			line := fmt.Sprintf("line %d\n", i%7)
			was.WriteString(line)
			switch r.IntN(8) {
			case 0:
			case 1:
				is.WriteString("other\n" + line)
			default:
				is.WriteString(line)
			}
		}
		a, b := was.String(), is.String()
		if n%3 == 0 {
			b = strings.TrimSuffix(b, "\n")
		}
		if a == b {
			continue
		}
		file, other := filepath.Join(dir, "class.yaml"), filepath.Join(dir, "other.yaml")
		for name, text := range map[string]string{file: a, other: b} {
			if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		ours := unified(a, b, "class.yaml", "class.yaml after plan 1")
		theirs, _ := exec.Command("diff", "-u", "--minimal", file, other).Output()
		if x, y := changedLines(ours), changedLines(string(theirs)); x > y {
			t.Errorf("%d lines change, diff changes %d:\n%s", x, y, ours)
		}
		cmd := exec.Command("patch", "--fuzz=0", "-s", file)
		cmd.Stdin = strings.NewReader(ours)
		if out, err := cmd.CombinedOutput(); err != nil {
			t.Fatalf("patch: %v\n%s\n%s", err, out, ours)
		}
		if got, err := os.ReadFile(file); err != nil || !bytes.Equal(got, []byte(b)) {
			t.Errorf("%v: %q, want %q\n%s", err, got, b, ours)
		}
	}
}

// changedLines counts the lines that a difference takes out and puts in.
func changedLines(text string) int {
	n := 0
	for i, l := range strings.Split(text, "\n") {
		if i > 1 && l != "" && strings.ContainsRune("+-", rune(l[0])) {
			n++
		}
	}
	return n
}

// The sample of prices in the list is a file that can be read.
func TestPricesSample(t *testing.T) {
	_, sample, _ := strings.Cut(pricesSample, "\n\n  onphrase")
	p, problems := fit.ParsePrices([]byte(strings.ReplaceAll("onphrase"+sample, "\n  ", "\n")))
	if len(problems) > 0 || p[fit.Rep] != 2 || p[fit.Swap] != 20 {
		t.Errorf("%v, read as %v", problems, p)
	}
}

// The part that the help names is one of the demo's.
func TestFitExample(t *testing.T) {
	class, err := fs.ReadFile(samples.Demo(), demo.ClassName)
	if err != nil {
		t.Fatal(err)
	}
	_, rest, found := strings.Cut(newFitCmd(&streams{}).Example, `--part "`)
	name, _, _ := strings.Cut(rest, `"`)
	if !found || !strings.Contains(string(class), "- part: "+name+"\n") {
		t.Errorf("the demo has no part %q", name)
	}
}
