package correct

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

const written = `# My own words.
onphrase: 1
track: slow-ferry.mp3
sound: sha256:9f2c
corrections:
  - half # she does it slowly
  - one: 0:15.412
  - counts: 16
    at: 1:02.031
`

// What is written is read, and a person's comments stay.
func TestFile(t *testing.T) {
	f, problems := Parse([]byte(written))
	if problems != nil {
		t.Fatal(problems)
	}
	want := []Correction{{Kind: Half}, {Kind: One, Time: 15.412}, {Kind: Counts, Time: 62.031, Counts: 16}}
	if diff := cmp.Diff(want, f.List); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff([]int{6, 7, 8}, f.Lines); diff != "" || f.Sound != "sha256:9f2c" || f.Track != "slow-ferry.mp3" {
		t.Errorf("%+v\n%s", f, diff)
	}
	f.Add(Correction{Kind: NoPhrase, Time: 3599.5})
	src, err := f.Bytes()
	if err != nil {
		t.Fatal(err)
	}
	if want := written + "  - no-phrase: 59:59.500\n"; string(src) != want {
		t.Errorf("got\n%s\nwant\n%s", src, want)
	}
	for range 4 {
		if _, ok := f.Undo(); !ok {
			t.Fatal("nothing to take back")
		}
	}
	if _, ok := f.Undo(); ok {
		t.Error("took back more than there was")
	}
	f.Add(Correction{Kind: Double})
	if src, err = f.Bytes(); err != nil || !strings.HasSuffix(string(src), "corrections:\n  - double\n") {
		t.Errorf("%s, %v", src, err)
	}
}

func TestNewFile(t *testing.T) {
	f := NewFile("012: a \"strange\" # name.mp3", "sha256:9f2c")
	f.Add(Correction{Kind: One, Time: 0.21})
	src, err := f.Bytes()
	if err != nil {
		t.Fatal(err)
	}
	again, problems := Parse(src)
	if problems != nil || again.Track != f.Track || again.Sound != f.Sound || cmp.Diff(again.List, f.List) != "" {
		t.Errorf("%s\n%v", src, problems)
	}
}

func TestParseProblems(t *testing.T) {
	const top = "onphrase: 1\ntrack: a.mp3\nsound: sha256:9f2c\n"
	tests := []struct {
		src  string
		want string
	}{
		{"", "x:1: not a file of corrections; delete it, or restore it"},
		{"[", "x:1: cannot be read as YAML: "},
		{top + "corrections:\n  - one: 0:15\n one: 2", "x:5: cannot be read as YAML: "},
		{"onphrase: 1\n", "x:1: track: is missing"},
		{strings.Replace(top, "1", "2", 1) + "corrections:\n", "x:1: onphrase: 2: this program reads version 1"},
		{top + "corrections: half\n", "x:4: corrections: a list is expected, each entry on a line that begins with -"},
		{top + "corrections:\n  - halve\n", `x:5: "halve": half, double, checked, or a word with a time such as one: 0:15.4 is expected`},
		{top + "corrections:\n  - half\n  - one: 0:75\n", `x:6: "0:75" is no time; write it as 1:02.5`},
		{top + "corrections:\n  - one: 0:15\n    at: 0:16\n",
			"x:6: at: belongs to counts, every and bpm; one has its own time"},
		{top + "corrections:\n  - one: 0:15\n    phrase: 0:16\n", "x:6: one and phrase in one entry; begin a new one with -"},
		{top + "corrections:\n  - counts: 16\n", "x:5: counts: needs at: and a time"},
		{top + "corrections:\n  - counts: 0\n    at: 0:10\n", `x:5: counts: "0": a whole number from 1 to 512 is expected`},
		{top + "corrections:\n  - {}\n", "x:5: says not what to correct"},
		{top + "corrections:\n  - ones: 1\n", `x:5: unknown word "ones"; it may be one, phrase, no-phrase, counts, every, bpm, at`},
		{top + "corrections:\nnote: hello\n", `x:5: unknown word "note"; it may be onphrase, track, sound, corrections`},
		{top + "track: b\ncorrections:\n", "x:4: "},
	}
	for _, tt := range tests {
		f, problems := Parse([]byte(tt.src))
		if f != nil || len(problems) == 0 {
			t.Errorf("%q was accepted", tt.src)
			continue
		}
		if got := problems[0].In("x"); !strings.HasPrefix(got, tt.want) {
			t.Errorf("%q: %s, want %s", tt.src, got, tt.want)
		}
	}
}

func TestClock(t *testing.T) {
	for text, want := range map[string]float64{
		"0:15.4": 15.4, "1:02.031": 62.031, "62.5": 62.5, "7": 7, "1:02:03.5": 3723.5, "90": 90,
	} {
		if got, err := ParseClock(text); err != nil || got != want {
			t.Errorf("%s: %g, %v, want %g", text, got, err, want)
		}
	}
	for _, text := range []string{"", ":", "1:", ":5", "1:60", "1.5:20", "-3", "1e3", "0x10", "NaN", "1:2:3:4", "99:00:00",
		"1..2"} {
		if got, err := ParseClock(text); err == nil {
			t.Errorf("%q: %g, want an error", text, got)
		}
	}
	if got := Clock(62.0305); got != "1:02.031" && got != "1:02.030" {
		t.Error(got)
	}
}

// Whatever stands in a file, reading it never panics, and what was read can be
// written and read again.
func FuzzParse(f *testing.F) {
	f.Add([]byte(written))
	f.Add([]byte("onphrase: 1\ntrack: &a b\nsound: *a\ncorrections: null\n"))
	f.Fuzz(func(t *testing.T, src []byte) {
		file, problems := Parse(src)
		if problems != nil {
			return
		}
		file.Add(Correction{Kind: One, Time: 1})
		b, err := file.Bytes()
		if err != nil {
			t.Skip()
		}
		again, problems := Parse(b)
		if problems != nil || len(again.List) != len(file.List) {
			t.Errorf("%q became %q: %v", src, b, problems)
		}
	})
}
