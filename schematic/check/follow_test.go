package check

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/given"
)

// kindsOf are the kinds of findings, each with its message.
func kindsOf(found finding.List) []string {
	var out []string
	for _, f := range found {
		out = append(out, f.Kind+": "+f.Message)
	}
	return out
}

// By hand: 60 less 2 x 4 are 52, and 54 are stated; the parts 17 + 20 + 17 are 54 as well, and a bind-off of 3 would agree with both. One cause, one finding.
func TestWhatFollowsFromACountIsNotTold(t *testing.T) {
	back := func(off string) string {
		return "  - piece: Back\n    sections:\n      - cast on: 60 (64, 68, 72)\n      - even: 20 rows\n      - {bind off: " + off + ", at: both edges, edge: armhole, to: 54 (58, 62, 66)}\n      - {even: 20 rows, width: cross back}\n" +
			"      - divide:\n          - {bind off: 17 (19, 21, 23), name: right shoulder, edge: shoulder}\n          - {bind off: 20, edge: neck}\n          - {bind off: 17 (19, 21, 23), name: left shoulder, edge: shoulder}\n"
	}
	assert.Empty(t, foundIn(t, back("3")))
	for _, off := range []string{"4 (3, 3, 3)", "3 (3, 4, 3)", "3 (3, 3, 4)"} {
		found := foundIn(t, back(off))
		require.Len(t, found, 1, "%s: %v", off, kindsOf(found))
		assert.Equal(t, "arithmetic/count", found[0].Kind)
	}
	found := foundIn(t, strings.Replace(back("3"), "bind off: 20, edge: neck", "bind off: 20 (20, 22, 20), edge: neck", 1))
	require.Len(t, found, 1, "%v", kindsOf(found))
	assert.Equal(t, "arithmetic/division", found[0].Kind)
}

// By hand: 84 less 10 are 74, 72 are stated, which is 18 x 4 and leaves 54: the repeat over 4 and what it comes to agree with what is stated. 76 agree with
// neither, so that both are told.
func TestARepeatIsHeldToTheStatedCount(t *testing.T) {
	yoke := func(by, then string) string {
		return "  - piece: Yoke\n    worked: in the round, from the hem\n    sections:\n      - cast on: 84 (96, 108, 120)\n      - {decrease: " + by + ", at: across, to: 72 (84, 96, 108)}\n      - even: 4 rows\n      - repeat row: 2 together, 1 in each of 2\n        to: " + then + "\n      - bind off: all\n"
	}
	assert.Empty(t, foundIn(t, yoke("12", "54 (63, 72, 81)")))
	assert.Len(t, foundIn(t, yoke("10 (12, 12, 12)", "54 (63, 72, 81)")), 1)
	assert.Len(t, foundIn(t, yoke("12", "54 (63, 73, 81)")), 1)
	found := foundIn(t, yoke("10 (12, 12, 12)", "57 (63, 72, 81)"))
	assert.Len(t, found, 2, "%v", kindsOf(found))
}

const dropShouldered = "    sections:\n      - cast on: 84 (94, 104, 114)\n      - even: 20 rows\n      - {even: %ROWS% rows, left edge: armhole, right edge: armhole}\n" +
	"      - divide:\n          - {bind off: 24, edge: shoulder}\n          - {bind off: 36 (46, 56, 66), edge: neck}\n          - {bind off: 24, edge: shoulder}\n"

// By hand: at 20 rows over 10 cm a row is 5 mm. Two rows are 1 cm, which may lie in the shoulder seam; three are asked about.
func TestAFrontArmholeUnlikeThatOfTheBackIsAskedAbout(t *testing.T) {
	of := func(front, joins string) finding.List {
		return foundIn(t, "  - piece: Back\n"+strings.Replace(dropShouldered, "%ROWS%", "40", 1)+"  - piece: Front\n"+strings.Replace(dropShouldered, "%ROWS%", front, 1)+joins)
	}
	assert.Empty(t, of("40", ""))
	assert.Empty(t, of("42", ""))
	assert.Empty(t, of("38", ""))
	found := of("43", "")
	require.Len(t, found, 1, "%v", kindsOf(found))
	assert.Equal(t, "joins/armhole: the armhole of Front is 1.5 cm deeper than that of Back", kindsOf(found)[0])
	assert.Equal(t, finding.Note, found[0].Severity)
	assert.Contains(t, kindsOf(of("37", ""))[0], "1.5 cm shallower")
	sleeve := "  - piece: Sleeve\n    make: 2\n    sections:\n      - cast on: 83\n      - even: 40 rows\n      - {bind off: all, edge: top}\njoins:\n  - {sew: Sleeve top, into: [Front armhole, Back armhole]}\n"
	for _, k := range kindsOf(of("43", sleeve)) {
		assert.NotContains(t, k, "joins/armhole", "the sleeve is as long as both")
	}
}

func TestAnEdgeSewnTwiceIsTold(t *testing.T) {
	both := func(second string) finding.List {
		return foundIn(t, "  - piece: Back\n"+strings.Replace(dropShouldered, "%ROWS%", "40", 1)+"  - piece: Front\n"+strings.Replace(dropShouldered, "%ROWS%", "40", 1)+
			"joins:\n  - {sew: Front left side, to: Back right side}\n  - {sew: Front right side, to: "+second+"}\n")
	}
	assert.Empty(t, both("Back left side"))
	found := both("Back right side")
	require.Len(t, found, 1, "%v", kindsOf(found))
	assert.Equal(t, "joins/twice: Back right side is sewn to Front left side and to Front right side", kindsOf(found)[0])
}

