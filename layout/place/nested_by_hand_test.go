package place

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"
)

// drawnAs are the items as words: a path's class and points, a text's words, class, place and angle.
func drawnAs(items ...sheet.Item) []string {
	var out []string
	for _, it := range items {
		switch it := it.(type) {
		case *sheet.Path:
			s := it.Class
			for _, g := range it.Segs {
				if g.Verb == sheet.Close {
					s += " z"
				} else {
					s += fmt.Sprintf(" %.4g,%.4g", g.P[0].X+0, g.P[0].Y+0)
				}
			}
			out = append(out, s)
		case *sheet.Text:
			out = append(out, fmt.Sprintf("%s %q %.4g,%.4g %g", it.Class, it.S, it.At.X, it.At.Y, it.Angle))
		case *sheet.Group:
			out = append(out, drawnAs(it.Items...)...)
		}
	}
	return out
}

// rectangle is a view of a rectangle from lo to hi, mm.
func rectangle(lo, hi schematic.Point) *viewPlan {
	return &viewPlan{lo: lo, hi: hi, shape: [][]schematic.Point{{lo, {X: hi.X, Y: lo.Y}, hi, {X: lo.X, Y: hi.Y}}}}
}

func lines() (line, bold, base float64) {
	return lineHeight(fonts.Regular, 3), lineHeight(fonts.Bold, 3), (fonts.Ascent(fonts.Regular) - fonts.Descent(fonts.Regular)) * 3 / 2
}

// Two rectangles, 100 and 200 mm wide and 300 high, at 1:10: they begin at the hem, at 0, whatever height they were drawn at. Their
// corners are at 5 and 10 mm, the labels 9 mm below; a leader begins 0.8 mm below the corner and ends 0.6 above the label. The labels
// are in each other's way, and stand over the mean of both corners, 7.5 mm, with 2.5 mm between them.
func TestANestIsLaidOutByHand(t *testing.T) {
	line, bold, base := lines()
	n := &nest{id: "p", title: "Back", all: "all sizes"}
	n.take(0, rectangle(schematic.Point{X: -50, Y: 20}, schematic.Point{X: 50, Y: 320}))
	n.take(1, rectangle(schematic.Point{X: -100, Y: 40}, schematic.Point{X: 100, Y: 340}))
	assert.Equal(t, [2]schematic.Point{{X: -100, Y: 0}, {X: 100, Y: 300}}, [2]schematic.Point{n.lo, n.hi})
	assert.Equal(t, []schematic.Point{{X: 50, Y: 0}, {X: 100, Y: 0}}, n.begin)
	assert.Equal(t, []schematic.Point{{X: 50, Y: 300}, {X: 100, Y: 300}}, n.end)
	b := n.layOut([]string{"S", "Large"}, 10, 3)
	wa, wb := 1.2*fonts.Width(fonts.Regular, 3, "S"), 1.2*fonts.Width(fonts.Regular, 3, "Large")
	left := 7.5 - (wa+wb+2.5)/2
	require.Len(t, b.labels, 2)
	for i, want := range []struct {
		text string
		from pt
		x, w float64
	}{{"S", at(5, 0.8), left + wa/2, wa}, {"Large", at(10, 0.8), left + wa + 2.5 + wb/2, wb}} {
		l := b.labels[i]
		assert.Equal(t, want.text, l.text)
		assert.InDeltaSlice(t, []float64{want.from.X, want.from.Y, want.x, 8.4, want.x, 9 + line/2, want.w}, []float64{l.from.X, l.from.Y, l.to.X, l.to.Y, l.at.X, l.at.Y, l.width}, 1e-9)
	}
	right := max(10, left+wa+2.5+wb)
	title := fonts.Width(fonts.Bold, 3, "Back")
	assert.InDeltaSlice(t, []float64{right + 10, 30 + 9 + line + 2 + bold, 10, 30}, []float64{b.w, b.h, b.origin.X, b.origin.Y}, 1e-9)
	assert.InDeltaSlice(t, []float64{(right + 10 - title) / 2, 39 + line + 2 + fonts.Ascent(fonts.Bold)*3}, []float64{b.title.X, b.title.Y}, 1e-9)

	g := b.emit(at(100, 50), map[string]bool{})
	assert.Equal(t, []string{
		"outline 105,80 115,80 115,50 105,50 z",
		"outline 100,80 120,80 120,50 100,50 z",
		fmt.Sprintf("leader 115,80.8 %.4g,88.4", 110+left+wa/2),
		fmt.Sprintf(`size "S" %.4g,%.4g 0`, 110+left+wa/2, 80+9+line/2+base),
		fmt.Sprintf("leader 120,80.8 %.4g,88.4", 110+left+wa+2.5+wb/2),
		fmt.Sprintf(`size "Large" %.4g,%.4g 0`, 110+left+wa+2.5+wb/2, 80+9+line/2+base),
		fmt.Sprintf(`caption "Back" %.4g,%.4g 0`, 100+b.title.X, 50+b.title.Y),
	}, drawnAs(g))
}

