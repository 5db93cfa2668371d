package worn

import (
	"fmt"
	"slices"

	"flatwright/schematic"
)

// laid is the round of runs from stitch from to stitch to, as pieces of it; the round goes on.
func laid(runs []run, from, to float64) []run2 {
	total := 0.0
	for _, r := range runs {
		total += float64(r.n)
	}
	var out []run2
	for turn := -2.0; turn <= 2; turn++ {
		at := turn * total
		for i := range runs {
			lo, hi := max(from, at), min(to, at+float64(runs[i].n))
			if hi-lo > 1e-9 {
				out = append(out, run2{&runs[i], hi - lo})
			}
			at += float64(runs[i].n)
		}
	}
	return out
}

// run2 is a part of a run, so many stitches wide.
type run2 struct {
	*run
	n float64
}

// middleOf is the stitch at the middle of run i.
func middleOf(runs []run, i int) float64 {
	at := 0.0
	for _, r := range runs[:i] {
		at += float64(r.n)
	}
	return at + float64(runs[i].n)/2
}

// downwards reports whether runs are listed from left to right as drawn.
func downwards(m *schematic.Made) bool { return m.From == schematic.FromNeck }

// inFront is the run that lies in front, or -1.
func (a *assembly) inFront(runs []run) int { return a.inFace(runs, front) }

// inFace is the run that lies behind, or else in front, or -1.
func (a *assembly) inFace(runs []run, f face) int {
	if f != back {
		f = front
	}
	return slices.IndexFunc(runs, func(r run) bool { return r.main && a.facing(r.name) == f })
}

// behindFirst reports whether a view of a round is the half of it that lies behind the first, and begins from a run that lies there.
func (a *assembly) behindFirst(m *schematic.Made, p *panel, runs []run) bool {
	lo, hi := bounds(m.Views[0].Outline)
	l, h := box(p.loop)
	start, _ := ends(p)
	return p.face == back && a.inFace(runs, back) >= 0 && (start == l.Y && absf(l.Y-lo.Y) < close || start == h.Y && absf(h.Y-hi.Y) < close)
}

func longest(runs []run) int {
	best := 0
	for i, r := range runs {
		if r.main && (!runs[best].main || r.n > runs[best].n) {
			best = i
		}
	}
	return best
}

// tube is a round that lies flat: half of it shows, the front half if one of its runs lies in front, or
// else half of its longest run and of what lies across from it.
func (a *assembly) tube(m *schematic.Made, p *panel) {
	start, end := ends(p)
	sr, er := a.startRuns(m), a.endRuns(m)
	if p.view > 0 && !a.behindFirst(m, p, sr) {
		sr = nil
	}
	if p.face != back && (a.inFront(sr) >= 0 || a.inFront(er) >= 0) {
		p.face = front
	}
	if len(m.Piece.Onto) > 0 && p.view == 0 {
		for i := range p.loop {
			if levelAt(p, i, start) {
				p.loop[i].keys = append(p.loop[i].keys, ontoKey(m))
			}
		}
	}
	q := a.add(p, m.Make)
	if len(sr) == 0 && len(er) == 0 {
		if p.face == either {
			a.wholeEnd(m, p, end)
		}
		return
	}
	split := func(from half) *panel {
		v := *p
		v.loop = append([]side(nil), p.loop...)
		a.splitEnd(m, &v, start, sr, from)
		a.splitEnd(m, &v, end, er, from)
		return a.withoutCrotch(m, &v, end)
	}
	q.flat = split(aroundMiddle)
	halves := []half{fromMiddle, toMiddle}
	if takenTwice(sr) { // such as a finger between two others
		halves = []half{aroundMiddle}
	}
	for _, from := range halves {
		q.variants = append(q.variants, split(from))
		if p.face == front {
			break
		}
	}
	q.panel = q.variants[0]
}

// takenTwice reports whether a round begins with two stretches of one other, front and back, and with stitches added between them.
func takenTwice(runs []run) bool {
	n := 0
	for _, r := range runs {
		if r.main {
			n++
		}
	}
	return n == 2 && len(runs) == 4 && !runs[1].main && !runs[3].main && runs[0].of == runs[2].of
}

// crotchOf begins the key of the side at which two legs meet.
const crotchOf = "crotch of "

