package chart

import (
	"math"
	"slices"
)

// up wishes each stitch over the mean of its feet, and with the share pull of the wish
// under those that stand on it.
func (p *plan) up(l *line, pull float64) {
	p.countKids(l)
	t, w := zeros(&p.solve.t, len(l.nodes)), zeros(&p.solve.w, len(l.nodes))
	any := false
	for i, n := range l.nodes {
		if len(n.feet) == 0 {
			continue
		}
		any = true
		sum, first := 0.0, n.feet[0].q
		for _, f := range n.feet {
			sum += p.near(f.q, first)
		}
		t[i], w[i] = sum/float64(len(n.feet)), p.weight(n)
		if in := p.innermost(n); in != nil {
			t[i] += min(max(inward*(in.q-t[i]), -inwardMost), inwardMost)
		}
		if n.kids > 0 && pull > 0 {
			t[i] = (1-pull)*t[i] + pull*p.near(n.kidSum/float64(n.kids), t[i])
		}
	}
	if !any {
		return
	}
	p.fit(l, t, w)
}

// weight is how much a stitch wishes to stand over its foot. Of several in the last
// place of a row that pass over others, such as half a shell at the edge, the outermost
// does, so that the edge goes straight up; an increase at the edge moves it out.
func (p *plan) weight(n *node) float64 {
	if p.form != flat || n.group == nil {
		return 1
	}
	if n.wish == 0 {
		n.wish = p.wish(n)
	}
	return n.wish
}

func (p *plan) wish(n *node) float64 {
	first, last := n.group[0], n.group[len(n.group)-1]
	f := n.feet[0]
	if first.prev.beyond() && f.prev.beyond() && n != first && passes(last, f, (*node).after) ||
		last.next.beyond() && f.next.beyond() && n != last && passes(first, f, (*node).before) {
		return 0.05
	}
	return 1
}

// inward is how far a decrease at the edge stands from the middle of its feet towards the
// inner one, so that the edge stays beside the fabric.
const (
	inward     = 0.6
	inwardMost = 0.8 // mm
)

// innermost is the inner foot of a decrease at the edge of a row; nil for other stitches.
func (p *plan) innermost(n *node) *node {
	if p.form != flat || len(n.feet) < 2 {
		return nil
	}
	left, right := n.prev.beyond(), n.next.beyond()
	if left == right {
		return nil
	}
	in := n.feet[0]
	for _, f := range n.feet {
		if (f.q > in.q) == left {
			in = f
		}
	}
	return in
}

// passes reports whether the stitches beside a group over f pass over the places beside
// it: the nearest one is not worked into the nearest place.
func passes(n, f *node, step func(*node) *node) bool {
	for n = step(n); n != nil && len(n.feet) == 0; n = step(n) {
	}
	next := step(f)
	if n == nil || next == nil {
		return true
	}
	return !slices.Contains(n.feet, next)
}

// beyond reports whether n lies beyond the stitches of its row: it's none, or a chain at
// the beginning that does not count.
func (n *node) beyond() bool { return n == nil || n.st.Turn && n.st.Kind == nil }

// countKids adds up where the stitches stand that are worked into each of a row.
func (p *plan) countKids(l *line) {
	for _, n := range l.nodes {
		n.kids, n.kidSum = 0, 0
	}
	if l.n+1 >= len(p.lines) || p.form == polygon {
		return
	}
	for _, n := range p.lines[l.n+1].nodes {
		for _, f := range n.feet {
			if p.weight(n) == 1 {
				f.kids++
				f.kidSum += p.near(n.q, f.q)
			}
		}
	}
}

// down wishes each place under the stitches that stand on it.
func (p *plan) down(l *line) {
	p.countKids(l)
	t, w := zeros(&p.solve.t, len(l.nodes)), zeros(&p.solve.w, len(l.nodes))
	for i, n := range l.nodes {
		if n.kids == 0 && l.row.Base && p.form == flat { // chains that are passed over lie evenly
			continue
		}
		if n.kids == 0 {
			t[i], w[i] = n.q, 0.05
			continue
		}
		t[i], w[i] = n.kidSum/float64(n.kids), 1
	}
	p.fit(l, t, w)
}

