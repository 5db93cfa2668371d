package document

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/layout/sheet"
)

// By hand, on A4: 210 − 2 × 18 = 174 mm between the margins. Three of 2 : 3 are 70 mm high and 46.67 mm wide; three of 3 : 2 side by side would be
// (174 − 2 × 6) / 4.5 = 36 mm high, which is too low, so two are, at (174 − 6) / 3 = 56 mm, and the third below them is 70 mm high.
func TestPhotographsStandBesideEachOther(t *testing.T) {
	for _, c := range []struct {
		w, h int
		want [][4]float64 // x, below the first, width, height
	}{
		{2, 3, [][4]float64{{18, 0, 46.67, 70}, {70.67, 0, 46.67, 70}, {123.33, 0, 46.67, 70}}},
		{3, 2, [][4]float64{{18, 0, 84, 56}, {108, 0, 84, 56}, {18, 1, 105, 70}}},
	} {
		b := newBuilder(&Content{Photos: []Photo{{"one", c.w, c.h, nil}, {"two", c.w, c.h, nil}, {"three", c.w, c.h, nil}}}, Options{Size: -1})
		b.photographs()
		b.p.flow(b.atoms)
		var got []*sheet.Picture
		sheet.Walk(&b.p.sheets[0].Root, func(it sheet.Item) {
			if p, ok := it.(*sheet.Picture); ok {
				got = append(got, p)
			}
		})
		require.Len(t, got, 3)
		for i, p := range got {
			assert.InDelta(t, c.want[i][0], p.At.X, 0.01)
			assert.Equal(t, c.want[i][1] > 0, p.At.Y > got[0].At.Y+56)
			assert.InDelta(t, c.want[i][2], p.W, 0.01)
			assert.InDelta(t, c.want[i][3], p.H, 0.01)
		}
		b = newBuilder(b.c, Options{Size: -1, Little: true})
		b.photographs()
		assert.Empty(t, b.atoms)
	}
}
