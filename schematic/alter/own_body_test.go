package alter_test

import (
	"fmt"
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

// The raglan example's back is half of bust and 4 in of ease, at 4 stitches and 2 more. By hand:
// a bust of 37 in is 41 in around, half of it 20½ in; at 18 sts over 4 in these are 92.25: 94 (90 is 2.25 away, 94 1.75).
// 108 cm are 42.52 in: 46.52 around, half 23.26; at 20 sts over 4 in 116.3: 118 (114 is 2.3 away, 118 1.7). Rounded at the pattern's
// gauge before (104.7: 106, which are 23.56 in) it would be 117.8: 118 too; at 40 in and 19 sts: 22 in are 104.5, 106,
// and by way of 98 or 102 (99 at the pattern's gauge: 98, 21.78 in) 103.4: 102.
func TestAMakersOwnBodyGoesThroughTheGrading(t *testing.T) {
	p := given.File(t, "../../examples/windlass-raglan.yaml")
	inches := func(n int64) units.Num { return units.Int(n * 254).Div(units.Int(10)) }
	for _, c := range []struct {
		bust units.Num
		sts  int64 // over 4 in; 0: the pattern's
		want int
	}{
		{inches(34), 0, 86}, // the size's own
		{inches(37), 0, 94},
		{units.Int(1080), 20, 118},
		{inches(40), 19, 106},
	} {
		r := alter.Request{Size: 1, Own: []alter.Own{{Name: "Bust", Length: c.bust}}}
		if c.sts > 0 {
			g := p.Gauges[0]
			g.Stitches = units.Int(c.sts)
			r.Gauges = []schematic.Gauge{g}
		}
		a, found := alter.Alter(p, r)
		require.NotNil(t, a, found)
		assert.Equal(t, c.want, a.Now.Pieces[0].Steps[0].After, "%s mm", c.bust)
		assert.Equal(t, 86, a.Was.Pieces[0].Steps[0].After, "the size as published")
	}
	assert.Equal(t, 86, p.Pieces[0].Sections[0].(*schematic.CastOn).Stitches.Int(1, 0), "the pattern stays as it was")
}

func TestAnOwnBodyThatCannotBeIsAnError(t *testing.T) {
	p := given.File(t, "../../examples/windlass-raglan.yaml")
	for _, c := range []struct {
		own  alter.Own
		kind string
	}{
		{alter.Own{Name: "hip", Length: units.Int(1000)}, "alter/body"},
		{alter.Own{Name: "bust", Length: units.Int(40)}, "grading/impossible"},
	} {
		a, found := alter.Alter(p, alter.Request{Own: []alter.Own{c.own}})
		assert.Nil(t, a)
		require.Len(t, found, 1)
		assert.Equal(t, c.kind, found[0].Kind)
	}
	_, found := alter.Alter(p, alter.Request{Size: 1, Own: []alter.Own{{Name: "head", Length: units.Int(570)}}})
	require.NotEmpty(t, found)
	assert.Contains(t, found[0].Message, "your head changes nothing")
	plain := given.File(t, "../../testdata/altered/coat.yaml")
	a, found := alter.Alter(plain, alter.Request{Own: []alter.Own{{Name: "bust", Length: units.Int(1000)}}})
	assert.Nil(t, a)
	assert.Contains(t, found[0].Message, "no grading")
}

// A hat of ten wedges that is to have thirteen tenths of its stitches has thirteen: 130 stitches, 78 after four rounds of
// thirteen fewer, and 13 in the point.
func TestACrownKeepsItsWedgesAsWide(t *testing.T) {
	p := given.File(t, "../../testdata/altered/hat.yaml")
	g := p.Gauges[0]
	g.Stitches, g.Rows = units.Int(26), g.Rows.Mul(units.Frac(6, 5))
	rib := p.Gauges[1]
	rib.Stitches, rib.Rows = rib.Stitches.Mul(units.Frac(13, 10)), rib.Rows.Mul(units.Frac(6, 5))
	a, found := alter.Alter(p, alter.Request{Gauges: []schematic.Gauge{g, rib}})
	require.NotNil(t, a, found)
	var after []int
	for _, s := range a.Now.Pieces[0].Steps {
		after = append(after, s.After)
	}
	assert.Equal(t, []int{130, 130, 130, 78, 13}, after[:5])
}

// A bust alone is given: 37 in lies three quarters of the way from S (34) to M (38), so that an upper arm of 10 1/4 and 11 in is
// 10 13/16 in there, and 2 in of ease more 12 13/16: 57.66 stitches at 18 over 4 in, evenly 58. At 50 in it is that of 2X, 15 1/2 in: 17 1/2 in are
// 78.75 stitches, 78. The raglan edges stay as like each other as in the sizes beside. A bust that an upper arm of one's own does
// not go with is told, and, where the edges can't be sewn, refused.
func TestWhatIsNotGivenOfABodyFollowsTheBust(t *testing.T) {
	p := given.File(t, "../../examples/windlass-raglan.yaml")
	inches := func(n, of int64) units.Num { return units.Frac(n*254, 10*of) }
	own := func(size int, bust, arm units.Num) (*alter.Altered, finding.List) {
		r := alter.Request{Size: size, Own: []alter.Own{{Name: "bust", Length: bust}}}
		if arm.Sign() > 0 {
			r.Own = append(r.Own, alter.Own{Name: "upper arm", Length: arm})
		}
		return alter.Alter(p, r)
	}
	joins := func(l finding.List) int {
		n := 0
		for _, f := range l {
			if f.Kind == "alter/join" {
				n++
			}
		}
		return n
	}
	upper := func(a *alter.Altered) int {
		s := a.Now.Pieces[2].Steps
		return s[len(s)-3].Before
	}
	for _, c := range []struct {
		bust units.Num
		want int
	}{{inches(34, 1), 56}, {inches(37, 1), 58}, {inches(50, 1), 78}} {
		for size := range p.Sizes.Names {
			a, found := own(size, c.bust, units.Num{})
			require.NotNil(t, a, found)
			assert.Equal(t, c.want, upper(a), "%v in size %d", c.bust, size)
			assert.Zero(t, joins(found), found)
			told := 0
			for _, f := range found {
				if strings.Contains(f.Message, "follow your bust") {
					told++
					assert.Contains(t, f.Message, "upper arm")
				}
			}
			assert.LessOrEqual(t, told, 1)
		}
	}
	a, found := own(1, inches(37, 1), inches(41, 4)) // her arm is that of the size
	require.NotNil(t, a)
	assert.Equal(t, 56, upper(a))
	assert.NotContains(t, fmt.Sprint(found), "upper arm")
	a, found = own(0, inches(62, 1), inches(9, 1)) // the arm of a child
	assert.Nil(t, a)
	assert.Equal(t, 1, joins(found), found)
	assert.True(t, found.Errors())
	a, found = alter.Alter(p, alter.Request{Size: 1, Own: []alter.Own{{Name: "upper arm", Length: inches(21, 2)}}}) // no bust: nothing follows
	require.NotNil(t, a, found)
	assert.NotContains(t, fmt.Sprint(found), "follow")
	assert.Equal(t, 86, a.Now.Pieces[0].Steps[0].After)
}

// By hand: an armhole of 40 rows whose neck begins 10 rows below its top; at half the rows 20, 5 below.
func TestRowsInASumKeepTheirHeight(t *testing.T) {
	p := given.Text(t, `version: 1
pattern: P
terms: US
units: cm
sizes: S (M)
gauges:
  fabric: 20 sts and 20 rows over 10 cm in half double crochet
grading:
  deep: {rows: 20 (22) cm}
pieces:
  - piece: Front
    sections:
      - cast on: 40
      - even: deep - 10 rows
      - divide:
          - {part: Left front, stitches: 10, mirror of: Right front}
          - {leave: 20, name: neck, edge: neck}
          - {part: Right front, stitches: 10, sections: [{even: 10 rows}, {leave: all, edge: shoulder}]}
`)
	g := p.Gauges[0]
	g.Rows = units.Int(10)
	a, found := alter.Alter(p, alter.Request{Gauges: []schematic.Gauge{g}})
	require.NotNil(t, a, "%v", found)
	assert.Equal(t, 15, a.Now.Pieces[0].Steps[1].Rows)
	assert.Equal(t, 5, a.Pattern.Pieces[0].Sections[2].(*schematic.Divide).Parts[2].Sections[0].(*schematic.Even).Rows.Int(0, 0))
}
