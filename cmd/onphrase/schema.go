package main

import (
	_ "embed" // for the schemas
	"io"
	"strings"

	"github.com/spf13/cobra"

	"onphrase/align/export"
	"onphrase/cmd/internal/parcel"
	"onphrase/plan"
)

// The schemas of what this command itself writes.
var (
	//go:embed analysis.schema.json
	analysisJSON string
	//go:embed findings.schema.json
	findingsJSON string
	//go:embed fit.schema.json
	fitSchema string
)

// schema is a published form of data.
type schema struct{ name, about, text string }

func schemas() []schema {
	return []schema{
		{"analysis", "what 'onphrase analyze --json' writes", analysisJSON},
		{"class", "a class file, for the help of an editor", plan.ClassSchema},
		{"findings", "what 'onphrase check --json' writes", findingsJSON},
		{"fit", "what 'onphrase fit --json' writes", fitSchema},
		{"map", "what 'onphrase map -f json' writes", export.MapSchema},
		{"moves", "a file of your own moves and figures, for the help of an editor", plan.MovesSchema},
		{"relay", "what 'onphrase relay --json' writes", relaySchema},
		{"package", "package.json in what 'onphrase pack' writes", parcel.Schema},
	}
}

func schemaNames() []string {
	var names []string
	for _, s := range schemas() {
		names = append(names, s.name)
	}
	return names
}

func newSchemaCmd(s *streams) *cobra.Command {
	long := "Prints the JSON Schema (2020-12) of data that onphrase reads and writes, for\nprograms that use it and editors that help with it:\n\n"
	for _, sc := range schemas() {
		long += "  " + sc.name + strings.Repeat(" ", 10-len(sc.name)) + sc.about + "\n"
	}
	return &cobra.Command{
		Use:       "schema NAME",
		Short:     "Print the JSON Schema of a class, an analysis or a count map",
		Long:      long + "\nWithin a version keys are added and never renamed.",
		Example:   "  onphrase schema class > class.schema.json",
		Args:      takes(1, 1, "one of "+strings.Join(schemaNames(), ", ")),
		ValidArgs: schemaNames(),
		RunE: func(_ *cobra.Command, args []string) error {
			for _, sc := range schemas() {
				if sc.name == args[0] {
					_, err := io.WriteString(s.out, sc.text)
					return err
				}
			}
			return usage("there are "+strings.Join(schemaNames(), ", "), "no schema %q", args[0])
		},
	}
}
