package sheet_test

import (
	"testing"

	"flatwright/fonts"
	"flatwright/layout/sheet"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// reach is how far a path reaches, by its points.
func reach(p *sheet.Path) (lo, hi sheet.Point) {
	first := true
	for i := range p.Segs {
		for _, q := range p.Segs[i].Points() {
			if first {
				lo, hi, first = q, q, false
			}
			lo = sheet.Point{X: min(lo.X, q.X), Y: min(lo.Y, q.Y)}
			hi = sheet.Point{X: max(hi.X, q.X), Y: max(hi.Y, q.Y)}
		}
	}
	return lo, hi
}

// H of Liberation Sans is 1409 of 2048 units high, stands on the baseline, and has 168 units free at its left and 167 at
// its right, of 1479 (the face's own tables).
func TestATextIsAPathWhereItStands(t *testing.T) {
	const size = 20.48 // 0.01 mm a unit
	text := sheet.Text{S: "H", At: sheet.Point{X: 100, Y: 50}, Face: fonts.Regular, Size: size, Ink: sheet.Black}
	for _, c := range []struct {
		anchor         sheet.Anchor
		angle          float64
		l, r, top, low float64
	}{
		{sheet.Start, 0, 101.68, 113.12, 35.91, 50},
		{sheet.End, 0, 100 - 14.79 + 1.68, 100 - 1.67, 35.91, 50},
		{sheet.Middle, 0, 100 - 7.395 + 1.68, 100 + 7.395 - 1.67, 35.91, 50},
		{sheet.Start, 90, 85.91, 100, 50 - 13.12, 50 - 1.68},
	} {
		tx := text
		tx.Anchor, tx.Angle = c.anchor, c.angle
		p := tx.Outline()
		require.NotEmpty(t, p.Segs)
		assert.Equal(t, sheet.Close, p.Segs[len(p.Segs)-1].Verb)
		assert.Equal(t, sheet.Black, p.Style.Fill)
		lo, hi := reach(p)
		assert.InDelta(t, c.l, lo.X, 0.02, "%v", c)
		assert.InDelta(t, c.r, hi.X, 0.02, "%v", c)
		assert.InDelta(t, c.top, lo.Y, 0.02, "%v", c)
		assert.InDelta(t, c.low, hi.Y, 0.02, "%v", c)
	}
	text.S = ""
	assert.Empty(t, text.Outline().Segs)
	// An o has two contours, one within the other, all of curves.
	text.S = "o"
	n := map[sheet.Verb]int{}
	for _, s := range text.Outline().Segs {
		n[s.Verb]++
	}
	assert.Equal(t, 2, n[sheet.Move])
	assert.Equal(t, 2, n[sheet.Close])
	assert.Greater(t, n[sheet.Cubic], 8)
}
