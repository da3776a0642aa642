package main

import (
	"encoding/json"
	"io"
	"os/exec"
	"slices"
	"strings"
	"testing"
)

// module is the path that all our packages begin with.
const module = "onphrase"

// mayImport says which of our packages a package may import. A key that ends
// in / stands for all packages below it; the longest key that fits counts. A
// pattern that ends in /... stands for a package and all below it, one that
// begins with ! takes away from the others.
var mayImport = map[string][]string{
	"cmd/onphrase": {
		"beat", "beat/click", "beat/correct", "beat/decode", "beat/picture", "beat/tap",
		"plan", "plan/edit", "plan/outline", "plan/say", "align", "align/fit", "align/export/...", "samples",
		"cmd/internal/...",
	},
	"cmd/bench":            {"beat", "beat/decode", "beat/score"},
	"cmd/internal/browser": {}, // for tests of screens
	"cmd/internal/desk": {
		"align", "align/fit", "beat", "beat/correct", "beat/tap", "plan", "plan/edit", "plan/outline", "plan/say",
		"cmd/internal/desk/screens",
	},
	"cmd/internal/desk/": {},
	"cmd/internal/serve": {
		"align", "align/export", "cmd/internal/aligned", "cmd/internal/desk", "cmd/internal/desk/screens",
		"cmd/internal/told",
	},
	"cmd/internal/home": {
		"beat", "beat/correct", "beat/decode", "beat/tap", "plan", "cmd/internal/aligned", "cmd/internal/demo",
		"cmd/internal/desk", "cmd/internal/disk", "cmd/internal/library", "cmd/internal/told",
	},
	"cmd/internal/demo":    {"cmd/internal/disk", "cmd/internal/told", "samples"},
	"cmd/internal/told":    {},
	"cmd/internal/disk":    {"cmd/internal/told"},
	"cmd/internal/aligned": {"align", "beat", "plan", "cmd/internal/disk", "cmd/internal/library"},
	"cmd/internal/parcel": {
		"align", "align/export", "beat", "beat/decode", "plan", "plan/say",
		"cmd/internal/aligned", "cmd/internal/disk", "cmd/internal/library", "cmd/internal/told",
	},
	"cmd/internal/library": {
		"beat", "beat/correct", "beat/decode", "cmd/internal/disk", "cmd/internal/told",
	},
	"align/export":  {"align", "align/export/...", "plan/say"},
	"align/export/": {"align", "align/export/...", "plan/say"},
	"align":         {"beat", "plan", "plan/say"},
	"align/fit":     {"align", "beat", "plan", "plan/edit", "plan/say"},
	"plan/edit":     {"plan"},
	"plan/outline":  {"plan"},
	"plan":          {"plan/say"},
	"plan/say":      {},
	"beat":          {"beat/...", "!beat/decode"},
	"beat/":         {"beat/...", "!beat/decode", "!beat"}, // stages take and return plain slices
	"beat/click":    {"beat"},
	"beat/picture":  {"beat"},
	"beat/correct":  {"beat"}, // a view of a track, not a stage
	"beat/tap":      {"beat", "beat/correct", "beat/internal/dsp"},
	"beat/decode":   {},
	// A program, which makes material to learn from and reads files for it.
	"beat/learn/make":    {"beat/...", "!beat", "samples/synth"},
	"beat/learn/phrases": {"beat", "beat/..."},
	"beat/learn/charts":  {"beat/...", "!beat"},
	"beat/learn/charts/": {"beat/...", "!beat"},
	"beat/learn/reading": {"beat", "beat/..."},
	"beat/learn/trust":   {"beat", "beat/decode", "beat/score"},
	"samples":            {"samples/..."},
	"samples/":           {"samples/..."},
}

// outside are the packages through which a program reaches files, programs, the
// network and the clock.
var outside = []string{"os", "os/exec", "os/signal", "net", "net/http", "syscall", "io/ioutil"}

// mayReachOutside lists the folders that may import what is in outside.
var mayReachOutside = map[string][]string{
	"cmd/onphrase":         {"os", "os/exec", "os/signal", "net", "net/http"}, // the page is served
	"beat/decode":          {"os", "os/exec"},                                 // music files and the ffmpeg child
	"cmd/internal/browser": {"os", "os/exec"},
	"cmd/internal/aligned": {"os"}, // where a class's songs are
	"cmd/internal/disk":    {"os"},
	"cmd/internal/library": {"os"}, // the cache and her folders
	"cmd/internal/parcel":  {"os"},
	"cmd/internal/demo":    {"os"},
	"cmd/internal/home":    {"os", "net/http"},        // songs are played from their files
	"cmd/internal/serve":   {"os", "net", "net/http"}, // songs are played from their files
}

