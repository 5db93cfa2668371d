package rows

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// pictured is a graph as a text, a row a line, its stitches in the order of working.
func pictured(t *testing.T, text string, of func(s GraphStitch) string) string {
	t.Helper()
	g, ok := GraphOf(Read("t", []byte(text), Options{TermsSet: true}), "", 0)
	require.True(t, ok)
	var b strings.Builder
	for _, row := range g.Rows {
		for _, s := range row.Stitches {
			b.WriteString(of(s))
		}
		b.WriteByte('\n')
	}
	return b.String()
}

// A yarn that is taken up goes on until another one is; a slipped stitch keeps its own, and a stitch
// that names its yarn changes none of the others. Counted by hand.
func TestTheYarnOfATextGoesOnFromRowToRow(t *testing.T) {
	assert.Equal(t, `AAAAAAAA
AAAAAAAA
BBABBABB
BBABBABB
AAAAAAAA
CCCCCCCC
CCDCCDCC
`, pictured(t, `Mosaic
With A, CO 8 sts.
Row 1 (RS): Knit.
Row 2 (WS): With B, p2, sl 1, p2, sl 1, p2.
Row 3: K2, sl 1, k2, sl 1, k2.
Row 4: With A, purl.
Change to C.
Row 5: Knit.
Row 6: P2, p1 in D, p2, p1 in D, p2.
`, func(s GraphStitch) string { return s.Colour }))
}

// A short row leaves stitches waiting on the needle, which a later row comes to. Counted by hand:
// 8 of 10 from the right, back over 6, on over 7, and back to the end.
func TestStitchesBeyondTheTurnOfAShortRowWait(t *testing.T) {
	assert.Equal(t, `kkkkkkkkkk
kkkkkkkkkk
pppppppp..
..kkkkkk..
..ppppppp.
.kkkkkkkkk
pppppppppp
`, pictured(t, `Heel
CO 10 sts.
Row 1 (RS): Knit.
Row 2: P8, w&t.
Row 3: K6, w&t.
Row 4: P7, turn.
Row 5: K to end.
Row 6: Purl. (10 sts)
`, func(s GraphStitch) string {
		if s.Idle {
			return "."
		}
		return s.Stitch.ID
	}))
}

// A crossing is described in words that have commas of their own, among abbreviations on one line or on
// several; what is cast on after them begins the work.
func TestCrossingsAreDescribedAmongAbbreviations(t *testing.T) {
	for _, list := range []string{
		"Abbreviations: k = knit, p = purl; 2/2 RC: sl next 2 sts to cable needle and hold in back, k2, k2 from cable needle; st = stitch.\n",
		"Abbreviations:\n2/2 RC: sl next 2 sts to cable needle and hold in back, k2, k2 from cable needle.\nst: stitch\n",
	} {
		x := Read("t", []byte("Panel\n"+list+"CO 8 sts.\nRow 1 (RS): P2, k4, p2.\nRow 2: K2, p4, k2.\nRow 3: P2, 2/2 RC, p2.\n"), Options{TermsSet: true})
		g, ok := GraphOf(x, "", 0)
		require.True(t, ok)
		require.Len(t, g.Rows, 4)
		c := g.Rows[3].Stitches[3].Cross
		require.NotNil(t, c)
		assert.Equal(t, Cross{Held: 2, Over: 2}, *c)
	}
}
