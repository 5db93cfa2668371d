package bysize

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// gored is a piece cut into panels of the given stitches, decreased at its lines; the
// panel of each place in odd is decreased at its own lines once more.
func gored(round bool, odd string, counts ...expr.Graded) *schematic.Piece {
	p := &schematic.Panels{}
	sum := expr.Counts(0, 0)
	for i, c := range counts {
		p.Of = append(p.Of, schematic.Panel{Name: "Gore " + string(rune('A'+i)), Stitches: c})
		sum = expr.Counts(sum.Int(0, 0)+c.Int(0, 0), sum.Int(1, 0)+c.Int(1, 0))
	}
	shape := &schematic.Shape{Shapings: []schematic.Shaping{{By: c(1, 1), At: schematic.Lines, Every: c(4, 4), Times: c(5, 5)}}}
	if odd != "" {
		shape.Shapings = append(shape.Shapings, schematic.Shaping{By: c(1, 1), At: schematic.Lines, Panel: "Gore " + odd, Every: c(8, 8), Times: c(2, 2)})
	}
	return &schematic.Piece{Name: "Skirt", Kind: schematic.KindBody, Round: round, Sections: []schematic.Section{&schematic.CastOn{Stitches: sum}, p, shape, &schematic.BindOff{All: true}}}
}

func twoSizes(pieces ...*schematic.Piece) *schematic.Pattern {
	return &schematic.Pattern{Title: "t", Sizes: expr.Sizes{Names: []string{"S", "M"}, Groups: []int{1, 1}}, Steps: units.Usual, Pieces: pieces,
		Gauges: []schematic.Gauge{{Name: "fabric", Stitches: units.Int(20), Rows: units.Int(25), Over: units.Int(100)}}}
}

func find(t *testing.T, m *schematic.Made, id string) schematic.Measure {
	t.Helper()
	i := slices.IndexFunc(m.Measures, func(s schematic.Measure) bool { return s.ID == id })
	require.GreaterOrEqual(t, i, 0, id)
	return m.Measures[i]
}

func mm(v float64) units.Num { return units.Frac(int64(v*1000), 1000) }

func c(s, m int) expr.Graded { return expr.Counts(s, m) }

// drawnAs are the views of a piece: each name with how many it stands for.
func drawnAs(m *schematic.Made) map[string]int {
	all := map[string]int{}
	for _, v := range m.Views {
		all[v.Name] = max(1, v.Alike)
	}
	return all
}

func TestPanelsThatAreAlikeSideBySideInEverySizeAreDrawnOnce(t *testing.T) {
	for _, k := range []struct {
		name  string
		piece *schematic.Piece
		want  map[string]int
	}{
		{"all six of a round", gored(true, "", c(30, 36), c(30, 36), c(30, 36), c(30, 36), c(30, 36), c(30, 36)), map[string]int{"Gore": 6}},
		{"not one that another size makes unlike", gored(true, "", c(30, 36), c(30, 38), c(30, 36)), map[string]int{"Gore A": 1, "Gore B": 1, "Gore C": 1}},
		{"those on both sides of the beginning of a round", gored(true, "", c(30, 36), c(40, 46), c(30, 36), c(30, 36)), map[string]int{"Gore B": 1, "Gore": 3}},
		{"not those that another one parts", gored(false, "", c(20, 26), c(30, 36), c(40, 46), c(30, 36), c(20, 26)), map[string]int{"Gore A": 1, "Gore B": 1, "Gore C": 1, "Gore D": 1, "Gore E": 1}},
		{"not one that is shaped otherwise", gored(true, "B", c(30, 36), c(30, 36), c(30, 36), c(30, 36)), map[string]int{"Gore B": 1, "Gore": 3}},
		{"the inner ones of a flat row", gored(false, "", c(30, 36), c(30, 36), c(30, 36), c(30, 36)), map[string]int{"Gore A": 1, "Gore": 2, "Gore D": 1}},
	} {
		t.Run(k.name, func(t *testing.T) {
			for _, g := range WorkAll(twoSizes(k.piece)) {
				require.Empty(t, g.Findings)
				assert.Equal(t, k.want, drawnAs(g.Pieces[0]))
			}
		})
	}
}

