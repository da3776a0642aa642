// Package plan is the class as the instructor wrote it, read from YAML and
// checked for sense.
//
// Parse turns the bytes of a class file into a Class and a list of Problems,
// each with its line and column and a hint. Nothing here knows music or files.
//
// # Files
//
// Plain YAML in UTF-8. Not read are merge keys (<<), aliases (*), tags (!) and
// a second document. All problems are found at once; where a line breaks the
// YAML itself, that line and all problems above it.
//
//   - ClassSchema has every key of a class file, with its meaning, type, default
//     and an example; MovesSchema those of a user's own moves, limits, bands and
//     needs. They are the one description of both: 'onphrase help class-file'
//     and 'onphrase help moves-file' are written from them, and a test holds
//     them against the reader.
//   - ParseMusic reads a list of other music for the parts of a class.
//
// # Inside a value
//
// A length has a unit: "30s", "1m30s", "1:30" (minutes:seconds), "64 counts",
// "8 eights"; up to 60:00 or 4096 counts.
//
// A rhythm is counts down and up, "2-2", or down, hold, up, hold, "2-1-2-1",
// 1 to 16 each (holds may be 0); "pulse" is 1 count for both ways over a part
// of the range; "singles" is 1-1. The signs × and – may stand for x and -.
// Words that have two meanings in the trade, like 2-count and doubles, are
// refused with both meanings in digits.
//
// The passes of a block together fill whole phrases of 32 counts (whole eights
// where it says on: eight, to fill a bridge). One that is built up is danced in
// stages, each filling whole phrases, each as many times and with each lead as
// the block says.
//
// Names of moves are found whatever their case, hyphens, spaces and simple
// plurals.
package plan
