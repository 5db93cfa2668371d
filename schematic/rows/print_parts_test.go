package rows

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/read"
)

// printed is the printed text of a garment of testdata, which reads back.
func printed(t *testing.T, name string) string {
	t.Helper()
	src, err := os.ReadFile("../../testdata/garments/" + name + ".yaml")
	require.NoError(t, err)
	p, list := read.Pattern(name, src)
	require.Empty(t, list)
	gs := schematic.WorkAll(p)
	text := Print(p, gs, PrintOptions{Size: -1})
	reads(t, text, p, gs)
	return text
}

func TestWhatIsTakenUpAndWhereItIsShapedIsSaid(t *testing.T) {
	for name, lines := range map[string][]string{
		"raglan": {
			"Place markers between the panels: 34 (36, 38) (40) sts for Back, 12 (14, 14) (14) sts for Left arm, 34 (36, 38) (40) sts for Front, 12 (14, 14) (14) sts for Right arm.",
			"Inc 1 st on each side of 4 markers every 2 rnds 25 (28, 31) (34) times, over 50 (56, 62) (68) rnds in stockinette stitch. (292 (324, 352) (380) sts)",
			"Take up 62 (70, 76) (82) held sts of Yoke, Left arm, add 8 sts. (70 (78, 84) (90) sts)"},
		"raglan-with-neckline": {"Inc 1 st on each side of 4 markers every 2 rnds 18 (20, 22) times, over 36 (40, 44) rnds. (264 (286, 308) sts)"},
		"short-rows": {
			"Work 8 short rows over the middle 66 (74) sts, turning 4 sts sooner each time. (72 (80) sts)",
			"Work 6 short rows over 30 sts at left edge, turning 8 sts sooner each time. (36 (40) sts)"},
		"mitre-and-motifs": {"Dec 2 sts at the middle every 2 rows 20 (30) times, over 40 (60) rows in garter stitch. (1 sts)"},
		"panels":           {"Join the parts: 18 (20) sts of First side, add 14 (16) sts, 18 (20) sts of Second side. (50 (56) sts)"},
	} {
		text := printed(t, name)
		for _, line := range lines {
			assert.Contains(t, strings.Split(text, "\n"), line, name)
		}
	}
}

const markers = `Terms: US

Yoke
Cast on 92 sts, join to work in the round.
Place markers between the panels: 34 sts for Back, 12 sts for Left arm, 34 sts for Front, 12 sts for Right arm.
Inc 1 st each side of each marker every 2 rnds 5 times, over 10 rnds. (132 sts)
Inc 1 st at each end of Back every 2 rnds 3 times, over 6 rnds. (138 sts)
Work 4 short rows over the middle 60 sts, turning 3 sts sooner each time. (138 sts)
Bind off all sts.
`

// Each marker has two sides: eight stitches more at four of them (common practice).
func TestShapingAtMarkersIsWorked(t *testing.T) {
	one := func(old, put string) finding.List {
		return Check(Read("t.txt", []byte(strings.Replace(markers, old, put, 1)), Options{}), Options{}).Findings
	}
	assert.Empty(t, one("", ""))
	for _, k := range []struct{ old, put, kind, message string }{
		{"34 sts for Back", "36 sts for Back", "rows/division", "the panels add up to 94 stitches, and the row has 92"},
		{"(132 sts)", "(112 sts)", "rows/stated", "132 stitches, not 112"},
		{"(138 sts)\nWork", "(135 sts)\nWork", "rows/stated", "138 stitches, not 135"},
		{"middle 60 sts", "middle 160 sts", "rows/over-use", "go over 160 stitches, and there are only 138"},
	} {
		list := one(k.old, k.put)
		require.Len(t, list, 1, k.put)
		assert.Equal(t, k.kind, list[0].Kind)
		assert.Contains(t, list[0].Message, k.message)
	}
	list := one("Place markers between the panels: 34 sts for Back, 12 sts for Left arm, 34 sts for Front, 12 sts for Right arm.\n", "")
	require.NotEmpty(t, list)
	assert.Contains(t, list[0].Message, "no markers were placed before this")
}
