package work

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/bysize"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// back is a small back in two sizes: 60 (70) stitches, 40 (44) rows, 4 (5) bound off
// at either side, 6 (8) times one decrease at each end every second row, 10 rows.
func back() *schematic.Pattern {
	sizes, _ := expr.ParseSizes("S (M)")
	p := &schematic.Pattern{Title: "Back", Sizes: sizes, Steps: units.Usual, Sample: -1,
		Gauges: []schematic.Gauge{{Name: "fabric", Stitches: units.Int(20), Rows: units.Int(20), Over: units.Int(100), Stitch: "stockinette stitch"}}}
	p.Pieces = []*schematic.Piece{{Name: "Back", Kind: schematic.KindBack, Sections: []schematic.Section{
		&schematic.CastOn{Stitches: expr.Counts(60, 70)},
		&schematic.Even{Amount: schematic.Amount{Rows: expr.Counts(40, 44)}},
		&schematic.BindOff{Stitches: expr.Counts(4, 5), At: schematic.BothEdges},
		&schematic.Shape{Shapings: []schematic.Shaping{{By: expr.Counts(1, 1), At: schematic.BothEdges, Every: expr.Counts(2, 2), Times: expr.Counts(6, 8)}}},
		&schematic.Even{Amount: schematic.Amount{Rows: expr.Counts(10, 10)}},
		&schematic.BindOff{All: true},
	}}}
	return p
}

const backText = `Sizes: S (M)

Back
Cast on 60 (70) sts.
Row 1 (RS): Knit. 60 (70) sts
Row 2: Purl. 60 (70) sts
Rep Rows 1 and 2 to end of row 40 (44). 60 (70) sts
Piece measures 20 (22) cm from cast-on edge.
Bind off 4 (5) sts at beg of next 2 rows. 52 (60) sts
Next row: K1, k2tog, k to last 3 sts, ssk, k1. 50 (58) sts
Next row: Purl. 50 (58) sts
Rep last 2 rows 5 (7) more times. 40 (44) sts
Work 10 rows even. 40 (44) sts
Bind off all sts.
`

func TestATextIsHeldAgainstItsPattern(t *testing.T) {
	p := back()
	gs, ok := drawnAgain(p)
	require.True(t, ok)
	x := Read("back.txt", []byte(backText), Options{})
	require.Empty(t, Check(x).Findings)
	require.Empty(t, Against(x, p, gs))

	for _, c := range []struct{ was, now, message string }{
		{"row 40 (44)", "row 42 (44)", "works 42 rows to the end of 60 stitches, the pattern 40"},
		{"Work 10 rows even", "Work 8 rows even", "works 20 (24) rows to the end of 40 (44) stitches, the pattern 22 (26)"},
	} {
		x := Read("back.txt", []byte(strings.Replace(backText, c.was, c.now, 1)), Options{})
		list := slices.DeleteFunc(Against(x, p, gs), func(f finding.Finding) bool { return f.Kind != "rows/against" })
		require.Len(t, list, 1, c.now)
		assert.Contains(t, list[0].Message, c.message)
	}
	// Five stitches bound off in S too: the text fits itself, and not the pattern.
	other := strings.NewReplacer("off 4 (5)", "off 5 (5)", "52 (60)", "50 (60)", "50 (58)", "48 (58)", "40 (44) sts", "38 (44) sts").Replace(backText)
	x = Read("back.txt", []byte(other), Options{})
	require.Empty(t, Check(x).Findings)
	list := Against(x, p, gs)
	require.Len(t, list, 1)
	assert.Equal(t, []string{"S"}, list[0].Sizes)
	assert.Contains(t, list[0].Message, "never comes to 52 stitches")

	x = Read("back.txt", []byte(strings.Replace(backText, "\nBack\n", "\nFront\n", 1)), Options{})
	list = Against(x, p, gs)
	require.Len(t, list, 1)
	assert.Equal(t, "rows/piece", list[0].Kind)
}

func TestAWrittenLengthIsHeldToThePatternsGauge(t *testing.T) {
	p := back()
	gs, _ := drawnAgain(p)
	x := Read("back.txt", []byte(strings.Replace(backText, "measures 20 (22)", "measures 20 (24)", 1)), Options{})
	list := Against(x, p, gs)
	require.Len(t, list, 1)
	assert.Equal(t, "rows/length", list[0].Kind)
	assert.Equal(t, []string{"M"}, list[0].Sizes)
}

