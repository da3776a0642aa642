package reading

// weights are the log-odds that each clue of Hear adds, fitted by multinomial
// logistic regression (softmax over the readings of a track, L2 penalty) on
// music rendered for the purpose: MIDI songs, accompaniment patterns and drum
// grammars through two General MIDI soundfonts. No track that accuracy is
// reported on was among them.
var weights = []float64{
	// beat, 1/4, 1/3, 1/2, 2/3, 3/4; every 2nd, 3rd, 4th beat; every 2nd half
	0.481, -0.189, -0.043, -0.403, -0.482, 0.378, 0.319, -2.249, 0.950, 0.980, // kick
	0.277, 0.026, 0.062, -0.348, -0.042, -0.172, 0.224, -0.452, -1.536, -0.579, // bass
	-0.090, -0.563, -0.286, -0.067, 0.537, -0.125, 0.097, -0.023, 0.477, 0.099, // mid
	0.737, -0.182, -0.313, 0.073, -0.310, 0.098, -0.215, -0.374, -0.882, 0.300, // snare
	0.516, -0.203, -0.332, 0.196, -0.273, 0.200, -1.377, -0.844, -0.154, -0.070, // hat
	2.647, -0.675, -2.515, -1.219, -1.317, -0.398, 2.973, 1.475, 2.674, 0.684, // novelty
	2.231, -0.646, 0.180, 0.384, 1.165, 1.143, // repetition after 1, 2, 3, 4, 6, 8 beats
	0.830, -2.193, -2.458, -2.644, // tempo: octaves from the usual, squared, above, below
}
