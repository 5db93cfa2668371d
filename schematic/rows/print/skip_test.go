package print_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/rows"
	"flatwright/schematic/rows/print"
	"flatwright/schematic/units"
)

// sleeve is a sleeve in three sizes, shaped in one or two runs.
func sleeve(t require.TestingT, every, times, thenEvery, thenTimes expr.Graded) (*schematic.Pattern, []*schematic.Garment) {
	p := &schematic.Pattern{Title: "Sleeve", Sizes: expr.Sizes{Names: []string{"S", "M", "L"}, Groups: []int{1, 2}}, Steps: units.Usual,
		Gauges: []schematic.Gauge{{Name: "fabric", Stitches: units.Int(20), Rows: units.Int(28), Over: units.Int(100)}},
		Pieces: []*schematic.Piece{{Name: "Sleeve", Sections: []schematic.Section{
			&schematic.CastOn{Stitches: expr.Counts(40, 44, 48)},
			&schematic.Even{Amount: schematic.Amount{Rows: expr.Counts(8, 8, 8)}},
			&schematic.Shape{Shapings: []schematic.Shaping{{Increase: true, By: expr.Counts(1, 1, 1), At: schematic.BothEdges, Every: every, Times: times,
				Then: []schematic.Spacing{{Every: thenEvery, Times: thenTimes}}}}},
			&schematic.Even{Amount: schematic.Amount{Rows: expr.Counts(0, 4, 6)}},
			&schematic.BindOff{All: true},
		}}}}
	gs := bysize.WorkAll(p)
	for _, g := range gs {
		require.Empty(t, g.Findings)
	}
	return p, gs
}

// reads holds that a printed text reads back whole, with no finding, and with the pattern's counts.
func reads(t require.TestingT, text string, p *schematic.Pattern, gs []*schematic.Garment) {
	x := rows.Read("printed", []byte(text), rows.Options{})
	rep := rows.Check(x, rows.Options{})
	rep.Findings = slices.DeleteFunc(rep.Findings, func(f finding.Finding) bool { // the pattern says such a rib itself
		return strings.Contains(f.Message, "do not divide into the rib's")
	})
	require.Empty(t, rep.Findings, text)
	require.Equal(t, rep.Read.Lines, rep.Read.Whole, text)
	require.Empty(t, rows.Against(x, p, gs), text)
}

func TestSizesThatSkipARunOfShapingHaveADash(t *testing.T) {
	c := expr.Counts
	for _, k := range []struct {
		name                              string
		every, times, thenEvery, thenTime expr.Graded
		want                              string
	}{
		{"the first run", c(6, 6, 6), c(0, 3, 2), c(4, 4, 4), c(5, 2, 4),
			"Inc 1 st at each end every – (6, 6) rows – (3, 2) times, then every 4 rows 5 (2, 4) times, over 20 (26, 28) rows. (50 (54, 60) sts)"},
		{"the second run", c(6, 6, 6), c(5, 3, 2), c(1, 1, 1), c(0, 0, 4),
			"Inc 1 st at each end every 6 rows 5 (3, 2) times, then every row – (–, 4) times, over 30 (18, 16) rows. (50 (50, 60) sts)"},
		{"a run that no size has", c(6, 6, 6), c(5, 3, 2), c(4, 4, 4), c(0, 0, 0),
			"Inc 1 st at each end every 6 rows 5 (3, 2) times, over 30 (18, 12) rows. (50 (50, 52) sts)"},
		{"all of it, in one size", c(6, 6, 6), c(0, 3, 2), c(4, 4, 4), c(0, 0, 4),
			"Inc 1 st at each end every – (6, 6) rows – (3, 2) times, then every – (–, 4) rows – (–, 4) times, over – (18, 28) rows. (40 (50, 60) sts)"},
	} {
		t.Run(k.name, func(t *testing.T) {
			p, gs := sleeve(t, k.every, k.times, k.thenEvery, k.thenTime)
			text := print.Rows(p, gs, print.Options{Size: -1})
			assert.Contains(t, strings.Split(text, "\n"), k.want)
			assert.Contains(t, text, "Work – (4, 6) rows even.")
			reads(t, text, p, gs)
		})
	}
}

// none is a number 0 where an amount stands: of times, rows or stitches worked.
var none0 = regexp.MustCompile(`(^|[ (])0([,)]|\)? (times?|rows?|rnds?|sts?)\b)`)

func TestNoLineSaysThatSomethingIsDoneNoTimes(t *testing.T) {
	count := func(t *rapid.T, label string, lo, hi int) expr.Graded {
		return expr.Counts(rapid.IntRange(lo, hi).Draw(t, label), rapid.IntRange(lo, hi).Draw(t, label), rapid.IntRange(lo, hi).Draw(t, label))
	}
	dashes := 0
	rapid.Check(t, func(r *rapid.T) {
		p, gs := sleeve(r, count(r, "every", 1, 6), count(r, "times", 0, 3), count(r, "then every", 1, 6), count(r, "then times", 0, 3))
		size := rapid.IntRange(-1, 2).Draw(r, "size")
		text := print.Rows(p, gs, print.Options{Size: size})
		for _, line := range strings.Split(text, "\n") {
			if none0.MatchString(line) {
				r.Fatalf("%s\nin\n%s", line, text)
			}
		}
		if size < 0 {
			dashes += strings.Count(text, "–")
			reads(r, text, p, gs)
			return
		}
		assert.NotContains(r, text, "–", "one size has what is printed")
		require.Empty(r, rows.Check(rows.Read("printed", []byte(text), rows.Options{}), rows.Options{}).Findings, text)
	})
	require.Positive(t, dashes)
}
