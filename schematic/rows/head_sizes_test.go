package rows

import (
	"testing"

	"github.com/stretchr/testify/assert"
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
			rep := Check(Read("t", []byte(head+"\n\nBack\nCast on 60 (64, 68) sts.\nRow 1: K to end.\nRow 2: K2tog, k to end. 59 (63, "+last+") sts.\n"), Options{}), Options{})
			assert.Len(t, rep.Findings, findings, head)
			assert.Equal(t, rep.Read.Lines, rep.Read.Whole, head)
		}
	}
}
