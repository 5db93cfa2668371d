package work

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The numbers are worked out by hand: 41, 45 and 49 chains; 10, 11 and 12 repeats of 4 after the first stitch.
func TestHowALineWasReadIsToldStitchByStitch(t *testing.T) {
	src := `Terms: US
Sizes: S (M, L)
Notes: Ch 1 does not count as a stitch.
Back
Ch 42 (46, 50).
Row 1: Sc in 2nd ch from hook and in each ch across, turn. (41 (45, 49) sc)
Row 2: Ch 1, sc in first st, *ch 1, skip next st, 2 dc in next st, sc in each of next 2 sts; rep from * across, turn.
Row 3: Ch 1, grimble in next 3 sts, sc in each st across, turn. (41 (45, 49) sc)
Row 4: Ch 3, dc in next st and in each st across, merrily, turn. (41 (45, 49) dc)
`
	x := Read("t.txt", []byte(src), Options{})
	assert.Equal(t, []string{"line 1: words only, no stitches"}, Explain(x, 1))
	assert.Equal(t, []string{`line 4: the heading of "Back"`}, Explain(x, 4))
	assert.Empty(t, Explain(x, 99))
	assert.Empty(t, Explain(x, 10), "blank")
	for line, want := range map[int]string{
		5: `line 5, Back:
  'Ch 42 (46, 50)': 42 (46, 50) chains
  after it there are 42 (46, 50) stitches`,
		7: `line 7, Back, Row 2:
  before it there are 41 (45, 49) stitches
  'Ch 1': 1 chain, counted as no stitch
  'sc in first st': single crochet; uses 1 stitch of the row below, makes 1 stitch
  '*ch 1, skip next st, 2 dc in next st, sc in each of next 2 sts; rep from * across': again and again, as far as it goes; uses 40 (44, 48) stitches of the row below, makes 40 (44, 48) stitches, makes 10 (11, 12) chains
    'ch 1': 1 chain; makes 10 (11, 12) chains, in all, over 10 (11, 12) times
    'skip next st': passed over; uses 10 (11, 12) stitches of the row below, in all, over 10 (11, 12) times
    '2 dc in next st': 2 double crochet; uses 10 (11, 12) stitches of the row below, makes 20 (22, 24) stitches, in all, over 10 (11, 12) times
    'sc in each of next 2 sts': single crochet; uses 20 (22, 24) stitches of the row below, makes 20 (22, 24) stitches, in all, over 10 (11, 12) times
  'turn': the work is turned
  after it there are 41 (45, 49) stitches`,
	} {
		assert.Equal(t, want, strings.Join(Explain(x, line), "\n"))
	}
	unread := strings.Join(Explain(x, 8), "\n")
	assert.Contains(t, unread, "'grimble in next 3 sts': not read")
	assert.Equal(t, 1, strings.Count(unread, "not read"))
	open := strings.Join(Explain(x, 9), "\n")
	assert.Contains(t, open, "'Ch 3': 3 chains, counted as a stitch")
	assert.Contains(t, open, "'merrily': words that move no stitch")
	assert.Contains(t, open, "the text does not say so, and its counts fit best if ch 3 at the beginning of a row counts as a stitch")
}

// By hand: 10 chains have 10 other sides, and that of the last is taken; 20 are 10 pairs; six stitches of
// which one is passed over two others are four.
func TestWhatIsToldOfLoosePlaces(t *testing.T) {
	for src, want := range map[string][]string{
		"Terms: US\nCh 10.\nRnd 1: Sc in 2nd ch from hook, sc in next 7 ch, 3 sc in last ch, working along the other side of the chain, sc in next 8 ch. (19 sc)\n": {
			"'working along the other side of the chain': along the other side of the chain; now its 9 chains are there to work into"},
		"Cast on 20 sts.\nRow 1: K1, kfb. Repeat to end. (30 sts)\n":                  {"'K1, kfb. Repeat to end': again and again"},
		"Cast on 6 sts.\nRow 1: K2, sl 1, k2tog, psso, k1. (4 sts)\n":                 {"'psso': the slipped stitch is passed over; leaves 1 fewer"},
		"Cast on 20 sts.\nRow 1: K18, k2tog. (20 sts)\nRow 2: K18, k2tog. (19 sts)\n": {"the row makes 18 stitches; the rows after it are worked on the 19 that it states"},
		"Cast on 20 sts.\nRow 1: K18, k2tog. (19 sts)\nRow 2: Knit. \n":               {"after it there are 19 stitches"},
		"Cast on 20 sts.\nRow 1: K18, grimble 2. (20 sts)\nRow 2: Knit.\n":            {"after it there are 20 stitches"},
	} {
		x := Read("t.txt", []byte(src), Options{})
		told := strings.Join(slices.Concat(Explain(x, 2), Explain(x, 3)), "\n")
		for _, w := range want {
			assert.Contains(t, told, w, src)
		}
	}
}
