// Package ear hears counts: a small network, trained on music rendered for the
// purpose, says for every frame how likely a count, and a count 1, is there.
//
// It listens to the band levels that package spectral measures. Where its
// weights come from, what they were trained on and how to train them anew:
// beat/learn/README.md.
package ear
