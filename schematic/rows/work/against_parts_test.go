package work

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/bysize"
	"flatwright/schematic/given"
)

// A slipover whose front is divided at the neck. In size 1, at 20 stitches and 30 rows over 10 cm a row is ⅓ cm high:
//
//	welt       12 rows                             4 cm
//	to armhole 12 + 60 = 72 rows                   24 cm
//	back       72 + 2 + 10 + 50 = 134 rows         62 rows from the armhole, 20⅔ cm
//	half front 36 - 14 = 22 = 11 + 11, 28 + 23 rows behind the armhole's 12
const slipover = `version: 1
pattern: Slipover
terms: UK
units: cm
sizes: 1 (2)
gauges:
  fabric: 20 sts and 30 rows over 10 cm
pieces:
  - piece: Back
    sections:
      - cast on: 90 (98)
      - even: 12 rows
        rib: yes
      - even: 60 (62) rows
      - bind off: 4 (5)
        at: both edges
        edge: armhole
      - decrease: 1
        at: both edges
        every: 2 rows
        times: 5 (6)
        to: 72 (76)
      - even: 50 rows
      - bind off: 11
        at: both edges
        edge: shoulder
      - bind off: 11 (12)
        at: both edges
        edge: shoulder
      - bind off: all
  - piece: Front
    sections:
      - cast on: 90 (98)
      - even: 12 rows
        rib: yes
      - even: 60 (62) rows
      - bind off: 4 (5)
        at: both edges
        edge: armhole
      - decrease: 1
        at: both edges
        every: 2 rows
        times: 5 (6)
        to: 72 (76)
      - divide:
          - part: Left half
            stitches: 36 (38)
            sections:
              - decrease: 1
                at: right edge
                every: 2 rows
                times: 14 (15)
                to: 22 (23)
              - even: 23 (21) rows
              - bind off: 11
                at: left edge
              - even: 1 row
              - bind off: all
          - part: Right half
            stitches: 36 (38)
            mirror of: Left half
`

const slipoverText = `Sizes: 1 (2)
Tension: 20 sts and 30 rows to 10 cm

BACK
Cast on 90 (98) sts.
1st row (RS): *K2, p2; rep from * to last 2 sts, k2.
2nd row: P2, *k2, p2; rep from * to end.
Rep these 2 rows until welt measures 4 cm, ending with a WS row.
Beg with a k row, work in st st until back measures 24 (24.5) cm from cast-on edge, ending with a WS row.
Shape armholes
Cast off 4 (5) sts at beg of next 2 rows. 82 (88) sts.
Dec 1 st at each end of next and foll 4 (5) alt rows. 72 (76) sts.
Cont straight until armhole measures 20.5 (21.5) cm, ending with a WS row.
Shape shoulders
Cast off 11 sts at beg of next 2 rows, then 11 (12) sts at beg of foll 2 rows.
Leave rem 28 (30) sts on a holder.

FRONT
Work as given for Back to armhole shaping.
Shape armholes
Cast off 4 (5) sts at beg of next 2 rows.
Dec 1 st at each end of next and foll 4 (5) alt rows. 72 (76) sts.
P 1 row.
Divide for neck
Next row (RS): K34 (36), k2tog, turn and leave rem sts on a holder.
Dec 1 st at neck edge on foll 13 (14) alt rows. 22 (23) sts.
Work 24 (22) rows straight.
Shape shoulder
Cast off 11 sts at beg of next row. Work 1 row. Cast off rem 11 (12) sts.
With RS facing, rejoin yarn to sts on holder, k2tog, k to end.
Complete to match first side, reversing shapings.
`

const frontArmhole = `Work as given for Back to armhole shaping.
Shape armholes
Cast off 4 (5) sts at beg of next 2 rows.
Dec 1 st at each end of next and foll 4 (5) alt rows. 72 (76) sts.
`

const frontNeck = `Next row (RS): K34 (36), k2tog, turn and leave rem sts on a holder.
Dec 1 st at neck edge on foll 13 (14) alt rows. 22 (23) sts.
Work 24 (22) rows straight.
Shape shoulder
Cast off 11 sts at beg of next row. Work 1 row. Cast off rem 11 (12) sts.
With RS facing, rejoin yarn to sts on holder, k2tog, k to end.
Complete to match first side, reversing shapings.
`

const frontHalves = `Next row (RS): K34 (36), k2tog, join a second ball of yarn, k2tog, k to end. 35 (37) sts each side.
Working both sides at the same time, dec 1 st at each neck edge on foll 13 (14) alt rows. 22 (23) sts each side.
Work 24 (22) rows straight.
Cast off 11 sts at each armhole edge. 11 (12) sts each side.
Work 1 row.
Cast off all sts.
`

