package work

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/rows/grammar"
	ins "flatwright/schematic/rows/instructions"
)

// counted is a text whose every row has the stitches behind it that a hand counts in it.
type counted []struct {
	row string
	sts int
}

// byHand are such texts. How the numbers come about stands beside those that are not plain.
var byHand = map[string]counted{
	"single crochet to and fro": {
		{"Row 1: Ch 13, sc in 2nd ch from hook and in each ch across, turn.", 12},
		{"Row 2: Ch 1 (does not count as a st), sc in each st across, turn.", 12},
		{"Row 3: Ch 1, 2 sc in first st, sc in each st to last st, 2 sc in last st, turn.", 14},
		{"Row 4: Ch 1, sc2tog, sc in each st to last 2 sts, sc2tog, turn.", 12},
		{"Row 5: Ch 1, sc in first 3 sts, ch 2, skip next 2 sts, sc in next 7 sts, turn.", 10}, // 3 and 7; chains are no stitches
		{"Row 6: Ch 1, sc in next 7 sts, 2 sc in ch-2 sp, sc in next 3 sts, turn.", 12},
		{"Row 7: Ch 1, *sc in next st, 2 sc in next st; rep from * across, turn.", 18},
		{"Row 8: Ch 1, *sc in next st, sc2tog; rep from * across, turn.", 12},
		{"Row 9: Sl st in first 3 sts, ch 1, sc in next 6 sts, leave remaining sts unworked, turn.", 6},
		{"Row 10: Ch 1, [sc3tog] twice, turn.", 2},
	},
	"double crochet with a turning chain": {
		{"Row 1: Ch 22, dc in 4th ch from hook and in each ch across, turn.", 20}, // 22 less 3, and the chain
		{"Row 2: Ch 3 (counts as dc), skip first st, dc in each st across, dc in top of turning ch, turn.", 20},
		{"Row 3: Ch 3 (counts as dc), dc in first st, dc in next 18 sts, 2 dc in top of turning ch, turn.", 22},
		{"Row 4: Ch 3 (counts as dc), skip first st, dc2tog, dc in next 16 sts, dc2tog, dc in top of turning ch, turn.", 20}, // 1 + 1 + 16 + 1 + 1
		{"Row 5: Ch 3 (counts as dc), skip first st, *skip next st, 2 dc in next st; rep from * to last st, dc in top of turning ch, turn.", 20},
		{"Row 6: Ch 1 (does not count as a st), sc in each st across, turn.", 20},
		{"Row 7: Ch 1, sc in first 5 sts, hdc in next 5 sts, dc in next 5 sts, tr in next 5 sts, turn.", 20},
	},
	"a mesh that ends in its turning chain": {
		{"Row 1: Ch 16, dc in 6th ch from hook (skipped chs count as dc, ch 1), *ch 1, skip next ch, dc in next ch; rep from * across, turn.", 7},                                                                                        // 1, and 6 in every other of 11
		{"Row 2: Ch 4 (counts as dc, ch 1), skip first ch-1 sp, dc in next dc, [dc in next ch-1 sp, dc in next dc] 3 times, *ch 1, skip next ch-1 sp, dc in next dc; rep from * across, ending with dc in top of turning ch, turn.", 10}, // 1 + 1 + 6 + 1 + 1
		{"Row 3: Ch 1, sc in each st and in each ch-1 sp across, turn.", 13}, // 10, and 3 spaces: one of the turning chain, one beside the last dc on either side
	},
	"corners that are called so": {
		{"Rnd 1: Ch 4, join with sl st to form ring, ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join with sl st to top of beg ch-3.", 12},
		{"Rnd 2: Sl st to corner sp, (ch 3, 2 dc, ch 2, 3 dc) in corner, ch 1, *(3 dc, ch 2, 3 dc) in next corner, ch 1; rep from * around, join with sl st to top of beg ch-3.", 24},
		{"Rnd 3: Sl st to corner, (ch 3, 2 dc, ch 2, 3 dc) in corner, ch 1, 3 dc in next ch-1 sp, ch 1, *(3 dc, ch 2, 3 dc) in corner, ch 1, 3 dc in next ch-1 sp, ch 1; rep from * around, join with sl st to top of beg ch-3.", 36},
		{"Rnd 4: Ch 1 (does not count as a st), sc in each dc around, working 3 sc in each corner sp, join with sl st to first sc.", 48}, // 36 and 4 times 3
	},
	"a round begins in the space to which slip stitches led": {
		{"Rnd 1: Ch 4, join with sl st to form ring, ch 1 (does not count as a st), 6 sc in ring, join with sl st to first sc.", 6},
		{"Rnd 2: Ch 1 (does not count as a st), sc in same st, *ch 4, sc in next sc; rep from * 4 more times, ch 4, join with sl st to first sc.", 6},
		{"Rnd 3: Sl st in ch-4 sp, ch 1 (does not count as a st), *(sc, ch 3, sc) in ch-4 sp, ch 2; rep from * around, join with sl st to first sc.", 12},
	},
	"shells over the tops of shells": {
		{"Row 1: Ch 26, sc in 2nd ch from hook, *sk 2 ch, 5 dc in next ch, sk 2 ch, sc in next ch; rep from * to end, turn.", 25},                                                                  // 1 and 4 times 6
		{"Row 2: Ch 3 (counts as dc), 2 dc in first sc, *sk 2 dc, sc in next dc, sk 2 dc, 5 dc in next sc; rep from * to last shell, sk 2 dc, sc in next dc, sk 2 dc, 3 dc in last sc, turn.", 25}, // 3 + 3 times 6 + 1 + 3
		{"Row 3: Ch 1 (does not count as a st), sc in first dc, *sk 2 dc, 5 dc in next sc, sk 2 dc, sc in next dc; rep from * ending with sc in top of turning ch, turn.", 25},
	},
	"what goes into each space is told behind it": {
		{"Rnd 1: Ch 4, join with sl st to form ring, ch 1 (does not count as a st), 10 sc in ring, join with sl st to first sc.", 10},
		{"Rnd 2: Ch 1 (does not count as a st), sc in same st, *ch 3, skip next sc, sc in next sc; rep from * 3 more times, ch 3, join with sl st to first sc.", 5},
		{"Rnd 3: In each ch-3 sp work: sc, hdc, 3 dc, hdc, sc, join with sl st to first sc.", 35}, // 5 times 7
	},
	"each stitch, each space of one kind and each corner": {
		{"Rnd 1: Ch 4, join with sl st to form ring, ch 3 (counts as dc), 2 dc in ring, ch 1, 3 dc in ring, ch 3, *3 dc in ring, ch 1, 3 dc in ring, ch 3; rep from * twice more, join with sl st to top of beg ch-3.", 24},
		{"Rnd 2: Ch 1 (does not count as a st), sc in each dc and ch-1 sp, 5 sc in each ch-3 sp around, join with sl st to first sc.", 48}, // 24 + 4 + 20
	},
	"loops and half loops at the ends": {
		{"Row 1: Ch 22, sc in 2nd ch from hook, *ch 5, skip next 3 ch, sc in next ch; rep from * across, turn.", 6},                                          // 1 and a fourth of 20
		{"Row 2: Ch 5 (counts as dc, ch 2), sc in first ch-5 loop, *ch 5, sc in next ch-5 loop; rep from * across, ch 2, dc in last sc, turn.", 7},           // 5 loops, and both ends
		{"Row 3: Ch 1 (does not count as a st), sc in first dc, *ch 5, sc in next ch-5 loop; rep from * across, ch 5, sc in 3rd ch of turning ch, turn.", 6}, // 4 loops: the turning chain has none of 5
	},
	"a hat from the crown": {
		{"Rnd 1: 6 sc in magic ring.", 6},
		{"Rnd 2: 2 sc in each st around.", 12},
		{"Rnd 3: *Sc in next st, 2 sc in next st; rep from * around.", 18},
		{"Rnd 4: *Sc in next 2 sts, inc in next st; rep from * around.", 24},
		{"Rnd 5: [Sc in next 3 sts, 2 sc in next st] 6 times.", 30},
		{"Rnds 6-8: Sc in each st around.", 30},
		{"Rnd 9: *Sc in next 3 sts, sc2tog; rep from * around.", 24},
		{"Rnd 10: [Sc in next 6 sts, sc2tog] 3 times.", 21},
		{"Rnd 11: Sc in next 4 sts, *2 sc in next st, sc in next st; rep from * 3 more times, sc in each remaining st.", 25}, // 21 and 4
		{"Rnd 12: *Sc2tog; rep from * to last st, sc in last st.", 13},
	},
	"rounds that are joined": {
		{"Rnd 1: Ch 4, join with sl st to form ring, ch 3 (counts as dc), 11 dc in ring, join with sl st to top of beg ch-3.", 12},
		{"Rnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each st around, join with sl st to top of beg ch-3.", 24},
		{"Rnd 3: Ch 3 (counts as dc), 2 dc in next st, *dc in next st, 2 dc in next st; rep from * around, join with sl st to top of beg ch-3.", 36},
		{"Rnd 4: Ch 1 (does not count as a st), sc in same st, sc in each st around, join with sl st to first sc.", 36},
		{"Rnd 5: Ch 1, sc in same st, *ch 1, skip next st, sc in next st; rep from * to last st, ch 1, skip last st, join with sl st to first sc.", 18}, // of 36 every second
		{"Rnd 6: Ch 1, *sc in next sc, sc in next ch-1 sp; rep from * around, join with sl st to first sc.", 36},
	},
	"a round whose last time is cut short by its join, arches led over a stitch between them, and a loop closed by a tall stitch": {
		{"Rnd 1: Ch 8, join with sl st to form ring, ch 3, 23 dc in ring, sl st in top of ch-3.", 24},
		{"Rnd 2: Sc in same place as sl st, * ch 9, skip 3 dc, sc in next dc, ch 4, skip 1 dc, sc in next dc. Repeat from * around, ending with ch 4, sl st in first sc.", 8},                   // 24 / 6, twice; the last is the first
		{"Rnd 3: Sl st in next loop, ch 4, 8 tr in same loop, * ch 3, sc in next ch-4 loop, ch 3, 9 tr in next ch-9 loop. Repeat from * around. Join last ch-3 with sl st to top of ch-4.", 40}, // 4 times 9, and 4
		{"Rnd 4: Ch 5, (tr in next tr, ch 1) 7 times; tr in next tr, * ch 5, tr in next tr, (ch 1, tr in next tr) 8 times. Repeat from * around, ending with ch 2, dc in 4th ch of ch-5.", 36},  // the 4 sc are passed
		{"Rnd 5: Ch 3, in loop just formed make dc, ch 2 and 2 dc; * (ch 3, sc in next ch-1 sp) 8 times; ch 3, in next ch-5 loop make 2 dc, ch 2 and 2 dc. Repeat from * around. Join.", 48},    // 4 times 8 and 4
	},
	"a last time that stops before its chains": {
		{"Row 1: Ch 15, sc in 2nd ch from hook and in each ch across, turn.", 14},
		{"Row 2: Ch 3 (counts as dc), skip first 2 sts, *3 dc in next st**, skip 2 sts; rep from * across, ending last rep at **, skip 1 st, dc in last st, turn.", 14}, // 1, 4 times 3, 1
		{"Row 3: Ch 4 (counts as dc and ch 1), *dc3tog over next 3 dc**, ch 2; rep from * across, ending last rep at **, ch 1, dc in top of tch, turn.", 6},
	},
	"knitted rows": {
		{"Cast on 20 sts.", 20},
		{"Row 1: Knit.", 20},
		{"Row 2: Purl.", 20},
		{"Row 3: *K2, p2; rep from * to end.", 20},
		{"Row 4: K1, m1, k to last st, m1, k1.", 22},
		{"Row 5: P2, *k2tog, yo; rep from * to last 2 sts, p2.", 22},
		{"Row 6: K1, ssk, k to last 3 sts, k2tog, k1.", 20},
		{"Row 7: K1, *sl 1, k2tog, psso; rep from * to last st, k1.", 8}, // 18 / 3 and 2
		{"Row 8: Kfb in each st.", 16},
		{"Row 9: K5, bind off 6 sts, k to end.", 10},
		{"Row 10: K5, cast on 6 sts, k to end.", 16},
		{"Row 11: Bind off 3 sts, k to end.", 13},
		{"Row 12: P2tog, p to last 2 sts, p2tog.", 11},
		{"Row 13: K1, (k2tog) 5 times.", 6},
	},
	"knitted rounds": {
		{"Cast on 48 sts and join in the round.", 48},
		{"Rnd 1: *K3, p1; rep from * around.", 48},
		{"Rnd 2: *K6, k2tog; rep from * around.", 42},
		{"Rnd 3: *K5, k2tog; rep from * around.", 36},
		{"Rnd 4: Knit.", 36},
		{"Rnd 5: *Yo, k2; rep from * around.", 54},
		{"Rnd 6: *K2tog, k1; rep from * around.", 36},
		{"Rnd 7: *K3tog; rep from * around.", 12},
	},
}

