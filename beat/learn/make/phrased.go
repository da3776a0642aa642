package main

import (
	"flag"
	"fmt"
	"hash/fnv"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"strings"

	"golang.org/x/sync/errgroup"

	"onphrase/beat/learn/midi"
	"onphrase/beat/learn/score"
	"onphrase/beat/learn/studio"
	"onphrase/beat/learn/synth"
)

// phrased renders arrangements of mma's grooves whose phrases are known: ID.wav,
// ID.beats and ID.phrases each. An arrangement is a pure function of its seed;
// no two of the parts (fit, choose, report) have a groove in common.
func phrased(args []string) error {
	f := flag.NewFlagSet("phrased", flag.ExitOnError)
	out := f.String("o", "", "folder for the arrangements")
	part := f.String("part", "fit", "which grooves: those to fit to, to choose by, or to report")
	n := f.Int("n", 60, "how many")
	seed := f.Uint64("seed", 1, "of the first one")
	fonts := f.String("fonts", "", "folder of soundfonts")
	library := f.String("library", "/usr/share/mma/lib", "mma's groove library")
	f.Parse(args)
	all, err := families(*library)
	if err != nil {
		return err
	}
	mine := all[*part]
	if len(mine) == 0 {
		return fmt.Errorf("no grooves for the part %q in %s", *part, *library)
	}
	if err := os.MkdirAll(*out, 0o755); err != nil {
		return err
	}
	var g errgroup.Group
	g.SetLimit(runtime.GOMAXPROCS(0))
	for i := range *n {
		g.Go(func() error {
			s := *seed + uint64(i)
			return mine[s%uint64(len(mine))].arrange(s, filepath.Join(*fonts, phrasedFonts[*part][s%2]), *out)
		})
	}
	return g.Wait()
}

// phrasedFonts are the soundfonts of each part.
var phrasedFonts = map[string][2]string{
	"fit": {"TimGM6mb.sf2", "FluidR3Mono_GM.sf3"}, "choose": {"MuseScore_General_Lite.sf3", "sf_GMbank.sf2"},
	"report": {"FluidR3Mono_GM.sf3", "TimGM6mb.sf2"},
}

// family are the grooves of one file of mma's library.
type family struct {
	name                  string
	intros, fills, bodies []string
	quarters              int // in a bar, as mma counts them
	meter                 int // counts in a bar
}

var (
	timeLine = regexp.MustCompile(`(?im)^\s*Time\s+(\d+)`)
	compound = regexp.MustCompile(`(?im)^\s*TimeSig\s+6[ /]8`)
	noMusic  = regexp.MustCompile(`metronome|count`)
	shortOne = regexp.MustCompile(`(?i)(intro|fill|end)\d*$`)
)

