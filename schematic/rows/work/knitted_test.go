package work

import (
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
		"again until there are enough":             "1. Cast on 4 sts.\n2. Knit 1 row.\n3. Next row, k2, yo, k to end.\nRepeat this until you have 45 sts.\nRow 2: K45.\n",
	} {
		rep := Check(Read("t", []byte(text), Options{}), Options{})
		assert.Equal(t, rep.Read.Lines, rep.Read.Whole, name)
		for _, f := range rep.Findings {
			assert.Equal(t, finding.Note, f.Severity, "%s: %d: %s", name, f.Pos.Line, f.Message)
			assert.NotEqual(t, "rows/not-read", f.Kind, "%s: %d: %s", name, f.Pos.Line, f.Message)
		}
	}
}

// Behind a line that was not read, a row that does not fit the stitches before it is no finding.
func TestUnreadLineLeavesNothingToHoldAgainst(t *testing.T) {
	rep := Check(Read("t", []byte("Cast on 24 sts.\nKnit 3 rows.\nWorking over both legs, place coloured markers at each end of 1st row.\n19th row: K10, k2tog four times, k12, k2tog four times, k10. (40 sts)\n"), Options{}), Options{})
	for _, f := range rep.Findings {
		assert.Equal(t, finding.Note, f.Severity, f.Message)
	}
}
