package work

import "maps"

// More texts of which a hand counts every row; how the numbers come about stands beside those that are not plain.
func init() {
	maps.Copy(byHand, map[string]counted{
		"knitted rows that repeat others": {
			{"Cast on 30 sts.", 30},
			{"Row 1: Knit.", 30},
			{"Row 2: K1, p to last st, k1.", 30},
			{"Row 3: Rep Row 1.", 30},
			{"Rows 4-7: Rep Rows 2 and 3 twice.", 30},
			{"Row 8: K2, *yo, k2tog; rep from * to last 2 sts, k2.", 30},
			{"Row 9: (K2tog, k4) 5 times.", 25},
			{"Row 10: K1, *m1, k4; rep from * to end.", 31}, // 24 / 4 = 6 more
			{"Row 11: K3tog, k to last 3 sts, k3tog.", 27},
			{"Row 12: Bind off 2 sts, k to last st, kfb.", 26},
		},
		"a square of threes": {
			{"Rnd 1: Ch 4, join with sl st to form ring, ch 3 (counts as dc), 2 dc in ring, (ch 2, 3 dc in ring) 3 times, ch 2, join with sl st to top of beg ch-3.", 12},
			{"Rnd 2: Sl st in next 2 dc and in ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, *ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * twice more, ch 1, join with sl st to top of beg ch-3.", 24},
			{"Rnd 3: Sl st in next 2 dc and in ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, *ch 1, 3 dc in next ch-1 sp, ch 1, (3 dc, ch 2, 3 dc) in next ch-2 sp; rep from * twice more, ch 1, 3 dc in next ch-1 sp, ch 1, join with sl st to top of beg ch-3.", 36}, // 4 times 6 and 3
			{"Rnd 4: Ch 1 (does not count as a st), sc in each dc and ch-1 sp, 3 sc in each ch-2 sp around, join with sl st to first sc.", 56},                                                                                                                                        // 36 + 8 + 4 times 3
		},
		"post stitches, arches and what fills them": {
			{"Row 1: Ch 20, dc in 4th ch from hook and in each ch across, turn.", 18},
			{"Row 2: Ch 3 (counts as dc), skip first st, *fpdc around next st, bpdc around next st; rep from * to last st, dc in top of turning ch, turn.", 18},
			{"Row 3: Ch 2 (does not count as a st), hdc in each st across, turn.", 18},
			{"Row 4: Ch 1 (does not count as a st), *sc in next st, dc in next st; rep from * across, turn.", 18},
			{"Row 5: Ch 3 (counts as dc), dc in first st, *skip next st, 2 dc in next st; rep from * to last st, dc in last st, turn.", 19}, // 2 + 8 times 2 + 1
			{"Row 6: Ch 1 (does not count as a st), sc in first st, [ch 3, skip next 2 sts, sc in next st] 6 times, turn.", 7},
			{"Row 7: Ch 3 (counts as dc), *3 dc in next ch-3 sp; rep from * across, dc in last sc, turn.", 20},
			{"Row 8: Ch 1 (does not count as a st), sc2tog, sc in next 16 sts, sc2tog, turn.", 18},
			{"Row 9: Ch 1, (sc3tog) 6 times, turn.", 6},
		},
		"round both sides of a chain": {
			{"Rnd 1: Ch 11, sc in 2nd ch from hook, sc in next 8 ch, 3 sc in last ch, working on other side of chain, sc in next 8 ch, 2 sc in last ch.", 22},
			{"Rnd 2: 2 sc in next st, sc in next 8 sts, 2 sc in each of next 3 sts, sc in next 8 sts, 2 sc in each of next 2 sts.", 28}, // 2 + 8 + 6 + 8 + 4
			{"Rnd 3: Sc in each st around.", 28},
			{"Rnd 4: Working in back loops only, sc in each st around.", 28},
			{"Rnd 5: *Sc in next 5 sts, sc2tog; rep from * around.", 24},
			{"Rnd 6: Sc in next 8 sts, (sc2tog) 4 times, sc in next 8 sts.", 20},
		},
		"a knitted band and what grows from it": {
			{"Cast on 64 sts and join in the round.", 64},
			{"Rnds 1-6: *K2, p2; rep from * around.", 64},
			{"Rnd 7: *K8, m1; rep from * around.", 72},
			{"Rnd 8: *K1, p1; rep from * around.", 72},
			{"Rnd 9: *Sl 1, k2tog, psso, k6; rep from * around.", 56}, // 8 times 7
			{"Rnd 10: K to last 4 sts, ssk, k2tog.", 54},
			{"Rnd 11: *K7, k2tog; rep from * around.", 48},
			{"Rnd 12: *(K1, yo) twice, k4; rep from * around.", 64}, // 8 times 6 and 2
			{"Rnd 13: *K2tog; rep from * around.", 32},
		},
		"lace between edges, and stitches on and off": {
			{"Cast on 25 sts.", 25},
			{"Row 1: K2, *yo, sl 1, k2tog, psso, yo, k3; rep from * to last 5 sts, yo, sl 1, k2tog, psso, yo, k2.", 25},
			{"Row 2: Purl.", 25},
			{"Row 3: K3, *k2tog, yo; rep from * to last 2 sts, k2.", 25},
			{"Row 4: P2, p2tog, p to last 4 sts, p2tog, p2.", 23},
			{"Row 5: K1, *k1, kfb; rep from * to end.", 34}, // 1 and 11 times 3
			{"Row 6: K1, *p2tog, p1; rep from * to end.", 23},
			{"Row 7: Ssk, k to last 2 sts, k2tog.", 21},
			{"Row 8: Purl.", 21},
			{"Row 9: Cast on 4 sts, k to end.", 25},
			{"Row 10: Bind off 5 sts, p to end.", 20},
			{"Row 11: K2, ssk, *k2, k2tog; rep from * to last 4 sts, k2tog, k2.", 15}, // 2 + 1 + 3 times 3 + 1 + 2
		},
		"rows that leave, skip and add": {
			{"Row 1: Ch 25, sc in 2nd ch from hook and in each ch across, turn.", 24},
			{"Row 2: Ch 1 (does not count as a st), sc in each st to last 4 sts, leave remaining 4 sts unworked, turn.", 20},
			{"Row 3: Ch 1, skip first st, sc in each st to last 2 sts, sc2tog, turn.", 18},                                       // 17 and 1
			{"Row 4: Ch 1, sc in first st, 2 sc in each of next 4 sts, sc in each st across, turn.", 22},                         // 1 + 8 + 13
			{"Row 5: Ch 1, sc in first 6 sts, *sc2tog, sc in next 2 sts; rep from * to last 4 sts, sc in last 4 sts, turn.", 19}, // 6 + 3 times 3 + 4
			{"Row 6: Ch 1, 2 sc in each of first 3 sts, sc in each st to last 3 sts, 2 sc in each of last 3 sts, turn.", 25},
			{"Row 7: Ch 1, *sc in next 4 sts, skip next st; rep from * across, turn.", 20},
			{"Row 8: Ch 1, sc in next 5 sts, 3 sc in next st, sc in next 8 sts, 3 sc in next st, sc in next 5 sts, turn.", 24},
		},
		"arches of two lengths": {
			{"Rnd 1: 12 sc in magic ring, join with sl st to first sc.", 12},
			{"Rnd 2: Ch 1 (does not count as a st), sc in same st, *ch 3, skip next sc, sc in next sc, ch 5, skip next sc, sc in next sc; rep from * once more, ch 3, skip next sc, sc in next sc, ch 5, skip last sc, join with sl st to first sc.", 6},
			{"Rnd 3: Ch 1 (does not count as a st), *3 sc in next ch-3 sp, 5 sc in next ch-5 sp; rep from * around, join with sl st to first sc.", 24}, // 3 times 8
			{"Rnd 4: Ch 4 (counts as dc, ch 1), skip next st, *dc in next st, ch 1, skip next st; rep from * around, join with sl st to 3rd ch of beg ch-4.", 12},
			{"Rnd 5: Ch 1 (does not count as a st), 2 sc in each ch-1 sp around, join with sl st to first sc.", 24},
			{"Rnd 6: Ch 2 (does not count as a st), *hdc2tog; rep from * around, join with sl st to first hdc2tog.", 12},
		},
	})
}
