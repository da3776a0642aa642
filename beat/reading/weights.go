package reading

// weights are the log-odds that each clue of the sound adds, fitted by multinomial
// logistic regression on music rendered for the purpose (beat/learn/reading).
// No track that accuracy is reported on was among it.
var weights = []float64{
	// beat, 1/4, 1/3, 1/2, 2/3, 3/4; every 2nd, 3rd, 4th beat; every 2nd half
	0.577, -0.357, -0.303, -0.155, 0.004, -0.060, -0.329, 0.360, -0.141, 0.228, // kick
	0.399, -0.086, -0.273, 0.054, -0.033, -0.235, 0.174, 0.013, -0.589, 0.319, // bass
	0.026, -0.228, -0.090, 0.172, 0.042, 0.252, 0.090, 0.063, -0.957, -0.486, // mid
	0.203, -0.173, -0.083, -0.089, -0.133, 0.043, -0.368, -0.273, 0.132, 0.155, // snare
	0.295, -0.121, 0.010, 0.123, -0.234, 0.049, 0.094, -0.378, -0.795, -0.926, // hat
	0.919, -0.629, -0.232, -0.947, -0.869, -1.309, 1.246, 0.643, 1.351, 0.693, // novelty
	1.429, -0.014, -0.009, 0.634, -0.406, 0.951, // repetition after 1, 2, 3, 4, 6, 8 beats
	0.397, -1.031, -1.733, -1.174, // tempo: octaves from the usual, squared, above, below
	1.094, 0.208, // kick and snare a beat apart, by turns
	// chords: change over 1 beat on each place, every 2nd, 3rd, 4th, 8th beat
	2.964, -1.028, 0.686, 1.773, -0.478, -1.066, 3.805, 1.496, 4.231, 0.535,
	2.545, -0.131, 1.504, 1.513, -1.130, -2.449, -1.456, 2.934, 5.990, 0.381, // over 2
	4.952, -3.922, -7.348, -0.626, -4.015, 6.412, 0.891, -0.602, 2.638, 0.202, // over 4
	0.043, -0.333, 0.698, -0.321, -0.270, 0.534, 1.409, 0.791, 0.071, -2.197, // bass notes, likewise
	0.143, -2.398, -1.132, 0.257, 0.122, -3.237, -0.136, 0.303, 3.705, -0.517, // over 2
	3.313, 4.511, 0.520, -6.330, -3.248, 1.279, -2.183, -3.472, 0.764, 1.979, // over 4
	0.347, -1.724, -0.906, -0.611, 0.614, 0.473, -0.753, -1.523, 0.906, -0.780, // spectrum, likewise
	-0.784, 2.463, -2.266, 2.395, -0.837, -1.765, 1.647, -0.092, 3.185, -1.023, // over 2
	-1.506, 4.956, -0.479, -7.486, 1.823, 2.266, -5.352, -0.987, 4.050, -0.280, // over 4
	// level: 1/4, 1/3, 1/2, 2/3, 3/4, 1, 4/3, 3/2, 2, 3, 4 of the repetition
	0.715, 0.518, 1.076, -0.174, -0.535, 0.730, -0.375, -0.687, -0.038, 0.595, -1.023,
}

// heardWeights are the log-odds that each clue of the ear adds, after the weight
// of all clues by sound together; fitted likewise, on music new to the ear.
var heardWeights = []float64{
	0.385,                                         // by sound
	0.363, -0.143, -0.134, -0.360, -0.167, -0.235, // beat, 1/4, 1/3, 1/2, 2/3, 3/4
	-0.271, -0.226, -0.214, // every 2nd, 3rd, 4th beat stands out
	0.033, 0.237, // likelihood of the counts, of the ones
	0.625, -0.188, 7.223, // shared with the ear's own counts, these themselves, at one level
	0.066, -0.693, // tempo: octaves from the usual, squared
}
