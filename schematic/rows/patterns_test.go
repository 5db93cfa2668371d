package rows

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/stitch"
)

// A pattern whose rows stand under its name, and a chart, are worked by that name (common practice).
func TestPatternsAndChartsAreWorkedByTheirName(t *testing.T) {
	const head = `Stitch guide
Ladder Rib (multiple of 6 sts)
Rnd 1: K4, p2; repeat to end of round.
Rnd 2: Knit.
1x1 Rib Pattern
Rnd 1: K1, p1 to end of round.

Hat
Cast on 96 sts. Join to work in the round.
`
	o := Options{TermsSet: true, Terms: stitch.US}
	for line, after := range map[string]int{
		"Work in 1x1 Rib Pattern for 3 cm.":                             96,
		"Work in Ladder Rib for 8 cm.":                                  96,
		"Work even in Ladder Rib pattern for 12 rounds.":                96,
		"Work Rnds 1 and 2 of Ladder Rib 6 times.":                      0,
		"Work Rnds 1-12 of Chart A twice. (96 sts)":                     96,
		"Work the 12 rounds of the leaf chart 3 times.":                 0,
		"Work 3 repeats of Chart A.":                                    0,
		"Work Chart B Rnds 1 to 20. (72 sts)":                           72,
		"Rnds 5-20: Work Chart A.":                                      0,
		"Rnd 5: K10, work Rnd 1 of Chart A over next 20 sts, k to end.": 0,
		"Rnd 5: K10, work Chart B to last 10 sts, k10. (90 sts)":        90,
		"Rnd 5: K10, work Leaf Panel (12 sts), k to end. (96 sts)":      96,
		"Rnd 5: K10, work next round of chart to last 10 sts, k10.":     0,
	} {
		x := Read("t.txt", []byte(head+line+"\n"), o)
		rep := Check(x, o)
		assert.Equal(t, rep.Read.Lines, rep.Read.Whole, line)
		assert.Empty(t, rep.Findings, line)
		told := strings.Join(Explain(x, strings.Count(head, "\n")+1), "\n")
		if after > 0 {
			assert.Contains(t, told, "after it there are "+map[int]string{96: "96", 90: "90", 72: "72"}[after]+" stitches", line)
		} else {
			assert.Contains(t, told, "the stitch count is not known", line)
		}
	}
	x := Read("t.txt", []byte(head), o)
	var names []string
	for _, s := range x.Sections {
		names = append(names, s.Name)
	}
	assert.Equal(t, []string{"Ladder Rib", "1x1 Rib Pattern", "Hat"}, names)
}

// Headings as makers of toys write them, right above a first round (common practice).
func TestAFewWordsAboveAFirstRoundAreTheHeadingOfAPiece(t *testing.T) {
	for words, want := range map[string]struct {
		name string
		make int
	}{
		"Arms x2": {"Arms", 2}, "Legs - make 2": {"Legs", 2}, "EARS, make two": {"EARS", 2}, "Wings (x2)": {"Wings", 2}, "Feet 2x": {"Feet", 2},
		"Hoof (make 4 in grey)": {"Hoof", 4}, "Scarf (in red)": {"Scarf", 0}, "2 Ears": {"Ears", 0}, "Part 1: Head": {"Head", 0}, "1. Head": {"Head", 0}, "Step 2 - Body": {"Body", 0},
	} {
		x := Read("t.txt", []byte("Hare\n\nTail\nRnd 1: 5 sc in magic ring (5)\nRnd 2: sc around (5)\n\n"+words+"\nRnd 1: 6 sc in magic ring (6)\nRnd 2: 1 inc in each st (12)\nRnd 3: sc 10, inc 2 (14)\nRnd 4: sc 10, dec 2 (12)\n"), Options{TermsSet: true})
		last := x.Sections[len(x.Sections)-1]
		assert.Equal(t, want.name, last.Name, words)
		assert.Equal(t, want.make, last.Make, words)
		assert.Empty(t, Check(x, Options{TermsSet: true}).Findings, words)
	}
}

