package work_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/finding"
	"flatwright/schematic/rows"
)

// Ways of telling toys and motifs that say something else than their words mostly do; own lines in forms of common practice.
func TestRowsOfToysThatMeanSomethingElseFitToTheStitch(t *testing.T) {
	for name, text := range map[string]string{
		"so many in one stitch":         "Rnd 1: 4 sc in magic ring (4)\nRnd 2: (sc, 3 sc) 2 times (8)\nRnd 3: sc in each st (8)\n",
		"an increase to three":          "Rnd 1: 6 sc in magic ring (6)\nRnd 2: [inc3, inc, sc] x 2 (12)\nRnd 3: 12 sc (12)\n",
		"so many in all":                "Rnd 1: 6 sc in magic ring (6)\nRnd 2: 6 inc (12)\nRnd 3: 12 sc in the back bump of each st (12)\nRnd 4: 12 sc (12)\n",
		"closed through both layers":    "Rnd 1: 6 sc in magic ring (6)\nRnd 2: 6 inc (12)\nRnd 3: 12 sc (12)\nRnd 4: Fold flat, 6 sc through both layers to close (6)\n",
		"letters with full stops":       "Rnd 1: 6 sc in m.r. (6)\nRnd 2: 6 inc in b.l.o. (12)\nRnd 3: 12 sc in f.l.o. (12)\nF.O.\n",
		"counts behind other signs":     "Rnd 1: 6 sc in magic ring -> 6\nRnd 2: inc x 6 |12|\nRnd 3: (sc, inc) x 6 <18>\nRnd 4: (2 sc, inc) x 6 => 24\n",
		"a count that does not close":   "Rnd 1: 6 sc in magic ring (6)\nRnd 2: 6 inc (12\nRnd 3: (sc, inc) x 6 (18)\n",
		"points along their own chains": "Rnd 1: 10 sc in magic ring (10)\nRnd 2: *Ch 5, sc in 2nd ch from hook, hdc in next ch, dc in next 2 ch, skip 1 st, sl st in next st; rep from * 4 times more (5 points)\n",
		"a second leg":                  "Rnd 1: 6 sc in magic ring (6)\nRnd 2: 6 inc (12)\nRnd 3: Ch 3, join to first leg with sc, 11 sc around first leg, 3 sc along the ch, 12 sc around second leg, 3 sc along other side of ch (30)\nRnd 4: 30 sc (30)\n",
		"a dash behind a bare number":   "1- 6 sc in magic ring (6)\n2- 2 sc in each st around (12)\n3- sc in each st around (12)\n4 thru 6- repeat round 3.\n7- 12 sc (12)\n",
		"a sentence behind the count":   "Rnd 1: 6 sc in magic ring (6)\nRnd 2: 6 inc (12) These increases should lie in front.\nRnd 3: 12 sc (12)\nPlace 8 mm safety eyes between rnds 2 & 3 with 4 stitches between.\nRnd 4: 12 sc (12), do not finish off.\nRnd 5: 12 sc (12)\n",
		"numbers before and behind":     "Rnd 1: 9 sc in magic ring (9)\nRnd 2: *2 sc, sc 2* around (12)\nRnd 3: 12 sc (12)\n",
		"a ring of chains in its row":   "Rnd 1: Ch 16, join the last ch to the first one, 1 sc in same st, 15 sc (16)\nRnd 2: 16 sc (16)\n",
	} {
		rep := rows.Check(rows.Read("t", []byte("Ball\n\nTerms: US\n\n"+text), rows.Options{}), rows.Options{})
		assert.Empty(t, rep.Findings, name)
		assert.Equal(t, rep.Read.Lines, rep.Read.Whole, name)
	}
}

