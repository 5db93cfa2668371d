package chart

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// shapesText writes the rounds of a random motif as people do, its counts by its own sums: discs, balls, meshes, wheels of arches,
// loops filled with stitches, shells or petals, snowflakes.
type shapesText struct {
	t     *rapid.T
	b     strings.Builder
	round int
	n     int    // stitches or loops of the last round
	kind  string // of its stitches
	loops int    // chains of its loops; 0: it is stitches alone
}

func (s *shapesText) rnd(format string, a ...any) {
	s.round++
	fmt.Fprintf(&s.b, "Rnd %d: ", s.round)
	fmt.Fprintf(&s.b, format, a...)
	s.b.WriteString("\n")
}

var shapeTurn = map[string]int{"hdc": 2, "dc": 3, "tr": 4}

// begin is the chain and first stitch of a round in stitches, and what it is joined to.
func (s *shapesText) begin(kind string) (start, join string) {
	if kind == "sc" {
		return "Ch 1, sc in first st", "first sc"
	}
	return fmt.Sprintf("Ch %d (counts as %s)", shapeTurn[kind], kind), fmt.Sprintf("top of ch-%d", shapeTurn[kind])
}

func (s *shapesText) drawKind() string {
	return rapid.SampledFrom([]string{"sc", "hdc", "dc", "tr"}).Draw(s.t, "kind")
}

func (s *shapesText) first() {
	s.kind, s.n = s.drawKind(), rapid.SampledFrom([]int{6, 8, 12, 16}).Draw(s.t, "n")
	ring := rapid.SampledFrom([]string{"Make a magic ring.\n", "Ch 5, join with sl st to form a ring.\n"}).Draw(s.t, "ring")
	s.b.WriteString("Terms: US\n" + ring)
	start, join := s.begin(s.kind)
	start = strings.Replace(start, "sc in first st", "sc in ring", 1)
	s.rnd("%s, %d %s in ring, join with sl st in %s. (%d %s)", start, s.n-1, s.kind, join, s.n, s.kind)
}

// stitches is a round of stitches on stitches: even, more or fewer.
func (s *shapesText) stitches() {
	kind := s.drawKind()
	start, join := s.begin(kind)
	var every int
	for _, e := range []int{1, 2, 3, 4, 5, 6} {
		if s.n%e == 0 && (every == 0 || rapid.Bool().Draw(s.t, "rarer")) {
			every = e
		}
	}
	switch op := rapid.IntRange(0, 3).Draw(s.t, "op"); {
	case op == 0:
		s.rnd("%s, %s in each st around, join with sl st in %s. (%d %s)", start, kind, join, s.n, kind)
	case op == 1 && s.n%3 == 0 && s.n >= 18 && kind == "sc":
		s.n = s.n / 3 * 2
		s.rnd("Ch 1, *sc in next st, sc2tog; repeat from * around, join with sl st in first sc. (%d sc)", s.n)
	case every == 1:
		if kind == "sc" {
			s.rnd("Ch 1, 2 sc in each st around, join with sl st in first sc. (%d sc)", 2*s.n)
		} else {
			s.rnd("%s, %s in same st, 2 %s in each st around, join with sl st in %s. (%d %s)", start, kind, kind, join, 2*s.n, kind)
		}
		s.n *= 2
	default:
		each := fmt.Sprintf("%s in next %d sts, 2 %s in next st", kind, every-1, kind)
		head := "Ch 1"
		if kind != "sc" {
			head = start
			if every > 2 {
				head += fmt.Sprintf(", %s in next %d sts", kind, every-2)
			}
			head += fmt.Sprintf(", 2 %s in next st", kind)
		}
		s.n = s.n / every * (every + 1)
		s.rnd("%s, *%s; repeat from * around, join with sl st in %s. (%d %s)", head, each, join, s.n, kind)
	}
	s.kind = kind
}

// mesh is a stitch and chains over each stitch.
func (s *shapesText) mesh() {
	c := rapid.IntRange(1, 3).Draw(s.t, "chains")
	s.rnd("Ch %d (counts as dc and ch %d), *dc in next %s, ch %d; repeat from * around, join with sl st in 3rd ch of ch-%d. (%d dc, %d ch-%d sps)", 3+c, c, s.kind, c, 3+c, s.n, s.n, c)
	s.kind, s.loops = "dc", c
}

// arches are loops over some stitches each.
func (s *shapesText) arches(skip int) {
	c := rapid.IntRange(skip+1, skip+4).Draw(s.t, "chains")
	s.n /= skip + 1
	s.rnd("Ch 1, sc in first st, ch %d, skip next %d sts, *sc in next st, ch %d, skip next %d sts; repeat from * around, join with sl st in first sc. (%d ch-%d loops)", c, skip, c, skip, s.n, c)
	s.kind, s.loops = "sc", c
}