// 60 - 3 - 2 at the neck edges; 60 - 2 x 3 at both armhole edges. A length says nothing of the row at which another piece is left.
func TestShapingAtEachEdgeOfTwoSidesAndAsFarAsALength(t *testing.T) {
	for line, after := range map[string]string{
		"Dec 1 st at each neck edge every RS row 3 times.":                            "57",
		"Dec 1 st at each armhole edge every RS row 3 times.":                         "54",
		"Dec 1 st each neck edge on next 3 rows.":                                     "57",
		"Work as for Back until armholes measure 10 cm. (48 sts)":                     "48",
		"Work as for Back until piece measures 30 cm, ending with a WS row. (44 sts)": "44",
	} {
		src := "Back\nCast on 60 sts.\nKnit 2 rows.\nShape Armholes\nBind off 4 sts at beg of next 2 rows. (52 sts)\nDec 1 st at each end of next 2 rows. (48 sts)\n\nFront\nCast on 60 sts.\nKnit 2 rows.\n" + line + "\n"
		x := Read("t.txt", []byte(src), Options{TermsSet: true})
		assert.Empty(t, Check(x, Options{TermsSet: true}).Findings, line)
		assert.Contains(t, strings.Join(Explain(x, 11), "\n"), "after it there are "+after+" stitches", line)
	}
}

// A stitch in the space of a V-stitch leaves none of its legs to the next: 3 + 2 x 3 = 9 stitches, in every row.
func TestTheSpaceOfAGroupIsTheWholeGroup(t *testing.T) {
	src := `Terms: US
Special stitches
V-stitch (V-st): (dc, ch 1, dc) in st or space indicated.
Notes
Beginning ch-3 counts as first dc.
Ch 11.
Row 1: Sc in 2nd ch from hook and in each ch across. (10 sc)
Row 2: Ch 3, turn; dc in next 2 sts, *sk next st, V-st in next st, sk next st, dc in next st, rep from * to last 3 sts, dc in last 3 sts. (9 dc)
Row 3: Ch 3, turn; dc in next 3 dc, V-st in ch-1 sp of next V-st, dc in next 3 dc. (9 dc)
Row 4: Ch 3, turn; dc in next 2 dc, V-st in ch-1 sp of next V-st, dc in next 4 dc. (9 dc)
`
	assert.Empty(t, Check(Read("t.txt", []byte(src), Options{}), Options{}).Findings)
}

// What a shaping is for, before its first row on the same line, is a heading (common practice): 40 - 3 - 3; 34 - 4.
func TestAShapingBeforeItsFirstRowIsAHeading(t *testing.T) {
	src := "Back\nCO 40 sts.\nRow 1: Knit.\nShape armholes: 1st row: Bind off 3 sts, k to last 3 sts, turn. (34 sts)\n"
	x := Read("t.txt", []byte(src), Options{TermsSet: true})
	rep := Check(x, Options{TermsSet: true})
	assert.Equal(t, "Shape armholes", x.Sections[len(x.Sections)-1].Name)
	assert.Equal(t, rep.Read.Lines, rep.Read.Whole)
	src = "Mitt\nCO 34 sts.\nRow 1: Knit.\nDec for top: Next row: (K1, skpo, k11, k2tog, k1) twice. (30 sts)\n"
	rep = Check(Read("t.txt", []byte(src), Options{TermsSet: true}), Options{TermsSet: true})
	assert.Equal(t, rep.Read.Lines, rep.Read.Whole)
	assert.Empty(t, rep.Findings)
	assert.NotEmpty(t, Check(Read("t.txt", []byte(strings.Replace(src, "30 sts", "31 sts", 1)), Options{TermsSet: true}), Options{TermsSet: true}).Findings)
}

// A gauge without a colon is a gauge, and no row.
func TestAGaugeNeedsNoColon(t *testing.T) {
	for _, line := range []string{"Tension 22 stitches and 30 rows to 10 cm over stocking stitch on 4 mm needles", "Gauge - 22 sts and 30 rows = 10 cm", "Tension is 22 sts and 30 rows to 10 cm"} {
		x := Read("t.txt", []byte("Hat\n"+line+"\n\nCO 20 sts.\nRow 1: Knit. (20 sts)\n"), Options{TermsSet: true})
		assert.NotNil(t, x.Gauge, line)
		assert.Equal(t, 2, x.Read.Lines, line)
		assert.Equal(t, x.Read.Lines, x.Read.Whole, line)
	}
}
