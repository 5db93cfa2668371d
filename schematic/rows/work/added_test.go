package work

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/finding"
)

// Each text is right as it stands, and wrong with the second word for the first: the counts were added up by hand.
func TestFormsThatAddStitchesAreCounted(t *testing.T) {
	for name, c := range map[string]struct{ text, is, not string }{
		"chains at the beginning of a row": {"Terms: US\nCh 23.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (22 sc)\n" +
			"Row 2: Ch 11, turn, sc in 2nd ch from hook and in each of next 9 ch, sc in each st across. (32 sc)\n", "(32 sc)", "(33 sc)"},
		"chains at the end of the row before": {"Terms: US\nCh 23.\nRow 1: Sc in 2nd ch from hook and in each ch across. (22 sc)\nRow 2: Ch 1, turn, sc in each sc across, ch 10, turn. (22 sc)\n" +
			"Row 3: Sc in 2nd ch from hook and in each of next 8 ch, sc in each sc across. (31 sc)\n", "(31 sc)", "(30 sc)"},
		"a tab of garter stitch": {"Cast on 3 sts. Knit 6 rows.\nTurn work 90 degrees and pick up and knit 3 sts along the edge, then pick up and knit 3 sts from cast-on edge. (9 sts)\n" +
			"Row 1 (RS): K3, yo, k1, yo, k1, yo, k1, yo, k3. (13 sts)\n", "(13 sts)", "(14 sts)"},
		"second, then each second, then the fourth row": {"Cast on 28 sts.\nInc 1 st at each end of 2nd row, then on 5 foll alt rows, then on foll 4th row. 42 sts.\n", "42", "41"},
		"next and so many second rows":                  {"Cast on 58 sts.\nDec 1 st at each end of next and foll 2 alt rows. 52 sts.\n", "52", "54"},
		"both sides of the middle":                      {"Cast on 58 sts.\nDec 1 st at each side of centre 20 sts on 3 foll 4th rows. 52 sts.\n", "52", "53"},
		"directions behind special stitches": {"Special stitches:\nC4F: slip next 2 sts to cable needle and hold in front, k2, k2 from cable needle.\nDirections:\nCast on 12 sts.\n" +
			"Row 1: K4, C4F, k4. (12 sts)\nRow 2: P2tog, p10. (11 sts)\n", "(11 sts)", "(12 sts)"},
		"rounds of a name and a range": {"Cast on 12 sts, join in the round.\nBrim rnds 1-6: *K2, p2; rep from * to end. (12 sts)\nRnd 7: *K2, k2tog; rep from * around. (9 sts)\n", "(9 sts)", "(8 sts)"},
	} {
		t.Run(name, func(t *testing.T) {
			assert.Empty(t, check(c.text))
			list := check(strings.Replace(c.text, c.is, c.not, 1))
			require.Len(t, list, 1)
			assert.Equal(t, "rows/stated", list[0].Kind)
		})
	}
}

func TestAVStitchThatNothingDefinesIsAskedForAndNotCounted(t *testing.T) {
	text := "Terms: US\nCh 4, join to form a ring.\nRow 1: Ch 3, 8 dc in ring, turn.\nRow 2: Ch 3, V-st in next dc, dc in next dc, turn.\nRow 3: Ch 3, V-st in next dc, dc in next 40 dc, turn.\n"
	list := check(text)
	require.Len(t, list, 1)
	assert.Equal(t, "rows/meaning", list[0].Kind)
	assert.Contains(t, list[0].Message, "V-stitch")
	x := Read("t", []byte(text), Options{})
	assert.Equal(t, x.Read.Lines, x.Read.Whole)
}

func TestASentenceThatCastsOnIsNoProse(t *testing.T) {
	x := Read("t", []byte("Cast on 30 sts.\nKnit 4 rows.\nDo not break the yarn, but cast on 8 sts for the front of the neck with the other xyz sts as before.\nThe cable can be made wider by adding groups of 4 sts worked through the k2, p2 rib.\n"), Options{})
	assert.Equal(t, 3, x.Read.Lines)
}

func TestStitchesThatStayUnworkedAreAskedFor(t *testing.T) {
	list := check("Terms: US\nCh 41.\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. (40 sc)\nRow 2: Ch 1, sc in next 24 sts, turn. (24 sc)\n")
	require.Len(t, list, 1)
	assert.Equal(t, finding.Note, list[0].Severity)
	assert.Contains(t, list[0].Message, "16 stitches")
}

func TestWordsOfPrintAreReadAsTheyAreMeant(t *testing.T) {
	for name, text := range map[string]string{
		"rows in a fabric, and increases knitwise": "Cast on 10 sts. P 1 row.\nNext row: Inc K wise into every st - 20 sts. Beginning with a P row, st-st 5 rows.\nNext row: K5, inc in next st, K8, inc in next st, K5 - 22 sts.\n",
		"double crochet in full, and a count told": "Notes: Ch 3 counts as dc.\nCh 3, join to form a ring.\nRow 1: chain 3, 9 double crochet in ring.\nRow 2: chain 3, turn, double crochet in next double crochet, (double crochet in next double crochet, 2 double crochet in next double crochet) across. You will find that you make 14 double crochet.\n",
		"sizes with hyphens":                       "Sizes: 38 (40 - 42)\nCast on 136 (144, 152) sts.\nBind off 7 (8, 9) sts at beg of next 2 rows. 122 (128, 134) sts.\nBind off 5 (5, 6) sts at beg of next 2 rows. 112 (118, 122) sts.\n",
		"what the maker does is no row of its own": "Cast on 3 sts.\nRow 1: Knit 3 (3 stitches) (notice that this and all odd rows are knit)\nI use a marker to mark the center k1 stitch.\nRow 2: K1, yo, k1, yo, k1 (5 stitches)\nRow 3: Knit 5 (5 stitches)\n",
	} {
		t.Run(name, func(t *testing.T) {
			x := Read("t.txt", []byte(text), Options{})
			assert.Equal(t, x.Read.Lines, x.Read.Whole)
			for _, f := range check(text) {
				assert.Equal(t, finding.Note, f.Severity, f.Message)
			}
		})
	}
}
