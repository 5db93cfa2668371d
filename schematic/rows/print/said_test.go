package print_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/schematic"
	"flatwright/schematic/random"
	"flatwright/schematic/read"
	"flatwright/schematic/rows"
	"flatwright/schematic/rows/print"
	"flatwright/schematic/stitch"
)

// written is the pattern of a file.
func written(t *testing.T, src string) (*schematic.Pattern, []*schematic.Garment) {
	t.Helper()
	p, list := read.Pattern("t.yaml", []byte(src))
	require.Empty(t, list)
	gs, ok := works(p)
	require.True(t, ok)
	return p, gs
}

const (
	knitHead = `version: 1
pattern: Bag
terms: US
units: cm
sizes: S (M)
gauges:
  fabric: 20 sts and 28 rows over 10 cm in stockinette stitch
pieces:
`
	hookHead = `version: 1
pattern: Bag
terms: US
units: in
sizes: S (M)
gauges:
  fabric: 16 sts and 12 rows over 4 in in hdc
  rib: 16 sts and 12 rows over 4 in in back loop hdc
  posts: 14 sts and 8 rows over 4 in in raised dc rib
pieces:
`
)

// What the pattern says is said in its rows, in the trade's words (common practice), and reads back.
func TestWhatThePatternSaysIsSaid(t *testing.T) {
	for _, k := range []struct {
		name, src string
		want      []string
	}{
		{"a stitch that goes by its name, and none that needs telling", strings.Replace(knitHead, "pieces:", "  edge: 18 sts and 32 rows over 10 cm in moss stitch\n  lace: 20 sts and 28 rows over 10 cm in the lace of chart A\npieces:", 1) + `  - piece: Front
    sections:
      - cast on: 40
      - even: 6 rows
        gauge: edge
      - even: 8 rows
        gauge: lace
      - bind off: all
`, []string{"Work 6 rows even in moss stitch. (40 sts)", "Work 8 rows even. (40 sts)"}},
		{"the chain that the designer wrote", hookHead + `  - piece: Front
    sections:
      - chain: 41 (45)
        stitches: 40 (44)
      - even: 4 rows
      - bind off: all
`, []string{"Ch 41 (45).", "Row 1: Hdc in 2nd ch from hook and in each ch across, turn. (40 (44) hdc)"}},
		{"the usual chain, where she wrote none", hookHead + `  - piece: Front
    sections:
      - cast on: 40 (44)
      - even: 4 rows
      - bind off: all
`, []string{"Ch 42 (46).", "Row 1: Hdc in 3rd ch from hook and in each ch across, turn. (40 (44) hdc)"}},
		{"the loop and the posts of a gauge", hookHead + `  - piece: Front
    sections:
      - cast on: 40 (44)
        gauge: rib
      - even: 4 rows
      - even: 3 rows
        gauge: posts
      - bind off: all
`, []string{"Rows 2-4: Ch 2, hdc blo in each st across, turn. (40 (44) hdc)",
			"Rows 5-7: Ch 3, *FPdc around next st, BPdc around next st; rep from * across, turn. (40 (44) dc)"}},
		{"the side of the rows that are shaped", knitHead + `  - piece: Front
    sections:
      - cast on: 40 (44)
      - decrease: 1
        at: both edges
        every: 2 rows
        times: 4 (5)
        on: right-side rows
      - bind off: all
`, []string{"Dec 1 st at each end of right-side rows every 2 rows 4 (5) times, over 8 (10) rows in stockinette stitch. (32 (34) sts)"}},
		{"one row, without a number of times", knitHead + `  - piece: Front
    sections:
      - cast on: 40 (44)
      - even: 4 rows
      - increase: 1
        at: left edge
        every: 1 row
        times: 1
      - bind off: all
`, []string{"Inc 1 st at left edge on next row. (41 (45) sts)"}},
		{"what is bound off in a division, and the parts that wait", knitHead + `  - piece: Front
    sections:
      - cast on: 40 (44)
      - even: 8 rows
      - divide:
          - part: First side
            stitches: 15 (16)
            sections:
              - even: 10 rows
          - bind off: 10 (12)
          - part: Second side
            stitches: 15 (16)
            sections:
              - even: 10 rows
      - join parts: [First side, {add: 10 (12)}, Second side]
      - bind off: all
`, []string{"Divide the row: 15 (16) sts for First side, 10 (12) sts bound off, 15 (16) sts for Second side.", "Leave remaining sts on a holder."}},
		{"a row that ends in parts that are all bound off", knitHead + `  - piece: Front
    sections:
      - cast on: 40 (44)
      - even: 8 rows
      - divide:
          - bind off: 15 (16)
            edge: right shoulder
          - bind off: 10 (12)
            edge: neck
          - bind off: 15 (16)
            edge: left shoulder
`, []string{"Place markers between the panels: 15 (16) sts for right shoulder, 10 (12) sts for neck, 15 (16) sts for left shoulder.", "Bind off all sts."}},
		{"stitches left at both edges", hookHead + `  - piece: Front
    sections:
      - cast on: 40 (44)
      - even: 4 rows
      - leave: 5 (6)
        at: both edges
      - even: 4 rows
      - bind off: all
`, []string{"Leave 5 (6) sts unworked at right edge. (35 (38) sts)", "Leave 5 (6) sts unworked at left edge. (30 (32) sts)"}},
		{"a crown that is gathered", knitHead + `  - piece: Crown
    worked: in the round, from the hem
    sections:
      - cast on: 40 (48)
      - decrease: 8
        at: across
        every: 1 row
        times: 4 (5)
      - gather:
`, []string{"Dec 8 sts evenly every rnd 4 (5) times, over 4 (5) rnds in stockinette stitch. (8 sts)", "Cut the yarn and draw it through the remaining sts. Fasten off."}},
		{"the round that a band is picked up into", hookHead + `  - piece: Hat
    worked: in the round, from the hem
    sections:
      - sideways: rib
        stitches: 8
        rows: 64 (72)
        gauge: rib
      - pick up: 1 in each row
        gauge: fabric
      - even: 4 rows
      - bind off: all
`, []string{"Rnd 1: Work 64 (72) hdc evenly along the long edge at the rate of 1 in each row, join. (64 (72) hdc)", "Rnds 2-5: Ch 2, hdc in each st around, join. (64 (72) hdc)"}},
	} {
		t.Run(k.name, func(t *testing.T) {
			p, gs := written(t, k.src)
			text := print.Rows(p, gs, print.Options{Size: -1})
			for _, line := range k.want {
				assert.Contains(t, strings.Split(text, "\n"), line)
			}
			reads(t, text, p, gs)
		})
	}
}

