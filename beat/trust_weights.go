package beat

// trustWeights are the log-odds that each sign adds: a constant, the log-odds of
// the mean activation on the counts, the share of it that falls on them, and the
// logarithm of the odds of the reading. Fitted by beat/learn/trust.
var trustWeights = [...]float64{-0.053, 0.585, 2.863, 4.414}

// barsWeights are the log-odds that bars are right around a phrase start, so that
// it can be right: a constant, and the log-odds of the trust in count 1, which
// is of a whole track. Fitted by 'beat/learn/phrases trust -whole'.
var barsWeights = [2]float64{0.30, 0.91}
