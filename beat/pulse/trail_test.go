package pulse

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// Beats that are settled early are those that the whole chain has in the end,
// and a long stream holds no more cells than a short one.
func TestSettlingChangesNothing(t *testing.T) {
	const fps, minutes = 50, 6
	beat, bar := make([]float64, fps*60*minutes), make([]float64, fps*60*minutes)
	r := rand.New(rand.NewPCG(7, 1))
	for i := range beat {
		phase := math.Mod(float64(i), 23.7)
		beat[i] = 0.05 + 0.3*r.Float64()
		if phase < 1 {
			beat[i] = 0.3 + 0.6*r.Float64()
		}
		if i > fps*60*2 && i < fps*60*3 {
			beat[i] = 0.1 // a break in which nothing tells where the beats are
		}
		bar[i] = beat[i] * r.Float64()
	}
	for _, meter := range []int{1, 3, 4} {
		m := Default(fps)
		m.Meter = meter
		spans := []Span{m.SpanOf(50, 215)}
		patient := newDecoder(m, beat, bar, spans)
		patient.trail.patience = math.MaxInt
		want := patient.run()
		eager := newDecoder(m, beat, bar, spans)
		if diff := cmp.Diff(want, eager.run()); diff != "" {
			t.Errorf("meter %d: settled beats differ:\n%s", meter, diff)
		}
		if kept := eager.trail.rows(); kept > len(beat)/2 || len(eager.trail.settled) == 0 {
			t.Errorf("meter %d: %d of %d frames kept, %d beats settled", meter, kept, len(beat), len(eager.trail.settled))
		}
	}
}
