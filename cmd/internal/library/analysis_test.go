package library

import (
	"math"
	"strings"
	"testing"

	"onphrase/beat"
)

// A level that was rounded to nothing is 0 in JSON, not -0.
func TestAnalysisJSONOutline(t *testing.T) {
	var b strings.Builder
	nothing := math.Copysign(0, -1)
	if err := WriteAnalysis(&b, []beat.Track{{File: "a.mp3", Outline: beat.Outline{nothing, -0.5, nothing}}}); err != nil {
		t.Fatal(err)
	}
	if want := `"outline":[0,-0.5,0]`; !strings.Contains(b.String(), want) {
		t.Errorf("no %s in %s", want, b.String())
	}
}