// A crown of 72 stitches, eight fewer each time: 7 and 2 together, eight times, then 6 and 2
// together (common practice). A row has half a gap at either end.
func TestAnEvenChangeIsSpelledOutIfAsked(t *testing.T) {
	for _, k := range []struct {
		name, src string
		size      int
		want      []string
	}{
		{"a round", knitHead + `  - piece: Crown
    worked: in the round, from the hem
    sections:
      - cast on: 72 (80)
      - even: 3 rows
      - decrease: 8
        at: across
        every: 2 rows
        times: 3
      - bind off: all
`, -1, []string{"Rnd 4: *k7 (8), k2tog; rep from * to end. (64 (72) sts)", "Work 1 rnd even in stockinette stitch. (64 (72) sts)",
			"Rnd 6: *k6 (7), k2tog; rep from * to end. (56 (64) sts)", "Rnd 8: *k5 (6), k2tog; rep from * to end. (48 (56) sts)"}},
		{"a row, on the right side", knitHead + `  - piece: Front
    sections:
      - cast on: 43 (44)
      - even: 2 rows
      - increase: 8
        at: across
        every: 1 row
        times: 1
      - bind off: all
`, 0, []string{"Row 3: K2, [kfb, k5] 3 times, [kfb, k4] 4 times, kfb, k2. (51 sts)"}},
		{"a row, on the wrong side", knitHead + `  - piece: Front
    sections:
      - cast on: 48 (52)
      - even: 3 rows
      - decrease: 8
        at: across
        every: 1 row
        times: 1
      - bind off: all
`, -1, nil},
		{"the wrong side, in one size", knitHead + `  - piece: Front
    sections:
      - cast on: 48 (52)
      - even: 3 rows
      - decrease: 8
        at: across
        every: 1 row
        times: 1
      - bind off: all
`, 0, []string{"Row 4: P2, [p2tog, p4] 7 times, p2tog, p2. (40 sts)"}},
		{"more places than stitches", knitHead + `  - piece: Crown
    worked: in the round, from the hem
    sections:
      - cast on: 5
      - increase: 6
        at: across
        every: 1 row
        times: 2
      - bind off: all
`, 0, []string{"Inc 6 sts evenly every rnd 2 times, over 2 rnds in stockinette stitch. (17 sts)"}},
		{"crochet", hookHead + `  - piece: Front
    sections:
      - cast on: 40 (44)
      - even: 3 rows
      - decrease: 4
        at: across
        every: 1 row
        times: 1
      - bind off: all
`, 0, []string{"Row 4: Ch 2, hdc in next 4 sts, [hdc2tog over next 2 sts, hdc in next 8 sts] 3 times, hdc2tog over next 2 sts, hdc in next 4 sts, turn. (36 hdc)"}},
	} {
		t.Run(k.name, func(t *testing.T) {
			p, gs := written(t, k.src)
			text := print.Rows(p, gs, print.Options{Size: k.size, Evenly: true})
			for _, line := range k.want {
				assert.Contains(t, strings.Split(text, "\n"), line)
			}
			rep := rows.Check(rows.Read("printed", []byte(text), rows.Options{}), rows.Options{})
			require.Empty(t, rep.Findings, text)
			require.Equal(t, rep.Read.Lines, rep.Read.Whole, text)
		})
	}
}

