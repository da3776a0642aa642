package align

import (
	"io/fs"
	"os"
	"testing"

	"onphrase/beat"
	"onphrase/plan"
	"onphrase/plan/outline"
	"onphrase/plan/say"
)

// corpus is the music with exact beats beside the repository.
const corpus = "../../shared/corpus"

// corpusSongs are its songs by their truth, without the two mixes.
func corpusSongs(t *testing.T) (map[string]beat.Track, []outline.Song) {
	t.Helper()
	files := os.DirFS(corpus)
	if found, _ := fs.Glob(files, "d_syn*.phrases"); len(found) == 0 {
		t.Skip("SKIPPED, NOTHING CHECKED: no corpus at ../shared/corpus beside the repository")
	}
	return truthSongs(t, files)
}

// A class of 45 minutes as a good teacher would write it, and one to begin with,
// on songs that the program was not made with: nothing to fix, and no more
// findings than a teacher reads.
func TestSensibleClass(t *testing.T) {
	tracks, songs := corpusSongs(t)
	begun, err := outline.Write(outline.Options{Minutes: 45}, songs)
	if err != nil {
		t.Fatal(err)
	}
	written, err := os.ReadFile("testdata/teacher.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{"to begin with": begun, "as written": string(written)} {
		t.Run(name, func(t *testing.T) { sensible(t, text, tracks) })
	}
}

func sensible(t *testing.T, text string, tracks map[string]beat.Track) {
	const most = 12
	c, problems := plan.Parse("class.yaml", []byte(text))
	for _, p := range problems {
		t.Errorf("%s", p.In("class.yaml"))
	}
	m := Build(c, tracks)
	for _, f := range m.Findings {
		t.Logf("%s %s row %d %v (line %d): %s; try: %s", f.Severity, f.Code, f.Row, f.Also, f.Line, f.Message, f.Fix)
		if f.Severity == Fix {
			t.Errorf("%s: %s", f.Code, f.Message)
		}
	}
	if n := len(m.Findings); n > most {
		t.Errorf("%d findings", n)
	}
	if m.Length < 0.9*m.Slot || m.Length > m.Slot {
		t.Errorf("%s of %s", say.Clock(m.Length), say.Clock(m.Slot))
	}
}
