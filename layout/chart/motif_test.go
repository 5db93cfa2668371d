package chart

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/schematic/stitch"
)

// halfStitch is half the width of a stitch, mm: how far the heads of a side may stand beside
// its line.
const halfStitch = 1.25

// requirePolygon holds the rounds of a motif to the geometry of a regular polygon: its
// corners lie 360/k degrees apart as seen from the middle, and its sides are straight.
func requirePolygon(t require.TestingT, p *plan, sides int) {
	require.Equal(t, polygon, p.form)
	require.Equal(t, sides, p.sides)
	for _, l := range p.lines {
		if l.corners == nil {
			continue
		}
		require.Len(t, l.corners, sides, "round %d", l.n)
		var angles []float64
		for _, c := range l.corners {
			var at pt
			for _, i := range [2]int{c / 2, (c + 1) / 2 % len(l.nodes)} {
				n := l.nodes[i]
				at = add(at, p.point(n, n.v))
			}
			angles = append(angles, math.Atan2(at.Y, at.X))
		}
		for i, a := range angles {
			d := angles[(i+1)%sides] - a
			d -= around * math.Floor(d/around)
			within := 1e-6
			if l.corners[i]%2 != 0 || l.corners[(i+1)%sides]%2 != 0 { // between two stitches
				within = 0.06
			}
			require.InDelta(t, around/float64(sides), d, within, "round %d", l.n)
		}
		half := l.top * math.Tan(math.Pi/float64(sides))
		for i, n := range l.nodes {
			if n.corner || n.arch() || n.picot() {
				continue
			}
			at := p.point(n, n.v)
			d := polar(1, p.sideAngle(n.side))
			require.InDelta(t, l.top, at.X*d.X+at.Y*d.Y, halfStitch, "round %d, stitch %d: on its side", l.n, i)
			require.LessOrEqual(t, math.Abs(n.q), half+1e-6, "round %d, stitch %d: between its corners", l.n, i)
		}
	}
}

func TestMotifsHaveTheirCornersAndStraightSides(t *testing.T) {
	for path, sides := range map[string]int{"rows/granny-us.txt": 4, "chart/hexagon.txt": 6} {
		p, f := laid(text(t, path))
		requirePolygon(t, p, sides)
		assert.Empty(t, touching(p, f, 0.02), path)
	}
}

// Rounds that are turned, and end in the corner that they begin in with a chain and a single crochet for its last chain, are square.
func TestTurnedRoundsThatBeginInACornerAreSquare(t *testing.T) {
	p, f := laid(fromText(t, "Make a magic ring.\nRnd 1: Ch 3 (counts as dc), 2 dc in ring, [ch 2, 3 dc in ring] 3 times, ch 1, sc in top of ch-3. Turn.\n"+
		"Rnd 2: Ch 3 (counts as dc), 2 dc in sp below, ch 3, [(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 3] around, 3 dc in same sp as beginning 3 dc, ch 1, sc in top of ch-3. Turn.\n"+
		"Rnd 3: Ch 3 (counts as dc), 2 dc in same sp, ch 2, (dc, ch 3, dc) in next ch-3 sp, ch 2, [(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 2, (dc, ch 3, dc) in next ch-3 sp, ch 2] around, 3 dc in same sp of beginning 3 dc, ch 1, sc in top of ch-3. Turn.\n"))
	requirePolygon(t, p, 4)
	assert.Empty(t, touching(p, f, 0.02))
}

func TestAMotifHasItsCornersFromTheFirstRoundOn(t *testing.T) {
	p, _ := laid(text(t, "rows/granny-us.txt"))
	assert.NotNil(t, p.lines[1].corners, "its arches turn the corners of round 1")
	p, _ = laid(fromText(t, oneRound))
	requirePolygon(t, p, 4)
}

const oneRound = `Terms: US
Ch 4, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), 2 dc in ring, ch 2, (3 dc in ring, ch 2) 3 times, join with sl st in top of ch-3. (12 dc, 4 ch-2 sps)
`

func TestACircleIsSquaredOffWhereItsCornersAre(t *testing.T) {
	p, _ := laid(fromText(t, `Terms: US
Notes: Ch 1 does not count as a st.
Ch 5, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), 11 dc in ring, join with sl st in top of ch-3. (12 dc)
Rnd 2: Ch 3 (counts as dc), dc in same st, 2 dc in each of next 11 dc, join with sl st in top of ch-3. (24 dc)
Rnd 3: Ch 3 (counts as dc), dc in next 2 dc, *(2 tr, ch 2, 2 tr) in next dc, dc in next 5 dc; rep from * twice more, (2 tr, ch 2, 2 tr) in next dc, dc in next 2 dc, join with sl st in top of ch-3. (20 dc, 16 tr, 4 ch-2 sps)
Rnd 4: Ch 1, sc in each of first 5 sts, *3 sc in next ch-2 sp, sc in next 9 sts; rep from * twice more, 3 sc in next ch-2 sp, sc in next 4 sts, join with sl st in first sc. (48 sc)
`))
	requirePolygon(t, p, 4)
	assert.Nil(t, p.lines[1].corners)
	assert.Nil(t, p.lines[2].corners)
	assert.NotNil(t, p.lines[3].corners)
	assert.NotNil(t, p.lines[4].corners)
}

