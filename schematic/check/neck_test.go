package check_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic"
	"flatwright/schematic/check"
	"flatwright/schematic/read"
)

// A shoulder has its neck on one side. Where a part is shaped at its outer edge under the name of the neck, it would have one on
// both: 12 decreases at the left edge of a right shoulder, and at the right edge, where the bound-off neck is.
func TestANeckAtTheOuterEdgeOfAShoulderIsFound(t *testing.T) {
	for side, want := range map[string]int{"left": 1, "right": 0} {
		p, found := read.Pattern("own.yaml", []byte(`version: 1
pattern: Own
terms: UK
units: cm
sizes: S
gauges:
  fabric: 20 sts and 28 rows over 10 cm
pieces:
  - piece: Front
    sections:
      - cast on: 90
      - even: 90 rows
      - divide:
          - part: Left shoulder
            stitches: 35
            mirror of: Right shoulder
          - bind off: 20
            name: front neck
            edge: neck
          - part: Right shoulder
            stitches: 35
            sections:
              - decrease: 1
                at: `+side+` edge
                edge: neck
                every: 2 rows
                times: 12
              - bind off: all
                edge: shoulder
`))
		require.False(t, found.Errors(), "%v", found)
		n := 0
		for _, f := range check.Pattern(p, []*schematic.Garment{schematic.Work(p, 0)}) {
			if f.Kind == "words/neck" {
				n++
				assert.Contains(t, f.Message, "the neck of Left shoulder, Right shoulder is at the outer edge of the shoulder")
			}
		}
		assert.Equal(t, want, n, side)
	}
}

// A V neck that splits the row has no bound-off neck beside it: its 20 decreases at the outer edges, called neck, would slope to the
// armholes.
func TestAVNeckAtTheOuterEdgesIsFound(t *testing.T) {
	for side, want := range map[string]int{"right": 1, "left": 0} {
		p, found := read.Pattern("own.yaml", []byte(`version: 1
pattern: Own
terms: UK
units: cm
sizes: S
gauges:
  fabric: 20 sts and 28 rows over 10 cm
pieces:
  - piece: Front
    sections:
      - cast on: 90
      - even: 90 rows
      - divide:
          - part: First
            stitches: 45
            `+side+` edge: neck
            sections:
              - {decrease: 1, at: `+side+` edge, every: 2 rows, times: 20}
              - {bind off: all, edge: shoulder}
          - {part: Second, stitches: 45, mirror of: First}
`))
		require.False(t, found.Errors(), "%v", found)
		n := 0
		for _, f := range check.Pattern(p, []*schematic.Garment{schematic.Work(p, 0)}) {
			if f.Kind == "words/neck" {
				n++
				assert.Contains(t, f.Message, "the neck of First is at the outer edge")
			}
		}
		assert.Equal(t, want, n, side)
	}
}
