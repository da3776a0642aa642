package main

import (
	"fmt"
	"os"
	"regexp"
	"strconv"
	"strings"
)

// The declarations that hold what is learnt.
const (
	barWeights    = "beat/bar/evidence.go"
	barTrust      = "beat/bar/find.go"
	phraseWeights = "beat/phrase/weights.txt"
	phraseTrust   = "beat/phrase/trust.go"
	wholeWeights  = "beat/trust_weights.go"
)

// numbersOf matches the declaration of a name whose value is numbers alone,
// 'NAME = 1.5', 'NAME = [n]float64{1, 2}' or 'NAME = Type{1, 2}', in a Go file.
func numbersOf(name string) *regexp.Regexp {
	return regexp.MustCompile(`(?m)^(.*\b` + name + `\s*= (?:(?:\[\w+\]float64|\w+)\{)?)([-0-9., ]+)(\}?)$`)
}

// present is the number that a name is declared with.
func present(file, name string) (float64, error) {
	text, err := os.ReadFile(file)
	if err != nil {
		return 0, err
	}
	found := numbersOf(name).FindStringSubmatch(string(text))
	if found == nil {
		return 0, fmt.Errorf("%s: no number %s", file, name)
	}
	return strconv.ParseFloat(found[2], 64)
}

// write puts numbers in the place of those of a declaration.
func write(file, name string, values ...float64) error {
	text, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	out, err := rewritten(string(text), name, values)
	if err != nil {
		return fmt.Errorf("%s: %w", file, err)
	}
	return os.WriteFile(file, []byte(out), 0o644)
}

func rewritten(text, name string, values []float64) (string, error) {
	list := make([]string, len(values))
	for i, v := range values {
		list[i] = fmt.Sprintf("%.2f", v)
	}
	numbers := numbersOf(name)
	if n := len(numbers.FindAllString(text, -1)); n != 1 {
		return "", fmt.Errorf("%d declarations of %s that can be rewritten, want 1", n, name)
	}
	return numbers.ReplaceAllString(text, "${1}"+strings.Join(list, ", ")+"${3}"), nil
}
