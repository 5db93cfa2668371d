package work

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/finding"
)

// Forms of knitting as it is published, counted by hand.
func TestFormsOfKnittingAgree(t *testing.T) {
	const yoke = "CO 184 sts. Join in the rnd.\nRnd 1: Knit.\n"
	for name, text := range map[string]string{
		"a division worked as a row":               yoke + "Divide for sleeves: K27, place next 38 sts on holder, CO 6 sts, k54, place next 38 sts on holder, CO 6 sts, k27. 120 sts.\nRnd 2: Knit. 120 sts.\nRib rnd: *K2, p2; rep from * around.\n",
		"a division from a star":                   yoke + "Separate body and sleeves: *Place 38 sts on holder, CO 6 sts, k54; rep from * once more. 120 sts.\nRnd 3: Knit. 120 sts.\n",
		"a row with a name is counted or not":      yoke + "Dividing rnd: *Place 38 sts on holder, CO 6 sts, k54; rep from * once more. 120 sts.\nRnd 2: Knit. 120 sts.\n",
		"stitches of two sorts make up the number": "Cast on 16 stitches (14 + 2 edge sts).\nRow 1: Knit.\nRow 2: K16.\n",
		"a strand picked up, in letters":           "Cast on 40 sts.\nRow 1 (RS): K1, [p/u & k1 tbl], k to last st, p/u & k1 tbl, k1. (42 sts)\nRow 2: Purl.\n",
		"each of a pair under one round":           "Cast on 40 sts. Join.\nRnd 1: Knit.\nRnd 2:\nLeft mitten: K18, pm, m1, k2, m1, pm, k20.\nRight mitten: K20, pm, m1, k2, m1, pm, k18.\nRnd 3: Knit. (42 sts)\n",
		"what was worked waits on a holder":        "Cast on 43 sts.\nKnit 4 rows.\n(RS) K13 and sl to holder for right half of heel; k17 and sl to 2nd holder for instep; k13 for left half of heel. Work on these 13 sts only.\nRow 1: P13.\nRow 2: Sl 1, k12.\n",
		"so many of them by number":                "Cast on 43 sts.\nKnit 4 rows.\nNext row: K13 and place these 13 sts on a holder for right front, k17 and put them on waste yarn, k13. 13 sts.\n",
		"a sum and what it makes":                  "Cast on 40 sts.\nRnd 1: Knit. [40]\nRnd 2: Knit to end, make 1. [14 + 13 + 14 = 41]\n",
		"a heel worked to and fro counts all":      "Cast on 39 sts.\nKnit 11 rows.\n1st Row: K15, k2tog, k5, skp, sl 1, turn.\n2nd Row: K2tog, k5, skp, sl 1, turn.\n3rd Row: K2tog, k5, skp, sl 1, turn.\n4th Row: K2tog, k5, skp, sl 1, turn.\n5th Row: K2tog, k5, skp, k to end. 29 sts.\n",
		"on to the marker behind held stitches":    "CO 88 sts. PM for beg of rnd and join.\nSet-up rnd: K14, pm, k30, pm, k14, pm, k to end.\nInc rnd: *K1, M1L, k to 1 st before marker, M1R, k1, sm; rep from * 3 more times. 96 sts.\nNext rnd: Knit.\nDivide: *Place next 16 sts on waste yarn for sleeve, CO 8 sts for underarm, k to next marker, remove marker; rep from * once more. 80 sts.\n",
		"two sizes told in a sentence":             "Directions are for children, with adult sizing in parenthesis\n\nCast on 76 (86)\nKnit 14 rows.\nDec row - K 35 (40), K2tog, P2, SSK, K 35 (40)\nNext row - P 34 (39), P2tog, K2, P2tog, P 34 (39)\n",
		"what becomes of it stands in a bracket":   "Cast on 32 sts.\nRow 1: K10, p1, k10, p1, k10 (the 2 purl stitches will create a seam on the right side!)\nRow 2: Knit.\n",
		"what a needle will hold is no count":      "Cast on 37 sts.\nKnit 2 rows.\nThe first needle, with 19 sts, will hold the cable pattern for both mitts.\nNext row: K37.\n",
		"no rows in the line of the gauge":         "Gauge—7½ sts to 1 inch—Waist 24 inches—Chest 26 inches.\nCast on 40 sts.\nRow 1: Knit. (40 sts)\n",
		"two sizes as two lines of counts":         "Cast on loosely\n38 sts\n40 sts\n1st row: *K2, p2; rep from * across to last 6 sts, k6.\n",
		"decreases by their longer short name":     "Cast on 40 sts.\nKnit 4 rows.\nDecr. 1 st. at the beg. and at the end of every K row until 30 sts. are left.\nNext row: K30.\n",
		"at an edge in other words":                "FRONT\nCast on 40 sts.\nKnit 4 rows.\nDecrease 1 st on neck edge every other row 5 times.\nDec 1 st inside front border each row until 31 sts remain.\nNext row: K31.\n",
		"held for a part":                          "Cast on 80 sts.\nKnit 4 rows.\nDividing Row (right side): K16 and place these sts on a holder for right front, bind off 8 sts for underarm, knit until you have 32 sts on right needle then place these sts on a holder for back, bind off 8 sts for underarm, knit to end of row for left front—16 sts remain on needle for left front.\n",
		"a pattern over a piece is no yarn over":   "Cast on 47 sts.\nKnit 4 rows.\nLeave white attached and work mosaic pattern over body of stocking:\nMosaic pattern\nRow 1: K1, *k1, sl 1; rep from * across, end k2.\n",
		"rows are told ahead within a line":        "Cast on 40 sts.\nMoss sts: 1st row: *K1, p1; rep from *, 2nd and 4th row: P over P and K over K. 3rd row: *P1, k1; rep from *.\n",
		"what a row ends in":                       "Cast on 50 sts. Join.\nRnd 1: P2, *k6, p4* around to last 8 sts, end in k6, p2.\n",
		"kb as an increase":                        "Cast on 8 sts.\nKnit 2 rows.\nNext row: kb, k to last two sts, kb, k1. Ten sts.\n",
		"again until there are enough":             "1. Cast on 4 sts.\n2. Knit 1 row.\n3. Next row, k2, yo, k to end.\nRepeat this until you have 45 sts.\nRow 2: K45.\n",
	} {
		rep := Check(Read("t", []byte(text), Options{}))
		assert.Equal(t, rep.Read.Lines, rep.Read.Whole, name)
		for _, f := range rep.Findings {
			assert.Equal(t, finding.Note, f.Severity, "%s: %d: %s", name, f.Pos.Line, f.Message)
			assert.NotEqual(t, "rows/not-read", f.Kind, "%s: %d: %s", name, f.Pos.Line, f.Message)
		}
	}
}

