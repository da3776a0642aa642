// Package picture draws a track as an SVG: its phrases line by line like the
// lines of a song, each as long as it has counts, under the outline of how loud
// the music is. Phrases that are not 32 counts have a torn edge and say what
// they are; stretches without a steady beat are hatched.
package picture

import (
	"bufio"
	"fmt"
	"io"
	"math"
	"path/filepath"
	"strings"

	"onphrase/beat"
)

// Measures of the drawing [px].
const (
	perCount   = 9.0
	leastWidth = 58.0 // of a tag, for its words
	margin     = 24.0
	headHeight = 64.0
	block      = 84.0  // of the outline
	line       = 158.0 // from one line to the next
	tear       = 7.0   // of the edge of an odd phrase
	pieces     = 1     // of the outline to a count
)

// lineCounts is how many counts go on a line: four phrases.
const lineCounts = 4 * beat.PhraseLen

// place is a stretch of the track with its place in the drawing.
type place struct {
	name     string // 7, or lead-in
	what     string // 32, tag of 4
	use      string // suggested
	odd      bool
	phrase   bool
	from, to float64 // [s]
	times    []float64
	x, y, w  float64
}

// Write draws a track that has a result.
func Write(w io.Writer, t beat.Track) error {
	list := places(t)
	bottom := headHeight
	for _, p := range list {
		bottom = max(bottom, p.y+line)
	}
	width := 2*margin + lineCounts*perCount
	d := &drawing{Writer: bufio.NewWriter(w)}
	d.f(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %g %g" width="%g" height="%g" role="img" font-family="sans-serif" fill="#20302e">`,
		width, bottom, width, bottom)
	d.f(`<title>%s</title><desc>%s</desc>`, escape(t.Title), escape(summary(t)))
	d.f(`<defs><pattern id="loose" width="8" height="8" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0 0V8" stroke="#20302e" stroke-width="3"/></pattern></defs>`)
	d.f(`<rect width="100%%" height="100%%" fill="#fffdf7"/>`)
	d.f(`<text x="%g" y="32" font-size="22" font-weight="700">%s</text>`, margin, escape(titleOf(t)))
	d.f(`<text x="%g" y="54" font-size="15">%s</text>`, margin, escape(summary(t)))
	for _, p := range list {
		d.place(p, t.Outline)
		d.loose(p, t.Unsteady)
	}
	d.f(`</svg>`)
	return d.Flush()
}

func titleOf(t beat.Track) string {
	if t.Title != "" {
		return t.Title
	}
	return filepath.Base(t.File)
}

func summary(t beat.Track) string {
	odd := 0
	for _, p := range t.Phrases {
		if p.Odd() {
			odd++
		}
	}
	s := fmt.Sprintf("%.1f BPM, %s long, %d phrases", t.BPM, clock(t.Duration), len(t.Phrases))
	if odd > 0 {
		s += fmt.Sprintf(", %d not 32 counts (torn edge)", odd)
	}
	if len(t.Phrases) > 0 {
		s += ", slanting: suggested use (common practice)"
	}
	if len(t.Unsteady) > 0 {
		s += ", hatched: no steady beat"
	}
	if t.Corrected {
		s += ", corrected by you"
	}
	return s
}

// places lays the lead-in, the phrases and what follows them in lines.
func places(t beat.Track) []place {
	var list []place
	end := 0.0
	for i, p := range t.Phrases {
		if i == 0 && p.Time > 60/t.BPM/2 {
			list = append(list, loosePlace("lead-in", 0, p.Time))
		}
		v := place{name: fmt.Sprint(i + 1), what: fmt.Sprint(p.Counts), use: string(p.Use), odd: p.Odd(), phrase: true,
			from: p.Time}
		if v.odd {
			v.what = fmt.Sprintf("%s %d", p.Kind, p.Counts)
		}
		v.times = append(v.times, t.Beats[p.Beat:p.Beat+p.Counts]...)
		v.to = t.Duration
		if next := p.Beat + p.Counts; next < len(t.Beats) {
			v.to = t.Beats[next]
		} else if step := 60 / t.BPM; v.times[len(v.times)-1]+step < t.Duration {
			v.to = v.times[len(v.times)-1] + step
		}
		v.times = append(v.times, v.to)
		list = append(list, v)
		end = v.to
	}
	if t.Duration-end > 60/t.BPM {
		list = append(list, loosePlace("after", end, t.Duration))
	}
	x, y := margin, headHeight+28
	for i := range list {
		v := &list[i]
		counts := float64(len(v.times) - 1)
		if !v.phrase {
			counts = (v.to - v.from) * t.BPM / 60
		}
		v.w = min(max(counts*perCount, leastWidth), lineCounts*perCount)
		if x > margin && x+v.w > margin+lineCounts*perCount+1 {
			x, y = margin, y+line
		}
		v.x, v.y = x, y
		x += v.w
	}
	return list
}

// loosePlace is a stretch that belongs to no phrase.
func loosePlace(name string, from, to float64) place {
	return place{name: name, from: from, to: to, times: []float64{from, to}}
}