func TestPetalsAreNoCorners(t *testing.T) {
	p, _ := laid(fromText(t, `Terms: US
Notes: Ch 1 does not count as a st.
Ch 5, join with sl st to form a ring.
Rnd 1: Ch 1, 12 sc in ring, join with sl st in first sc. (12 sc)
Rnd 2: Ch 1, sc in first sc, *ch 3, skip next sc, sc in next sc; rep from * 4 more times, ch 3, join with sl st in first sc. (6 sc, 6 ch-3 sps)
Rnd 3: *(Sc, hdc, 3 dc, hdc, sc) in next ch-3 sp; rep from * around, join with sl st in first sc. (12 sc, 12 hdc, 18 dc)
`))
	assert.Equal(t, circle, p.form)
}

// randomMotif is a motif of k sides as patterns have them: corners of stitches with or
// without an arch, and sides of single stitches or of clusters with arches between.
func randomMotif(t *rapid.T) (*Work, int) {
	k := rapid.IntRange(3, 8).Draw(t, "sides")
	kind := stitch.ByID(rapid.SampledFrom([]string{"sc", "hdc", "dc", "tr"}).Draw(t, "kind"))
	granny := rapid.Bool().Draw(t, "granny")
	arch := rapid.IntRange(1, 3).Draw(t, "arch")
	each := rapid.IntRange(1, min(3, max(1, 8-k))).Draw(t, "each") // more would frill
	w := &Work{Title: "Motif"}
	first := Row{Round: true, Number: 1, Joined: true}
	aside := map[[2]int]bool{} // arches that are no corners, by row and place
	for range k {
		for range each {
			first.St = append(first.St, St{Kind: kind, Counts: true})
		}
		first.St = append(first.St, St{Chain: arch, Counts: true})
	}
	w.Rows = append(w.Rows, first)
	for r := range rapid.IntRange(1, 6).Draw(t, "rounds") {
		below := &w.Rows[len(w.Rows)-1]
		row := Row{Round: true, Number: r + 2, Joined: true}
		put := func(foot, n int) {
			for range n {
				row.St = append(row.St, St{Kind: kind, Feet: []int{foot}, Counts: true})
			}
		}
		for i := range below.St {
			s := &below.St[i]
			switch {
			case s.arch() && s.Chain == arch && !aside[[2]int{r, i}]: // a corner
				put(i, each+1)
				row.St = append(row.St, St{Chain: arch, Counts: true})
				put(i, each+1)
				if granny {
					aside[[2]int{r + 1, len(row.St)}] = true
					row.St = append(row.St, St{Chain: 1, Counts: true})
				}
			case s.arch():
				put(i, 3)
				aside[[2]int{r + 1, len(row.St)}] = true
				row.St = append(row.St, St{Chain: 1, Counts: true})
			case !granny:
				put(i, 1)
			}
		}
		w.Rows = append(w.Rows, row)
	}
	return w, k
}

func TestRandomMotifsHaveCornersAtEqualAnglesAndStraightSides(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		w, k := randomMotif(rt)
		p, f := laid(w)
		requirePolygon(rt, p, k)
		require.Empty(rt, touching(p, f, 0.02))
		for _, l := range p.lines {
			requireOrder(rt, p, l)
		}
	})
}

// requireOrder holds a round to its order: seen from the middle, its stitches follow one
// another.
func requireOrder(t require.TestingT, p *plan, l *line) {
	sum := 0.0
	for i, n := range l.nodes {
		m := l.nodes[(i+1)%len(l.nodes)]
		a, b := p.point(n, n.v), p.point(m, m.v)
		d := math.Atan2(a.X*b.Y-a.Y*b.X, a.X*b.X+a.Y*b.Y)
		require.Greater(t, d, -1e-9, "round %d, stitch %d: in order", l.n, i)
		sum += d
	}
	require.InDelta(t, around, sum, 1e-6)
}

// Counted by hand in the texts of the public domain motifs of testdata/chart: stitches of
// each round, corners, and spaces between them.
func TestEveryStitchOfAMotifStandsOverWhatItIsWorkedInto(t *testing.T) {
	for _, path := range []string{"rows/granny-us.txt", "chart/hexagon.txt"} {
		p, _ := laid(text(t, path))
		for _, l := range p.lines[2:] {
			for _, n := range l.nodes {
				if len(n.feet) == 0 || n.st.Kind == nil {
					continue
				}
				lean, _, _ := stance(p, n)
				most := 50.0
				if n.group == nil {
					most = 20
				}
				assert.LessOrEqual(t, lean, most, "%s, round %d: %s", path, l.n, n.st.Kind.ID)
			}
		}
	}
}