// withoutCrotch is the half of a tube, such as a leg, without the stitches that it leaves at its end where what goes on takes nothing but
// the two: they meet those of its twin, and lie between them.
func (a *assembly) withoutCrotch(m *schematic.Made, p *panel, end float64) *panel {
	for _, r := range a.endRuns(m) {
		taker := a.made(r.of)
		if m.Make < 2 || !r.main || taker == nil || slices.ContainsFunc(heldFrom(taker), func(f schematic.HeldPart) bool { return f.Piece != m.Name }) {
			continue
		}
		whole, wholeHi := box(p.loop)
		lo, hi := wholeHi.X, whole.X
		for i, s := range p.loop {
			if z := p.loop[(i+1)%len(p.loop)].a; levelAt(p, i, end) && s.has(keysOf([]side{{keys: r.keys}})) {
				lo, hi = min(lo, s.a.X, z.X), max(hi, s.a.X, z.X)
			}
		}
		var q *panel
		switch {
		case lo > whole.X+1:
			q = p.cut(func(q pt) float64 { return q.X - lo }, crotchOf+m.Name)
		case hi < wholeHi.X-1:
			q = p.cut(func(q pt) float64 { return hi - q.X }, crotchOf+m.Name)
		}
		if q != nil {
			p = q
		}
	}
	return p
}

// wholeEnd bonds all of the end of a tube to what begins from it.
func (a *assembly) wholeEnd(m *schematic.Made, p *panel, end float64) {
	taken := slices.ContainsFunc(a.g.Pieces, func(o *schematic.Made) bool {
		return slices.ContainsFunc(heldFrom(o), func(f schematic.HeldPart) bool { return f.Piece == m.Name && f.Part == "" })
	})
	if !taken || p.view != len(m.Views)-1 {
		return
	}
	for i := range p.loop {
		if levelAt(p, i, end) {
			p.loop[i].keys = append(p.loop[i].keys, heldKey(m.Name, ""))
		}
	}
}

// half is which half of a tube shows, by the middle of its longest run.
type half int

const (
	fromMiddle half = iota
	toMiddle
	aroundMiddle
)

// before is what share of the round shows before that middle.
func (h half) before() float64 { return [...]float64{0, 0.5, 0.25}[h] }

// splitEnd cuts the level end of a flat tube at y into its runs.
func (a *assembly) splitEnd(m *schematic.Made, p *panel, y float64, runs []run, shows half) {
	if len(runs) == 0 {
		return
	}
	total := 0.0
	for _, r := range runs {
		total += float64(r.n)
	}
	var from float64
	if i := a.inFace(runs, p.face); i >= 0 {
		from = middleOf(runs, i) - total/4
	} else {
		from = middleOf(runs, longest(runs)) - total*shows.before()
	}
	p.divideHalf(y, runs, from)
}

// divideHalf gives the level end of a flat tube at y the bonds of half of its runs, from a stitch on.
func (p *panel) divideHalf(y float64, runs []run, from float64) {
	total := 0.0
	for _, r := range runs {
		total += float64(r.n)
	}
	parts := laid(runs, from, from+total/2)
	if !downwards(p.made) {
		slices.Reverse(parts)
	}
	p.divideEnd(y, parts)
}

// divideEnd gives the level end of a panel at y the bonds of the runs on it, from the left.
func (p *panel) divideEnd(y float64, parts []run2) {
	total := 0.0
	for _, r := range parts {
		total += r.n
	}
	var out []side
	n := len(p.loop)
	first := slices.IndexFunc(p.loop, func(s side) bool { return absf(s.a.Y-y) > close })
	for k := 0; k < n; k++ {
		s := p.loop[(first+k)%n]
		if !levelAt(p, (first+k)%n, y) {
			out = append(out, s)
			continue
		}
		for k+1 < n && levelAt(p, (first+k+1)%n, y) { // what it was cut into before
			k++
		}
		z := p.loop[(first+k+1)%n].a
		list := slices.Clone(parts)
		if z.X < s.a.X {
			slices.Reverse(list)
		}
		at := 0.0
		for _, r := range list {
			c := s
			c.a, c.keys, c.part, c.blind = lerp(s.a, z, at/total), r.keys, partOf(parts, r), s.blind || r.flow
			out = append(out, c)
			at += r.n
		}
	}
	p.loop = out
}

// partOf is which of several runs that are taken from like parts r is, from 1; 0 if it is the only one.
func partOf(parts []run2, r run2) int {
	n, of := 0, 0
	var seen []*run
	for _, o := range parts {
		if !r.main || !o.main || slices.Contains(seen, o.run) || !slices.Equal(o.keys, r.keys) {
			continue
		}
		seen = append(seen, o.run)
		if n++; o.run == r.run {
			of = n
		}
	}
	if n < 2 {
		return 0
	}
	return of
}

