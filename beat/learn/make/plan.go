package main

import (
	"flag"
	"fmt"
	"hash"
	"hash/fnv"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"

	"onphrase/beat/learn"
	"onphrase/beat/learn/midi"
	"onphrase/beat/learn/score"
)

// noises are the kinds of sound without a beat.
var noises = []string{"speech", "noise", "applause", "drops", "drone", "stray", "crowd"}

// unclear are arrangements of mma whose bars are not what their time signature
// says, or that are no music.
var unclear = regexp.MustCompile(`68|blues34|metronome|count|intro|ending`)

// Soundfonts by what they are used for; a name that is there twice is used twice
// as often. The held-out tracks have MuseScore_General_Lite.sf3.
var (
	trainFonts = []string{"TimGM6mb.sf2", "TimGM6mb.sf2", "FluidR3Mono_GM.sf3", "FluidR3Mono_GM.sf3", "OPL-3_FM_128M.sf3",
		"synth"}
	bandFonts = []string{"-", "-", "-", "-", "-", "TimGM6mb.sf2", "FluidR3Mono_GM.sf3", "FluidR3Mono_GM.sf3",
		"OPL-3_FM_128M.sf3"}
	checkFonts = []string{"sf_GMbank.sf2"}
)

// plan writes songs.tsv: which tracks to render, from what and with which seed.
// The held-out tracks are taken over from the list that is there.
func plan(args []string) error {
	f := flag.NewFlagSet("plan", flag.ExitOnError)
	dir := f.String("midi", "", "folder of MIDI files, a folder for each package")
	synths := f.Int("synth", 7600, "tracks of our own songs")
	midis := f.Int("files", 5800, "tracks from MIDI files")
	none := f.Int("noise", 700, "tracks without a beat")
	check := f.Int("check", 110, "tracks of each kind to choose by")
	out := f.String("o", "beat/learn/songs.tsv", "the list")
	f.Parse(args)
	held, err := heldRows(*out)
	if err != nil {
		return err
	}
	files, err := usable(*dir)
	if err != nil {
		return err
	}
	p := planner{r: score.NewRand(20261125, 11)}
	p.synth("check", *check, []string{"-", "-", "sf_GMbank.sf2"})
	p.files("check", *check, files["check"], checkFonts)
	p.noise("check", *check/5)
	first := len(p.lines)
	p.synth("train", *synths, bandFonts)
	p.files("train", *midis, files["train"], trainFonts)
	p.noise("train", *none)
	train := p.lines[first:]
	p.r.Shuffle(len(train), func(i, j int) { train[i], train[j] = train[j], train[i] })
	const head = "# id, set, kind, source, seed, soundfont; made by: make plan\n"
	return os.WriteFile(*out, []byte(head+strings.Join(slices.Concat(held, p.lines), "")), 0o644)
}

// heldRows are the lines of the held-out tracks.
func heldRows(list string) ([]string, error) {
	items, err := readItems(list)
	var out []string
	for _, it := range items {
		if it.Set == learn.HeldSet {
			out = append(out, it.String()+"\n")
		}
	}
	return out, err
}

// planner numbers the tracks: no two share a seed.
type planner struct {
	r     score.Rand
	next  uint64
	lines []string
}

func (p *planner) add(set, kind, source, font string) {
	p.next++
	it := learn.Item{ID: fmt.Sprintf("%s%05d", kind[:1], 10000+p.next), Set: set, Kind: kind, Source: source,
		Seed: 800000 + p.next, Font: font}
	p.lines = append(p.lines, it.String()+"\n")
}

func (p *planner) synth(set string, n int, fonts []string) {
	styles := score.All()
	weights := make([]float64, len(styles))
	for i, s := range styles {
		weights[i] = s.Weight
	}
	for i := range n {
		style := styles[i%len(styles)].Name // each at least now and then
		if i >= len(styles) {
			style = styles[p.r.Weighted(weights)].Name
		}
		p.add(set, "synth", style, score.Pick(p.r, fonts))
	}
}

func (p *planner) files(set string, n int, files, fonts []string) {
	order := p.r.Perm(len(files))
	for i := range n {
		p.add(set, "midi", files[order[i%len(order)]], score.Pick(p.r, fonts))
	}
}

func (p *planner) noise(set string, n int) {
	for i := range n {
		p.add(set, "noise", noises[i%len(noises)], "-")
	}
}

// usable lists the MIDI files whose grid can be believed, as "package/name",
// without the test corpus, by set: of nine names one is held out and one kept to
// choose by.
func usable(dir string) (map[string][]string, error) {
	paths, err := filepath.Glob(filepath.Join(dir, "*", "*.mid"))
	if err != nil {
		return nil, err
	}
	files := map[string][]string{}
	for _, path := range paths {
		name := source(path)
		if learn.IsHeldOut("file", name) {
			continue
		}
		if _, _, err := open(dir, name); err != nil {
			fmt.Fprintf(os.Stderr, "plan: %s left out: %v\n", name, err)
			continue
		}
		set := "train"
		switch h := fnv.New32(); hashed(h, strings.TrimRight(name, "-12")) % 9 {
		case 0:
			set = learn.HeldSet
		case 4:
			set = "check"
		}
		files[set] = append(files[set], name)
	}
	if len(files["train"]) == 0 || len(files["check"]) == 0 {
		return nil, fmt.Errorf("%s: no MIDI files", dir)
	}
	return files, nil
}

func hashed(h hash.Hash32, name string) uint32 {
	h.Write([]byte(name))
	return h.Sum32()
}

// source is a file's name in the list: its package and its own name.
func source(path string) string {
	return filepath.Base(filepath.Dir(path)) + "/" + strings.TrimSuffix(filepath.Base(path), ".mid")
}

// open reads a MIDI file and finds its counts.
func open(dir, name string) (*midi.File, midi.Grid, error) {
	data, err := os.ReadFile(filepath.Join(dir, name+".mid"))
	if err != nil {
		return nil, midi.Grid{}, err
	}
	f, err := midi.Read(data)
	if err != nil {
		return nil, midi.Grid{}, err
	}
	g, err := f.Grid()
	if err != nil {
		return nil, g, err
	}
	if arranged := strings.HasPrefix(name, "mma/"); arranged {
		if unclear.MatchString(name) {
			return nil, g, fmt.Errorf("bars are unclear")
		}
		return f, g, nil // its bars are right by construction
	}
	return f, g, f.Check(g)
}
