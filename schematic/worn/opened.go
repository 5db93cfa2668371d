package worn

import (
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/units"
)

// opened makes one panel of a round that is divided, and joined into a round again above what was left, such as a balaclava at the face, with
// the openings that show. False if the piece is none.
func (a *assembly) opened(m *schematic.Made) bool {
	d, j := dividedAndJoined(m)
	if d == nil {
		if !dividedAgain(m) {
			return false
		}
		a.hollow = append(a.hollow, hollow{made: m, why: "its rounds are divided more than once"})
		return true
	}
	if p := a.heights(m, a.runsOf(m, d), a.runsOver(m, j)); p != nil {
		a.tube(m, p)
	} else {
		a.hollow = append(a.hollow, hollow{made: m, why: "its parts do not lie flat between its rounds"})
	}
	return true
}

// heights are the first round of a piece, which is divided into runs, its parts and the last round, which is joined over them, as one panel; nil if
// they do not lie flat so.
func (a *assembly) heights(m *schematic.Made, runs, over []run) *panel {
	var views []*panel
	for i := range m.Views {
		p := newPanel(m, i, func(e *schematic.Edge) []string { return a.keys[idOf(m, e)] })
		if p == nil {
			return nil
		}
		views = append(views, p)
	}
	n := len(views) - 1
	below, parts, above := views[0], views[1:n], views[n]
	at := a.beforeOpening(runs)
	_, end := ends(below)
	start, _ := ends(above)
	above.divideHalf(start, over, middleOver(over, runs, at)-sum(over)/4)
	if m.Views[1].Half { // halves with what lies below them: the one in front hides the other
		if parts[0].name == runs[at].name {
			below = parts[0]
		}
		heads := above.spans2(start, openPart+below.name)
		l, r := levelSpan(below, start)
		if len(heads) != 1 || absf(l-heads[0][0]) > 1 || absf(r-heads[0][1]) > 1 {
			return nil
		}
		below.snap(start, heads[0])
		return below.withOpenings([]*panel{below, above})
	}
	below.divideHalf(end, runs, middleOver(runs, runs, at)-sum(runs)/4)
	list := []*panel{below, above}
	for _, q := range parts {
		shows, ok := q.between(below, above, end, start)
		if !ok {
			return nil
		}
		list = append(list, shows...)
	}
	return below.withOpenings(list)
}

// middleOver is the middle of the run of a round over run at of another: 0, where a part that goes all round is open, if there is one alone.
func middleOver(over, runs []run, at int) float64 {
	k := slices.IndexFunc(over, func(r run) bool { return r.main == runs[at].main && (!r.main || r.name == runs[at].name) })
	if k < 0 || len(runs) < 2 {
		return 0
	}
	return middleOf(over, k)
}

// dividedAndJoined are the parts into which a round in three heights is divided, and the section by which they are joined again, or nil.
func dividedAndJoined(m *schematic.Made) ([]*schematic.Part, schematic.Section) {
	n := len(m.Views)
	if !m.Round || n < 3 || !m.Views[0].Half || !m.Views[n-1].Half || slices.ContainsFunc(m.Views, func(v schematic.View) bool { return v.Panel || v.Disc }) ||
		(n > 3 || m.Views[0].Name == "") && slices.ContainsFunc(m.Views[1:n-1], func(v schematic.View) bool { return v.Half }) {
		return nil, nil
	}
	for i, s := range m.Piece.Sections[:len(m.Piece.Sections)-1] {
		parts, j := s.Traits().Parts, m.Piece.Sections[i+1]
		if parts != nil && j.Traits().Closes && !slices.ContainsFunc(parts, func(q *schematic.Part) bool { return q.Hold }) {
			return parts, j
		}
	}
	return nil, nil
}

// dividedAgain reports whether a round is divided, joined into a round again, and divided once more into parts that are drawn by themselves.
func dividedAgain(m *schematic.Made) bool {
	if !m.Round || slices.ContainsFunc(m.Views, func(v schematic.View) bool { return v.Panel || v.Disc }) {
		return false
	}
	joined, again := false, false
	for _, s := range m.Piece.Sections {
		t := s.Traits()
		joined, again = joined || t.Closes, again || joined && t.Parts != nil
	}
	n := len(m.Views)
	return again && n > 3 && !m.Views[n-1].Half
}

// runsOf are the parts of a division and what is left between them; what goes on has its own bond.
func (a *assembly) runsOf(m *schematic.Made, parts []*schematic.Part) []run {
	var out []run
	for _, q := range parts {
		r := run{name: q.Name, n: q.Stitches.Int(a.g.Index, 0), main: !q.Leave}
		if r.main {
			r.keys = []string{openPart + q.Name}
		} else {
			r.keys = a.keysAt(m, 0, q.Edge, q.Name)
		}
		if r.n > 0 {
			out = append(out, r)
		}
	}
	return out
}

