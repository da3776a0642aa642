package main

import (
	"fmt"
	"math"
	"os/exec"

	"onphrase/beat/learn/score"
	"onphrase/beat/learn/synth"
)

// syllables are what is sung: they mean nothing, and begin and end as words do.
var syllables = []string{"la", "na", "doo", "oh", "hey", "you", "me", "go", "day", "time", "light", "stay", "run",
	"high", "feel", "now", "shine", "back", "we", "sky", "ba", "ya", "more", "fire"}

// syllable is a spoken syllable that can be sung at any pitch.
type syllable struct {
	sound  []float32
	hz     float64 // pitch of the vowel
	vowel  int     // sample where it begins
	middle int     // sample where it is loudest
}

// singer speaks some syllables in one voice and knows their pitch.
func singer(r score.Rand) ([]syllable, error) {
	voice, pitch := score.Pick(r, voices[:9]), fmt.Sprint(20+r.IntN(60))
	var out []syllable
	for range 6 {
		text := score.Pick(r, syllables)
		raw, err := exec.Command("espeak-ng", "--stdout", "-v", voice, "-s", "120", "-p", pitch, text).Output()
		if err != nil {
			return nil, fmt.Errorf("espeak-ng: %w", err)
		}
		const header = 44
		if s, ok := newSyllable(fromBytes(raw[min(header, len(raw)):])); ok {
			out = append(out, s)
		}
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("espeak-ng: %s says nothing that can be sung", voice)
	}
	return out, nil
}

// newSyllable finds the vowel, its onset and pitch.
func newSyllable(x []float32) (syllable, bool) {
	const block = 220
	loud := make([]float64, len(x)/block)
	best := 0
	for i := range loud {
		for _, v := range x[i*block : (i+1)*block] {
			loud[i] += float64(v) * float64(v)
		}
		if loud[i] > loud[best] {
			best = i
		}
	}
	onset := best
	for onset > 0 && loud[onset-1] > 0.2*loud[best] {
		onset--
	}
	const window, shortest, longest = 1024, synth.Rate / 400, synth.Rate / 70
	s := syllable{sound: x, vowel: onset * block, middle: best * block}
	if s.middle+window+longest > len(x) || len(loud) == 0 {
		return s, false
	}
	lag, top := 0, 0.0
	for l := shortest; l < longest; l++ {
		sum := 0.0
		for i := range window {
			sum += float64(x[s.middle+i]) * float64(x[s.middle+i+l])
		}
		if sum > top*1.02 {
			lag, top = l, sum
		}
	}
	s.hz = synth.Rate / float64(max(1, lag))
	peak := float32(1e-6)
	for _, v := range x {
		peak = max(peak, v, -v)
	}
	for i := range x {
		x[i] *= 0.5 / peak
	}
	return s, lag > 0
}

// sing adds a note: the vowel begins at its time, the pitch is moved to the
// nearest octave of the note's, and the loudest part is repeated to its end.
func (s syllable) sing(out []float32, n score.Note) {
	ratio := 440 * math.Exp2((n.Key-69)/12) / s.hz
	ratio = math.Exp2(math.Mod(math.Mod(math.Log2(ratio)+0.5, 1)+1, 1) - 0.5)
	loop := math.Round(8 * synth.Rate / s.hz) // whole periods of the source
	at, from := 0.0, int(n.At*synth.Rate-float64(s.vowel)/ratio)
	length := int(n.Len*synth.Rate + float64(s.vowel)/ratio)
	const release = synth.Rate / 20
	end := float64(s.middle) + loop
	for i := 0; i < length+release; i++ {
		if at >= end && i < length && end < float64(len(s.sound)) {
			at -= loop
		}
		k := int(at)
		if k+1 >= len(s.sound) || from+i >= len(out) {
			return
		}
		part := float32(at - float64(k))
		v := (s.sound[k]*(1-part) + s.sound[k+1]*part) * float32(n.Level)
		if i > length {
			v *= 1 - float32(i-length)/release
		}
		if from+i >= 0 {
			out[from+i] += v
		}
		at += ratio
	}
}

// sung takes the singer's notes out of a song and sings them with words; nil if
// there are none.
func sung(r score.Rand, song *score.Song) ([]float32, error) {
	var kept, notes []score.Note
	for _, n := range song.Notes {
		if n.Part == score.Voice {
			notes = append(notes, n)
		} else {
			kept = append(kept, n)
		}
	}
	if len(notes) == 0 {
		return nil, nil
	}
	words, err := singer(r)
	if err != nil {
		return nil, err
	}
	song.Notes = kept
	out := make([]float32, int(song.Length*synth.Rate))
	for _, n := range notes {
		score.Pick(r, words).sing(out, n)
	}
	return out, nil
}
