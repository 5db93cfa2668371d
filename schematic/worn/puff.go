package worn

import "flatwright/schematic"

// spread lets the half of a sleeve that is gathered at its top spread alike to both sides of its middle, as what is gathered does: each width of
// it is as it was, its fold and its seam bulge alike. The fold is at the upright through x. A half with any other edge is left as it is.
func (p *panel) spread(x float64) {
	seam, keys := p.besideFold(x)
	lo, hi := box(p.loop)
	if len(seam) < 3 || absf(seam[0].a.Y-seam[1].a.Y) > close {
		return
	}
	wide := hi.X - lo.X
	p.axis = x + wide/2
	if hi.X-x < close {
		p.axis = x - wide/2
	}
	at := func(q pt, toFold float64) pt { return pt{X: p.axis + toFold*(q.X-x)/2, Y: q.Y} }
	out := []side{seam[0]}
	out[0].a = at(seam[1].a, -1)
	for _, s := range seam[1:] {
		s.a = at(s.a, 1)
		out = append(out, s)
	}
	for k := len(seam) - 1; k > 1; k-- {
		out = append(out, side{a: at(seam[k].a, -1), fold: true, name: "fold", keys: keys})
	}
	p.loop = out
	p.centreInner()
}

// besideFold are the sides from one end of the fold at the upright through x to the other, and the keys of the fold.
func (p *panel) besideFold(x float64) (seam []side, keys []string) {
	n := len(p.loop)
	onFold := func(i int) bool { return absf(p.loop[i%n].a.X-x) < close }
	first := 0
	for first < n && (!onFold(first) || onFold(first+1)) {
		first++
	}
	if first == n {
		return nil, nil
	}
	seam = []side{p.loop[first]}
	for k := first + 1; !onFold(k); k++ {
		seam = append(seam, p.loop[k%n])
	}
	return seam, p.loop[(first+n-1)%n].keys
}

// centreInner moves ribs and level lines to the middle of what is spread.
func (p *panel) centreInner() {
	for i, r := range p.ribs {
		l, h := bounds([][]pt{r.Poly})
		r.Poly = append([]pt(nil), r.Poly...)
		for k := range r.Poly {
			r.Poly[k].X += p.axis - (l.X+h.X)/2
		}
		p.ribs[i] = r
	}
	var kept []schematic.Line // others are bent
	for _, l := range p.lines {
		if absf(l.A.Y-l.B.Y) < close {
			by := p.axis - (l.A.X+l.B.X)/2
			l.A.X, l.B.X = l.A.X+by, l.B.X+by
			kept = append(kept, l)
		}
	}
	p.lines = kept
}