func grannyOf(rounds int) *Work {
	var b strings.Builder
	b.WriteString(oneRound)
	for r := 2; r <= rounds; r++ {
		side := strings.Repeat("3 dc in next ch-1 sp, ch 1, ", r-2)
		fmt.Fprintf(&b, "Rnd %d: Sl st in next 2 dc and in next ch-2 sp, ch 3 (counts as dc), (2 dc, ch 2, 3 dc) in same sp, ch 1, %s*(3 dc, ch 2, 3 dc) in next ch-2 sp, ch 1, %srep from * twice more; join with sl st in top of ch-3. (%d dc)\n",
			r, side, side, 12*r)
	}
	return fromTextOf(b.String())
}

// unevenMotif is a solid motif of k sides as it is written with a chain at the beginning: its first corner has up to two stitches
// fewer on one side of its arch, for the chain stands over the stitch before it.
func unevenMotif(t *rapid.T) (*Work, int) {
	k, arm := rapid.IntRange(4, 6).Draw(t, "sides"), rapid.IntRange(2, 3).Draw(t, "arm")
	less := rapid.IntRange(1, arm-1).Draw(t, "less")
	dc := stitch.ByID("dc")
	w := &Work{Title: "Motif"}
	put := func(row *Row, n int, feet ...int) {
		for range n {
			row.St = append(row.St, St{Kind: dc, Feet: feet, Counts: true})
		}
	}
	first := Row{Round: true, Number: 1, Joined: true}
	for range k {
		put(&first, 2)
		first.St = append(first.St, St{Chain: 2, Counts: true})
	}
	w.Rows = append(w.Rows, first)
	for r := range rapid.IntRange(1, 4).Draw(t, "rounds") {
		below, row, corner := &w.Rows[r], Row{Round: true, Number: r + 2, Joined: true}, 0
		for i := range below.St {
			if !below.St[i].arch() {
				put(&row, 1, i)
				continue
			}
			n := arm
			if corner++; corner == 1 {
				n -= less
			}
			put(&row, n, i)
			row.St = append(row.St, St{Chain: 2, Counts: true})
			put(&row, arm, i)
		}
		w.Rows = append(w.Rows, row)
	}
	return w, k
}

func TestCornersWithArmsOfUnequalLengthAreCorners(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		w, k := unevenMotif(rt)
		p, f := laid(w)
		requirePolygon(rt, p, k)
		require.Empty(rt, touching(p, f, 0.02))
		require.Empty(rt, overNeighbours(p, f))
		for _, l := range p.lines {
			requireOrder(rt, p, l)
		}
	})
}

// What is worked one on one in rounds stands within 10 degrees of straight out, beside a chain that stands for no stitch and the
// number too (6.5 seen).
func TestStitchesOneOnOneStandStraightOut(t *testing.T) {
	worst := 0.0
	rapid.Check(t, func(rt *rapid.T) {
		n := rapid.IntRange(6, 12).Draw(rt, "stitches")
		kind := stitch.ByID(rapid.SampledFrom([]string{"hdc", "dc", "tr"}).Draw(rt, "kind"))
		w := &Work{Rows: []Row{{Round: true, Number: 1, Joined: true}}}
		for range n {
			w.Rows[0].St = append(w.Rows[0].St, St{Kind: stitch.ByID("sc"), Counts: true})
		}
		for r := range rapid.IntRange(1, 4).Draw(rt, "rounds") {
			row := Row{Round: true, Number: r + 2, Joined: true, St: []St{{Chain: 2, Turn: true}}}
			for i := range w.Rows[r].St {
				if !w.Rows[r].St[i].Turn {
					row.St = append(row.St, St{Kind: kind, Feet: []int{i}, Counts: true})
				}
			}
			w.Rows = append(w.Rows, row)
		}
		p, _ := laid(w)
		for _, l := range p.lines[1:] {
			for _, m := range l.nodes {
				if len(m.feet) == 1 {
					lean, _, _ := stance(p, m)
					worst = max(worst, lean)
				}
			}
		}
	})
	t.Logf("at worst %.1f degrees", worst)
	require.Less(t, worst, 10.0)
}

// overNeighbours are the chains that lie over the stitch before or after them.
func overNeighbours(p *plan, f *figure) (out [][2]int) {
	k := 0
	for _, l := range p.lines {
		from := k
		for i := range l.row.St {
			n := l.at(i)
			for _, m := range [2]*node{n.prev, n.next} {
				if !n.arch() || m == nil || m.arch() || m.picot() || m == n {
					continue
				}
				for j := range l.row.St {
					if l.at(j) == m && crossing(&f.marks[from+i], &f.marks[from+j]) {
						out = append(out, [2]int{l.n, i})
					}
				}
			}
		}
		k += len(l.row.St)
	}
	return out
}

// crossing reports whether strokes of two symbols meet.
func crossing(a, b *mark) bool {
	for _, x := range strokes(a) {
		for _, y := range strokes(b) {
			if between(x[0], x[1], y[0], y[1]) < 1e-6 {
				return true
			}
		}
	}
	return false
}
