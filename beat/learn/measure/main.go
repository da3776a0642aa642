// Command measure scores what the ear hears, decoded without any further
// logic: no tempo vote, no octave rule, no grid, no bar vote.
//
//	go run ./beat/learn/measure [-weights FILE] [-manifest FILE] [-set NAME] DIR
//
// DIR holds ID.f32 and ID.beats, as `make render` and `make frames` write them.
package main

import (
	"encoding/binary"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"

	"golang.org/x/sync/errgroup"

	"onphrase/beat/ear"
	"onphrase/beat/pulse"
	"onphrase/beat/score"
	"onphrase/beat/spectral"
)

// row is one scored track.
type row struct {
	id, group string
	score.Result
	acc1, one float64
	bpm, want float64
	err       float64 // median absolute error of matched beats [s]
	sure      float64 // mean activation on the beats found
}

func main() {
	manifest := flag.String("manifest", "", "table whose first column is the ID; groups come from its column -column")
	column := flag.Int("column", 2, "column of the manifest that names the group, from 0")
	set := flag.String("set", "", "only rows of the manifest whose second column is this")
	file := flag.String("weights", "", "weights file to measure instead of the one in use")
	all := flag.Bool("v", false, "print every track")
	flag.Parse()
	hear := func(f *spectral.Frames) (ear.Activation, error) { return ear.Listen(f), nil }
	if *file != "" {
		weights, err := os.ReadFile(*file)
		if err != nil {
			fmt.Fprintln(os.Stderr, "measure:", err)
			os.Exit(1)
		}
		hear = func(f *spectral.Frames) (ear.Activation, error) { return ear.ListenWith(weights, f) }
	}
	job := job{hear: hear, column: *column, set: *set, all: *all}
	if err := job.run(flag.Arg(0), *manifest); err != nil {
		fmt.Fprintln(os.Stderr, "measure:", err)
		os.Exit(1)
	}
}

// job is what is measured, and how the table is read.
type job struct {
	hear   func(*spectral.Frames) (ear.Activation, error)
	column int    // of the manifest: the group
	set    string // only this set; "" all
	all    bool   // print every track
}

func (j job) run(dir, manifest string) error {
	table, err := readTable(manifest)
	if err != nil {
		return err
	}
	paths, err := filepath.Glob(filepath.Join(dir, "*.f32"))
	paths = slices.DeleteFunc(paths, func(p string) bool {
		row := table[strings.TrimSuffix(filepath.Base(p), ".f32")]
		return j.set != "" && (len(row) < 2 || row[1] != j.set)
	})
	if err != nil || len(paths) == 0 {
		return fmt.Errorf("%s: no .f32 files", dir)
	}
	rows := make([]row, len(paths))
	var g errgroup.Group
	g.SetLimit(runtime.GOMAXPROCS(0))
	for i, p := range paths {
		g.Go(func() error {
			id := strings.TrimSuffix(filepath.Base(p), ".f32")
			r, err := j.one(strings.TrimSuffix(p, ".f32"))
			if err != nil {
				return err
			}
			if r.id = id; len(table[id]) > j.column {
				r.group = table[id][j.column]
			}
			if len(table[id]) > 13 && table[id][13] != "" { // the corpus marks what is in doubt
				r.one = math.NaN()
			}
			rows[i] = r
			return nil
		})
	}
	if err := g.Wait(); err != nil {
		return err
	}
	report(rows, j.all)
	return nil
}

