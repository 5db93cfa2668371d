package schematic

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A shaping on right-side rows falls on the first row of each run that faces so: every second or fourth row holds one,
// wherever it begins. Rows by hand: after 2 rows the next faces right, after 3 wrong; every third row faces right and wrong in turn.
func TestAShapingFallsOnTheSideThatItNames(t *testing.T) {
	for _, c := range []struct {
		before, every, times, after int
		on                          RowSide
		told                        int
	}{
		{2, 4, 3, 0, RightSide, 0}, {3, 4, 3, 0, RightSide, 0}, {3, 2, 3, 0, WrongSide, 0}, {2, 2, 3, 0, WrongSide, 0},
		{2, 1, 1, 0, RightSide, 0}, {3, 1, 1, 0, RightSide, 1}, {3, 1, 1, 1, RightSide, 0}, {2, 1, 1, 0, WrongSide, 1},
		{2, 3, 1, 0, RightSide, 0}, {2, 3, 2, 0, RightSide, 1}, {2, 3, 2, 0, AnyRow, 0}, {2, 1, 2, 0, RightSide, 1},
	} {
		g := Work(plain(&Piece{Name: "Back", Sections: []Section{&CastOn{Stitches: n(40)}, &Even{Amount: Amount{Rows: n(c.before)}},
			&Shape{Shapings: []Shaping{{By: n(1), At: BothEdges, Every: n(c.every), Times: n(c.times), Offset: c.after, On: c.on}}}}}), 0)
		assert.Len(t, g.Findings, c.told, "%+v", c)
	}
}
