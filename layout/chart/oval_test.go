package chart

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/schematic/stitch"
)

// randomOval is a work around a chain: one stitch in each place along it, several around its last
// places, more of them from round to round as a flat one has.
func randomOval(t *rapid.T) *Work {
	w := &Work{Title: "Random oval"}
	base := Row{Base: true}
	places := rapid.IntRange(3, 18).Draw(t, "places")
	for range places {
		base.St = append(base.St, St{Kind: stitch.ByID("ch"), Counts: true})
	}
	kind := func() *stitch.Stitch {
		return stitch.ByID(rapid.SampledFrom([]string{"sc", "hdc", "dc", "tr"}).Draw(t, "kind"))
	}
	k := kind()
	row := Row{Round: true, Number: 1, Joined: rapid.Bool().Draw(t, "joined")}
	put := func(f, many int, under bool) {
		for range many {
			row.St = append(row.St, St{Kind: k, Feet: []int{f}, Counts: true, Under: under})
		}
	}
	end := rapid.IntRange(2, 7).Draw(t, "end")
	put(0, (end+1)/2, false)
	for f := 1; f < places-1; f++ {
		put(f, 1, false)
	}
	put(places-1, end, false)
	for f := places - 2; f > 0; f-- {
		put(f, 1, true)
	}
	put(0, max(end/2, 1), true)
	w.Rows = append(w.Rows, base, row)
	for r := range rapid.IntRange(0, 3).Draw(t, "rounds") {
		below := &w.Rows[len(w.Rows)-1]
		sides := w.track()[r+1]
		k = kind()
		row = Row{Round: true, Number: r + 2, Joined: rapid.Bool().Draw(t, "joined")}
		if rapid.Bool().Draw(t, "turning chain") { // which does not count, and stands on nothing
			row.St = append(row.St, St{Chain: 1, Turn: true})
		}
		if rapid.Bool().Draw(t, "begins with a space") {
			row.St = append(row.St, St{Chain: 3, Counts: true})
		}
		every := rapid.IntRange(r+1, r+4).Draw(t, "every")
		for i := range below.St {
			many := 1
			if sides[i]%2 == 1 && i%every == 0 {
				many = 2
			}
			if below.St[i].arch() && sides[i]%2 == 1 && rapid.Bool().Draw(t, "shell") {
				many = 3
			}
			put(i, many, false)
			if i+1 < len(below.St) && rapid.IntRange(0, 9).Draw(t, "space") == 0 {
				row.St = append(row.St, St{Chain: rapid.IntRange(1, 3).Draw(t, "chains"), Counts: true})
			}
		}
		w.Rows = append(w.Rows, row)
	}
	return w
}

// An oval is two straight sides and two half circles (a plane figure of the length and radius of each round):
// along the sides heads stand in order, in line, and over their feet within half a stitch; around the ends they
// turn by half a circle at most, and no symbol touches another.
func TestAnOvalHasStraightSidesAndRoundEnds(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		p, f := laid(randomOval(rt))
		require.Equal(rt, oval, p.form)
		require.Empty(rt, touching(p, f, 0.02))
		for _, l := range p.lines[1:] {
			last := [trackSides]float64{math.Inf(-1), math.Inf(-1), math.Inf(-1), math.Inf(-1)}
			for i, n := range l.nodes {
				at := p.point(n, n.v)
				if i > 0 && n.side == l.nodes[i-1].side {
					require.Greater(rt, n.q, last[n.side], "round %d, stitch %d: in order", l.n, i)
				}
				last[n.side] = n.q
				if n.arch() {
					continue
				}
				if !n.bent() {
					require.LessOrEqual(rt, math.Abs(at.X), p.track/2+1e-6, "round %d, stitch %d: along the chain", l.n, i)
					if n.side == n.prev.side && !n.prev.arch() && !n.feet[0].arch() && !n.prev.feet[0].arch() && l.n <= 2 { // one that clears an arch stands higher
						require.InDelta(rt, math.Abs(p.point(n.prev, n.prev.v).Y), math.Abs(at.Y), halfStitch, "round %d, stitch %d: in line", l.n, i)
					}
					if n.group == nil && len(n.feet) == 1 && !n.feet[0].arch() && l.n == 1 {
						require.InDelta(rt, p.point(n.feet[0], 0).X, at.X, halfStitch, "round %d, stitch %d: over its place", l.n, i)
					}
					continue
				}
				require.LessOrEqual(rt, math.Abs(n.q), math.Pi/2+1e-6)
				out := long(sub(at, p.centre(n.side)))
				require.Greater(rt, out, l.tops[n.side]-halfStitch, "round %d, stitch %d: around the end", l.n, i)
				require.Less(rt, out, l.tops[n.side]+dip, "round %d, stitch %d: around the end, over an arch", l.n, i)
			}
		}
	})
}

// The counts are the text's own sums: 10 places of a chain of 11, 9 along it and 3 in its last, 8 back and 2 in its first
// are 22; each round has 6 more.
func TestARoundAlongBothSidesOfAChainIsAnOval(t *testing.T) {
	w := fromText(t, `Terms: US
Ch 11.
Rnd 1: Sc in 2nd ch from hook, sc in next 8 ch, 3 sc in last ch; working along opposite side of foundation ch, sc in next 8 ch, 2 sc in last ch, join with sl st in first sc. (22 sc)
Rnd 2: Ch 1, 2 sc in first sc, sc in next 8 sc, 2 sc in each of next 3 sc, sc in next 8 sc, 2 sc in each of next 2 sc, join with sl st in first sc. (28 sc)
`)
	p, f := laid(w)
	require.Equal(t, oval, p.form)
	assert.Empty(t, touching(p, f, 0.02))
	assert.Len(t, w.Rows[0].St, 10, "the chain at the hook is not worked into")
	for r, want := range [][trackSides]int{1: {8, 3, 8, 3}, 2: {8, 6, 8, 6}} {
		if r == 0 {
			continue
		}
		var got [trackSides]int
		for _, n := range p.lines[r].nodes {
			if n.st.Counts {
				got[n.side]++
			}
		}
		assert.Equal(t, want, got, "round %d: over, left end, under, right end", r)
	}
	assert.Equal(t, 22, w.Rows[1].counted())
	assert.Equal(t, 28, w.Rows[2].counted())
	assert.Contains(t, w.words(1), "along the other side of the chain")
	first := p.lines[1].nodes[0]
	assert.Positive(t, p.point(first, first.v).X, "it begins where the hook was, on the right")
}