// Two halves of a flat row, increased at the line between them: mirror images.
func TestMirroredHalvesAreDrawnOnceAndTheirEdgesStayWhereTheyAre(t *testing.T) {
	g := WorkAll(twoSizes(gored(false, "", c(30, 36), c(30, 36))))[0]
	m := g.Pieces[0]
	require.Len(t, m.Views, 1)
	assert.Equal(t, "Gore", m.Views[0].Name)
	assert.Equal(t, 2, m.Views[0].Alike)
	assert.Equal(t, 1, m.Views[0].Mirror)
	for _, e := range m.Edges {
		require.Equal(t, 0, e.View)
		for _, p := range e.Path {
			assert.Contains(t, corner(m.Views[0].Outline[0], p), true, "%s lies on the outline that is drawn", e.Name)
		}
	}
	assert.InDelta(t, m.Area.Float(), m.OutlineArea(), 1e-6, "both halves count")
}

func corner(outline []schematic.Point, p schematic.Point) []bool {
	var on []bool
	for _, q := range outline {
		on = append(on, q == p)
	}
	return on
}

// Six gores of 30 stitches of 5 mm are 90 cm around; each is 15 cm wide at the hem.
func TestWhatIsNotDrawnAnyMoreCanStillBeNamed(t *testing.T) {
	p := twoSizes(gored(true, "", c(30, 36), c(30, 36), c(30, 36), c(30, 36), c(30, 36), c(30, 36)))
	g := WorkAll(p)[0]
	m := g.Pieces[0]
	assert.Equal(t, mm(150), find(t, m, "skirt.gore-d.width-at-lower-edge").Length)
	assert.Equal(t, schematic.NoView, find(t, m, "skirt.gore-d.width-at-lower-edge").View)
	assert.False(t, find(t, m, "skirt.gore-d.width-at-lower-edge").Main)
	assert.Equal(t, mm(900), find(t, m, "skirt.width-at-hem").Length)
	shown := 0
	for _, s := range m.Measures {
		if s.Main {
			shown++
			assert.True(t, strings.HasPrefix(s.ID, m.Measures[0].ID[:len("skirt.gore-f")]), s.ID)
		}
	}
	assert.Equal(t, 3, shown, "two widths and a length, once")
	_, edges := g.EdgesOf("Skirt Gore C cast-on edge")
	assert.Len(t, edges, 1)
}

// However a row is cut, the panels drawn stand for all of it: their widths at the cast-on edge, each as
// often as it is there, make up the row.
func TestThePanelsDrawnMakeUpTheRow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		counts := rapid.SliceOfN(rapid.SampledFrom([]int{24, 30}), 2, 8).Draw(t, "panels")
		round := rapid.Bool().Draw(t, "round")
		var graded []expr.Graded
		sum := 0
		for _, n := range counts {
			graded = append(graded, c(n, n+6))
			sum += n
		}
		if len(counts) > 1 {
			m := WorkAll(twoSizes(gored(round, "", graded...)))[0].Pieces[0]
			var wide units.Num
			panels := 0
			for i, v := range m.Views {
				panels += max(1, v.Alike)
				for _, s := range m.Measures {
					if s.View == i && s.Name == "width at lower edge" {
						wide = wide.Add(s.Length.Times(max(1, v.Alike)))
					}
				}
			}
			if panels != len(counts) || !wide.Eq(mm(float64(5*sum))) {
				t.Fatalf("%d panels of %s, not %d of %d", panels, wide, len(counts), 5*sum)
			}
		}
	})
}

func TestOneNameForSeveralPanels(t *testing.T) {
	for want, names := range map[string][]string{
		"Gore": {"Gore 1", "Gore 2", "Gore 13"}, "Wedge": {"Wedge A", "Wedge B"}, "Gore 1": {"Gore 1", "Gore 1"}, "Front and Back": {"Front", "Back"}, "A, B, C and D": {"A", "B", "C", "D"},
		"A, B and 3 more": {"A", "B", "C", "D", "E"}, "Left side and Right side": {"Left side", "Right side"}, "Row 12b and Row 13b": {"Row 12b", "Row 13b"},
	} {
		assert.Equal(t, want, together(names))
	}
}

