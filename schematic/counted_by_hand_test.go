package schematic_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/given"
	"flatwright/schematic/units"
)

// onePiece is the one piece of sections, of 20 sts and 40 rows over 10 cm: a stitch is 5 mm, a row 2.5.
func onePiece(t *testing.T, sections string) *schematic.Made {
	t.Helper()
	return schematic.Work(given.Text(t, back+sections), 0).Pieces[0]
}

// marksOf are the marks of a piece, each with its place in mm.
func marksOf(m *schematic.Made) []string {
	var out []string
	for _, k := range m.Views[0].Marks {
		out = append(out, fmt.Sprintf("%s %.1f %.1f", k.Name, k.At.X, k.At.Y))
	}
	return out
}

// 80 sts are 400 mm, with x = 0 in their middle; 20 rows are 50 mm. Along the right edge, from row 4 on and every 6: 10, 25 and 40 mm above them. Across the
// row, from stitch 10 on and every 15: 150, 75 and 0 mm to the right of the middle.
func TestSeveralMarksStandApart(t *testing.T) {
	of := func(mark string) []string {
		return marksOf(onePiece(t, "      - cast on: 80\n      - even: 20 rows\n      - "+mark+"\n      - even: 20 rows\n      - bind off: all\n"))
	}
	assert.Equal(t, []string{"buttonhole 200.0 60.0", " 200.0 75.0", " 200.0 90.0"}, of("{mark: buttonhole, at: right edge, count: 3, first: 4, apart: 6, along: yes}"))
	assert.Equal(t, []string{"buttonhole -200.0 60.0", " -200.0 75.0"}, of("{mark: buttonhole, at: left edge, count: 2, first: 4, apart: 6, along: yes}"))
	assert.Equal(t, []string{"buttonhole 150.0 50.0", " 75.0 50.0", " 0.0 50.0"}, of("{mark: buttonhole, at: right edge, count: 3, first: 10, apart: 15}"))
	assert.Equal(t, []string{"buttonhole 200.0 50.0", " 200.0 50.0"}, of("{mark: buttonhole, at: right edge, count: 2}"), "without numbers they are at the edge")
}

// A waist and a mark with a line go across all 400 mm of their row, at 50 mm.
func TestAMarkedLineGoesAcross(t *testing.T) {
	for mark, name := range map[string]string{"{mark: waist}": "waist", "{mark: pocket, line: yes}": "pocket"} {
		m := onePiece(t, "      - cast on: 80\n      - even: 20 rows\n      - "+mark+"\n      - even: 20 rows\n      - bind off: all\n")
		assert.Empty(t, m.Views[0].Marks)
		i := slices.IndexFunc(m.Views[0].Lines, func(l schematic.Line) bool { return l.Kind == schematic.LineMark })
		require.GreaterOrEqual(t, i, 0, mark)
		l := m.Views[0].Lines[i]
		assert.Equal(t, name, l.Name)
		assert.Equal(t, []float64{-200, 50, 200, 50}, []float64{l.A.X, l.A.Y, l.B.X, l.B.Y})
	}
}

// 80 sts of 5 mm lie from -200 to 200 mm, and 20 rows are 50 mm high: the line stands at 0, from the bottom to the top.
func TestTheCentreLineStandsInTheMiddle(t *testing.T) {
	p := given.Text(t, back[:len(back)-len("    sections:\n")]+"    centre: line\n    sections:\n      - cast on: 80\n      - even: 20 rows\n      - bind off: all\n")
	var lines []schematic.Line
	for _, l := range schematic.Work(p, 0).Pieces[0].Views[0].Lines {
		if l.Kind == schematic.LineCentre {
			lines = append(lines, l)
		}
	}
	require.Len(t, lines, 1)
	assert.Equal(t, []float64{0, 0, 0, 50}, []float64{lines[0].A.X, lines[0].A.Y, lines[0].B.X, lines[0].B.Y})
}

