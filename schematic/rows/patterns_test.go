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
			assert.Contains(t, told, "nothing is known", line)
		}
	}
	x := Read("t.txt", []byte(head), o)
	var names []string
	for _, s := range x.Sections {
		names = append(names, s.Name)
	}
	assert.Equal(t, []string{"Ladder Rib", "1x1 Rib Pattern", "Hat"}, names)
}
