package schematic

import (
	"flatwright/schematic/units"
)

// mostSlit is how many rows a slit is high at most: what is longer is an opening, and its parts are
// drawn.
const mostSlit = 2

// slit is stitches of a round taken out of work and added again a row or two later, as for
// a thumb or a pocket: the tube is drawn in one, with a line where the slit is.
type slit struct {
	tube *strand
	at   []slitAt
}

// slitAt is one slit of a tube, as it lies flat.
type slitAt struct {
	a, b pt
	name string
	part string
	n    int
	by   int // stitches that the tube has more, or fewer, above it
}

// slits reports whether a division of a round is a slit: the row after it joins the same parts again, after the same few rows worked even, over as
// many stitches as were taken out, or over fewer where one part alone was: a gusset of a thumb is taken out with it,
// and of a mitten all of it may be.
func (s *Divide) slits(w *worker, places []stretchOf, n int) bool {
	st := w.cur
	next, ok := w.next.(*JoinParts)
	if !ok || !st.round || len(st.blocks) > 1 || st.row == 0 || st.doubt || st.band > 0 || !next.Round || next.Gauge != "" {
		return false
	}
	out, parts, sum, worked, rows := 0, 0, 0, map[string]bool{}, -1
	for _, p := range places {
		k := p.to - p.from
		sum += k
		if p.part.Leave || p.part.Hold {
			parts++
			if out += k; 2*k > n {
				return false
			}
			continue
		}
		r := w.evenOnly(p.part)
		if r < 0 || rows >= 0 && r != rows {
			return false
		}
		worked[p.part.Name], rows = true, r
	}
	if sum != n || out == 0 || len(worked) == 0 || rows > mostSlit {
		return false
	}
	added, ok := next.rejoins(w.i, worked)
	return ok && (added == out || (added > 0 || w.made.Kind == KindMitten) && added < out && parts == 1)
}

// rejoins reports whether a join is of these parts alone, each once, and over how many stitches added.
func (s *JoinParts) rejoins(size int, parts map[string]bool) (added int, ok bool) {
	for _, j := range s.Of {
		if j.Part == "" {
			added += j.Added.Int(size, 0)
			continue
		}
		if !parts[j.Part] {
			return 0, false
		}
		delete(parts, j.Part)
	}
	return added, len(parts) == 0
}

// evenOnly is how many rows a part is worked even, or -1 if it is worked in any other way.
func (w *worker) evenOnly(p *Part) int {
	if p.MirrorOf != "" {
		return -1
	}
	rows := 0
	for _, s := range p.Sections {
		e, ok := s.(*Even)
		if !ok || e.Rib || e.Gauge != "" || e.Width != "" {
			return -1
		}
		k, ok := w.rows(e.Amount)
		if !ok {
			return -1
		}
		rows += k
	}
	return rows
}

// slit works the parts of a slit, none of them drawn by itself, and the tube over the same rows.
func (s *Divide) slit(w *worker, places []stretchOf, n int) {
	st := w.cur
	b := &st.blocks[0]
	c := w.canvas(b)
	sl := &slit{tube: st}
	rows := 0
	for _, p := range places {
		if p.part.worked() {
			rows = w.evenOnly(p.part)
			continue
		}
		if p.part.Hold {
			w.hold(p.part.Name, p.to-p.from)
		}
		sl.at = append(sl.at, w.slitAt(b, p, n))
	}
	for i := range s.Parts {
		for _, p := range places {
			if p.part != &s.Parts[i] {
				continue
			}
			if q := w.partStrand(p, b, b.x); q != nil {
				q.blocks[0].view = w.newView("")
				w.views[q.blocks[0].view].dead, w.views[q.blocks[0].view].first = true, q
				w.workPart(s, p.part, q)
			}
		}
	}
	// The fabric of these rows is that of the parts.
	area := w.areas[st.gauge.Name]
	y0 := st.y
	w.advance(rows, nil, nil)
	w.areas[st.gauge.Name] = area
	for i := range sl.at {
		at := &sl.at[i]
		at.a.y, at.b.y = y0.Add(st.y).Half(), y0.Add(st.y).Half()
		c.lines = append(c.lines, inner{kind: LineSlit, a: at.a, b: at.b, name: at.name})
		c.extra = append(c.extra, extraEdge{at.a, at.b, Edge{Name: orElse(w.edgeOf(places, at.part), "gap"), Parts: []string{at.part},
			Length: st.gauge.StitchWidth().Times(at.n), Stitches: at.n, Pos: w.section.Base().Pos}})
	}
	c.slits = append(c.slits, sl.at...)
	st.ended = true
	w.slit = sl
}

