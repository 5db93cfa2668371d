package work

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/finding"
)

// small are texts of toys, motifs, doilies and slippers that are right, in the forms in which such things are told (common
// practice). Each count is worked out by hand.
var small = map[string]string{
	"a line that says what chains count as":            "Terms: UK\n3 ch at beg of row does not count as a st.\n12 ch.\nRow 1: 1 tr in 3rd ch from hook, 1 tr in each ch to end, turn. 10 tr\nRow 2: 3 ch, 1 tr in each tr to end, turn. 10 tr\nRow 3: Ss across first 2 tr, 3 ch, 1 tr in each tr to last 2 tr, turn. 6 tr\n",
	"and in a list":                                    "Notes\n* Ch 3 at start of row does not count as a stitch.\n* Work tightly.\n\nCh 22.\nRow 1: Dc in 3rd ch from hook and in each ch across, turn. 20 dc\nRow 2: Ch 3, dc in each st across. 20 dc\n",
	"a line that ends with its count goes on nowhere":  "Rnd 1: Ch 10; join with sl st to form a ring. Ch 1, 16 sc in ring; join. 16 sc\nRnd 2: Ch 1, sc around, increasing 8 sts evenly; join. 24 sc\n*Work 2 rnds even, then rep Rnd 2; rep from * once more. 40 sc\n",
	"an increase among stitches that are picked up":    "Sizes: 1 (2)\n\nBack\nCast on 20 (22) sts.\nRow 1: Knit.\nLeave sts on a holder.\n\nNeckband\nPick up and k 12 (13) sts up right front neck, k across 8 (10) sts from right sleeve, 20 (22) sts from back and 8 (10) sts from left sleeve, pick up and k 12 (13) sts down left front neck, inc 1 st at centre back. 61 (69) sts.\n",
	"a stitch closes the last arch":                    "Terms: US\nRnd 1: Ch 4, join. Ch 1, 24 sc in ring. Join. (24 sc)\nRnd 2: Ch 1, sc in same st, *ch 5, sk 1 st, sc in next st; rep from * around, ch 2, join with dc in first sc. (12 ch-5 sps)\nRnd 3: Ch 1, sc in same sp, *ch 6, sc in next ch-5 sp; rep from * around, ending ch 3, dc in first sc (counts as last ch-6 sp). (12 ch-6 sps)\n",
	"a chain and a stitch close the last arch":         "Rnd 1: 12 sc in magic ring, join. (12 sc)\nRnd 2: Ch 1, sc in same st, *ch 5, skip 1 sc, sc in next sc; rep from * 4 times more, join with ch 2, dc in first sc. (6 ch-5 sps)\nRnd 3: Ch 1, sc in same sp, *ch 5, sc in next ch-5 sp; rep from * 4 times more, ch 2, skip next sc, join with dc in first sc. (6 ch-5 sps)\nRnd 4: Ch 1, sc in same sp, *ch 5, sc in next ch-5 sp; rep from * 4 times more, ch 2, dc in first sc to form last ch-5 sp. (6 ch-5 sps)\n",
	"a shell spreads over the stitches that it passes": "Ch 35.\nRow 1: Sc in 2nd ch from hook and in each ch across. Ch 1, turn. (34 sc)\nRow 2: Sc in first sc, (skip 2 sc, 5 dc in next sc, skip 2 sc, sc in next sc) 5 times, skip 2 sc, 3 dc in next sc. Ch 1, turn.\nRow 3: Sc in first dc, (5 dc in next sc, skip 2 dc, sc in next dc) 5 times, 3 dc in next sc. Ch 1, turn. (6 sc, 28 dc)\n",
	"a chain leads over the stitches that it passes":   "Ch 14.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (12 dc)\nRow 2: Ch 3 (counts as dc), dc in next 2 dc, tr in next 6 dc, dc in last 3 dc, turn. (6 dc, 6 tr)\nRow 3: Ch 1, sc in first dc, ch 3, sc in next tr, (ch 1, sc in next tr) 5 times, ch 3, sc in last dc, turn. (8 sc)\n",
	"clusters of so many stitches":                     "Make a magic ring.\nRnd 1: Ch 3 (counts as dc), 11 dc in ring, join. (12 dc)\nRnd 2: Ch 3, dc in same st (counts as 2dc-cl), ch 1, *2dc-cl in next st, ch 1; rep from * around, join. (12 2dc-cl, 12 ch-1 sps)\nRnd 3: Sl st in next ch-1 sp, ch 4 (counts as tr), 2 tr in same sp, ch 3, *4-tr cluster in next ch-1 sp, ch 3; rep from * around, join.\n",
	"the last arch over what a round passes":           "Ch 10, join with sl st to form a ring.\nRnd 1: Ch 4 (counts as tr), 23 tr in ring, join. (24 tr)\nRnd 2: Sc in same place as sl st, *ch 7, skip 2 tr, sc in next tr; rep from * around, join. (8 sc, 8 ch-7 loops)\nRnd 3: Sl st in next loop, ch 3 (counts as dc), 6 dc in same loop, *in next loop make dc, ch 9 and dc; 7 dc in next loop; rep from * around, join. (36 dc, 4 ch-9 loops)\n",
	"a bracket twice in each space":                    "Ch 4, join with sl st to form a ring.\nRnd 1: Ch 6 (counts as dc and ch 3), (dc, ch 3) 7 times in ring, join with sl st in 3rd ch of ch-6. (8 dc, 8 ch-3 sps)\nRnd 2: Sl st in first ch-3 sp, ch 6 (counts as dc and ch 3), (dc, ch 3) in same sp, (dc, ch 3) twice in each remaining ch-3 sp around, join. (16 dc, 16 ch-3 sps)\n",
	"a chain stands for the stitch before the 2nd":     "Ch 14.\nRow 1: Sc in 2nd ch from hook and in each ch across, ch 1, turn. (13 sc)\nRow 2: Sc in 1st st, *ch 1, sk 1 st, sc in next st; rep from * to end, ch 2, turn.\nRow 3: Dc in 2nd st, *dc in each sc and ch-1 sp* to end, ch 1, turn. (13 sts)\nRow 4: Repeat Row 2. Ch 1, turn.\nRow 5: Sc in 1st st and in each st and sp across. (13 sc)\n",
	"groups are no stitches":                           "Ch 6, join with sl st to form a ring.\nRnd 1: Ch 3 (counts as dc), 15 dc in ring, join. (16 dc)\nRnd 2: Ch 3, 2 dc in same st, ch 2, *skip next dc, 3 dc in next dc, ch 2; rep from * around, join. 8 3-dc groups.\nRnd 3: Ch 3, dc in same st, dc in next dc, 2 dc in next dc, ch 2, *2 dc in next dc, dc in next dc, 2 dc in next dc, ch 2; rep from * around, join. (40 dc)\n",
	"a star in quotes, and stitches into no place":     "Ch 4, join with sl st to form a ring.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, *ch 2, 3 dc. Repeat from '*' 2 more times, ch 2, join. (12 dc, 4 ch-2 sps)\n",
	"a decrease behind stitches goes across with them": "Cast on 55 sts.\nRow 1: Knit 3 knit 2 together across\nRow 2: Purl.\nRow 3: K2, k2tog across.\nRow 4: Purl. (33 sts)\n",
	"a repeat without a star goes up to the last ones": "Cast on 83 sts.\nRow 1: K 10, k2tog repeat to last 11, k to end. 77 sts\nRow 2: Knit.\nRow 3: K2tog, k 10, repeat to last 5 sts, k2tog, k to end. 70 sts\nRow 4: Knit.\n",
	"an increase named beside its stitches":            "Rnd 1: 12 dc in magic ring, join. (12 dc)\nRnd 2: *dc in next dc, 2dc (inc) in next dc; rep from * around, join. (18 dc)\nRnd 3: *dc in next 2 dc, 2 dc (increase) in next dc; rep from * around, join. (24 dc)\n",
	"ordinals of all sizes stand in two brackets":      "Sizes: S (M, L) (XL, 2XL, 3XL)\n\nSleeve\nCast on 36 (36, 38) (38, 40, 40) sts.\nWork in st st, inc 1 st at each end of every 7th (5th, 4th) (3rd, 3rd, 2nd) row 6 (8, 9) (12, 14, 17) times. 48 (52, 56) (62, 68, 74) sts.\n",
	"a size told in two units is one":                  "Size: 12 cm (4,5 in), when made with the yarn told\nRnd 1: 6 sc in magic ring (6)\nRnd 2: inc 6 times (12)\nRnd 3: |inc, sc in next st| x6 (18)\nRnd 4: |inc, sc in next 2 st| x6 (24)\n",
	"sizes with and before the last":                   "Sizes: small, medium and large\nCh 20 (22, 24).\nRow 1: Sc in 2nd ch from hook and in each ch across, turn. 19 (21, 23) sc\nRow 2: Ch 1, sc in each sc across. 19 (21, 23) sc\n",
	"how far apart the eyes stand":                     "Rnd 1: 6 sc in MR (6)\nRnd 2: 6 inc (12)\nRnds 3-5: (3 rnds) 12 sc (12)\nInsert the eyes between rounds 3-4. 6 sc apart.\nInsert the nose between rounds 4 and 5, with an interspace of 3 stitches.\nRnd 6: 6 dec (6)\n",
	"what will be done next is told":                   "Rnd 1: 6 sc in MR (6)\nRnd 2: inc x 6 (12)\nIn the next round, we'll join both legs together and start working the body.\n",
	"slip stitches along the first loop of a round": "Rnd 1: Ch 6; join with sl st to first ch to form ring; ch 3 (counts as first dc), 11 dc in ring; join with sl st to first dc. (12 dc)\n" +
		"Rnd 2: Ch 4 (counts as first dc and ch 1), [dc in next dc, ch 1] around; join as before. (12 dc and 12 ch-1 sps)\n" +
		"Rnd 3: Sl st in ch-1 sp, ch 1, sc in same sp, ch 3, [sc in next ch-1 sp, ch 3] around; join with sl st to first sc. (12 sc and 12 ch-3 sps)\n" +
		"Rnd 4: Sl st in next 3 ch (centre of sp), ch 1, sc in same sp, ch 4, [sc in next ch-sp, ch 4] around; join with sl st to first sc. (12 sc and 12 ch-4 sps)\n" +
		"Rnd 5: Sl st in next 4 ch, ch 1, sc in same sp, ch 6, [sc in next ch-sp, ch 6] around; join with sl st to first sc. (12 sc and 12 ch-6 sps)\n" +
		"Rnd 6: Sl st in next 3 ch, ch 1, sc in same sp, ch 6, [sc in next ch-sp, ch 6] around; join with sl st to first sc. (12 sc and 12 ch-6 sps)\n",
	"stitches in the next ones go around":    "Round 1: 6 sc in magic ring. (6 sc)\nRound 2: 2 sc in each st around. (12 sc)\nRound 3: Sc in next st, inc in next st around. (18 sc)\nRound 4: Sc in next 2 sts, 2 sc in next st. (24 sc)\n",
	"the count of a row behind a comma":      "Ch 25.\nRow 1: Sc in 2nd ch from hook and in each ch to end, 24 sc. Ch 1, turn.\nRow 2: Sc in each sc across, 24 sc. Ch 1, turn.\n",
	"a slip stitch that ends a spiral":       "Rnd 1: 6 sc in magic ring (6)\nRnd 2: 2 sc in each sc around (12)\nNext 3 rnds: Sc in each sc around—12 sc. Sl st in next sc.\nRnd 6: Sc in each sc around. (12)\n",
	"rounds from one on, and a tilde":        "Round 1: 6 sc in magic ring = 6 sc\nRounds 2~4: sc in each sc around. 6 sc.\nRounds 5+ sc in each sc around until reaching desired height. = 6 sc\nTop fold: sc in front loop of each stitch = 6 sc\n",
	"a dash for a size that has no such row": "Sizes: Small (Medium, Large)\nRnd 1: 6 sc in magic ring—6 sc.\nRnd 2: 2 sc in each sc around—12 sc.\nSizes Medium and Large only\nRnd 3: *Sc in next – (5, 2) sc, 2 sc in next sc; repeat from * around— – (14, 16) sc.\nAll sizes\nNext 2 rnds: Sc in each sc around—12 (14, 16) sc.\n",
	"gaps between stitches and pairs": "Terms: UK\nMake 4 ch and join with a ss to form a ring.\n1st round: 3 ch (counts as 1 tr), 11 tr into ring, ss to top of 3-ch. 12 tr.\n" +
		"2nd round: Join your next colour to sp between any 2 tr using a ss. 3 ch, 1 tr in same sp, [2 tr in next sp] 11 times, ss to top of 3-ch. 24 tr.\n",
	"a row of a flower behind its petals": "Ch 4; join with sl st to form a ring.\nRnd 1: Ch 1, *sc in ring, ch 3; repeat from * 4 more times; join with sl st in first sc—5 ch-3 loops.\nRnd 2: (Sc, hdc, 3 dc, hdc, sc) in each ch-3 loop around; join—5 petals.\n" +
		"Rnd 3: Ch 1, working behind petals, *sc around post of next Rnd 1 sc, ch 4; repeat from * around; join—5 ch-4 loops.\n",
	"a leaf about its chain":        "Ch 6.\nRow 1: Sl st in 2nd ch from hook, sc in next ch, dc in next 2 ch, (sl st, ch 1, sl st) in last ch, working down the other side of the chain: dc in next 2 ch, sc in next ch, sl st in last ch.\n",
	"all into the chain made first": "Base: Ch 3\nRnd 1: 8 sc in 1st ch made, sl st to 1st sc.\nRnd 2: *2 sc in next sc; rep from * around. (16 sc)\n\nTop\nCh 2.\nRnd 1: 6 sc in first ch. (6)\nRnd 2: 2 sc in each sc around. (12)\n",
	"stitches crossed over those behind them": "Ch 13.\nRow 1: Dc in 4th ch from hook and in each ch across, turn. (11 dc)\nRow 2: Ch 3 (counts as dc), *skip next st, dc in next st, dc in skipped st; rep from * across, turn. (11 dc)\n" +
		"Row 3: Ch 3 (counts as dc), *sk next 2 sts, tr in each of next 2 sts, working in front of last 2 sts, tr in each of 2 sk sts, dc in next st; rep from * across, turn. (11 sts)\n",
	"ordinals run together, and a ring by another name": "Ch 11.\nRow 1: Sc in 2ndch from hook, sc in to each ch to end. (10 sc)\n\nHead\nRnd 1: 6 sc in amigurumi ring. (6)\nRnd 2: 2 sc in every underlying sc, NJ (12)\n",
	"the first stitch, the second, and again":           "Rnd 1: 6 sc in magic ring. (6)\nRnd 2: 2 sc in each st around. (12)\nRnd 3: 1 sc in first stitch, 2 sc in second stitch. Repeat to end and join with sl st. (18)\nRnd 4: 1 sc in first stitch, 1 sc in second stitch, 2 sc in third stitch. Repeat to end. (24)\n",
	"a round joined by the words about it":              "Rnd 1: 12 sc in magic ring. (12)\nRnd 2: Ch 1, sc in same st, ch 3, *skip 1 st, sc in next st, ch 3; rep from * around, connect last st to first sc with a sl st. (6 sc, 6 ch-3 sps)\n",
	"the space that a round leads":                      "Ch 4, join to form a ring.\nRnd 1: Ch 3 (counts as dc), dc in ring, (ch 3, 2 dc in ring) 3 times, ch 3, join with sl st to top of ch-3. (8 dc, 4 ch-3 sps)\nRnd 2: Sl st across to ch-3 sp, ch 3, 2 dc in same sp, *ch 1, 3 dc in next sp; rep from * 2 more times, ch 1, join. (12 dc)\n",
}

