// Package examples holds the patterns that a newcomer opens first, so that they
// come with the program.
package examples

import (
	"embed"
	"io/fs"
	"strings"
)

//go:embed *.yaml
var files embed.FS

// Names are the names of the example files without their ending, in order.
func Names() []string {
	all, err := fs.Glob(files, "*.yaml")
	if err != nil {
		panic("examples: " + err.Error()) // the form of the glob is wrong
	}
	for i, n := range all {
		all[i] = strings.TrimSuffix(n, ".yaml")
	}
	return all
}

// Text is the example called name, or nil.
func Text(name string) []byte {
	b, err := files.ReadFile(name + ".yaml")
	if err != nil {
		return nil
	}
	return b
}