// What is worked from the neck meets at the top, with its labels above; a circle about its middle, with its leaders from its right-hand
// side. Where all sizes begin at one corner and end apart, the labels stand where they end.
func TestWhereANestMeets(t *testing.T) {
	line, _, _ := lines()
	top := &nest{title: "B", top: true, all: "both"}
	top.take(0, rectangle(schematic.Point{X: 0, Y: 20}, schematic.Point{X: 100, Y: 320}))
	top.take(2, rectangle(schematic.Point{X: 0, Y: 0}, schematic.Point{X: 200, Y: 200}))
	assert.Equal(t, [2]schematic.Point{{X: 0, Y: -300}, {X: 200, Y: 0}}, [2]schematic.Point{top.lo, top.hi})
	b := top.layOut([]string{"S", "M", "L"}, 10, 3)
	l := b.labels[1]
	assert.Equal(t, "L", l.text)
	assert.InDeltaSlice(t, []float64{20, -0.8, -8.4, -9 - line/2, 9 + line}, []float64{l.from.X, l.from.Y, l.to.Y, l.at.Y, b.origin.Y}, 1e-9)

	disc := &nest{title: "C", disc: true}
	disc.take(0, rectangle(schematic.Point{X: 10, Y: 10}, schematic.Point{X: 50, Y: 50}))
	assert.Equal(t, [2]schematic.Point{{X: -20, Y: -20}, {X: 20, Y: 20}}, [2]schematic.Point{disc.lo, disc.hi})
	b = disc.layOut([]string{"S"}, 10, 3)
	assert.InDeltaSlice(t, []float64{2, 0, 10.4, 11 + line/2}, []float64{b.labels[0].from.X, b.labels[0].from.Y, b.labels[0].to.Y, b.labels[0].at.Y}, 1e-9, "2 mm of radius and 9 of leader")

	apart := &nest{title: "D"}
	for i, end := range []float64{60, 90} {
		apart.take(i, &viewPlan{lo: schematic.Point{}, hi: schematic.Point{X: end, Y: 80}, shape: [][]schematic.Point{{{X: 0, Y: 0}, {X: 50, Y: 0}, {X: end, Y: 80}}}})
	}
	corners, above := apart.corners(10)
	assert.Equal(t, []schematic.Point{{X: 60, Y: 80}, {X: 90, Y: 80}}, corners)
	assert.True(t, above)
	assert.Equal(t, []int{1, 2, 3}, []int{apartBy([]schematic.Point{{X: 1}, {X: 3.9}}, 3), apartBy([]schematic.Point{{X: 4}, {X: 1}}, 3), apartBy([]schematic.Point{{X: 9}, {X: 1}, {X: 5}}, 3)})
	apart.take(2, &viewPlan{})
	assert.Len(t, apart.sizes, 2, "a size that has nothing")
}

func TestSizesAreNamedTogether(t *testing.T) {
	names := []string{"XS", "S", "M", "L", "XL"}
	for want, sizes := range map[string][]int{"all": {4, 3, 2, 1, 0}, "XS": {0}, "XS, S": {0, 1}, "XS to M": {2, 1, 0}, "XS, M to XL": {0, 2, 3, 4}, "XS, S, L, XL": {0, 1, 3, 4}, "S to L": {1, 2, 3}} {
		assert.Equal(t, want, together(sizes, names, "all"))
	}
	assert.Equal(t, "S", together([]int{0}, []string{"S"}, "all"), "one size is called by its name")
}

