package place

import (
	"flatwright/fonts"
	"flatwright/schematic/units"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The longest round length that is at most 45 mm on paper. At 1:5 a centimetre is 2 mm and an inch 5.08 mm: 20 cm are 40 mm (50 cm
// would be 100), 5 in are 25.4 (10 would be 50.8).
func TestTheBarIsTheLongestRoundLength(t *testing.T) {
	for scale, want := range map[float64]struct{ cm, in int }{
		0.5: {2, 1}, 2: {5, 2}, 3: {10, 5}, 5: {20, 5}, 20: {50, 20}, 40: {100, 50}, 100: {200, 100}, 200: {500, 200}, 1000: {1000, 1000},
	} {
		b := newBar(units.CM, scale, 3, 500)
		assert.Equal(t, want.cm, b.bars[0].n, "cm at 1:%g", scale)
		assert.Equal(t, want.in, b.bars[1].n, "in at 1:%g", scale)
		assert.InDelta(t, float64(want.cm)*10/scale, b.bars[0].long, 1e-9)
		assert.InDelta(t, float64(want.in)*25.4/scale, b.bars[1].long, 1e-9)
	}
	assert.InDelta(t, 60, newBar(units.CM, 5, 3, 60).wide, 1e-9, "no wider than the page")
}

func TestRowsOfATableAreSharedAmongItsColumns(t *testing.T) {
	for _, c := range []struct {
		columns, items int
		want           []int
	}{
		{1, 5, []int{5}}, {2, 5, []int{3, 2}}, {2, 4, []int{2, 2}}, {3, 7, []int{3, 3, 1}}, {3, 1, []int{1}}, {2, 2, []int{2}}, {3, 3, []int{3}}, {4, 9, []int{3, 3, 3}},
	} {
		var got []int
		var items []*item
		for n := range c.items {
			items = append(items, &item{nth: c.items - n})
		}
		last := 0
		for _, part := range (&table{columns: c.columns}).split(items) {
			got = append(got, len(part))
			for _, it := range part {
				assert.Greater(t, it.nth, last, "in the order of their letters")
				last = it.nth
			}
		}
		assert.Equal(t, c.want, got, "%d rows in %d columns", c.items, c.columns)
	}
}

// A square of 10 × 4 mm, hatched along its length: lines 2 mm apart lie at 1 and 3 mm, 4 mm apart at 2 mm.
func TestLinesOfAHatchLieEvenlyBetweenItsSides(t *testing.T) {
	box := []pt{{X: 0, Y: 0}, {X: 10, Y: 0}, {X: 10, Y: 4}, {X: 0, Y: 4}}
	heights := func(gap float64) []float64 {
		var out []float64
		for _, s := range hatch(box, pt{X: 2}, gap) {
			assert.InDelta(t, 10, s.b.X-s.a.X, 1e-9)
			out = append(out, s.a.Y)
		}
		return out
	}
	assert.InDeltaSlice(t, []float64{1, 3}, heights(2), 1e-9)
	assert.InDeltaSlice(t, []float64{2}, heights(4), 1e-9)
	assert.InDeltaSlice(t, []float64{2}, heights(7.9), 1e-9, "4 / 7.9 is rounded to 1")
	assert.Empty(t, heights(8.1), "4 / 8.1 is less than a half")
	assert.Empty(t, heights(0))
	assert.Len(t, heights(4.0/5000), 5000)
	assert.Empty(t, heights(4.0/5001), "more than are drawn")
	assert.Empty(t, hatch(box[:2], pt{X: 1}, 1))
	assert.Empty(t, hatch(box, pt{}, 1))
}

// The bounds that the guide of options names are within, the next step is not.
func TestWhatOptionsMayBe(t *testing.T) {
	for _, c := range []struct {
		name string
		o    Options
		fits bool
	}{
		{"none", Options{}, true},
		{"half", Options{Scale: 0.5}, true}, {"less than half", Options{Scale: 0.49}, false},
		{"a thousandth", Options{Scale: 1000}, true}, {"less", Options{Scale: 1000.1}, false},
		{"worn, half", Options{WornScale: 0.5}, true}, {"worn, less than half", Options{WornScale: 0.49}, false},
		{"worn, a thousandth", Options{WornScale: 1000}, true}, {"worn, less", Options{WornScale: 1000.1}, false},
		{"40 mm", Options{Width: 40}, true}, {"39 mm", Options{Width: 39}, false},
		{"a metre", Options{Width: 1000}, true}, {"more", Options{Width: 1001}, false},
		{"the last size", Options{Size: 2}, true}, {"one more", Options{Size: 3}, false}, {"below none", Options{Size: -1}, false},
		{"small text", Options{Text: 1.5}, true}, {"smaller", Options{Text: 1.4}, false}, {"large", Options{Text: 12}, true}, {"larger", Options{Text: 12.1}, false},
		{"a paper that is none", Options{Paper: -1}, false},
	} {
		err := c.o.check(3)
		assert.Equal(t, c.fits, err == nil, "%s: %v", c.name, err)
	}
	assert.Error(t, Options{}.check(0))
}

// Two tables and what is between them are 13 mm too wide for the paper: the names of each take 6.5 mm less. A name that
// takes a second line then makes a row of two units no higher, but a row of one.
func TestTablesStandSideBySideWhereWrappedNamesMakeNoRowHigher(t *testing.T) {
	for units, want := range map[Units]int{Both: 2, CM: 1} {
		p, err := newPlan(skirt(6, false), Options{Units: units, Labels: Letters})
		require.NoError(t, err)
		tb := newTable(p, 400)
		name := 0.0
		for _, v := range p.views {
			for it := range v.all {
				name = max(name, room(fonts.Regular, tb.size, rowName(v, it)))
			}
		}
		tb.nameW, tb.columns = name+2*tb.pad+0.1, 1
		tb.rows, tb.width = tb.rowsOf(tb.nameW), tb.nameW+50
		avail := 2*tb.width + tb.columnGap - 13
		was := tb.nameW
		tb.abreast(avail)
		require.Equal(t, want, tb.columns)
		if want == 2 {
			assert.InDelta(t, was-6.5, tb.nameW, 1e-9)
			assert.InDelta(t, avail, 2*tb.width+tb.columnGap, 1e-9)
		}
	}
}
