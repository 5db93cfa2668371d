package chart

import "math"

// lay places everything: some sweeps up and down, then row by row for good.
func (p *plan) lay() {
	if r := p.work.edgeAt(); r > 0 {
		p.below = turnedPart(p.work, r, p.left)
		q := newPlan(p.below.along(p.work, r), p.left)
		q.below, q.slot, q.off = p.below, p.slot, r-1
		*p = *q
		p.below.fix(p)
	}
	switch p.form {
	case polygon:
		p.layMotif()
		return
	case oval:
		p.layTrack()
		return
	}
	p.begin()
	for _, l := range p.lines[1:] { // every row over the one below, to begin with
		p.up(l, 0)
		p.guess(l.n)
	}
	p.relax()
	if p.form == circle && p.closeUp() {
		for r := range p.lines {
			p.settle(r)
		}
	}
	p.spiral()
	if p.form == flat {
		p.ripple()
	}
}

// relax moves the stitches of every row towards their places, and widens rows, until none grows.
func (p *plan) relax() {
	for range rounds {
		for range sweeps {
			p.sweep()
		}
		wider := false
		for r := range p.lines {
			wider = p.settle(r) || wider
		}
		if !wider {
			return
		}
	}
}

// spiral lets rounds that are not joined rise into one another: at its end each stands further out, by as much as the lowest of
// them is high, so that what is worked into it stands on it all around.
func (p *plan) spiral() {
	if p.form != circle {
		return
	}
	pitch := math.Inf(1)
	for r, l := range p.lines {
		if l.spirals() {
			pitch = min(pitch, l.top-p.floor(r))
		}
	}
	for _, l := range p.lines {
		if !l.spirals() {
			continue
		}
		for i, n := range l.nodes {
			out := pitch * float64(i) / float64(len(l.nodes))
			n.v, n.fv = n.v+out, n.fv+out
		}
	}
}

func (l *line) spirals() bool { return l.row.Spiral && !l.row.Base }

// floor is the level on which a round stands.
func (p *plan) floor(r int) float64 {
	if r == 0 {
		return p.ringOf()
	}
	return p.lines[r-1].top
}

// sweep goes up over all rows and down again.
func (p *plan) sweep() {
	p.guess(0)
	for r := 1; r < len(p.lines); r++ {
		p.up(p.lines[r], pull)
		p.guess(r)
	}
	for r := len(p.lines) - 2; r >= 0; r-- {
		p.down(p.lines[r])
	}
}

// begin sets every row out by its gaps alone.
func (p *plan) begin() {
	for r, l := range p.lines {
		if !l.fixed {
			p.guess(r)
			p.even(l)
		}
	}
}

// even sets a row out by its gaps, a round all the way around.
func (p *plan) even(l *line) {
	x, all := 0.0, 0.0
	for i := range l.nodes {
		all += p.gap(l, i)
	}
	for i, n := range l.nodes {
		if i > 0 {
			x += p.gap(l, i)
		}
		n.q = x
		if p.form != flat {
			n.q = x / max(all, 1e-9) * around
		}
	}
	p.open(l)
}

// gap is the least distance, mm, from the node before to the i-th; for the first
// one of a round that from the last.
func (p *plan) gap(l *line, i int) float64 {
	n := l.nodes[i]
	if i > 0 {
		g := l.nodes[i-1].half + n.half + n.extra
		if n.picot() && l.nodes[i-1].picot() {
			g = max(g, 2.7)
		}
		return g
	}
	if p.form == flat || len(l.nodes) < 2 {
		return n.half * 2
	}
	return l.nodes[len(l.nodes)-1].half + n.half + n.extra
}

// need is the length of the row with all its gaps, and the room for its number.
func (p *plan) need(l *line) float64 {
	sum := 0.0
	if p.form != flat && !l.row.Base { // its number
		sum = p.slot
	}
	for i := range l.nodes {
		sum += p.gap(l, i)
	}
	return sum
}