func TestSmallThingsAreReadAsTheyAreTold(t *testing.T) {
	for name, src := range small {
		if src[:5] != "Terms" {
			src = "Terms: US\n" + src
		}
		rep := Check(Read("t", []byte(src), Options{}))
		assert.Equal(t, rep.Read.Lines, rep.Read.Whole, name)
		for _, f := range rep.Findings {
			assert.Equal(t, finding.Note, f.Severity, "%s: %d: %s", name, f.Pos.Line, f.Message)
		}
	}
}

// The same forms still tell what does not fit.
func TestSmallThingsThatDoNotFitAreTold(t *testing.T) {
	for name, src := range map[string]string{
		"19 for 18":          "Round 1: 6 sc in magic ring. (6 sc)\nRound 2: 2 sc in each st around. (12 sc)\nRound 3: Sc in next st, inc in next st around. (19 sc)\n",
		"23 for 24":          "Ch 25.\nRow 1: Sc in 2nd ch from hook and in each ch to end, 23 sc. Ch 1, turn.\n",
		"two more than left": "Rnd 1: 6 sc in magic ring (6)\nRnd 2: 2 sc in each sc around (12)\nRnd 3: Sc in each sc around, sl st in next 2 sc. (12)\n",
		"11 loops of 12":     "Rnd 1: 12 sc in magic ring (12)\nRnd 2: Ch 1, sc in first st, ch 3, [sc in next sc, ch 3] around; join with sl st to first sc. (12 sc)\nRnd 3: Sl st in next 2 ch, ch 1, sc in same sp, ch 3, [sc in next ch-sp, ch 3] around; join with sl st to first sc. (11 sc)\n",
	} {
		list := Check(Read("t", []byte("Terms: US\n"+src), Options{})).Findings
		require.NotEmpty(t, list, name)
	}
}
