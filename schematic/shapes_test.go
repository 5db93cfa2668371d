package schematic_test

import (
	"testing"

	"flatwright/schematic"
	"flatwright/schematic/given"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// worked is the only piece of a pattern of one size, at 20 sts and 20 rows over 10 cm: 5 mm each way.
func worked(t *testing.T, piece string) *schematic.Made {
	t.Helper()
	g := schematic.Work(given.Text(t, "version: 1\npattern: T\nterms: US\nunits: cm\nsizes: One\ngauges:\n  fabric: 20 sts and 20 rows over 10 cm in hdc\npieces:\n"+piece), 0)
	require.Len(t, g.Pieces, 1)
	return g.Pieces[0]
}

func lengths(m *schematic.Made) map[string]float64 {
	out := map[string]float64{}
	for _, s := range m.Measures {
		out[s.Name] = s.Length.Float()
	}
	return out
}

func TestShortRowsOfARoundRaiseTheLayerBehindAndNotchNothing(t *testing.T) {
	m := worked(t, `
  - piece: Yoke
    worked: in the round, from the neck
    sections:
      - cast on: 80
      - even: 4 rows
      - {short rows: 6 rows, over: 40, at: middle, step: 4}
      - even: 20 rows
      - bind off: all
`)
	v := m.Views[0]
	assert.Len(t, v.Outline[0], 4, "a rectangle: %v", v.Outline[0])
	assert.Equal(t, 30.0, v.Raised.Float(), "6 rows of 5 mm")
	l := lengths(m)
	assert.Equal(t, 120.0, l["front yoke depth"], "4 + 20 rows")
	assert.Equal(t, 150.0, l["yoke depth"], "and 6 short rows behind")
	assert.Equal(t, 30.0, l["short rows"])
	assert.Equal(t, 30, m.Rows)
	// 24 rows of 80 stitches, and 6 rows of 40 down to 40 - 2 × 2 × 4 = 24: 32 on the mean; 25 mm² each.
	assert.Equal(t, float64((24*80+6*32)*25), m.Area.Float())
	top := 0.0
	for _, line := range v.Lines {
		if line.Kind == schematic.LineBehind {
			top = max(top, line.A.Y)
		}
	}
	assert.Equal(t, 30.0, top, "the neck behind stands above that in front, at 0")
}

func TestRowsAfterAMitreAreDrawnMeasuredAndCounted(t *testing.T) {
	m := worked(t, `
  - piece: Shawl
    kind: piece
    sections:
      - cast on: 40
      - {mitre: 90 degrees, increase: 2, every: 1 row, times: 10}
      - even: 30 rows
      - {increase: 1, at: both edges, every: 2 rows, times: 5}
      - bind off: all
`)
	require.Len(t, m.Views, 3, "the mitre, and its two arms")
	assert.Equal(t, 10+30+10, m.Rows)
	l := lengths(m)
	assert.Equal(t, 200.0, l["length"], "30 + 10 rows of either arm")
	assert.Equal(t, 2*35*5.0, l["width at upper edge"], "the whole row: half of 40 + 20 stitches, and 5 more at its outer edge, twice")
	// 10 rows of 40 to 60 stitches, 50 on the mean; 30 of 60; 10 of 60 to 70, 65 on the mean.
	assert.Equal(t, float64((10*50+30*60+10*65)*25), m.Area.Float())
}

func TestAMitreThatIsBoundOffIsOneDrawing(t *testing.T) {
	m := worked(t, `
  - piece: Square
    kind: piece
    sections:
      - cast on: 40
      - {mitre: 90 degrees, decrease: 2, every: 1 row, times: 19}
      - bind off: all
`)
	assert.Len(t, m.Views, 1)
}

func TestAPieceFoldedAtItsCentreIsNotFoldedInEachHalf(t *testing.T) {
	m := worked(t, `
  - piece: Hood
    centre: fold
    sections:
      - cast on: 40
      - even: 10 rows
      - panels:
          - {panel: Right half, stitches: 20}
          - {panel: Left half, stitches: 20}
      - {decrease: 1, at: lines, times: 5}
      - bind off: all
`)
	for _, v := range m.Views {
		folds := 0
		for _, l := range v.Lines {
			if l.Kind == schematic.LineFold {
				folds++
			}
		}
		if v.Panel {
			assert.Zero(t, folds, "the centre lies between the halves")
		} else {
			assert.Equal(t, 1, folds)
		}
	}
}

func TestTheTradesNamesOfKinds(t *testing.T) {
	round := func(name, kind, end string) map[string]float64 {
		return lengths(worked(t, "  - piece: "+name+"\n    kind: "+kind+"\n    worked: in the round, "+end+"\n    sections:\n      - cast on: 40\n      - {increase: 4, at: across, every: 2 rows, times: 5}\n      - bind off: all\n"))
	}
	assert.Equal(t, map[string]float64{"waist": 200, "hem": 300, "length": 50}, round("It", "skirt", "from the waist"))
	assert.Equal(t, map[string]float64{"cuff": 200, "tip": 300, "length": 50}, round("It", "mitten", "from the hem"))
	assert.Equal(t, map[string]float64{"lower edge": 200, "opening": 300, "height": 50}, round("It", "bag", "from the hem"))
}

// The body of a raglan from the neck in one piece is measured from the underarm down; its yoke has a depth of its own.
func TestABodyBelowItsYokeIsMeasuredToTheUnderarm(t *testing.T) {
	m := worked(t, `
  - piece: Body
    kind: body
    worked: in the round, from the neck
    sections:
      - cast on: 40
      - panels: [{panel: front, stitches: 15}, {panel: left sleeve, stitches: 5}, {panel: back, stitches: 15}, {panel: right sleeve, stitches: 5}]
      - {increase: 1, at: lines, every: 2 rows, times: 5, edge: raglan}
      - divide: [{part: front, stitches: 25}, {hold: 15, name: left sleeve}, {part: back, stitches: 25}, {hold: 15, name: right sleeve}]
      - join parts: [front, {add: 3}, back, {add: 3}]
        round: yes
      - even: 30 rows
      - bind off: all
`)
	l := lengths(m)
	assert.Equal(t, 150.0, l["length to underarm"], "30 rows")
	assert.NotContains(t, l, "length")
}