// text is the rows as they are printed; a row has so many stitches more behind it as its count stands wrong, or none.
func (c counted) text(stated bool, wrong int) []byte {
	var b strings.Builder
	b.WriteString("Piece\n\n")
	for i, l := range c {
		n := l.sts
		if i == wrong {
			n++
		}
		b.WriteString(l.row)
		if stated {
			fmt.Fprintf(&b, " (%d sts)", n)
		}
		b.WriteByte('\n')
	}
	return []byte(b.String())
}

// made are the stitches that the rows of a text come to.
func made(t *testing.T, src []byte) ([]int, Report) {
	x := grammar.Read("piece.txt", src, ins.Options{})
	rep := Check(x)
	var out []int
	for _, s := range x.Sections {
		for _, l := range s.Lines {
			if n := rep.Stitches[l]; assert.Len(t, n, 1) && n[0] != ins.None {
				out = append(out, n[0])
			}
		}
	}
	return out, rep
}

func TestRowsMakeWhatAHandCounts(t *testing.T) {
	for name, c := range byHand {
		t.Run(name, func(t *testing.T) {
			var want []int
			for _, l := range c {
				want = append(want, l.sts)
			}
			for _, stated := range []bool{false, true} {
				got, rep := made(t, c.text(stated, -1))
				assert.Equal(t, want, got)
				assert.Empty(t, rep.Findings, "stated: %v", stated)
			}
		})
	}
}

