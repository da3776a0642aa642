package library

import (
	"os"
	"path/filepath"

	"onphrase/cmd/internal/disk"
)

// SourcesOf are files of music and what corrects them: beside each, or in
// the user's own folder.
func SourcesOf(files []string) disk.Sources {
	var all disk.Sources
	for _, file := range files {
		all = append(all, file, file+CorrectionEnding)
	}
	own := correctionFolder()
	if kept, err := os.ReadDir(own); own != "" && err == nil {
		for _, entry := range kept {
			all = append(all, filepath.Join(own, entry.Name()))
		}
	}
	return all
}
