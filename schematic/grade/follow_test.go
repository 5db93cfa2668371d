package grade_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/expr"
	"flatwright/schematic/grade"
	"flatwright/schematic/read"
	"flatwright/schematic/units"
)

const followed = `version: 1
pattern: Follow
terms: US
units: cm
sizes: S (M)
bodies:
  bust: 80 (90) cm
gauges:
  fabric: 20 sts and 30 rows over 10 cm in stockinette stitch
  rib: 25 sts and 40 rows over 10 cm in knit 1, purl 1 rib, relaxed
grading:
  ease: 6 cm
  back: {stitches: (bust + ease) / 2, even: yes}
  side: {rows: 30 cm, even: yes}
  edge: 4 sts
  every: 2 rows
  times: 5
pieces:
  - piece: Back
    sections:
      - cast on: back
        gauge: rib
      - even: 5 cm
        rib: yes
        name: hem rib
      - even: side
        gauge: fabric
        width: bust
      - bind off: edge
        at: both edges
        edge: armhole
      - decrease: 1
        at: both edges
        every: every
        times: times
        edge: armhole
      - bind off: all
        edge: neck
`

// lengthsOf are the measurements of the garments of a pattern.
func lengthsOf(p *schematic.Pattern) grade.Worked {
	out := grade.Worked{Lengths: grade.Lengths{}}
	n := p.Sizes.Len()
	for i, g := range bysize.WorkAll(p) {
		out.Found = append(out.Found, len(g.Findings))
		for _, made := range g.Pieces {
			for _, m := range made.Measures {
				l, there := out.Lengths[m.ID]
				if !there {
					l = expr.Graded{Vals: make([]units.Num, n), Has: make([]bool, n)}
				}
				l.Vals[i], l.Has[i] = m.Length, true
				out.Lengths[m.ID] = l
			}
		}
	}
	return out
}

func TestLengthsFollowWhatThePiecesCall(t *testing.T) {
	p, found := read.Pattern("follow.yaml", []byte(followed))
	require.Empty(t, found)
	all := grade.Follows(p, lengthsOf, func(string) bool { return false })
	terms := func(key string) []grade.Term {
		require.Contains(t, all, key)
		return all[key][0].Terms
	}
	one, two := units.Int(1), units.Int(2)
	of := func(by units.Num, gauge string, rows bool, names ...string) grade.Term {
		return grade.Term{By: by, Of: names, Gauge: gauge, Rows: rows}
	}
	// By hand: the bust is all that is cast on; the neck is less what is bound off and decreased at two edges.
	assert.Equal(t, []grade.Term{of(one, "fabric", false, "back")}, terms("back.bust"))
	assert.ElementsMatch(t, []grade.Term{of(one, "fabric", false, "back"), of(two.Neg(), "fabric", false, "edge"), of(two.Neg(), "fabric", false, "times")}, terms("back.neck-width"))
	// The armhole: 2 rows of the bind-off, and the decreases so many times every so many rows.
	assert.ElementsMatch(t, []grade.Term{of(one, "fabric", true, "every", "times"), of(two, "fabric", true)}, terms("back.armhole-depth.left"))
	// Of the length, 20 rows of rib are no value of the grading: 5 cm are 20 rows at 40 over 10 cm.
	assert.ElementsMatch(t, []grade.Term{of(one, "fabric", true, "side"), of(one, "fabric", true, "every", "times"), of(two, "fabric", true), of(units.Int(20), "rib", true)}, terms("back.length"))
	// At another gauge of the rib they are other rows; without stitches bound off there are no rows for that.
	assert.Contains(t, all["back.length"][0].While, grade.Input{Gauge: "rib", Rows: true})
	assert.Contains(t, all["back.length"][0].While, grade.Input{Name: "edge", Positive: true})
	assert.NotContains(t, all["back.length"][0].While, grade.Input{Gauge: "fabric", Rows: true})
	for key, sizes := range all {
		for i, f := range sizes {
			if f.Terms == nil {
				assert.NotEmpty(t, f.While, "%s", key)
			}
			assert.False(t, slices.ContainsFunc(f.While, func(in grade.Input) bool { return in.Name == "ease" }), "%s %d: %v", key, i, f)
		}
	}
}

// A pattern that calls so much that it would take long is left as it is: a thousand pieces in two sizes.
func TestLengthsOfAVeryLargePatternAreLeft(t *testing.T) {
	p, found := read.Pattern("follow.yaml", []byte(followed))
	require.Empty(t, found)
	one := p.Pieces[0]
	for range 1000 {
		p.Pieces = append(p.Pieces, one)
	}
	worked := 0
	assert.Nil(t, grade.Follows(p, func(p *schematic.Pattern) grade.Worked { worked++; return lengthsOf(p) }, func(string) bool { return false }))
	assert.Zero(t, worked)
}
