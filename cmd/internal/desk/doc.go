// Package desk is what the desk can do, as plain requests and answers.
//
// A screen sends a request, {"do": "songs"} and what belongs to it, and shows
// the answer; it keeps no model of its own. How requests travel is another
// matter: over http from a browser on the same computer, or to a worker inside
// a browser tab. So this package knows no files, no network and no clock:
// where her songs and classes are kept, Home says, and what a song sounds like.
//
// One file holds one kind of request. Answers are structs with the names that
// the screens use; times of a track are in milliseconds there, class times in
// seconds.
package desk
