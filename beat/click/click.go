// Package click lays clicks on a track's counts, so that a person can hear
// in ten seconds whether they are right: one pitch for every count, a higher
// one for count 1, the highest where a phrase starts.
package click

import (
	"bytes"
	"encoding/binary"
	"errors"
	"io"
	"math"

	"onphrase/beat"
)

// Pitch of a click [Hz]. They lie an octave and less apart, clearly told from
// each other, and below half of the lowest sample rate music comes in.
type Pitch float64

const (
	Count       Pitch = 800
	One         Pitch = 1200
	PhraseStart Pitch = 1600
)

const (
	length = 0.04 // of a click [s]
	decay  = 0.01 // in which it falls by e [s]
	half   = 0.5  // for the music and for the clicks: together they never clip
)

// Click is one of them.
type Click struct {
	Time  float64 // [s]
	Pitch Pitch
}

// Of lists the clicks of a track in order.
func Of(t beat.Track) []Click {
	list := make([]Click, len(t.Beats))
	for i, at := range t.Beats {
		list[i] = Click{at, Count}
		if i < len(t.BeatInBar) && t.BeatInBar[i] == 1 {
			list[i].Pitch = One
		}
	}
	const eight = 8
	for i, p := range t.Phrases {
		if t.Meter > 0 && eight%t.Meter == 0 { // in three no eight sits on the bars

			from := p.Beat
			if i == 0 {
				from %= eight // the lead-in, counted back from the first phrase
			}
			for b := from; b < p.Beat+p.Counts; b++ {
				list[b].Pitch = Count
				if (b-p.Beat)%eight == 0 {
					list[b].Pitch = One
				}
			}
		}
		list[p.Beat].Pitch = PhraseStart
	}
	return list
}

// WAV writes the music at half its level with its clicks, as 16-bit WAV of the
// music's own sample rate. A click begins on the sample nearest to its time.
func WAV(src beat.Source, list []Click) ([]byte, error) {
	var pcm []byte
	m := &mixer{rate: src.Rate(), clicks: list}
	block := make([]float32, 8192*src.Channels())
	for {
		n, err := src.Read(block)
		for i := 0; i < n; i += src.Channels() {
			c := m.next()
			for _, v := range block[i : i+src.Channels()] {
				x := half * (max(-1, min(1, float64(v))) + c)
				pcm = binary.LittleEndian.AppendUint16(pcm, uint16(int16(math.Round(x*math.MaxInt16))))
			}
		}
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			return nil, err
		}
	}
	return append(header(len(pcm), src.Rate(), src.Channels()), pcm...), nil
}

// mixer plays the clicks sample by sample.
type mixer struct {
	rate   int
	clicks []Click
	at     int // sample
	on     int // the click that sounds, from 1; 0 for none
	began  int // on this sample
}

// next is the clicks' next sample, in [-1, 1]. A click that begins ends the one
// before.
func (m *mixer) next() float64 {
	for m.on < len(m.clicks) && m.at >= int(math.Round(m.clicks[m.on].Time*float64(m.rate))) {
		m.on++
		m.began = m.at
	}
	s := float64(m.at-m.began) / float64(m.rate)
	m.at++
	if m.on == 0 || s > length {
		return 0
	}
	return math.Cos(2*math.Pi*float64(m.clicks[m.on-1].Pitch)*s) * math.Exp(-s/decay)
}

// header is that of a 16-bit PCM WAV file. Ref: Microsoft RIFF WAVE.
func header(size, rate, channels int) []byte {
	const bytesEach, fmtSize, head = 2, 16, 36
	var b bytes.Buffer
	b.WriteString("RIFF")
	put := func(v any) { binary.Write(&b, binary.LittleEndian, v) }
	put(uint32(head + size))
	b.WriteString("WAVEfmt ")
	put(uint32(fmtSize))
	put([]uint16{1, uint16(channels)})
	put([]uint32{uint32(rate), uint32(rate * channels * bytesEach)})
	put([]uint16{uint16(channels * bytesEach), 8 * bytesEach})
	b.WriteString("data")
	put(uint32(size))
	return b.Bytes()
}
