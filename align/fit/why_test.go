package fit

import (
	"testing"

	"onphrase/align"
	"onphrase/plan"
)

// Every check says why a finding of it may be left.
func TestWhy(t *testing.T) {
	for _, c := range align.Checks() {
		if Why(align.Finding{Code: c.Code}) == "" {
			t.Errorf("%s does not say why it may be left", c.Code)
		}
	}
}

func TestParsePrices(t *testing.T) {
	tests := []struct {
		name, src string
		problems  []plan.Pos
	}{
		{"all of it", "onphrase: 1\nprices:\n  rep: 3\n  on phrase: 0\n", nil},
		{"nothing", "", []plan.Pos{{Line: 1, Col: 1}}},
		{"no version", "prices:\n  rep: 3\n", []plan.Pos{{Line: 1, Col: 1}}},
		{"an empty mapping", "{}\n", []plan.Pos{{Line: 1, Col: 1}}},
		{"unknown, less than nothing, a list", "onphrase: 1\nprices:\n  reb: 3\n  rep: -1\n  hold: [2]\n",
			[]plan.Pos{{Line: 3, Col: 3}, {Line: 4, Col: 8}, {Line: 5, Col: 9}}},
		{"another list", "onphrase: 1\nmoves: []\n", []plan.Pos{{Line: 2, Col: 1}}},
		{"broken", "onphrase: 1\nprices: {\n", []plan.Pos{{Line: 1, Col: 1}}},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p, problems := ParsePrices([]byte(tt.src))
			if len(problems) != len(tt.problems) {
				t.Fatalf("%v, want problems at %v", problems, tt.problems)
			}
			for i, at := range tt.problems {
				if problems[i].Pos != at || problems[i].Hint == "" {
					t.Errorf("%+v, want one at %v with a hint", problems[i], at)
				}
			}
			if tt.problems == nil && (p[Rep] != 3 || p[OnPhrase] != 0 || p[Hold] != Usual()[Hold]) {
				t.Errorf("read as %v", p)
			}
		})
	}
}
