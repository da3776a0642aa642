package main

import (
	"fmt"
	"runtime"
	"runtime/debug"

	"onphrase/beat"
)

// version names the program, the analyser and the Go release, as far as the
// binary knows them.
func version() string {
	name := "(unknown)"
	if info, ok := debug.ReadBuildInfo(); ok {
		name = describe(info)
	}
	return fmt.Sprintf("onphrase %s, analyser %s, %s %s/%s", name, beat.Version, runtime.Version(), runtime.GOOS,
		runtime.GOARCH)
}

// describe is the module's version, with the commit where the build says it
// and the version does not.
func describe(info *debug.BuildInfo) string {
	name := info.Main.Version
	if name != "" && name != "(devel)" {
		return name
	}
	name = "(devel)"
	for _, s := range info.Settings {
		switch {
		case s.Key == "vcs.revision" && len(s.Value) >= 12:
			name += " " + s.Value[:12]
		case s.Key == "vcs.modified" && s.Value == "true":
			name += " modified"
		}
	}
	return name
}
