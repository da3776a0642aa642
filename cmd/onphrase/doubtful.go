package main

import (
	"fmt"

	"onphrase/beat"
)

// leastTrust is the trust below which a result is not to be relied on unheard;
// checks of a class draw the line at the same place.
const leastTrust = 0.5

// doubtful says which tracks are least to be trusted, and how to set them
// right.
func doubtful(tracks []beat.Track) string {
	n, worst := 0, -1
	for i, t := range tracks {
		if t.Problem != "" || lowest(t) >= leastTrust {
			continue
		}
		n++
		if worst < 0 || lowest(t) < lowest(tracks[worst]) {
			worst = i
		}
	}
	if n == 0 {
		return ""
	}
	who := "a trust below 50 asks for your ears"
	if n > 1 {
		who = fmt.Sprintf("%d tracks have a trust below 50 and ask for your ears", n)
	}
	return fmt.Sprintf("%s (--clicks DIR writes them with clicks); set what is wrong, for example: onphrase correct %q %s",
		who, tracks[worst].File, remedy(tracks[worst]))
}

// lowest is the least of the three trusts.
func lowest(t beat.Track) float64 { return min(t.Trust.Beat, t.Trust.Count1, t.Trust.Phrase) }

// remedy is the flag that corrects what is least sure of a track. Trust in
// count 1 takes that in the counts in, and trust in phrases both: the first of
// them that is low is to blame.
func remedy(t beat.Track) string {
	switch {
	case t.Trust.Beat < leastTrust && len(t.Alternatives) > 0 && t.Alternatives[0].BPM < t.BPM:
		return "--half"
	case t.Trust.Beat < leastTrust && len(t.Alternatives) > 0:
		return "--double"
	case t.Trust.Count1 < leastTrust:
		return "--one TIME"
	}
	return "--phrase TIME"
}