// listed is what 'go list -json' says of a package. Its imports are those of
// the package itself, without its tests.
type listed struct {
	ImportPath string
	Imports    []string
	Name       string
}

func packages(t *testing.T) []listed {
	t.Helper()
	out, err := exec.Command("go", "list", "-e", "-json=ImportPath,Imports,Name", module+"/...").Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	var all []listed
	for dec := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p listed
		if err := dec.Decode(&p); err == io.EOF {
			return all
		} else if err != nil {
			t.Fatal(err)
		}
		all = append(all, p)
	}
}

// TestLayers holds every package to the directions that DEVELOPERS.md gives.
func TestLayers(t *testing.T) {
	all := packages(t)
	if len(all) < len(mayImport)/2 {
		t.Fatalf("go list names %d packages only", len(all))
	}
	for _, p := range all {
		for _, wrong := range wrongImports(p) {
			t.Error(wrong)
		}
	}
}

// wrongImports names the imports of a package that the house forbids.
func wrongImports(p listed) []string {
	var wrong []string
	folder := strings.TrimPrefix(p.ImportPath, module+"/")
	allowed, ok := nearestRule(mayImport, folder)
	if !ok {
		return []string{p.ImportPath + ": no rule in layers_test.go says what it may import"}
	}
	for _, path := range p.Imports {
		ours, isOurs := strings.CutPrefix(path, module+"/")
		if isOurs && !matches(allowed, ours) {
			wrong = append(wrong, p.ImportPath+" must not import "+path)
		}
		// Programs other than ours are generators, and free.
		if slices.Contains(outside, path) && p.Name != "main" || folder == "cmd/onphrase" && slices.Contains(outside, path) {
			may, _ := nearestRule(mayReachOutside, folder)
			if !matches(may, path) {
				wrong = append(wrong, p.ImportPath+" must not import "+path+": only the command and the decoders reach outside")
			}
		}
	}
	return wrong
}

// nearestRule finds the rule that fits a package best.
func nearestRule(rules map[string][]string, pkg string) ([]string, bool) {
	best, found := "", false
	for key := range rules {
		fits := key == pkg || strings.HasSuffix(key, "/") && strings.HasPrefix(pkg, key)
		if fits && len(key) >= len(best) {
			best, found = key, true
		}
	}
	return rules[best], found
}

func matches(patterns []string, path string) bool {
	yes := false
	for _, p := range patterns {
		p, not := strings.CutPrefix(p, "!")
		below, deep := strings.CutSuffix(p, "/...")
		if path == below || deep && strings.HasPrefix(path, below+"/") {
			if not {
				return false
			}
			yes = true
		}
	}
	return yes
}

// The rules themselves: what they must let through and what they must stop.
func TestLayerRules(t *testing.T) {
	tests := []struct {
		pkg, imports string
		wrong        bool
	}{
		{"onphrase/cmd/onphrase", "os", false},
		{"onphrase/cmd/onphrase", "onphrase/align/export/web", false},
		{"onphrase/cmd/onphrase", "onphrase/beat/pulse", true},
		{"onphrase/align", "onphrase/plan", false},
		{"onphrase/align", "onphrase/beat/decode", true},
		{"onphrase/align", "onphrase/align/export", true},
		{"onphrase/align/export", "os", true},
		{"onphrase/plan", "os", true},
		{"onphrase/plan", "onphrase/beat", true},
		{"onphrase/beat", "onphrase/beat/pulse", false},
		{"onphrase/beat", "onphrase/beat/decode", true},
		{"onphrase/beat/pulse", "onphrase/beat", true},
		{"onphrase/beat/pulse", "onphrase/beat/internal/dsp", false},
		{"onphrase/beat/decode", "os/exec", false},
		{"onphrase/beat/decode", "net/http", true},
		{"onphrase/samples", "onphrase/plan", true},
		{"onphrase/nowhere", "fmt", true},
	}
	for _, tt := range tests {
		got := wrongImports(listed{ImportPath: tt.pkg, Imports: []string{tt.imports}})
		if (len(got) > 0) != tt.wrong {
			t.Errorf("%s importing %s: got %q, want wrong = %v", tt.pkg, tt.imports, got, tt.wrong)
		}
	}
}
