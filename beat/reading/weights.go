package reading

// weights are the log-odds that each clue of Hear adds, fitted by multinomial
// logistic regression (softmax over the readings of a track, L2 penalty) on
// music rendered for the purpose: MIDI songs, accompaniment patterns and drum
// grammars through two General MIDI soundfonts. No track that accuracy is
// reported on was among them.
var weights = []float64{
	// beat, 1/4, 1/3, 1/2, 2/3, 3/4; every 2nd, 3rd, 4th beat; every 2nd half
	0.373, -0.075, -0.136, -0.302, -0.295, 0.063, 0.192, -1.043, 0.391, 0.948, // kick
	0.229, -0.054, -0.040, -0.218, 0.022, -0.036, 0.070, -0.569, -1.335, -0.475, // bass
	0.047, -0.232, -0.184, 0.009, 0.320, 0.009, -0.106, -0.317, 0.164, 0.792, // mid
	0.470, -0.206, -0.295, -0.024, -0.158, 0.040, -0.236, -0.418, -0.105, -0.321, // snare
	0.364, -0.137, -0.327, 0.034, -0.243, 0.074, -0.981, -0.533, -0.676, -0.598, // hat
	2.552, -0.173, -2.151, -1.431, -0.786, -0.823, 2.230, 0.753, 3.493, 0.700, // novelty
	1.489, -0.053, 0.070, 0.427, 0.209, 0.481, // repetition after 1, 2, 3, 4, 6, 8 beats
	0.563, -2.023, -2.371, -2.023, // tempo: octaves from the usual, squared, above, below
}
