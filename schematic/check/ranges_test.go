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

// Bust ranges of the yarn standard (Craft Yarn Council, 2018) in inches are all 2 wide: 46-46 is not. In whole centimetres, from memory, they are 5 or 6. Of four
// ranges one may be meant to be another.
func TestARangeUnlikeTheOthersIsFound(t *testing.T) {
	for sizes, want := range map[string]string{
		"S (M, L, XL, 2X, 3X)|32-34 (36-38, 40-42, 46-46, 48-50, 52-54) in":         "body bust has one range unlike the others: from 46 in to 46 in in XL",
		"S (M, L, XL, 2X, 3X)|32-34 (36-38, 40-42, 44-46, 48-50, 52-54) in":         "",
		"S (M, L, XL, 2X, 3X)|81-86 (91-97, 102-107, 112-117, 122-127, 132-137) cm": "",
		"S (M, L, XL)|32-34 (36-38, 40-42, 44-50) in":                               "",
	} {
		names, bust, _ := strings.Cut(sizes, "|")
		p, found := read.Pattern("own.yaml", []byte("version: 1\npattern: Own\nterms: UK\nunits: cm\nsizes: "+names+"\nbodies:\n  bust: "+bust+
			"\ngauges:\n  fabric: 20 sts and 28 rows over 10 cm\npieces:\n  - piece: Scarf\n    sections:\n      - cast on: 45\n      - even: 60 rows\n"))
		require.False(t, found.Errors(), "%v", found)
		told := ""
		for _, f := range check.Pattern(p, []*schematic.Garment{schematic.Work(p, 0)}) {
			if f.Kind == "grading/jump" {
				told += f.Message + ": " + f.Have
			}
		}
		assert.Equal(t, want, told, bust)
	}
}

// By hand: the front of a round is divided at its middle, and its left shoulder lies on the right as drawn. Its right edge is the armhole: a neck there is drawn beside it.
func TestANeckAtTheOuterEdgeInAPartOfARoundIsFound(t *testing.T) {
	for side, want := range map[string]string{"right": "the neck of Left shoulder, Right shoulder is at the outer edge of the shoulder", "left": ""} {
		p, found := read.Pattern("own.yaml", []byte("version: 1\npattern: Own\nterms: UK\nunits: cm\nsizes: S\ngauges:\n  fabric: 20 sts and 28 rows over 10 cm\npieces:\n"+
			"  - piece: Body\n    worked: in the round, from the hem\n    sections:\n      - cast on: 180\n      - even: 60 rows\n      - divide:\n          - part: Front\n            stitches: 90\n"+
			"            left edge: armhole\n            right edge: armhole\n            sections:\n              - even: 20 rows\n              - divide:\n                  - part: Left shoulder\n"+
			"                    stitches: 32\n                    sections:\n                      - {decrease: 1, at: "+side+" edge, every: 2 rows, times: 6, edge: neck}\n"+
			"                      - {bind off: all, edge: shoulder}\n                  - {bind off: 26, edge: neck}\n                  - {part: Right shoulder, mirror of: Left shoulder}\n"+
			"          - part: Back\n            stitches: 90\n            sections:\n              - even: 32 rows\n              - {bind off: all, edge: shoulder}\n"))
		require.False(t, found.Errors(), "%v", found)
		told := ""
		for _, f := range check.Pattern(p, []*schematic.Garment{schematic.Work(p, 0)}) {
			if f.Kind == "words/neck" {
				told += f.Message
			}
		}
		assert.Equal(t, want, told, side)
	}
}

// A gauge over 4 cm beside one over 4 in is a slip; 10 cm beside 4 in, the nominal pair, is none.
func TestAGaugeInTheOtherUnitIsFound(t *testing.T) {
	for over, want := range map[string]string{"4 cm": "the gauge fabric is over 4 cm, and rib over 4 in", "10 cm": "", "4 in / 10 cm": "", "4 in": ""} {
		p, found := read.Pattern("own.yaml", []byte("version: 1\npattern: Own\nterms: US\nunits: in\nsizes: S\ngauges:\n  fabric: 20 sts and 28 rows over "+over+
			"\n  rib: 22 sts and 30 rows over 4 in\npieces:\n  - piece: Scarf\n    sections:\n      - cast on: 45\n      - even: 60 rows\n"))
		require.False(t, found.Errors(), "%v", found)
		told := ""
		for _, f := range check.Pattern(p, []*schematic.Garment{schematic.Work(p, 0)}) {
			told += f.Message
		}
		assert.Equal(t, want, told, over)
	}
}
