package work

import (
	"slices"

	ins "flatwright/schematic/rows/instructions"
)

// meshes works squares of filet: n.N of them, in each of its places.
func (w *work) meshes(n *ins.Stitch) {
	k := max(w.count(n.N), 1)
	if len(n.Places) == 1 {
		k *= max(w.count(n.Places[0].N), 1)
	}
	m := n.Call.Mesh
	chained := !m.Solid && w.tchAt && w.beyond == m.Wide // the row's first chain holds the first square's
	for i := range k {
		if w.steps++; w.steps > maxSteps {
			return
		}
		if m.First {
			w.postOf(n, m)
		}
		if !w.square(n, m, chained && i == 0) {
			return
		}
		if !m.First {
			w.postOf(n, m)
		}
	}
}

// square works a mesh but for its post, over a space or as many stitches, and its chains unless they are there; it reports
// false where the row below has no more.
func (w *work) square(n *ins.Stitch, m *ins.Mesh, chained bool) bool {
	w.takeTurning()
	w.began = true
	r := w.cur.run()
	space := r != nil && r.space() && w.cur.off == 0
	switch {
	case space:
		w.cur.step(r.chain)
		w.lastPos = w.cur.pos - 1
	case !m.Solid:
		if w.use(m.Wide, nil, n.At) < m.Wide {
			return false
		}
	}
	switch {
	case chained:
	case !m.Solid:
		w.emit(run{chain: m.Wide}, nil, n)
	case space:
		w.emit(run{kind: m.Post, n: m.Wide}, w.feet(w.lastPos), n)
	default:
		for range m.Wide {
			if !w.postOf(n, m) {
				return false
			}
		}
	}
	return true
}

// postOf works a post into the next stitch; it reports false if there is none.
func (w *work) postOf(n *ins.Stitch, m *ins.Mesh) bool {
	w.spaced = false
	from := w.feetFrom()
	if w.use(1, nil, n.At) < 1 {
		return false
	}
	w.emit(run{kind: m.Post, n: 1}, w.feetTo(from), n)
	return true
}

// beforeMesh is the chain of k with which a row of filet begins: its first post, and the chains of the square beside it if they
// are as many more.
func beforeMesh(n *ins.Chain, k int, tail []ins.Item) *ins.Chain {
	at := slices.IndexFunc(tail, func(it ins.Item) bool { s, ok := it.(*ins.Stitch); return ok && s.Call != nil && s.Call.Mesh != nil })
	if at < 0 || n.Count.How != ins.Unsaid {
		return n
	}
	m := tail[at].(*ins.Stitch).Call.Mesh
	first := !slices.ContainsFunc(tail[:at], func(it ins.Item) bool { return !is[*ins.Nothing](it) && !is[*ins.Turn](it) })
	out := &ins.Chain{Placed: n.Placed, N: n.N, Count: ins.Counting{How: ins.CountsAsStitch, As: m.Post}}
	switch {
	case k == m.Post.Turn:
		return out
	case k == m.Post.Turn+m.Wide && !(first && m.Solid):
		out.Count.Space = ins.N(m.Wide)
		return out
	}
	return n
}

// beforeGaps is the chain of k with which a row of stitches and gaps begins, as the stitch and the space that its height has room
// for: ch 3, sk 1 st, *hdc in next st, ch 1, sk 1 st.
func beforeGaps(n *ins.Chain, k int, tail []ins.Item) *ins.Chain {
	tail = behindWords(tail)
	if n.Count.How != ins.Unsaid || len(tail) < 2 || !is[*ins.Skip](tail[0]) {
		return n
	}
	tail = tail[1:]
	if q, ok := tail[0].(*ins.Repeat); ok && len(q.Body) == 3 && is[*ins.Skip](q.Body[2]) {
		tail = q.Body
	}
	if len(tail) < 2 {
		return n
	}
	st, ok := tail[0].(*ins.Stitch)
	gap, also := tail[1].(*ins.Chain)
	if !ok || !also || st.Kind == nil || gap.N.By != nil || st.Kind.Turn+gap.N.All != k {
		return n
	}
	return &ins.Chain{Placed: n.Placed, N: n.N, Count: ins.Counting{How: ins.CountsAsStitch, As: st.Kind, Space: gap.N}}
}
