package schematic

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// gored is a piece cut into panels of the given stitches, decreased at its lines; the
// panel of each place in odd is decreased at its own lines once more.
func gored(round bool, odd string, counts ...expr.Graded) *Piece {
	p := &Panels{}
	sum := expr.Counts(0, 0)
	for i, c := range counts {
		p.Of = append(p.Of, Panel{Name: "Gore " + string(rune('A'+i)), Stitches: c})
		sum = expr.Counts(sum.Int(0, 0)+c.Int(0, 0), sum.Int(1, 0)+c.Int(1, 0))
	}
	shape := &Shape{Shapings: []Shaping{{By: c(1, 1), At: Lines, Every: c(4, 4), Times: c(5, 5)}}}
	if odd != "" {
		shape.Shapings = append(shape.Shapings, Shaping{By: c(1, 1), At: Lines, Panel: "Gore " + odd, Every: c(8, 8), Times: c(2, 2)})
	}
	return &Piece{Name: "Skirt", Kind: KindBody, Round: round, Sections: []Section{&CastOn{Stitches: sum}, p, shape, &BindOff{All: true}}}
}

func twoSizes(pieces ...*Piece) *Pattern {
	p := plain(pieces...)
	p.Sizes = expr.Sizes{Names: []string{"S", "M"}, Groups: []int{1, 1}}
	return p
}

func c(s, m int) expr.Graded { return expr.Counts(s, m) }

// drawnAs are the views of a piece: each name with how many it stands for.
func drawnAs(m *Made) map[string]int {
	all := map[string]int{}
	for _, v := range m.Views {
		all[v.Name] = max(1, v.Alike)
	}
	return all
}

func TestPanelsThatAreAlikeSideBySideInEverySizeAreDrawnOnce(t *testing.T) {
	for _, k := range []struct {
		name  string
		piece *Piece
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

func corner(outline []Point, p Point) []bool {
	var on []bool
	for _, q := range outline {
		on = append(on, q == p)
	}
	return on
}

// Six gores of 30 stitches of 5 mm are 90 cm around; each is 15 cm wide at the hem.
func TestWhatIsNotDrawnAnyMoreCanStillBeNamed(t *testing.T) {
	p := twoSizes(gored(true, "", c(30, 36), c(30, 36), c(30, 36), c(30, 36), c(30, 36), c(30, 36)))
	m := WorkAll(p)[0].Pieces[0]
	assert.Equal(t, mm(150), find(t, m, "skirt.gore-d.width-at-lower-edge").Length)
	assert.Equal(t, NoView, find(t, m, "skirt.gore-d.width-at-lower-edge").View)
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
	assert.Len(t, m.edgesNamed("Gore C cast-on edge"), 1)
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
