package print_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/bysize"
	"flatwright/schematic/read"
	"flatwright/schematic/rows/print"
)

// printed is the printed text of a garment of testdata, which reads back.
func printed(t *testing.T, name string) string {
	t.Helper()
	src, err := os.ReadFile("../../../testdata/garments/" + name + ".yaml")
	require.NoError(t, err)
	p, list := read.Pattern(name, src)
	require.Empty(t, list)
	gs := bysize.WorkAll(p)
	text := print.Rows(p, gs, print.Options{Size: -1})
	reads(t, text, p, gs)
	return text
}

func TestWhatIsTakenUpAndWhereItIsShapedIsSaid(t *testing.T) {
	for name, lines := range map[string][]string{
		"raglan": {
			"Place markers between the panels: 34 (36, 38) (40) sts for Back, 12 (14, 14) (14) sts for Left arm, 34 (36, 38) (40) sts for Front, 12 (14, 14) (14) sts for Right arm.",
			"Inc 1 st on each side of 4 markers every 2 rnds 25 (28, 31) (34) times, over 50 (56, 62) (68) rnds in stockinette stitch. (292 (324, 352) (380) sts)",
			"Take up 62 (70, 76) (82) held sts of Yoke, Left arm, add 8 sts. (70 (78, 84) (90) sts)"},
		"raglan-with-neckline": {"Inc 1 st on each side of 4 markers every 2 rnds 18 (20, 22) times, over 36 (40, 44) rnds. (264 (286, 308) sts)"},
		"short-rows": {
			"Work 8 short rows over the middle 66 (74) sts, turning 4 sts sooner each time. (72 (80) sts)",
			"Work 6 short rows over 30 sts at left edge, turning 8 sts sooner each time. (36 (40) sts)"},
		"mitre-and-motifs": {"Dec 2 sts at the middle every 2 rows 20 (30) times, over 40 (60) rows in garter stitch. (1 st)"},
		"panels":           {"Join the parts: 18 (20) sts of First side, add 14 (16) sts, 18 (20) sts of Second side. (50 (56) sts)"},
	} {
		text := printed(t, name)
		for _, line := range lines {
			assert.Contains(t, strings.Split(text, "\n"), line, name)
		}
	}
}