// A text tells halves without headings, a front as a back, and rows by lengths; what differs from the pattern is told at its
// place, once.
func TestATextOfHalvesAndLengthsIsHeldAgainstItsPattern(t *testing.T) {
	p := given.Text(t, slipover)
	gs := bysize.WorkAll(p)
	for _, c := range []struct{ was, now, message, place string }{
		{"", "", "", ""},
		{"BACK", "Back", "", ""},
		{"FRONT", "Front (work 1)", "", ""},
		{"measures 4 cm", "measures 6 cm", "the text of Back goes on to 6 cm of rib; the pattern's rows measure 4 cm there", "6 cm"},
		{"24 (24.5) cm", "26 (26.5) cm", "the text of Back goes on to 26 (26.5) cm; the pattern's rows measure 24 (24.7) cm there", "26 (26.5) cm"},
		{"20.5 (21.5) cm", "20.5 (23.5) cm", "the text of Back goes on to 23.5 cm from the armhole; the pattern's rows measure 21.3 cm there", "20.5 (23.5) cm"},
		{"Work 24 (22) rows", "Work 28 (22) rows", "the text of Front, Left half works 55 rows to the end of 22 stitches, the pattern 51", ""},
		{"then 11 (12) sts at beg of foll 2 rows.\nLeave rem 28 (30)", "then 12 (13) sts at beg of foll 2 rows.\nLeave rem 26 (28)", "the text of Back never comes to 28 (30) stitches", ""},
		{"Cast off 11 sts at beg of next 2 rows, then 11 (12)", "Cast off 12 sts at beg of next 2 rows, then 10 (11)", "the text of Back never comes to 50 (54) stitches", ""},
		{"until back measures 24 (24.5) cm from cast-on edge, ending with a WS row", "for 64 (66) rows", "the text of Back works 76 (78) rows to the end of 90 (98) stitches, the pattern 72 (74)", ""}, // and not again of the front
		{"Tension: 20 sts", "TENSION\n20 sts", "", ""},
		{"Tension: 20 sts", "TENSION\n22 sts", "the gauge in the text is not one of the pattern's", ""},
		{"holder, k2tog, k to end", "holder, cast off 1 st, k2tog, k to end", "the second side of Front has 34 (36) stitches here, and is worked to match a first that never has", ""}, // 36 - 1 - 1
		{frontArmhole, "Work as given for Back until 72 (76) sts rem in armhole shaping.\n", "", ""},
		{frontArmhole, "Work as given for Back until 71 (76) sts rem in armhole shaping.\n", "the text of Front has 71 stitches here; the pattern's sections never come to that count", ""},
		{frontNeck, frontHalves, "", ""},
		{frontNeck, strings.Replace(frontHalves, "Work 24 (22)", "Work 26 (22)", 1), "the text of Front, Left half works 53 rows to the end of 22 stitches, the pattern 51", ""}, // 1 + 26 + 26
		{"Work 24 (22) rows", "Work 25 (22) rows", "the text of Front, Left half works 52 rows to the end of 22 stitches, the pattern 51", ""},                                   // one more
	} {
		require.Contains(t, slipoverText, c.was)
		src := strings.Replace(slipoverText, c.was, c.now, 1)
		if c.message != "" && strings.Contains(c.now, "for 64") {
			src = strings.Replace(src, "Rep these 2 rows until welt measures 4 cm, ending with a WS row.", "Rep these 2 rows 5 times more.", 1)
		}
		list := Against(Read("slipover.txt", []byte(src), Options{Sizes: p.Sizes}), p, gs)
		if c.message == "" {
			assert.Empty(t, list, c.now)
			continue
		}
		require.Len(t, list, 1, c.now)
		assert.Equal(t, c.message, list[0].Message)
		if c.place != "" {
			line := []rune(strings.Split(src, "\n")[list[0].Pos.Line-1])
			assert.Equal(t, c.place, string(line[list[0].Pos.Col-1:list[0].Pos.EndCol-1]))
		}
	}
}

// What one piece lacks says nothing of another.
func TestAPieceThatIsHardlyToldHidesNoOther(t *testing.T) {
	p := given.Text(t, slipover)
	at := strings.Index(slipoverText, "FRONT")
	front := strings.Replace(slipoverText[at:], "Work as given for Back to armhole shaping.", "Cast on 90 (98) sts.\nWork 12 rows in k2, p2 rib.\nWork 61 (63) rows in st st.", 1)
	list := Against(Read("slipover.txt", []byte("Sizes: 1 (2)\n\nBACK\nFasten off.\n\n"+front), Options{Sizes: p.Sizes}), p, bysize.WorkAll(p))
	require.Len(t, list, 2)
	assert.Contains(t, list[0].Message, "no row of Back could be followed, so it was not compared")
	assert.Contains(t, list[1].Message, "the text of Front works 73 (75) rows to the end of 90 (98) stitches, the pattern 72 (74)")
}

