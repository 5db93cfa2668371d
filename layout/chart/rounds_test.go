package chart

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"flatwright/schematic/rows"
	"flatwright/schematic/stitch"
)

// A circle of circumference 2πr: all heads of a round stand on one circle, evenly, and
// it is as long as its stitches are wide.
func TestAFlatCircleIsRound(t *testing.T) {
	for _, n := range []int{6, 12} {
		k := stitch.ByID(map[int]string{6: "sc", 12: "dc"}[n])
		p, _ := laid(flatCircle(k, n, 8))
		require.Equal(t, circle, p.form)
		for _, l := range p.lines {
			lo, hi := math.Inf(1), 0.0
			for i, m := range l.nodes {
				r := long(p.point(m, m.v))
				lo, hi = min(lo, r), max(hi, r)
				if i > 0 && l.n > 0 {
					step := p.angle(m) - p.angle(l.nodes[i-1])
					even := (around - l.wedge) / float64(len(l.nodes))
					assert.InDelta(t, even, step, 0.35*even, "round %d, stitch %d", l.n+1, i)
				}
			}
			assert.Less(t, hi-lo, roundDip+0.01, "round %d", l.n+1)
			assert.GreaterOrEqual(t, around*hi+1e-6, p.need(l))
			assert.InDelta(t, float64(l.n+1)*(k.Height*tall+clear)+p.ringOf(), hi, 0.1*hi+1, "a round is as tall as its stitches")
		}
	}
}

func TestRoundsOfATextStandInACircle(t *testing.T) {
	p, f := laid(text(t, "rows/circle-dc-12.txt"))
	require.Equal(t, circle, p.form)
	assert.Empty(t, touching(p, f, 0.02))
}

// A first round that is worked into one chain, or that closes its own ring, lies around it as one in a ring does.
func TestAFirstRoundInOneChainLiesAroundIt(t *testing.T) {
	const rest = "\nRound 2: Sl st in first sp, ch 4 (counts as dc and ch 1), dc in same sp, *dc in next dc, (dc, ch 1, dc) in next ch-1 sp; rep from * 4 more times, dc in next dc, join to 3rd ch. (18 dc)"
	for _, c := range []struct {
		text   string
		hooked int // the chain that it is worked into
		form   form
	}{
		{"US terms\nCh 5.\nRound 1: Dc in 5th ch from hook (skipped ch count as dc and ch 1), ch 1, (dc, ch 1) 4 times in same ch, join with sl st to 3rd ch. (6 dc)" + rest, 5, polygon},
		{"US terms\nMake a magic ring.\nRound 1: Ch 4 (counts as dc and ch 1), (dc, ch 1) 5 times in ring, join with sl st to 3rd ch. (6 dc)" + rest, 0, polygon},
		{"US terms\nRnd 1: With A, ch 5, join with sl st in first ch to form ring, ch 3 (counts as dc), 11 dc in ring, join. (12 dc)\nRnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each st around, join. (24 dc)", 0, circle},
		{"Chain = ch; slip stitch = sl st; treble crochet = tr.\n1ST ROUND: Ch 6, join with a sl st into a ring, ch 4, 15 tr into ring, a sl st in top st of ch 4 at beginning of round.", 0, circle},
		{"US terms\n1st round: Ch 6, join with a sl st into a ring, ch 4, 15 tr into ring, a sl st in top st of ch 4.\n2nd round: Ch 1, sc in each st around, join.", 0, circle},
		{"US terms\nCh 6, join with sl st to form a ring.\nRnd 1: Ch 3 (counts as dc), dc in same ch, 2 dc in each ch around, join. (12 dc)", 0, circle},
		{"US terms\nCh 2.\nRnd 1: 6 sc in 2nd ch from hook, join. (6 sc)\nRnd 2: Ch 1, 2 sc in each sc around, join. (12 sc)", 2, circle},
	} {
		w := workOfText(t, c.text)
		p := newPlan(w, false)
		assert.Equal(t, c.hooked, w.hooked, c.text)
		assert.Equal(t, c.form, p.form, c.text)
		if c.form == polygon {
			assert.Equal(t, 6, p.sides)
		}
	}
}

// A round whose first places take all its petals was read wrong.
func TestARoundThatDoesNotGoAroundIsNotDrawn(t *testing.T) {
	sc := func(feet ...int) St { return St{Kind: stitch.ByID("sc"), Feet: feet, Counts: true} }
	w := func(fans int) *Work {
		g := &rows.Graph{Rows: []rows.GraphRow{{Number: 1, Round: true, RS: true}, {Number: 2, Round: true, RS: true}}}
		for range 24 {
			g.Rows[0].Stitches = append(g.Rows[0].Stitches, rows.GraphStitch{Stitch: stitch.ByID("sc"), Counts: true})
		}
		for i := range 24 {
			n := 1
			if i < fans {
				n = 12
			}
			for range n {
				g.Rows[1].Stitches = append(g.Rows[1].Stitches, rows.GraphStitch{Stitch: sc().Kind, Feet: []int{i}, Counts: true})
			}
		}
		w, _ := FromGraph(g)
		return w
	}
	assert.Empty(t, w(0).Gaps())
	assert.Len(t, w(8).Gaps(), 1)
}

func TestARowOfChainsThatStandOnNothingIsNotDrawn(t *testing.T) {
	g := &rows.Graph{Rows: []rows.GraphRow{{Start: true}, {Number: 1}, {Number: 2}}}
	for i := range 6 {
		g.Rows[0].Stitches = append(g.Rows[0].Stitches, rows.GraphStitch{Stitch: stitch.ByID("ch")})
		g.Rows[1].Stitches = append(g.Rows[1].Stitches, rows.GraphStitch{Stitch: stitch.ByID("sc"), Feet: []int{5 - i}, Counts: true})
	}
	g.Rows[2].Stitches = []rows.GraphStitch{{Chain: 3, Turning: true}}
	w, _ := FromGraph(g)
	assert.Len(t, w.Gaps(), 1)
	assert.Len(t, w.Rows, 2)
}
