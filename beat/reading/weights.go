package reading

// weights are the log-odds that each clue of Hear adds, fitted by multinomial
// logistic regression on music rendered for the purpose (beat/learn/reading).
// No track that accuracy is reported on was among it.
var weights = []float64{
	// beat, 1/4, 1/3, 1/2, 2/3, 3/4; every 2nd, 3rd, 4th beat; every 2nd half
	0.556, -0.422, -0.154, -0.057, 0.037, -0.117, -0.266, -0.108, -0.328, -0.415, // kick
	0.423, -0.224, -0.568, 0.195, -0.138, 0.216, 0.279, -0.562, -1.420, -0.345, // bass
	0.161, -0.301, -0.262, 0.238, -0.181, 0.195, -0.540, -0.712, -0.398, 0.656, // mid
	0.240, -0.288, 0.095, -0.076, -0.240, -0.027, 0.176, -0.962, -0.171, 0.166, // snare
	0.467, -0.080, -0.119, -0.184, -0.246, 0.043, -0.142, -1.198, -2.514, -1.668, // hat
	2.244, 0.237, -1.626, -2.692, -0.184, -1.351, 2.204, -0.230, 6.397, 0.347, // novelty
	1.849, 0.747, 0.114, 1.093, -0.079, 1.825, // repetition after 1, 2, 3, 4, 6, 8 beats
	0.899, -0.795, -1.552, -1.174, // tempo: octaves from the usual, squared, above, below
}
