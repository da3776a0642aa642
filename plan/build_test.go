package plan_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/plan"
)

// block reads a block of the given keys.
func block(t *testing.T, keys string) plan.Block {
	t.Helper()
	return parseClean(t, []byte(inItem("- {block: A, "+keys+"}"))).Parts[0].Items[0].Work.(plan.Block)
}

// listPasses writes each pass as its moves and counts.
func listPasses(b plan.Block) []string {
	var all []string
	for _, p := range b.Passes() {
		var s []string
		for _, m := range p.Moves {
			s = append(s, strings.TrimSpace(fmt.Sprintf("%s %d %s", m.Move, m.Counts, strings.Join(m.With, "+"))))
		}
		all = append(all, strings.TrimSpace(fmt.Sprintf("%d/%d %s", p.Stage, p.Stages, p.Side)+": "+strings.Join(s, ", ")))
	}
	return all
}

// Stages after the definitions: add-on A, A+B, A+B+C; layering one change at a
// time, counts unchanged; holding pattern. The names are common practice, no
// source. Every pass fills its phrase.
func TestBuilds(t *testing.T) {
	for name, c := range map[string]struct {
		keys string
		want []string
	}{
		"add-on": {"build: add-on, moves: [{move: march, counts: 8}, {move: mambo, counts: 8}, {move: knee lift, counts: 16}]", []string{
			"1/3 : march 8, march 8, march 8, march 8", "2/3 : march 8, mambo 8, march 8, mambo 8",
			"3/3 : march 8, mambo 8, knee lift 16"}},
		"add-on with spare counts": {"build: add-on, hold: walk, moves: [{move: mambo, counts: 12}, {move: march, counts: 16}]", []string{
			"1/2 : mambo 12, mambo 12, walk 8", "2/2 : mambo 12, march 16, walk 4"}},
		"add-on of two phrases": {"build: add-on, moves: [{move: mambo, counts: 32}, {move: march, counts: 16}]", []string{
			"1/2 : mambo 32", "2/2 : mambo 32, march 16, march 16"}},
		"both leads at every stage": {"build: holding, sides: both, moves: [{move: mambo, counts: 16}, {move: knee lift, counts: 16}]", []string{
			"1/2 right: mambo 16, march 16", "1/2 left: mambo 16, march 16", "2/2 right: mambo 16, knee lift 16",
			"2/2 left: mambo 16, knee lift 16"}},
		"holding": {"build: holding, times: 2, hold: step touch, moves: [{move: mambo, counts: 20}]", []string{
			"1/1 : mambo 20, step touch 12", "1/1 : mambo 20, step touch 12"}},
		"layering": {"build: layering, moves: [{move: march, counts: 16}, {move: step touch, counts: 16}], layers: [{move: step touch, becomes: grapevine}, {move: march, add: arms}, {move: grapevine, add: turn}]", []string{
			"1/4 : march 16, step touch 16", "2/4 : march 16, grapevine 16", "3/4 : march 16 arms, grapevine 16",
			"4/4 : march 16 arms, grapevine 16 turn"}},
		"hold without a build": {"hold: march, moves: [{move: mambo, counts: 20}]", []string{"1/1 : mambo 20, march 12"}},
		"halving stops at one repetition": {"build: halving, moves: [{move: march, counts: 16}, {move: grapevine, counts: 16}]", []string{
			"1/3 : march 16, grapevine 16", "2/3 : march 8, grapevine 8, march 8, grapevine 8",
			"3/3 : march 4, grapevine 4, march 4, grapevine 4, march 4, grapevine 4, march 4, grapevine 4"}},
	} {
		b := block(t, c.keys)
		if diff := cmp.Diff(c.want, listPasses(b)); diff != "" {
			t.Errorf("%s (-want +got):\n%s", name, diff)
		}
		for _, p := range b.Passes() {
			if p.Counts()%32 != 0 {
				t.Errorf("%s: a pass of %d counts", name, p.Counts())
			}
		}
	}
}