// The other meaning is taken only where all fits: own lines.
func TestRowsOfToysWithAWrongNumberAreTold(t *testing.T) {
	for name, text := range map[string]string{
		"heaped, not to the stitch": "Rnd 1: 6 sc in magic ring (6)\nRnd 2: 6 inc (12)\nRnd 3: (sc, 3 sc) 3 times (13)\nRnd 4: 13 sc (13)\n",
		"a plain row":               "Rnd 1: 6 sc in magic ring (6)\nRnd 2: 6 inc (12)\nRnd 3: 10 sc, 2 sc (13)\n",
		"through both layers":       "Rnd 1: 6 sc in magic ring (6)\nRnd 2: 6 inc (12)\nRnd 3: 12 sc (12)\nRnd 4: Fold flat, 6 sc through both layers to close (7)\n",
	} {
		rep := rows.Check(rows.Read("t", []byte("Ball\n\nTerms: US\n\n"+text), rows.Options{}), rows.Options{})
		assert.NotEmpty(t, rep.Findings, name)
	}
}

// What may be meant otherwise is no finding: a bobble of which the text says that the stitch behind it closes it, a row that may go along
// the chains below it. Own lines; counted by hand: (23 - 3) / 5 = 4 bobbles, 12 loops of 5 chains.
func TestWhatMayBeMeantOtherwiseIsNoFinding(t *testing.T) {
	const bobble = "Row 1: Ch 24, hdc in 2nd ch from hook and in each ch across (23 hdc)\nRow 2: Ch 1, hdc in first 3 sts, *bobble in next st, hdc in next 3 sts*; repeat from * to * across (4 bobbles, 15 hdc)\n"
	const loops = "Rnd 1: 12 sc in magic ring (12)\nRnd 2: *Ch 5, sc in next sc; rep from * around (12 loops)\nRnd 3: Ch 1, *1 sc in each of the 1st 2 sts, 3 sc in next st, 1 sc in each of the next 2 sts; repeat from * 11 times\n"
	for _, text := range []string{
		"Bobble: Yarn over and pull through all 6 loops. Sc in next stitch to complete the bobble.\n" + bobble,
		loops,
	} {
		rep := rows.Check(rows.Read("t", []byte("Mat\n\nTerms: US\nCh 1 does not count as a st.\n\n"+text), rows.Options{}), rows.Options{})
		for _, f := range rep.Findings {
			assert.NotEqual(t, finding.Warning, f.Severity, f.Message)
		}
	}
}

// A bracket says what was just made: own wordings; four shells over 25 stitches.
func TestABracketNamesAShell(t *testing.T) {
	for _, words := range []string{"(this is a shell)", "(this makes a shell)", "(these form one shell)", "(= shell)", "(called shell)", "(this is the shell)", "(which makes a shell)", "(referred to as shell)"} {
		rep := rows.Check(rows.Read("t", []byte("Shawl\n\nTerms: US\n\nCh 26.\nRow 1: Sc in 2nd ch from hook and in each ch across (25 sc)\nRow 2: Ch 1, sc in first sc, *skip 2 sc, 5 dc in next sc "+words+", skip 2 sc, sc in next sc; repeat from * across (4 shells)\nRow 3: Ch 1, sc in first sc, *ch 2, sc in center of next shell, ch 2, sc in next sc; repeat from * across (9 sc)\nRow 4: Ch 1, sc in first sc, *skip ch-2 sp, shell in next sc, skip ch-2 sp, sc in next sc; repeat from * across (4 shells)\n"), rows.Options{}), rows.Options{})
		assert.Empty(t, rep.Findings, words)
	}
}

// A slip stitch into the top of the chain that began the round joins it, and works none of the stitches that a repeat leaves; a name before
// a marker is only its name. Own lines; counted by hand: 3 + 7 × 3 = 24; 36 + 2 + 2 = 40.
func TestWhatClosesARoundAndWhatMarksItWorkNoStitch(t *testing.T) {
	const hat = "Rnd 1: Ch 2 (counts as first dc), 11 dc in ring, sl st to top of ch 2. (12 dc)\nRnd 2: Ch 2 (counts as first dc), dc in same st, 2 dc in each st around, sl st to top of ch 2. (24 dc)\n" +
		"Rnd 3: Ch 2 (counts as first dc), 2 dc in same st, *sk next 2 sts, 3 dc in next st; rep from * until 2 sts are left, sl st to top of beginning ch-2.\nRnd 4: Ch 1, sc in each st around, sl st to first sc. (24 sc)\n"
	const mitt = "CO 36 sts, PM and join in the round.\nRound 1: k2, kfb, PM, k to last 3 sts, PM, kfb, k2. (38 sts)\nRound 2: Knit.\n" +
		"Round 3: Knit to 1 st before increase marker, inc in next st, sm, work to second thumb marker, slip marker 2, inc in next st, k to end. (40 sts)\n"
	for _, text := range []string{hat, mitt} {
		rep := rows.Check(rows.Read("t", []byte("Piece\n\nTerms: US\n\n"+text), rows.Options{}), rows.Options{})
		assert.Empty(t, rep.Findings)
		assert.Equal(t, rep.Read.Lines, rep.Read.Whole)
	}
	wrong := rows.Check(rows.Read("t", []byte("Piece\n\nTerms: US\n\n"+strings.Replace(mitt, "(40 sts)", "(41 sts)", 1)), rows.Options{}), rows.Options{})
	assert.Len(t, wrong.Findings, 1)
}

