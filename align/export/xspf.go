package export

import (
	"encoding/xml"
	"io"
	"net/url"
	"strings"

	"onphrase/align"
	"onphrase/plan/say"
)

// The elements of XSPF that a running order has.
//
// Ref: XSPF version 1, xspf.org/spec, section 4.
type xspf struct {
	XMLName    xml.Name `xml:"http://xspf.org/ns/0/ playlist"`
	Version    int      `xml:"version,attr"`
	Title      string   `xml:"title,omitempty"`
	Annotation string   `xml:"annotation"`
	List       xspfList `xml:"trackList"` // required, also when empty
}

type xspfList struct {
	Tracks []xspfTrack `xml:"track"`
}

type xspfTrack struct {
	Location   string `xml:"location"` // a URI, relative to the playlist
	Title      string `xml:"title"`
	Annotation string `xml:"annotation"`
	TrackNum   int    `xml:"trackNum"`           // from 1
	Duration   int    `xml:"duration,omitempty"` // [ms]
}

// writeXSPF writes the running order with what to know of each track.
func writeXSPF(w io.Writer, m *align.CountMap) error {
	list := xspf{Version: 1, Title: say.OneLine(m.Class), Annotation: strings.Join(Cautions, " ")}
	for i, t := range runningOrder(m) {
		where := url.URL{Path: t.location()}
		list.List.Tracks = append(list.List.Tracks, xspfTrack{
			Location: where.String(), Title: t.name(), Annotation: t.note,
			TrackNum: i + 1, Duration: milliseconds(t.Duration),
		})
	}
	src, err := xml.MarshalIndent(list, "", "  ")
	if err != nil {
		return err
	}
	_, err = io.WriteString(w, xml.Header+string(src)+"\n")
	return err
}