// On A4 with 20 mm of heading and 15 of foot there are 190 by 242 mm: two boxes of 90 and 9 between them on a shelf, the third under the
// higher of them, the fourth, for which 242 - 109 - 109 - 9 are too few, on the next page.
func TestNestsOnShelvesAndPages(t *testing.T) {
	f := &frame{p: &plan{}, w: 210, h: 297, headHigh: 20, footHigh: 15, cautHigh: 12}
	box := func(w, h float64) *nestBox { return &nestBox{n: &nest{title: "Back"}, w: w, h: h} }
	pages, large := f.shelves([]*nestBox{box(90, 80), box(90, 100), box(100, 100), box(120, 40)})
	require.Nil(t, large)
	var got [][]float64
	for i, page := range pages {
		for _, u := range page {
			got = append(got, []float64{float64(i), u.o.X, u.o.Y})
		}
	}
	assert.Equal(t, [][]float64{{0, 10, 30}, {0, 109, 30}, {0, 10, 139}, {1, 10, 30}}, got)
	_, large = f.shelves([]*nestBox{box(190.5, 80)})
	assert.Equal(t, []float64{210.5, 80 + 297 - 230}, []float64{large.W, large.H})
	_, large = f.shelves([]*nestBox{box(100, 243)})
	assert.NotNil(t, large, "higher than any page")
	pages, large = f.shelves([]*nestBox{box(100, 241)})
	assert.Nil(t, large)
	require.Len(t, pages, 2, "the caution leaves 230 mm on the first page, and has it to itself")
	assert.Empty(t, pages[0])

	// Centred: 242 - 12 - 209 leave 21, a third of which is 7 between shelves and 0.4 of the other 14 above; 190 - 189 is shared by three gaps.
	pages, _ = f.shelves([]*nestBox{box(90, 80), box(90, 100), box(100, 100)})
	f.centre(pages[0], 0)
	assert.InDeltaSlice(t, []float64{10 + 1.0/3, 30 + 0.4*14, 109 + 2.0/3, 30 + 0.4*14, 10 + 45, 139 + 0.4*14 + 7},
		[]float64{pages[0][0].o.X, pages[0][0].o.Y, pages[0][1].o.X, pages[0][1].o.Y, pages[0][2].o.X, pages[0][2].o.Y}, 1e-9)
	f.p.o.Trim = true
	assert.InDelta(t, 297-(230-209-3*trimGap), f.centre([]nestPut{{box(90, 209), at(10, 30)}, {box(9, 9), at(10, 31)}}, 0).h, 1e-9, "cut to what is on it and a gap above, between and below")
}

// The key of a nest: a sample of 14 mm, 1.5 to its name, 5 to the next, lines 1.2 mm apart.
func TestTheKeyOfANest(t *testing.T) {
	line := lineHeight(fonts.Regular, 3)
	_, _, base := lines()
	f := &frame{p: &plan{o: Options{Text: 3}}, w: 100, h: 200, footHigh: 40}
	wide := 14 + 1.5 + 1.2*fonts.Width(fonts.Regular, 3, "Small") + 5
	assert.InDelta(t, wide, f.nestKeyWidth("Small"), 1e-9)
	names := []string{"Small", "Small", "Small", "Small"} // of 80 mm each takes 27.9: two to a line
	require.Less(t, 2*wide, 80.0)
	require.Greater(t, 3*wide, 80.0)
	assert.Equal(t, []int{1, 1, 2, 2}, []int{f.nestKeyRows(nil), f.nestKeyRows(names[:2]), f.nestKeyRows(names[:3]), f.nestKeyRows(names)})
	var g sheet.Group
	f.nestKey(&g, names[:3])
	y := 200 - 10 - 40 + 5 + 1.2 + line/2
	next := y + line + 1.2
	text := func(x, y float64) string { return fmt.Sprintf(`key "Small" %.4g,%.4g 0`, x, y+base) }
	stroke := func(x, y float64) string {
		return fmt.Sprintf("outline %.4g,%.4g %.4g,%.4g", x, y, x+14, y)
	}
	assert.Equal(t, []string{stroke(10, y), text(25.5, y), stroke(10+wide, y), text(25.5+wide, y), stroke(10, next), text(25.5, next)}, drawnAs(g.Items...))
}
