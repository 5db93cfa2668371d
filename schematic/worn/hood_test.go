package worn

import (
	"cmp"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"flatwright/schematic"
	"flatwright/schematic/read"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func measured(t *testing.T, g *schematic.Garment, name string) schematic.Measure {
	t.Helper()
	for _, m := range g.Worn.Measures {
		if m.Name == name {
			return m
		}
	}
	require.Fail(t, "no such measurement", name)
	return schematic.Measure{}
}

// A hood goes round the head: half of its width stands on the middle of the back's neck.
func TestAHoodStandsOnTheNeck(t *testing.T) {
	g := schematic.Work(pattern(t, "hooded-jacket.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	// The back is 110 + 60 rows of 3.5714 mm high, 607.143 mm; the hood 84 rows, 300 mm. Half of what is picked up along the neck is
	// half of the width of the piece.
	hood := assembled(g).placedAt(t, "Hood")
	lo, hi := box(hood.drawn)
	assert.InDelta(t, 607.143, lo.Y, 0.01)
	assert.InDelta(t, 607.143+300, hi.Y, 0.01)
	assert.InDelta(t, 0, lo.X+hi.X, 0.01)
	whole := 0.0
	for _, m := range g.Pieces {
		if m.Name == "Hood" {
			l, r := bounds(m.Views[0].Outline)
			whole = r.X - l.X
		}
	}
	assert.InDelta(t, whole/2, hi.X-lo.X, 0.01)
	assert.InDelta(t, 300, measured(t, g, "hood height").Length.Float(), 0.01)
	for _, f := range g.Findings {
		assert.False(t, strings.HasPrefix(f.Kind, "worn/"), "%v", f)
	}
}

// Six gores of 24 stitches at the waist and 46 at the hem: three of them show.
func TestHalfOfTheGoresOfARoundShowSideBySide(t *testing.T) {
	g := schematic.Work(pattern(t, "gored-skirt.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	a := assembled(g)
	row := a.rowOf(a.placed[0])
	require.Len(t, row, 3)
	slices.SortFunc(row, func(x, y *panel) int { return cmp.Compare(x.mid(), y.mid()) })
	// A gore widens by 11 stitches at either side, 55 mm, over 12 × 11 = 132 rows, and its lines lie on each other by the chord of
	// their whole length, 140 rows of 3.5714 mm = 500 mm: the next one is turned by twice atan(55 / 500) = 12.554°, and
	// the middle one is upright.
	assert.InDelta(t, 0, degrees(row[1].where), 0.001)
	assert.InDelta(t, 12.554, degrees(row[2].where), 0.002)
	assert.InDelta(t, -12.554, degrees(row[0].where), 0.002)
	assert.InDelta(t, 500, measured(t, g, "length below the waistband").Length.Float(), 0.001)
	// 6 × 46 stitches of 5 mm around the hem; 144 of the rib's 4.5455 mm around the waist.
	assert.InDelta(t, 1380, measured(t, g, "hem").Length.Float(), 0.001)
	assert.InDelta(t, 654.545, measured(t, g, "waist").Length.Float(), 0.001)
}

func TestGoresThatComeToAPointAreDrawnAsTheyAreWorked(t *testing.T) {
	g := gored(t, "increase: 1", "decrease: 1", "every: 12 rows, times: 11", "every: 4 rows, times: 11", "{bind off: all, edge: hem}", "gather:")
	Dress(g)
	assert.Nil(t, g.Worn)
}

// gored is the skirt of six gores in its first size, with other words.
func gored(t *testing.T, words ...string) *schematic.Garment {
	t.Helper()
	text, err := os.ReadFile(garments + "gored-skirt.yaml")
	require.NoError(t, err)
	p, found := read.Pattern("gored.yaml", []byte(strings.NewReplacer(words...).Replace(string(text))))
	require.NotNil(t, p, "%v", found)
	g := schematic.Work(p, 0)
	require.False(t, g.Findings.Errors(), "%v", g.Findings)
	return g
}

// Half of five gores, or of three, is one in the middle and three quarters, or one, of the next on either side: 120 mm wide each at
// the waist, and 230 at the hem.
func TestHalfOfAnOddNumberOfGoresShows(t *testing.T) {
	last := func(i int) []string {
		return []string{"          - {panel: Gore " + strconv.Itoa(i) + ", stitches: 24 (27, 30)}\n", ""}
	}
	for n, words := range map[int][]string{
		5: append(last(6), "cast on: 144 (162, 180)", "cast on: 120 (135, 150)"),
		3: slices.Concat(last(6), last(5), last(4), []string{"cast on: 144 (162, 180)", "cast on: 72 (81, 90)"}),
	} {
		g := gored(t, words...)
		Dress(g)
		require.NotNil(t, g.Worn, n)
		a := assembled(g)
		row := a.rowOf(a.placed[0])
		require.Len(t, row, 3)
		waist, hem := 0.0, 0.0
		for _, q := range row {
			lo, hi := box(q.loop)
			l, r := levelSpan(q, hi.Y)
			waist += r - l
			l, r = levelSpan(q, lo.Y)
			hem += r - l
		}
		assert.InDelta(t, 120*float64(n)/2, waist, 0.01)
		assert.InDelta(t, 230*float64(n)/2, hem, 0.01)
		lo, hi := bounds(g.Worn.Views[0].Outline)
		assert.InDelta(t, 0, lo.X+hi.X, 0.5, "both sides alike")
	}
}

// A cuff that is made twice, along the left edges, lies on the right ones too.
func TestABandThatIsMadeTwiceLiesOnBothSides(t *testing.T) {
	g := schematic.Work(pattern(t, "dolman.yaml"), 0)
	Dress(g)
	require.NotNil(t, g.Worn)
	// Half of 84 + 2 × 16 + 2 × 30 stitches, 176, is 440 mm; the cuff is 20 rows of 3.3333 mm deep.
	lo, hi := bounds(g.Worn.Views[0].Outline)
	assert.InDelta(t, 440+66.667, hi.X, 0.01)
	assert.InDelta(t, -440-66.667, lo.X, 0.01)
	assert.InDelta(t, 880, measured(t, g, "cuff to cuff").Length.Float(), 0.001)
	// The sleeve begins above 24 × 3.3333 + (40 + 32) × 3.5714 mm, and is 44 rows high, front and back.
	assert.InDelta(t, 337.143, measured(t, g, "body to underarm").Length.Float(), 0.002)
	assert.InDelta(t, 2*157.143, measured(t, g, "cuff").Length.Float(), 0.002)
}

// Of four gores one lies in the middle, and half of another on either side of it.
func TestOfFourGoresOneLiesInTheMiddleBetweenTwoHalves(t *testing.T) {
	g := gored(t, "cast on: 144 (162, 180)", "cast on: 96 (108, 120)",
		"          - {panel: Gore 5, stitches: 24 (27, 30)}\n", "", "          - {panel: Gore 6, stitches: 24 (27, 30)}\n", "")
	Dress(g)
	require.NotNil(t, g.Worn)
	a := assembled(g)
	row := a.rowOf(a.placed[0])
	require.Len(t, row, 3)
	whole := 0.0
	for _, q := range row {
		whole += area(q.points())
	}
	// A gore is 120 mm wide at the waist and 230 at the hem, over 132 rows, and 230 for the last 8: 471.429 and 28.571 mm.
	assert.InDelta(t, 2*((120+230)/2.0*471.429+230*28.571), whole, 2000)
	// The halves go on from the middle one symmetrically.
	lo, hi := bounds(g.Worn.Views[0].Outline)
	assert.InDelta(t, 0, lo.X+hi.X, 0.5)
	assert.InDelta(t, 920, measured(t, g, "hem").Length.Float(), 0.001)
}
