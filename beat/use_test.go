package beat_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/beat"
)

// What a phrase is used for is common practice, no source.
func TestSuggest(t *testing.T) {
	type p struct {
		counts int
		energy beat.Energy
	}
	for _, c := range []struct {
		name    string
		phrases []p
		want    []beat.Use
	}{
		{"a dance song", []p{{32, beat.Low}, {32, beat.Medium}, {32, beat.High}, {32, beat.Low}, {32, beat.Medium},
			{32, beat.High}, {32, beat.Low}},
			[]beat.Use{beat.SetUp, beat.Build, beat.Work, beat.Recover, beat.Build, beat.Work, beat.Finish}},
		{"a tag does not hide what follows it", []p{{32, beat.High}, {32, beat.Medium}, {4, beat.Low}, {32, beat.High},
			{32, beat.High}},
			[]beat.Use{beat.Work, beat.Build, beat.Hold, beat.Work, beat.Work}},
		{"even", []p{{32, beat.Medium}, {32, beat.Medium}, {16, beat.Medium}, {32, beat.Medium}, {32, beat.Medium}},
			[]beat.Use{beat.SetUp, beat.Work, beat.Hold, beat.Work, beat.Finish}},
		{"a waltz has phrases of 24 counts", []p{{12, beat.Low}, {24, beat.Medium}, {24, beat.High}, {24, beat.High},
			{8, beat.High}},
			[]beat.Use{beat.Hold, beat.Build, beat.Work, beat.Work, beat.Finish}},
		{"it starts full", []p{{32, beat.High}, {32, beat.Low}}, []beat.Use{beat.Work, beat.Finish}},
		{"one phrase", []p{{40, beat.Medium}}, []beat.Use{beat.Work}},
		{"none", nil, nil},
	} {
		var phrases []beat.Phrase
		for _, x := range c.phrases {
			phrases = append(phrases, beat.Phrase{Counts: x.counts, Energy: x.energy})
		}
		beat.Suggest(phrases)
		var got []beat.Use
		for _, x := range phrases {
			got = append(got, x.Use)
		}
		if d := cmp.Diff(c.want, got); d != "" {
			t.Errorf("%s (-want +got)\n%s", c.name, d)
		}
	}
}
