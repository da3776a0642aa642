package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"onphrase/plan"
)

// topic is help about a file, every key of it, written from its schema.
type topic struct {
	name, about string
	schema      string
	intro       string
	objects     []object
}

// object is one kind of mapping in a file: where its schema has it, and its
// heading.
type object struct{ path, title string }

const classIntro = `A class is a text file in YAML: keys and values, indented below each other with
spaces, comments behind #. All that is wrong in it is reported at once, with
line, column and what was probably meant.

` + classSample + `
Names of moves are found whatever their capitals, hyphens and plurals:
'onphrase moves' lists them. A length has a unit: 30s, 1m30s, "1:30", 64 counts
or 8 eights. 'onphrase schema class' gives the same to editors that help with
YAML.`

// classSample is a class file that has a little of everything.
const classSample = `  onphrase: 1
  class: Harbour Strong 30
  slot: "30:00"
  music: music/
  parts:
    - part: Warm-up
      kind: warm-up
      tracks: [tidewater.mp3]
      do:
        - block: A
          sides: both
          moves: [{move: march, counts: 16}, {move: grapevine, counts: 16}]
    - part: Round 1
      kind: strength
      tracks: [slow-ferry.mp3]
      start: phrase 2
      do:
        - superset: Legs and back
          rounds: 2
          do:
            - {set: squat, reps: "4 x 4-4, 8 x 2-2", weight: heavy}
            - {set: bent-over row, reps: 16 x 2-2, weight: heavy}
        - {interval: skater, time: 30s, easier: low skater}
        - {pause: water, time: 30s}
`

const movesIntro = `A moves file holds figures of your own, for all your classes: moves, limits of
control, tempo bands and the time that changes take. --moves names one; without
it moves.yaml in the folder onphrase of your configuration folder is read, where
there is one. What it names takes the place of what onphrase comes with, and
findings then say that the figure is yours.

` + movesSample + `
'onphrase moves NAME' and 'onphrase check --explain CODE' show what holds now,
with the sources.`

// movesSample is a moves file that has a little of everything.
const movesSample = `  onphrase: 1
  moves:
    - {name: crab reach, class: press, pattern: push, counts: 4}
  limits:
    - {class: squat, fine: 0.90s, too fast: 0.60s, source: my physiotherapist}
  bands:
    - {kind: strength, inside: 118-128}
  needs:
    - {for: weights, time: 16 counts}
`

func topics() []topic {
	return []topic{
		{"class-file", "Every key of a class file", plan.ClassSchema, classIntro, []object{
			{"", "The top of the file"}, {"part", "A part"}, {"block", "A block"}, {"block.moves", "A move of a block"},
			{"block.layers", "A layer of a block"},
			{"set", "A set"}, {"interval", "An interval"}, {"pause", "A pause"}, {"superset", "A superset"},
			{"repeat", "A repeat"}, {"move", "A move of your own"},
		}},
		{"moves-file", "Every key of a file of your own moves, limits, tempo bands and needs", plan.MovesSchema, movesIntro,
			[]object{
				{"", "The top of the file"}, {"limit", "A limit"}, {"band", "A band"}, {"need", "A need"}, {"move", "A move"},
			}},
	}
}

// newTopicCmds are the topics of 'onphrase help'.
func newTopicCmds(s *streams) []*cobra.Command {
	var all []*cobra.Command
	for _, t := range topics() {
		all = append(all, &cobra.Command{Use: t.name, Short: t.about, Long: t.text(s.width)})
	}
	return all
}

// text writes the topic out.
func (t topic) text(width int) string {
	var b strings.Builder
	b.WriteString(t.intro + "\n")
	root := readKeys(t.schema)
	for _, o := range t.objects {
		n := root.object(o.path)
		head := o.title
		if about := n.text("description"); about != "" && o.path != "" {
			head += ": " + about
		}
		fmt.Fprintf(&b, "\n%s\n\n", strings.Join(wrap(head, width), "\n"))
		d := details{width: width}
		for _, k := range n.keys(root) {
			d.line(k.name, "%s", k.words())
		}
		b.WriteString(d.String())
	}
	return strings.TrimSuffix(b.String(), "\n")
}
