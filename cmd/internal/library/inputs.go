package library

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"onphrase/beat/decode"
	"onphrase/cmd/internal/told"
)

// Input is one piece of music to look at, or the reason why there is none.
type Input struct {
	Path    string // as given, or as the folder or playlist says
	Problem string // why it cannot be read, with its place; empty when it can
}

// Inputs turns the arguments into pieces of music, in the order given:
// folders are walked in natural order, playlists read line by line. Each
// argument and each line of a playlist yields at least one input.
func Inputs(args []string) []Input {
	var all []Input
	for _, arg := range args {
		info, err := os.Stat(arg)
		switch {
		case err != nil:
			all = append(all, Input{Path: arg, Problem: told.Reason(err)})
		case info.IsDir():
			all = append(all, folder(arg)...)
		case !info.Mode().IsRegular():
			all = append(all, Input{Path: arg, Problem: "not a file that can be read twice; save the music first"})
		case IsPlaylist(arg):
			all = append(all, playlist(arg)...)
		default:
			all = append(all, Input{Path: arg})
		}
	}
	return all
}

// folder lists the audio files below dir.
func folder(dir string) []Input {
	files, err := AudioFiles(dir)
	if err != nil {
		return []Input{{Path: dir, Problem: told.Reason(err)}}
	}
	if len(files) == 0 {
		return []Input{{Path: dir, Problem: "no audio files in this folder"}}
	}
	list := make([]Input, len(files))
	for i, f := range files {
		list[i] = Input{Path: filepath.Join(dir, f)}
	}
	return list
}

// AudioFiles lists the audio files below dir, relative to it, in natural
// order. Hidden files and folders are left out. A folder below dir that cannot
// be read is left out too: the others are still worth having.
func AudioFiles(dir string) ([]string, error) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return nil, err
	}
	names := make([]string, 0, len(entries))
	for _, e := range entries {
		if !strings.HasPrefix(e.Name(), ".") {
			names = append(names, e.Name())
		}
	}
	slices.SortFunc(names, ByNature)
	var files []string
	for _, name := range names {
		info, err := os.Lstat(filepath.Join(dir, name))
		if err != nil {
			continue
		}
		if info.IsDir() {
			below, _ := AudioFiles(filepath.Join(dir, name))
			for _, f := range below {
				files = append(files, filepath.Join(name, f))
			}
		} else if decode.IsAudio(name) {
			files = append(files, name)
		}
	}
	return files, nil
}
