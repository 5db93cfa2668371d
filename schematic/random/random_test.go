package random

import (
	"fmt"
	"math"
	"sort"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/schematic"
	"flatwright/schematic/bysize"
)

func TestRandomGarmentsAreWorkedWithoutAFinding(t *testing.T) {
	reached := map[string]int{}
	sizes, pieces, most := map[int]int{}, 0, 0
	rapid.Check(t, func(t *rapid.T) {
		p := Pattern(Options{}).Draw(t, "pattern")
		sizes[p.Sizes.Len()]++
		pieces = max(pieces, len(p.Pieces))
		for _, g := range bysize.WorkAll(p) {
			for _, f := range g.Findings {
				require.Failf(t, "finding", "%s %s: %s (%s, %s) %v", f.Kind, f.Piece, f.Message, f.Have, f.Want, f.Sizes)
			}
			ids := map[string]bool{}
			for _, m := range g.Pieces {
				require.NotEmpty(t, m.Views, m.Name)
				plain := true
				for _, s := range m.Steps {
					reached[fmt.Sprintf("%T", s.Section)]++
					most = max(most, s.After)
					if _, ok := s.Section.(*schematic.ShortRows); ok {
						plain = false
					}
				}
				for i, v := range m.Views {
					require.NotEmpty(t, v.Outline, m.Name)
					require.Greater(t, schematic.PolygonArea(v.Outline[0]), 0.0, "%s view %d runs anticlockwise", m.Name, i)
				}
				for _, s := range m.Measures {
					require.False(t, ids[s.ID], s.ID)
					ids[s.ID] = true
					if s.View == schematic.NoView || s.Axis == schematic.Slanted || m.Piece.Motifs != nil {
						continue
					}
					// The label says what the drawing shows.
					drawn := math.Abs(s.B.X - s.A.X)
					if s.Axis == schematic.Vertical {
						drawn = math.Abs(s.B.Y - s.A.Y)
					}
					if s.Around {
						drawn *= 2
					}
					require.InDelta(t, drawn, s.Length.Float(), 0.01, s.ID)
				}
				if plain && !m.Round && len(m.Views) == 1 && m.Piece.Motifs == nil {
					assert.InEpsilon(t, m.OutlineArea(), m.Area.Float(), 1e-9, m.Name)
				}
			}
		}
	})
	var names []string
	for k := range reached {
		names = append(names, k)
	}
	sort.Strings(names)
	for _, k := range names {
		t.Logf("%-28s %d", k, reached[k])
	}
	t.Logf("sizes %v, most pieces %d, most stitches %d", sizes, pieces, most)
}
