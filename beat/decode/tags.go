package decode

import (
	"fmt"
	"io"
	"strconv"
	"strings"
	"unicode"

	"github.com/dhowden/tag"
)

// Tags are what a file says about its music. Any field may be empty.
type Tags struct {
	Title  string
	Artist string
	// BPM is a hint that somebody wrote into the file, often rounded, halved or
	// doubled; 0 when there is none. Never take it for a measurement.
	BPM float64
}

// bpmKeys are the names under which formats keep the tempo.
var bpmKeys = []string{"TBPM", "TBP", "tmpo"}

// Tempi that a hint may have to count as one [beats per minute].
const minHint, maxHint = 30, 300

// ReadTags reads the tags of a file.
func ReadTags(path string) (Tags, error) {
	f, size, err := openFile(path)
	if err != nil {
		return Tags{}, err
	}
	defer f.Close()
	start := skipTags(f, size)
	switch string(readAt(f, start, 4)) {
	case "fLaC", "OggS":
		return vorbisTags(f, start)
	}
	return otherTags(f)
}

// otherTags reads ID3 and MP4 tags.
func otherTags(r io.ReadSeeker) (t Tags, err error) {
	defer recovered(&err)
	m, err := tag.ReadFrom(r)
	if err != nil {
		return Tags{}, fmt.Errorf("tags: %w", err)
	}
	t = Tags{Title: clean(m.Title()), Artist: clean(m.Artist())}
	for _, key := range bpmKeys {
		if v, ok := m.Raw()[key]; ok && t.BPM == 0 {
			t.BPM = bpmHint(fmt.Sprint(v))
		}
	}
	return t, nil
}

// clean is a tag on one line, without control characters.
func clean(s string) string {
	s = strings.Map(func(r rune) rune {
		if unicode.IsControl(r) {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(s, ""))
	return strings.Join(strings.Fields(s), " ")
}

// bpmHint reads a tempo, 0 when it is none.
func bpmHint(s string) float64 {
	v, err := strconv.ParseFloat(strings.ReplaceAll(clean(s), ",", "."), 64)
	if err != nil || !(v >= minHint && v <= maxHint) {
		return 0
	}
	return v
}
