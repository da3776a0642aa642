package fit

import (
	"fmt"
	"strconv"
	"strings"

	"gopkg.in/yaml.v3"

	"onphrase/plan"
)

// version of a file of prices.
const version = "1"

const pricesExample = "onphrase: 1, and below it prices: with lines like rep: 2"

// mostPrice bounds a price, so that sums of them stay sums.
const mostPrice = 100_000

// ParsePrices reads a user's own prices, which take the place of those in the
// table:
//
//	onphrase: 1
//	prices:
//	  rep: 2
//	  on phrase: 1
//
// All problems are returned at once, with the prices as far as they were
// understood. The file is not opened; its name only stands in messages.
func ParsePrices(src []byte) (Prices, []plan.Problem) {
	p := Usual()
	var doc yaml.Node
	if err := yaml.Unmarshal(src, &doc); err != nil {
		return p, []plan.Problem{{Pos: plan.Pos{Line: 1, Col: 1}, Msg: strings.TrimPrefix(err.Error(), "yaml: "),
			Hint: pricesExample}}
	}
	if len(doc.Content) == 0 || doc.Content[0].Kind != yaml.MappingNode || len(doc.Content[0].Content) == 0 {
		return p, []plan.Problem{{Pos: plan.Pos{Line: 1, Col: 1}, Msg: "this is no file of prices", Hint: pricesExample}}
	}
	var problems []plan.Problem
	problem := func(n *yaml.Node, hint, format string, args ...any) {
		problems = append(problems, plan.Problem{Pos: plan.Pos{Line: n.Line, Col: n.Column},
			Msg: fmt.Sprintf(format, args...), Hint: hint})
	}
	root := doc.Content[0]
	if root.Content[0].Value != "onphrase" || root.Content[1].Value != version {
		problem(root, pricesExample, "the file does not begin with the line onphrase: %s", version)
	}
	for i := 2; i+1 < len(root.Content); i += 2 {
		k, v := root.Content[i], root.Content[i+1]
		if k.Value != "prices" || v.Kind != yaml.MappingNode {
			problem(k, pricesExample, "%q is no list of prices", k.Value)
			continue
		}
		for j := 0; j+1 < len(v.Content); j += 2 {
			p.read(v.Content[j], v.Content[j+1], problem)
		}
	}
	return p, problems
}

// read takes over one price.
func (p Prices) read(k, v *yaml.Node, problem func(n *yaml.Node, hint, format string, args ...any)) {
	if _, known := p[Kind(k.Value)]; !known {
		problem(k, "one of "+strings.Join(kinds(), ", "), "there is no price for %q", k.Value)
		return
	}
	n, err := strconv.Atoi(v.Value)
	if err != nil || v.Kind != yaml.ScalarNode || n < 0 || n > mostPrice {
		problem(v, fmt.Sprintf("a whole number from 0 to %d", mostPrice), "%q is no price", v.Value)
		return
	}
	p[Kind(k.Value)] = n
}

func kinds() []string {
	var all []string
	for _, e := range Table {
		all = append(all, string(e.Kind))
	}
	return all
}
