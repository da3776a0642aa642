package plan

import _ "embed" // for the schemas

// ClassSchema describes a class file for editors and programs, as JSON Schema
// of 2020-12. Every file written in the usual spellings is valid; what stands
// inside a text is left to Parse, which also reads more spellings.
//
//go:embed class.schema.json
var ClassSchema string

// MovesSchema describes a user's moves file in the same way.
//
//go:embed moves.schema.json
var MovesSchema string