func TestPiecesAreMadeUpAsTheJoinsSay(t *testing.T) {
	p, gs := written(t, knitHead+`  - piece: Front
    sections:
      - cast on: 40 (44)
        edge: hem
      - even: 40 rows
      - bind off: all
        edge: top
  - piece: Back
    sections:
      - cast on: 40 (44)
        edge: hem
      - even: 40 rows
      - bind off: all
        edge: top
joins:
  - {sew: Front top, into: Back top, how: stitch to stitch}
  - {sew: Front left side, into: Back left side}
`)
	text := print.Rows(p, gs, print.Options{Size: -1})
	_, after, ok := strings.Cut(text, "\n# Making up\n")
	require.True(t, ok)
	assert.Equal(t, "Sew the Front top to the Back top, stitch for stitch.\nSew the Front left side to the Back left side.\nWeave in the ends.\n", after)
	reads(t, text, p, gs)
}

// An edge whose piece is made twice is told of each, and a piece that its edge names again once.
func TestEachOfTwoPiecesIsSewn(t *testing.T) {
	p, gs := written(t, knitHead+`  - piece: Bag
    sections:
      - cast on: 40 (44)
      - even: 40 rows
      - bind off: all
        edge: top
  - piece: Long handle
    make: 2
    sections:
      - cast on: 40 (44)
      - even: 4 rows
      - bind off: all
        edge: handle end
joins:
  - {sew: Long handle handle end, into: Bag top, how: stitch to stitch}
`)
	assert.Equal(t, []string{"Sew each Long handle end to the Bag top, stitch for stitch.", "Weave in the ends."}, print.MakingUp(p, gs, print.Options{Size: -1}))
}

// oneOf is a plural after the number one alone, or a single thing after another number.
var oneOf = regexp.MustCompile(`(^|[ (])1 (sts|rows|rnds|times|markers)\b|\b([02-9]|\d{2,}) (st|row|rnd|time|marker)\b`)

