package rows

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// standing counts the stitches of a row that stand in its count.
func standing(r GraphRow) int {
	n := 0
	for _, s := range r.Stitches {
		if s.Counts && s.Stitch != nil {
			n++
		}
	}
	return n
}

// Each symbol is a stitch made in the rows, none lost, none added, and stands on
// places that the row before has.
func TestTheGraphHasTheStitchesOfTheRows(t *testing.T) {
	rows, sections := 0, 0
	for _, c := range corpus(t) {
		x := Read(c.name, c.src, c.options)
		rep := Check(x, c.options)
		for _, s := range x.Sections {
			for size := range x.Sizes.Names {
				g, ok := GraphOf(x, s.Name, size)
				if !ok || len(g.Rows) == 0 {
					continue
				}
				sections++
				last := map[int]int{}
				for i, r := range g.Rows {
					if len(r.Stitches) > 0 {
						last[r.Line] = i
					}
				}
				for _, l := range s.Lines {
					i, ok := last[l.At.Line]
					if !ok {
						continue
					}
					rows++
					require.Equal(t, rep.Stitches[l][size], standing(g.Rows[i]), "%s:%d size %d: %s", c.name, l.At.Line, size, l.Src)
				}
				for i, r := range g.Rows {
					if i == 0 || r.Start {
						continue
					}
					for k, st := range r.Stitches {
						for _, f := range st.Feet {
							require.Less(t, f, len(g.Rows[i-1].Stitches), "%s row %d stitch %d", c.name, i, k)
							require.GreaterOrEqual(t, f, 0, "%s row %d stitch %d", c.name, i, k)
						}
					}
				}
			}
		}
	}
	t.Logf("%d sections, %d rows", sections, rows)
}