// E17: moves of 2 counts, 8-8, 4-4, 2-2, 1-1: passes of 32, 16, 8 and 4
// counts, done 1, 2, 4 and 8 times; 128 counts.
func TestHalvingTaper(t *testing.T) {
	b := block(t, "build: halving, moves: [{move: march, counts: 16}, {move: step touch, counts: 16}]")
	if b.Counts() != 128 || len(b.Stages) != 4 {
		t.Fatalf("%d counts in %d stages", b.Counts(), len(b.Stages))
	}
	for i, times := range []int{1, 2, 4, 8} {
		s := b.Stages[i].Moves
		if len(s) != 2*times || s[0].Counts != 16/times || s[1].Move != "step touch" {
			t.Errorf("stage %d: %+v", i+1, s)
		}
	}
}

// E16: a block of 20 counts and 12 of hold fill a phrase (the example is
// Parker's, "Hold it right there!").
func TestHoldFillsThePhrase(t *testing.T) {
	if b := block(t, "hold: march, moves: [{move: mambo, counts: 20}]"); b.Counts() != 32 {
		t.Errorf("%d counts", b.Counts())
	}
}

func TestParseRefusesBadBuilds(t *testing.T) {
	const moves = "moves: [{move: march, counts: 16}, {move: mambo, counts: 16}]"
	checkCases(t, inItem, []badCase{
		{"- {block: A, build: ▶pyramid, " + moves + "}",
			`build: "pyramid" is not one of add-on, layering, halving or holding`, "halving?"},
		{"- {block: A, build: ▶adon, " + moves + "}", `build: "adon" is not one of add-on, layering, halving or holding`,
			"add-on?"},
		{"- ▶{block: A, build: layering, " + moves + "}", "a block needs layers",
			"like layers: [{move: step touch, becomes: double step touch}, {move: march, add: arms overhead}]"},
		{"- {block: A, layers: ▶[{move: march, add: arms}], " + moves + "}", "layers need build: layering",
			"add it, or remove the layers"},
		{"- {block: A, build: layering, layers: [▶{move: march}], " + moves + "}",
			"a layer changes one thing: becomes (another move) or add (words)", "like {move: march, add: arms overhead}"},
		{"- {block: A, build: layering, layers: [▶{move: grapevine, add: arms}], " + moves + "}",
			`the block has no move "grapevine" to change`, "a layer names a move of the same block"},
		{"- {block: A, build: layering, layers: [{move: march, becomes: ▶jogg}], " + moves + "}",
			`the move "jogg" is not in the catalogue`,
			"jog? Or add it at the top of the file: moves: [{name: jogg, counts: 4}]"},
		{"- {block: A, build: halving, moves: [{move: march, counts: 28}, ▶{move: grapevine, counts: 4}]}",
			"4 counts of grapevine cannot be halved: one repetition takes 4",
			"halving starts with 2, 4 or 8 repetitions of each move, like counts: 32"},
		{"- {block: A, build: add-on, moves: ▶[{move: march, counts: 16}]}", "one move has nothing to be added to it",
			"build: holding, or more moves"},
		{"- {block: A, hold: ▶mrach, moves: [{move: march, counts: 20}]}", `the move "mrach" is not in the catalogue`,
			"march? Or add it at the top of the file: moves: [{name: mrach, counts: 2}]"},
		{"- ▶{block: A, build: halving, moves: [{move: march, counts: 8}, {move: mambo, counts: 16}]}",
			"block A takes 8 + 16 = 24 counts: 8 short of a whole phrase of 32",
			"add a hold of 8 counts, like {move: march, counts: 8}"},
	})
	many := strings.Repeat("{move: march, counts: 2}, ", 48)
	checkCases(t, inItem, []badCase{
		{"- {block: A, build: add-on, moves: ▶[" + many + "]}", "48 moves are too many to build up in one block",
			"at most 32; make two blocks of it"},
	})
}
