package chart

import (
	"math"
	"slices"
	"strconv"

	"flatwright/fonts"
	"flatwright/layout/sheet"
)

// quiet is the width of the lines that explain a chart.
const quiet = 0.25

// plane is the size of numbers in the plane, at a scale.
func (o *Options) plane(scale float64) float64 { return o.text() / scale }

// path is an open path through points of the plane.
func path(class string, width float64, ps ...pt) *sheet.Path {
	segs := make([]sheet.Seg, len(ps))
	for i, p := range ps {
		segs[i] = sheet.Seg{Verb: sheet.Line, P: [3]pt{p}}
	}
	segs[0].Verb = sheet.Move
	return &sheet.Path{Segs: segs, Class: class, Style: sheet.Style{Width: width, Stroke: sheet.Black}}
}

// arrow is an arrow of direction from a to b: a filled head for a right-side row, an
// open one for a wrong-side row. Its head has one size on paper.
func arrow(a, b pt, wrong bool, scale float64) []*sheet.Path {
	d := unit(sub(b, a))
	n := right(d)
	back := add(b, mul(d, -1.9/scale))
	p, q := add(back, mul(n, 0.75/scale)), add(back, mul(n, -0.75/scale))
	quiet := quiet / scale
	shaft := path("work", quiet, a, back)
	if wrong {
		return []*sheet.Path{path("work", quiet, a, b), path("work", quiet, p, b, q)}
	}
	head := path("work", 0, p, b, q)
	head.Segs = append(head.Segs, sheet.Seg{Verb: sheet.Close})
	head.Style = sheet.Style{Fill: sheet.Black}
	return []*sheet.Path{shaft, head}
}

// name is what a row is called at its side: its number, or its name.
func (r *Row) name() string {
	switch {
	case r.Base:
		return ""
	case r.Number > 0:
		return strconv.Itoa(r.Number) + r.asterisk()
	}
	return r.Name
}

// asterisk marks the number of a row that does not agree with its text.
func (r *Row) asterisk() string {
	if r.Amiss != "" && r.Unread == "" {
		return "*"
	}
	return ""
}

const (
	arrowLong = 3.2
	sideGap   = 1.6 // from a row to its arrow
)

// nameRows notes where the rows begin, for their numbers.
func (p *plan) nameRows(f *figure, o *Options, scale float64) {
	if p.form != flat {
		p.roundNumbers(f, o, scale)
		return
	}
	f.off = p.off
	for r, l := range p.lines {
		if s := l.row.name(); s != "" && len(l.nodes) > 0 {
			n := rowName{row: r + p.off, s: s, rightward: l.rightward, wrong: l.row.Wrong, low: math.Inf(-1)}
			if l.row.gapWords() != "" {
				n.low = l.base
			}
			f.names = append(f.names, n)
		}
	}
}

// label adds a text and the room that it takes.
func (f *figure) label(o *Options, scale float64, l label) {
	f.labels = append(f.labels, l)
	lo, hi := l.box(o.plane(scale))
	f.grow(lo, hi)
}

// box is the room of a label in the plane.
func (l *label) box(size float64) (lo, hi pt) {
	w := fonts.Width(fonts.Regular, size, l.s)
	h := (fonts.Ascent(fonts.Regular) + fonts.Descent(fonts.Regular)) * size
	x := l.at.X - w/2
	switch {
	case l.side && l.anchor == sheet.Start:
		x = l.at.X
	case l.side && l.anchor == sheet.End:
		x = l.at.X - w
	}
	return pt{X: x, Y: l.at.Y - h/2}, pt{X: x + w, Y: l.at.Y + h/2}
}

// besideSeam is where the number of a round is tried: by how much of its height from its foot,
// then how far beside the seam, mm.
var besideSeam = struct{ up, aside []float64 }{
	[]float64{0.45, 0.55, 0.35, 0.65, 0.25, 0.75, 0.15, 0.85, 0, 1, 1.1},
	[]float64{0, -0.4, 0.4, -0.8, 0.8, -1.2, 1.2, -1.8, 1.8, -2.4, 2.4, -3.2, 3.2, -4, 4, -5, 5, -6, 6},
}

// roundNumbers puts the number of each round into the wedge that is kept for it, or
// where nothing is in its way near by, and an arrow around the outside.
func (p *plan) roundNumbers(f *figure, o *Options, scale float64) {
	size := o.plane(scale)
	g := p.besideSeams(f, size)
	for r, l := range p.lines {
		s := l.row.name()
		if s == "" || len(l.nodes) < 2 {
			continue
		}
		at, found := p.numberAt(g, l, s, size)
		if !found && r+1 < len(p.lines) { // those beside it are numbered
			continue
		} else if !found { // beyond everything, over the seam
			at = pt{X: p.seam(l, l.top+0.3, 0).X, Y: f.hi.Y + size}
		}
		n := label{s: s, at: at, row: r + p.off, class: "number"}
		lo, hi := n.box(size)
		g.put(lo, hi)
		f.label(o, scale, n)
	}
	y, x := f.hi.Y+1.8, 3/scale
	f.add(newMark(-1, false, arrow(pt{X: x, Y: y}, pt{X: -x, Y: y}, false, scale)...))
}

