package work

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/bysize"
	"flatwright/schematic/given"
)

// A slip dress in the round, divided at the armholes and its front again at the neck. By hand, in the first size:
//
//	skirt  8 + 10 = 18 rounds on 96 stitches, 8 decreased on the 6th and the 12th round: 80, then 4 rounds
//	front  38 of 80; 1 at each end on the next row and on every 2nd, 3 times: 32; 10 rows; halves of 10 and 12 held
//	half   1 on every 2nd row, 3 times: 7
const slipDress = `version: 1
pattern: Slip dress
terms: UK
units: cm
sizes: 1 (2)
gauges:
  fabric: 20 sts and 30 rows over 10 cm
pieces:
  - piece: Dress
    kind: body
    worked: in the round, from the hem
    sections:
      - cast on: 96 (104)
      - even: 18 rounds
      - decrease: 8
        at: across
        every: 6 rounds
        times: 2
      - even: 4 rounds
      - divide:
        - part: Front
          stitches: 38 (42)
          sections:
            - decrease: 1
              at: both edges
              on: right-side rows
              every: 2 rows
              times: 3
              edge: armhole
              to: 32 (36)
            - even: 10 rows
            - divide:
              - part: Left half
                stitches: 10 (11)
                sections:
                  - decrease: 1
                    at: left edge
                    on: right-side rows
                    every: 2 rows
                    times: 3
                    edge: neck
                    to: 7 (8)
                  - even: 4 rows
                  - bind off: all
              - hold: 12 (14)
              - part: Right half
                mirror of: Left half
        - bind off: 2
        - part: Back
          stitches: 38 (42)
          sections:
            - even: 20 rows
            - bind off: all
        - bind off: 2
`

const slipDressText = `*Skirt*
Using 4mm circular needle, cast on 96 (104) sts. Join in the round.
Rnd 1: Knit.
Rnd 2: Purl.
Repeat rounds 1 and 2 three more times.
Knit 10 rounds.
Knit 5 rounds.
Next round: *K10 (11), k2tog; repeat from * to end. 88 (96) sts
Knit 5 rounds.
Next round: *K9 (10), k2tog; repeat from * to end. 80 (88) sts
Knit 4 rounds.

*Divide for front and back*
Next row: K38 (42) for front and turn, leaving rem sts on a holder.

*Front*
Row 1 (RS): K1, ssk, knit to last 3 sts, k2tog, k1. 36 (40) sts
Row 2: Purl.
Rep rows 1-2 2 times more. 32 (36) sts
Work 10 rows in st st.

*Shape neck*
Next row: K10 (11), turn and work on these sts only for first side of neck.
Dec 1 st at neck edge on every alt row until 7 (8) sts remain.
Work 4 rows straight. Cast off.
Slip centre 12 (14) sts onto a holder. Rejoin yarn to rem 10 (11) sts and work second side to match first, reversing shaping.

*Back*
With RS facing, rejoin yarn to rem sts, cast off 2 sts, knit until there are 38 (42) sts on right needle, turn and leave last 2 sts on a safety pin.
Work 20 rows straight. Cast off.
`

func TestAPartOfAPartIsHeldAgainstTheRowsBehindItsOwnDivision(t *testing.T) {
	p := given.Text(t, slipDress)
	gs := bysize.WorkAll(p)
	told := func(old, now string) []string {
		text := strings.Replace(slipDressText, old, now, 1)
		x := Read("dress.txt", []byte(text), Options{Sizes: p.Sizes})
		var out []string
		for _, f := range append(Check(x).Findings, Against(x, p, gs)...) {
			out = append(out, f.Message)
		}
		return out
	}
	assert.Empty(t, told("", ""))
	assert.Equal(t, []string{"the text of Dress, Left half never comes to 7 (8) stitches"}, told("until 7 (8) sts", "until 6 (7) sts"))
	assert.Equal(t, []string{"the text of Dress works 29 rows to the end of 96 (104) stitches, the pattern 18"}, told("Knit 10 rounds", "Knit 16 rounds"), "8 + 16 + 5")
	assert.Equal(t, []string{"the repeat does not fit: 5 stitches are left over after 7 times"}, told("*K10 (11), k2tog", "*K11 (11), k2tog"), "96 = 7 x 13 + 5, though 18 rounds before it state no count")
}

// A vest of crochet that leaves stitches for the armholes and shapes in that very row: 40 - 2 x 3 - 2 = 32.
func TestStitchesLeftInARowThatShapesStandForNoCountOfTheirOwn(t *testing.T) {
	p := given.Text(t, `version: 1
pattern: Vest
terms: US
units: in
sizes: one
gauges:
  hdc: 14 sts and 10 rows over 4 in in half double crochet
pieces:
  - piece: Back
    sections:
      - chain: 41
        stitches: 40
      - even: 10 rows
      - leave: 3
        at: both edges
      - decrease: 1
        at: both edges
        times: 2
        to: 30
      - even: 6 rows
`)
	text := `Ch 2 at the beginning of a row does not count as a stitch.
Back
Ch 41.
Row 1: Hdc in 2nd ch from hook and in each ch across, turn. 40 hdc
Rows 2-10: Ch 2, hdc in each hdc across, turn.
Row 11: Sl st in first 3 hdc, ch 2, hdc2tog, hdc in next 30 hdc, hdc2tog, leave last 3 hdc unworked, turn. 32 hdc
Row 12: Ch 2, hdc2tog, hdc to last 2 hdc, hdc2tog, turn. 30 hdc
Work 6 rows even. Fasten off.
`
	gs := bysize.WorkAll(p)
	against := func(text string) []string {
		var out []string
		for _, f := range Against(Read("vest.txt", []byte(text), Options{Sizes: p.Sizes}), p, gs) {
			out = append(out, f.Message)
		}
		return out
	}
	assert.Empty(t, against(text))
	assert.Equal(t, []string{"the text of Back works 9 rows to the end of 30 stitches, the pattern 8"}, against(strings.Replace(text, "Work 6 rows", "Work 7 rows", 1)))
}

