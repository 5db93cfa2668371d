package rows

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"flatwright/schematic/expr"
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

func BenchmarkReadOnly(b *testing.B) {
	src := longPattern()
	b.ReportAllocs()
	for b.Loop() {
		Read("long", src, Options{})
	}
}
