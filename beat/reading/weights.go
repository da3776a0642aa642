package reading

// weights are the log-odds that each clue of Hear adds, fitted by multinomial
// logistic regression on music rendered for the purpose (beat/learn/reading).
// No track that accuracy is reported on was among it.
var weights = []float64{
	// beat, 1/4, 1/3, 1/2, 2/3, 3/4; every 2nd, 3rd, 4th beat; every 2nd half
	0.646, -0.362, -0.426, -0.142, -0.079, 0.030, -0.102, -0.065, 0.004, 0.550, // kick
	0.421, -0.004, -0.306, 0.029, -0.142, -0.334, -0.100, -0.431, -0.666, 0.342, // bass
	0.091, -0.260, -0.049, 0.087, 0.015, 0.228, -0.132, -0.284, -1.147, -0.498, // mid
	0.271, -0.242, -0.061, -0.101, -0.190, 0.050, -0.188, -0.440, -0.031, -0.108, // snare
	0.341, -0.111, -0.039, 0.225, -0.274, 0.088, 0.215, -0.677, -1.295, -0.934, // hat
	1.522, -0.855, -1.199, -2.043, -0.753, -1.167, 2.290, 0.126, 4.635, 1.001, // novelty
	2.034, 0.739, 0.176, 1.217, -0.525, 1.415, // repetition after 1, 2, 3, 4, 6, 8 beats
	0.762, -1.125, -1.756, -1.414, // tempo: octaves from the usual, squared, above, below
	1.277, 0.203, // kick and snare a beat apart, by turns
}

// heardWeights are the log-odds that each clue of the ear adds, after the weight
// of all clues by sound together; fitted likewise, on music new to the ear.
var heardWeights = []float64{
	0.256,                                         // by sound
	0.407, -0.163, -0.164, -0.398, -0.204, -0.253, // beat, 1/4, 1/3, 1/2, 2/3, 3/4
	-0.287, -0.259, -0.241, // every 2nd, 3rd, 4th beat stands out
	0.037, 0.297, // likelihood of the counts, of the ones
	0.895, -0.226, 7.534, // shared with the ear's own counts, these themselves, at one level
	0.132, -0.863, // tempo: octaves from the usual, squared
}
