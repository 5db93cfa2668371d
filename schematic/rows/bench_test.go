package rows

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"flatwright/schematic/expr"
	"flatwright/schematic/stitch"
)

// longPattern is a text of about 400 lines in nine sizes: eight pieces of fifty
// lines, plain rows, repeats, shaping, shells.
func longPattern() []byte {
	sizes := expr.Sizes{Names: strings.Fields("XS S M L 1X 2X 3X 4X 5X"), Groups: []int{1, 4, 4}}
	line := func(f func(i int) int) string {
		out := make([]string, 9)
		for i := range out {
			out[i] = fmt.Sprint(f(i))
		}
		return sizes.Full(out)
	}
	var b strings.Builder
	b.WriteString("Terms: US\nSizes: XS (S, M, L, 1X) (2X, 3X, 4X, 5X)\nGauge: 14 sts and 10 rows = 10 cm in hdc\nNotes: Ch 1 and ch 2 do not count as a stitch.\n")
	for piece := range 8 {
		n := func(i int) int { return 73 + 6*i + 6*piece }
		fmt.Fprintf(&b, "\nPiece %s\nCh %s.\n", string(rune('A'+piece)), line(func(i int) int { return n(i) + 1 }))
		fmt.Fprintf(&b, "Row 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. (%s sc)\n", line(n))
		at := n
		for row := 2; row < 48; row++ {
			switch row % 6 {
			case 2:
				fmt.Fprintf(&b, "Row %d: Ch 2, hdc in each st across, turn. (%s hdc)\n", row, line(at))
			case 3:
				was := at
				at = func(i int) int { return was(i) + 2 }
				fmt.Fprintf(&b, "Row %d: Ch 2, 2 hdc in first st, hdc in each st across to last st, 2 hdc in last st, turn. (%s hdc)\n", row, line(at))
			case 4:
				was := at
				at = func(i int) int { return was(i) - 2 }
				fmt.Fprintf(&b, "Row %d: Ch 2, hdc2tog, hdc in next %s sts, hdc2tog, turn. (%s hdc)\n", row, line(func(i int) int { return was(i) - 4 }), line(at))
			case 5:
				fmt.Fprintf(&b, "Row %d: Ch 1, sc in first st, *skip next 2 sts, 5 hdc in next st, skip next 2 sts, sc in next st; rep from * across, turn. (%s sts)\n", row, line(at))
			case 0:
				fmt.Fprintf(&b, "Row %d: Ch 1, *sc in next 3 sts; rep from * to last st, sc in last st, turn. (%s sc)\n", row, line(at))
			case 1:
				fmt.Fprintf(&b, "Row %d: Ch 1, sc in each st across, turn. (%s sc)\n", row, line(at))
			}
		}
		b.WriteString("Fasten off.\n")
	}
	return []byte(b.String())
}

func TestTheLongPatternIsCorrect(t *testing.T) {
	src := longPattern()
	require.Greater(t, strings.Count(string(src), "\n"), 390)
	rep := Check(Read("long", src, Options{}), Options{})
	require.Empty(t, rep.Findings)
	require.Equal(t, rep.Read.Lines, rep.Read.Whole)
}

func BenchmarkReadWorkAndReport400LinesInNineSizes(b *testing.B) {
	src := longPattern()
	b.ReportAllocs()
	for b.Loop() {
		x := Read("long", src, Options{})
		Check(x, Options{})
	}
}

// houseStyle is a text of about 400 lines in nine sizes as a publisher has it printed: a head, abbreviations, pieces of
// knitting or of crochet told in sentences, labelled rows and counts, and making up.
func houseStyle(crochet bool) []byte {
	sizes := expr.Sizes{Names: strings.Fields("XS S M L 1X 2X 3X 4X 5X"), Groups: []int{1, 4, 4}}
	line := func(n, by int) string {
		out := make([]string, 9)
		for i := range out {
			out[i] = fmt.Sprint(n + by*i)
		}
		return sizes.Full(out)
	}
	head, pieces := knittedHead, knittedPiece
	if crochet {
		head, pieces = crochetHead, crochetPiece
	}
	var b strings.Builder
	b.WriteString(head)
	for piece := range 12 {
		n := 80 + 8*piece
		run := strings.NewReplacer("$name", fmt.Sprintf("Panel %c", 'A'+piece), "$n+1", line(n+1, 8), "$n+2", line(n+2, 8), "$n-2", line(n-2, 8), "$n-4", line(n-4, 8), "$n-10", line(n-10, 8), "$n-26", line(n-26, 8),
			"$n-12", line(n-12, 8), "$n/4", line(n/4, 2), "$n", line(n, 8), "$times", line(6, 1), "$rest", line(n-12-14, 6), "$len", line(30, 1))
		b.WriteString(run.Replace(pieces))
	}
	return []byte(b.String())
}

const knittedHead = `Ferryside Cardigan
Sizes: XS (S, M, L, 1X) (2X, 3X, 4X, 5X)
Finished bust: 81 (91, 102, 112, 122) (132, 142, 152, 163) cm
Yarn: 900 (1000, 1100, 1200, 1300) (1400, 1500, 1600, 1700) m of dk wool
Gauge: 22 sts and 30 rows = 10 cm in stockinette stitch
Needles: 4 mm, 3.5 mm
Abbreviations
k = knit
p = purl
ssk = slip, slip, knit these 2 sts together
k2tog = knit 2 sts together
m1 = make 1
pm = place marker
`