// A count behind which a sentence goes on is that of its own row (36 + 35 = 71, and 10 more 81); a round goes on behind a paragraph until
// it is joined, and words of an increase that is made work none (1 + 1 + 11 × 2 = 24). Own lines.
func TestWhereRowsEndAndWhatTheySayOfThemselves(t *testing.T) {
	const knit = "Cast on 36 sts.\nEyelet row: K1, *yo, k1; repeat from * across; 71 sts. Purl, increasing 10 sts evenly across row; 81 sts. Purl 1 row.\nNext row: K1, *k2tog; repeat from * to end (41 sts). Cast on 5 sts at beg of next 2 rows; 51 sts.\n"
	const round = "Terms: US\nRnd 1: 12 dc in magic ring, join with sl st in first dc. (12 dc)\nRnd 2: Ch 3 (counts as dc), dc in same st. %s\n\nThen work 2 dc in each remaining st around.\n\nJoin with a sl st to the third ch. (24 dc)\nRnd 3: Ch 1, sc in each dc around, join. (24 sc)\n"
	for _, text := range []string{knit, fmt.Sprintf(round, ""), fmt.Sprintf(round, "This makes the first increase."), fmt.Sprintf(round, "1 inc made.")} {
		rep := rows.Check(rows.Read("t", []byte("Piece\n\n"+text), rows.Options{}), rows.Options{})
		assert.Empty(t, rep.Findings, text)
		assert.Equal(t, rep.Read.Lines, rep.Read.Whole, text)
	}
	for _, text := range []string{ // counts that are of a part: 60 - 32 = 28; 56 - 2 = 54; 60 - 20 = 40
		"Cast on 60 sts.\nRow 1 (RS): Knit.\nRow 2: P28, turn, leaving 32 sts. Work on these 28 sts only. (28 sts)\nRow 3: Knit. (28 sts)\n",
		"Cast on 60 sts.\nRow 1 (RS): K20, (20 sts). Place next 20 sts on a holder, k20. (40 sts)\nRow 2: Purl. (40 sts)\n",
		"Cast on 36 sts.\nInc. Row: * K 1, p 1, inc in next st, p 1, repeat from * across. (45 sts)\nNext (dec.) row: K2tog, k to end. (44 sts)\n", // 36 / 4 = 9 more
		"Cast on 56 sts, 14 sts on each needle, join in the round.\nRnd 1: Knit. (56 sts)\nRnd 2: Needle 1: K to last 3 sts, k2tog, k1; 13 sts. Needle 2 and 3: Knit. Needle 4: K1, ssk, k to end; 13 sts. (54 sts)\n",
	} {
		rep := rows.Check(rows.Read("t", []byte("Piece\n\n"+text), rows.Options{}), rows.Options{})
		assert.Empty(t, rep.Findings, text)
		assert.Zero(t, rep.Read.Lines-rep.Read.Whole, text)
	}
	for _, wrong := range []string{strings.Replace(knit, "81 sts", "82 sts", 1), strings.Replace(fmt.Sprintf(round, ""), "(24 dc)", "(25 dc)", 1)} {
		rep := rows.Check(rows.Read("t", []byte("Piece\n\n"+wrong), rows.Options{}), rows.Options{})
		assert.Len(t, rep.Findings, 1, wrong)
	}
}