// onLoops is a round on loops.
func (s *shapesText) onLoops() {
	sp := fmt.Sprintf("ch-%d sp", s.loops)
	switch op := rapid.IntRange(0, 4).Draw(s.t, "on loops"); {
	case op == 0:
		c := s.loops + rapid.IntRange(0, 2).Draw(s.t, "more")
		s.rnd("Sl st in next %s, ch 1, sc in same sp, ch %d, *sc in next %s, ch %d; repeat from * around, join with sl st in first sc. (%d ch-%d sps)", sp, c, sp, c, s.n, c)
		s.loops, s.kind = c, "sc"
		return
	case op == 1:
		m := max(s.loops+rapid.IntRange(-1, 2).Draw(s.t, "more"), 1)
		s.rnd("Ch 1, *%d sc in next %s; repeat from * around, join with sl st in first sc. (%d sc)", m, sp, m*s.n)
		s.n, s.kind = m*s.n, "sc"
	case op == 2 && s.loops > 2:
		m := rapid.IntRange(3, 6).Draw(s.t, "petal")
		s.rnd("Ch 1, *(sc, hdc, %d dc, hdc, sc) in next %s; repeat from * around, join with sl st in first sc. (%d petals)", m, sp, s.n)
		s.n, s.kind = (m+4)*s.n, "sc"
	case op == 3:
		m := rapid.IntRange(2, 3).Draw(s.t, "half")
		s.rnd("Sl st in next %s, ch 3 (counts as dc), (%d dc, ch 3, sl st in 3rd ch from hook, %d dc) in same sp, *(%d dc, ch 3, sl st in 3rd ch from hook, %d dc) in next %s; repeat from * around, join with sl st in top of ch-3. (%d dc)", sp, m-1, m, m, m, sp, 2*m*s.n)
		s.n, s.kind = -1, "dc"
	default:
		m := rapid.IntRange(2, 5).Draw(s.t, "shell")
		s.rnd("Sl st in next %s, ch 3 (counts as dc), %d dc in same sp, *%d dc in next %s; repeat from * around, join with sl st in top of ch-3. (%d dc)", sp, m-1, m, sp, m*s.n)
		s.n, s.kind = m*s.n, "dc"
	}
	s.loops = 0
}

// randomShape is the text of a motif.
func randomShape(t *rapid.T) string {
	s := &shapesText{t: t}
	s.first()
	for range rapid.IntRange(1, 8).Draw(t, "rounds") {
		if s.n < 6 || s.n > 110 {
			break
		}
		if s.loops > 0 {
			s.onLoops()
			continue
		}
		skip := rapid.IntRange(1, 4).Draw(t, "skip")
		switch op := rapid.IntRange(0, 5).Draw(t, "round"); {
		case op < 3:
			s.stitches()
		case op == 3:
			s.mesh()
		case s.n%(skip+1) == 0 && s.n/(skip+1) >= 4:
			s.arches(skip)
		default:
			s.stitches()
		}
	}
	return s.b.String()
}

// amiss is what a printed chart of rounds would be sent back for.
func amiss(p *plan, f *figure) map[string]bool {
	out := map[string]bool{"touching": len(touching(p, f, 0.02)) > 0}
	for _, l := range p.lines {
		least, most := map[int]float64{}, map[int]float64{} // chords of arches of so many chains
		for _, n := range l.nodes {
			if k := n.st.Chain; n.arch() && n.chord > 0 {
				if least[k] == 0 || n.chord < least[k] {
					least[k] = n.chord
				}
				most[k] = max(most[k], n.chord)
			}
			if n.st.Kind == nil || n.st.Turn || n.picot() || n.chain() || l.row.Base {
				continue
			}
			_, _, length := stance(p, n)
			key := n.st.Kind.Key
			if key != "slip" && length > 2 || key == "sc" && length > 1.5 {
				out["long"] = true
			}
			if p.form == circle && len(n.feet) == 1 && n.group == nil && !n.feet[0].arch() && math.Abs(p.turned(n, n.feet[0]))*n.v > 4 {
				out["beside its place"] = true
			}
		}
		for k := range most {
			if most[k] > 1.35*least[k]+0.6 {
				out["uneven arches"] = true
			}
		}
	}
	return out
}

// Over random motifs as people write them no symbol touches another; of 400 of them (as many as here six times over) 175 had something else that a
// printer would see, 227 before rounds shared their room: an arch a third wider than another of its round (115), a stem of more than twice its
// height (28), a stitch more than 4 mm beside its place (10).
func TestRoundsOfAllShapesStandAsPrinted(t *testing.T) {
	shapes := rapid.Custom(randomShape)
	sum := map[string]int{}
	const all = 66
	for seed := range all {
		text := shapes.Example(seed)
		w := fromTextOf(text)
		require.NoError(t, w.Check(), text)
		require.Empty(t, w.Gaps(), text)
		for what, is := range amiss(laid(w)) {
			if is {
				sum[what]++
			}
		}
	}
	t.Log(sum)
	require.Zero(t, sum["touching"])
	require.Less(t, sum["uneven arches"], all/3)
	require.Less(t, sum["long"], all/8)
	require.Less(t, sum["beside its place"], all/12)
}

