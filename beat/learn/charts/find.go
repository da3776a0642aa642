package main

import (
	"cmp"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"onphrase/beat/decode"
	"onphrase/beat/learn/charts/chart"
)

// pair is a chart with the files that sound together as its song.
type pair struct {
	id     string
	chart  *chart.Chart
	file   string   // of the chart
	sounds []string // one, or the parts of a song that are to be mixed
	source source
}

// findPairs lists the songs of a folder: of several charts of one song the one
// that marks most sections.
func findPairs(folder string, s source) ([]pair, error) {
	best := map[string]pair{}
	err := filepath.WalkDir(folder, func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !isChart(path) {
			return err
		}
		data, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		c, err := chart.Read(path, data)
		if err != nil {
			if filepath.Ext(path) != ".json" { // any .json may be something else
				fmt.Printf("  not read: %v\n", err)
			}
			return nil
		}
		sounds := soundsOf(folder, path, c)
		if len(sounds) == 0 || tests.MatchString(filepath.Base(filepath.Dir(sounds[0]))) {
			return nil
		}
		key := sounds[0]
		if old, ok := best[key]; ok && len(old.chart.Sections) >= len(c.Sections) {
			return nil
		}
		best[key] = pair{chart: c, file: path, sounds: sounds, source: s}
		return nil
	})
	if err != nil {
		return nil, err
	}
	var out []pair
	for _, p := range best {
		out = append(out, p)
	}
	slices.SortFunc(out, func(a, b pair) int { return cmp.Compare(a.sounds[0], b.sounds[0]) })
	for i := range out {
		out[i].id = idOf(s.name, out[i])
	}
	return out, nil
}

func isChart(path string) bool {
	switch strings.ToLower(filepath.Ext(path)) {
	case ".sm", ".ssc", ".osu", ".qua", ".chart", ".json":
		return true
	}
	return false
}

var (
	level = regexp.MustCompile(`(?i)-(easy|normal|hard|erect|nightmare|harder|extra|insane|chart)$`)
	stems = regexp.MustCompile(`(?i)^(song|guitar|rhythm|bass|drums(_\d)?|vocals(_\d)?|keys|crowd)\.(ogg|mp3|opus)$`)
	tests = regexp.MustCompile(`(?i)offset-?test|sync`) // clicks, for setting a game's delay
	voice = regexp.MustCompile(`(?i)^voices[^/]*\.ogg$`)
	plain = regexp.MustCompile(`[^a-z0-9]+`)
)

// soundsOf finds the sound of a chart: the file that it names, the parts beside
// it, or for a song sung in turn Inst.ogg and its voices in songs/NAME.
func soundsOf(root, path string, c *chart.Chart) []string {
	dir := filepath.Dir(path)
	if filepath.Ext(path) == ".json" {
		return turnSounds(root, path)
	}
	if filepath.Ext(path) == ".chart" {
		if parts := filesLike(dir, stems); len(parts) > 0 {
			return parts
		}
	}
	if c.Audio != "" {
		if f := inFolder(dir, c.Audio); f != "" {
			return []string{f}
		}
	}
	if all := filesLike(dir, regexp.MustCompile(`(?i)\.(ogg|mp3|opus)$`)); len(all) == 1 {
		return all
	}
	return nil
}

// turnSounds looks for songs/NAME/Inst.ogg in the folders around data/NAME/*.json.
func turnSounds(root, path string) []string {
	song := level.ReplaceAllString(strings.TrimSuffix(filepath.Base(path), ".json"), "")
	names := []string{song, filepath.Base(filepath.Dir(path))}
	for up := filepath.Dir(path); len(up) >= len(root); up = filepath.Dir(up) {
		for _, name := range names {
			dir := filepath.Join(up, "songs", name)
			inst := inFolder(dir, "Inst.ogg")
			if inst == "" {
				continue
			}
			return append([]string{inst}, filesLike(dir, voice)...)
		}
	}
	return nil
}

// inFolder is the file of that name, in whatever case; "" if there is none that
// is sound.
func inFolder(dir, name string) string {
	entries, _ := os.ReadDir(dir)
	for _, e := range entries {
		if strings.EqualFold(e.Name(), name) && decode.IsAudio(name) {
			return filepath.Join(dir, e.Name())
		}
	}
	return ""
}

func filesLike(dir string, like *regexp.Regexp) []string {
	entries, _ := os.ReadDir(dir)
	var out []string
	for _, e := range entries {
		if like.MatchString(e.Name()) {
			out = append(out, filepath.Join(dir, e.Name()))
		}
	}
	return out
}

// idOf is a short name of a song: its source's owner, then its folder.
func idOf(source string, p pair) string {
	owner, _, _ := strings.Cut(source, "+")
	name := filepath.Base(filepath.Dir(p.sounds[0]))
	if p.chart.Title != "" && filepath.Ext(p.file) != ".json" {
		name = p.chart.Title
	}
	id := func(s string, n int) string {
		s = strings.Trim(plain.ReplaceAllString(strings.ToLower(s), "-"), "-")
		return s[:min(n, len(s))]
	}
	return id(owner, 10) + "_" + id(name, 28)
}
