// Package plan is the class as the instructor wrote it, read from YAML and
// checked for sense.
//
// Parse turns the bytes of a class file into a Class and a list of Problems,
// each with its line and column and a hint. Nothing here knows music or files.
package plan