// runsOver are the parts that are joined and what is added between them, called as what was left there.
func (a *assembly) runsOver(m *schematic.Made, j schematic.Section) []run {
	var out []run
	joins := j.Traits().Joins
	for _, step := range m.Steps {
		if step.Section != j || len(step.Taken) != len(joins) {
			continue
		}
		for i, of := range joins {
			r := run{name: of.Part, n: step.Taken[i], main: of.Part != "", keys: []string{openPart + of.Part}}
			if !r.main {
				r.keys = a.keysAt(m, len(m.Views)-1, of.Edge, "")
			}
			if r.n > 0 {
				out = append(out, r)
			}
		}
	}
	return out
}

// openPart begins the key of a part between two rounds.
const openPart = "part "

// keysAt are the bonds of an edge of a view by its name, or that of its part.
func (a *assembly) keysAt(m *schematic.Made, view int, edge, part string) []string {
	for i := range m.Edges {
		if e := &m.Edges[i]; e.View == view && e.Rows == 0 && (edge != "" && e.Name == edge || part != "" && slices.Contains(e.Parts, part)) {
			return a.keys[idOf(m, e)]
		}
	}
	return nil
}

func sum(runs []run) float64 {
	n := 0
	for _, r := range runs {
		n += r.n
	}
	return float64(n)
}

// beforeOpening is the run whose middle lies in the middle of the front: what faces front or lies across from what faces back, the one opening that
// there is, or else the longest part.
func (a *assembly) beforeOpening(runs []run) int {
	if i := a.inFront(runs); i >= 0 {
		return i
	}
	var open []int
	at := longest(runs)
	for i, r := range runs {
		switch {
		case !r.main:
			open = append(open, i)
		case a.facing(r.name) != back && a.facing(runs[at].name) == back:
			at = i
		}
	}
	if len(open) == 1 {
		return open[0]
	}
	return at
}

// between are what shows of a part between two rounds, moved to its places between them; not ok if it does not lie flat there.
func (p *panel) between(below, above *panel, end, start float64) (list []*panel, ok bool) {
	feet, heads := below.spans2(end, openPart+p.name), above.spans2(start, openPart+p.name)
	lo, hi := levelSpan(p, end)
	if len(feet) != len(heads) || lo == hi {
		return nil, false
	}
	bl, bh := box(below.loop)
	for i, f := range feet {
		from := lo
		switch wide := f[1] - f[0]; {
		case wide > hi-lo-1:
		case absf(f[0]-bl.X) < close && absf(f[1]-bh.X) < close: // it goes on behind at both sides
			from = (lo + hi - wide) / 2
		case absf(f[0]-bl.X) < close: // behind, at the left
			from = hi - wide
		}
		q := p.within(from, from+f[1]-f[0])
		if q == nil {
			return nil, false
		}
		q = q.movedBy(f[0] - from)
		if l, r := levelSpan(q, start); absf(l-heads[i][0]) > 1 || absf(r-heads[i][1]) > 1 {
			return nil, false
		}
		q.snap(end, f)
		q.snap(start, heads[i])
		list = append(list, q)
	}
	return list, true
}

// within is what of a panel lies between two uprights.
func (p *panel) within(l, r float64) *panel {
	lo, hi := box(p.loop)
	key := "fold of " + p.made.Name
	if r < hi.X-1 {
		p = p.half(r, true, key)
	}
	if p != nil && l > lo.X+1 {
		p = p.half(l, false, key)
	}
	return p
}

// spans2 are from where to where the level edge at a height has a key, from the left.
func (p *panel) spans2(y float64, key string) [][2]float64 {
	var out [][2]float64
	for i, s := range p.loop {
		if z := p.loop[(i+1)%len(p.loop)].a; levelAt(p, i, y) && slices.Contains(s.keys, key) && absf(s.a.X-z.X) > close {
			out = append(out, [2]float64{min(s.a.X, z.X), max(s.a.X, z.X)})
		}
	}
	slices.SortFunc(out, func(x, y [2]float64) int { return int(x[0] - y[0]) })
	return out
}

// movedBy is the panel so far to the right.
func (p *panel) movedBy(x float64) *panel {
	q := *p
	by := func(a pt) pt { return pt{X: a.X + x, Y: a.Y} }
	q.loop, q.lines, q.ribs, q.marks = slices.Clone(p.loop), slices.Clone(p.lines), slices.Clone(p.ribs), slices.Clone(p.marks)
	for i := range q.loop {
		q.loop[i].a = by(q.loop[i].a)
	}
	for i := range q.lines {
		q.lines[i].A, q.lines[i].B = by(q.lines[i].A), by(q.lines[i].B)
	}
	for i, r := range q.ribs {
		q.ribs[i].Poly = slices.Clone(r.Poly)
		for k := range r.Poly {
			q.ribs[i].Poly[k] = by(r.Poly[k])
		}
	}
	for i := range q.marks {
		q.marks[i].At = by(q.marks[i].At)
	}
	return &q
}