// fit sets a row as near to its wishes as the gaps allow. A place without a wish
// stands between its neighbours.
func (p *plan) fit(l *line, t, w []float64) {
	switch {
	case l.fixed:
	case p.isCircle(l):
		p.fitRound(l, t, w)
	case l.row.Base && !l.row.Held && l.chains():
		p.fitChains(l, t, w)
	default:
		p.fitRow(l, t, w)
	}
}

// chains reports whether a row is chains alone.
func (l *line) chains() bool {
	return !slices.ContainsFunc(l.nodes, func(n *node) bool { return !n.chain() })
}

// fitChains lays a foundation of chains evenly: the straight line through the wishes.
func (p *plan) fitChains(l *line, t, w []float64) {
	var n, si, st, sii, sit float64
	for i := range t {
		k := float64(i)
		n, si, st, sii, sit = n+w[i], si+w[i]*k, st+w[i]*t[i], sii+w[i]*k*k, sit+w[i]*k*t[i]
	}
	if n == 0 {
		return
	}
	least := l.nodes[0].half * 2
	each := least
	if d := n*sii - si*si; d > 1e-9 {
		each = min(max((n*sit-si*st)/d, least), mostChain*least)
	}
	from := (st - each*si) / n
	for i, m := range l.nodes {
		m.q = from + each*float64(i)
	}
}

// mostChain is how far the chains of a foundation lie apart at most, of their least room.
const mostChain = 2.2

// evenly is how much stitches of a row keep apart evenly, beside the wish to stand over
// their feet.
const evenly = 0.5

// fitRow sets a row in rows: near to its wishes, and evenly.
func (p *plan) fitRow(l *line, t, w []float64) {
	k := len(l.nodes)
	gap, rest := zeros(&p.solve.gap, k), zeros(&p.solve.rest, k+1)
	least, first, last := 0.0, -1, -1
	for i := range l.nodes {
		gap[i] = p.gap(l, i)
		if w[i] == 0 {
			continue
		}
		if first < 0 {
			first = i
		}
		last = i
	}
	for i := first + 1; i <= last; i++ {
		least += gap[i]
	}
	if last > first {
		wide := min(max((t[last]-t[first])/least, 1), 3)
		for i := 1; i < k; i++ {
			a, b := l.nodes[i-1], l.nodes[i]
			switch {
			case a.standsBeside() || b.standsBeside():
				rest[i] = gap[i]
			case sameGroup(a, b):
				rest[i] = gap[i] * min(wide, fanWide)
			default:
				rest[i] = gap[i] * wide
			}
		}
		p.solve.springs(t, t, w, rest, evenly, nil)
		for i := range w {
			w[i] = max(w[i], 0.3)
		}
	} else {
		fill(t, w, gap)
	}
	x := zeros(&p.solve.x, k)
	p.solve.spread(x, t, w, gap, math.Inf(-1), math.Inf(1))
	for i, n := range l.nodes {
		n.q = x[i]
	}
}

// standsBeside reports whether n is a chain at the beginning of its row that stands on nothing:
// it keeps near to the stitch beside it.
func (n *node) standsBeside() bool { return n.st.Turn && len(n.feet) == 0 }

// nearStart keeps a chain that stands on nothing near to the stitch with which its round begins; a round from the wrong side runs the
// other way.
func (l *line) nearStart(t, w, gap []float64) {
	switch k := len(t); {
	case l.clockwise() && l.nodes[k-1].standsBeside() && w[k-2] > 0:
		t[k-1], w[k-1] = t[k-2]+gap[k-1], 1
	case !l.clockwise() && w[0] == 0 && w[1] > 0 && l.nodes[0].standsBeside():
		t[0], w[0] = t[1]-gap[1], 1
	}
}

// besides reports whether such a chain is the i-th of a row or the one before it.
func (l *line) besides(i int) bool {
	return l.nodes[i].standsBeside() || i > 0 && l.nodes[i-1].standsBeside()
}

