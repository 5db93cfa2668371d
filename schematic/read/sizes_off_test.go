package read_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/read"
)

// Four lists of three numbers and a line of two sizes: the line of sizes is in doubt, and it is told once. Three lists may be three slips, and so
// may lists that have not the same count.
func TestALineOfSizesThatNoListGoesByIsToldOnce(t *testing.T) {
	src := func(lists ...string) []byte {
		return []byte("version: 1\npattern: T\nterms: US\nunits: cm\nsizes: S (M)\ngauges: {fabric: 20 sts and 20 rows over 10 cm in sc}\npieces:\n  - piece: A\n    sections:\n      - cast on: 20\n      - even: " +
			strings.Join(lists, "\n      - even: ") + "\n      - bind off: all\n")
	}
	list := "4 (5, 6) rows"
	_, found := read.Pattern("t.yaml", src(list, list, list, list))
	require.Len(t, found, 1)
	assert.Equal(t, 5, found[0].Pos.Line)
	assert.Equal(t, "4 lists alike: 3 numbers for 2 sizes", found[0].Message)
	assert.Contains(t, found[0].Fix, "line 11")
	_, found = read.Pattern("t.yaml", src(list, list, list))
	assert.Len(t, found, 3)
	_, found = read.Pattern("t.yaml", src(list, list, list, "4 (5, 6, 7) rows"))
	assert.Len(t, found, 4)
}
