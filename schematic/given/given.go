// Package given is the patterns that tests begin with: out of a file or a text, refused if it has an error. It is imported by
// tests alone.
package given

import (
	"os"
	"path/filepath"
	"testing"

	"flatwright/schematic"
	"flatwright/schematic/read"
)

// File is the pattern of a file.
func File(t testing.TB, path string) *schematic.Pattern {
	t.Helper()
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return text(t, filepath.Base(path), src)
}

// Text is the pattern of a text.
func Text(t testing.TB, src string) *schematic.Pattern {
	t.Helper()
	return text(t, "text.yaml", []byte(src))
}

func text(t testing.TB, name string, src []byte) *schematic.Pattern {
	t.Helper()
	p, found := read.Pattern(name, src)
	if p == nil || found.Errors() {
		t.Fatalf("%v", found)
	}
	return p
}
