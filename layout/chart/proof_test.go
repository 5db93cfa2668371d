package chart

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"flatwright/layout/sheet"
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

func word(n *node) string {
	switch {
	case n.arch():
		return "arch"
	case n.st.Turn:
		return "turn"
	case n.chain():
		return "base"
	}
	if len(n.feet) > 1 {
		return "tog"
	}
	if n.group != nil {
		return "group"
	}
	return "st"
}

func TestMeasureRandom(t *testing.T) {
	stats := map[string]int{}
	maxLean, maxDrift, maxLong, touch, all := 0.0, 0.0, 0.0, 0, 0
	rapid.Check(t, func(rt *rapid.T) {
		w := randomFlat(rt, true)
		p, f := laid(w)
		hits := touching(p, f, 0.05)
		if len(hits) > 0 {
			touch++
			var nodes []*node
			for _, l := range p.lines {
				for i := range l.row.St {
					nodes = append(nodes, l.at(i))
				}
			}
			for _, h := range hits {
				a, b := nodes[h[0]], nodes[h[1]]
				stats[fmt.Sprint(word(a), "-", word(b), " rows ", b.line.n-a.line.n, " adj ", a.next == b || b.next == a)]++
			}
		}
		all++
		for _, l := range p.lines {
			for _, n := range l.nodes {
				if len(n.feet) == 0 || n.st.Turn && n.st.Kind == nil {
					continue
				}
				head := p.point(n, n.v)
				foot := (&shape{feet: p.footPoints(n)}).foot()
				dx, dy := head.X-foot.X, head.Y-foot.Y
				maxLean = max(maxLean, math.Abs(math.Atan2(dx, dy))*180/math.Pi)
				maxDrift = max(maxDrift, math.Abs(dx))
				maxLong = max(maxLong, math.Hypot(dx, dy)/n.h)
			}
		}
		require.Equal(rt, made(w), len(f.marks))
		ss, err := Draw(w, Options{})
		require.NoError(rt, err)
		for _, s := range ss {
			require.Empty(rt, sheet.Overlaps(s, 9.5))
		}
	})
	for k, v := range stats {
		t.Log(v, k)
	}
	t.Logf("lean %.1f drift %.1f long %.2f touching %d of %d", maxLean, maxDrift, maxLong, touch, all)
}