func TestTheTopOfATextIsHeldAgainstThePattern(t *testing.T) {
	p := back()
	gs, _ := drawnAgain(p)
	o := Options{Sizes: p.Sizes, TermsSet: true}
	for _, c := range []struct{ was, now, kind, message string }{
		{"", "", "", ""},
		{"Sizes: S (M)", "Sizes: XS (S)", "rows/sizes", "the text is in the sizes XS (S), the pattern in S (M)"},
		{"Sizes: S (M)", "Sizes: S (M, L)", "rows/sizes", "the text is in the sizes S (M, L), the pattern in S (M)"},
		{"Sizes: S (M)", "Sizes: Small (Medium)", "", ""},
		{"Sizes: S (M)", "Terms: UK", "words/terms", "the text says that it is in UK terms, the pattern is in US terms"},
		{"Sizes: S (M)", "Gauge: 20 sts and 22 rows = 10 cm", "rows/against", "the gauge in the text is not one of the pattern's"},
		{"Sizes: S (M)", "Gauge: 20 sts and 20 rows = 4 in", "", ""}, // a nominal pair
		{"\nBack\n", "\nBack (make 2)\n", "rows/against", "the heading says to make 2 of Back, the pattern 1"},
		{"\nBack\n", "\nBack (make one)\n", "", ""},
		{"Work 10 rows even", "Work 11 rows even", "rows/against", "works 23 (27) rows to the end of 40 (44) stitches, the pattern 22 (26)"},
	} {
		x := Read("back.txt", []byte(strings.Replace(backText, c.was, c.now, 1)), o)
		list := slices.DeleteFunc(Against(x, p, gs), func(f finding.Finding) bool { return f.Kind == "rows/length" })
		if c.kind == "" {
			assert.Empty(t, list, c.now)
			continue
		}
		require.Len(t, list, 1, c.now)
		assert.Equal(t, c.kind, list[0].Kind, c.now)
		assert.Contains(t, list[0].Message, c.message)
		assert.Greater(t, list[0].Pos.EndCol, list[0].Pos.Col)
	}
}

func TestALineOfSizesThatIsTooShortIsToldOnce(t *testing.T) {
	list := check(strings.Replace(backText, "S (M)", "S (M, L)", 1))
	require.Len(t, list, 1)
	assert.Equal(t, "rows/sizes", list[0].Kind)
	assert.Equal(t, 1, list[0].Pos.Line)
	assert.Contains(t, list[0].Message, "these are 3 sizes, but 13 lines of numbers have 2 numbers")
}

// A wrong number of decreases is told of the text itself, and not again of its pattern;
// a row too many after a row that turns on chains is.
func TestWhatTheTextContradictsItselfIsNotToldOfThePatternToo(t *testing.T) {
	p := back()
	gs, _ := drawnAgain(p)
	src := strings.Replace(backText, "Rep last 2 rows 5 (7) more times", "Rep last 2 rows 5 (8) more times", 1)
	x := Read("back.txt", []byte(src), Options{})
	list := append(Check(x).Findings, Against(x, p, gs)...)
	require.Len(t, list, 1, list)
	assert.Equal(t, "rows/stated", list[0].Kind)
}

// works works a pattern in every size; it reports false where a size has a finding.
func drawnAgain(p *schematic.Pattern) ([]*schematic.Garment, bool) {
	var out []*schematic.Garment
	for i := range p.Sizes.Names {
		g := schematic.Work(p, i)
		if len(g.Findings) > 0 {
			return nil, false
		}
		out = append(out, g)
	}
	return out, true
}

// The designer wrote 23 (27) chains for 20 (24) stitches; the text has another number in its first size, of which its row
// makes 20 all the same.
func TestTheFoundationChainIsThatOfThePattern(t *testing.T) {
	sizes, _ := expr.ParseSizes("S (M)")
	p := &schematic.Pattern{Title: "T", Sizes: sizes, Gauges: []schematic.Gauge{{Name: "fabric", Stitches: units.Int(12), Rows: units.Int(8), Over: units.Int(100)}},
		Pieces: []*schematic.Piece{{Name: "Back", Sections: []schematic.Section{&schematic.CastOn{Chain: expr.Counts(23, 27), Stitches: expr.Counts(20, 24)},
			&schematic.Even{Amount: schematic.Amount{Rows: expr.Counts(2, 2)}}, &schematic.BindOff{All: true}}}}}
	gs := bysize.WorkAll(p)
	text := "Terms: US\nSizes: S (M)\nBack\nCh 23 (27).\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (20 (24) dc)\nRow 2: Ch 3 (does not count as a st), dc in each st across. (20 (24) dc)\n"
	assert.Empty(t, Against(Read("t", []byte(text), Options{}), p, gs))
	list := Against(Read("t", []byte(strings.Replace(text, "Ch 23 (27)", "Ch 22 (27)", 1)), Options{}), p, gs)
	require.Len(t, list, 1)
	assert.Equal(t, "the text of Back begins with 22 chains, the pattern with 23", list[0].Message)
	assert.Equal(t, []string{"S"}, list[0].Sizes)
}
