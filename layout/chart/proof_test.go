package chart

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/layout/sheet"
	"flatwright/schematic/stitch"
)

// laid is a work as it is laid out.
func laid(w *Work) (*plan, *figure) {
	p := newPlan(w, false)
	p.lay()
	f := &figure{}
	p.stitches(f)
	return p, f
}

func made(w *Work) int {
	n := 0
	for i := range w.Rows {
		for _, s := range w.Rows[i].St {
			if !s.Break {
				n++
			}
		}
	}
	return n
}

// strokes are the strokes of a symbol as straight lines.
func strokes(m *mark) [][2]pt {
	var out [][2]pt
	for _, q := range m.paths {
		for _, run := range q.Polyline() {
			for i := 1; i < len(run); i++ {
				out = append(out, [2]pt{run[i-1], run[i]})
			}
		}
	}
	return out
}

// related reports whether two stitches may touch: worked into one place, into each
// other, or a chain and its neighbour.
func related(a, b *node) bool {
	for _, x := range a.feet {
		for _, y := range b.feet {
			if x == y {
				return true
			}
		}
		if x == b {
			return true
		}
	}
	for _, y := range b.feet {
		if y == a {
			return true
		}
	}
	return (a.arch() || b.arch() || a.picot() || b.picot()) && (a.next == b || b.next == a)
}

// touching finds pairs of symbols that are not related and whose strokes come nearer
// than least.
func touching(p *plan, f *figure, least float64) [][2]int {
	var nodes []*node
	for _, l := range p.lines {
		for i := range l.row.St {
			nodes = append(nodes, l.at(i))
		}
	}
	var out [][2]int
	for i := range f.marks {
		a := &f.marks[i]
		for j := i + 1; j < len(f.marks); j++ {
			b := &f.marks[j]
			if nodes[i].chain() && nodes[j].chain() {
				continue
			}
			if a.lo.X > b.hi.X+least || b.lo.X > a.hi.X+least || a.lo.Y > b.hi.Y+least || b.lo.Y > a.hi.Y+least || related(nodes[i], nodes[j]) {
				continue
			}
			for _, x := range strokes(a) {
				for _, y := range strokes(b) {
					if between(x[0], x[1], y[0], y[1]) < least {
						out = append(out, [2]int{i, j})
						goto next
					}
				}
			}
		next:
		}
	}
	return out
}

// stance is how a stitch stands: from upright in degrees, beside its foot in mm, and
// its drawn length beside its kind's.
func stance(p *plan, n *node) (lean, aside, length float64) {
	head := p.point(n, n.v)
	foot := (&shape{feet: p.footPoints(n)}).foot()
	d := sub(head, foot)
	up := p.outward(n)
	across := math.Abs(d.X*up.Y - d.Y*up.X)
	along := d.X*up.X + d.Y*up.Y
	return math.Atan2(across, along) * 180 / math.Pi, across, long(d) / n.h
}

// Over random rows that keep about as many places from row to row, no head leans more
// than 60 degrees from straight over its foot, no symbol is shorter than its kind, and none longer than
// 12 times or 30 mm beside its foot (8.05 times and 20.9 mm seen, once in 100,000 works, where bobbles have room for their bellies); of all of them 85 in a hundred are within 5 % of their kind's
// height and 25 degrees of upright (a foundation lies evenly, and what stands on it leans for that), and 98 in a hundred within 3 times and 5 mm.
func TestHeadsStandOverTheirFeetAtTheirKindsHeight(t *testing.T) {
	var all, near, far int
	worst := [3]float64{}
	stands := func(rt *rapid.T, p *plan, n *node) {
		lean, aside, length := stance(p, n)
		require.LessOrEqual(rt, lean, 60.01)
		require.LessOrEqual(rt, aside, 30.0)
		require.GreaterOrEqual(rt, length, 0.99)
		if n.st.Kind.Key != "slip" { // a dot, which has no length
			require.LessOrEqual(rt, length, 12.0)
		}
		worst = [3]float64{max(worst[0], lean), max(worst[1], aside), max(worst[2], length)}
		if all++; lean <= 25 && length <= 1.05 {
			near++
		}
		if aside > 5 || length > 3 && n.st.Kind.Key != "slip" {
			far++
		}
	}
	rapid.Check(t, func(rt *rapid.T) {
		for range 8 { // a share of few works swings with one of them
			p, _ := laid(randomFlat(rt, true))
			for _, l := range p.lines {
				for _, n := range l.nodes {
					if len(n.feet) > 0 && n.st.Kind != nil {
						stands(rt, p, n)
					}
				}
			}
		}
	})
	t.Logf("at worst %.0f degrees, %.1f mm, %.2f of its height; %d of %d within 25 degrees and 5 %%, %d beyond 5 mm or 3 times", worst[0], worst[1], worst[2], near, all, far)
	require.Greater(t, float64(near), 0.85*float64(all))
	require.Less(t, float64(far), 0.02*float64(all))
}

