package alter

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/given"
	"flatwright/schematic/units"
)

// at is a gauge of a pattern, both of its counts so many hundredths of what they are.
func at(p *schematic.Pattern, sts, rows int64) []schematic.Gauge {
	var out []schematic.Gauge
	for _, g := range p.Gauges {
		g.Stitches, g.Rows = g.Stitches.Mul(units.Frac(sts, 100)), g.Rows.Mul(units.Frac(rows, 100))
		out = append(out, g)
	}
	return out
}

const graded = "version: 1\npattern: T\nterms: US\nunits: cm\nsizes: S (M)\nbodies: {bust: 90 (100) cm}\ngauges: {fabric: 20 sts and 28 rows over 10 cm in stockinette stitch}\n" +
	"grading:\n  half: {stitches: bust / 2, multiple: 6}\n  neck: 84 (90) sts\n  depth: 50 (56) rows\n  cable: 12 sts\npieces:\n" +
	"  - piece: Collar\n    worked: in the round, from the hem\n    sections:\n      - cast on: neck\n      - even: depth\n      - bind off: all\n"

// By hand: 84 stitches at 20 over 10 cm are 42 cm, and at 15 over 10 cm 63 stitches, to the even count nearest 62 or 64; 50 rows at 28 over 10 cm are 17.86 cm, at 21
// over 10 cm 37.5 rows.
func TestACountWrittenInTheGradingFollowsTheGauge(t *testing.T) {
	p := given.Text(t, graded)
	a, found := Alter(p, Request{Gauges: at(p, 75, 75)})
	require.NotNil(t, a, "%v", found)
	collar := a.Now.Pieces[0]
	assert.Contains(t, []int{62, 64}, collar.Steps[0].After)
	assert.Contains(t, []int{37, 38}, collar.Steps[1].Rows)
}

// By hand: half of 90 cm are 90 stitches, a multiple of 6; twice that is 180, a multiple of 12. 171 lie between 168 and 180, and 81 between 72 and 84.
func TestTwiceACountOfTheGradingHasTwiceItsMultiple(t *testing.T) {
	p := given.Text(t, strings.Replace(graded, "cast on: neck", "cast on: 2 x half", 1))
	now := oneSize(p, 0, nil)
	assert.Empty(t, rulesKept(p, 0, now))
	now.Pieces[0].Sections[0].(*schematic.CastOn).Stitches = expr.Counts(171)
	found := rulesKept(p, 0, now)
	require.Len(t, found, 1)
	assert.Contains(t, found[0].Message, "171 stitches of the cast on are not a multiple of 12, as half in the grading asks: 168 or 180 are")
	words, low, high, broken := breaks(&p.Grading[0], 2, 81)
	assert.True(t, broken)
	assert.Equal(t, "a multiple of 12", words)
	assert.Equal(t, [2]int{72, 84}, [2]int{low, high})
}

// By hand: front and back are 50 rows high, in one stretch and in two. At 1.05 times the rows 52.5 are as near to 52 as to 53, and 21 and 31.5 come to 52 or 53: both take the same.
func TestFrontAndBackStayAsLongAsEachOther(t *testing.T) {
	const piece = "  - piece: %s\n    sections:\n      - cast on: 60\n%s      - bind off: all\n"
	p := given.Text(t, "version: 1\npattern: T\nterms: US\nunits: cm\nsizes: S\ngauges: {fabric: 20 sts and 28 rows over 10 cm in stockinette stitch}\npieces:\n"+
		fmt.Sprintf(piece, "Back", "      - even: 50 rows\n")+fmt.Sprintf(piece, "Front", "      - even: 21 rows\n      - {decrease: 1, at: both edges, every: 29 rows, times: 1}\n"))
	for rows := int64(80); rows < 125; rows += 3 {
		a, found := Alter(p, Request{Gauges: at(p, 100, rows)})
		require.NotNil(t, a, "%v", found)
		high := func(k int) (n int) {
			for _, s := range a.Now.Pieces[k].Steps {
				n += s.Rows
			}
			return n
		}
		assert.Equal(t, high(0), high(1), "%d rows", rows)
	}
}

// By hand: a yoke of panels of 28, 10, 28 and 10 stitches, 21 increases of 8. At 0.7 of the stitches they are 19.6, 7, 19.6 and 7, and 170.8 after the increases: 15 times 8 and one more in
// each panel are 54 + 112 + 4; 15 times alone would leave the sleeves a stitch too wide.
func TestPanelsTakeWhatTheirLinesLeave(t *testing.T) {
	p := given.Text(t, "version: 1\npattern: T\nterms: US\nunits: cm\nsizes: S\ngauges: {fabric: 20 sts and 20 rows over 10 cm in sc}\npieces:\n  - piece: Yoke\n    kind: yoke\n    worked: in the round, from the neck\n    sections:\n"+
		"      - cast on: 76\n      - panels: [{panel: Back, stitches: 28}, {panel: Left sleeve, stitches: 10}, {panel: Front, stitches: 28}, {panel: Right sleeve, stitches: 10}]\n"+
		"      - {increase: 1, at: lines, every: 1 row, times: 21, to: 244}\n      - even: 1 row\n      - divide:\n          - {hold: 70, name: Back}\n          - {hold: 52, name: Left sleeve}\n          - {hold: 70, name: Front}\n          - {hold: 52, name: Right sleeve}\n")
	a, found := Alter(p, Request{Gauges: at(p, 70, 100)})
	require.NotNil(t, a, "%v", found)
	m := a.Now.Pieces[0]
	assert.Equal(t, 54, m.Steps[0].After)
	assert.Equal(t, 54+14*8+4, m.Steps[2].After)
}
