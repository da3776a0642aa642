package score

import (
	"bufio"
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// fixtures holds annotated beats and tempi with the scores that mir_eval (MIT;
// Raffel et al. 2014) gives them.
const fixtures = "../../../shared/eval"

func needFixtures(t *testing.T, kind string) []string {
	files, _ := filepath.Glob(filepath.Join(fixtures, kind, "output*.json"))
	if len(files) == 0 {
		t.Skipf("SKIPPED, NOTHING CHECKED: no fixtures in %s", filepath.Join(fixtures, kind))
	}
	return files
}

func numbers(t *testing.T, file string) []float64 {
	f, err := os.Open(file)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var x []float64
	for s := bufio.NewScanner(f); s.Scan(); {
		line, _, _ := strings.Cut(s.Text(), "#")
		for _, w := range strings.Fields(line) {
			v, err := strconv.ParseFloat(w, 64)
			if err != nil {
				t.Fatalf("%s: %v", file, err)
			}
			x = append(x, v)
		}
	}
	return x
}

func outputs(t *testing.T, file string) map[string]any {
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	m := map[string]any{}
	if err := json.Unmarshal(data, &m); err != nil {
		t.Fatalf("%s: %v", file, err)
	}
	return m
}

func TestBeatsAgainstMirEval(t *testing.T) {
	for _, file := range needFixtures(t, "beat") {
		other := func(kind string) []float64 {
			return numbers(t, strings.NewReplacer("output", kind, ".json", ".txt").Replace(file))
		}
		got := Beats(other("ref"), other("est"))
		want := outputs(t, file)
		for name, g := range map[string]float64{
			"F-measure": got.F, "Cemgil": got.Cemgil, "Cemgil Best Metric Level": got.CemgilBest, "P-score": got.PScore,
			"Correct Metric Level Continuous": got.CMLc, "Correct Metric Level Total": got.CMLt,
			"Any Metric Level Continuous": got.AMLc, "Any Metric Level Total": got.AMLt, "Information gain": got.Gain,
		} {
			if math.Abs(g-want[name].(float64)) > 1e-9 {
				t.Errorf("%s: %s = %.12f, want %.12f", filepath.Base(file), name, g, want[name])
			}
		}
	}
}

func TestTempoAgainstMirEval(t *testing.T) {
	for _, file := range needFixtures(t, "tempo") {
		other := func(kind string) []float64 {
			return numbers(t, strings.NewReplacer("output", kind, ".json", ".lab").Replace(file))
		}
		ref, est := other("ref"), other("est")
		got := TempoPair([2]float64{ref[0], ref[1]}, ref[2], [2]float64{est[0], est[1]})
		want := outputs(t, file)
		if math.Abs(got.P-want["P-score"].(float64)) > 1e-9 || got.One != want["One-correct"] ||
			got.All != want["Both-correct"] {
			t.Errorf("%s: %+v, want %v", filepath.Base(file), got, want)
		}
	}
}

func TestCompareTempo(t *testing.T) {
	for _, c := range []struct {
		ref, est float64
		want     Tempo
	}{
		{120, 120, Tempo{true, true}}, {120, 124.7, Tempo{true, true}}, {120, 125, Tempo{}},
		{120, 60, Tempo{false, true}}, {120, 362, Tempo{false, true}}, {120, 40, Tempo{false, true}}, {120, 180, Tempo{}},
	} {
		if got := CompareTempo(c.ref, c.est); got != c.want {
			t.Errorf("reference %v, estimate %v: %+v, want %+v", c.ref, c.est, got, c.want)
		}
	}
}

func TestNothingFoundScoresZero(t *testing.T) {
	if got := Beats([]float64{6, 7, 8}, nil); got != (Result{}) {
		t.Errorf("no estimate: %+v", got)
	}
}
