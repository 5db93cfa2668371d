package rows

import (
	"slices"
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

// firstSlips is where the first slipped stitch or slip stitch of each row stands, -1 in one without.
func firstSlips(t *testing.T, text string) (at []int) {
	t.Helper()
	x := Read("x", []byte(text), Options{})
	Check(x, Options{})
	g, ok := GraphOf(x, x.Sections[len(x.Sections)-1].Name, 0)
	require.True(t, ok)
	for _, r := range g.Rows {
		at = append(at, slices.IndexFunc(r.Stitches, func(s GraphStitch) bool {
			return s.Stitch != nil && (s.Stitch.Base == "sl" || s.Stitch.ID == "slst")
		}))
	}
	return at
}

// Words behind a row may say that its first stitch is slipped; one that is slipped amid the row stays where it is.
func TestAStitchIsSlippedWhereItIsTold(t *testing.T) {
	const twenty = "Cast on 20 sts.\nRow 1: Knit. (20 sts)\nRow 2: "
	for row, at := range map[string]int{"Knit to end, slipping the first st. (20 sts)": 0, "K12, slip the first st, k to end. (20 sts)": 12} {
		slips := firstSlips(t, twenty+row+"\n")
		require.Equal(t, at, slips[len(slips)-1], row)
	}
}

// Slip stitches that lead to a space belong to the round that begins in it, though it begins without a chain.
func TestSlipStitchesLeadToARoundWithoutAChain(t *testing.T) {
	slips := firstSlips(t, "Terms: US\nCh 4, join with sl st to form a ring.\nRnd 1: Ch 3, 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join with sl st to top of ch 3, sl st in next 2 dc and in ch-2 sp. (12 dc)\n"+
		"Rnd 2: 3 sc in same sp, sc in next 3 dc, (3 sc in ch-2 sp, sc in next 3 dc) 3 times, join. (24 sc)\n")
	require.Equal(t, 0, slips[len(slips)-1])
}

// A side of the work in brackets behind a background or a colour is no yarn, though other short names there are.
func TestASideIsNoYarn(t *testing.T) {
	x := Read("x", []byte("Colours: M (main), C (contrast)\nCast on 20 sts.\nWork in the background (WS) as below.\nRow 1 (RS): K. (20 sts)\nRow 2: [WS] K5, p15. (20 sts)\nRow 3: WS: K20. (20 sts)\n"), Options{})
	g, ok := GraphOf(x, x.Sections[len(x.Sections)-1].Name, 0)
	require.True(t, ok)
	for _, r := range g.Rows {
		for _, s := range r.Stitches {
			require.Empty(t, s.Colour)
		}
	}
}
