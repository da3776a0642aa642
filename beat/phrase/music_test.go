package phrase_test

import (
	"bufio"
	"encoding/csv"
	"errors"
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"testing"

	"golang.org/x/sync/errgroup"

	"onphrase/beat/bar"
	"onphrase/beat/decode"
	"onphrase/beat/ear"
	"onphrase/beat/internal/dsp"
	"onphrase/beat/phrase"
	"onphrase/beat/score"
	"onphrase/beat/spectral"
	"onphrase/beat/tone"
)

// hear measures the sound of a file at beats that are given, so that a
// failure is one of bars or phrases, not of beats.
func hear(path string, beats []float64) (*bar.Sound, error) {
	src, err := decode.Open(path, decode.Auto)
	if err != nil {
		return nil, err
	}
	defer src.Close()
	resampler := dsp.NewResampler(src.Rate(), spectral.Rate, src.Channels())
	onset := spectral.NewRecorder(src.Channels())
	harmony := tone.NewRecorder(spectral.Rate, src.Channels())
	in := make([]float32, 1<<13)
	for err == nil {
		var n int
		n, err = src.Read(in)
		out := resampler.Write(nil, in[:n])
		if err != nil {
			out = resampler.Flush(out)
		}
		onset.Write(out)
		harmony.Write(out)
	}
	if !errors.Is(err, io.EOF) {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	frames, onsets, _ := onset.Finish()
	sound := bar.Measure(beats, frames, onsets, harmony.Frames())
	hearing := ear.Listen(frames)
	for _, t := range beats {
		at := int(math.Round(t * hearing.FPS))
		near := hearing.One[max(0, min(at-1, len(hearing.One)-1)):min(at+2, len(hearing.One))]
		sound.One = append(sound.One, slices.Max(append(slices.Clone(near), 0)))
	}
	return sound, nil
}

// onesOf are the times of the beats with number 1 in their bar.
func onesOf(beats []float64, beatInBar []int) []float64 {
	var ones []float64
	for i, n := range beatInBar {
		if n == 1 {
			ones = append(ones, beats[i])
		}
	}
	return ones
}

const corpus = "../../../shared/corpus"

// all makes TestCorpus use every track, which takes minutes.
var all = flag.Bool("all", false, "hold the phrases against every track of the corpus, not every second one")

// TestCorpus holds count 1 and the phrases against tracks whose truth is
// known, given their true beats. The floors lie below what was measured over the
// half that is used by default.
func TestCorpus(t *testing.T) {
	manifest, err := os.Open(filepath.Join(corpus, "manifest.tsv"))
	if err != nil {
		t.Skipf("SKIPPED: no music with known phrases at ../shared/corpus beside the repository: %v", err)
	}
	defer manifest.Close()
	if testing.Short() {
		t.Skip("SKIPPED: decodes 1.4 hours of music")
	}
	const leastCount1, leastPhrases, leastOdd = 0.90, 0.91, 0.7
	var ones, starts []float64
	var odd []score.OddCase
	tracks := rows(t, manifest)
	if !*all {
		half := tracks[:0]
		for i := 1; i < len(tracks); i += 2 {
			half = append(half, tracks[i])
		}
		tracks = half
	}
	sounds := make([]*bar.Sound, len(tracks))
	var group errgroup.Group
	group.SetLimit(runtime.GOMAXPROCS(0))
	for i, row := range tracks {
		beats, _ := readBeats(t, row["id"])
		group.Go(func() (err error) {
			sounds[i], err = hear(filepath.Join(corpus, row["id"]+".mp3"), beats)
			return err
		})
	}
	if err := group.Wait(); err != nil {
		t.Fatal(err)
	}
	for i, row := range tracks {
		id, doubt, sound := row["id"], row["doubt"], sounds[i]
		beats, beatInBar := readBeats(t, id)
		bars := bar.Find(sound)
		if doubt != "downbeat" {
			f := score.Count1(onesOf(beats, beatInBar), onesOf(beats, bars.BeatInBar))
			ones = append(ones, f)
			if f < leastCount1 {
				t.Logf("%s: count 1 F %.2f, trust %.2f", id, f, bars.Trust)
			}
		}
		truth := readPhrases(t, id)
		if truth == nil {
			continue
		}
		found := sections(beats, phrase.Find(sound, bars))
		m := score.Phrases(truth, found, beats)
		starts = append(starts, m.F)
		odd = append(odd, score.OddPhrases(truth, found, beats)...)
		if m.F < leastPhrases {
			t.Logf("%s: phrase starts F %.2f, found %v, truth %v", id, m.F, found, truth)
		}
	}
	right := 0.0
	for _, c := range odd {
		if c.Right() {
			right++
		}
	}
	t.Logf("count 1 F %.3f (%d tracks), phrase starts F %.3f (%d), odd phrases %.0f of %d",
		mean(ones), len(ones), mean(starts), len(starts), right, len(odd))
	if mean(ones) < leastCount1 || mean(starts) < leastPhrases || right < leastOdd*float64(len(odd)) {
		t.Errorf("below the floors: count 1 %g, phrase starts %g, odd phrases %.0f %%", leastCount1, leastPhrases,
			100*leastOdd)
	}
}

func sections(beats []float64, phrases []phrase.Phrase) []score.Section {
	var out []score.Section
	for _, p := range phrases {
		out = append(out, score.Section{Time: beats[p.Beat], Counts: p.Counts})
	}
	return out
}

func mean(x []float64) float64 {
	sum := 0.0
	for _, v := range x {
		sum += v / float64(len(x))
	}
	return sum
}

// rows reads a table with a header, values by column name.
func rows(t *testing.T, r io.Reader) []map[string]string {
	t.Helper()
	table := csv.NewReader(r)
	table.Comma, table.LazyQuotes = '\t', true
	all, err := table.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, cells := range all[1:] {
		row := map[string]string{}
		for i, name := range all[0] {
			row[name] = cells[i]
		}
		out = append(out, row)
	}
	return out
}

func readBeats(t *testing.T, id string) (times []float64, beatInBar []int) {
	t.Helper()
	f, err := os.Open(filepath.Join(corpus, id+".beats"))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	for s := bufio.NewScanner(f); s.Scan(); {
		var at float64
		var n int
		if _, err := fmt.Sscan(s.Text(), &at, &n); err != nil {
			t.Fatal(err)
		}
		times, beatInBar = append(times, at), append(beatInBar, n)
	}
	return times, beatInBar
}

// readPhrases reads a list of phrases, nil where a track has none. A pick-up
// is no phrase.
func readPhrases(t *testing.T, id string) []score.Section {
	t.Helper()
	f, err := os.Open(filepath.Join(corpus, id+".phrases"))
	if err != nil {
		return nil
	}
	defer f.Close()
	var out []score.Section
	for s := bufio.NewScanner(f); s.Scan(); {
		var p score.Section
		if _, err := fmt.Sscan(s.Text(), &p.Time, &p.Counts); err != nil {
			t.Fatal(err)
		}
		if !strings.HasSuffix(s.Text(), "pickup") {
			out = append(out, p)
		}
	}
	return out
}
