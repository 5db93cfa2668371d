package alter_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/alter"
	"flatwright/schematic/given"
	"flatwright/schematic/units"
)

// A body that is shaped from hem to underarm: 24 rows in and 36 out at 30 rows over 10 cm are 8 and 12 cm. 5 cm are 15 rows: by their
// heights 6 and 9, so that 30 and 45 rows make 25 cm, and its shapings are spread over them: 6 over 30 rows,
// by twos as published, every 6 rows 3 times and every 4 rows 3 times; 35 of 36 rows become 44 of 45: every 9 rows 4 times, then 8 rows.
// 17 cm shorter is more than three quarters of 20 cm: that can't be.
func TestABodyShapedAllTheWayIsMadeLongerInAllItsStretches(t *testing.T) {
	p := given.Text(t, `version: 1
pattern: Waisted
terms: UK
units: cm
sizes: S
gauges:
  fabric: 20 sts and 30 rows over 10 cm
pieces:
  - piece: Back
    sections:
      - cast on: 90
      - decrease: 1
        at: both edges
        every: 4 rows
        times: 6
      - increase: 1
        at: both edges
        every: 7 rows
        times: 5
        rows: 36
      - bind off: 4
        at: both edges
        edge: armhole
      - even: 50 rows
      - bind off: all
`)
	a, told := alter.Alter(p, alter.Request{Body: units.Int(50)})
	require.NotNil(t, a, told)
	assert.Empty(t, told)
	_, rows := counts(a.Now.Pieces[0])
	assert.Equal(t, []int{0, 30, 45, 2, 50, 0}, rows)
	var every [][2]int
	for _, s := range a.Pattern.Pieces[0].Sections {
		if q, ok := s.(*schematic.Shape); ok {
			h := q.Shapings[0]
			for _, r := range append([]schematic.Spacing{{Every: h.Every, Times: h.Times}}, h.Then...) {
				every = append(every, [2]int{r.Every.Int(0, 0), r.Times.Int(0, 0)})
			}
		}
	}
	assert.Equal(t, [][2]int{{6, 3}, {4, 3}, {9, 4}, {8, 1}}, every)
	_, told = alter.Alter(p, alter.Request{Body: units.Int(-170)})
	require.Len(t, told, 1)
	assert.Equal(t, "Back can't become 17 cm / 6¾ in shorter: its stretches outside armholes and rib are 20 cm / 7¾ in together", told[0].Message)
}

// 54 rounds of a skirt are 18 cm; 3 cm are 9 more.
func TestASkirtIsABodyWhereThereIsNoOther(t *testing.T) {
	p := given.Text(t, `version: 1
pattern: Plain Skirt
terms: UK
units: cm
sizes: S
gauges:
  fabric: 20 sts and 30 rounds over 10 cm
pieces:
  - piece: Skirt
    worked: in the round, from the waist
    sections:
      - cast on: 140
      - even: 54 rows
      - bind off: all
`)
	a, told := alter.Alter(p, alter.Request{Body: units.Int(30)})
	require.NotNil(t, a, told)
	_, rows := counts(a.Now.Pieces[0])
	assert.Equal(t, 63, rows[1])
}

// By hand: at 28 rounds over 10 cm 5 cm are 14 rounds, in the leg: the heel has its rows.
func TestASockIsMadeLongerInItsLeg(t *testing.T) {
	p := given.Text(t, "version: 1\npattern: P\nterms: US\nunits: cm\nsizes: one\ngauges:\n  fabric: 28 sts and 28 rounds over 10 cm in stockinette stitch\npieces:\n"+
		"  - piece: Sock\n    worked: in the round, from the hem\n    sections:\n      - cast on: 48\n      - even: 40 rows\n"+
		"      - divide: [{part: Heel, stitches: 24, sections: [{even: 50 rows}, {hold: all}]}, {hold: 24, name: instep}]\n")
	a, found := alter.Alter(p, alter.Request{Body: units.Int(50)})
	require.NotNil(t, a, "%v", found)
	assert.Equal(t, 54, a.Now.Pieces[0].Steps[1].Rows)
	assert.Equal(t, 50, a.Pattern.Pieces[0].Sections[2].(*schematic.Divide).Parts[0].Sections[0].(*schematic.Even).Rows.Int(0, 0))
	assert.Empty(t, found)
}