// A hat of 8 + 20 rounds and 9 decrease rounds, every second one: 18 rounds more. The first of them may be told before its plain
// round or behind it: what is worked later at one end is worked less at the other.
const hat = `version: 1
pattern: Hat
terms: US
units: in
sizes: One size
gauges:
  fabric: 20 sts and 28 rounds over 4 in
  rib: 20 sts and 28 rounds over 4 in in k1, p1 rib
pieces:
  - piece: Hat
    worked: in the round, from the hem
    sections:
      - cast on: 80
        gauge: rib
      - even: 8 rounds
      - even: 20 rounds
        gauge: fabric
      - decrease: 8
        at: across
        every: 2 rounds
        times: 9
      - gather:
`

func TestRoundsBeforeAShapingAreThoseOfTheShapingOrOfWhatStandsBefore(t *testing.T) {
	p := given.Text(t, hat)
	gs := bysize.WorkAll(p)
	text := func(even, crown string) string {
		return "Brim\nCO 80 sts. Join to work in the round.\nRnd 1: *K1, p1; rep from * around.\nRep Rnd 1 until brim measures 1¼ in.\n\nBody\nKnit " + even + " rnds.\n\nCrown\n" + crown +
			"Break yarn, thread through remaining sts and pull tight.\n"
	}
	for _, c := range []struct{ even, crown, message string }{
		{"20", "Next rnd: Knit.\nNext rnd: *K8, k2tog; rep from * around. 72 sts\nDec 8 sts evenly every 2 rnds 8 times. 8 sts\n", ""},
		{"21", "Next rnd: *K8, k2tog; rep from * around. 72 sts\nDec 8 sts evenly every 2 rnds 8 times. 8 sts\n", ""},
		{"22", "Next rnd: *K8, k2tog; rep from * around. 72 sts\nDec 8 sts evenly every 2 rnds 8 times. 8 sts\n", "the text of Hat works 30 rows to the end of 80 stitches, the pattern 28"},
		{"20", "Next rnd: *K8, k2tog; rep from * around. 72 sts\nDec 8 sts evenly every 2 rnds 8 times. 8 sts\n", "the text of Hat works 17 rows to the end of 8 stitches, the pattern 18"},
		{"19", "Next rnd: Knit.\nNext rnd: *K8, k2tog; rep from * around. 72 sts\nDec 8 sts evenly every 2 rnds 8 times. 8 sts\n", "the text of Hat works 17 rows to the end of 8 stitches, the pattern 18"},
	} {
		list := Against(Read("hat.txt", []byte(text(c.even, c.crown)), Options{Sizes: p.Sizes}), p, gs)
		if c.message == "" {
			assert.Empty(t, list, c.even)
			continue
		}
		require.Len(t, list, 1, c.even)
		assert.Equal(t, c.message, list[0].Message)
	}
}

// A mitten whose hand is called Hand before its thumb is left, too: that is not the part of that name.
func TestAHeadingBeforeTheDivisionIsNotOfThePartOfThatName(t *testing.T) {
	p := given.Text(t, `version: 1
pattern: Mitts
terms: US
units: in
sizes: S (M)
gauges:
  fabric: 24 sts and 32 rounds over 4 in
pieces:
  - piece: Mitt
    worked: in the round, from the hem
    sections:
      - cast on: 40 (44)
      - even: 24 rounds
      - increase: 1
        at: both edges
        every: 3 rounds
        times: 6 (7)
      - divide:
          - hold: 12 (14)
            name: thumb
          - part: Hand
            stitches: 40 (44)
            sections:
              - even: 1 round
      - join parts: [Hand]
        round: yes
      - even: 14 rounds
      - bind off: all
`)
	text := `Cuff
CO 40 (44) sts and join to work in the round.
Rnds 1-20: *K2, p2; rep from * around.
Hand
Rnds 21-24: Knit.
Thumb gusset
Rnd 1: K1, m1L, k to last st, m1R, k1. 42 (46) sts
Rnds 2 and 3: Knit.
Rep Rnds 1-3 5 (6) more times. 52 (58) sts
Next rnd: Slip first 12 (14) sts onto waste yarn, k to end of rnd. 40 (44) sts
Knit 14 rnds.
Bind off.
`
	gs := bysize.WorkAll(p)
	against := func(text string) []string {
		var out []string
		for _, f := range Against(Read("mitts.txt", []byte(text), Options{Sizes: p.Sizes}), p, gs) {
			out = append(out, f.Message)
		}
		return out
	}
	assert.Empty(t, against(text))
	assert.Equal(t, []string{"the text of Mitt works 28 rows to the end of 40 (44) stitches, the pattern 24"}, against(strings.Replace(strings.Replace(text, "1-20", "1-24", 1), "21-24", "25-28", 1)))
}
