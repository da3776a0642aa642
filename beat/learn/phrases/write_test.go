package main

import (
	"os"
	"testing"
)

// Every number that is learnt can be put into its place, and nothing else
// changes with it.
func TestWrite(t *testing.T) {
	for _, c := range []struct {
		file, name string
		values     int
	}{
		{barWeights, "clueWeights", 6}, {barTrust, "sureness", 1}, {wholeWeights, "barsWeights", 2},
		{phraseTrust, "trustWeights", 5},
	} {
		text, err := os.ReadFile("../../../" + c.file)
		if err != nil {
			t.Fatal(err)
		}
		values := make([]float64, c.values)
		for i := range values {
			values[i] = -1.5 - float64(i)
		}
		out, err := rewritten(string(text), c.name, values)
		if err != nil {
			t.Errorf("%s: %v", c.file, err)
		}
		if out == string(text) {
			t.Errorf("%s: %s stays as it is", c.file, c.name)
		}
	}
	if v, err := present("../../../"+barTrust, "sureness"); err != nil || v <= 0 {
		t.Errorf("the trust in count 1 has slope %g, %v", v, err)
	}
	if _, err := rewritten("const a = 1\n", "b", []float64{2}); err == nil {
		t.Error("a name that is not there is taken")
	}
	if got, err := rewritten("\ta = 1.2\n\tb  = -0.5\n", "b", []float64{2}); err != nil ||
		got != "\ta = 1.2\n\tb  = 2.00\n" {
		t.Errorf("%q, %v", got, err)
	}
}