// Patterns at random, with even changes spelled out: they read back, and every noun is in the number of its figure.
func TestSpelledOutRowsReadBackAndAreGrammatical(t *testing.T) {
	gen := random.Pattern(random.Options{Sizes: 3, Pieces: 4})
	rapid.Check(t, func(r *rapid.T) {
		p := gen.Draw(r, "pattern")
		gs, ok := works(p)
		if !ok {
			r.Skip("a finding of the working")
		}
		o := print.Options{Terms: stitch.Terms(rapid.IntRange(0, 1).Draw(r, "terms")), Size: rapid.IntRange(-1, len(gs)-1).Draw(r, "size"), Evenly: true}
		text := print.Rows(p, gs, o)
		rep := rows.Check(rows.Read("printed", []byte(text), rows.Options{}), rows.Options{})
		for _, f := range rep.Findings {
			r.Fatalf("line %d: %s %s %s | %s | %s\n%s", f.Pos.Line, f.Kind, f.Message, f.Sizes, f.Have, f.Want, text)
		}
		require.Equal(r, rep.Read.Lines, rep.Read.Whole, text)
		assert.Empty(r, oneOf.FindString(text), text)
	})
}

// Counted by hand: 4 + 4 rows of motifs with a neck of 2 x 1 left out are 14; half motifs are told apart. An edge sewn to another of
// its piece is one of "its" edges.
func TestMotifsAreCounted(t *testing.T) {
	p, gs := written(t, knitHead+`  - piece: Front
    motifs:
      shape: square
      across: 11.5 (12.5) cm
      columns: 4
      rows: 4
      filled: [x..x, xxxx, xxxx, xxxx]
  - piece: Sleeve
    make: 2
    motifs:
      shape: square
      across: 11.5 (12.5) cm
      columns: 3
      rows: 1
      filled: [xx/]
joins:
  - {sew: Sleeve left side, into: Sleeve right side}
`)
	out := print.Rows(p, gs, print.Options{Size: -1})
	for _, want := range []string{"Make 14 motifs, and sew them", "Make 2 motifs and 1 half motif, and sew them", "Sew each Sleeve left side to its right side."} {
		assert.Contains(t, out, want)
	}
}

// A join at a fold has one edge, and is a sentence like any other.
func TestEveryJoinIsASentence(t *testing.T) {
	const piece = "    sections:\n      - cast on: 40 (44)\n      - even: 40 rows\n      - {bind off: all, edge: top}\n"
	p, gs := written(t, knitHead+"  - piece: Bag\n"+piece+"  - piece: Flap\n"+piece+"  - piece: Bag strap\n    make: 2\n"+piece+`joins:
  - {sew: Bag top, how: at a fold}
  - {sew: Flap side, to: Bag top, how: 3 sts to 4 rows}
  - {sew: Bag strap top, to: Flap top}
`)
	out := print.Rows(p, gs, print.Options{Size: -1})
	assert.Contains(t, out, "Fold the Bag top in half, and sew its two halves together.")
	assert.Contains(t, out, "Sew the Flap side to the Bag top, 3 sts to every 4 rows.")
	assert.Contains(t, out, "Sew each Bag strap top to the Flap top.")
}

// Rows 3-3 (4) is no range: where one size has one row and another two, they are told by their number.
func TestOneRowInSomeSizesIsNoRange(t *testing.T) {
	p, gs := written(t, `version: 1
pattern: Flap
terms: US
units: in
sizes: S (M)
gauges:
  fabric: 14 sts and 11 rows over 4 in in half double crochet
pieces:
  - piece: Flap
    sections:
      - cast on: 20
      - even: 2 rows
      - even: 1 (2) rows
      - bind off: all
`)
	text := print.Rows(p, gs, print.Options{Size: -1})
	assert.Contains(t, text, "Work 1 (2) rows even in hdc. (20 sts)\n")
	reads(t, text, p, gs)
}
