package rows

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Ways of writing that the corpus does not hold, each text correct: turned to after the
// corpus, so that the reader is not made for it alone. Common practice.
var otherDress = map[string]string{
	"dashes, commas, full stops": `Terms: US
Sizes: S (M, L)
Notes: Turning chains do not count as a stitch.
Ch 21 (25, 29).
Row 1: Sc in second ch from hook and each ch across, turn. (20 (24, 28) sc)
Row 2: Ch 1, sc in each st to end, turn - 20 (24, 28) sc
Row 3: Ch 1. Sc in each of the next 5 sts, 2 sc in next st, sc in each remaining st across. Turn. 21 (25, 29) sts
Row 4 (WS): Ch 1, sc 5, sc2tog, sc in remaining sts, turn [20 (24, 28) sc]
Row 5: Ch 1, *sc in next 2 sts, ch 2, skip 2 sts* across, turn. (10 (12, 14) sc, 5 (6, 7) ch-2 sps)
Row 6: Ch 1, sc in each sc and 2 sc in each ch-2 sp across, turn. 20 (24, 28) sc
Row 7: Ch 1, sc in first st, hdc in next st, [dc in next 2 sts] 3 times, sc in each st to last st, sc in last st; turn. (20 (24, 28) sts)
Row 8: Repeat Row 2.
Row 9: As Row 2.
`,
	"rounds joined by a slip stitch without the word": `Terms: US
Notes: Ch 3 counts as dc. Ch 1 does not count.
Ch 4, sl st in first ch to form ring.
Rnd 1: Ch 3, 11 dc in ring, sl st in top of beg ch 3 to join. 12 dc
Round 2: Ch 3, dc in same st as join, 2 dc in each dc around; join with a sl st in top of ch-3. (24 dc)
Rnd 3: Ch 1, (sc, ch 3, sc) in same st, *skip next st, (sc, ch 3, sc) in next st; repeat from * around, skip last st, join. (24 sc, 12 ch-3 sps)
Rnd 4: Ch 1, sc in each sc around, sl st in first sc. (24 sc)
`,
	"knitting in sentences": `Terms: US
Using main colour and 4 mm needles, cast on 40 sts.
Work in k1, p1 rib for 6 rows.
Row 7 (RS): K2, *yo, k2tog; rep from * to last 2 sts, k2. [40 sts]
Row 8 and all WS rows: Purl.
Row 9: K to end.
Row 11: Knit 5, k2tog, knit to last 7 sts, ssk, knit 5. (38 sts)
Next row: P.
Beg with a knit row, work 10 rows in stockinette stitch.
Decrease row (RS): K1, ssk, k to last 3 sts, k2tog, k1. 36 sts rem.
Cont in stockinette stitch until piece measures 10 in from beg, ending with a WS row.
BO 5 sts at beg of next 2 rows - 26 sts.
Work 4 rows without shaping.
Bind off rem sts loosely.
`,
	"amigurumi": `Terms: US
R1: 6sc in MR (6)
R2: inc x6 (12)
R3: (sc, inc) x 6 (18)
R4: (2 sc, inc)*6 (24)
R5: [sc in next 3 sts, inc] repeat 6 times (30)
R6-8: sc around (30)
R9: (sc 3, dec) x6 (24)
R10: sc in each st around. (24)
`,
	"a foundation row with its chain": `Terms: UK
Foundation row: Ch 31, 1 dc into 2nd ch from hook, 1 dc into each ch to end, turn. 30 dc.
Row 1: 1 ch (does not count as st), 1 dc into first st, *1 ch, miss 1 st, 1 dc into next st; rep from * to last st, 1 dc into last st, turn.
Row 2: 1 ch (does not count as st), dc in each dc and 1-ch sp to end. 30 sts.
Fasten off and weave in ends.
`,
	"loops, first and last": `Terms: US
Notes: ch 1 does not count
Ch 11
Row 1: sc in 2nd ch from hook, sc in each ch across (10)
Row 2: ch 1 & turn, sc in each st across (10)
Row 3: ch 1, turn, sc in next 4 sts, sc2tog over next 2 sts, sc in last 4 sts (9 sts)
Row 4: Turn, ch 1, sc across. 9 sts total
Row 5: Ch 1, sc tbl in each st across, turn. (9)
Row 6: Ch 1, sk first st, sc in next st and in each st across. (8)
Row 7: Ch 1, 2 sc in first sc, sc in each sc until last sc, 2 sc in last sc (10 sc)
Row 8: Sl st across first 2 sts, ch 1, sc in next 6 sts, leave last 2 sts unworked. (6 sc)
`,
}

func TestOtherWaysOfWritingAreReadAndFit(t *testing.T) {
	for name, src := range otherDress {
		x := Read("t", []byte(src), Options{})
		rep := Check(x, Options{})
		for _, f := range rep.Findings {
			assert.Failf(t, name, "line %d: %s %s | %s", f.Pos.Line, f.Kind, f.Message, f.Have)
		}
		assert.Equal(t, rep.Read.Lines, rep.Read.Whole, name)
	}
}
