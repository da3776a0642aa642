package beat

import (
	"testing"

	"onphrase/beat/reading"
)

// A reading that is certain leaves no odds to share: its rivals have none,
// rather than odds that are no number and cannot be written as JSON.
func TestRivalsOfACertainReading(t *testing.T) {
	all := []reading.Reading{{Period: 0.5, Odds: 1}, {Period: 1}, {Period: 0.25}}
	if got := rivals(all, 0.3); len(got) != 0 {
		t.Errorf("rivals %v, want none", got)
	}
}