// besideSeams is an index of what lies where the numbers of rounds are tried: beside the seams, and in the ring.
func (p *plan) besideSeams(f *figure, size float64) *grid {
	wide := slices.Max(besideSeam.aside) + 3*size
	seams := make([][2]pt, len(p.lines))
	var lo, hi pt
	for r, l := range p.lines {
		if len(l.nodes) < 2 {
			continue
		}
		box := &seams[r]
		for k, v := range [2]float64{l.base, l.base + slices.Max(besideSeam.up)*(l.top-l.base)} {
			at := p.seam(l, v, 0)
			if k == 0 {
				box[0], box[1] = at, at
			}
			box[0] = pt{X: min(box[0].X, at.X-wide), Y: min(box[0].Y, at.Y-wide)}
			box[1] = pt{X: max(box[1].X, at.X+wide), Y: max(box[1].Y, at.Y+wide)}
		}
		lo, hi = pt{X: min(lo.X, box[0].X), Y: min(lo.Y, box[0].Y)}, pt{X: max(hi.X, box[1].X), Y: max(hi.Y, box[1].Y)}
	}
	return gridOf(f, lo, hi, func(m *mark) bool {
		if m.row < 0 {
			return true
		}
		return slices.ContainsFunc(seams[max(m.row-p.off-3, 0):max(min(m.row-p.off+4, len(seams)), 0)], func(box [2]pt) bool {
			return m.lo.X <= box[1].X && m.hi.X >= box[0].X && m.lo.Y <= box[1].Y && m.hi.Y >= box[0].Y
		})
	})
}

// numberAt is where the number of a round has room: at its seam, or, for the first one, in the
// ring.
func (p *plan) numberAt(g *grid, l *line, s string, size float64) (pt, bool) {
	free := func(at pt, air float64) bool {
		lo, hi := (&label{s: s, at: at}).box(size)
		return g.free(pt{X: lo.X - air, Y: lo.Y - 0.2}, pt{X: hi.X + air, Y: hi.Y + 0.2})
	}
	for _, air := range [2]float64{0.3, 0.25} {
		for _, by := range besideSeam.up {
			for _, aside := range besideSeam.aside {
				if at := p.seam(l, l.base+by*(l.top-l.base), aside); free(at, air) {
					return at, true
				}
			}
		}
		if l.n <= 1 && free(pt{}, air) {
			return pt{}, true
		}
	}
	return pt{}, false
}

// seam is the place between the last and the first stitch of a round.
func (p *plan) seam(l *line, v, aside float64) pt {
	first, last := l.nodes[0], l.nodes[len(l.nodes)-1]
	if p.isCircle(l) {
		at := polar(v, topAt+l.cut)
		return add(at, mul(pt{X: -math.Sin(topAt + l.cut), Y: math.Cos(topAt + l.cut)}, aside))
	}
	a, b := p.point(last, v), p.point(first, v)
	return add(mul(add(a, b), 0.5), mul(unit(sub(b, a)), aside))
}

// seals draws the slip stitch that closes a round: on the join, beside the top of its
// first stitch.
func (p *plan) seals(f *figure) {
	for r, l := range p.lines {
		if !l.row.Joined || len(l.nodes) < 2 || l.row.Base {
			continue
		}
		n := l.at(0)
		if n.st.Turn && n.st.Kind == nil { // it does not count: the round is joined to the first stitch
			n = l.at(1)
		}
		if n.arch() {
			continue
		}
		across := right(p.outward(n))
		if l.clockwise() {
			across = mul(across, -1)
		}
		aside, low := topHalf+dot+0.15, 0.0
		switch k := plainOf(n); {
		case n.st.Turn:
			aside, low = ovalWide/2+dot+0.15, 0.45
		case k.Key == "sc":
			aside = 0.8
		}
		q := pen{o: add(p.point(n, n.v-low), mul(across, aside)), u: pt{X: 1}, v: pt{Y: 1}}
		q.oval(0, 0, dot, dot, true)
		q.out[0].Class = "join"
		f.add(newMark(r+p.off, false, q.out...))
	}
}

// ring draws the loop from which rounds begin that have no chains to stand on.
func (p *plan) ring(f *figure) {
	if p.form == flat || p.lines[0].row.Base {
		return
	}
	q := pen{u: pt{X: 1}, v: pt{Y: 1}}
	if p.work.hooked > 0 {
		q.oval(0, 0, ovalLong/2, ovalWide/2, false)
	} else {
		r := p.ringOf() - 0.2
		q.oval(0, 0, r, r, false)
	}
	q.out[0].Class = "ring"
	f.add(newMark(-1, false, q.out...))
}
