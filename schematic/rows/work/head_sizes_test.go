package work

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic/finding"
)

// Lines of sizes as they are published, each of three; the rows below have three numbers each. Common practice.
func TestALineOfSizesIsReadWithWhatElseItTells(t *testing.T) {
	for _, head := range []string{
		"Sizes: 81 (86, 91) cm chest", "Sizes: S (M, L) to fit bust 34 (36, 38) in", "Sizes: 34 (36, 38) inch bust", "Sizes: Small (Medium, Large) adult",
		"Size: Small (Medium, Large). Shown in Medium.", "Sizes: XS (S, M) – Bust 81 (86, 91) cm", "Sizes: 86 [91: 97] cm (34 [36: 38] in)", "Sizes: S/M/L",
		"Sizes: S – M – L", "Sizes: S, M, L", "Sizes: Small, Medium and Large", "Sizes: S (M, L) = 34 (36, 38)", "Sizes: XS/S (M/L, XL)",
		"Sizes: Baby (Child, Adult); fits head 40 (48, 54) cm", "Instructions are for size Small. Changes for Medium and Large are in parentheses.",
	} {
		for last, findings := range map[string]int{"67": 0, "66": 1} {
			rep := Check(Read("t", []byte(head+"\n\nBack\nCast on 60 (64, 68) sts.\nRow 1: K to end.\nRow 2: K2tog, k to end. 59 (63, "+last+") sts.\n"), Options{}))
			assert.Len(t, rep.Findings, findings, head)
			assert.Equal(t, rep.Read.Lines, rep.Read.Whole, head)
		}
	}
}

// A text without a line of sizes, with ten lines of four numbers: one of three is a slip in it, and one of two more is too much to say so.
func TestALineOfNumbersShorterThanAllOthersIsTold(t *testing.T) {
	var text strings.Builder
	text.WriteString("To fit age 2 (4, 6, 8) years\n\nBack\nCast on 60 (64, 68, 72) sts.\n")
	for i := range 9 {
		fmt.Fprintf(&text, "Row %d: K2tog, k to end. %d (%d, %d, %d) sts.\n", i+1, 59-i, 63-i, 67-i, 71-i)
	}
	for more, want := range map[string]int{"Row 10: K10 (12, 14), k2tog, k to end. 50 (54, 58, 62) sts.\n": 1, "Row 10: K10 (12, 14), k2tog, k to end.\nRow 11: P9 (10), p to end.\n": 0} {
		rep := Check(Read("t", []byte(text.String()+more), Options{}))
		told := slices.DeleteFunc(slices.Clone(rep.Findings), func(f finding.Finding) bool { return f.Kind != "rows/sizes" })
		assert.Len(t, told, want, more)
		assert.Less(t, rep.Read.Whole, rep.Read.Lines, more)
		if want == 0 {
			assert.Len(t, slices.DeleteFunc(rep.Findings, func(f finding.Finding) bool { return !f.NotRead() }), 2)
		}
	}
}
