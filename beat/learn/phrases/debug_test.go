package main
import ("testing";"os";"fmt";"onphrase/beat/phrase")
func TestDebugClues(t *testing.T) {
	e, err := hear(os.Getenv("SONG")); if err != nil { t.Fatal(err) }
	l := lessonOf(e)
	n := phrase.Trained()
	in := n.Inputs(l.clues)
	for i := range in {
		o, _ := n.Odds(in[i])
		fmt.Printf("%3d %5.1f %+3.0f |", i, o, l.known[i]/40)
		for k := range l.clues { fmt.Printf("%5.1f", in[i][phrase.ClueCount+k]) }
		fmt.Println()
	}
}
