package check

import (
	"os"
	"path/filepath"
	"testing"

	"flatwright/schematic/bysize"
	"flatwright/schematic/read"
)

// FuzzWork holds that whatever the reader lets through is worked and checked
// without a panic.
func FuzzWork(f *testing.F) {
	for _, folder := range []string{"../../examples", "../../testdata/garments", "../../testdata/read"} {
		files, _ := filepath.Glob(filepath.Join(folder, "*.yaml"))
		for _, name := range files {
			src, err := os.ReadFile(name)
			if err != nil {
				f.Fatal(err)
			}
			f.Add(src)
		}
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		p, found := read.Pattern("fuzz.yaml", src)
		if p == nil || found.Errors() || p.Sizes.Len() > 8 || len(p.Pieces) > 12 {
			return
		}
		Pattern(p, bysize.WorkAll(p))
	})
}