// Both sleeves, of 30 bound-off sts each, into the armholes of a front and a back, of 30 rows at each of two sides: 60 and 120. One sleeve into the left
// armholes: 30 and 60.
func TestASeamCountsAllPiecesToMake(t *testing.T) {
	of := func(into string) schematic.Seam {
		body := "    sections:\n      - cast on: 80\n      - even: 20 rows\n      - {even: 30 rows, left edge: armhole, right edge: armhole}\n      - {bind off: all, edge: top}\n"
		p := given.Text(t, "version: 1\npattern: Two\nterms: UK\nunits: cm\nsizes: S\ngauges:\n  fabric: 20 sts and 40 rows over 10 cm\npieces:\n  - piece: Back\n"+body+"  - piece: Front\n"+body+
			"  - piece: Sleeve\n    make: 2\n    sections:\n      - cast on: 20\n      - {increase: 1, at: both edges, every: 4 rows, times: 5}\n      - {bind off: all, edge: sleeve top}\njoins:\n  - {sew: Sleeve sleeve top, into: ["+into+"]}\n")
		g := schematic.Work(p, 0)
		require.Len(t, g.Seams, 1)
		return g.Seams[0]
	}
	s := of("Front armhole, Back armhole")
	assert.Equal(t, []int{60, 120}, []int{s.SewCount, s.IntoCount})
	assert.Equal(t, []string{"300", "300"}, []string{s.SewLength.String(), s.IntoLength.String()}, "60 sts of 5 mm, 120 rows of 2.5")
	s = of("Front left armhole, Back left armhole")
	assert.Equal(t, []int{30, 60}, []int{s.SewCount, s.IntoCount})
	assert.Equal(t, []string{"150", "150"}, []string{s.SewLength.String(), s.IntoLength.String()})
}

// Ends are sewn in the middles of as many equal shares: an eighth, three, five and seven eighths for four. Two edges have two each; the half of a round that shows
// has half of them, of three two; two in a round lie at its sides.
func TestEndsAreSpreadAlongTheirEdge(t *testing.T) {
	shares := func(places, edges int, half bool) []string {
		var out []string
		for _, n := range (&schematic.Join{Places: places}).Spots(&schematic.Made{Views: []schematic.View{{Half: half}}}, &schematic.Edge{}, edges) {
			out = append(out, n.String())
		}
		return out
	}
	of := func(n ...units.Num) []string {
		var out []string
		for _, k := range n {
			out = append(out, k.String())
		}
		return out
	}
	f := units.Frac
	assert.Equal(t, of(f(1, 8), f(3, 8), f(5, 8), f(7, 8)), shares(4, 1, false))
	assert.Equal(t, of(f(1, 4), f(3, 4)), shares(4, 2, false))
	assert.Equal(t, of(f(1, 6), f(3, 6), f(5, 6)), shares(3, 2, false), "three do not go on two edges")
	assert.Equal(t, of(units.Num{}, units.Int(1)), shares(2, 1, true))
	assert.Equal(t, of(f(1, 4), f(3, 4)), shares(3, 1, true))
	assert.Equal(t, of(f(1, 2)), shares(1, 1, true))
}

// Over 3: 70 sts are 23 × 3 and 1, so that 69 or 72 come out; 2 in one and 1 in each of 2 make 4 of 3, 93 of 70. Of 72 they make 96.
func TestARepeatCountsItsRow(t *testing.T) {
	grown := func(cast int) (int, []string) {
		g := schematic.Work(given.Text(t, back+fmt.Sprintf("      - cast on: %d\n      - even: 2 rows\n      - repeat row: 2 in 1, 1 in each of 2\n      - bind off: all\n", cast)), 0)
		var told []string
		for _, f := range g.Findings {
			told = append(told, f.Have, f.Fix)
		}
		return g.Pieces[0].Steps[2].After, told
	}
	n, told := grown(70)
	assert.Equal(t, 93, n)
	assert.Equal(t, []string{"70 = 23 × 3 + 1", "have 69 or 72 stitches before it, or say `rest: worked even`"}, told)
	n, told = grown(72)
	assert.Equal(t, 96, n)
	assert.Empty(t, told)
}

// Eight short rows are four pairs and turn three times at each end before the last: over 20 sts in the middle, 19 of them can go in 3 turns at 2 ends, 3 at each; at one
// edge 6.
func TestShortRowsTurnWhereThereAreStitches(t *testing.T) {
	told := func(at string, step int) []string {
		var out []string
		for _, f := range schematic.Work(given.Text(t, back+fmt.Sprintf("      - cast on: 80\n      - even: 2 rows\n      - {short rows: 8 rows, over: 20, at: %s, step: %d}\n      - even: 4 rows\n      - bind off: all\n", at, step)), 0).Findings {
			if f.Kind == "arithmetic/short-rows" {
				out = append(out, f.Message, f.Have, f.Want)
			}
		}
		return out
	}
	assert.Empty(t, told("middle", 3))
	assert.Equal(t, []string{"4 stitches fewer at each turn uses up the 20 stitches before the 8 rows are done", "6 turns × 4 stitches", "at most 3 at a turn"}, told("middle", 4))
	assert.Empty(t, told("left edge", 6))
	assert.Equal(t, []string{"7 stitches fewer at each turn uses up the 20 stitches before the 8 rows are done", "3 turns × 7 stitches", "at most 6 at a turn"}, told("left edge", 7))
}
