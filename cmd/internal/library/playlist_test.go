package library

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// File URLs after RFC 8089, section 2 and appendix E.2.
func TestReadings(t *testing.T) {
	tests := []struct {
		location string
		want     []string
		problem  string
	}{
		{"one.mp3", []string{"one.mp3"}, ""},
		{"two%20words.mp3", []string{"two%20words.mp3", "two words.mp3"}, ""},
		{"50% more.mp3", []string{"50% more.mp3"}, ""},
		{`music\one.mp3`, []string{`music\one.mp3`, "music/one.mp3"}, ""},
		{`C:\music\one.mp3`, []string{`C:\music\one.mp3`, "C:/music/one.mp3"}, ""},
		{"Artist: Song.mp3", []string{"Artist: Song.mp3"}, ""},
		{"file:///music/two%20words.mp3", []string{"/music/two words.mp3"}, ""},
		{"file:/music/one.mp3", []string{"/music/one.mp3"}, ""},
		{"FILE://localhost/music/one.mp3", []string{"/music/one.mp3"}, ""},
		{"file:///C:/music/one.mp3", []string{"C:/music/one.mp3"}, ""},
		{"file://studio/one.mp3", nil, "another computer, studio"},
		{"https://radio.example/live", nil, "https: is not a file on this computer"},
		{"file:///%zz.mp3", nil, "not a URL"},
	}
	for _, tt := range tests {
		got, err := readings(tt.location)
		if diff := cmp.Diff(tt.want, got); diff != "" {
			t.Errorf("%s: -want +got\n%s", tt.location, diff)
		}
		if (err != nil) != (tt.problem != "") || err != nil && !strings.Contains(err.Error(), tt.problem) {
			t.Errorf("%s: error %v, want %q", tt.location, err, tt.problem)
		}
	}
}

// No playlist may panic, and every entry names a line of the file.
func FuzzPlaylist(f *testing.F) {
	f.Add([]byte("#EXTM3U\r\n\xef\xbb\xbfa.mp3\nfile:///b%20c.mp3\n\xe9.mp3"))
	f.Add([]byte(`<playlist><trackList><track><location>a.mp3</location></track><track/></trackList></playlist>`))
	f.Add([]byte(`<?xml version="1.0" encoding="ISO-8859-1"?><track><location>`))
	f.Fuzz(func(t *testing.T, src []byte) {
		lines := strings.Count(string(src), "\n") + 1
		for name, read := range map[string]func([]byte) ([]entry, error){"m3u": readM3U, "xspf": readXSPF} {
			entries, _ := read(src)
			for _, e := range entries {
				if e.line < 1 || e.line > lines {
					t.Errorf("%s: entry on line %d of %d", name, e.line, lines)
				}
				if _, err := readings(e.location); err != nil && err.Error() == "" {
					t.Errorf("%s: an error without words", name)
				}
			}
		}
	})
}