func TestANamedRoundIsWorkedAgainBetweenOtherWords(t *testing.T) {
	const head = "Sleeve\nCast on 52 sts. Join in the round.\nKnit 14 rounds.\n*Dec round:* K1, k2tog, k to last 3 sts, ssk, k1. 50 sts\n"
	for _, c := range []struct {
		line string
		want int // 2 fewer each time
	}{
		{"Work Dec round.", 48},
		{"Knit 7 rounds, work dec round.", 48},
		{"[Knit 7 rounds, work dec round] 5 times.", 40},
		{"*Knit 7 rounds. Work Dec round. Rep from * 4 times more.", 40},
		{"Cont in st st, working dec round on every foll 8th round until there are 40 sts.", 40},
		{"Rep Dec round on next round, then every 2nd round 4 more times.", 40},
		{"Work dec round on next and every foll 4th round 5 times. 40 sts", 40},
		{"Work dec round on next and every foll 4th round 4 times. 40 sts", 40},
	} {
		x := Read("t.txt", []byte(head+c.line+"\nNext round: K"+"1, k to end.\n"), Options{})
		rep := Check(x)
		assert.Empty(t, rep.Findings, c.line)
		lines := x.Sections[len(x.Sections)-1].Lines
		assert.Equal(t, []int{c.want}, rep.Stitches[lines[len(lines)-1]], c.line)
	}
}

func TestAChainTakenOtherwiseThanTheTextSaysIsAskedAbout(t *testing.T) {
	// 72 stitches: the chain and 2 are 3, 2 in the next, then 17 times 3 and 1 more: 3 + 1 + 17 x 4 = 72, made 4 + 1 + 17 x 5 = 90
	const text = `Terms: US
Notes
The ch-3 at the start of a round counts as a dc.
Yoke
Ch 72, join with sl st to form a ring.
Rnd 1: Ch 3, dc in each ch around, join. 72 dc
Rnd 2: Ch 3, dc in next 2 dc, 2 dc in next dc, *dc in next 3 dc, 2 dc in next dc; rep from * around, join. 90 dc
Rnd 3: Ch 3, dc in next 49 dc, ch 6, skip next 20 dc, dc in next 20 dc, join. 70 dc and 1 underarm chain
Rnd 4: Ch 3, dc in each dc and each ch around, join. 76 dc
`
	told := func(old, now string) []string {
		var out []string
		for _, f := range Check(Read("t.txt", []byte(strings.Replace(text, old, now, 1)), Options{})).Findings {
			out = append(out, f.Message)
		}
		return out
	}
	assert.Empty(t, told("", ""))
	assert.Equal(t, []string{"ch 3 counts as a stitch in this text, but the row fits only if here it does not count"}, told("Ch 3, dc in next 2 dc", "Ch 3, dc in next 3 dc"))
	assert.Equal(t, []string{"the row makes 77 dc, not 76"}, told("ch 6", "ch 7"))
}

func TestStitchesNamedOneByOneMakeTheirSum(t *testing.T) {
	// 1 + 2 + 34 + 3 = 40
	const text = "Terms: US\nCh 3 counts as a dc.\nSleeve\nJoin yarn at center of underarm.\nRnd 1: Ch 3, dc in each of next 2 ch, dc in each of the 34 sleeve sts, dc in each of the remaining 3 ch, join. 40 dc\n"
	assert.Empty(t, Check(Read("t.txt", []byte(text), Options{})).Findings)
	list := Check(Read("t.txt", []byte(strings.Replace(text, "34", "36", 1)), Options{})).Findings
	if assert.Len(t, list, 1) {
		assert.Equal(t, "the row makes 42 stitches, not 40", list[0].Message)
	}
}

func TestWordsBeforeWhatIsCounted(t *testing.T) {
	for _, c := range []struct {
		text  string
		sizes int
		last  []int // stitches behind the last line
	}{
		{"Size 1 (2:3)\n\nBack\nCast on 20 (24:28) sts.\nRow 1: Knit.\n", 3, []int{20, 24, 28}},
		{"sizes S (M, L)\n\nback\ncast on 20 (24, 28) sts.\nnext row: k, inc 2 sts evenly. 22 (26, 30) sts\nchange to st st.\nnext row: k.\n", 3, []int{22, 26, 30}},
		{"Yoke\nCast on 60 sts.\nKnit 2 rows.\nDivide for body and sleeves (RS): K10, slip next 10 sts onto waste yarn for left sleeve, cast on 4 sts, k20, slip next 10 sts onto waste yarn for right sleeve, cast on 4 sts, k10. 48 sts\n", 1, []int{48}},
		{"Back\nWith the finer needles cast on 30 sts. and work 6 rows in k. 1, p. 1 rib.\nNext row: K to end.\n", 1, []int{30}},
	} {
		x := Read("t.txt", []byte(c.text), Options{})
		rep := Check(x)
		assert.Empty(t, rep.Findings, c.text)
		assert.Equal(t, rep.Read.Lines, rep.Read.Whole, c.text)
		assert.Len(t, rep.Sizes, c.sizes, c.text)
		lines := x.Sections[len(x.Sections)-1].Lines
		assert.Equal(t, c.last, rep.Stitches[lines[len(lines)-1]], c.text)
	}
}
