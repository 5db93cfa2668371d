package work

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/finding"
)

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
		return Check(Read("t.txt", []byte(strings.Replace(markers, old, put, 1)), Options{})).Findings
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

func TestADashSkipsASizeInWhatIsToldOfRows(t *testing.T) {
	x := Read("t", []byte("Sizes: S (M, L)\n\n# Band\nCast on 20 (22, 24) sts.\nDec – (2, 4) sts evenly over – (1, 1) rows. (20 (20, 20) sts)\nWork – (2, 4) rows even. (20 (20, 20) sts)\n"), Options{})
	rep := Check(x)
	assert.Empty(t, rep.Findings)
	assert.Equal(t, rep.Read.Lines, rep.Read.Whole)
}
