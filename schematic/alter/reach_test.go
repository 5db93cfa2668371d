package alter_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/alter"
	"flatwright/schematic/given"
	"flatwright/schematic/read"
	"flatwright/schematic/units"
)

// at alters the one size of a pattern to so many stitches and rows over 10 cm.
func at(t *testing.T, src string, sts, rows units.Num) (*alter.Altered, string) {
	t.Helper()
	p, found := read.Pattern("own.yaml", []byte("version: 1\npattern: Own\nterms: UK\nunits: cm\nsizes: S\ngauges:\n  fabric: 20 sts and 30 rows over 10 cm\npieces:\n"+src))
	require.False(t, found.Errors(), "%v", found)
	g := p.Gauges[0]
	g.Stitches, g.Rows = sts, rows
	a, told := alter.Alter(p, alter.Request{Gauges: []schematic.Gauge{g}})
	require.NotNil(t, a, told)
	text := ""
	for _, f := range told {
		text += fmt.Sprintln(f.Piece, f.Message, f.Fix)
	}
	return a, text
}

func counts(m *schematic.Made) (after, rows []int) {
	for _, s := range m.Steps {
		after, rows = append(after, s.After), append(rows, s.Rows)
	}
	return after, rows
}

// 40 rows to an underarm that begins at the right edge, a right-side row, are 43 at 32.25 rows where 30 were. From a right-side row
// 42 or 44 would be needed; from a wrong-side row it is 43. 60 rows in all are 64.5: 21 or 22 of 20. The back beside it has 43 too.
func TestAPieceMayBeginOnTheOtherSideSoThatItsRowsComeOut(t *testing.T) {
	a, told := at(t, `  - piece: Front
    sections:
      - cast on: 40
      - even: 40 rows
      - bind off: 5
        at: right edge
        edge: armhole
      - even: 19 rows
      - bind off: all
  - piece: Back
    sections:
      - cast on: 40
      - even: 40 rows
      - bind off: 5
        at: both edges
        edge: armhole
      - even: 18 rows
      - bind off: all
joins:
  - {sew: Front right side, to: Back right side}
`, units.Int(20), units.Frac(129, 4))
	for i, m := range a.Now.Pieces {
		_, rows := counts(m)
		assert.Equal(t, 43, rows[1], m.Name)
		assert.True(t, a.Pattern.Pieces[i].FirstWS)
	}
	assert.Contains(t, told, "begin with a wrong-side row")
	assert.False(t, a.Before.Pieces[0].FirstWS)
}

// 41 stitches are 45.1 at 22 where 20 were, and 33 after bind-offs of 4 at both edges 36.3. 45 less two fours are 37, 0.7 of a stitch off;
// with one decreased at the middle of the next row, 36. Rows stay 20 in all.
func TestAnOddStitchBetweenTwoEdgesGoesAtTheMiddle(t *testing.T) {
	a, told := at(t, `  - piece: Back
    sections:
      - cast on: 41
      - even: 30 rows
      - bind off: 4
        at: both edges
      - even: 20 rows
      - bind off: all
`, units.Int(22), units.Int(30))
	after, rows := counts(a.Now.Pieces[0])
	assert.Equal(t, []int{45, 45, 37, 36, 36}, after[:5])
	assert.Equal(t, []int{1, 19}, rows[3:5])
	assert.Contains(t, told, "1 st decreased once, at the middle of the row")
}

// Three steps of two rows each are 6 rows, 7 at 35 where 30 were: 6 or 8 can be. It is told by how much, why, and what the other choice is.
func TestWhatStandsInTheWayOfASlopeIsTold(t *testing.T) {
	_, told := at(t, `  - piece: Back
    kind: back
    sections:
      - cast on: 60
      - even: 30 rows
      - bind off: 6
        at: both edges
        every: 2 rows
        times: 3
        edge: shoulder
      - bind off: all
        edge: neck
`, units.Int(20), units.Int(35))
	assert.Contains(t, told, "its steps take 2 rows each")
	assert.Contains(t, told, "-2 rows would make it 1.5 cm")
}

// A right and a left front edge that are alike keep one rate, at any gauge: no maker picks up 7 in every 10 along the one and 5 in every 7
// along the other. The neck between them takes what the two leave.
func TestARightAndALeftEdgeKeepOneRate(t *testing.T) {
	for sts := int64(13); sts < 31; sts++ {
		a, told := at(t, `  - piece: Front
    sections:
      - cast on: 40
      - even: 91 rows
      - bind off: all
        edge: neck
  - piece: Band
    kind: band
    onto:
      - Front right side, 3 in every 4 rows
      - Front neck, 1 in every 1 sts
      - Front left side, 3 in every 4 rows
    sections:
      - even: 6 rows
      - bind off: all
`, units.Int(sts), units.Int(41-sts))
		onto := a.Pattern.Pieces[1].Onto
		require.Len(t, onto, 3)
		assert.Equal(t, [2]int{onto[0].Pick, onto[0].Of}, [2]int{onto[2].Pick, onto[2].Of}, "%d sts: %s", sts, told)
	}
}

// 50 stitches are 55 at 22 where 20 were, and 42 are 46.2: of the 9 that go, two at a time four times are 8, and three at a time three times 9.
// At both edges 60 are 66 and 44 are 48.4: 9 at each edge.
func TestShapingsOfTwoStitchesComeOutToTheStitch(t *testing.T) {
	for edge, want := range map[string][3]int{"right edge": {50, 55, 46}, "both edges": {60, 66, 48}} {
		a, told := at(t, fmt.Sprintf(`  - piece: Front
    sections:
      - cast on: %d
      - even: 30 rows
      - {decrease: 2, at: %s, every: 2 rows, times: 4}
      - even: 10 rows
      - bind off: all
`, want[0], edge), units.Int(22), units.Int(30))
		after, rows := counts(a.Now.Pieces[0])
		assert.Equal(t, []int{want[1], want[1], want[2], want[2], 0}, after, edge)
		assert.Equal(t, []int{0, 30, 8, 10, 0}, rows, edge)
		assert.Empty(t, told, edge)
	}
}

// By hand: 64 rows of size M at 5 mm are 32 cm and 60 of size S 30 cm: four rows fewer, or the front in M too. Shoulders of 22 and 20 stitches at 5 mm, two of them, are 2 cm apart.
func TestASewnPieceInAnotherSizeSaysHowItJoins(t *testing.T) {
	piece := func(name string) string {
		return "  - piece: " + name + "\n    sections:\n      - cast on: 60 (66)\n      - even: 60 (64) rows\n      - divide:\n          - {bind off: 20 (22), edge: shoulder}\n          - {bind off: 20 (22), edge: neck}\n          - {bind off: 20 (22), edge: shoulder}\n"
	}
	p := given.Text(t, "version: 1\npattern: Vest\nterms: US\nunits: cm\nsizes: S (M)\ngauges: {fabric: 20 sts and 20 rows over 10 cm in sc}\npieces:\n"+piece("Back")+piece("Front")+
		"joins:\n  - {sew: Back side, to: Front side}\n  - {sew: Front shoulder, to: Back shoulder}\n")
	a, found := alter.Alter(p, alter.Request{Size: 0, Parts: map[string]int{"Back": 1}})
	require.NotNil(t, a)
	var fixes []string
	for _, f := range found {
		if f.Kind == "alter/join" {
			fixes = append(fixes, f.Fix)
		}
	}
	assert.Equal(t, []string{"choose size M for Front too, or work 4 rows fewer along Back side, where nothing is shaped",
		"choose size M for Front too, or ease in 2 cm / ¾ in"}, fixes)
}
