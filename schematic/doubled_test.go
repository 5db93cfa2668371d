package schematic_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/schematic"
	"flatwright/schematic/alter"
	"flatwright/schematic/given"
	"flatwright/schematic/random"
	"flatwright/schematic/units"
)

// 10 short rows turn 4 times, 3 sts earlier each: 12 sts. At twice the stitches and rows they are 20 rows that turn 9 times, and leave 24 sts:
// 2.7, so 3 sts earlier each. At the same stitches and 2.6 times the rows they are 26 and turn 12 times: 1 st earlier each.
func TestShortRowsLeaveAsMuchAsTheyLeft(t *testing.T) {
	p := given.Text(t, `version: 1
pattern: Tail
terms: UK
units: cm
sizes: S
gauges:
  fabric: 20 sts and 30 rows over 10 cm
pieces:
  - piece: Back
    sections:
      - cast on: 80
      - even: 10 rows
      - {short rows: 10 rows, over: 60, at: middle, step: 3}
      - bind off: all
`)
	for _, k := range []struct{ sts, rows, turned, over, step int64 }{{40, 60, 20, 120, 3}, {20, 78, 26, 60, 1}, {20, 30, 10, 60, 3}} {
		g := p.Gauges[0]
		g.Stitches, g.Rows = units.Int(k.sts), units.Int(k.rows)
		a, told := alter.Alter(p, alter.Request{Gauges: []schematic.Gauge{g}})
		require.NotNil(t, a, told)
		s, ok := a.Pattern.Pieces[0].Sections[2].(*schematic.ShortRows)
		require.True(t, ok)
		assert.Equal(t, [3]int64{k.turned, k.over, k.step}, [3]int64{int64(s.Rows.Int(0, 0)), int64(s.Over.Int(0, 0)), int64(s.Step.Int(0, 0))})
	}
}

// At twice the stitches and twice the rows every count is there twice over, and every measurement as it was: but for the rounds of a crown, of
// which there are whole ones, bands and cuffs that begin with a row of their own or go by a rate, and turns of short rows in whole stitches. Where an odd number of rows is twice over, what
// must begin at one edge comes a row sooner or later.
func TestAGarmentOfHalfTheGaugeIsAsLargeInEveryPart(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := random.Pattern(random.Options{Sizes: 1, Pieces: 4}).Draw(t, "p")
		var mine []schematic.Gauge
		for _, g := range p.Gauges {
			g.Stitches, g.Rows = g.Stitches.Times(2), g.Rows.Times(2)
			mine = append(mine, g)
		}
		a, found := alter.Alter(p, alter.Request{Gauges: mine})
		require.NotNil(t, a, found)
		for k, m := range a.Now.Pieces {
			was := map[string]units.Num{}
			for _, s := range a.Was.Pieces[k].Measures {
				was[s.ID] = s.Length
			}
			for _, s := range m.Measures {
				w, ok := was[s.ID]
				if !ok || m.Kind == schematic.KindHat || m.Kind == schematic.KindBand || s.Name == "width at top" || s.Name == "cuff" || s.Name == "depth of rib" {
					continue
				}
				slack := units.Frac(1, 100)
				if s.Axis != schematic.Horizontal && atOneEdge(m.Piece.Sections) {
					for _, g := range a.Pattern.Gauges {
						slack = units.Max(slack, g.RowHeight().Add(units.Frac(1, 100)))
					}
				}
				assert.False(t, slack.Less(w.Sub(s.Length).Abs()), "%s %s: %s, %s", m.Name, s.Name, units.Decimal(w, 2), units.Decimal(s.Length, 2))
			}
		}
	})
}

// atOneEdge reports whether something in sections or their parts is bound off at one edge.
func atOneEdge(list []schematic.Section) bool {
	return slices.ContainsFunc(list, func(s schematic.Section) bool {
		switch q := s.(type) {
		case *schematic.BindOff:
			return q.At == schematic.LeftEdge || q.At == schematic.RightEdge
		case *schematic.Divide:
			return slices.ContainsFunc(q.Parts, func(p schematic.Part) bool { return atOneEdge(p.Sections) })
		}
		return false
	})
}
