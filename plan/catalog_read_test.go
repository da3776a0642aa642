package plan

import "testing"

// The catalogue is read as strictly as a class file.
func TestParseCatalogIsStrict(t *testing.T) {
	const limit = "limits:\n  - {class: squat, path: 0.40m, fine: 0.80s, too fast: 0.55s, evidence: assumption, source: us}\n"
	const rest = "bands: [{kind: core, inside: 100-130, source: us}]\nneeds: [{for: floor, time: 8s, source: us}]\n"
	const move = rest + "moves:\n  - {name: squat, class: squat, counts: 4}\n"
	if c, problems := readCatalog("c", []byte("onphrase: 1\n"+limit+move), &Catalog{}, false); len(problems) != 0 ||
		len(c.Moves) != 1 || c.Limits["squat"].Path != 0.40 {
		t.Errorf("a good catalogue gives %+v, %v", c, problems)
	}
	for src, want := range map[string]string{
		"": "c:1:1: the file is empty\n  hint: a class file begins with the line onphrase: 1",
		"onphrase: 1\nlimits:\n  - {class: squat, fine: 0.80s, too fast: 0.55s, source: us}\n" +
			move: "c:3:5: a limit needs evidence\n  hint: like evidence: assumption",
		"onphrase: 1\nlimits:\n  - {class: squat, fine: 0.80s, too fast: 0.55s, evidence: assumption}\n" +
			move: "c:3:5: a limit needs source\n  hint: like source: who found it, and where",
		"onphrase: 1\nlimits:\n  - {class: squat, fine: 0.80, too fast: 0.55s, evidence: published, source: us}\n" +
			move: "c:3:26: fine: \"0.80\" is no number of seconds\n  hint: 0.80s",
		"onphrase: 1\nlimits:\n  - {class: squat, fine: 0.9, too fast: 0.55s, evidence: published, source: us}\n" +
			move: "c:3:26: fine: \"0.9\" is no number of seconds\n  hint: 0.9s",
		"onphrase: 1\nlimits:\n  - {class: squat, fine: 4 counts, too fast: 0.55s, evidence: published, source: us}\n" +
			move: "c:3:26: fine: \"4 counts\" is no number of seconds\n  hint: 0.80s",
		"onphrase: 1\nlimits:\n  - {class: squat, fine: 0.50s, too fast: 0.55s, evidence: published, source: us}\n" +
			move: "c:3:5: too fast below 0.55s but fine from 0.5s\n  hint: too fast is the shorter one",
		"onphrase: 1\nlimits:\n  - {class: squat, path: 40cm, fine: 0.80s, too fast: 0.55s, evidence: published, source: us}\n" + move: "c:3:26: path: \"40cm\" is no path of a movement\n  hint: metres, like 0.40m",
		"onphrase: 1\nlimits:\n  - {class: squat, fine: 0.80s, too fast: 0.55s, evidence: publshed, source: us}\n" +
			move: "c:3:60: evidence: \"publshed\" is not one of published, common practice or assumption\n  hint: published?",
		"onphrase: 1\n" + limit + rest + "moves:\n  - {name: squat, class: sqat, counts: 4}\n": "c:7:26: class: \"sqat\" is not one of squat\n  hint: squat?",
		"onphrase: 1\n" + limit + move + "parts: []\n":                                         "c:8:1: unknown key \"parts\" in a catalogue\n  hint: a catalogue may have onphrase, limits, bands, needs or moves",
		"onphrase: 1\n" + limit + "  - {class: squat, fine: 0.80s, too fast: 0.55s, evidence: assumption, source: us}\n" +
			move: "c:4:5: squat has two limits\n  hint: keep one of them",
	} {
		_, problems := readCatalog("c", []byte(src), &Catalog{}, false)
		if len(problems) != 1 || problems[0].In("c") != want {
			t.Errorf("source:\n%s\nwant %s\n got %v", src, want, problems)
		}
	}
}