// share cuts a row that several pieces have a share of, such as that of a round yoke, into these shares: each
// is as wide, at its base and at its neck, as its share of the stitches. Of a flat one the first and the last have an upright edge.
func (a *assembly) share(m *schematic.Made, p *panel) {
	start, end := ends(p)
	base, neck, runs := start, end, a.startRuns(m)
	if !sharedOut(runs) {
		base, neck, runs = end, start, a.endRuns(m)
	}
	ribs, top := p.neckRibs(neck)
	allRibs := absf(top-base) < close // such as a roll neck
	if allRibs {
		ribs, top = 0, neck
	}
	wBase, wTop := p.widthAt(base), p.widthAt(top-0.001*(neck-base))
	total := 0
	for _, r := range runs {
		total += r.n
	}
	n := len(runs)
	for i, r := range runs {
		s := float64(r.n) / float64(total)
		if !m.Round { // all of its width shows
			s /= 2
		}
		b, t := wBase*s, wTop*s // half of its width
		l, rt := (i+n-1)%n, i   // lines are numbered by the run before them
		if !downwards(m) {
			l, rt = rt, l
		}
		q := &panel{made: m, view: p.view, name: r.name, face: a.facing(r.name)}
		q.loop = []side{
			{a: pt{X: -b, Y: base}, name: "base", keys: r.keys, curve: true},
			{a: pt{X: b, Y: base}, name: shareEdge, keys: []string{fmt.Sprint("share ", rt, " of ", m.Name)}, blind: true},
			{a: pt{X: t, Y: top}, name: "neck", keys: []string{bends + "neck of " + m.Name}, curve: true},
			{a: pt{X: -t, Y: top}, name: shareEdge, keys: []string{fmt.Sprint("share ", l, " of ", m.Name)}, blind: true},
		}
		if q.face == front && !m.Round {
			q.openAt((i == 0) == downwards(m), p)
		}
		if allRibs {
			h := p.ribs[0]
			h.Poly = q.points()
			q.ribs = []schematic.Hatch{h}
		}
		a.add(q, m.Make).share = true
	}
	if ribs > 0 {
		s := &strip{made: m, view: p.view, name: "neckband", key: bends + "neck of " + m.Name, deep: ribs, ribs: true, curve: true}
		a.bandEdges(s, p, neck)
		a.strips = append(a.strips, s)
	}
}

// bandEdges gives the ribs at the neck of a round the bonds of their outer edge, and of their ends those of the fronts of a flat one.
func (a *assembly) bandEdges(s *strip, p *panel, neck float64) {
	s.ends = map[string][]string{}
	for i := range s.made.Edges {
		e := &s.made.Edges[i]
		switch lo, hi := bounds([][]pt{e.Path}); {
		case absf(lo.Y-neck) < close && absf(hi.Y-neck) < close:
			s.outer = append(s.outer, a.keys[idOf(s.made, e)]...)
		case s.made.Round || absf(lo.Y-neck) > close && absf(hi.Y-neck) > close:
		case lo.X+hi.X < 2*p.middle(): // the left front
			s.ends["left"] = append(s.ends["left"], a.keys[idOf(s.made, e)]...)
		default:
			s.ends["right"] = append(s.ends["right"], a.keys[idOf(s.made, e)]...)
		}
	}
}

// openAt gives a share its upright edge at the left or the right, with the bonds that this has in the whole.
func (q *panel) openAt(left bool, whole *panel) {
	lower, upper, side := 1, 2, 1
	if left {
		lower, upper, side = 0, 3, 3
	}
	by := q.loop[lower].a.X - q.loop[upper].a.X
	q.loop[2].a.X += by
	q.loop[3].a.X += by
	s := &q.loop[side]
	s.keys, s.blind = nil, false
	lo, hi := box(whole.loop)
	for i, w := range whole.loop {
		z := whole.loop[(i+1)%len(whole.loop)].a
		if absf(w.a.Y-z.Y) > close && (w.a.X+z.X < lo.X+hi.X) == left {
			s.name = w.name
			s.keys = append(s.keys, w.keys...)
		}
	}
	slices.Sort(s.keys)
	s.keys = slices.Compact(s.keys)
}

// shareEdge is the name of the sides at which the shares of a round meet.
const shareEdge = "share"

// neckRibs is how deep the ribs at the neck of a round are, which are a strip of their own, and where they end.
func (p *panel) neckRibs(neck float64) (deep, top float64) {
	top = neck
	atNeck := func(q pt) bool { return absf(q.Y-neck) < close }
	for _, r := range p.ribs {
		if !slices.ContainsFunc(r.Poly, atNeck) {
			continue
		}
		for _, z := range r.Poly {
			if d := absf(z.Y - neck); d > deep {
				deep, top = d, z.Y
			}
		}
	}
	return deep, top
}

// widthAt is how wide a panel is at a height, by its sides that are not level.
func (p *panel) widthAt(y float64) float64 {
	lo, hi := 0.0, 0.0
	for i, s := range p.loop {
		z := p.loop[(i+1)%len(p.loop)].a
		d := z.Y - s.a.Y
		if absf(d) < close {
			continue
		}
		if t := (y - s.a.Y) / d; t >= 0 && t <= 1 {
			x := lerp(s.a, z, t).X
			lo, hi = min(lo, x), max(hi, x)
		}
	}
	return hi - lo
}
