package align

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"onphrase/beat"
	"onphrase/plan"
)

// song is a track made by hand: a count every 60/bpm seconds from count 1
// on. phrases lists their lengths in counts, "32 32 4 32"; the last is
// repeated to the end of the music. A length may carry its trust: "32@0.3".
type song struct {
	file     string
	bpm      float64
	one      float64 // time of count 1 of phrase 1 [s]
	duration float64 // [s]
	phrases  string
	pickup   int // counts heard before phrase 1
	trust    float64
	unsteady [][2]float64
	problem  string
	meter    int     // 4 when not given
	loudness float64 // [LUFS], 0 when unknown
}

func (s song) track() beat.Track {
	t := beat.Track{
		File: s.file, BPM: s.bpm, Loudness: s.loudness, Meter: 4, Duration: s.duration, Unsteady: s.unsteady,
		Problem: s.problem,
		Trust:   beat.Trust{Beat: 1, Count1: 1, Phrase: 1},
	}
	if s.meter > 0 {
		t.Meter = s.meter
	}
	if s.problem != "" {
		return beat.Track{File: s.file, Problem: s.problem}
	}
	if s.trust > 0 {
		t.Trust = beat.Trust{Beat: s.trust, Count1: s.trust, Phrase: s.trust}
	}
	for i := -s.pickup; ; i++ {
		at := s.one + float64(i)*60/s.bpm
		if at >= s.duration {
			break
		}
		t.Beats = append(t.Beats, at)
		t.BeatInBar = append(t.BeatInBar, (i%4+4)%4+1)
	}
	lengths := strings.Fields(s.phrases)
	if len(lengths) == 0 {
		lengths = []string{"32"}
	}
	for i, n := s.pickup, 0; i < len(t.Beats); n++ {
		counts, trust, _ := strings.Cut(lengths[min(n, len(lengths)-1)], "@")
		p := beat.Phrase{Time: t.Beats[i], Beat: i, Trust: 1}
		p.Counts, _ = strconv.Atoi(counts)
		p.Counts = min(p.Counts, len(t.Beats)-i)
		if trust != "" {
			p.Trust, _ = strconv.ParseFloat(trust, 64)
		}
		p.Kind = beat.KindOf(p.Counts)
		t.Phrases = append(t.Phrases, p)
		i += p.Counts
	}
	return t
}

// songs keys tracks the way Build wants them.
func songs(all ...song) map[string]beat.Track {
	m := map[string]beat.Track{}
	for _, s := range all {
		m[s.file] = s.track()
	}
	return m
}

// classOf parses a class file's parts, written from the first column.
func classOf(t testing.TB, parts string) *plan.Class {
	t.Helper()
	src := "onphrase: 1\nclass: Test\nparts:\n" + parts
	c, problems := plan.Parse("class.yaml", []byte(src))
	for _, p := range problems {
		t.Errorf("%s", p.In("class.yaml"))
	}
	return c
}

// onePart parses a class of one mixed part, with more head lines and items.
func onePart(t testing.TB, head string, items ...string) *plan.Class {
	t.Helper()
	var b strings.Builder
	b.WriteString("  - part: One\n")
	if !strings.Contains(head, "tracks:") {
		b.WriteString("    tracks: [a.mp3]\n")
	}
	for _, l := range strings.Split(strings.TrimSpace(head), "\n") {
		if l = strings.TrimSpace(l); l != "" {
			fmt.Fprintf(&b, "    %s\n", l)
		}
	}
	b.WriteString("    do:\n")
	for _, it := range items {
		fmt.Fprintf(&b, "      - %s\n", it)
	}
	return classOf(t, b.String())
}

// work lists the rows that are items.
func work(m *CountMap) []Row {
	var out []Row
	for _, r := range m.Rows {
		if r.Kind.Work() {
			out = append(out, r)
		}
	}
	return out
}

// codes lists the codes found.
func codes(m *CountMap) []string {
	var out []string
	for _, f := range m.Findings {
		out = append(out, f.Code)
	}
	return out
}

// found is the first finding of a code.
func found(t testing.TB, m *CountMap, code string) Finding {
	t.Helper()
	for _, f := range m.Findings {
		if f.Code == code {
			return f
		}
	}
	t.Fatalf("no %s among %v", code, codes(m))
	return Finding{}
}

// ownCatalog is the catalogue with a user's own figures.
func ownCatalog(src string) (*plan.Catalog, []plan.Problem) {
	return plan.ParseCatalog("moves.yaml", []byte("onphrase: 1\n"+src), plan.Builtin())
}