const knittedPiece = `
$name
With smaller needles, cast on $n sts.
Row 1 (RS): *K2, p2; rep from * to end.
Row 2 (WS): *K2, p2; rep from * to end.
Rep last 2 rows until piece measures 5 cm from cast-on edge, ending with a WS row.
Change to larger needles.
Row 1 (RS): Knit.
Row 2 and all WS rows: Purl.
Row 3: K1, *yo, k2tog; rep from * to last st, k1.
Row 5: K1, *ssk, yo; rep from * to last st, k1.
Row 7: K2, *k2tog, yo, k2; rep from * to last 2 sts, k2.
Work even in St st for 11 rows.
Dec row (RS): K2, ssk, knit to last 4 sts, k2tog, k2. ($n-2 sts)
Next row: Purl.
Next row (RS): K2, ssk, knit to last 4 sts, k2tog, k2 – 2 sts dec'd. ($n-4 sts)
Next row (WS): Purl across.
Inc row (RS): K2, m1l, knit to last 2 sts, m1r, k2. ($n-2 sts)
Purl 1 row.
Rep inc row once more. ($n sts)
Purl 1 row.
Next row (RS): [K2, p2] to end.
Work in St st until piece measures $len cm, ending with a WS row.
Shape armholes
Bind off 5 sts at beg of next 2 rows. ($n-10 sts)
Dec row (RS): K1, ssk, knit to last 3 sts, k2tog, k1. ($n-12 sts)
Next row: Purl.
Rep last 2 rows 7 times more. ($n-26 sts)
Work even for 4 rows.
Shape neck
Next row (RS): K10, bind off next 6 sts, knit to end.
Bind off all sts.
`

const crochetHead = `Saltwater Jumper
Sizes: XS (S, M, L, 1X) (2X, 3X, 4X, 5X)
To fit bust: 81 (91, 102, 112, 122) (132, 142, 152, 163) cm
Yarn: 900 (1000, 1100, 1200, 1300) (1400, 1500, 1600, 1700) m of dk wool
Hook: 4 mm
Gauge: 16 sts and 12 rows = 10 cm in hdc
Terms: US
Abbreviations
ch = chain
sc = single crochet
hdc = half double crochet
dc = double crochet
sk = skip
Special stitches
Shell = 5 dc in st indicated
Notes: Turning ch does not count as a st throughout.
`

const crochetPiece = `
$name
With smaller hook, ch $n+1.
Row 1 (RS): Sc in 2nd ch from hook and in each ch across, turn. ($n sc)
Row 2: Ch 1, sc in BLO of each st across, turn. ($n sc)
Rows 3-8: Rep Row 2.
Change to larger hook.
Row 9: Ch 2, hdc in each st across, turn. ($n hdc)
Row 10: Ch 2, hdc in first st, *ch 1, sk next st, hdc in next st; rep from * to last st, hdc in last st, turn.
Row 11: Ch 2, hdc in each st and ch-1 sp across, turn. ($n hdc)
Row 12: Ch 1, sc in first 2 sts, (dc in next st, sc in next st) across to last 2 sts, sc in last 2 sts, turn.
Row 13: Ch 3 (counts as dc), dc in next st and in each st across, turn. ($n dc)
Row 14: Ch 1, *sc in next st, ch 3, sk next 3 sts; rep from * across, turn. ($n/4 ch-3 sps)
Row 15: Ch 2, *3 hdc in next ch-3 sp, hdc in next sc; rep from * across, turn. ($n hdc)
Rows 16-20: Ch 2, hdc in each st across, turn.
Work even until piece measures $len cm, ending with a WS row.
Shape Armholes
Next row (RS): Sl st in first 5 sts, ch 2, hdc in each st across to last 5 sts, turn, leaving rem sts unworked. ($n-10 hdc)
Next row: Ch 2, hdc2tog, hdc in each st across to last 2 sts, hdc2tog, turn. ($n-12 hdc)
Rep last row 7 more times. ($n-26 hdc)
Work 4 rows even in hdc.
Shape Neck
Row 1: Ch 2, hdc in next 10 sts, turn, leaving rem sts unworked. (10 hdc)
Row 2: Ch 2, hdc2tog, hdc in each st across, turn. (9 hdc)
Row 3: Ch 2, hdc in each st across. (9 hdc)
Fasten off, leaving a long tail for sewing.
Edging: Join yarn with sl st in any st, ch 1, sc evenly around, join with sl st to first sc. Fasten off.
Weave in all ends.
`

func benchmark(b *testing.B, src []byte) {
	b.Run("read", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			Read("long", src, Options{})
		}
	})
	b.Run("whole", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			Check(Read("long", src, Options{}), Options{})
		}
	})
}

func BenchmarkKnittingAsPrinted(b *testing.B) { benchmark(b, houseStyle(false)) }
func BenchmarkCrochetAsPrinted(b *testing.B)  { benchmark(b, houseStyle(true)) }

func TestTheHouseStyleIsReadAndCorrect(t *testing.T) {
	for _, crochet := range []bool{false, true} {
		src := houseStyle(crochet)
		require.Greater(t, strings.Count(string(src), "\n"), 350)
		rep := Check(Read("printed", src, Options{}), Options{})
		require.Empty(t, rep.Findings)
		require.Equal(t, rep.Read.Lines, rep.Read.Whole)
	}
}

func BenchmarkReadOnly(b *testing.B) {
	src := longPattern()
	b.ReportAllocs()
	for b.Loop() {
		Read("long", src, Options{})
	}
}

// A line that names a country at every word: what is looked at behind a name does not grow with the line.
func BenchmarkTranslateALongLineOfCountries(b *testing.B) {
	line := bytes.Repeat([]byte("US "), 20_000)
	b.ReportAllocs()
	for b.Loop() {
		Translate(line, stitch.US, stitch.UK)
	}
}
