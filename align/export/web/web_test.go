package web

import (
	"encoding/json"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"onphrase/align"
	"onphrase/plan/say"
)

// dataOf reads the data back out of a page, as the browser does.
func dataOf(t testing.TB, page string) stage {
	t.Helper()
	_, rest, _ := strings.Cut(page, `<script type="application/json" id="data">`)
	text, _, ok := strings.Cut(rest, "</script>")
	if !ok {
		t.Fatal("no data in the page")
	}
	var s stage
	if err := json.Unmarshal([]byte(text), &s); err != nil {
		t.Fatal(err)
	}
	return s
}

// The page holds the map and nothing from outside.
func TestWrite(t *testing.T) {
	m := mapOf(t, demoClass(t))
	page := written(t, m)
	for _, c := range cautions {
		if strings.Count(page, c) != 2+len(m.Parts) { // desk, summary and every sheet
			t.Errorf("%d times %q", strings.Count(page, c), c)
		}
	}
	if found := regexp.MustCompile(`(?i)(https?:)?//[a-z0-9-]+\.[a-z]+|<(link|img|script|iframe|object|embed)[^>]+(src|href)="[^d#]`).FindAllString(page, -1); found != nil {
		t.Errorf("the page points outside: %q", found)
	}
	got := dataOf(t, page)
	rows := 0
	for _, l := range got.Legs {
		for i, r := range l.Rows {
			rows++
			if want := m.Rows[r.N-1]; r.Name != want.Item || r.Counts != want.Counts {
				t.Errorf("row %d: %+v", r.N, r)
			}
			if i > 0 && l.Rows[i-1].From+l.Rows[i-1].Counts != r.From {
				t.Errorf("row %d begins on count %d, the one before ends on %d", r.N, r.From, l.Rows[i-1].From+l.Rows[i-1].Counts)
			}
		}
	}
	changes := 0
	for _, r := range m.Rows {
		if r.Kind == align.ChangeRow {
			changes++
		}
	}
	if rows+changes != len(m.Rows) {
		t.Errorf("%d rows on the stage and %d changes of song, want %d together", rows, changes, len(m.Rows))
	}
}

// A class of 45 minutes makes a page of at most 400 kB.
func TestSize(t *testing.T) {
	class := demoClass(t)
	_, parts, _ := strings.Cut(class, "parts:\n")
	m := mapOf(t, class+parts)
	most := 400_000 * m.Length / (45 * 60)
	if size := len(written(t, m)); float64(size) > most {
		t.Errorf("%d bytes for %s, more than %.0f", size, say.Clock(m.Length), most)
	} else {
		t.Logf("%d bytes for %s", size, say.Clock(m.Length))
	}
}

// What goes into the page comes out of it, and only as text.
var hostile = []string{
	`</script><script>window.hacked=1</script>`,
	`<img src=x onerror="window.hacked=2">`,
	`"><svg onload=window.hacked=3>`,
	"<!--<script>window.hacked=4//",
	`javascript:window.hacked=5`,
	`{{.Class}} ${window.hacked=6} ]]>`,
	"\u202eevil\u2028\u2029 \"'`&lt;",
	`</style><style>*{display:none}</style>`,
}

func hostileMap(t testing.TB) *align.CountMap {
	m := mapOf(t, follow)
	next := 0
	bad := func() string { next++; return hostile[next%len(hostile)] }
	m.Class = strings.Join(hostile, " ")
	for i := range m.Parts {
		m.Parts[i].Part, m.Parts[i].Kind = bad(), bad()
		for j := range m.Parts[i].Tracks {
			m.Parts[i].Tracks[j].Title = bad()
			m.Parts[i].Tracks[j].Path = bad()
		}
	}
	for i := range m.Rows {
		r := &m.Rows[i]
		if r.Kind.Work() {
			r.Item = bad()
		}
		r.Cue, r.Weight, r.Easier, r.Harder, r.Side = bad(), bad(), bad(), bad(), bad()
		for j := range r.Moves {
			r.Moves[j].Move, r.Moves[j].Lead = bad(), bad()
		}
	}
	m.Findings = append(m.Findings, align.Finding{Severity: align.Fix, Row: 1, Message: bad(), Fix: bad(), Source: bad()},
		align.Finding{Severity: align.Note, Message: bad()})
	m.Summary.Kit = append(m.Summary.Kit, align.Kit{Item: bad(), Weights: []string{bad()}})
	return m
}

func TestHostile(t *testing.T) {
	m := hostileMap(t)
	page := written(t, m)
	clean := written(t, mapOf(t, follow))
	for _, tag := range []string{"<script", "</script", "<style", "</style", "<img", "onerror=\"", "<!--"} {
		if got, want := strings.Count(page, tag), strings.Count(clean, tag); got != want {
			t.Errorf("%d times %s, want %d", got, tag, want)
		}
	}
	got := dataOf(t, page)
	if got.Class != m.Class {
		t.Errorf("class %q, want %q", got.Class, m.Class)
	}
	for _, l := range got.Legs {
		if !strings.HasPrefix(l.Source, "./") {
			t.Errorf("the address %q may be taken for a scheme", l.Source)
		}
		for _, r := range l.Rows {
			if r.Name != m.Rows[r.N-1].Item {
				t.Errorf("row %d is %q, want %q", r.N, r.Name, m.Rows[r.N-1].Item)
			}
		}
	}
}

