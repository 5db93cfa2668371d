package place

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/layout/sheet"
	"flatwright/schematic"
)

// Where the face of a drawing is not used its words are wider: DejaVu Sans, the only face of many systems, takes 1.15 to 1.2 times the
// width of the house's (measured with its file). Nothing is cut or covered there.
func TestWordsHaveRoomWhereTheirFaceIsNotUsed(t *testing.T) {
	gs := pullover(3)
	nested := func(o Options) ([]*sheet.Sheet, error) {
		s, err := Nested(gs, o)
		return s, err
	}
	for name, made := range map[string]func(Options) ([]*sheet.Sheet, error){
		"schematic": func(o Options) ([]*sheet.Sheet, error) { return Schematic(gs, o) },
		"nested":    nested,
	} {
		for _, o := range []Options{{Units: Both}, {Labels: Letters}, {Labels: AllSizes}, {Labels: Blank}, {Width: 160}, {Trim: true}, {Paper: Letter, Units: Inches}, {Without: schematic.ScaleBar}} {
			t.Run(fmt.Sprintf("%s %+v", name, o), func(t *testing.T) {
				sheets, err := made(o)
				require.NoError(t, err)
				for _, s := range sheets {
					edge := 5.0
					if o.cut() {
						edge = 0
					}
					sheet.Walk(&s.Root, func(it sheet.Item) {
						if text, ok := it.(*sheet.Text); ok {
							text.Width *= 1.2
						}
					})
					assert.Empty(t, sheet.Overlaps(s, edge))
				}
			})
		}
	}
}
