package worn

import (
	"math"
	"slices"

	"flatwright/schematic"
	"flatwright/schematic/units"
)

// flaps makes a panel of a round that ends in, or begins from, two stretches that are alike, of two pieces that are each other's like at the other side,
// such as a hat with ear flaps: it lies on its side, so that one of them shows whole. Its crown is a dome on it. False if it is none.
func (a *assembly) flaps(m *schematic.Made, p *panel) bool {
	start, end := ends(p)
	runs, brim := a.endRuns(m), end
	if len(runs) == 0 {
		runs, brim = a.startRuns(m), start
	}
	at := a.betweenFlaps(runs)
	if at < 0 || m.Kind != schematic.KindHat {
		return false
	}
	p.onSide = true
	p.divideHalf(brim, runs, middleOf(runs, at))
	if m.From == schematic.FromCentre {
		p.domed(start)
	}
	a.add(p, m.Make)
	return true
}

// betweenFlaps is the longest of what is left, bound off or added between two flaps, or -1.
func (a *assembly) betweenFlaps(runs []run) int {
	var main []run
	at := -1
	for i, r := range runs {
		if r.main {
			main = append(main, r)
		} else if at < 0 || r.n > runs[at].n {
			at = i
		}
	}
	if len(runs) != 4 || len(main) != 2 || runs[0].main == runs[1].main || main[0].n != main[1].n {
		return -1
	}
	if l, r := main[0], main[1]; l.name != r.name && schematic.OtherSide(l.name) == r.name || l.of == r.of && a.made(l.of) != nil && a.made(l.of).Make == 2 {
		return at
	}
	return -1
}

// flapsOver lays what the back of a bag has beyond a fold over its front.
func (a *assembly) flapsOver() {
	for _, p := range slices.Clone(a.placed) {
		if p.face != back || p.flap == nil || p.made.Kind != schematic.KindBag || a.placed[0].face != front {
			continue
		}
		_, hi := box(p.drawn)
		l, _ := box(p.flap.loop)
		f := &panel{made: p.made, view: p.view, name: "flap", face: front, where: still, over: a.placed[0]}
		mid := p.flap.middle()
		for _, s := range p.flap.loop {
			f.drawn = append(f.drawn, side{a: pt{X: p.mid() + s.a.X - mid, Y: hi.Y - (s.a.Y - l.Y)}, name: s.name})
		}
		slices.Reverse(f.drawn)
		f.loop = f.drawn
		a.placed = append(a.placed, f)
	}
}

// crowned puts the crown of a hat from its centre on its sides; false if it has none.
func (p *panel) crowned() bool {
	if p.made.From != schematic.FromCentre || !slices.ContainsFunc(p.made.Views, func(v schematic.View) bool { return v.Disc }) {
		return false
	}
	start, _ := ends(p)
	p.domed(start)
	p.heights = true
	return true
}

// domed puts half an ellipse on the level edge at which the sides of a hat begin, as high as its crown is deep.
func (p *panel) domed(y float64) {
	i := slices.IndexFunc(p.made.Views, func(v schematic.View) bool { return v.Disc })
	if i < 0 {
		return
	}
	l, h := bounds(p.made.Views[i].Outline)
	deep := (h.Y - l.Y) / 2
	var loop []side
	for k, s := range p.loop {
		loop = append(loop, s)
		if !levelAt(p, k, y) {
			continue
		}
		z := p.loop[(k+1)%len(p.loop)].a
		for n := 1; n < arcSteps; n++ {
			sin, cos := math.Sincos(math.Pi * float64(n) / arcSteps)
			loop = append(loop, side{a: pt{X: (s.a.X+z.X)/2 + (s.a.X-z.X)/2*cos, Y: y + deep*sin}, fold: true})
		}
	}
	p.loop = loop
}

// onSide measures what lies on its side for its flaps: how high it is and how far around, and a flap.
func (tk *taker) onSide(p *panel) {
	lo, hi := box(p.drawn)
	tk.take("height", lo, pt{X: p.mid(), Y: hi.Y}, schematic.Vertical, false, units.Num{})
	l, r := p.level(lo.Y, 0.01)
	tk.take("brim", l, r, schematic.Horizontal, true, units.Num{})
	for _, q := range tk.a.placed {
		if q != p && q.hung && !q.strip {
			l, h := box(q.drawn)
			tk.take("flap length", l, pt{X: l.X, Y: h.Y}, schematic.Vertical, false, units.Num{})
			tk.take("flap width", pt{X: l.X, Y: h.Y}, h, schematic.Horizontal, false, units.Num{})
		}
	}
	tk.seen["length"] = true
}