// A count that is wrong by one is found in its row, and nowhere else.
func TestACountThatIsWrongIsFoundWhereItStands(t *testing.T) {
	for name, c := range byHand {
		t.Run(name, func(t *testing.T) {
			for wrong := range c {
				if strings.Contains(c[wrong].row, "ch 2, skip") {
					continue // 11 counts the space too
				}
				_, rep := made(t, c.text(true, wrong))
				if !assert.NotEmpty(t, rep.Findings, c[wrong].row) {
					continue
				}
				assert.Equal(t, wrong+3, rep.Findings[0].Pos.Line, "%s: %s", c[wrong].row, rep.Findings[0].Message)
				assert.Len(t, rep.Findings, 1, c[wrong].row)
			}
		})
	}
}

// Every row of a graph has the stitches that the hand counts, and each stands on stitches of the row below.
func TestTheGraphHasTheStitchesThatAHandCounts(t *testing.T) {
	for name, c := range byHand {
		x := grammar.Read("piece.txt", c.text(false, -1), ins.Options{})
		g, ok := GraphOf(x, "", 0)
		require.True(t, ok)
		want := map[int]int{}
		number := 0
		for _, l := range c {
			if _, err := fmt.Sscanf(l.row, "Row %d", &number); err == nil {
				want[number] = l.sts
			}
			if _, err := fmt.Sscanf(l.row, "Rnd %d:", &number); err == nil {
				want[number] = l.sts
			}
		}
		seen := 0
		for i, row := range g.Rows {
			sts, high := 0, 0
			for _, s := range row.Stitches {
				if s.Counts && (s.Stitch != nil || s.Turning) { // an arch is no stitch
					sts++
				}
				for _, f := range s.Feet {
					high = max(high, f+1)
				}
			}
			if n, ok := want[row.Number]; ok && row.Number > 0 {
				seen++
				assert.Equal(t, n, sts, "%s, row %d", name, row.Number)
			}
			if i > 0 {
				assert.LessOrEqual(t, high, len(g.Rows[i-1].Stitches), "%s, row %d", name, row.Number)
			}
		}
		assert.GreaterOrEqual(t, seen, len(want), name)
	}
}
