package bar

import (
	"bufio"
	"fmt"
	"os"
	"strings"
	"testing"

	"onphrase/beat/score"
)

// The trust in count 1 is what it says: over rendered music whose counts are
// right, tracks of a trust have count 1 right as often.
func TestTrustIsCalibrated(t *testing.T) {
	const mostOff = 0.06 // expected calibration error
	file, err := os.Open("testdata/trust.tsv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var claims []score.Claim
	for lines := bufio.NewScanner(file); lines.Scan(); {
		if strings.HasPrefix(lines.Text(), "#") {
			continue
		}
		in := strings.NewReader(lines.Text())
		var c score.Claim
		var threes float64
		b := Bars{}
		if _, err := fmt.Fscan(in, &b.Meter, &threes); err != nil {
			t.Fatal(err)
		}
		evidence := make([]float64, b.Meter) // of one bar like the mean of all
		for p := range evidence {
			fmt.Fscan(in, &evidence[p])
			b.BeatInBar = append(b.BeatInBar, p+1)
		}
		if _, err := fmt.Fscan(in, &c.Right); err != nil {
			t.Fatal(err)
		}
		c.Trust = trust(evidence, b) * sureOf(threes)
		claims = append(claims, c)
	}
	if bins, off := score.Reliability(score.TrustBins, claims); len(claims) < 80 || off > mostOff {
		t.Errorf("expected calibration error %.3f over %d tracks: %+v", off, len(claims), bins)
	}
	for _, slope := range []float64{0.6, 1.6} {
		if a, b := score.LogLoss(claims, 1), score.LogLoss(claims, slope); b < a {
			t.Errorf("with log-odds times %v the loss is %.4f, now %.4f", slope, b, a)
		}
	}
}
