package place

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A page of 200 × 300 mm with a heading of 20, a foot of 10 and, on the first page, a caution of 5: between the margins there are
// 200 - 2 margins across, and 300 - 2 margins - 20 - 10 - 5 down.
func TestAShelfFitsToTheMillimetre(t *testing.T) {
	f := &frame{w: 200, h: 300, headHigh: 20, footHigh: 10, cautHigh: 5}
	w, h := f.area(0)
	assert.InDelta(t, 200-2*margin, w, 1e-9)
	assert.InDelta(t, 265-2*margin, h, 1e-9)
	_, second := f.area(1)
	assert.InDelta(t, 270-2*margin, second, 1e-9)
	p := &packer{f: f}
	fits := func(wide, above, below, so float64) bool {
		return p.fits(shelf{w: wide, above: above, below: below}, so, nil)
	}
	assert.True(t, fits(w, 100, h-160, 60))
	assert.False(t, fits(w+0.01, 100, h-160, 60))
	assert.False(t, fits(w, 100, h-159.99, 60))
	p.pages = make([]page, 1) // the second page has no caution
	assert.True(t, fits(w, 100, second-160, 60))
	p.cur.table = true
	assert.False(t, p.fits(shelf{w: 1}, 0, make([]*item, 1)), "rows without a table")
	assert.True(t, p.fits(shelf{w: 1}, 0, nil))
}

// Extension lines begin startGap from their ends and go overshoot beyond the line; an end no farther off than startGap has none.
func TestExtensionLinesOfAnOpening(t *testing.T) {
	o := opening{ua: 10, va: 50, ub: 40, vb: 20}
	tails := o.tails(30)
	assert.Equal(t, []seg{
		{o.at(10, 50-startGap), o.at(10, 30-overshoot)},
		{o.at(40, 20+startGap), o.at(40, 30+overshoot)},
	}, tails)
	assert.Len(t, o.tails(20+startGap-0.01), 1)
	assert.Len(t, o.tails(50-startGap-0.01), 2)
}

func TestTheLanguageIsEnglishUnlessItIsSaid(t *testing.T) {
	assert.Equal(t, "en", Options{}.lang())
	assert.Equal(t, "de", Options{Lang: "de"}.lang())
}

// The edge from (0, 0) to (10, 20) is at 10 below x = 5: 20 above a point at 30.
func TestHowFarOutAnEdgeIs(t *testing.T) {
	for _, c := range []struct {
		to   side
		p    pt
		want float64
	}{{top, pt{X: 5, Y: 30}, 20}, {bottom, pt{X: 5, Y: 30}, -20}, {bottom, pt{X: 5, Y: 2}, 8}, {left, pt{X: 30, Y: 5}, 27.5}, {right, pt{X: 30, Y: 5}, -27.5}} {
		far, ok := outTo(c.p, pt{}, pt{X: 10, Y: 20}, c.to)
		assert.True(t, ok)
		assert.InDelta(t, c.want, far, 1e-9)
	}
	far, ok := outTo(pt{X: 11, Y: 3}, pt{}, pt{X: 10, Y: 20}, top)
	assert.False(t, ok, "beside the edge")
	assert.Zero(t, far)
}