func TestNoSymbolTouchesAnotherThatItIsNotWorkedWith(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		p, f := laid(randomFlat(rt, true))
		require.Empty(rt, touching(p, f, 0.05))
	})
}

// A tall stitch of one row stands up beside the next one, where its shell is narrow.
func TestAStitchClearsATallOneTwoRowsBelow(t *testing.T) {
	at := func(id string, f int) St { return St{Kind: stitch.ByID(id), Feet: []int{f}, Counts: true} }
	w := &Work{Rows: []Row{{Base: true}, {Number: 1}, {Number: 2, Wrong: true}, {Number: 3}}}
	for range 8 {
		w.Rows[0].St = append(w.Rows[0].St, St{Kind: stitch.ByID("ch"), Counts: true})
	}
	for k, feet := range [][]int{{7, 6, 5, 4, 3, 2, 1, 0}, {7, 6, 3, 3, 3, 3, 1, 0}, {7, 6, 5, 3, 3, 2, 1, 0}} {
		for i, f := range feet {
			id := [3]string{"sc", "sc", "hdc"}[k]
			if k == 0 && i == 5 {
				id = "dc"
			}
			w.Rows[k+1].St = append(w.Rows[k+1].St, at(id, f))
		}
	}
	p, f := laid(w)
	require.Empty(t, touching(p, f, 0.05))
}

func TestNoSymbolOfARoundTouchesAnother(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		w := randomRound(rt)
		p, f := laid(w)
		require.Equal(rt, w.round(), p.form == circle, "one that grows too slowly lies in rows")
		require.Empty(rt, touching(p, f, 0.02))
	})
}

func stitchesOn(t require.TestingT, ss []*sheet.Sheet) int {
	n := 0
	for _, s := range ss {
		for _, it := range s.Root.Items {
			if g, ok := it.(*sheet.Group); ok {
				for _, sub := range g.Items {
					if m, ok := sub.(*sheet.Group); ok && m.Class == "stitch" {
						n++
					}
				}
			}
		}
	}
	return n
}

func TestEverySymbolIsAStitchAndEveryStitchHasOne(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		w := rapid.OneOf(rapid.Custom(func(t *rapid.T) *Work { return randomFlat(t, false) }), rapid.Custom(randomRound)).Draw(rt, "work")
		ss, err := Draw(w, Options{Whole: true})
		require.NoError(rt, err)
		require.Equal(rt, made(w), stitchesOn(rt, ss))
	})
}

func TestNothingOverlapsOnAnySheet(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		w := rapid.OneOf(rapid.Custom(func(t *rapid.T) *Work { return randomFlat(t, false) }), rapid.Custom(randomRound)).Draw(rt, "work")
		o := Options{LeftHanded: rapid.Bool().Draw(rt, "left-handed"), Whole: rapid.Bool().Draw(rt, "whole"), Text: rapid.SampledFrom([]float64{0, 6.35}).Draw(rt, "text")}
		ss, err := Draw(w, o)
		require.NoError(rt, err)
		for _, s := range ss {
			require.NoError(rt, s.Finite())
			require.Empty(rt, sheet.Overlaps(s, margin-0.5))
		}
	})
}