// Behind a line that was not read, a row that does not fit the stitches before it is no finding.
func TestUnreadLineLeavesNothingToHoldAgainst(t *testing.T) {
	rep := Check(Read("t", []byte("Cast on 24 sts.\nKnit 3 rows.\nWorking over both legs, place coloured markers at each end of 1st row.\n19th row: K10, k2tog four times, k12, k2tog four times, k10. (40 sts)\n"), Options{}))
	for _, f := range rep.Findings {
		assert.Equal(t, finding.Note, f.Severity, f.Message)
	}
}

// 184 - 2 x 38 + 2 x 6 = 120: what is put on hold is not left over, however that is said; two stitches of a cable do not wait so.
func TestStitchesPutOnHoldAreNotLeftOver(t *testing.T) {
	for _, put := range []string{"place next 38 sts on hold", "put the next 38 sts on hold", "slip 38 sts on hold", "leave next 38 sts on hold", "set next 38 sts aside", "move next 38 sts to waste yarn", "sl next 38 sts to spare needle"} {
		text := "CO 184 sts. Join in the rnd.\nRnd 1: Knit.\nNext rnd: K54, " + put + ", CO 6 sts, k54, " + put + ", CO 6 sts. %d sts.\n"
		for stated, findings := range map[int]int{120: 0, 121: 1} {
			rep := Check(Read("t", fmt.Appendf(nil, text, stated), Options{}))
			assert.Equal(t, rep.Read.Lines, rep.Read.Whole, put)
			assert.Len(t, rep.Findings, findings, put)
		}
	}
	rep := Check(Read("t", []byte("CO 20 sts.\nRow 1 (RS): Knit.\nRow 2: Purl.\nRow 3: K8, slip next 2 sts to spare needle, k2, k2 from spare needle, k8. 20 sts.\n"), Options{}))
	assert.Empty(t, rep.Findings)
}