// fitRound sets a round on its circle.
func (p *plan) fitRound(l *line, t, w []float64) {
	k := len(l.nodes)
	p.open(l)
	scale := p.scale(l)
	gap := zeros(&p.solve.gap, k)
	sum := 0.0
	for i := range l.nodes {
		gap[i] = p.gap(l, i) / scale
		sum += gap[i]
	}
	more := min(max(0.995*around/max(sum, 1e-9), 1), share) // stitches of a round share the room that there is,
	if slices.ContainsFunc(l.nodes, (*node).petal) {        // but petals stay over their arches
		more = 1
	}
	for i, n := range l.nodes {
		switch {
		case l.besides(i): // which keeps near
		case i > 0 && len(n.group) >= leastCorner && sameGroup(l.nodes[i-1], n):
			gap[i] *= min(more, fanWide)
		case len(n.group) >= leastCorner || i > 0 && len(l.nodes[i-1].group) >= leastCorner: // between shells their feet decide
			gap[i] *= 1 + (more-1)/3
		default:
			gap[i] *= more
		}
	}
	last := -1 // that has a wish
	for i := range t {
		if w[i] == 0 {
			continue
		}
		if last >= 0 {
			t[i] = p.near(t[i], t[last]+1e-9)
		}
		last = i
	}
	if k > 1 {
		l.nearStart(t, w, gap)
	}
	fillEnds(t, w)
	fill(t, w, gap)
	p.shareRound(l, t, w, gap)
	x := zeros(&p.solve.x, k)
	p.solve.spread(x, t, w, gap, math.Inf(-1), math.Inf(1))
	room := around - gap[0]
	if x[k-1]-x[0] > room {
		mid := (x[0] + x[k-1]) / 2
		p.solve.spread(x, t, w, gap, mid-room/2, mid+room/2)
	}
	for i, n := range l.nodes {
		n.q = x[i]
	}
	p.open(l)
}

// shareRound shares the room of a round evenly among its stitches, and between its shells, near to where they wish to stand. Petals stay over
// their arches, and what is worked one on one straight over its places.
func (p *plan) shareRound(l *line, t, w, gap []float64) {
	shares := func(n *node) bool { return n.group != nil || n.arch() || len(n.feet) > 1 }
	if l.flower || !slices.ContainsFunc(l.nodes, shares) {
		return
	}
	kept, free := 0.0, 0.0
	keeps := func(i int) bool {
		return l.besides(i) || i > 0 && len(l.nodes[i].group) >= leastCorner && sameGroup(l.nodes[i-1], l.nodes[i])
	}
	for i := range gap {
		if keeps(i) {
			kept += gap[i]
		} else {
			free += gap[i]
		}
	}
	wide := max((around-kept)/max(free, 1e-9), 1)
	rest := zeros(&p.solve.rest, len(gap)+1)
	for i := range gap {
		if rest[i] = gap[i]; !keeps(i) {
			rest[i] *= wide
		}
	}
	p.solve.springs(t, t, w, rest, roundly, nil)
}

// roundly is how much the stitches of a round keep apart evenly, beside the wish to stand over their feet.
const roundly = 0.7

// fillEnds gives the places without a wish at the end of a round and at its beginning one between the last and the first that have
// one, around the circle: an arch that leads back to where its round began lies over the middle of what it passes.
func fillEnds(t, w []float64) {
	first := slices.IndexFunc(w, func(v float64) bool { return v != 0 })
	if first < 0 {
		return
	}
	last := len(w) - 1
	for w[last] == 0 {
		last--
	}
	step := (t[first] + around - t[last]) / float64(first+len(w)-last)
	for i := range w {
		switch {
		case i < first:
			t[i], w[i] = t[first]-step*float64(first-i), light
		case i > last:
			t[i], w[i] = t[last]+step*float64(i-last), light
		}
	}
}

// light is the weight of a place that has no wish of its own.
const light = 0.02

// fill gives the places without a wish one between their neighbours', and little
// weight.
func fill(t, w, gap []float64) {
	last := -1
	for i := range t {
		if w[i] == 0 {
			continue
		}
		switch {
		case last < 0:
			for k := i - 1; k >= 0; k-- {
				t[k], w[k] = t[k+1]-gap[k+1], light
			}
		case last < i-1:
			for k := last + 1; k < i; k++ {
				t[k], w[k] = t[last]+(t[i]-t[last])*float64(k-last)/float64(i-last), light
			}
		}
		last = i
	}
	if last < 0 {
		return
	}
	for k := last + 1; k < len(t); k++ {
		t[k], w[k] = t[k-1]+gap[k], light
	}
}
