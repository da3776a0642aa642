package main

import (
	"fmt"
	"io"
	"strings"

	"onphrase/align"
	"onphrase/align/fit"
	"onphrase/plan/say"
)

// writeText shows the plans to a person: what changes, as it stands in the
// file, and what the class is like afterwards.
func (o *fitOptions) writeText(s *streams, res *fit.Result) error {
	var b strings.Builder
	for i, p := range res.Plans {
		if len(p.Changes) == 0 {
			b.WriteString(asItIs(p))
			continue
		}
		fmt.Fprintf(&b, "Plan %d of %d: %s, price %d; %s\n", i+1, len(res.Plans), say.Many(len(p.Changes), "change"), p.Price,
			outcome(p))
		changeLines(&b, s.width, p.Changes)
		fmt.Fprintf(&b, "\n%s\n", o.changed(i+1, res.Src, p))
	}
	best := res.Plans[0]
	left := append(grave(best.New), grave(best.Left)...)
	if len(left) > 0 {
		if len(best.Changes) > 0 {
			b.WriteString("Left after plan 1:\n")
		}
		for _, f := range left {
			d := details{width: s.width}
			d.line(string(f.Severity), "%s, %s: %s", f.Code, orClass(f.Part), f.Message)
			d.line("why left", "%s", fit.Why(f))
			if f.Fix != "" {
				d.line("by hand", "%s", f.Fix)
			}
			fmt.Fprintf(&b, "%s", d.String())
		}
	}
	for _, name := range res.Cut {
		s.say("%s has more ways than could be gone through: there may be cheaper changes", name)
	}
	_, err := s.out.Write([]byte(b.String()))
	return err
}

// asItIs says why nothing is changed.
func asItIs(p fit.Plan) string {
	if len(grave(p.Left)) == 0 {
		return "Nothing to change: every item lands.\n"
	}
	return "Nothing to change: none of the changes that can be made here helps. Left:\n"
}

// changeLines lists changes by part, each with its price.
func changeLines(b *strings.Builder, width int, all []fit.Change) {
	part := ""
	for _, c := range all {
		if c.Part != part {
			part = c.Part
			fmt.Fprintf(b, "  %s\n", part)
		}
		d := details{width: width}
		d.line(fmt.Sprintf("line %d", c.Line), "%s (%d)", c.Words, c.Price)
		b.WriteString(d.String())
	}
}

// outcome says what a plan removes, and what it brings.
func outcome(p fit.Plan) string {
	text := "removes " + found3(p.Gone)
	if n := len(grave(p.New)); n > 0 {
		text += ", brings " + found3(grave(p.New))
	}
	return text
}

// grave are the findings that are no notes.
func grave(all []align.Finding) []align.Finding {
	var out []align.Finding
	for _, f := range all {
		if f.Severity != align.Note {
			out = append(out, f)
		}
	}
	return out
}

// found3 counts findings of the three severities.
func found3(all []align.Finding) string {
	n := map[align.Severity]int{}
	for _, f := range all {
		n[f.Severity]++
	}
	return fmt.Sprintf("%d to fix, %d to watch, %s", n[align.Fix], n[align.Watch], say.Many(n[align.Note], "note"))
}

func orClass(part string) string {
	if part == "" {
		return "the whole class"
	}
	return part
}

func listPrices(s *streams, file string) error {
	prices, err := priceList(s, file)
	if err != nil {
		return err
	}
	t := &table{cols: []column{{head: "price"}, {head: "for"}, {head: "what", least: 30}}}
	for _, e := range fit.Table {
		t.add(fmt.Sprint(prices[e.Kind]), string(e.Kind), e.What)
	}
	if err := t.write(s.out, s.width); err != nil {
		return err
	}
	_, err = io.WriteString(s.out, pricesSample)
	return err
}

// pricesSample shows how to set one's own prices.
const pricesSample = `
Only the proportions matter. To set your own, write those that differ into
prices.yaml in the folder onphrase of your configuration folder, or into a file
that --prices names:

  onphrase: 1
  prices:
    rep: 2
    swap: 20
`
