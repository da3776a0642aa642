package export

import (
	"context"
	"encoding/json"
	"html"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"onphrase/align"
)

// needs finds a program that is not ours.
func needs(t *testing.T, program, debian string) string {
	t.Helper()
	path, err := exec.LookPath(program)
	if err != nil {
		t.Skipf("NOT CHECKED: %s is not on the PATH; apt install %s", program, debian)
	}
	return path
}

// runs gives what a program writes to standard output.
func runs(t *testing.T, program string, args ...string) string {
	t.Helper()
	out, talk, err := start(t, program, args...)
	if err != nil {
		t.Fatalf("%s %s: %v\n%s", program, strings.Join(args, " "), err, talk)
	}
	return out
}

// fails gives the error that a program ends with.
func fails(t *testing.T, program string, args ...string) error {
	t.Helper()
	_, _, err := start(t, program, args...)
	return err
}

// start runs a program to its end.
func start(t *testing.T, program string, args ...string) (out, talk string, err error) {
	t.Helper()
	ctx, cancel := context.WithTimeout(context.Background(), 3*time.Minute)
	defer cancel()
	cmd := exec.CommandContext(ctx, program, args...)
	var stdout, stderr strings.Builder
	cmd.Stdout, cmd.Stderr = &stdout, &stderr
	err = cmd.Run()
	return stdout.String(), stderr.String(), err
}

// inFile writes a map to a file for a program to read.
func inFile(t *testing.T, format string, m *align.CountMap) string {
	t.Helper()
	f, err := Find(format)
	if err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(t.TempDir(), "class"+f.Ext)
	if err := os.WriteFile(name, []byte(written(t, format, m)), 0o644); err != nil {
		t.Fatal(err)
	}
	return name
}

// heard is a caption as another program reads it.
type heard struct {
	From float64 `json:"from"`
	To   float64 `json:"to"`
	Text string  `json:"text"`
}

const trackPage = `<!doctype html><meta charset=utf-8><video><track default kind=captions src="/class.vtt"></video><pre id=out></pre><script>
const track = document.querySelector("track")
track.onload = () => out.textContent = JSON.stringify(Array.from(track.track.cues, c =>
  ({from: c.startTime, to: c.endTime, text: c.getCueAsHTML().textContent})))
track.onerror = () => out.textContent = "not read"
</script>`

// inBrowser reads a WebVTT file with the track element of Chromium.
//
// Ref: WHATWG HTML, 4.8.13 The track element.
func inBrowser(t *testing.T, vtt string) []heard {
	t.Helper()
	browser := needs(t, "chromium", "chromium")
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "/class.vtt" {
			w.Header().Set("Content-Type", "text/vtt")
			_, _ = w.Write([]byte(vtt))
			return
		}
		w.Header().Set("Content-Type", "text/html")
		_, _ = w.Write([]byte(trackPage))
	}))
	defer server.Close()
	page := runs(t, browser, "--headless", "--no-sandbox", "--disable-gpu", "--user-data-dir="+t.TempDir(),
		"--virtual-time-budget=10000", "--dump-dom", server.URL)
	found := regexp.MustCompile(`(?s)<pre id="out">(.*?)</pre>`).FindStringSubmatch(page)
	if found == nil {
		t.Fatalf("no result in %s", page)
	}
	var cues []heard
	if err := json.Unmarshal([]byte(html.UnescapeString(found[1])), &cues); err != nil {
		t.Fatalf("%v: %s", err, found[1])
	}
	return cues
}

// A browser shows the captions as they were meant: times to the millisecond,
// hostile text as text.
func TestWebVTTInBrowser(t *testing.T) {
	t.Run("captions", func(t *testing.T) {
		m := arrows(t)
		sameCaptions(t, inBrowser(t, written(t, "webvtt", m)), captions(m), playerText)
	})
	t.Run("chapters", func(t *testing.T) {
		m := demoMap(t)
		got := inBrowser(t, written(t, "chapters", m))
		if len(got) != 8 || got[0].Text != "Warm-up" || got[1].Text != "A" || got[2].Text != "Round 1" {
			t.Fatalf("%+v", got)
		}
		for i, g := range got { // nested: inside or after every chapter before it
			for _, before := range got[:i] {
				if g.From < before.To && g.To > before.To {
					t.Errorf("%v crosses the end of %v", g, before)
				}
			}
		}
	})
}

// ffmpeg reads the SRT and the WebVTT file as the same captions.
func TestCaptionsInFFmpeg(t *testing.T) {
	ffmpeg := needs(t, "ffmpeg", "ffmpeg")
	for name, m := range map[string]*align.CountMap{"demo": demoMap(t), "hostile": arrows(t)} {
		for _, format := range []string{"srt", "webvtt"} {
			t.Run(name+" "+format, func(t *testing.T) {
				// Out again as WebVTT, which we read with a few lines of our own.
				out := runs(t, ffmpeg, "-nostdin", "-v", "error", "-i", inFile(t, format, m), "-f", "webvtt", "-")
				replace := playerText
				if format == "srt" {
					replace = srtText
				}
				sameCaptions(t, readCues(t, out), captions(m), replace)
			})
		}
	}
}

var timing = regexp.MustCompile(`^(?:(\d\d):)?(\d\d):(\d\d)\.(\d{3}) --> (?:(\d\d):)?(\d\d):(\d\d)\.(\d{3})`)

// readCues reads what ffmpeg writes as WebVTT.
func readCues(t *testing.T, out string) []heard {
	t.Helper()
	var all []heard
	for _, block := range strings.Split(out, "\n\n") {
		head, text, _ := strings.Cut(strings.Trim(block, "\n"), "\n")
		f := timing.FindStringSubmatch(head)
		if f == nil {
			continue
		}
		at := func(f []string) float64 {
			d, err := time.ParseDuration("0" + f[0] + "h" + f[1] + "m" + f[2] + "s" + f[3] + "ms")
			if err != nil {
				t.Fatal(err)
			}
			return d.Seconds()
		}
		all = append(all, heard{at(f[1:5]), at(f[5:9]), text})
	}
	return all
}

func sameCaptions(t *testing.T, got []heard, want []caption, replace *strings.Replacer) {
	t.Helper()
	if len(got) != len(want) {
		t.Fatalf("%d captions read of %d written", len(got), len(want))
	}
	for i, g := range got {
		text := strings.Join(want[i].lines, "\n")
		text = replace.Replace(text)
		if g.Text != text || abs(g.From-want[i].from) > rounding || abs(g.To-want[i].to) > rounding {
			t.Errorf("caption %d: read %+v, written %+v", i+1, g, want[i])
		}
	}
}

func abs(v float64) float64 { return max(v, -v) }

// arrows is the demo with names that mean something to players.
func arrows(t *testing.T) *align.CountMap {
	t.Helper()
	m := demoMap(t)
	bad := []string{
		"00:00:01.000 --> 00:00:02.000", "<b>bold</b> & <script>alert(1)</script>", "{\\an8}up", "NOTE\n\nWEBVTT",
		"[00:01.00]early",
		"STYLE ::cue", "&lt;i&gt;", "\\N break", "a\r\n\r\n2\r\nb", "1", "\u202eback", "]]>", "<v Anna>said",
	}
	m.Class = strings.Join(bad, " ")
	for i := range m.Rows {
		m.Rows[i].Item, m.Rows[i].Cue, m.Rows[i].Weight = bad[i%len(bad)], bad[(i+1)%len(bad)], bad[(i+2)%len(bad)]
	}
	return m
}
