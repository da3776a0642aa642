package beat

// trustWeights are the log-odds that each sign adds: a constant, the log-odds of
// the mean activation on the counts, the share of it that falls on them, and the
// logarithm of the odds of the reading. Fitted by beat/learn/trust.
var trustWeights = [...]float64{-0.053, 0.585, 2.863, 4.414}

// phraseWeights are the log-odds that a phrase starts where one was found: a
// constant, the log-odds of the trust in it where bars are right, and those of
// the trust in count 1. Fitted by 'beat/learn/phrases trust -whole'.
var phraseWeights = [3]float64{-1.0, 0.9, 0.5}
