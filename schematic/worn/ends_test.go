package worn

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"flatwright/schematic"
)

// A join that names an edge that is not there is a finding of its own.
func TestAnEndThatIsNotThereIsNotSewnOn(t *testing.T) {
	g := schematic.Work(written(t, inTens+`
  - piece: Bag
    worked: in the round, from the hem
    sections:
      - {cast on: 60, edge: base}
      - even: 40 rows
      - {bind off: all, edge: rim}
  - piece: Handle
    sections:
      - {cast on: 4, edge: end}
      - even: 60 rows
      - {bind off: all, edge: end}
joins:
  - {sew: Handle bottom, into: Bag rim, how: in 2 places}
`), 0)
	assert.NotPanics(t, func() { Dress(g) })
	assert.Empty(t, assembled(g).count("Handle"))
}
