package song

import (
	"math/rand/v2"
	"slices"
	"testing"

	"onphrase/beat/bar"
)

const (
	levels, onsets, classes = 20, 20, 12
	section                 = 32 // beats
)

// sounding is a section's sound: what every beat of it has, and a little chance.
type sounding struct{ level, onset, chroma, bass []float64 }

// maker makes the sections of one song: its own timbre, and its own key.
func maker(r *rand.Rand, key int) func() sounding {
	base := random(r, levels, 1)
	return func() sounding {
		s := sounding{level: random(r, levels, 0.5), onset: random(r, onsets, 1), chroma: make([]float64, classes),
			bass: make([]float64, classes)}
		for i, v := range base {
			s.level[i] += v
		}
		for _, degree := range [][]int{{0, 4, 7}, {5, 9, 0}, {7, 11, 2}}[r.IntN(3)] {
			s.chroma[(key+degree)%classes] = 1
		}
		s.bass[(key+[]int{0, 5, 7}[r.IntN(3)])%classes] = 1
		return s
	}
}

func random(r *rand.Rand, n int, by float64) []float64 {
	out := make([]float64, n)
	for i := range out {
		out[i] = by * r.NormFloat64()
	}
	return out
}

// play is the sections one after the other, with their counts in bars of four.
func play(r *rand.Rand, sections ...sounding) (*bar.Sound, []int) {
	s := &bar.Sound{}
	var inBar []int
	noisy := func(x []float64) []float64 {
		out := random(r, len(x), 0.2)
		for i, v := range x {
			out[i] += v
		}
		return out
	}
	for _, sec := range sections {
		for i := range section {
			s.Level, s.Onset = append(s.Level, noisy(sec.level)), append(s.Onset, noisy(sec.onset))
			s.Chroma, s.Bass = append(s.Chroma, noisy(sec.chroma)), append(s.Bass, noisy(sec.bass))
			s.Inner, inBar = append(s.Inner, [2]float64{}), append(inBar, i%4+1)
		}
	}
	return s, inBar
}

// Two songs are told apart where one gives way to the other; a song whose verses
// and choruses come back is one, however unlike they are.
func TestFind(t *testing.T) {
	missed, wrong := 0, 0
	const times = 20
	for seed := range uint64(times) {
		r := rand.New(rand.NewPCG(seed, 5))
		first, second := maker(r, 0), maker(r, 6)
		verse, chorus, bridge := first(), first(), first()
		v, c := second(), second()
		sound, inBar := play(r, verse, chorus, verse, chorus, v, c, v, c)
		switch got := Find(sound, inBar, nil); {
		case len(got) == 0:
			missed++
		case len(got) > 1 || got[0] != 4*section:
			t.Errorf("seed %d: songs at %v, want %d", seed, got, 4*section)
		}
		sound, inBar = play(r, verse, chorus, verse, chorus, bridge, chorus, verse, chorus)
		wrong += len(Find(sound, inBar, nil))
	}
	if missed > times/10 || wrong > 0 {
		t.Errorf("%d of %d songs missed, %d found where there is none", missed, times, wrong)
	}
}

// At a change of tempo less must speak for another song; none begins where the
// music goes on.
func TestFindAtASeam(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 5))
	song, other := maker(r, 0), maker(r, 1)
	verse, chorus := song(), song()
	v, c := other(), other()
	sound, inBar := play(r, verse, chorus, verse, chorus, v, c, v, c)
	if got := Find(sound, inBar, []int{4*section + 3}); !slices.Equal(got, []int{4*section + 3}) {
		t.Errorf("songs at %v, want the seam", got)
	}
	sound, inBar = play(r, verse, chorus, verse, chorus, verse, chorus, verse, chorus)
	if got := Find(sound, inBar, []int{4 * section}); len(got) > 0 {
		t.Errorf("a change of tempo within a song begins another at %v", got)
	}
}

// Songs of a minute in a mix are told where the tempo changes, though by sound
// alone they might be sections.
func TestFindShortSongsAtSeams(t *testing.T) {
	r := rand.New(rand.NewPCG(4, 5))
	var all []sounding
	var seams []int
	for key := range 4 {
		song := maker(r, 3*key)
		verse := song()
		all = append(all, verse, verse)
		if key > 0 {
			seams = append(seams, 2*section*key)
		}
	}
	sound, inBar := play(r, all...)
	if got := Find(sound, inBar, seams); !slices.Equal(got, seams) {
		t.Errorf("songs at %v, want %v", got, seams)
	}
}

func TestShort(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 5))
	song := maker(r, 0)
	sound, inBar := play(r, song(), song())
	for n := 0; n <= sound.Len(); n += 7 {
		if got := Find(sound.Between(0, n), inBar[:n], []int{n / 2}); len(got) > 0 {
			t.Errorf("%d beats: songs at %v", n, got)
		}
	}
}

// Blocks keep to their side wholly where nothing comes back, by chance where all
// is alike.
//
// Ref: Schilling 1986: the share of nearest neighbours on the own side is that
// of chance where both sides are alike (from memory).
func TestApart(t *testing.T) {
	r := rand.New(rand.NewPCG(2, 5))
	var alike, unlike [][]float64
	for i := range 2 * reach {
		alike = append(alike, random(r, 8, 1))
		x := random(r, 8, 1)
		if i >= reach {
			x[0] += 100
		}
		unlike = append(unlike, x)
	}
	if got := apart(distances(unlike), 0, reach, 2*reach); got < 0.999 {
		t.Errorf("two kinds of blocks are %.2f apart, want 1", got)
	}
	if got := apart(distances(alike), 0, reach, 2*reach); got < -0.25 || got > 0.25 {
		t.Errorf("blocks of one kind are %.2f apart, want about 0", got)
	}
}
