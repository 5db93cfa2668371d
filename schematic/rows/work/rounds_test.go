package work

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/finding"
	"flatwright/schematic/rows/grammar"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// Counted by hand: 3 chains and 23 trebles are 24; each with a chain behind it 24 spaces, the first of which is
// the fourth chain; two into each space 48, a stitch and three left under an arch 12 loops.
func TestAnOldDoilyAgrees(t *testing.T) {
	text := `ABBREVIATIONS.--Ch., chain; d. c., double crochet; tr., treble; s. s., slip stitch.
Commence with 8 ch., join with s. s.
1st round.--3 ch. (to stand for 1 tr.), 23 tr. into the ring, join with s. s. to top of 3 ch. (24 tr.)
2nd round.--4 ch., * 1 tr. into next tr., 1 ch.; repeat from * all round, join to 3rd of 4 ch. (24 spaces)
3rd round.--S. s. into first space, 3 ch., 1 tr. into same space, * 2 tr. into next space; repeat from * to end of round, join. (48 tr.)
4th round.--1 ch., 1 d. c. into same place, * 5 ch., miss 3 tr., 1 d. c. into next tr.; repeat from * 10 times more, 5 ch., s. s. to first d. c. (12 loops)
5th round.--* Into next loop work 1 d. c., 7 tr., 1 d. c.; repeat from * all round, s. s. to first d. c. (108 sts.)
`
	x := Read("d.txt", []byte(text), Options{})
	rep := Check(x)
	assert.Equal(t, stitch.UK, x.Terms, "nothing but 'miss' tells, and double crochet is of both")
	assert.Equal(t, rep.Read.Lines, rep.Read.Whole)
	for _, f := range rep.Findings {
		assert.Equal(t, finding.Note, f.Severity, "%d: %s", f.Pos.Line, f.Message)
	}
}

func TestALineOfSizesMayTellWhomTheyFit(t *testing.T) {
	for line, want := range map[string][]string{
		"Sizes: To fit age 0-3 (3-6, 6-12) months": {"0-3", "3-6", "6-12"},
		"Sizes: ages 2 (4, 6) years.":              {"2", "4", "6"},
		"Sizes: S (M, L)":                          {"S", "M", "L"},
		"Sizes: Baby (Child, Teen)":                {"Baby", "Child", "Teen"},
	} {
		x := Read("s.txt", []byte(line+"\n\nCast on 20 (24, 28) sts.\n"), Options{})
		assert.Equal(t, want, x.Sizes.Names, line)
	}
}

// By hand: three rows, then two of every other row, take ten stitches off 50 at both ends.
func TestDecreasesThatGoOnOtherwiseAreFollowed(t *testing.T) {
	for then, left := range map[string]string{
		"then on foll 2 alt rows": "40", "and foll 2 alt rows": "40", "then on foll 2 rows": "40", "then on next 4 rows": "36", "then on following 2 alternate rows": "40",
	} {
		x := Read("s.txt", []byte("Cast on 50 sts.\nDec 1 st at each end of next 3 rows, "+then+". "+left+" sts.\nBind off all "+left+" sts.\n"), Options{})
		rep := Check(x)
		assert.Empty(t, rep.Findings, then)
		assert.Equal(t, rep.Read.Lines, rep.Read.Whole, then)
	}
}

// The rows of an old edging, counted by hand: 9, 11, 11, 13, 13, 13, 9.
func TestOldLaceNarrowsAndIsKnitPlain(t *testing.T) {
	text := `LEAF EDGING.
Cast on 9 stitches.
1st row.--Slip 1, k 2, over, k 2 tog., over, k 1, over, k 3. (11)
2nd row.--Knit plain.
3rd row.--Slip 1, k 2, over, narrow, over, k 3, over, k 3. (13 sts.)
4th row.--K. plain.
5th row.--Sl. 1, k. 2, o., n., k. 8. (13 sts.)
6th row.--Cast off 4, knit the rest. (9 stitches.)
`
	x := Read("e.txt", []byte(text), Options{})
	rep := Check(x)
	assert.Empty(t, rep.Findings)
	assert.Equal(t, rep.Read.Lines, rep.Read.Whole)
	broken := Check(Read("e.txt", []byte(strings.Replace(text, "o., n., k. 8. (13", "o., k. 8. (13", 1)), Options{}))
	assert.NotEmpty(t, broken.Findings, "without the narrowing two stitches are left")
}

// A round may be led by slip stitches all the way to where it began: that is told or read in some way, and never fails.
func TestARoundLedAllTheWayRoundIsNoFailure(t *testing.T) {
	src := "Terms: US\nCh 6. Join with sl st to form a ring.\nRnd 1: Ch 3, 11 dc in ring. Join.\nRnd 2: Ch 3, dc in same place, (ch 2, skip 1 dc, 2 dc in next dc) 5 times; ch 2. Join.\n" +
		"Rnd 3: Sl st in next dc and in next sp, sl st in next 11 dc and in next sp, ch 3, dc in same sp. Join.\n"
	x := grammar.Read("led.txt", []byte(src), ins.Options{})
	assert.NotPanics(t, func() { Check(x) })
}

// Counted by hand: 1 and 1 and 7 times 2; 8 times 6; the same, with 2 chains between; 4 times 6 and 4 times 4.
func TestShellsAreNamedInABracketBehindThem(t *testing.T) {
	text := `Terms: US
Ch 6, join with sl st to form ring.
Rnd 1: Ch 3, 15 dc in ring, sl st in top of ch-3. (16 dc)
Rnd 2: Ch 3, dc in same place as sl st, (ch 2, skip 1 dc, 2 dc in next dc) 7 times; ch 2, sl st in top of ch-3. (16 dc)
Rnd 3: Sl st in next dc and in next sp, ch 3, in same sp make 2 dc, ch 1 and 3 dc (a starting shell). In each sp around make 3 dc, ch 1 and 3 dc (shell). Join. (48 dc)
Rnd 4: Sl st in next 2 dc and in next sp, ch 3 and make a starting shell in same sp, (ch 2, shell over next shell) 7 times; ch 2. Join. (48 dc)
Rnd 5: Sl st in next 2 dc and in next sp, ch 3, in same sp make 2 dc, ch 1 and 3 dc; (ch 4, in sp of next shell make 2 dc, ch 5 and 2 dc; ch 4, shell over next shell) 3 times; ch 4, in sp of next shell make 2 dc, ch 5 and 2 dc; ch 4. Join. (40 dc)
`
	none := func(s string) finding.List {
		return Check(grammar.Read("shells.txt", []byte(s), ins.Options{})).Findings
	}
	assert.Empty(t, none(text))
	for _, wrong := range [][2]string{{"(40 dc)", "(41 dc)"}, {"over next shell) 7 times", "over next shell) 6 times"}} {
		assert.Len(t, none(strings.Replace(text, wrong[0], wrong[1], 1)), 1, wrong[0])
	}
}
