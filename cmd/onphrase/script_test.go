package main

import (
	"errors"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"onphrase/samples/synth"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"onphrase": main})
}

// TestScripts runs the scripts in testdata/script, each in an empty folder
// with a home and a cache of its own.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata/script",
		RequireExplicitExec: true,
		Setup: func(env *testscript.Env) error {
			home := filepath.Join(env.WorkDir, ".home")
			env.Setenv("HOME", home)
			env.Setenv("XDG_CACHE_HOME", filepath.Join(home, "cache"))
			env.Setenv("XDG_CONFIG_HOME", filepath.Join(home, "config"))
			return os.MkdirAll(home, 0o755)
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits":  exits,
			"clicks": clicks,
			"hum":    hum,
			"damage": damage,
		},
	})
}

// exits runs a command and holds it to an exit code: exits 3 onphrase check …
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits code program [arguments]")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	if err := ts.Exec(args[1], args[2:]...); err != nil {
		var exit *exec.ExitError
		if !errors.As(err, &exit) {
			ts.Fatalf("%v", err)
		}
		got = exit.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit code %d, want %d", got, want)
	}
}

// rate of the sounds that scripts make [Hz]: low, so that scripts are quick.
const rate = 22050

// clicks writes a WAV file of so many clicks, the first after half a second:
// clicks file.wav bpm counts
func clicks(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 3 {
		ts.Fatalf("usage: clicks file.wav bpm counts")
	}
	bpm, err := strconv.ParseFloat(args[1], 64)
	ts.Check(err)
	counts, err := strconv.Atoi(args[2])
	ts.Check(err)
	write(ts, args[0], synth.Clicks(synth.Steady(bpm, 4, counts, 0.5), rate))
}

// hum writes a WAV file of ten seconds of one steady tone, which has no beat:
// hum file.wav
func hum(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: hum file.wav")
	}
	const pitch, loud = 220, 0.2 // [Hz], of full scale
	tone := make([]float32, 10*rate)
	for i := range tone {
		tone[i] = float32(loud * math.Sin(2*math.Pi*pitch*float64(i)/rate))
	}
	write(ts, args[0], &synth.Sound{Rate: rate, Left: tone, Right: tone})
}

func write(ts *testscript.TestScript, name string, sound *synth.Sound) {
	ts.Check(os.MkdirAll(filepath.Dir(ts.MkAbs(name)), 0o755))
	f, err := os.Create(ts.MkAbs(name))
	ts.Check(err)
	ts.Check(sound.WriteWAV(f, 1))
	ts.Check(f.Close())
}

// damage spoils every file below a folder: damage how folder, where how is cut
// (half of it is lost), flip (one bit in the middle) or foreign (other content)
func damage(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: damage cut|flip|foreign folder")
	}
	n := 0
	ts.Check(filepath.WalkDir(ts.MkAbs(args[1]), func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		n++
		b, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		switch args[0] {
		case "cut":
			b = b[:len(b)/2]
		case "flip":
			b[len(b)/2] ^= 1
		case "foreign":
			b = []byte(`{"track":{"bpm":99}}`)
		default:
			ts.Fatalf("unknown damage %q", args[0])
		}
		return os.WriteFile(path, b, 0o644)
	}))
	if n == 0 {
		ts.Fatalf("nothing to damage below %s", args[1])
	}
}