// one scores a track.
func (j job) one(stem string) (row, error) {
	f, err := readFrames(stem + ".f32")
	if err != nil {
		return row{}, err
	}
	ref, refOnes, err := readBeats(stem + ".beats")
	if err != nil {
		return row{}, err
	}
	a, err := j.hear(f)
	if err != nil {
		return row{}, err
	}
	beats, ones := decode(a)
	r := row{acc1: math.NaN(), err: math.NaN(), sure: certainty(a, beats)}
	if len(ref) < 2 { // nothing to hear: how many beats were made up
		r.bpm = float64(len(beats))
		r.Result = score.Result{}
		return r, nil
	}
	r.Result = score.Beats(ref, beats)
	r.one = score.FMeasure(refOnes, ones, 0.07)
	r.want, r.bpm = 60/median(diff(ref)), 60/median(diff(beats))
	r.acc1 = 0
	if score.CompareTempo(r.want, r.bpm).Acc1 {
		r.acc1 = 1
	}
	e := score.Errors(ref, beats)
	for i := range e {
		e[i] = math.Abs(e[i])
	}
	r.err = median(e)
	return r, nil
}

// decode finds the likeliest chain of beats in bars of 2, 3 or 4.
func decode(a ear.Activation) (beats, ones []float64) {
	const least = 0.05 // activation below which nothing sounds
	from, to := 0, len(a.Beat)
	for from < to && a.Beat[from] < least {
		from++
	}
	for to > from && a.Beat[to-1] < least {
		to--
	}
	if to-from < 50 {
		return nil, nil
	}
	best := pulse.Beats{Log: math.Inf(-1)}
	for _, meter := range []int{3, 4} {
		m := pulse.Default(a.FPS)
		m.Meter = meter
		if b := m.Decode(a.Beat[from:to], a.One[from:to], m.SpanOf(52, 215)); b.Log > best.Log {
			best = b
		}
	}
	for i, frame := range best.Frames {
		t := (float64(from+frame) + peak(a.Beat, from+frame)) / a.FPS
		if beats = append(beats, t); best.Position[i] == 1 {
			ones = append(ones, t)
		}
	}
	return beats, ones
}

// certainty is the mean activation on the beats.
func certainty(a ear.Activation, beats []float64) float64 {
	sum := 0.0
	for _, t := range beats {
		i := max(0, min(len(a.Beat)-1, int(t*a.FPS+0.5)))
		sum += max(a.Beat[max(0, i-1)], a.Beat[i], a.Beat[min(i+1, len(a.Beat)-1)])
	}
	return sum / float64(max(1, len(beats)))
}

// peak is where the activation peaks near frame i, relative to it [frames].
func peak(x []float64, i int) float64 {
	best := i
	for j := max(1, i-2); j <= min(len(x)-2, i+3); j++ {
		if x[j] > x[best] {
			best = j
		}
	}
	if best < 1 || best > len(x)-2 || x[best] < 0.02 {
		return 0
	}
	l, m, r := x[best-1], x[best], x[best+1]
	if d := l - 2*m + r; d < 0 {
		return float64(best-i) + 0.5*(l-r)/d
	}
	return float64(best - i)
}

func readFrames(path string) (*spectral.Frames, error) {
	const bands = 54
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	levels := make([]float32, len(data)/4)
	for i := range levels {
		levels[i] = math.Float32frombits(binary.LittleEndian.Uint32(data[4*i:]))
	}
	return spectral.NewFrames(50, make([]float64, bands), levels), nil
}

func readBeats(path string) (all, ones []float64, err error) {
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, nil, err
	}
	for line := range strings.Lines(string(data)) {
		var t float64
		var k int
		if _, err := fmt.Sscan(line, &t, &k); err != nil {
			continue
		}
		if all = append(all, t); k == 1 {
			ones = append(ones, t)
		}
	}
	return all, ones, nil
}

func readTable(path string) (map[string][]string, error) {
	out := map[string][]string{}
	if path == "" {
		return out, nil
	}
	data, err := os.ReadFile(path)
	for line := range strings.Lines(string(data)) {
		f := strings.Split(strings.TrimRight(line, "\n"), "\t")
		out[f[0]] = f
	}
	return out, err
}

func diff(x []float64) []float64 {
	var d []float64
	for i := 1; i < len(x); i++ {
		d = append(d, x[i]-x[i-1])
	}
	return d
}

func median(x []float64) float64 {
	if len(x) == 0 {
		return 0
	}
	x = slices.Sorted(slices.Values(x))
	return x[len(x)/2]
}
