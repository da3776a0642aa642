package main

import (
	"archive/zip"
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"

	"onphrase/cmd/internal/disk"
	"onphrase/cmd/internal/parcel"
)

// entryOf is a file of a zip made for a test.
type entryOf struct {
	name   string
	text   string
	mode   fs.FileMode
	method uint16
}

const emptyPackage = `{"schema":"onphrase.package/1","class":"x","file":"class.yaml","music":"music","songs":[]}`

func zipOf(t *testing.T, entries ...entryOf) string {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for _, e := range append(entries, entryOf{name: parcel.ListName, text: emptyPackage}) {
		h := &zip.FileHeader{Name: e.name, Method: e.method}
		if e.mode != 0 {
			h.SetMode(e.mode)
		}
		w, err := z.CreateHeader(h)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.Write([]byte(e.text)); err != nil {
			t.Fatal(err)
		}
	}
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "made.zip")
	if err := os.WriteFile(file, b.Bytes(), disk.FilePerm); err != nil {
		t.Fatal(err)
	}
	return file
}

// command runs the program as the user does.
func command(t *testing.T, args ...string) (code exitCode, out, talk string) {
	t.Helper()
	var o, e bytes.Buffer
	code = run(context.Background(), args, &streams{in: &bytes.Buffer{}, out: &o, err: &e, width: defaultWidth})
	return code, o.String(), e.String()
}

