package work

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A round told needle by needle comes to its count, whatever each needle holds; what a needle holds is known where it is
// told, and is held against what is worked on it (counts by hand).
func TestARoundIsWorkedNeedleByNeedle(t *testing.T) {
	for _, src := range []string{
		"Terms: US\nCO 56 sts. Divide evenly over 4 needles and join.\nRnd 1: Needle 1: K to last 3 sts, k2tog, k1. Needles 2 and 3: knit. Needle 4: K1, ssk, k to end. (54 sts)\n",
		"Terms: US\nCO 56 sts, join.\nRnd 1:\nNeedle 1: K to last 3 sts, k2tog, k1.\nNeedle 2: K1, ssk, k to end.\nNeedle 3: as needle 1.\nNeedle 4: as needle 2.\nRnd 2: Knit. (52 sts)\n",
		"Terms: US\nCO 24 sts, join.\nRnd 1: N1: k1, M1R, k to last st, M1L, k1; N2: as N1. (28 sts)\n",
		"Terms: US\nCO 50 sts, join.\nRnd 1: On needle 1, k to last 3 sts, k2tog, k1; on needles 2 and 3, k; on needle 4, k1, ssk, k to end. 48 sts.\n",
		"Terms: US\nCO 50 sts, join.\nRnd 1: 1st needle: k to last 3 sts, k2tog, k1. 2nd needle: k. 3rd needle: k1, ssk, k to end. (48 sts)\nRep last rnd 3 more times. (42 sts)\n",
		"Terms: US\nCO 60 sts, join.\nRnd 1: N1: (k3, p2) 6 times; N2: k. (60 sts)\n",
		"Terms: US\nCO 60 sts, join.\nRearrange sts as follows:\nNeedle 1: 15 sts.\nNeedle 2: 30 sts.\nNeedle 3: 15 sts.\nRnd 1: Needle 1: K15. Needle 2: K30. Needle 3: K15.\n",
	} {
		x := Read("t", []byte(src), Options{})
		for _, f := range Check(x).Findings {
			t.Errorf("%s: %s (%s)", src, f.Message, f.Kind)
		}
		assert.Equal(t, x.Read.Lines, x.Read.Whole, src)
	}
}

func TestANeedleThatHoldsFewerIsTold(t *testing.T) {
	src := "Terms: US\nCO 48 sts, join. (12 sts on each of 4 needles)\nRnd 1: N1: K11. N2: K12. N3: K12. N4: K12.\n"
	out := check(src)
	if assert.Len(t, out, 1) {
		assert.Contains(t, out[0].Message, "1 stitch is left over")
	}
}