// snap lets the level edge at a height end exactly there.
func (p *panel) snap(y float64, to [2]float64) {
	for i := range p.loop {
		for _, x := range to {
			if a := &p.loop[i].a; absf(a.Y-y) < close && absf(a.X-x) < 1 {
				*a = pt{X: x, Y: y}
			}
		}
	}
}

// withOpenings is one panel of several that lie edge on edge; the openings between them are ways that its outline takes, each
// there and back along one of the edges that they have in common.
func (p *panel) withOpenings(list []*panel) *panel {
	q := *p
	q.loop, q.lines, q.ribs, q.marks, q.slits, q.heights = nil, nil, nil, nil, nil, true
	there := map[stretch]bool{}
	var all, seams []arc
	for _, o := range list {
		q.lines, q.ribs, q.marks, q.slits = append(q.lines, o.lines...), append(q.ribs, o.ribs...), append(q.marks, o.marks...), append(q.slits, o.slits...)
		for i, s := range o.loop {
			if e := (arc{s, o.loop[(i+1)%len(o.loop)].a}); nodeOf(e.a) != nodeOf(e.b) {
				there[stretchOf(e.a, e.b)] = true
				all = append(all, e)
			}
		}
	}
	free := outer{}
	for _, e := range all {
		if k := stretchOf(e.a, e.b); !there[stretch{k.b, k.a}] {
			free[k.a] = append(free[k.a], e)
			continue
		}
		seams = append(seams, e)
		if absf(e.a.Y-e.b.Y) > close && e.a.Y < e.b.Y { // an opening of no width
			q.lines = append(q.lines, schematic.Line{Kind: schematic.LineEdge, A: e.a, B: e.b})
			q.openings = append(q.openings, []pt{e.a, e.b})
		}
	}
	var holes [][]side
	for _, e := range all {
		switch loop, closed := free.loop(nodeOf(e.a), 1); {
		case len(loop) == 0:
		case !closed:
			return nil
		case area(points(loop)) > 0 && q.loop == nil:
			q.loop = loop
		default:
			holes = append(holes, loop)
		}
	}
	for len(holes) > 0 {
		k := slices.IndexFunc(holes, func(hole []side) bool { return q.bridged(hole, seams) })
		if k < 0 {
			return nil
		}
		q.openings = append(q.openings, points(holes[k]))
		holes = slices.Delete(holes, k, k+1)
	}
	return &q
}

// bridged takes an opening into the outline of a panel along one of the edges that lead to it; false if none does.
func (p *panel) bridged(hole []side, bridges []arc) bool {
	at := func(loop []side, q pt) int {
		return slices.IndexFunc(loop, func(s side) bool { return nodeOf(s.a) == nodeOf(q) })
	}
	for _, e := range bridges {
		i, k := at(p.loop, e.a), at(hole, e.b)
		if i < 0 || k < 0 {
			continue
		}
		there, back := side{a: e.a, blind: true}, side{a: e.b, blind: true}
		p.loop = slices.Concat(p.loop[:i:i], []side{there}, hole[k:], hole[:k], []side{back}, p.loop[i:])
		return true
	}
	return false
}

// openings measures the openings of a round: how wide they are below, and how high.
func (tk *taker) openings(p *panel) {
	for _, hole := range p.openings {
		lo, hi := bounds([][]pt{hole})
		lo, hi = p.where.at(lo), p.where.at(hi)
		tk.take(openingName(p.made)+" width", lo, pt{X: hi.X, Y: lo.Y}, schematic.Horizontal, false, units.Num{})
		tk.take(openingName(p.made)+" height", pt{X: hi.X, Y: lo.Y}, hi, schematic.Vertical, false, units.Num{})
	}
}

// openingName is what an opening is called: by what is left there, whichever side it is at.
func openingName(m *schematic.Made) string {
	d, _ := dividedAndJoined(m)
	var names []string
	for _, q := range d {
		if q.Leave {
			words := slices.DeleteFunc(strings.Fields(strings.ToLower(q.Name)), func(w string) bool { return w == "left" || w == "right" || w == "opening" })
			names = append(names, strings.Join(append(words, "opening"), " "))
		}
	}
	if slices.Sort(names); len(slices.Compact(names)) == 1 {
		return names[0]
	}
	return "opening"
}

// whole is a measurement of the first round of a panel in heights, by the name of its edge; of all of its length if it was that of the round.
func (p *panel) whole(m schematic.Measure) schematic.Measure {
	if !p.heights {
		return m
	}
	m.Name = p.edgeOf(m)
	lo, hi := bounds(p.made.Views[p.view].Outline)
	if from, to := byHeight(m.A, m.B); m.Axis == schematic.Vertical && absf(from.Y-lo.Y) < close && absf(to.Y-hi.Y) < close {
		l, h := box(p.loop)
		m.A, m.B, m.Length = pt{X: m.A.X, Y: l.Y}, pt{X: m.A.X, Y: h.Y}, units.Num{}
		if p.made.Kind == schematic.KindHat {
			m.Name = "hat depth"
		}
	}
	return m
}
