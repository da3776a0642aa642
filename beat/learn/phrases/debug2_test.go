package main
import ("testing";"os";"fmt";"slices")
func TestDebugEdges(t *testing.T) {
	e, err := hear(os.Getenv("SONG")); if err != nil { t.Fatal(err) }
	var st []float64
	for _, row := range e.sound.Onset { m := 0.0; for p := range 4 { b := 0.0; for j := p; j < len(row); j += 4 { b += row[j] }; m = max(m, b) }; st = append(st, m) }
	y := slices.Clone(st); slices.Sort(y)
	fmt.Printf("median %.2f  first %.3f\n", y[len(y)/2], e.beats[0])
	for i := range 40 { l := 0.0; for _, v := range e.sound.Level[i] { l += v }; fmt.Printf("%.2f/%.1f ", st[i], l/float64(len(e.sound.Level[i]))) }
	fmt.Println()
}
