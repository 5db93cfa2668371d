package schematic_test

import (
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/read"
)

// Fronts of 41, a back of 82 and 2 x 50 of sleeves make a yoke row of 264 over gaps of 8: a raglan, shaped at its lines
// (common practice). The same row worked even does not lie flat.
func TestARaglanYokeJoinedOfPartsNeedNotLieFlat(t *testing.T) {
	src, err := os.ReadFile("testdata/raglan-of-parts.yaml")
	require.NoError(t, err)
	gap := func(src string) bool {
		p, found := read.Pattern("raglan.yaml", []byte(src))
		require.False(t, found.Errors(), "%v", found)
		return slices.ContainsFunc(schematic.Work(p, 0).Findings, func(f finding.Finding) bool { return f.Kind == "arithmetic/join-gap" })
	}
	assert.False(t, gap(string(src)))
	assert.True(t, gap(string(src)[:strings.Index(string(src), "      - panels:")]+"      - even: 4 rows\n      - bind off: all\n"))
}
