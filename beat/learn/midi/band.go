package midi

import "onphrase/beat/learn/score"

// programs that suit a part of a song: ranges of the General MIDI list.
var suited = map[score.Part][][2]int{
	score.Bass: {{32, 40}, {32, 40}, {38, 40}}, score.Chord: {{0, 8}, {16, 21}, {24, 32}, {61, 64}, {80, 92}},
	score.Pad: {{48, 56}, {88, 96}, {16, 20}}, score.Arp: {{0, 16}, {24, 29}, {80, 88}, {104, 109}},
	score.Lead: {{56, 80}, {24, 32}, {80, 88}, {40, 44}}, score.Voice: {{52, 55}, {73, 80}, {56, 60}},
}

// keys are where the General MIDI drum map has our drums.
var keys = map[score.Part][]int{
	score.Kick: {36, 35}, score.Snare: {38, 40}, score.Clap: {39}, score.Rim: {37}, score.Hat: {42, 44},
	score.OpenHat: {46},
	score.Ride:    {51, 59}, score.Crash: {49, 57}, score.Tom: {45, 47, 43}, score.Shaker: {70, 82, 69},
	score.Conga: {62, 63, 64, 60, 61}, score.Bell: {56, 75, 76},
}

// Band gives the parts of a song to General MIDI instruments; what they cannot
// play (risers) is left out.
func Band(r score.Rand, song score.Song) Take {
	take := Take{Song: score.Song{Style: song.Style, Beats: song.Beats, Length: song.Length}}
	take.Programs[Drums] = score.Pick(r, []int{0, 0, 8, 16, 24, 25, 32, 40})
	var drum [score.Parts]int
	for p := range score.Part(score.Parts) {
		if k := keys[p]; len(k) > 0 {
			drum[p] = score.Pick(r, k)
		}
		if ranges := suited[p]; len(ranges) > 0 {
			span := score.Pick(r, ranges)
			take.Programs[channel(p)] = span[0] + r.IntN(span[1]-span[0])
		}
	}
	for _, n := range song.Notes {
		if n.Part == score.Riser {
			continue
		}
		v := max(1, min(127, int(30+97*n.Level)))
		if n.Part.Drum() {
			take.Notes = append(take.Notes, Timed{n.At, n.Len, Drums, drum[n.Part], v})
		} else {
			take.Notes = append(take.Notes, Timed{n.At, n.Len, channel(n.Part), max(0, min(127, int(n.Key))), v})
		}
	}
	return take
}

// channel of a pitched part.
func channel(p score.Part) int { return int(p - score.Bass) }

// Split takes the drums out of a take, to be played on channel 0 by a soundfont
// that holds a drum kit and nothing else.
func (t *Take) Split() (drums Take) {
	drums.Song.Length = t.Song.Length
	for _, n := range t.Notes {
		if n.Channel == Drums {
			n.Channel = 0
			drums.Notes = append(drums.Notes, n)
		}
	}
	t.Silence(Drums)
	return drums
}