// everything lists the files below a folder.
func everything(t *testing.T, dir string) []string {
	t.Helper()
	var all []string
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			all = append(all, path)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// Whatever a package is called or holds, nothing is written outside of its
// folder, and of a hostile one nothing at all.
//
// Ref: CWE-22 (path traversal), CWE-59 (links), CWE-409 (decompression bombs).
func TestHostilePackages(t *testing.T) {
	big := strings.Repeat("0", parcel.MostText+1)
	for name, entries := range map[string][]entryOf{
		"up":           {{name: "../evil.txt", text: "x"}},
		"up inside":    {{name: "a/../../evil.txt", text: "x"}},
		"absolute":     {{name: "/tmp/evil.txt", text: "x"}},
		"backslash":    {{name: `..\evil.txt`, text: "x"}},
		"drive":        {{name: "C:evil.txt", text: "x"}},
		"stream":       {{name: "class.yaml:evil", text: "x"}},
		"dot":          {{name: "./evil.txt", text: "x"}},
		"double slash": {{name: "a//evil.txt", text: "x"}},
		"dot at end":   {{name: "evil.", text: "x"}},
		"control":      {{name: "evil\x1b[31m", text: "x"}},
		"backwards":    {{name: "\u202egpj.exe", text: "x"}},
		"link":         {{name: "out", text: "..", mode: fs.ModeSymlink | 0o777}, {name: "out/evil.txt", text: "x"}},
		"device":       {{name: "dev", mode: fs.ModeDevice | 0o666}},
		"twice":        {{name: "a.txt", text: "x"}, {name: "a.txt", text: "y"}},
		"twice, case":  {{name: "a.txt", text: "x"}, {name: "A.TXT", text: "y"}},
		"file, folder": {{name: "a", text: "x"}, {name: "a/b", text: "y"}},
		"bomb":         {{name: "a.txt", text: big, method: zip.Deflate}},
		"music bomb":   {{name: "music/a.wav", text: big, method: zip.Deflate}},
		"many bombs":   repeated("b%04d.txt", big[:parcel.MostText], parcel.MostAllText/parcel.MostText+1),
		"too many":     repeated("f%04d.txt", "", parcel.MostPacked),
		"song outside": {{name: "PACKAGE", text: strings.Replace(emptyPackage, `"songs":[]`,
			`"songs":[{"file":"../../x.mp3"}]`, 1)}},
		"song absolute": {{name: "PACKAGE", text: strings.Replace(emptyPackage, `"songs":[]`,
			`"songs":[{"file":"/etc/passwd"}]`, 1)}},
		"later version": {{name: "PACKAGE", text: strings.Replace(emptyPackage, "/1", "/2", 1)}},
		"no list":       {{name: "PACKAGE", text: ""}},
	} {
		t.Run(name, func(t *testing.T) {
			file := zipOf(t, entries...)
			if entries[0].name == "PACKAGE" {
				file = onlyList(t, entries[0].text)
			}
			home := t.TempDir()
			dir := filepath.Join(home, "in")
			code, out, talk := command(t, "unpack", file, dir)
			if code != exitFailed || !strings.Contains(talk, "nothing was written") {
				t.Errorf("exit code %d\n%s%s", code, out, talk)
			}
			if strings.ContainsAny(talk, "\x1b\u202e") {
				t.Errorf("control characters in %q", talk)
			}
			if all := everything(t, home); len(all) > 0 {
				t.Errorf("written: %q", all)
			}
		})
	}
}

func repeated(name, text string, n int) []entryOf {
	var all []entryOf
	for i := range n {
		all = append(all, entryOf{name: fmt.Sprintf(name, i), text: text, method: zip.Deflate})
	}
	return all
}

// onlyList is a package with nothing but its list.
func onlyList(t *testing.T, list string) string {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	name := parcel.ListName
	if list == "" {
		name = "other.txt"
	}
	w, err := z.Create(name)
	if err == nil {
		_, err = w.Write([]byte(list))
	}
	if err == nil {
		err = z.Close()
	}
	file := filepath.Join(t.TempDir(), "list.zip")
	if err == nil {
		err = os.WriteFile(file, b.Bytes(), disk.FilePerm)
	}
	if err != nil {
		t.Fatal(err)
	}
	return file
}

// A size that lies is found out while reading.
func TestBombThatLies(t *testing.T) {
	file := zipOf(t, entryOf{name: "a.txt", text: strings.Repeat("0", parcel.MostText+1), method: zip.Deflate})
	src, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	// The uncompressed size in the central directory, which is the one read.
	at := bytes.LastIndex(src, []byte("PK\x01\x02"))
	for at >= 0 && !bytes.HasPrefix(src[at+46:], []byte("a.txt")) {
		at = bytes.LastIndex(src[:at], []byte("PK\x01\x02"))
	}
	copy(src[at+24:], []byte{10, 0, 0, 0})
	if err := os.WriteFile(file, src, disk.FilePerm); err != nil {
		t.Fatal(err)
	}
	dir := filepath.Join(t.TempDir(), "in")
	if code, _, talk := command(t, "unpack", file, dir); code != exitFailed {
		t.Errorf("exit code %d, %s", code, talk)
	}
	if _, err := os.Stat(dir); err == nil {
		t.Error("something was written")
	}
}

// A link that lies in the folder already does not lead out of it.
func TestUnpackThroughLink(t *testing.T) {
	home := t.TempDir()
	dir, outside := filepath.Join(home, "in"), filepath.Join(home, "outside")
	for _, d := range []string{dir, outside} {
		if err := os.Mkdir(d, 0o755); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Symlink(outside, filepath.Join(dir, "sheets")); err != nil {
		t.Skipf("NOT CHECKED: no links on this system: %v", err)
	}
	code, _, talk := command(t, "unpack", zipOf(t, entryOf{name: "sheets/kit.txt", text: "x"}), dir)
	if code != exitFailed {
		t.Errorf("exit code %d, %s", code, talk)
	}
	if all := everything(t, outside); len(all) > 0 {
		t.Errorf("written: %q", all)
	}
}

// Another program reads a package, finds no fault in it, and its list is what
// the schema says. Ref: PKWARE, .ZIP File Format Specification (APPNOTE).
func TestPackageOutside(t *testing.T) {
	t.Setenv("XDG_CACHE_HOME", t.TempDir())
	music := clickFile(t)
	class := filepath.Join(filepath.Dir(music), "class.yaml")
	if err := os.WriteFile(class, []byte(noisyClass), disk.FilePerm); err != nil {
		t.Fatal(err)
	}
	file := filepath.Join(t.TempDir(), "p.zip")
	if code, _, talk := command(t, "pack", class, "--with-music", "-o", file); code != exitClean {
		t.Fatalf("exit code %d, %s", code, talk)
	}
	z, err := zip.OpenReader(file)
	if err != nil {
		t.Fatal(err)
	}
	defer z.Close()
	files, err := parcel.Read(&z.Reader)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		for schema, name := range map[string]string{"package": parcel.ListName, "analysis": "data/analysis.json",
			"map": "data/count-map.json"} {
			if f.Name == name {
				validateJSON(t, schema, f.Content)
			}
		}
	}
	python, err := exec.LookPath("python3")
	if err != nil {
		t.Skip("NOT CHECKED: python3 is not on the PATH; apt install python3")
	}
	got, err := exec.Command(python, "-c", `
import json, sys, zipfile
z = zipfile.ZipFile(sys.argv[1])
assert z.testzip() is None
print(json.dumps({i.filename: [i.file_size, i.compress_type, list(i.date_time)] for i in z.infolist()}))`, file).Output()
	if err != nil {
		t.Fatalf("%v %s", err, got)
	}
	var listed map[string]any
	if err := json.Unmarshal(got, &listed); err != nil {
		t.Fatal(err)
	}
	if len(listed) != len(files) {
		t.Errorf("%d files, %d listed by another program", len(files), len(listed))
	}
	for name, info := range listed {
		if date := info.([]any)[2].([]any); date[0] != 1980.0 {
			t.Errorf("%s has the date %v", name, date)
		}
	}
}

func validateJSON(t *testing.T, name string, src []byte) {
	t.Helper()
	for _, sc := range schemas() {
		if sc.name != name {
			continue
		}
		doc, err := jsonschema.UnmarshalJSON(strings.NewReader(sc.text))
		if err != nil {
			t.Fatal(err)
		}
		c := jsonschema.NewCompiler()
		if err := c.AddResource(name, doc); err != nil {
			t.Fatal(err)
		}
		schema, err := c.Compile(name)
		if err != nil {
			t.Fatal(err)
		}
		got, err := jsonschema.UnmarshalJSON(bytes.NewReader(src))
		if err != nil {
			t.Fatal(err)
		}
		if err := schema.Validate(got); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}
