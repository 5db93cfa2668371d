package schematic_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
	"flatwright/schematic/units"
)

const openRaglan = `  - piece: Yoke
    kind: yoke
    worked: flat, from the neck
    sections:
      - cast on: 60
      - panels:
          - {panel: Left front, stitches: 10}
          - {panel: Left sleeve, stitches: 8}
          - {panel: Back, stitches: 24}
          - {panel: Right sleeve, stitches: 8}
          - {panel: Right front, stitches: 10}
      - {increase: 1, at: lines, every: 2 rows, times: 20}
      - divide:
          - {hold: 30, name: Left front}
          - {hold: 48, name: Left arm}
          - {hold: 64, name: Back}
          - {hold: 48, name: Right arm}
          - {hold: 30, name: Right front}
  - piece: Body
    worked: flat, from the neck
    sections:
      - start from: [{piece: Yoke, part: Left front}, {add: 6}, {piece: Yoke, part: Back}, {add: 6}, {piece: Yoke, part: Right front}]
      - even: 40 rows
      - bind off: all
`

// At 20 stitches over 10 cm a front is 10 and 30, a sleeve 8 and 48, the back 24 and 64. By hand at 19: 9.5 and 28.5, 7.6 and 45.6, 22.8 and 60.8. Fronts
// of 9 that 19 increases take to 28 have one more in their middle; sleeves of 8 come to 46, a back of 23 to 61. The body's 136 are 129.2: what the yoke and
// two underarms of 6 give is 131, so that 2 go in its first row.
func TestEachPanelKeepsItsWidthAtBothEnds(t *testing.T) {
	p := pieces(t, openRaglan)
	a, found := altered(t, p, 19, 40)
	var told []string
	for _, f := range found {
		told = append(told, f.Message)
	}
	assert.Equal(t, []string{"increase 1 once, in the middle of Left front, Right front, so that the width comes out",
		"2 sts decreased once, at the middle of the row or spread across it, beside the others, so that the count comes out"}, told)
	assert.Equal(t, []int{57, 57, 211, 0}, afters(a, 0))
	assert.Equal(t, []int{131, 129, 129, 0}, afters(a, 1))
	parts := a.Pattern.Pieces[0].Sections[3].(*schematic.Divide).Parts
	for i, n := range []int{29, 46, 61, 46, 29} {
		assert.Equal(t, n, parts[i].Stitches.Int(0, 0), parts[i].Name)
	}
	a, found = altered(t, p, 21, 40)
	assert.Empty(t, found, "11 and 32, 8 and 50, 25 and 67: the lines alone make them")
	assert.Len(t, a.Pattern.Pieces[0].Sections[2].(*schematic.Shape).Shapings, 1)
}

// By hand: at 20 stitches over 10 cm a back of 24 and 2 × 20 + 3 is 33.5 cm at its base; a sleeve of 8 and 2 × 20 stays 24 cm.
func TestAPanelIsShapedAcrossAlone(t *testing.T) {
	yoke, _, _ := strings.Cut(openRaglan, "      - divide")
	p := pieces(t, strings.Replace(yoke, "- {increase: 1, at: lines, every: 2 rows, times: 20}", "- shape: [{increase: 1, at: lines, every: 2 rows, times: 20}, {increase: 3, at: across, panel: Back}]", 1)+"      - bind off: all\n")
	m := schematic.Work(p, 0).Pieces[0]
	assert.Equal(t, 60+8*20+3, m.Steps[2].After)
	assert.Equal(t, []int{8, 1}, m.Steps[2].Places)
	widths := map[string]string{}
	for _, v := range m.Measures {
		if v.Name == "width at base" {
			widths[m.Views[v.View].Name] = units.Decimal(v.Length, 1)
		}
	}
	assert.Equal(t, "335", widths["Back"])
	assert.Equal(t, "240", widths["Left sleeve"])
}
