package fit

import (
	"testing"

	"onphrase/align"
	"onphrase/plan"
)

// Reasons are given for checks that there are, and for all that a search is
// there to mend.
func TestReasons(t *testing.T) {
	for code := range reasons {
		if _, ok := align.Explain(code); !ok {
			t.Errorf("a reason for %s, which is no check", code)
		}
	}
	for _, code := range align.TrialCodes() {
		if _, ok := reasons[code]; !ok {
			t.Errorf("no reason why %s may be left", code)
		}
	}
	if Why(align.Finding{Code: "over-slot"}) == "" {
		t.Error("no reason for what is not listed")
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
		{"unknown, less than nothing, a list", "onphrase: 1\nprices:\n  reb: 3\n  rep: -1\n  hold: [2]\n", []plan.Pos{{Line: 3, Col: 3}, {Line: 4, Col: 8}, {Line: 5, Col: 9}}},
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