func (w *worker) edgeOf(places []stretchOf, part string) string {
	for _, p := range places {
		if p.part.Name == part {
			return p.part.Edge
		}
	}
	return ""
}

// slitAt is where a slit lies on the flat tube: a round begins at its right-hand edge, the
// second half of it is the layer behind.
func (w *worker) slitAt(b *block, p stretchOf, n int) slitAt {
	st := w.cur
	wide := st.gauge.StitchWidth()
	mid := units.Int(int64(n)).Half()
	x := func(i int) units.Num { // of the front layer; the layer behind lies mirrored under it
		return b.x.Add(wide.Mul(units.Int(int64(i)).Sub(mid).Abs()))
	}
	a, z := x(p.from), x(p.to)
	if half := units.Frac(int64(p.from+p.to), 2); half.Less(mid) {
		a, z = z, a
	}
	if p.from*2 < n && p.to*2 > n { // round the left-hand edge: what is in front, or behind, of it
		a = b.x
	}
	switch wide := wide.Times(p.to - p.from).Half(); { // what is added at a fold lies about it
	case st.leans == RightEdge && (p.from == 0 || p.to == n):
		a, z = st.right(b).Sub(wide), st.right(b)
	case st.leans == LeftEdge && p.from*2 < n && p.to*2 > n:
		a, z = b.x, b.x.Add(wide)
	}
	return slitAt{a: pt{a, st.y}, b: pt{z, st.y}, name: orElse(p.part.Name, "slit"), part: p.part.Name, n: p.to - p.from}
}

// close joins the parts of a slit again over the stitches added.
func (sl *slit) close(w *worker, s *JoinParts) {
	st := sl.tube
	c := w.canvas(&st.blocks[0])
	k, by := 0, 0
	for _, at := range sl.at {
		by -= at.n
	}
	for _, j := range s.Of {
		if j.Part != "" {
			delete(w.parts, j.Part)
			continue
		}
		at := sl.at[min(k, len(sl.at)-1)]
		k++
		if n := j.Added.Int(w.i, 0); n > 0 {
			by += n
			c.extra = append(c.extra, extraEdge{at.a, at.b, Edge{Name: orElse(j.Edge, "added edge"), Length: st.gauge.StitchWidth().Times(n), Stitches: n, Pos: s.Pos}})
		}
	}
	st.ended, st.name = false, s.Name
	w.cur, w.slit = st, nil
	if c.slits[len(c.slits)-1].by = by; by != 0 {
		w.roundBy(by)
	}
	st.leans = BothEdges
}

// slitSpans are how wide a slit is, and how far from the beginning of the tube.
func (w *worker) slitSpans(c *canvas) []span {
	d := w.piece.From
	var out []span
	if len(c.levels) == 0 {
		return nil
	}
	y0 := c.levels[0].y
	for _, at := range c.slits {
		g := c.first.gauge
		a, b := d.turned(at.a), d.turned(at.b)
		s := span{name: "width of " + at.name, axis: Horizontal, length: g.StitchWidth().Times(at.n), count: at.n, of: "st", gauge: g, main: true, rank: rankEdge}
		s.lo, s.hi = ordered(a, b)
		if l := s.hi.x.Sub(s.lo.x); !l.Eq(s.length) {
			s.main = false // some of it lies on the layer behind
		}
		end := at.a // the outer one
		if at.a.x.Abs().Less(at.b.x.Abs()) {
			end = at.b
		}
		a, b = d.turned(pt{end.x, y0}), d.turned(end)
		h := span{name: "length to " + at.name, axis: Vertical, length: at.a.y.Sub(y0), of: "row", main: true, rank: rankEdge}
		h.lo, h.hi = orderedUp(a, b)
		h.count, h.gauge = rowsIn(h.length, g)
		if d.sideways() {
			s.axis, h.axis = Vertical, Horizontal
			s.lo, s.hi = orderedUp(s.lo, s.hi)
			h.lo, h.hi = ordered(h.lo, h.hi)
		}
		out = append(out, s, h)
	}
	return out
}
