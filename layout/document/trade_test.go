package document

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

var three = expr.Sizes{Names: []string{"S", "M", "L"}, Groups: []int{1, 2}}

var both = []units.Unit{units.CM, units.Inch}

// Sizes in a line: the smallest first, the others in brackets; one number alone is
// for all sizes (common practice). 1 in is 2.54 cm exactly.
func TestNumbersOfWrittenTextFollowSizeAndUnit(t *testing.T) {
	r := newReader(three)
	for _, c := range []struct {
		text string
		all  string // both units
		m    string // of size M, in inches
	}{
		{"Ch 94 (102, 110).", "Ch 94 (102, 110).", "Ch 102."},
		{"Rows 3-24 (28, 32): Rep Row 2.", "Rows 3-24 (28, 32): Rep Row 2.", "Rows 3-28: Rep Row 2."},
		{"Rows 26 (30, 34)-40 (46, 52)", "Rows 26 (30, 34)-40 (46, 52)", "Rows 30-46"},
		{"Work 40 (–, 44) rows", "Work 40 (–, 44) rows", "Work – rows"},
		{"measures 20 (24, 26) cm from", "measures 20 (24, 26) cm / 7¾ (9½, 10¼) in from", "measures 9½ in from"},
		{"20 (24, 26) cm / 8 (9½, 10) in long", "20 (24, 26) cm / 8 (9½, 10) in long", "9½ in long"},
		{"8 (9 1/2, 10) in from", "20.5 (24, 25.5) cm / 8 (9½, 10) in from", "9½ in from"},
		{"or 7 cm more", "or 7 cm / 2¾ in more", "or 2¾ in more"},
		{"sew at 42 cm.", "sew at 42 cm / 16½ in.", "sew at 16½ in."},
		// 'in' is a word of the trade more often than a unit
		{"2 in each st", "2 in each st", "2 in each st"},
		{"3 in next sp, turn", "3 in next sp, turn", "3 in next sp, turn"},
		{"1 (2, 3) in each row", "1 (2, 3) in each row", "2 in each row"},
		// lists that are not one a size stay words
		{"Rows 2 (4)", "Rows 2 (4)", "Rows 2 (4)"},
		{"Ch 2 (counts as htr)", "Ch 2 (counts as htr)", "Ch 2 (counts as htr)"},
		{"row 1.5 (2, 3)", "row 1.5 (2, 3)", "row 2"},
		{"hook C4 (5, 6)", "hook C4 (5, 6)", "hook C4 (5, 6)"},
	} {
		got := r.text(c.text)
		assert.Equal(t, c.all, got.Said(three, -1, both, units.Usual), c.text)
		assert.Equal(t, c.m, got.Said(three, 1, []units.Unit{units.Inch}, units.Usual), c.text)
	}
}

func TestWordsAroundTheNumbersStayAsTheyAre(t *testing.T) {
	r := newReader(three)
	rapid.Check(t, func(t *rapid.T) {
		parts := rapid.SliceOf(rapid.OneOf(rapid.String(), rapid.SampledFrom([]string{"1 (2, 3)", " cm", " in", " (", ")", "/", "-", "–", "½", "7", " "}))).Draw(t, "parts")
		s := strings.Join(parts, "")
		var b strings.Builder
		graded := false
		for _, span := range r.text(s) {
			graded = graded || len(span.Lengths) > 0
			b.WriteString(Text{span}.Said(three, -1, []units.Unit{units.CM}, units.Steps{}))
		}
		if !graded { // a line is set anew with its spaces; nothing else may change
			clean := strings.NewReplacer(" ", "", "-", "", "–", "")
			require.Equal(t, clean.Replace(s), clean.Replace(b.String()))
		}
	})
}

func TestPiecesPutTogetherAreTheTradesLine(t *testing.T) {
	r := newReader(three)
	for _, s := range []string{"Ch 94 (102, 110), turn.", "20 (24, 26) cm from the hem", "7 cm", "plain"} {
		var b strings.Builder
		for _, span := range r.text(s) {
			for _, p := range span.Pieces(three, both, units.Usual) {
				b.WriteString(p.S)
			}
		}
		assert.Equal(t, r.text(s).Said(three, -1, both, units.Usual), b.String())
	}
}
