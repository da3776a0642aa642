package export

import (
	"bytes"
	"encoding/xml"
	"io"
	"net/url"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"onphrase/align"
	"onphrase/plan/say"
)

// xmllint holds the XSPF to the elements that its specification lists.
func TestXSPFInXmllint(t *testing.T) {
	xmllint := needs(t, "xmllint", "libxml2-utils")
	for name, m := range map[string]*align.CountMap{"demo": demoMap(t), "hostile": oddFiles(), "empty": {}} {
		t.Run(name, func(t *testing.T) {
			file := inFile(t, "xspf", m)
			runs(t, xmllint, "--noout", "--nonet", "--relaxng", filepath.Join("testdata", "xspf.rng"), file)
			// What came out is what went in: names with their signs, files with their letters.
			got := runs(t, xmllint, "--nonet", "--xpath", "count(//*[local-name()='track'])", file)
			if strings.TrimSpace(got) != say.Num(float64(len(runningOrder(m))), 0) {
				t.Errorf("%s tracks", got)
			}
		})
	}
}

// The schema is no rubber stamp: what the specification does not allow is
// refused.
func TestXSPFSchemaRefuses(t *testing.T) {
	xmllint := needs(t, "xmllint", "libxml2-utils")
	good := written(t, "xspf", demoMap(t))
	for _, change := range [][]string{
		{`version="1"`, ``}, {"<trackNum>1<", "<trackNum>0<"}, {"<duration>192000<", "<duration>3:12<"},
		{"<trackList>", "<tracks>", "</trackList>", "</tracks>"},
	} {
		file := filepath.Join(t.TempDir(), "wrong.xspf")
		wrong := strings.NewReplacer(change...).Replace(good)
		if wrong == good {
			t.Fatalf("%q changes nothing", change)
		}
		if err := os.WriteFile(file, []byte(wrong), 0o644); err != nil {
			t.Fatal(err)
		}
		if fails(t, xmllint, "--noout", "--nonet", "--relaxng", filepath.Join("testdata", "xspf.rng"), file) == nil {
			t.Errorf("accepted: %q", change)
		}
	}
}

// oddNames are names of files that mean something to a playlist.
var oddNames = []string{
	"#1 hit.mp3", " blank.mp3", "a:b.mp3", "100%25 pure.mp3", "q?x=1&y.mp3", "<b>]]>.mp3", "港の灯.mp3", "é.mp3",
	"semi;colon.mp3", "plus+.mp3", "sub/folder/x.mp3", "../up.mp3",
}

func oddFiles() *align.CountMap {
	m := &align.CountMap{Class: "A & <B> \x00\x1b", Length: 60, Parts: []align.Part{{Part: "#EXTINF:1,x\n#EXTM3U"}}}
	for i, n := range oddNames {
		m.Parts[0].Tracks = append(m.Parts[0].Tracks, align.Music{File: n, Title: "x\n" + n, Used: true, Speed: 1,
			Duration: float64(i) + 0.5})
	}
	return m
}

// Both running orders name the same files, in the order played, and a reader
// finds each letter of their names.
func TestRunningOrder(t *testing.T) {
	m := oddFiles()
	var list xspf
	if err := xml.NewDecoder(bytes.NewReader([]byte(written(t, "xspf", m)))).Decode(&list); err != nil && err != io.EOF {
		t.Fatal(err)
	}
	var fromXSPF []string
	for _, track := range list.List.Tracks {
		u, err := url.Parse(track.Location)
		if err != nil {
			t.Fatal(err)
		}
		if u.Scheme != "" || u.RawQuery != "" || u.Fragment != "" {
			t.Errorf("%s is more than a path: %+v", track.Location, u)
		}
		fromXSPF = append(fromXSPF, strings.TrimPrefix(u.Path, "./"))
	}
	if !slices.Equal(fromXSPF, oddNames) {
		t.Errorf("XSPF names %q", fromXSPF)
	}
	var fromM3U []string
	for _, l := range strings.Split(written(t, "m3u8", m), "\n") {
		if l != "" && !strings.HasPrefix(l, "#") {
			fromM3U = append(fromM3U, strings.TrimPrefix(l, "./"))
		}
	}
	if !slices.Equal(fromM3U, oddNames) {
		t.Errorf("M3U8 names %q", fromM3U)
	}
}

// A song that could not be analysed is named where it lies, like any other.
func TestRunningOrderFailed(t *testing.T) {
	m := &align.CountMap{Parts: []align.Part{{Part: "Core", Tracks: []align.Music{
		{File: "good.mp3", Path: "music/good.mp3", Used: true, Taught: &align.Taught{}},
		{File: "bad.mp3", Path: "music/bad.mp3", Problem: "no steady beat found"},
		{File: "spare.mp3", Path: "music/spare.mp3"},
	}}}}
	for _, format := range []string{"m3u8", "xspf"} {
		got := written(t, format, m)
		for name, want := range map[string]bool{"music/good.mp3": true, "music/bad.mp3": true, "spare": false} {
			if strings.Contains(got, name) != want {
				t.Errorf("%s: %s is named: %v\n%s", format, name, !want, got)
			}
		}
	}
}

// A player reads the M3U8 file and finds the music where it says.
func TestM3U8InPlayer(t *testing.T) {
	player := needs(t, "mpg123", "mpg123")
	song, err := os.ReadFile(filepath.Join("..", "..", "samples", "demo", "music", "tidewater.mp3"))
	if err != nil {
		t.Skipf("NOT CHECKED: no demo music: %v", err)
	}
	m := demoMap(t)
	list := inFile(t, "m3u8", m)
	var want []string
	for _, turn := range runningOrder(m) {
		name := filepath.Join(filepath.Dir(list), turn.File)
		if err := os.WriteFile(name, song, 0o644); err != nil {
			t.Fatal(err)
		}
		want = append(want, turn.File)
	}
	_, talk, err := start(t, player, "--test", "-n", "1", "-@", list)
	if err != nil {
		t.Fatalf("%v\n%s", err, talk)
	}
	for _, w := range want {
		if !strings.Contains(talk, w) {
			t.Errorf("%s not played:\n%s", w, talk)
		}
	}
	if strings.Contains(strings.ToLower(talk), "error") {
		t.Errorf("%s", talk)
	}
}
