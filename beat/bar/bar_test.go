package bar

import "testing"

func TestFindCountsFromTheStrongBeat(t *testing.T) {
	for _, meter := range []int{3, 4} {
		for phase := range meter {
			e := make([]float64, 96)
			for i := range e {
				e[i] = -1
				if i%meter == phase {
					e[i] = float64(meter - 1)
				}
			}
			b := Find(e)
			if b.Meter != meter {
				t.Fatalf("meter %d, want %d", b.Meter, meter)
			}
			for i, p := range b.BeatInBar {
				if want := (i-phase+meter)%meter + 1; p != want {
					t.Fatalf("meter %d, phase %d: beat %d is %d in the bar, want %d", meter, phase, i, p, want)
				}
			}
		}
	}
}
