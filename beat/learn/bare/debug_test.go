package bare
import ("testing";"os";"strconv";"fmt")
func TestDebug(t *testing.T) {
	for _, a := range []string{os.Getenv("SEEDS")} {
		var n int
		for _, f := range splitSpace(a) { n, _ = strconv.Atoi(f); s := Random(uint64(n)); ph := ""
		for _, p := range s.Phrases { ph += fmt.Sprintf(" %d/%d%v", p.Counts, p.Loop, p.Out) }
		fmt.Printf("%d %s %.0f pick %d crash %v fill %d toms %v build %v swell %d drop %d hush %d chords %v last %v phrases%s\n", n, s.Groove.Name, s.BPM, s.PickUp, s.Crash, s.Fill, s.Toms, s.Build, s.Swell, s.Drop, s.Hush, s.Chords, s.Last, ph) }
	}
}
func splitSpace(s string) (out []string) { cur := ""; for _, c := range s + " " { if c == ' ' { if cur != "" { out = append(out, cur) }; cur = "" } else { cur += string(c) } }; return }
