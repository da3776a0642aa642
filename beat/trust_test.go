package beat

import (
	"bufio"
	"fmt"
	"os"
	"strings"
	"testing"

	"onphrase/beat/reading"
	"onphrase/beat/score"
)

// mostOff is the expected calibration error that trust may have: on as many
// tracks, chance alone makes about .03.
const mostOff = 0.06

// The trust in the counts is what it says: over rendered music whose counts are
// known, tracks of a trust are right as often.
func TestTrustIsCalibrated(t *testing.T) {
	file, err := os.Open("testdata/trust.tsv")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	var claims []score.Claim
	sure, right := 0.0, 0.0
	for lines := bufio.NewScanner(file); lines.Scan(); {
		if strings.HasPrefix(lines.Text(), "#") {
			continue
		}
		var s Signs
		var c score.Claim
		if _, err := fmt.Sscan(lines.Text(), &s.Sure, &s.Share, &s.Odds, &c.Right); err != nil {
			t.Fatal(err)
		}
		c.Trust = s.trust()
		claims = append(claims, c)
		if c.Trust >= 0.9 {
			sure, right = sure+1, right+c.Right
		}
	}
	if bins, off := score.Reliability(score.TrustBins, claims); off > mostOff {
		t.Errorf("expected calibration error %.3f: %+v", off, bins)
	}
	if len(claims) < 100 || sure < float64(len(claims))/2 || right/sure < 0.92 {
		t.Errorf("of %d tracks %.0f have a trust of .9 or more, of which %.2f are right", len(claims), sure, right/sure)
	}
	for _, slope := range []float64{0.6, 1.6} {
		if a, b := score.LogLoss(claims, 1), score.LogLoss(claims, slope); b < a {
			t.Errorf("with log-odds times %v the loss is %.4f, now %.4f", slope, b, a)
		}
	}
}

// A part that was counted on both halves of its counts is trusted by what speaks
// for the one taken.
func TestTrustOfHalves(t *testing.T) {
	signs := Signs{Sure: 0.9, Share: 0.9, Odds: 0.9}
	p := part{heard: true, clarity: 1, hits: 1, signs: signs}
	if got := trustOf(p); got != 0 {
		t.Errorf("without a reading the trust is %.2f", got)
	}
	p.readings = []reading.Reading{{Period: 0.5, Odds: 0.9}}
	whole := trustOf(p)
	p.half = 0.75
	if got := trustOf(p); whole != signs.trust() || got != 0.75*whole {
		t.Errorf("trust %.3f, with half of the counts in doubt %.3f", whole, got)
	}
}