// What one view shows the other must show, mirrored or not, be it one thing alone that differs.
func TestWhatMakesTwoPanelsAlike(t *testing.T) {
	panel := func() schematic.View {
		return schematic.View{Panel: true, Outline: [][]schematic.Point{{{X: 0, Y: 0}, {X: 4, Y: 0}, {X: 3, Y: 5}}}, Lines: []schematic.Line{{Kind: schematic.LineMark, A: schematic.Point{X: 1, Y: 1}, B: schematic.Point{X: 2, Y: 1}}}, Ribs: []schematic.Hatch{{Poly: []schematic.Point{{X: 0, Y: 0}, {X: 1, Y: 0}, {X: 1, Y: 1}}, Dir: schematic.Point{X: 0, Y: 1}, Gap: 2}},
			Notches: []schematic.Notch{{Number: 1, At: schematic.Point{X: 2, Y: 0}}}, Marks: []schematic.Marked{{What: "button", At: schematic.Point{X: 1, Y: 2}}}, Parts: []schematic.PartName{{Name: "x", At: schematic.Point{X: 2, Y: 2}}}, Arrow: schematic.Point{X: 0, Y: 1}}
	}
	mirror := func(v schematic.View) schematic.View {
		over := func(p *schematic.Point) { p.X = -p.X }
		for _, l := range append(v.Outline[:len(v.Outline):len(v.Outline)], v.Ribs[0].Poly) { // and anticlockwise again
			slices.Reverse(l)
			for i := range l {
				over(&l[i])
			}
		}
		for _, p := range []*schematic.Point{&v.Lines[0].A, &v.Lines[0].B, &v.Ribs[0].Dir, &v.Notches[0].At, &v.Marks[0].At, &v.Parts[0].At, &v.Arrow} {
			over(p)
		}
		return v
	}
	like := func(change func(*schematic.View)) [2]bool {
		v, over := panel(), panel()
		change(&v)
		change(&over)
		m := &schematic.Made{Views: []schematic.View{panel(), v, mirror(over)}}
		return [2]bool{alike(m, 0, 1, same), alike(m, 0, 2, mirrored)}
	}
	assert.Equal(t, [2]bool{true, true}, like(func(*schematic.View) {}))
	assert.Equal(t, [2]bool{true, true}, like(func(v *schematic.View) {
		v.Outline[0] = []schematic.Point{{X: 4, Y: 0.0004}, {X: 3, Y: 5}, {X: 0, Y: 0}}
	}), "wherever it begins, to a thousandth")
	for i, change := range []func(*schematic.View){
		func(v *schematic.View) { v.Panel = false }, func(v *schematic.View) { v.Half = true }, func(v *schematic.View) { v.Disc = true }, func(v *schematic.View) { v.Outline = append(v.Outline, v.Outline[0]) },
		func(v *schematic.View) { v.Outline[0][2].Y = 5.001 }, func(v *schematic.View) { v.Outline[0][2].X = 3.001 }, func(v *schematic.View) { v.Lines[0].Kind = schematic.LineFold }, func(v *schematic.View) { v.Lines[0].B.X = 3 }, func(v *schematic.View) { v.Ribs[0].Gap = 3 },
		func(v *schematic.View) { v.Ribs[0].Poly[1].X = 2 }, func(v *schematic.View) { v.Ribs[0].Dir = schematic.Point{X: 1, Y: 0} }, func(v *schematic.View) { v.Notches[0].Number = 2 }, func(v *schematic.View) { v.Notches[0].At.Y = 1 }, func(v *schematic.View) { v.Marks[0].What = "" },
		func(v *schematic.View) { v.Marks[0].At.X = 2 }, func(v *schematic.View) { v.Parts[0].At.Y = 1 }, func(v *schematic.View) { v.Arrow = schematic.Point{X: 0, Y: -1} },
	} {
		assert.Equal(t, [2]bool{}, like(change), "%d", i)
	}
	m := &schematic.Made{Views: []schematic.View{panel(), panel()}, Measures: []schematic.Measure{{View: 1, Main: true, Count: 3}}}
	assert.False(t, alike(m, 0, 1, same), "measured otherwise")
	m.Measures[0].Main = false
	assert.True(t, alike(m, 0, 1, same))
	m.Broken = true
	assert.False(t, alike(m, 0, 1, same))
}

// By hand: of four views the last two are alike, and the last like the first: the three lie side by side, beginning with the third.
func TestViewsThatAreAlikeAcrossTheJoin(t *testing.T) {
	as := []likeness{unlike, same, unlike, same}
	assert.Equal(t, 2, acrossJoin(as, mirrored))
	assert.Equal(t, []likeness{mirrored, same, unlike, same}, as)
	as = []likeness{unlike, same, same, same}
	assert.Equal(t, 0, acrossJoin(as, same))
	assert.Equal(t, unlike, as[0], "all are alike, and the first begins")
	assert.Equal(t, 0, acrossJoin([]likeness{unlike, same, same, unlike}, same))
	assert.Equal(t, 0, acrossJoin([]likeness{unlike, same, unlike, same}, unlike))
}
