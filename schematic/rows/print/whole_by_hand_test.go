package print_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/rows/print"
	"flatwright/schematic/stitch"
)

// Whole pieces, word for word, each count worked by hand beside it.
func TestWholePiecesAreWrittenAsWorkedByHand(t *testing.T) {
	knit := strings.Replace(knitHead, "S (M)", "S (M, L)", 1)
	for _, k := range []struct{ name, src, want string }{
		// 40 = 10 x 4 and 44 = 11 x 4 come out even, 46 = 11 x 4 + 2 does not: told by the sum. 42 (46, 50) = 10 (11, 12) x 4 + 2
		// leave 2 in each size: 10 x 5 + 2 = 52, 11 x 5 + 2 = 57, 12 x 5 + 2 = 62; then 52 = 10 x 5 + 2 become 10 x 4 + 2 = 42.
		{"repeats", knit + `  - piece: Uneven
    sections:
      - cast on: 40 (44, 46)
      - repeat row: 2 in 1, 1 in each of 3
        rest: worked even
  - piece: Even
    sections:
      - cast on: 42 (46, 50)
      - repeat row: 2 in 1, 1 in each of 3
        rest: worked even
      - repeat row: 2 tog, 1 in each of 3
        rest: worked even
      - repeat row: 3 in 1
`, `
# Uneven
Cast on 40 (44, 46) sts.
Inc 10 (11, 11) sts evenly on next row in stockinette stitch. (50 (55, 57) sts)

# Even
Cast on 42 (46, 50) sts.
Row 1: *k3, kfb; rep from * to last 2 sts, k2. (52 (57, 62) sts)
Row 2: *p3, p2tog; rep from * to last 2 sts, p2. (42 (46, 50) sts)
Inc 84 (92, 100) sts evenly on next row in stockinette stitch. (126 (138, 150) sts)
`},
		// 40 - 5 = 35, - 2 x 3 = 29, + 2 x 6 = 41, + 3 = 44, - 2 - 2 = 40; 44 - 5 - 6 + 12 + 4 = 49, 48 - 5 - 6 + 12 + 5 = 54. 3 in
		// every 4 of 32 rows are 24, and 1 in each stitch all of them.
		{"edges", knit + `  - piece: Front
    sections:
      - cast on: 40 (44, 48)
      - even: 19 rows
      - {bind off: 5, at: left edge, edge: front}
      - even: 8 rows
      - {bind off: 3, at: right edge, every: 2 rows, times: 2}
      - {add: 6, at: both edges}
      - {add: 3 (4, 5), at: left edge}
      - {leave: 2, at: both edges}
      - even: 2 rows
      - {leave: 3, at: left edge, every: 2 rows, times: 2}
      - bind off: all
  - piece: Back
    left edge: opening
    sections:
      - {cast on: 40 (44, 48), edge: hem}
      - even: 32 rows
      - bind off: all
  - piece: Band
    onto: ["Back opening, 3 in every 4 rows"]
    sections: [even: 5 rows]
  - piece: Edging
    onto: ["Back hem, 1 in each st"]
    sections: [even: 3 rows]
`, `
# Front
Cast on 40 (44, 48) sts.
Work 19 rows even in stockinette stitch. (40 (44, 48) sts)
Bind off 5 sts at beg of next row. (35 (39, 43) sts)
Work 8 rows even. (35 (39, 43) sts)
Bind off 3 sts at right edge every 2 rows 2 times, over 4 rows. (29 (33, 37) sts)
Add 6 sts at each end. (41 (45, 49) sts)
Add 3 (4, 5) sts at left edge. (44 (49, 54) sts)
Leave 2 sts unworked at right edge. (42 (47, 52) sts)
Leave 2 sts unworked at left edge. (40 (45, 50) sts)
Work 2 rows even. (40 (45, 50) sts)
Leave 3 sts unworked at left edge every 2 rows 2 times, over 2 rows. (34 (39, 44) sts)
Bind off all sts.

# Back
Cast on 40 (44, 48) sts.
Work 32 rows even in stockinette stitch. (40 (44, 48) sts)
Bind off all sts.

# Band
Pick up and knit 24 sts evenly along Back opening at the rate of 3 in every 4.
Work 5 rows even in stockinette stitch. (24 sts)

# Edging
Pick up and knit 40 (44, 48) sts evenly along Back hem.
Work 3 rows even in stockinette stitch. (40 (44, 48) sts)
`},
		// 27 + 3 + 27 + 3 = 60; 27 - 2 x 2 = 23, - 2 x 3 = 17, - 2 x 4 = 9, - 2 = 7; joined 7 + 8 + 27 = 42. Both parts have
		// 21 rows: 1 + 2 + 8 + 4 + 2 + 4.
		{"parts", knit + `  - piece: Body
    worked: in the round, from the hem
    sections:
      - cast on: 60 (66, 72)
      - even: 10 rows
      - divide:
          - part: Front
            stitches: 27 (30, 33)
            sections:
              - even: 1 row
              - {bind off: 2, at: both edges}
              - even: 8 rows
              - {bind off: 3, at: left edge, every: 2 rows, times: 2}
              - {hold: 4, at: right edge, every: 2 rows, times: 2}
              - {leave: 2, at: left edge}
              - even: 4 rows
          - leave: 3
          - part: Back
            stitches: 27 (30, 33)
            sections: [even: 21 rows]
          - hold: 3
      - join parts: [Front, {add: 8}, Back]
        as: Yoke
        round: yes
      - even: 4 rows
      - bind off: all
`, `
# Body
Cast on 60 (66, 72) sts, join to work in the round.
Work 10 rnds even in stockinette stitch. (60 (66, 72) sts)
Divide the rnd: 27 (30, 33) sts for Front, 3 sts left unworked, 27 (30, 33) sts for Back, 3 sts held.

# Body, Front
Take up 27 (30, 33) held sts. (27 (30, 33) sts)
Work 1 row even in stockinette stitch. (27 (30, 33) sts)
Bind off 2 sts at beg of next 2 rows. (23 (26, 29) sts)
Work 8 rows even. (23 (26, 29) sts)
Bind off 3 sts at left edge every 2 rows 2 times, over 4 rows. (17 (20, 23) sts)
Leave 4 sts on a holder at right edge every 2 rows 2 times, over 2 rows. (9 (12, 15) sts)
Leave 2 sts unworked at left edge. (7 (10, 13) sts)
Work 4 rows even. (7 (10, 13) sts)
Leave remaining sts on a holder.

# Body, Back
Take up 27 (30, 33) held sts. (27 (30, 33) sts)
Work 21 rows even in stockinette stitch. (27 (30, 33) sts)

# Body, Yoke
Join the parts: 7 (10, 13) sts of Front, add 8 sts, 27 (30, 33) sts of Back. (42 (48, 54) sts)
Work 4 rnds even in stockinette stitch. (42 (48, 54) sts)
Bind off all sts.
`},
		// 40 + 2 x 6 = 52, + 3 = 55 = 25 + 30; + 2 x 1 at the one edge of Middle = 57; - 2 x (6 + 5) = 35 over 3 + 6 x 4 + 5 x 2 = 37 rows
		// (3 + 7 x 4 + 5 x 2 = 41 in L, where 65 - 2 x 12 = 41 are left).
		{"marks, short rows and shapings", knit + `  - piece: Flap
    make: 2
    sections:
      - cast on: 40 (44, 48)
      - {mark: buttonhole, count: 5, along: yes, inset: 2 sts, first: 4 rows, apart: 8 rows}
      - {mark: pocket, count: 1}
      - mark: marker
      - {short rows: 6, over: 20, at: left edge, step: 5 sts}
      - {short rows: 2, over: 10, at: middle, step: 5 sts}
      - {add: 6, at: both edges}
      - {add: 3, at: left edge}
      - panels:
          - {panel: Side, stitches: 25}
          - {panel: Middle, stitches: 30 (34, 38)}
      - {increase: 1, at: lines, panel: Middle, times: 2, every: 2 rows}
      - decrease: 1
        at: both edges
        every: 4 rows
        times: 6 (6, 7)
        then: [{every: 2 rows, times: 5}]
        after: 3 rows
      - hold: all
`, `
# Flap (make 2)
Cast on 40 (44, 48) sts.
Place 5 markers for the buttonholes, 2 sts in from the edge, the first after 4 rows, then 8 rows apart.
Place a marker for the pocket.
Place a marker here.
Work 6 short rows over 20 sts at left edge, turning 5 sts sooner each time, in stockinette stitch. (40 (44, 48) sts)
Work 2 short rows over the middle 10 sts. (40 (44, 48) sts)
Add 6 sts at each end. (52 (56, 60) sts)
Add 3 sts at left edge. (55 (59, 63) sts)
Place markers between the panels: 25 sts for Side, 30 (34, 38) sts for Middle.
Inc 1 st at the marked edge of Middle every 2 rows 2 times, over 4 rows. (57 (61, 65) sts)
Dec 1 st at each end after 3 rows every 4 rows 6 (6, 7) times, then every 2 rows 5 times, over 37 (37, 41) rows. (35 (39, 41) sts)
Leave remaining sts on a holder.
`},
		// UK words: cast off, stocking stitch, tr. 42 + 2 x 3 = 48, + 2 x 3 = 54, - 4 x 2 = 46 = 20 + 26; 20 + 8 + 26 + 2 = 56, of which the 2
		// behind the last panel are its own: 8 + 26 + 2 = 36. Two lines part two panels of a round: 4 stitches a time, 5 times: 36.
		{"UK words, and panels made of what was held", strings.NewReplacer("terms: US", "terms: UK", "fabric: 20 sts and 28 rows over 10 cm in stockinette stitch", `fabric: 20 sts and 28 rows over 10 cm in stocking stitch
  rib: 22 sts and 28 rows over 10 cm in k2, p1 rib
  back: 20 sts and 28 rows over 10 cm in reverse stocking stitch
  hook: 16 sts and 10 rows over 10 cm in front loop treble`).Replace(knit) + `  - piece: Front
    sections:
      - cast on: 42 (45, 48)
        gauge: rib
      - even: 1 row
      - even: 4 (5, 6) rows
        gauge: back
      - add: 3 (4, 5)
        at: both edges
      - increase: 3
        at: across
        every: 3 rows
        times: 2
        after: 1 row
      - decrease: 2
        at: left edge
        every: 1 row
        times: 4
      - even: 4 rows
        gauge: fabric
      - divide:
          - part: One
            stitches: 20 (23, 26)
            sections:
              - even: 2 rows
              - hold: all
          - part: Two side
            stitches: 26 (28, 30)
            sections:
              - even: 2 rows
              - hold: all
  - piece: Sleeve
    make: 2
    sections:
      - chain: 32 (34, 36)
        stitches: 30 (32, 34)
        gauge: hook
      - even: 3 rows
      - increase: 2
        at: both edges
        every: 2 rows
        times: 3 (3, 4)
      - leave: all
  - piece: Yoke
    worked: in the round, from the hem
    sections:
      - start from:
          - {piece: Front, part: One, panel: Left}
          - {add: 8, panel: Gusset}
          - {piece: Front, part: Two side}
          - {add: 2}
      - decrease: 1
        at: lines
        every: 2 rows
        times: 5
      - even: 2 rows
      - bind off: all
joins:
  - {sew: Sleeve left side, into: Front left side, how: gathered}
  - {sew: Sleeve cast-on edge, into: Front cast-on edge, how: in 3 places}
`, `
# Front
Cast on 42 (45, 48) sts.
Work 1 row even in k2, p1 rib. (42 (45, 48) sts)
Work 4 (5, 6) rows even in reverse stocking stitch. (42 (45, 48) sts)
Add 3 (4, 5) sts at each end. (48 (53, 58) sts)
Inc 3 sts evenly after 1 row every 3 rows 2 times, over 7 rows. (54 (59, 64) sts)
Dec 2 sts at left edge every row 4 times, over 4 rows. (46 (51, 56) sts)
Work 4 rows even in stocking stitch. (46 (51, 56) sts)
Divide the row: 20 (23, 26) sts to be worked, 26 (28, 30) sts to be worked.

# Front, One
Take up 20 (23, 26) held sts. (20 (23, 26) sts)
Work 2 rows even in stocking stitch. (20 (23, 26) sts)
Leave remaining sts on a holder.

# Front, Two side
Take up 26 (28, 30) held sts. (26 (28, 30) sts)
Work 2 rows even in stocking stitch. (26 (28, 30) sts)
Leave remaining sts on a holder.

# Sleeve (make 2)
Ch 32 (34, 36).
Row 1: Tr in 3rd ch from hook and in each ch across, turn. (30 (32, 34) tr)
Rows 2-3: 3 ch, tr flo in each st across, turn. (30 (32, 34) tr)
Inc 2 sts at each end every 2 rows 3 (3, 4) times, over 6 (6, 8) rows. (42 (44, 50) sts)
Leave remaining sts on a holder.

# Yoke
Take up 20 (23, 26) held sts, add 8 sts, 26 (28, 30) held sts, add 2 sts. (56 (61, 66) sts)
Place markers between the panels: 20 (23, 26) sts for Left, 36 (38, 40) sts for Gusset.
Dec 1 st on each side of 2 markers every 2 rnds 5 times, over 10 rnds in stocking stitch. (36 (41, 46) sts)
Work 2 rnds even. (36 (41, 46) sts)
Cast off all sts.
`},
		// 8 + 3 x 8 = 32 and 8 + 4 x 8 = 40. The chain of the usual turn: 9 + 2 = 11, first worked into the 3rd. 60 / 3 x 4 = 80;
		// 80 - 2 x 3 x 2 = 68, which are 6 rows from the 6th: 6 to 11; - 4 = 64, - 5 = 59 on row 13.
		{"crochet", hookHead + `  - piece: Circle
    worked: in the round, from the centre
    sections:
      - ring: 8
      - {increase: 8, at: across, every: 1 row, times: 3 (4)}
      - even: 4 rows
      - bind off: all
  - piece: Front
    sections:
      - {sideways: rib, stitches: 9, rows: 40 (44), gauge: rib}
      - pick up: 1 in each short row, 2 in each tall row
        stitches: 60 (66)
        gauge: fabric
      - even: 3 rows
      - repeat row: 2 in 1, 1 in each of 2
      - {bind off: 2, at: both edges, every: 2 rows, times: 3}
      - {leave: 4, at: left edge}
      - even: 1 row
      - {bind off: 5, at: right edge, edge: armhole edge}
      - even: 4 rows
      - divide:
          - part: Second
            stitches: 20 (23)
            sections:
              - {decrease: 1, at: left edge, edge: neck, every: 1 row, times: 6}
              - bind off: all
          - {bind off: 15, edge: neck}
          - {hold: 4 (6), name: Rest}
          - part: First
            mirror of: Second
`, `
# Circle
Rnd 1: 8 hdc in magic ring. (8 hdc)
Inc 8 sts evenly every rnd 3 (4) times, over 3 (4) rnds. (32 (40) sts)
Work 4 rnds even in hdc. (32 (40) sts)
Fasten off.

# Front
Ch 11.
Row 1: Hdc in 3rd ch from hook and in each ch across, turn. (9 hdc)
Rows 2-40 (44): Ch 2, hdc blo in each st across, turn. (9 hdc)
Turn the band to work along its long edge.
Row 1: Work 60 (66) hdc evenly along the long edge at the rate of 1 in each short row and 2 in each tall row. (60 (66) hdc)
Rows 2-4: Ch 2, hdc in each st across, turn. (60 (66) hdc)
Row 5: Ch 2, *hdc in next 2 sts, 2 hdc in next st; rep from * to end, turn. (80 (88) hdc)
Bind off 2 sts at beg of next 6 rows. (68 (76) sts)
Leave 4 sts unworked at left edge. (64 (72) sts)
Row 12: Ch 2, hdc in each st across, turn. (64 (72) hdc)
Bind off 5 sts at beg of next row. (59 (67) sts)
Rows 14-17: Ch 2, hdc in each st across, turn. (59 (67) hdc)
Divide the row: 20 (23) sts for Second, 15 sts left unworked, 4 (6) sts held, 20 (23) sts for First.

# Front, Second
Take up 20 (23) held sts. (20 (23) sts)
Dec 1 st at neck edge (left) every row 6 times, over 6 rows in hdc. (14 (17) sts)
Fasten off.

# Front, First
Take up 20 (23) held sts. (20 (23) sts)
Dec 1 st at neck edge (right) every row 6 times, over 6 rows in hdc. (14 (17) sts)
Fasten off.
`},
	} {
		t.Run(k.name, func(t *testing.T) {
			p, gs := written(t, k.src)
			text := print.Rows(p, gs, print.Options{Size: -1, Terms: stitch.Terms(p.Terms)})
			at := strings.Index(text, "\n# "+p.Pieces[0].Name)
			got, _, _ := strings.Cut(text[at:], "\n# Making up")
			assert.Equal(t, k.want, got)
			reads(t, text, p, gs)
		})
	}
}
