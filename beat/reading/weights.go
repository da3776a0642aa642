package reading

// weights are the log-odds that each clue of Hear adds, fitted by multinomial
// logistic regression (softmax over the readings of a track, L2 penalty) on
// music rendered for the purpose: MIDI songs, accompaniment patterns and drum
// grammars through two General MIDI soundfonts. No track that accuracy is
// reported on was among them.
var weights = []float64{
	// beat, 1/4, 1/3, 1/2, 2/3, 3/4; every 2nd, 3rd, 4th beat; every 2nd half
	0.805, -0.578, -0.564, -0.468, -0.961, 0.237, -0.457, -2.662, 0.091, 2.922, // kick
	0.736, 0.523, -0.031, -0.566, -0.464, -0.665, 0.304, -1.827, -1.746, -1.585, // bass
	0.726, -0.126, -0.544, -0.375, -0.287, -0.376, 1.293, -0.609, 2.788, 1.526, // mid
	0.892, -0.958, -0.483, 0.387, -0.234, 0.520, -1.285, -1.879, 0.366, 1.061, // snare
	0.373, -0.299, -0.208, -0.006, 0.321, 0.634, -2.432, -1.089, -0.736, -0.619, // hat
	0.313, -2.539, -4.450, -1.631, // tempo: octaves from the usual, squared, above, below
}