func TestAddress(t *testing.T) {
	for path, want := range map[string]string{
		"":                      "",
		"music/tide water.mp3":  "./music/tide%20water.mp3",
		"../a#b?c%.mp3":         "../a%23b%3Fc%25.mp3",
		"/home/me/港.mp3":        "file:///home/me/%E6%B8%AF.mp3",
		"javascript:alert(1)":   "./javascript:alert%281%29",
		"data:text/html,hi.mp3": "./data:text/html%2Chi.mp3",
	} {
		if got := address(path); got != want {
			t.Errorf("address(%q) = %q, want %q", path, got, want)
		}
	}
}

func TestNearest(t *testing.T) {
	counts := []float64{1, 1.5, 2, 2.5}
	for at, want := range map[float64]int{0: 0, 1: 0, 1.24: 0, 1.26: 1, 2.5: 3, 3: 4, 4.51: 7} {
		if got := nearest(counts, at); got != want {
			t.Errorf("nearest(%v) = %d, want %d", at, got, want)
		}
	}
}

// A phrase's tile says what is odd about it and carries the rows that lie on
// it, each on the tile where its counts are.
func TestTiles(t *testing.T) {
	m := mapOf(t, follow)
	song := truth(t, "slow-ferry")
	tiles := partsOf(m)[1].Songs[0].Tiles
	var got, want []string
	for _, v := range tiles {
		if v.No > 0 {
			got = append(got, v.Name+" "+v.Odd+" "+strconv.Itoa(v.Counts)+" "+v.Use)
			if !strings.Contains(v.Label, "suggested use: "+v.Use) {
				t.Errorf("who cannot see the picture is not told the use: %s", v.Label)
			}
		}
		sum := 0
		for _, p := range v.Pieces {
			sum += p.Counts
		}
		if sum > v.Counts {
			t.Errorf("%s of %d counts carries %d", v.Name, v.Counts, sum)
		}
	}
	for i, p := range song.Phrases {
		odd := ""
		if p.Odd() {
			odd = string(p.Kind)
		}
		want = append(want, "phrase "+strconv.Itoa(i+1)+" "+odd+" "+strconv.Itoa(p.Counts)+" "+string(p.Use))
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}

// At the desk a side is the class's, with her own where she faces it.
func TestDeskNamesHerSide(t *testing.T) {
	m := mapOf(t, strings.Replace(follow, "slot:", "facing: class\nslot:", 1))
	if got, want := partsOf(m)[0].Rows[1].Side, "right (you left)"; got != want {
		t.Errorf("side %q, want %q", got, want)
	}
}

// So does the picture of a song: to those who see it, and to those who cannot.
func TestTilesNameHerSide(t *testing.T) {
	m := mapOf(t, strings.Replace(follow, "slot:", "facing: class\nslot:", 1))
	for _, v := range partsOf(m)[0].Songs[0].Tiles {
		for _, p := range v.Pieces {
			if side := m.Rows[p.Row-1].SideWords(); side != "" &&
				!(strings.HasSuffix(p.Name+p.You, side) && strings.Contains(v.Label, side)) {
				t.Errorf("no %s in %q, %q", side, p.Name+p.You, v.Label)
			}
		}
	}
	if page := written(t, m); !strings.Contains(page, `right<span class="you"> (you left)</span>`) {
		t.Error("her own side is not on the tiles")
	}
}

// Contrast of all pairs of colours that text is set in, in the light and in
// the dark, after WCAG 2.2, 1.4.3 (at least 4.5:1) and its definition of
// relative luminance.
func TestContrast(t *testing.T) {
	blocks := regexp.MustCompile(`:root \{([^}]*)\}`).FindAllStringSubmatch(style, -1)
	if len(blocks) != 2 {
		t.Fatalf("%d palettes, want the light one and the dark one", len(blocks))
	}
	for i, block := range blocks {
		color := map[string]float64{}
		for _, c := range regexp.MustCompile(`--(\w+): #([0-9a-f]{6})`).FindAllStringSubmatch(block[1], -1) {
			color[c[1]] = luminance(t, c[2])
		}
		for _, pair := range [][2]string{{"ink", "paper"}, {"quiet", "paper"}, {"now", "paper"}, {"ink", "soft"}} {
			a, b := color[pair[0]], color[pair[1]]
			if ratio := (math.Max(a, b) + 0.05) / (math.Min(a, b) + 0.05); ratio < 4.5 {
				t.Errorf("palette %d: %s on %s is %.2f:1", i, pair[0], pair[1], ratio)
			}
		}
	}
}

func luminance(t *testing.T, hex string) float64 {
	t.Helper()
	sum := 0.0
	for i, weight := range []float64{0.2126, 0.7152, 0.0722} {
		n, err := strconv.ParseUint(hex[2*i:2*i+2], 16, 8)
		if err != nil {
			t.Fatal(err)
		}
		c := float64(n) / 255
		if c <= 0.04045 {
			c /= 12.92
		} else {
			c = math.Pow((c+0.055)/1.055, 2.4)
		}
		sum += weight * c
	}
	return sum
}
