package alter_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/alter"
	"flatwright/schematic/finding"
	"flatwright/schematic/given"
	"flatwright/schematic/units"
)

const cuffs = `
version: 1
pattern: Cuffs
terms: US
units: cm
sizes: S (M, L)
gauges:
  fabric: 20 sts and 30 rounds over 10 cm in stockinette stitch
  rib: 20 sts and 30 rounds over 10 cm in knit 3, purl 1 rib, relaxed
pieces:
  - piece: Cuff
    make: 2
    worked: in the round, from the hem
    sections:
      - cast on: 40 (44, 48)
        gauge: rib
      - {even: 12 rows, rib: yes, name: rib}
      - {even: 20 rows, gauge: fabric}
      - {even: 8 rows, rib: yes, gauge: rib, name: second rib}
      - bind off: all
`

// 44 sts at 20 over 10 cm are 22 cm; at 19 that is 41.8: 42 sts of fabric, and of the rib 40, the multiple of 4 nearest to 41.8. The count changes in
// the round after the rib and in the round before it (common practice), so that the heights stay.
func TestARibKeepsItsRepeat(t *testing.T) {
	p := given.Text(t, cuffs)
	mine := slices.Clone(p.Gauges)
	for i := range mine {
		mine[i].Stitches = units.Int(19)
	}
	a, found := alter.Alter(p, alter.Request{Size: 1, Gauges: mine})
	require.NotNil(t, a, "%v", found)
	var after, rows []int
	for _, s := range a.Now.Pieces[0].Steps {
		after, rows = append(after, s.After), append(rows, s.Rows)
	}
	assert.Equal(t, []int{40, 40, 42, 42, 40, 40, 0}, after)
	assert.Equal(t, []int{0, 12, 1, 18, 1, 8, 0}, rows, "20 rounds of fabric, the first and the last with the change")
	var told []string
	for _, f := range found {
		if f.Kind == "alter/shape" {
			told = append(told, f.Message)
		}
	}
	assert.Equal(t, []string{"the rib keeps its multiple of 4: cast on 40, and increase 2 across the first round after it",
		"the rib keeps its multiple of 4: decrease 2 across the last round before it"}, told)
}

// Ribs as published patterns call them (common practice).
func TestARibIsReadInItsWords(t *testing.T) {
	for words, multiple := range map[string]string{
		"k2, p2 rib": "4", "k2p2 rib": "4", "K1P1": "2", "2x2 rib": "4", "2 x 2 rib, relaxed": "4", "1/1 rib": "2", "3 by 1 rib": "4", "double rib": "4", "single rib": "2",
		"knit 2, purl 2 rib": "4", "rib": "", "stocking stitch": "", "2x2 cables": "", "k2tog": "",
	} {
		p := given.Text(t, strings.Replace(cuffs, "knit 3, purl 1 rib, relaxed", words, 1))
		mine := slices.Clone(p.Gauges)
		for i := range mine {
			mine[i].Stitches = units.Frac(37, 2)
		}
		_, found := alter.Alter(p, alter.Request{Size: 1, Gauges: mine}) // 44 × 18.5/20 = 40.7: 41, which no rib has
		told := ""
		for _, f := range found {
			if f.Kind == "alter/shape" {
				told = f.Message
			}
		}
		if multiple == "" {
			assert.Empty(t, told, words)
			continue
		}
		assert.Contains(t, told, "keeps its multiple of "+multiple, words)
	}
}

const grown = `
version: 1
pattern: Grown
terms: US
units: cm
sizes: S (M, L)
gauges:
  fabric: 20 sts and 30 rounds over 10 cm in stockinette stitch
pieces:
  - piece: Yoke
    kind: yoke
    worked: in the round, from the neck
    sections:
      - cast on: 80 (88, 96)
      - even: 20 rows
      - divide:
          - {hold: 20 (22, 24), name: arm}
          - {hold: 20 (22, 24), name: front}
          - {hold: 20 (22, 24), name: other arm}
          - {hold: 20 (22, 24), name: back}
  - piece: Sleeve
    worked: in the round, from the neck
    sections:
      - start from: [{piece: Yoke, part: arm}, {add: 4}]
        to: 24 (26, 28)
      - even: 30 rows
      - bind off: all
`

func TestASleeveInAnotherSizeThanTheYokeItGrowsFromSaysSo(t *testing.T) {
	p := given.Text(t, grown)
	a, found := alter.Alter(p, alter.Request{Size: 0, Parts: map[string]int{"Sleeve": 1}})
	assert.Nil(t, a)
	require.Len(t, found, 1, "what follows from it is not told: %v", found)
	assert.Equal(t, finding.Error, found[0].Severity)
	assert.Equal(t, "Sleeve in size M can't go on from Yoke in size S: their stitches differ", found[0].Message)
	assert.Equal(t, "choose size M for Yoke too, and for what goes on from it", found[0].Fix)
	a, _ = alter.Alter(p, alter.Request{Size: 0, Parts: map[string]int{"Sleeve": 1, "Yoke": 1}})
	require.NotNil(t, a)
	assert.Equal(t, 26, a.Now.Pieces[1].Steps[0].After)
}

const point = `
version: 1
pattern: Point
terms: US
units: cm
sizes: M
gauges:
  fabric: 20 sts and 30 rows over 10 cm in stockinette stitch
pieces:
  - piece: Front
    sections:
      - cast on: 68
      - even: 60 rows
      - divide:
          - {part: Left half, stitches: 33, mirror of: Right half}
          - {hold: 2, name: point, edge: point}
          - part: Right half
            stitches: 33
            sections:
              - {decrease: 1, at: right edge, every: 2 rows, times: 15, edge: neck}
              - {bind off: all, edge: shoulder}
`

// 33 sts at 20 over 10 cm are 16.5 cm, 31.35 at 19 and 30 at 18.2: whatever is left of the row, the point keeps stitches to hold.
func TestAPointBetweenTwoHalvesIsNeverWithoutStitches(t *testing.T) {
	p := given.Text(t, point)
	for tenths := int64(140); tenths <= 260; tenths += 5 {
		mine := slices.Clone(p.Gauges)
		mine[0].Stitches = units.Frac(tenths, 10)
		a, found := alter.Alter(p, alter.Request{Gauges: mine})
		require.NotNil(t, a, "%v", found)
		assert.Positive(t, a.Pattern.Pieces[0].Sections[2].(*schematic.Divide).Parts[1].Stitches.Int(0, 0), "%d", tenths)
	}
}