// By hand: six stitches, 24 at the widest and six again make a ball, and a disc of six more each round does not.
func TestABallIsDrawnInRowsItsPartsApart(t *testing.T) {
	const disc = "Terms: US\nWorked in a spiral; do not join.\nRnd 1: Make a magic ring, 6 sc in ring. (6 sc)\nRnd 2: 2 sc in each sc around. (12 sc)\nRnd 3: *Sc in next sc, 2 sc in next sc; repeat from * around. (18 sc)\n" +
		"Rnd 4: *Sc in next 2 sc, 2 sc in next sc; repeat from * around. (24 sc)\n"
	const ball = disc + "Rnds 5-8: Sc in each sc around. (24 sc)\nRnd 9: *Sc in next 2 sc, sc2tog; repeat from * around. (18 sc)\nRnd 10: *Sc in next sc, sc2tog; repeat from * around. (12 sc)\nRnd 11: Sc2tog around. (6 sc)\n"
	p, f := laid(fromText(t, disc))
	require.Equal(t, circle, p.form)
	require.Empty(t, touching(p, f, 0.02))
	p, f = laid(fromText(t, ball))
	require.Equal(t, flat, p.form)
	require.Empty(t, touching(p, f, 0.02))
	for i, n := range p.lines[10].nodes {
		require.Len(t, n.feet, 2, "stitch %d of the last round closes two", i)
	}
	gap := func(r, i int) float64 { return p.lines[r].nodes[i+1].q - p.lines[r].nodes[i].q }
	require.Greater(t, gap(1, 1), 1.5*gap(1, 0), "the parts of the second round stand apart")
}

// The crosses of a petal stand clear of the chains that they are worked over.
func TestCrossesOfAPetalStandClearOfItsChains(t *testing.T) {
	p, f := laid(fromText(t, "Terms: US\nRnd 1: Make a magic ring, ch 3 (counts as dc), 15 dc in ring, join with sl st in top of ch-3. (16 dc)\n"+
		"Rnd 2: Ch 1, *sc in next dc, ch 3, skip next dc; repeat from * around, join with sl st in first sc. (8 ch-3 sps)\n"+
		"Rnd 3: Ch 1, *(sc, 3 dc, sc) in next ch-3 sp; repeat from * around, join with sl st in first sc. (8 petals)\n"))
	marks := map[*node]*mark{}
	k, held := 0, 0
	for _, l := range p.lines {
		for i := range l.row.St {
			marks[l.at(i)] = &f.marks[k]
			k++
		}
	}
	for _, n := range p.lines[2].nodes {
		if n.st.Kind == nil || n.st.Kind.ID != "sc" {
			continue
		}
		held++
		require.False(t, crossing(marks[n], marks[n.feet[0]]), "stitch %d lies on its chains", n.place)
	}
	require.Equal(t, 16, held)
}

// Large print has large symbols: the largest that one page holds, and on several pages none under the least.
func TestLargePrintHasLargeSymbols(t *testing.T) {
	size := func(rounds int, o Options) (scale float64, pages int) {
		w := grannyOf(rounds)
		for _, s := range o.scales() {
			if p, err := onPages(build(w, &o, s), &o); err == nil {
				if scale, pages = s, p.count(); pages == 1 {
					break
				}
			}
		}
		return scale, pages
	}
	large := Options{Text: 6.35, Least: 1.6}
	scale, pages := size(3, large)
	require.Equal(t, []any{3.0, 1}, []any{scale, pages})
	scale, pages = size(12, large)
	require.Equal(t, 1.6, scale)
	require.Greater(t, pages, 1)
	scale, pages = size(3, Options{})
	require.Equal(t, []any{2.2, 1}, []any{scale, pages})
}

// Of loops that are filled with more stitches than they are long the rounds of arches below share the gap: none stands off by more than
// half of what the last one alone would.
func TestNoRoundOfADoilyStandsFarOff(t *testing.T) {
	p, f := laid(fromText(t, `Terms: US
Ch 6, join with sl st to form a ring.
Rnd 1: Ch 3 (counts as dc), 23 dc in ring, join with sl st in top of ch-3. (24 dc)
Rnd 2: Ch 1, sc in first st, ch 5, *sc in next dc, ch 5; repeat from * around, join with sl st in first sc. (24 ch-5 loops)
Rnd 3: Sl st in next 3 ch, ch 1, sc in same loop, ch 5, *sc in next ch-5 loop, ch 5; repeat from * around, join with sl st in first sc. (24 ch-5 loops)
Rnd 4: Ch 1, *9 sc in next ch-5 loop; repeat from * around, join with sl st in first sc. (216 sc)
`))
	require.Empty(t, touching(p, f, 0.02))
	last := len(p.lines) - 1
	alone := p.need(p.lines[last])/around - p.lines[1].top
	for r := 2; r <= last; r++ {
		require.Less(t, p.lines[r].top-p.lines[r-1].top, 0.55*alone, "round %d", p.lines[r].row.Number)
	}
}
