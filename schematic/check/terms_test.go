package check

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
)

// US to UK as in the yarn standard's table: hdc = htr, sc = dc; dc and tr are words of both.
func TestAStitchOfTheOtherTermsInAGaugeIsTold(t *testing.T) {
	for _, c := range []struct {
		terms  schematic.Terms
		stitch string
		fix    string // none: nothing is told
	}{
		{schematic.US, "hdc", ""},
		{schematic.US, "sc in back loop only, relaxed", ""},
		{schematic.US, "half double crochet", ""},
		{schematic.US, "stockinette stitch", ""},
		{schematic.US, "dc", ""},
		{schematic.US, "htr", "in US terms it is hdc"},
		{schematic.US, "half treble crochet", "in US terms it is hdc"},
		{schematic.UK, "rows of htr and dc", ""},
		{schematic.UK, "raised treble rib", ""},
		{schematic.UK, "sc in back loop only", "in UK terms it is dc"},
		{schematic.UK, "knit 2, purl 2 rib", ""},
	} {
		p := pattern("M")
		p.Terms, p.Gauges[0].Stitch = c.terms, c.stitch
		got := terms(p)
		if c.fix == "" {
			assert.Empty(t, got, c.stitch)
			continue
		}
		if assert.Len(t, got, 1, c.stitch) {
			assert.Equal(t, "words/terms", got[0].Kind)
			assert.Equal(t, c.fix, got[0].Fix)
		}
	}
}
