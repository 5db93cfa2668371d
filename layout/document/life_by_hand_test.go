package document

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/fonts"
	"flatwright/layout/sheet"
)

// A part of 100 by 60 mm on one sheet of 120 by 80, whose room begins at 10, 30: it lies in the middle, 10 mm in. Marks of 4 mm to each
// side stand where the laps have their middles.
func TestASheetOfAPartByHand(t *testing.T) {
	o := float64(Overlap)
	m := tile{w: 120, h: 80, top: 30}
	p := &lifePart{name: "Back", w: 100, h: 60, cols: 1, rows: 1, strokes: []lifeStroke{{[]sheet.Point{sp(0, 0), sp(100, 0), sp(100, 60)}, outlineStyle, "outline"}},
		labels: []lifeLabel{{"7", fonts.Regular, sp(50, 30)}, {"8", fonts.Regular, sp(50, 30)}, {"9", fonts.Regular, sp(50, 0)}, {"6", fonts.Regular, sp(-10, 30)}}}
	p.find(m)
	assert.Equal(t, map[[2]int]bool{{0, 0}: true}, p.page)
	b := builderOf()
	b.tiles(p, m)
	require.Len(t, b.atoms, 1)
	s := b.atoms[0].page
	assert.Equal(t, []sheet.Bookmark{{Name: "Back, life size"}}, s.Places)
	g := s.Root.Items[0].(*sheet.Group)
	a, c, up, down := 10+o/2, 130-o/2, 30+o/2, 110-o/2
	cross := func(x, y float64) []string {
		return []string{fmt.Sprintf("mark %.4g,%.4g %.4g,%.4g", x-4, y, x+4, y), fmt.Sprintf("mark %.4g,%.4g %.4g,%.4g", x, y-4, x, y+4)}
	}
	want := []string{"outline 20,40 120,40 120,100"}
	for _, q := range []sheet.Point{sp(a, up), sp(a, down), sp(c, up), sp(c, down)} {
		want = append(want, cross(q.X, q.Y)...)
	}
	base := (fonts.Ascent(fonts.Regular) - fonts.Descent(fonts.Regular)) * 3 / 2
	want = append(want, fmt.Sprintf(`label "7" 70,%.4g`, 70+base)) // 8 has no room beside it, 9 touches the outline, 6 the edge
	assert.Equal(t, want, drawnAs(g.Items))
	assert.Equal(t, "Back, sheet A1", g.Title)
	line := lineHigh(2.9)
	assert.Equal(t, []string{fmt.Sprintf(`heading "Back, sheet A1" bold 10,%.4g`, 10+line+1+fonts.Ascent(fonts.Bold)*2.9)}, drawnAs(s.Root.Items[1:]))

	// Its map: as wide as 90 mm of height and 100 of width let it, and no more than a line and a half to a sheet.
	b = builderOf()
	b.mapOf(p, m)
	require.Len(t, b.atoms, 2)
	scale := max(0.1, lineHigh(3)*1.5/(80-o))
	assert.InDelta(t, 80*scale+2, b.atoms[1].high, 1e-9)
	assert.Equal(t, []string{fmt.Sprintf(`note "Back: 1 of 1 sheets" bold 18,%.4g`, 50+fonts.Ascent(fonts.Regular)*3)}, drawnAt(b.atoms[0], 50))
	var root sheet.Group
	b.atoms[1].draw(&root, 50)
	items := drawnAs(root.Items[0].(*sheet.Group).Items)
	x := func(mm float64) float64 { return sheet.Quantise(18 + mm*scale) }
	y := func(mm float64) float64 { return sheet.Quantise(50 + mm*scale) }
	assert.Equal(t, []string{
		fmt.Sprintf("table %.4g,50 %.4g,%.4g", x(o/2), x(o/2), y(80)), fmt.Sprintf("table %.4g,50 %.4g,%.4g", x(120-o/2), x(120-o/2), y(80)),
		fmt.Sprintf("table 18,%.4g %.4g,%.4g", y(o/2), x(120), y(o/2)), fmt.Sprintf("table 18,%.4g %.4g,%.4g", y(80-o/2), x(120), y(80-o/2)),
		fmt.Sprintf("outline %.4g,%.4g %.4g,%.4g %.4g,%.4g", x(10), y(10), x(110), y(10), x(110), y(70)),
	}, items[:5])
	assert.Contains(t, items[5], `label "A1"`)
}