// time is that at a share 0-1 of the stretch, along its counts.
func (p place) time(share float64) float64 {
	at := share * float64(len(p.times)-1)
	i := min(int(at), len(p.times)-2)
	return p.times[i] + (at-float64(i))*(p.times[i+1]-p.times[i])
}

// share is where a time lies in the stretch, 0-1 along its counts.
func (p place) share(t float64) float64 {
	n := len(p.times) - 1
	for i := range n {
		if a, b := p.times[i], p.times[i+1]; t < b {
			return max(0, (float64(i)+(t-a)/(b-a))/float64(n))
		}
	}
	return 1
}

// drawing writes an SVG.
type drawing struct{ *bufio.Writer }

func (d *drawing) f(format string, args ...any) { fmt.Fprintf(d, format+"\n", args...) }

// place draws one stretch: its outline, its edge, its name, time and counts.
func (d *drawing) place(p place, o beat.Outline) {
	base := p.y + block
	n := max(2, int(p.w/perCount)*pieces)
	var path strings.Builder
	fmt.Fprintf(&path, "M%.1f %.1f", p.x, base)
	for i := range n {
		level := o.Between(p.time(float64(i)/float64(n)), p.time(float64(i+1)/float64(n)))
		fmt.Fprintf(&path, "L%.1f %.1fH%.1f", p.x+p.w*float64(i)/float64(n), base-level*(block-30),
			p.x+p.w*float64(i+1)/float64(n))
	}
	fmt.Fprintf(&path, "V%.1fZ", base)
	fill, dash := "#d9c58f", ""
	if !p.phrase {
		fill, dash = "#e9e6dc", ` stroke-dasharray="3 5"`
	}
	d.f(`<path d="%s" fill="%s"/>`, path.String(), fill)
	d.f(`<path d="%s" fill="none" stroke="#20302e" stroke-width="%g"%s/>`, p.edge(),
		map[bool]float64{true: 4, false: 1.5}[p.odd], dash)
	for i := 8; p.phrase && i < len(p.times)-1; i += 8 {
		x := p.x + p.w*float64(i)/float64(len(p.times)-1)
		d.f(`<path d="M%.1f %.1fv-9" stroke="#20302e" stroke-width="1.5"/>`, x, base)
	}
	if !p.phrase {
		d.f(`<text x="%.1f" y="%.1f" font-size="14" font-style="italic">%s</text>`, p.x+5, p.y+20, p.name)
		d.f(`<text x="%.1f" y="%.1f" font-size="13">%s</text>`, p.x+1, base+18, clock(p.from))
		return
	}
	d.f(`<text x="%.1f" y="%.1f" font-size="28" font-weight="700" stroke="#fffdf7" stroke-width="4" paint-order="stroke">%s</text>`, p.x+6, p.y+26, p.name)
	d.f(`<text x="%.1f" y="%.1f" font-size="14" font-weight="700">%s</text>`, p.x+1, base+18, clock(p.from))
	weight := 400
	if p.odd {
		weight = 700
	}
	words := p.what + " counts"
	if p.w < 2*leastWidth {
		words = p.what
	}
	d.f(`<text x="%.1f" y="%.1f" font-size="14" font-weight="%d">%s</text>`, p.x+1, base+35, weight, words)
	d.f(`<text x="%.1f" y="%.1f" font-size="13" font-style="italic">%s</text>`, p.x+1, base+52, escape(p.use))
}

// edge is the frame of a stretch; an odd phrase is torn off at its end.
func (p place) edge() string {
	x, right, base := p.x+2, p.x+p.w-2, p.y+block
	if !p.odd {
		return fmt.Sprintf("M%.1f %.1fH%.1fV%.1fH%.1fZ", x, p.y, right, base, x)
	}
	const teeth = 6
	var s strings.Builder
	fmt.Fprintf(&s, "M%.1f %.1fH%.1f", x, p.y, right)
	for i := 1; i <= teeth; i++ {
		in := 0.0
		if i%2 == 1 {
			in = tear
		}
		fmt.Fprintf(&s, "L%.1f %.1f", right-in, p.y+block*float64(i)/teeth)
	}
	fmt.Fprintf(&s, "H%.1fZ", x)
	return s.String()
}

// loose hatches what of a stretch has no steady beat.
func (d *drawing) loose(p place, unsteady [][2]float64) {
	for _, u := range unsteady {
		if u[1] <= p.from || u[0] >= p.to {
			continue
		}
		a, b := p.x+p.w*p.share(u[0]), p.x+p.w*p.share(u[1])
		d.f(`<rect x="%.1f" y="%.1f" width="%.1f" height="%g" fill="url(#loose)" opacity="0.45"/>`, a, p.y+30,
			math.Max(b-a, 1), block-30)
	}
}

// clock writes seconds as m:ss.t.
func clock(s float64) string {
	t := int(math.Round(s * 10))
	return fmt.Sprintf("%d:%02d.%d", t/600, t/10%60, t%10)
}

// escape makes text of any kind harmless in an SVG.
func escape(s string) string {
	s = strings.Map(func(r rune) rune {
		if r < ' ' || r == 0xFFFE || r == 0xFFFF {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(s, "?"))
	return strings.NewReplacer("&", "&amp;", "<", "&lt;", ">", "&gt;", `"`, "&#34;").Replace(s)
}
