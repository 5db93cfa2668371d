package work

import (
	"fmt"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// oldHeads are texts in which a phrase stands, and the count that it comes to.
var oldHeads = map[string]string{
	"K": "CO 43 sts.\nRow 1: %s. (%d sts)\n",
	"S": "CO 60 sts.\n%s.\nNext row: K to end. (%d sts)\n",
	"C": "Terms: US\nNotes: Ch 1 does not count as a stitch.\nCh 44.\n1st row: 1 s c in 2nd ch from hook, 1 s c in each remaining ch, ch 1, turn. (43 s c)\n2nd row: %s, ch 1, turn. (%d sts)\n",
	"U": "Terms: UK\nNotes: 1 ch. does not count as a stitch.\nMake 44 ch.\n1st row: 1 d.c. into 2nd ch. from hook, 1 d.c. into each ch., 1 ch., turn. (43 d.c.)\n2nd row: %s, 1 ch., turn. (%d sts)\n",
	"R": "Terms: US\nNotes: Ch 1 does not count as a stitch.\nCh 8, join to form a ring.\n1st rnd: %s. (%d sts)\n",
	"Q": "Terms: US\nNotes: Ch 1 does not count as a stitch.\nCh 8, join to form a ring.\n1st rnd: 24 s c in ring. (24 s c)\n2nd rnd: %s. (%d sts)\n",
	"T": "Terms: US\nNotes: Ch 1 does not count as a stitch.\nCh 8, join to form a ring.\n1st rnd: 24 s c in ring. (24 s c)\n2nd rnd: %s.\n3rd rnd: 1 s c in each loop. (%d s c)\n",
	"L": "CO 43 sts.\n%s K. 2 tog., k. to end. (%d sts)\n",
}

// How books from before 1960 tell a row, and how many stitches it then has: words written down from how such books speak, none
// out of one (common practice). Each is read whole, nothing is found, and one stitch more is.
func TestWordsOfOldBooksComeToTheirCounts(t *testing.T) {
	src, err := os.ReadFile("../testdata/old-words.tsv")
	require.NoError(t, err)
	for l := range strings.Lines(string(src)) {
		f := strings.Split(strings.TrimSpace(l), "\t")
		require.Len(t, f, 3, l)
		n, err := strconv.Atoi(f[2])
		require.NoError(t, err, l)
		rep := Check(Read("t", fmt.Appendf(nil, oldHeads[f[0]], f[1], n), Options{}))
		assert.Equal(t, rep.Read.Lines, rep.Read.Whole, l)
		assert.Empty(t, rep.Findings, l)
		assert.NotEmpty(t, Check(Read("t", fmt.Appendf(nil, oldHeads[f[0]], f[1], n+1), Options{})).Findings, "%s, said to be one more", l)
	}
}