// families lists the library by part.
func families(library string) (map[string][]family, error) {
	out := map[string][]family{}
	err := filepath.WalkDir(library, func(path string, d fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(path) != ".mma" || noMusic.MatchString(path) {
			return err
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		all, err := grooves(library, path)
		if err != nil {
			return err
		}
		fam := family{name: filepath.Base(filepath.Dir(path)) + "-" + strings.TrimSuffix(filepath.Base(path), ".mma")}
		for _, g := range all {
			switch low := strings.ToLower(shortOne.FindString(g)); {
			case low == "":
				fam.bodies = append(fam.bodies, g)
			case strings.HasPrefix(low, "intro"):
				fam.intros = append(fam.intros, g)
			case strings.HasPrefix(low, "fill"):
				fam.fills = append(fam.fills, g)
			}
		}
		fam.quarters, fam.meter = bars(string(text))
		if len(fam.bodies) == 0 || fam.meter == 0 {
			return nil
		}
		part := "fit"
		switch hashed(fnv.New32(), "mma/"+fam.name) % 9 {
		case 0, 4: // the ear never heard them
			part = "choose"
		case 7, 8:
			part = "report"
		}
		out[part] = append(out[part], fam)
		return nil
	})
	return out, err
}

// bars says how many quarters mma counts in a bar, and how many counts those
// are: 0 where that is unclear. In compound meters the count is the dotted
// quarter.
func bars(text string) (quarters, meter int) {
	lines := timeLine.FindAllStringSubmatch(text, -1)
	quarters = 4
	for i, m := range lines {
		q, _ := strconv.Atoi(m[1])
		if i > 0 && q != quarters {
			return q, 0
		}
		quarters = q
	}
	switch six := compound.MatchString(text); {
	case six && (quarters == 6 || quarters == 2):
		return quarters, 2
	case !six && (quarters == 3 || quarters == 4):
		return quarters, quarters
	case !six && quarters == 12:
		return quarters, 4
	}
	return quarters, 0
}

// part is what the sections of one name have in common.
type part struct {
	groove string
	chords []string
	silent [16]bool
	tune   []midi.Note // two bars, in ticks of mma from their start
}

// arrange renders one arrangement.
func (fam family) arrange(seed uint64, font, dir string) error {
	r := score.NewRand(seed, 12)
	style := score.Style{Meter: fam.meter, Steps: 4, BPM: fam.tempo(), Swing: [2]float64{0.5, 0.5}}
	feel := score.NewFeel(r, style, r.Between(0.05, 3), r.Between(70, 140))
	sections := score.Sequence(r, fam.meter, 0, len(feel.Beats)-1)
	if len(sections) == 0 {
		return fmt.Errorf("seed %d: no section fits", seed)
	}
	roles := fam.roles(r)
	tmp, err := os.MkdirTemp("", "phrased")
	if err != nil {
		return err
	}
	defer os.RemoveAll(tmp)
	mid := filepath.Join(tmp, "sheet.mid")
	runMMA(mid, fam.sheet(r, roles, sections))
	data, err := os.ReadFile(mid)
	if err != nil {
		fmt.Fprintf(os.Stderr, "phrased: %s left out\n", fam.name) // runMMA has said why
		return nil
	}
	file, err := midi.Read(data)
	if err != nil {
		return err
	}
	take := fam.take(r, file, roles, sections, feel)
	x := make([]float32, int(take.Song.Length*synth.Rate))
	y, err := fluidsynth(tmp, font, take, r)
	if err != nil {
		return err
	}
	mix(x, y, 1)
	studio.Produce(seed, x, nil)
	if r.Chance(0.2) {
		if x, err = viaMP3(tmp, x, r); err != nil {
			return err
		}
	}
	return writePhrased(filepath.Join(dir, fmt.Sprintf("a%05d-%s", seed, fam.name)), x, take.Song.Beats, sections)
}

// tempo is a range that suits the name; in compound meters the name tells of
// other counts than ours.
func (fam family) tempo() [2]float64 {
	if fam.meter == 2 {
		return [2]float64{66, 126}
	}
	return tempo(fam.name)
}

// roles invents what each section plays; half of the arrangements hardly change.
func (fam family) roles(r score.Rand) map[string]part {
	out := map[string]part{}
	even := r.Chance(0.5)
	first := part{groove: score.Pick(r, fam.bodies), chords: score.Pick(r, progressions), tune: fam.tune(r)}
	for _, name := range []string{"verse", "chorus", "intro", "break", "build", "bridge", "tag"} {
		p := first
		if name != "verse" && name != "tag" {
			if r.Chance(0.7) {
				p.chords = score.Pick(r, progressions)
				if r.Chance(0.3) {
					p.chords = slices.Concat(p.chords, score.Pick(r, progressions))
				}
			}
			if r.Chance(0.6) {
				p.tune = fam.tune(r)
			}
		}
		if !even && name != "verse" {
			p.groove = score.Pick(r, fam.bodies)
			p.silent[midi.Drums] = name == "break" && r.Chance(0.7) || name == "intro" && r.Chance(0.4)
			for ch := range p.silent {
				p.silent[ch] = p.silent[ch] || name != "chorus" && ch != midi.Drums && r.Chance(0.25)
			}
		}
		out[name] = p
	}
	return out
}

const (
	melodyChannel = 0   // mma, which takes channels from the last down, leaves it
	division      = 192 // ticks that mma has in a quarter
)

// tune is a melody of two bars in eighths, or none.
func (fam family) tune(r score.Rand) []midi.Note {
	if r.Chance(0.25) {
		return nil
	}
	var out []midi.Note
	key, density := 64+r.IntN(14), r.Between(0.15, 0.5)
	step := division / 2
	for at := 0; at < 2*fam.quarters*division; at += step {
		if !r.Chance(density) {
			continue
		}
		out = append(out, midi.Note{Tick: at, Len: step * (1 + r.IntN(3)), Channel: melodyChannel, Key: key, Velocity: 70 +
			r.IntN(40)})
		key = max(58, min(88, key+r.IntN(9)-4))
	}
	return out
}

// sheet is the mma source: a bar a line.
func (fam family) sheet(r score.Rand, roles map[string]part, sections []score.Section) string {
	var b strings.Builder
	fmt.Fprintf(&b, "Tempo 120\nSeqRnd Off\nRndSeed %d\n", r.IntN(1e6))
	n := 0
	filled := r.Chance(0.6)
	for i, s := range sections {
		p := roles[s.Name]
		bars := s.Counts / fam.meter
		groove := p.groove
		if i == 0 && len(fam.intros) > 0 && r.Chance(0.5) {
			groove = score.Pick(r, fam.intros)
		}
		fmt.Fprintf(&b, "Groove %s\n", groove)
		for bar := range bars {
			n++
			if bar > 0 && bar == bars-1 && filled && len(fam.fills) > 0 {
				fmt.Fprintf(&b, "Groove %s\n", score.Pick(r, fam.fills))
			}
			fmt.Fprintf(&b, "%d %s\n", n, p.chords[bar%len(p.chords)])
		}
	}
	return b.String()
}

// take plays the file's notes, and the melodies, at the counts of the feel.
func (fam family) take(r score.Rand, file *midi.File, roles map[string]part, sections []score.Section,
	feel score.Feel) midi.Take {
	var take midi.Take
	for _, e := range file.Programs {
		if e.Tick <= file.Division { // what the first groove sets
			take.Programs[e.Channel] = e.Number
		}
	}
	take.Programs[melodyChannel] = score.Pick(r, []int{4, 11, 25, 54, 56, 65, 73, 81, 85})
	last := sections[len(sections)-1]
	counts := last.Beat + last.Counts
	for i, t := range feel.Beats[:counts] {
		take.Song.Beats = append(take.Song.Beats, score.Beat{Time: t, InBar: i%fam.meter + 1})
	}
	const ringing = 1.5 // [s]
	take.Song.Length = feel.Beats[counts] + ringing
	count := float64(fam.quarters*file.Division) / float64(fam.meter) // [ticks]
	play := func(n midi.Note, shift int) {
		from, to := float64(n.Tick+shift)/count, float64(n.Tick+shift+n.Len)/count
		at := max(0, feel.At(from)+feel.Jitter*r.NormFloat64())
		take.Notes = append(take.Notes, midi.Timed{At: at, Len: max(0.03, feel.At(to)-feel.At(from)), Channel: n.Channel,
			Key: n.Key, Velocity: n.Velocity})
	}
	for _, s := range sections {
		p := roles[s.Name]
		from, to := int(float64(s.Beat)*count), int(float64(s.Beat+s.Counts)*count)
		for _, n := range file.Notes {
			if n.Tick >= from && n.Tick < to && !p.silent[n.Channel] {
				play(n, 0)
			}
		}
		for bar := 0; bar < s.Counts/fam.meter; bar += 2 {
			at := from + bar*fam.quarters*file.Division
			for _, n := range p.tune {
				if at+n.Tick < to && !p.silent[melodyChannel] {
					play(n, at)
				}
			}
		}
	}
	return take
}

// writePhrased writes the sound and its truth.
func writePhrased(name string, x []float32, counts []score.Beat, sections []score.Section) error {
	var beats, phrases strings.Builder
	for _, b := range counts {
		fmt.Fprintf(&beats, "%.4f\t%d\n", b.Time, b.InBar)
	}
	for _, s := range sections {
		fmt.Fprintf(&phrases, "%.4f\t%d\t%s\n", counts[s.Beat].Time, s.Counts, s.Name)
	}
	for ending, content := range map[string][]byte{".wav": wav(x), ".beats": []byte(beats.String()),
		".phrases": []byte(phrases.String())} {
		if err := os.WriteFile(name+ending, content, 0o644); err != nil {
			return err
		}
	}
	return nil
}
