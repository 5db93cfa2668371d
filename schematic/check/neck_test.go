package check_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/check"
	"flatwright/schematic/read"
)

// A shoulder has its neck on its inner side. By hand: parts are listed as a right-side row meets them, so that the inner edge of the
// first is its left one, and that of the last its right one.
func TestANeckAtTheOuterEdgeOfAShoulderIsFound(t *testing.T) {
	for name, c := range map[string]struct{ divide, outer, inner, told string }{
		"beside a bound-off neck": {`
          - {part: Left shoulder, stitches: 35, mirror of: Right shoulder}
          - {bind off: 20, name: front neck, edge: neck}
          - part: Right shoulder
            stitches: 35
            sections:
              - {decrease: 1, at: SIDE edge, edge: neck, every: 2 rows, times: 12}
              - {bind off: all, edge: shoulder}
`, "left", "right", "the neck of Left shoulder, Right shoulder is at the outer edge of the shoulder"},
		"of a V that splits the row": {`
          - part: First
            stitches: 45
            SIDE edge: neck
            sections:
              - {decrease: 1, at: SIDE edge, every: 2 rows, times: 20}
              - {bind off: all, edge: shoulder}
          - {part: Second, stitches: 45, mirror of: First}
`, "right", "left", "the neck of First, Second is at the outer edge of the shoulder"}, // its mirror has its names
	} {
		assert.Equal(t, []string{c.told}, necksTold(t, strings.ReplaceAll(c.divide, "SIDE", c.outer)), name)
		assert.Empty(t, necksTold(t, strings.ReplaceAll(c.divide, "SIDE", c.inner)), name)
	}
}

func necksTold(t *testing.T, divide string) []string {
	t.Helper()
	p, found := read.Pattern("own.yaml", []byte(`version: 1
pattern: Own
terms: UK
units: cm
sizes: S
gauges:
  fabric: 20 sts and 28 rows over 10 cm
pieces:
  - piece: Front
    sections:
      - cast on: 90
      - even: 90 rows
      - divide:`+divide))
	require.False(t, found.Errors(), "%v", found)
	var out []string
	for _, f := range check.Pattern(p, []*schematic.Garment{schematic.Work(p, 0)}) {
		if f.Kind == "words/neck" {
			out = append(out, f.Message)
		}
	}
	return out
}

// A front in halves has its neck at its front edge, and its armhole at the other.
func TestANeckOnTheSideOfTheArmholeIsFound(t *testing.T) {
	for side, want := range map[string]string{"right": "the neck of Left front is at the outer edge of the shoulder", "left": ""} {
		p, found := read.Pattern("own.yaml", []byte("version: 1\npattern: Own\nterms: UK\nunits: cm\nsizes: S\ngauges:\n  fabric: 20 sts and 28 rows over 10 cm\npieces:\n"+
			"  - piece: Left front\n    left edge: front edge\n    sections:\n      - cast on: 45\n      - even: 60 rows\n      - {even: 20 rows, right edge: armhole}\n"+
			"      - {decrease: 1, at: "+side+" edge, every: 2 rows, times: 15, edge: neck}\n      - {bind off: all, edge: shoulder}\n  - {piece: Right front, mirror of: Left front}\n"))
		require.False(t, found.Errors(), "%v", found)
		var told []string
		for _, f := range check.Pattern(p, []*schematic.Garment{schematic.Work(p, 0)}) {
			told = append(told, f.Message)
		}
		assert.Equal(t, want, strings.Join(told, ""), side)
	}
}

// Beside a dropped shoulder the armhole is straight: what is shaped there next to a straight neck is meant for the neck. A square
// neck is straight too, and its armhole with it.
func TestShapingAtTheArmholeBesideAStraightNeckIsFound(t *testing.T) {
	const shaped = "{decrease: 1, at: left edge, every: 2 rows, times: 8}"
	for section, want := range map[string]string{
		shaped: "the shaping of Left neck, Right neck is at the outer edge of the shoulder",
		strings.Replace(shaped, "left", "right", 1): "",
		"{even: 16 rows}": "",
	} {
		p, found := read.Pattern("own.yaml", []byte("version: 1\npattern: Own\nterms: UK\nunits: cm\nsizes: S\ngauges:\n  fabric: 20 sts and 28 rows over 10 cm\npieces:\n"+
			"  - piece: Front\n    sections:\n      - cast on: 90\n      - even: 80 rows\n      - {even: 20 rows, left edge: armhole, right edge: armhole}\n      - divide:\n"+
			"          - {part: Left neck, stitches: 36, mirror of: Right neck}\n          - {leave: 18, edge: neck}\n"+
			"          - part: Right neck\n            stitches: 36\n            sections:\n              - "+section+"\n              - {bind off: all, edge: shoulder}\n"))
		require.False(t, found.Errors(), "%v", found)
		var told []string
		for _, f := range check.Pattern(p, []*schematic.Garment{schematic.Work(p, 0)}) {
			told = append(told, f.Message)
		}
		assert.Equal(t, want, strings.Join(told, ""), section)
	}
}

// A front worked from side to side has a shoulder before its neck and one behind it, in one line, and an armhole beside each of them: the neck is on the inner side of both.
func TestANeckBetweenTwoShouldersOfAPieceFromSideToSideIsInside(t *testing.T) {
	p, found := read.Pattern("sideways.yaml", []byte(`version: 1
pattern: Sideways
terms: US
units: in
sizes: one
gauges: {fabric: 13 sts and 10 rows over 4 in in hdc}
pieces:
  - piece: Front
    worked: flat, from the left side
    sections:
      - {cast on: 44, edge: side, top edge: shoulder, bottom edge: hem}
      - {add: 28, at: top edge, edge: armhole}
      - {even: 16 rows}
      - {decrease: 1, at: top edge, edge: neck, every: 1 row, times: 8}
      - {increase: 1, at: top edge, edge: neck, every: 1 row, times: 8}
      - {even: 17 rows, top edge: shoulder}
      - {bind off: 28, at: top edge, edge: armhole}
      - {bind off: all, edge: side}
`))
	require.NotNil(t, p, "%v", found)
	for _, f := range check.Pattern(p, []*schematic.Garment{schematic.Work(p, 0)}) {
		assert.NotEqual(t, "words/neck", f.Kind)
	}
}
