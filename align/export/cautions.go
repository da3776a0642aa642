package export

// Cautions are printed on every sheet and page that people teach from.
var Cautions = []string{
	"The limits are advice drawn from the sources named with each finding; people differ. The instructor's " +
		"qualification, the participants' medical clearance and local rules decide. Anyone who feels pain or " +
		"dizziness stops.",
	"Loudness: a file cannot tell how loud the room is. NIOSH recommends at most 85 dBA over 8 hours; every 3 dB " +
		"more halves the time.",
	"Playing recorded music in a class usually needs a licence; local law decides.",
}
