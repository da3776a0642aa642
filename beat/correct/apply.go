package correct

import (
	"fmt"
	"math"
	"slices"
	"sort"

	"onphrase/beat"
)

// Error says which of the corrections cannot be applied, and why.
type Error struct {
	Index int // in the list
	Msg   string
}

func (e *Error) Error() string { return e.Msg }

// Apply gives the track as corrected. A track without a result comes back as
// it is. The error, of type *Error, is the first correction that does not fit
// the track.
func Apply(t beat.Track, list []Correction) (beat.Track, error) {
	if t.Problem != "" || len(list) == 0 {
		return t, nil
	}
	d := draftOf(t)
	for i, c := range list {
		if err := d.apply(c); err != nil {
			return t, &Error{Index: i, Msg: err.Error()}
		}
	}
	return d.done(t), nil
}

// Snap moves a correction to the count it means on this track, for NoPhrase
// to the phrase start and for Counts to the start of the phrase that the time
// lies in.
func Snap(t beat.Track, c Correction) (Correction, error) {
	if c.Kind.timeless() || c.Kind == Every || c.Kind == Steady { // these make counts where they are needed
		return c, nil
	}
	d := draftOf(t)
	b, err := d.count(c.Time)
	if err != nil {
		return c, err
	}
	switch c.Kind {
	case NoPhrase:
		i := d.startNear(b)
		if i < 0 {
			return c, d.noStart(c.Time)
		}
		b = d.starts[i].beat
	case Counts:
		i := d.phraseOf(b)
		if i < 0 {
			return c, fmt.Errorf("no phrase at %s", Clock(c.Time))
		}
		b = d.starts[i].beat
	}
	c.Time = math.Round(d.beats[b]*1000) / 1000
	return c, nil
}

// draft is a track whose phrases are a list of starts.
type draft struct {
	beats  []float64
	inBar  []int
	meter  int
	starts []start // in order
	end    int     // the count after the last phrase
	tempo  float64 // against that heard: 0.5, 1, 2
	bpm    float64
	long   float64 // the track [s]
	trust  beat.Trust
	rivals []beat.Rival
}

// start is where a phrase starts.
type start struct {
	beat  int
	trust float64
	set   bool // by the person
}

func draftOf(t beat.Track) *draft {
	d := &draft{
		beats: slices.Clone(t.Beats), inBar: slices.Clone(t.BeatInBar), meter: max(t.Meter, 1),
		tempo: 1, bpm: t.BPM, trust: t.Trust, rivals: t.Alternatives, end: len(t.Beats),
		long: t.Duration,
	}
	for _, p := range t.Phrases {
		d.starts = append(d.starts, start{beat: p.Beat, trust: p.Trust})
		d.end = p.Beat + p.Counts
	}
	return d
}

func (d *draft) apply(c Correction) error {
	switch c.Kind {
	case Half:
		return d.half()
	case Double:
		d.double()
		return nil
	case Every:
		return d.every(c.Step, c.Time)
	case Steady:
		return d.steady(c.BPM, c.Time)
	case Checked:
		d.checked()
		return nil
	}
	b, err := d.count(c.Time)
	if err != nil {
		return err
	}
	switch c.Kind {
	case One:
		d.one(b)
	case Phrase:
		d.phrase(b)
	case NoPhrase:
		return d.noPhrase(b)
	case Counts:
		return d.counts(b, c.Counts)
	default:
		return fmt.Errorf("unknown correction %q", c.Kind)
	}
	return nil
}

// count is the count nearest to a time. One that is farther than a count away
// is not meant.
func (d *draft) count(at float64) (int, error) {
	i := d.nearest(at)
	if i < 0 || math.Abs(d.beats[i]-at) > 60/d.bpm {
		where := "the track has none"
		if i >= 0 {
			where = "the nearest is at " + Clock(d.beats[i])
		}
		return 0, fmt.Errorf("no count at %s; %s", Clock(at), where)
	}
	return i, nil
}

// nearest is the count nearest to a time, -1 where there is none.
func (d *draft) nearest(at float64) int {
	i := sort.SearchFloat64s(d.beats, at)
	if i == len(d.beats) || i > 0 && at-d.beats[i-1] < d.beats[i]-at {
		i--
	}
	return i
}

// done puts the draft into the track.
func (d *draft) done(t beat.Track) beat.Track {
	d.bars()
	out := t
	out.Corrected = true
	out.Beats, out.BeatInBar, out.BPM, out.Trust = d.beats, d.inBar, d.bpm, d.trust
	out.Alternatives = d.rivals
	out.TempoChanges = slices.Clone(t.TempoChanges)
	for i := range out.TempoChanges {
		out.TempoChanges[i].BPM *= d.tempo
	}
	out.Phrases, out.Trust.Phrase = nil, 0
	for i, s := range d.starts {
		p := beat.Phrase{Time: d.beats[s.beat], Beat: s.beat, Counts: d.next(i) - s.beat, Trust: s.trust}
		p.Kind = beat.KindOf(p.Counts)
		p.Energy = energy(t, d.beats[s.beat+p.Counts/2])
		out.Phrases = append(out.Phrases, p)
		out.Trust.Phrase += s.trust / float64(len(d.starts))
	}
	beat.Suggest(out.Phrases)
	return out
}

// next is the count after the phrase with that index.
func (d *draft) next(i int) int {
	if i+1 < len(d.starts) {
		return d.starts[i+1].beat
	}
	return d.end
}

// energy is that of the phrase heard at a time.
func energy(t beat.Track, at float64) beat.Energy {
	var e beat.Energy
	for _, p := range t.Phrases {
		if p.Time <= at || e == "" {
			e = p.Energy
		}
	}
	return e
}

// bars lets every phrase begin on count 1 of a bar, and the lead-in run up to
// the first.
func (d *draft) bars() {
	if len(d.starts) == 0 {
		return
	}
	first := d.starts[0].beat
	if d.inBar[first] != 1 {
		d.label(0, first, first)
	}
	for i, s := range d.starts {
		if d.inBar[s.beat] != 1 {
			d.label(s.beat, d.next(i), s.beat)
		}
	}
}

// label counts the bars from one count to another, such that one of the counts,
// or one before or after them, is count 1.
func (d *draft) label(from, to, one int) {
	for i := from; i < to; i++ {
		d.inBar[i] = ((i-one)%d.meter+d.meter)%d.meter + 1
	}
}
