package fit

import "onphrase/align"

// Why says why a search leaves a finding: what would remove it is none of its
// changes, or costs more than to leave it.
func Why(f align.Finding) string {
	if why, ok := reasons[f.Code]; ok {
		return why
	}
	return "none of the changes that can be made here is about it"
}

var reasons = map[string]string{
	"music-ends-first":    "no start, tempo within 5 % or number of repetitions makes the part short enough for the music at a price below that of leaving it",
	"rhythm-too-fast":     "a slower rhythm, or a tempo within 5 %, would cost more than to leave it, or is still too fast",
	"swing-too-slow":      "no tempo within 5 % makes it swing",
	"odd-phrase":          "everywhere else it would run across an odd phrase too, or leave more behind than it mends",
	"spare-counts":        "what fills the phrase would cost more than to leave it",
	"start-missing":       "no phrase of this track is a better start",
	"track-missing":       "without its counts nothing can be laid on it: another file",
	"low-trust":           "a change of the class makes count 1 no surer: listen and correct the track",
	"tempo-outside-band":  "takes other music, or a tempo farther from the recording",
	"tempo-jump":          "takes other music, or another order of the parts",
	"tempo-stretched":     "the tempo is as you wrote it",
	"loudness-jump":       "takes other music, or a hand at the volume",
	"track-repeated":      "takes other music; it may be meant",
	"in-three":            "takes other music",
	"change-too-short":    "takes a setup: for the change, or an order that changes less often",
	"move-cut-off":        "choreography is for you to change",
	"lead-uneven":         "choreography is for you to change",
	"side-not-named":      "only you know the side that is meant",
	"sides-unequal":       "only you know the side that is meant",
	"odd-reps-in-turn":    "a note: one repetition more or fewer is left to you",
	"interval-rounded":    "a note: whole eights are easier to count down than exact seconds",
	"interval-mid-phrase": "a note: the end can be counted down",
}