// A turning chain is of one number in all sizes (common practice).
func TestAFoundationChainUnlikeTheOthersIsTold(t *testing.T) {
	of := func(chain string) finding.List {
		return foundIn(t, "  - piece: Back\n    sections:\n      - {chain: "+chain+", stitches: 60 (64, 68, 72)}\n      - even: 20 rows\n      - bind off: all\n")
	}
	assert.Empty(t, of("62 (66, 70, 74)"))
	assert.Empty(t, of("62 (66, 69, 73)"), "half of the sizes: no one knows which")
	found := of("62 (66, 70, 73)")
	require.Len(t, found, 1, "%v", kindsOf(found))
	assert.Equal(t, "grading/unlike: the chain has 2 more than its stitches in the other sizes, but not in XL", kindsOf(found)[0])
	assert.Equal(t, "73 chains for 72 stitches in XL", found[0].Have)
}

// By hand, at 5 mm a row: 40, 42, 44, 64, 48, 50 rows are 20, 21, 22, 32, 24 and 25 cm, and the whole length is 10 cm more throughout. Both jump by 10 cm and
// back by 8; it is told once.
func TestALengthThatJumpsWithAStretchOfItIsNotTold(t *testing.T) {
	p := given.Text(t, "version: 1\npattern: T\nterms: US\nunits: cm\nsizes: 1 (2, 3, 4, 5, 6)\ngauges: {fabric: 20 sts and 20 rows over 10 cm in sc}\npieces:\n  - piece: Back\n    sections:\n"+
		"      - cast on: 84 (88, 92, 96, 100, 104)\n      - even: 20 rows\n      - {even: \"40 (42, 44, 64, 48, 50) rows\", left edge: armhole, right edge: armhole}\n      - {bind off: all, edge: top}\n")
	var gs []*schematic.Garment
	for i := range p.Sizes.Names {
		gs = append(gs, schematic.Work(p, i))
	}
	found := Pattern(p, gs)
	require.Len(t, found, 1, "%v", kindsOf(found))
	assert.Contains(t, found[0].Message, "Back armhole depth makes steps")
}

const fourPanels = "  - piece: Yoke\n    worked: in the round, from the neck\n    sections:\n      - cast on: 60 (64, 68, 72)\n      - panels:\n          - {panel: back, stitches: 20 (22, 24, 26)}\n          - {panel: left, stitches: 10}\n" +
	"          - {panel: front, stitches: 20 (22, 24, 26)}\n          - {panel: right, stitches: 10}\n      - {increase: 1, at: lines, every: 2 rows, times: 10 (11, 12, 13), to: 140 (152, 164, 176)}\n      - divide:\n" +
	"          - {hold: 40 (44, 48, 52), name: back}\n          - {hold: 30 (32, 34, 36), name: left}\n          - {hold: 40 (44, 48, 52), name: front}\n          - {hold: 30 (32, 34, 36), name: right}\n"

// By hand: 60 and 8 x 10 are 140, which the four parts are. One raglan increase too many is 148; a panel of 11 makes 61 and 141. One cause, one finding.
func TestWhatFollowsFromAPanelsCountIsNotTold(t *testing.T) {
	assert.Empty(t, foundIn(t, fourPanels))
	for old, kind := range map[string]string{"times: 10 (11, 12, 13)|times: 11 (11, 12, 13)": "arithmetic/count", "{panel: left, stitches: 10}|{panel: left, stitches: 11 (10, 10, 10)}": "arithmetic/panels"} {
		was, is, _ := strings.Cut(old, "|")
		found := foundIn(t, strings.Replace(fourPanels, was, is, 1))
		require.Len(t, found, 1, "%v", kindsOf(found))
		assert.Equal(t, kind, found[0].Kind)
	}
	found := foundIn(t, strings.Replace(fourPanels, "{hold: 30 (32, 34, 36), name: left}\n          - {hold: 40", "{hold: 31 (32, 34, 36), name: left}\n          - {hold: 39", 1))
	assert.NotEmpty(t, found, "parts that end beside the lines are told")
}

// By hand: 90 less 2 x 4 are 82, as 12 rows hold 6 shapings every 2 rows; 8 of them need 16 rows and leave 74: the rows are told, and not the count and the
// lengths as well.
func TestAShapingThatDoesNotFitItsRowsIsToldOnce(t *testing.T) {
	found := foundIn(t, "  - piece: Back\n    sections:\n      - cast on: 90\n      - {decrease: 1, at: both edges, every: 2 rows, times: 4 (4, 4, 8), rows: 12, to: 82}\n      - even: 10 rows\n      - bind off: all\n")
	require.Len(t, found, 1, "%v", kindsOf(found))
	assert.Equal(t, "arithmetic/shaping-rows", found[0].Kind)
}

// By hand: 84 and 76 in each other's place make the width at the hem go back, and the waist, 8 stitches narrower, with it.
func TestWidthsThatGoBackTogetherAreToldOnce(t *testing.T) {
	found := foundIn(t, "  - piece: Back\n    sections:\n      - cast on: 68 (84, 76, 92)\n      - {even: 10 rows}\n      - {decrease: 4, at: both edges}\n      - {even: 10 rows, width: waist}\n      - bind off: all\n")
	require.Len(t, found, 1, "%v", kindsOf(found))
	assert.Equal(t, "grading/backwards", found[0].Kind)
	assert.Contains(t, found[0].Message, "width at hem")
}
