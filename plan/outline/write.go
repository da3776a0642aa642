package outline

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"onphrase/plan"
)

// Options are what a class to begin with is written for.
type Options struct {
	Name    string // of the class; empty: "New class" and its minutes
	Music   string // folder of the songs, from where the class file will be; empty: beside it
	Minutes int    // in the studio, from Least to Most
}

// unnamed stands for the song of a part while there are none.
const unnamed = "your-song-%d.mp3"

// Write gives the text of a class file: parts by outline, the songs that suit
// them, whole phrases of moves, and remarks that say what to change. Without
// songs the parts name songs that are still to be found, of a tempo that
// suits.
func Write(o Options, songs []Song) (string, error) {
	sections, err := Sections(o.Minutes)
	if err != nil {
		return "", err
	}
	from := newShelf(songs)
	if len(songs) > 0 && len(from.songs) == 0 {
		return "", fmt.Errorf("none of %d songs has a phrase of %d counts", len(songs), phraseCounts)
	}
	if len(songs) == 0 {
		from = newShelf(stillToFind(sections))
	}
	var b strings.Builder
	o.head(&b, len(songs) > 0)
	turns := map[plan.PartKind]*int{}
	for _, s := range sections {
		if turns[s.Kind] == nil {
			turns[s.Kind] = new(int)
		}
		s.fill(from, turns[s.Kind]).write(&b)
	}
	return b.String(), nil
}

// stillToFind makes a song for every part, of the middle of its usual tempo.
func stillToFind(sections []Section) []Song {
	var all []Song
	for i, s := range sections {
		band := plan.Builtin().Bands[s.Kind].Inside
		bpm := math.Round((max(band.Low, band.High-10) + band.High) / 2)
		song := Song{File: fmt.Sprintf(unnamed, i+1), BPM: bpm, Suits: []plan.PartKind{s.Kind}}
		for range int(math.Round(60*s.Minutes/song.seconds(1))) + 1 {
			song.Phrases = append(song.Phrases, phraseCounts)
		}
		all = append(all, song)
	}
	return all
}

// head writes what stands above the parts.
func (o Options) head(b *strings.Builder, music bool) {
	name := o.Name
	if name == "" {
		name = fmt.Sprintf("New class %d", o.Minutes)
	}
	fmt.Fprintf(b, "# A class of %d minutes to begin with. Parts and minutes are common practice, no\n# source; the moves are only there to be changed. After every change:\n#\n#   onphrase check THIS-FILE\n#\n", o.Minutes)
	if !music {
		b.WriteString("# The songs are still to be found: write the names of yours in their place.\n#\n")
	}
	fmt.Fprintf(b, "onphrase: 1\nclass: %s # change: the name on the sheet\n", quoted(name))
	fmt.Fprintf(b, "slot: \"%d:00\" # minutes in the studio; about %d of them are for coming in and setting up\n",
		o.Minutes, slack)
	if o.Music != "" {
		fmt.Fprintf(b, "music: %s\n", quoted(o.Music))
	}
	b.WriteString("\nparts:\n")
}

// write writes one part.
func (p part) write(b *strings.Builder) {
	remark(b, "About %s. %s", span(60*p.Minutes), menus[p.Kind].remark)
	for _, c := range p.songs {
		remark(b, "%s: %s BPM, %s", clean(c.File), strconv.FormatFloat(c.BPM, 'f', -1, 64), c.said())
		for _, r := range c.remarks(p.Kind) {
			remark(b, "change: %s", r)
		}
	}
	fmt.Fprintf(b, "  - part: %s\n    kind: %s\n    tracks:\n", quoted(p.Name), p.Kind)
	for _, c := range p.songs {
		fmt.Fprintf(b, "      - %s\n", quoted(c.File))
	}
	b.WriteString("    do:\n")
	for _, it := range p.items {
		fmt.Fprintf(b, "      - %s\n", it)
	}
	b.WriteString("\n")
}

// remarkWidth is how wide a remark is written [runes].
const remarkWidth = 76

// remark writes lines that YAML passes over.
func remark(b *strings.Builder, format string, args ...any) {
	line := ""
	for _, word := range strings.Fields(fmt.Sprintf(format, args...)) {
		if line != "" && utf8.RuneCountInString(line+" "+word) > remarkWidth {
			b.WriteString("  #" + line + "\n")
			line = ""
		}
		line += " " + word
	}
	b.WriteString("  #" + line + "\n")
}

// said is how long a song is, in phrases.
func (c choice) said() string {
	whole, odd := 0, 0
	for _, counts := range c.Phrases {
		if counts == phraseCounts {
			whole++
		} else {
			odd++
		}
	}
	text := fmt.Sprintf("%d phrases of %d counts", whole, phraseCounts)
	if odd > 0 {
		text += fmt.Sprintf(", %d odd", odd)
	}
	return text
}

// remarks say what is not as it should be with a song.
func (c choice) remarks(kind plan.PartKind) []string {
	var all []string
	if c.again {
		all = append(all, "it plays in a part above already; there was no other song for this one")
	}
	if !c.suits {
		all = append(all, fmt.Sprintf("a song of %s BPM would suit better", plan.Builtin().Bands[kind].Inside))
	}
	return all
}

// span is a time in words.
func span(seconds float64) string {
	s := int(math.Round(seconds/30)) * 30
	if s%60 == 0 {
		return fmt.Sprintf("%d minutes", s/60)
	}
	return fmt.Sprintf("%d and a half minutes", s/60)
}

// quoted writes text so that nothing in it means anything to YAML.
func quoted(text string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(clean(text)) + `"`
}

// clean is text as one line.
func clean(text string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f || r == '\u0085' || r == '\u2028' || r == '\u2029' {
			return ' '
		}
		return r
	}, text)
}
