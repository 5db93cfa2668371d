package check

import (
	"testing"

	"github.com/stretchr/testify/require"

	"flatwright/schematic/bysize"
	"flatwright/schematic/read"
)

func TestAPieceWithNothingToCastOnIsNotMeasuredByAGuess(t *testing.T) {
	p, found := read.Pattern("strip.yaml", []byte("version: 1\npattern: Strip\nterms: UK\nunits: cm\nsizes: S (M)\ngauges:\n  main: 20 sts and 28 rows over 10 cm in stocking stitch\npieces:\n  - piece: Strip\n    sections:\n      - cast on: 12 (–)\n      - even: 20 rows\n      - bind off: all\n"))
	require.Empty(t, found)
	gs := bysize.WorkAll(p)
	require.Len(t, gs[0].Pieces, 1)
	require.Empty(t, gs[1].Pieces)
	require.Equal(t, []string{"Strip"}, gs[1].Without)
	require.Len(t, gs[1].Findings, 1)
	require.Equal(t, "arithmetic/impossible", gs[1].Findings[0].Kind)
}
