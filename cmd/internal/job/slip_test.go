package job

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const toteText = `version: 1
pattern: Tote
terms: US
units: in
sizes: S (M)
gauges: {fabric: 14 sts and 16 rows over 4 in in single crochet}
pieces:
  - {piece: Front, kind: bag, sections: [cast on: 42, even: 48 rows, {bind off: all, edge: top}]}
  - {piece: Back, kind: bag, sections: [cast on: 42, even: 48 rows, {bind off: all, edge: top}]}
  - {piece: Handle, make: 2, sections: [{cast on: 6, edge: handle end}, even: 80 rows, {bind off: all, edge: handle end}]}
joins:
  - {sew: Handle handle end, into: [Front top, Back top], how: in 2 places}
`

// Two handles have four ends: that is told where the join stands, and not as a slip in how often a handle is made, which has no place among the counts; nor does it hide
// what the drawing leaves out.
func TestHowOftenAPieceIsMadeIsNoSlip(t *testing.T) {
	r, err := Draw(context.Background(), Source{Name: "tote.yaml", Text: []byte(toteText)}, DrawOptions{Size: "S"})
	require.NoError(t, err)
	kinds := map[string]bool{}
	for _, f := range r.Findings {
		kinds[f.Kind] = true
		assert.NotContains(t, f.Message, "is probably")
		assert.NotZero(t, f.Pos.Line, f.Message)
	}
	assert.True(t, kinds["joins/places"] && kinds["worn/left-over"], "%v", r.Findings)
}
