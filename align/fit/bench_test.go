package fit

import "testing"

// BenchmarkDemo fits the demo class on the counts that its music was made
// from.
func BenchmarkDemo(b *testing.B) {
	j := demoJob(b)
	for b.Loop() {
		if _, err := Search(j); err != nil {
			b.Fatal(err)
		}
	}
}
