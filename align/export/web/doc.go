// Package web writes a count map as one HTML page that needs nothing else: no
// network, no other file but the music beside it.
//
// The page has three views of the same class. Stage is what the instructor
// reads from two metres while she teaches: the move, the count, what comes
// next; it follows the music, or a tap on count 1 when the studio's own system
// plays. Desk shows each song phrase by phrase with what lies on it and what
// was found. Wall is for paper, a sheet a part.
//
// Desk and wall are written here, by html/template, and can be read without a
// script; the stage is drawn by page/*.js from the data in the page. Names
// and cues come from people's files: they are text everywhere, and a content
// security policy keeps anything but our own script from running.
package web
