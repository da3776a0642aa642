// Package outline writes a class to begin with: parts by outline, songs that
// suit them, whole phrases of moves, and remarks that say what to change. It
// knows no files: it takes what is known of the songs and gives the text of a
// class file.
//
// The parts and their minutes are common practice, no source; published texts
// say that there is "no strict standard" (EuropeActive Essentials). The moves
// are a beginning, put together by us.
package outline