// A name in a cell of 20 by 10 mm stands at its middle, or where no line is: above, below, at its sides; smaller by 0.85 where it must be.
func TestANameFindsRoomInItsCell(t *testing.T) {
	w, h := fonts.Width(fonts.Regular, 3, "A1"), lineHigh(3)
	base := (fonts.Ascent(fonts.Regular) - fonts.Descent(fonts.Regular)) * 3 / 2
	one := free("A1", 3, 1, sp(10, 20), 20, 10, nil)
	assert.InDeltaSlice(t, []float64{20, 25 + base}, []float64{one.At.X, one.At.Y}, 0.006)
	level := [][2]sheet.Point{{sp(10, 25), sp(30, 25)}}
	one = free("A1", 3, 1, sp(10, 20), 20, 10, level)
	require.NotNil(t, one)
	assert.InDeltaSlice(t, []float64{3, 10.4 + w/2 + (20-w-0.8)*0.15, 20.4 + h/2 + (10-h-0.8)*0.15 + base}, []float64{one.Size, one.At.X, one.At.Y}, 0.006, "a fifth down it would touch the line by 0.2 mm: the corner")
	upright := [][2]sheet.Point{{sp(20, 20), sp(20, 30)}}
	one = free("A1", 3, 1, sp(10, 20), 20, 10, upright)
	assert.InDeltaSlice(t, []float64{10.4 + w/2 + (20-w-0.8)*0.2, 20.4 + h/2 + (10-h-0.8)*0.5 + base}, []float64{one.At.X, one.At.Y}, 0.006, "to the left")
	assert.Nil(t, free("A1", 3, 3, sp(10, 20), w-0.01, 10, nil))
	assert.NotNil(t, free("A1", 3, 2.5, sp(10, 20), w-0.01, 10, nil))
	assert.Nil(t, free("A1", 3, 2.6, sp(10, 20), w-0.01, 10, nil), "0.85 times 3 are 2.55")
}

// Less ink: no grounds, every second line of a rib, outlines of 0.35 for 0.5, frames of a quarter, rules dotted, hairlines gone.
func TestLessInkByHand(t *testing.T) {
	path := func(class string, width float64) *sheet.Path {
		return &sheet.Path{Class: class, Style: sheet.Style{Width: width, Stroke: sheet.Black, Fill: sheet.Tint}}
	}
	outline, frame, thin, blank, hairline, line := path("outline", 0.5), path("caution", 0.5), path("caution", 0.1), path("blank", 0.18), path("table", 0.1), path("table", 0.18)
	rib := path("hatch", 0.18)
	for i := range 3 {
		rib.Segs = append(rib.Segs, sheet.Seg{Verb: sheet.Move, P: [3]sheet.Point{sp(float64(i), 0)}}, sheet.Seg{Verb: sheet.Line, P: [3]sheet.Point{sp(float64(i), 9)}})
	}
	lessInk(&sheet.Group{Items: []sheet.Item{&sheet.Group{Items: []sheet.Item{outline, frame, thin, blank, hairline, line, rib}}}})
	assert.InDeltaSlice(t, []float64{0.35, 0.25, 0.1}, []float64{outline.Style.Width, frame.Style.Width, thin.Style.Width}, 1e-9)
	assert.Equal(t, []sheet.Ink{sheet.None, sheet.None, sheet.Black}, []sheet.Ink{outline.Style.Fill, hairline.Style.Stroke, line.Style.Stroke})
	assert.Equal(t, []float64{0.2, 1.8}, blank.Style.Dash)
	assert.Equal(t, []string{"hatch 0,0 0,9 2,0 2,9"}, drawnAs([]sheet.Item{rib}))
}

// Runs of a table side by side: 40 mm wide, 8 apart, as high as the longer, with one gap above both.
func TestRunsOfATableSideBySide(t *testing.T) {
	row := func(s string) gridRow { return gridRow{cells: []gridCell{{s: s}, {s: "1"}}} }
	c := gridOf(grid{title: []string{"N", "S"}, mark: -1, rows: []gridRow{row("a"), row("b"), row("c")}}, 20, 20)
	parts := c.runs(2, []int{0, 1}, 48)
	require.Len(t, parts, 2)
	high := heightOf(parts[0])
	one := beside(parts, high)
	line := lineHigh(3)
	assert.InDeltaSlice(t, []float64{2.4, line + 2 + 2*(line+1)}, []float64{one.gap, one.high}, 1e-9)
	var texts []string
	for _, s := range drawnAt(one, 10) {
		if s[:7] == `table "` {
			texts = append(texts, s)
		}
	}
	up, bold := fonts.Ascent(fonts.Regular)*3, fonts.Ascent(fonts.Bold)*3
	first := 10 + line + 2 + 0.5 + up
	of := func(s, face string, x, y float64) string { return fmt.Sprintf("table %q%s %.4g,%.4g", s, face, x, y) }
	s1, n1 := fonts.Width(fonts.Bold, 3, "S"), fonts.Width(fonts.Regular, 3, "1")
	assert.Equal(t, []string{
		of("N", " bold", 18, 11+bold), of("S", " bold", 57.5-s1, 11+bold), of("a", "", 18, first), of("1", "", 57.5-n1, first), of("b", "", 18, first+line+1), of("1", "", 57.5-n1, first+line+1),
		of("N", " bold", 66, 11+bold), of("S", " bold", 105.5-s1, 11+bold), of("c", "", 66, first), of("1", "", 105.5-n1, first),
	}, texts)
}
