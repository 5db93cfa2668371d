package job

import (
	"context"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// told are the kinds of finding of a pattern, each with its line.
func told(t *testing.T, text string) []string {
	t.Helper()
	r, err := Check(context.Background(), Source{Name: "p.yaml", Text: []byte(text)})
	if err != nil {
		require.ErrorIs(t, err, ErrUnreadable)
	}
	kinds := []string{}
	for _, f := range r.Findings {
		kinds = append(kinds, fmt.Sprintf("%d %s", f.Pos.Line, f.Kind))
	}
	return kinds
}

// vest is two pieces that agree with each other, and with what is written.
const vest = `version: 1
pattern: Sorrel Vest
terms: US
units: cm
sizes: S (M, L)
bodies:
  bust: 86 (92, 98) cm
gauges:
  fabric: 10 sts and 10 rows over 10 cm in hdc
pieces:
  - piece: Back
    make: 2
    sections:
      - cast on: 46 (50, 54)
      - even: 30 rows
      - bind off: 3
        at: both edges
        edge: armhole
      - decrease: 1
        at: both edges
        every: 2 rows
        times: 4 (5, 6)
        to: 32 (34, 36)
      - even: 8 rows
      - divide:
          - bind off: 8
            name: right shoulder
            edge: shoulder
          - bind off: 16 (18, 20)
            name: back neck
            edge: neck
          - bind off: 8
            name: left shoulder
            edge: shoulder
  - piece: Frill
    make: 2
    sections:
      - cast on: 30 (32, 34)
      - even: 12 rows
      - bind off: all
        edge: frill top
joins:
  - sew: Frill frill top
    into: Back neck
    how: gathered
finished:
  bust: 92 (100, 108) cm
  frill: {is: 30 (32, 34) cm, of: Frill width at lower edge}
`

func TestAPatternThatAgreesHasNoFindings(t *testing.T) {
	assert.Empty(t, told(t, vest))
}

// What follows from an error is not told: counts and divisions after it, widths that seem to
// go back, edges and joins, measurements written, pieces that start from it.
func TestAnErrorIsToldWithoutWhatFollowsFromIt(t *testing.T) {
	for _, c := range []struct {
		name, from, to string
		want           []string
	}{
		{"more decreased than there is", "times: 4 (5, 6)", "times: 40 (5, 6)", []string{"19 arithmetic/impossible"}},
		{"more bound off than there is", "- bind off: 3\n", "- bind off: 3 (44, 3)\n", []string{"16 arithmetic/impossible"}},
		{"nothing to cast on", "cast on: 30 (32, 34)", "cast on: 30 (–, 34)", []string{"38 arithmetic/impossible"}},
		{"rows after the last one", "        edge: frill top\n", "        edge: frill top\n      - even: 3 rows\n", []string{"42 arithmetic/start"}},
		{"a piece begun from one with an error", "  - piece: Frill\n    make: 2\n    sections:\n      - cast on: 30 (32, 34)\n",
			"  - piece: Base\n    sections:\n      - cast on: 20 (32, 34)\n      - decrease: 10\n        at: both edges\n        times: 1 (–, –)\n" +
				"  - piece: Frill\n    make: 2\n    sections:\n      - start from: [{piece: Base, stitches: 30 (32, 34)}]\n",
			[]string{"38 arithmetic/impossible"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			require.Contains(t, vest, c.from)
			assert.Equal(t, c.want, told(t, strings.Replace(vest, c.from, c.to, 1)))
		})
	}
}
