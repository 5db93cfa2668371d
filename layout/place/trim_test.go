package place

import (
	"testing"

	"flatwright/layout/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestATrimmedSheetIsAsHighAsItsDrawing(t *testing.T) {
	gs := pullover(3)
	for name, draw := range map[string]func(o Options) ([]*sheet.Sheet, error){
		"one size":  func(o Options) ([]*sheet.Sheet, error) { return Schematic(gs, o) },
		"all sizes": func(o Options) ([]*sheet.Sheet, error) { o.Labels = AllSizes; return Schematic(gs, o) },
		"nested":    func(o Options) ([]*sheet.Sheet, error) { return Nested(gs, o) },
	} {
		full, err := draw(Options{Units: Both})
		require.NoError(t, err, name)
		cut, err := draw(Options{Units: Both, Trim: true})
		require.NoError(t, err, name)
		require.Len(t, cut, len(full), name)
		if name != "all sizes" { // those fill their page
			assert.Less(t, cut[0].H, full[0].H, name)
		}
		for i := range cut {
			assert.Equal(t, full[i].W, cut[i].W, name)
			assert.LessOrEqual(t, cut[i].H, full[i].H, name)
			assert.Empty(t, sheet.Overlaps(cut[i], 5), name)
		}
	}
}
