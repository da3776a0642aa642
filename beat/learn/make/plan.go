package main

import (
	"flag"
	"fmt"
	"hash/fnv"
	"os"
	"path/filepath"
	"regexp"
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

// plan writes songs.tsv: which tracks to render, from what and with which seed.
func plan(args []string) error {
	f := flag.NewFlagSet("plan", flag.ExitOnError)
	dir := f.String("midi", "", "folder of MIDI files, a folder for each package")
	synths := f.Int("synth", 2600, "tracks of our own synthesiser")
	midis := f.Int("files", 1900, "tracks from MIDI files")
	none := f.Int("noise", 260, "tracks without a beat")
	keep := f.Int("keep", 2820, "train on the first so many of them: what ten minutes on 16 cores render")
	held := f.Int("held", 60, "tracks of each kind that are not trained on")
	out := f.String("o", "beat/learn/songs.tsv", "the list")
	f.Parse(args)
	trainFiles, heldFiles, err := usable(*dir)
	if err != nil {
		return err
	}
	p := planner{r: score.NewRand(20261125, 6)}
	p.synth("train", *synths)
	p.files("train", *midis, trainFiles, []string{"TimGM6mb.sf2", "TimGM6mb.sf2", "FluidR3Mono_GM.sf3", "FluidR3Mono_GM.sf3", "sf_GMbank.sf2", "synth"})
	p.noise("train", *none)
	p.synth("held", *held)
	p.files("held", *held, heldFiles, []string{"MuseScore_General_Lite.sf3"})
	p.noise("held", *held/3)
	const head = "# id, set, kind, source, seed, soundfont; made by: make plan\n"
	return os.WriteFile(*out, []byte(head+strings.Join(p.list(*keep), "")), 0o644)
}

// planner numbers the tracks: no two share a seed.
type planner struct {
	r     score.Rand
	next  uint64
	lines []string
}

func (p *planner) add(set, kind, source, font string) {
	p.next++
	it := learn.Item{ID: fmt.Sprintf("%s%05d", kind[:1], p.next), Set: set, Kind: kind, Source: source, Seed: 700000 + p.next, Font: font}
	p.lines = append(p.lines, it.String()+"\n")
}

// list is the lines in a random order, with only the first keep of the training
// tracks.
func (p *planner) list(keep int) []string {
	p.r.Shuffle(len(p.lines), func(i, j int) { p.lines[i], p.lines[j] = p.lines[j], p.lines[i] })
	var out []string
	for _, l := range p.lines {
		if strings.Contains(l, "\ttrain\t") {
			if keep--; keep < 0 {
				continue
			}
		}
		out = append(out, l)
	}
	return out
}

func (p *planner) synth(set string, n int) {
	weights := make([]float64, len(score.Styles))
	for i, s := range score.Styles {
		weights[i] = s.Weight
	}
	for i := range n {
		style := score.Styles[i%len(score.Styles)].Name // each at least now and then
		if i >= 2*len(score.Styles) {
			style = score.Styles[p.r.Weighted(weights)].Name
		}
		p.add(set, "synth", style, "-")
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
// without the test corpus; every ninth name is held back.
func usable(dir string) (train, held []string, err error) {
	paths, err := filepath.Glob(filepath.Join(dir, "*", "*.mid"))
	if err != nil {
		return nil, nil, err
	}
	for _, path := range paths {
		name := source(path)
		if learn.IsHeldOut("file", name) {
			continue
		}
		if _, _, err := open(dir, name); err != nil {
			fmt.Fprintf(os.Stderr, "plan: %s left out: %v\n", name, err)
			continue
		}
		h := fnv.New32()
		h.Write([]byte(strings.TrimRight(name, "-12")))
		if h.Sum32()%9 == 0 {
			held = append(held, name)
		} else {
			train = append(train, name)
		}
	}
	if len(train) == 0 || len(held) == 0 {
		return nil, nil, fmt.Errorf("%s: no MIDI files", dir)
	}
	return train, held, nil
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
