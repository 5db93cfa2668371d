package alter_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/alter"
	"flatwright/schematic/given"
	"flatwright/schematic/units"
)

const acrossBack = `version: 1
pattern: T
terms: US
units: cm
sizes: S
gauges: {fabric: 16 sts and 12 rows over 10 cm in hdc}
pieces:
  - piece: Back
    worked: flat, from the right side
    sections:
      - cast on: 80
      - even: 12 rows
        top edge: shoulder
      - bind off: 4
        at: top edge
        edge: neck
      - decrease: 1
        at: top edge
        times: 4
        edge: neck
      - even: 12 rows
        top edge: neck
      - increase: 1
        at: top edge
        times: 4
        edge: neck
      - add: 4
        at: top edge
        edge: neck
      - even: 12 rows
        top edge: shoulder
      - bind off: all
`

// By hand: 16 sts over 10 cm make 5 cm of 8 stitches, in a piece whose length lies in its stitches; every width, which is of rows, stays.
func TestABodyWorkedFromSideToSideGrowsLongerByItsStitches(t *testing.T) {
	p := given.Text(t, acrossBack)
	a, found := alter.Alter(p, alter.Request{Body: units.Int(50)})
	require.NotNil(t, a, "%v", found)
	assert.Empty(t, found)
	assert.Equal(t, 88, a.Pattern.Pieces[0].Sections[0].(*schematic.CastOn).Stitches.Int(0, 0))
	was := map[string]units.Num{}
	for _, m := range a.Was.Pieces[0].Measures {
		was[m.ID] = m.Length
	}
	for _, m := range a.Now.Pieces[0].Measures {
		by := units.Num{}
		if strings.Contains(m.Name, "length") || m.Name == "side" {
			by = units.Int(50)
		}
		assert.Equal(t, units.Decimal(was[m.ID].Add(by), 2), units.Decimal(m.Length, 2), m.Name)
	}
	a, found = alter.Alter(p, alter.Request{Body: units.Int(-22)})
	require.NotNil(t, a)
	require.NotEmpty(t, found)
	assert.Equal(t, "Back becomes 2.5 cm shorter, not 2.2 cm: a stitch is 0.63 cm wide", found[0].Message)
	assert.Equal(t, "-3 stitches would make it 1.88 cm shorter", found[0].Fix)
}

// Shaped at both of its long edges, which of them is the hem is not known: nothing is made wider instead.
func TestABodyFromSideToSideThatCantBeLongerSaysSo(t *testing.T) {
	p := given.Text(t, strings.Replace(acrossBack, "add: 4\n        at: top edge", "add: 4\n        at: bottom edge", 1))
	a, found := alter.Alter(p, alter.Request{Body: units.Int(50)})
	require.NotNil(t, a)
	require.Len(t, found, 1)
	assert.Contains(t, found[0].Message, "worked from side to side and shaped at both of its long edges")
	assert.Empty(t, a.Changes)
	_, found = alter.Alter(given.Text(t, acrossBack), alter.Request{Body: units.Int(-400)})
	require.Len(t, found, 1)
	assert.Contains(t, found[0].Message, "it begins with 80 stitches, which are 50 cm")
}

// A shoulder of a piece worked from side to side is as wide as its rows: 12 of 10/12 cm.
func TestAWidthAcrossIsCountedInRows(t *testing.T) {
	g := schematic.Work(given.Text(t, acrossBack), 0)
	n := 0
	for _, m := range g.Pieces[0].Measures {
		if m.Name == "shoulder" {
			n++
			assert.Equal(t, "row", m.Of)
			assert.Equal(t, 12, m.Count)
			assert.Equal(t, "100", units.Decimal(m.Length, 1))
		}
	}
	assert.NotZero(t, n)
}
