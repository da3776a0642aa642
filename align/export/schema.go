package export

import _ "embed" // for the schema

// MapSchema describes the JSON form of a count map, as JSON Schema of 2020-12.
//
//go:embed map.schema.json
var MapSchema string
