package worn

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"flatwright/schematic"
)

// assembly is one garment on its way from loose panels to what is worn.
type assembly struct {
	g       *schematic.Garment
	protos  []*proto
	strips  []*strip
	ends    []sewnOn
	torn    *schematic.Made     // a piece of which the outline does not close
	hollow  []hollow            // pieces that do not lie flat when they are sewn
	keys    map[edgeID][]string // of edges
	placed  []*panel
	turned  bool            // it is seen from behind
	overall bool            // and has no back: the whole is turned over, and measured from in front
	gathers map[string]bool // keys of joins that gather one edge to the other
}

// proto is a panel that is still to be placed, as often as its piece is made.
type proto struct {
	*panel
	left     int  // how many are still to be placed
	folded   bool // it is folded along its middle: a half of it shows
	variants []*panel
	flat     *panel // a tube that lies on what it is worked from
	share    bool   // of a round that is shared out
	unfit    bool   // it does not lie flat on what it is bonded to
}

// strip is a band along edges of other panels.
type strip struct {
	made  *schematic.Made
	name  string
	key   string // of the edges along which it lies
	deep  float64
	view  int
	outer []string            // keys of its outer edge
	ends  map[string][]string // of its ends, at the left and the right front
	ribs  bool
	curve bool
}

// hollow is a piece that is drawn as it is worked, and why.
type hollow struct {
	made     *schematic.Made
	why, fix string
}

// edgeID tells an edge from all others of the garment.
type edgeID struct {
	made string
	view int
	name string
	a, z pt
}

func idOf(m *schematic.Made, e *schematic.Edge) edgeID {
	return edgeID{m.ID, e.View, e.Name, e.Path[0], e.Path[len(e.Path)-1]}
}

func (a *assembly) key(m *schematic.Made, e *schematic.Edge, key string) {
	if len(e.Path) < 2 {
		return
	}
	id := idOf(m, e)
	if !slices.Contains(a.keys[id], key) {
		a.keys[id] = append(a.keys[id], key)
	}
}

// keyAll gives the edges that a reference means a bond.
func (a *assembly) keyAll(ref, key string) {
	if m, edges := a.g.EdgesOf(ref); m != nil {
		for k := range edges {
			a.key(m, &edges[k], key)
		}
	}
}

// bonds gives every edge the keys of the bonds that it takes part in.
func (a *assembly) bonds() {
	for i := range a.g.Pattern.Joins {
		a.join(i)
	}
	for i := range a.g.Pattern.Joins {
		a.closed(i)
	}
	a.underarms()
	for _, m := range a.g.Pieces {
		for _, o := range m.Piece.Onto {
			a.keyAll(o.Edge, ontoKey(m))
			if m.Make > 1 {
				a.keyAll(schematic.OtherSide(o.Edge), ontoKey(m)) // its twin
			}
		}
		for _, from := range heldFrom(m) {
			a.held(from)
			if o := schematic.OtherSide(from.Part); m.Make > 1 && o != from.Part { // its twin
				from.Part = o
				a.held(from)
			}
		}
	}
}

// underarms bonds the edges called so, that no join names, of pieces which are sewn to each other elsewhere, such as along a raglan: one is sewn to the other there too.
func (a *assembly) underarms() {
	for _, j := range a.g.Pattern.Joins {
		if len(j.Sew) == 0 || len(j.Into) == 0 {
			continue
		}
		m, own := a.freeUnderarms(j.Sew[0])
		o, on := a.freeUnderarms(j.Into[0])
		if m == o || len(own) == 0 || len(on) == 0 {
			continue
		}
		for _, e := range own {
			a.key(m, e, underarms)
		}
		for _, e := range on {
			a.key(o, e, underarms)
		}
	}
}

// freeUnderarms are the underarms, that no join names, of the piece of an edge.
func (a *assembly) freeUnderarms(ref string) (*schematic.Made, []*schematic.Edge) {
	m, _ := a.g.EdgesOf(ref)
	if m == nil {
		return nil, nil
	}
	m = m.Worked()
	var free []*schematic.Edge
	for i := range m.Edges {
		e := &m.Edges[i]
		if keys := a.keys[idOf(m, e)]; e.Name == "underarm" && (len(keys) == 0 || slices.Equal(keys, []string{underarms})) {
			free = append(free, e)
		}
	}
	return m, free
}

// underarms is the key of underarms that no join names.
const underarms = "underarms"

// join gives the edges of a join their bond.
func (a *assembly) join(i int) {
	j, key := &a.g.Pattern.Joins[i], joinKey(i)
	refs := slices.Concat(j.Sew, j.Into)
	switch j.How {
	case schematic.AtFold:
		if _, of := a.g.EdgesOf(j.Sew[0]); len(j.Sew) != 1 || len(of) != 2 || of[0].Left == of[1].Left || of[0].Rows > 0 != (of[1].Rows > 0) {
			return // or its two ends, which meet each other
		}
	case schematic.InPlaces: // the ends have places on the edge, and do not lie along it
		key, refs = bends+key, j.Into
		edges := 0
		for _, ref := range refs {
			_, of := a.g.EdgesOf(ref)
			edges += len(of)
		}
		a.ends = append(a.ends, sewnOn{j, key, edges})
	case schematic.Gathered:
		a.gathers[key] = true
	}
	for _, ref := range refs {
		a.keyAll(ref, key)
	}
	if j.How != schematic.InPlaces && slices.ContainsFunc(a.g.Seams, func(s schematic.Seam) bool { return s.Join == j && s.One }) { // the other goes into the other side
		for _, ref := range j.Into {
			a.keyAll(schematic.OtherSide(ref), key)
		}
	}
}

// closed gives raglan lines that no join names the bond of their likes at the other side: one that is buttoned, as on a baby's jumper.
func (a *assembly) closed(i int) {
	j := &a.g.Pattern.Joins[i]
	var refs []string
	for _, ref := range slices.Concat(j.Sew, j.Into) {
		o := schematic.OtherSide(ref)
		m, edges := a.g.EdgesOf(o)
		if o == ref || len(edges) == 0 || !strings.HasSuffix(ref, " raglan") || slices.ContainsFunc(edges, func(e schematic.Edge) bool { return len(a.keys[idOf(m, &e)]) > 0 }) {
			return
		}
		refs = append(refs, o)
	}
	for _, ref := range refs {
		a.keyAll(ref, "closed as "+joinKey(i))
	}
}

// gathered is the panel with each of its level edges that is gathered to another drawn in to its length: what is gathered does not lie flat, and
// spreads from there.
func (a *assembly) gathered(p *panel) *panel {
	for i := range a.g.Pattern.Joins {
		j := &a.g.Pattern.Joins[i]
		own, on := a.long(j.Sew), a.long(j.Into)
		if j.How != schematic.Gathered || own <= on || on*mostGathered < own {
			continue
		}
		key := map[string]bool{joinKey(i): true}
		y, drawn := 0.0, false
		for k := range p.loop {
			if s := &p.loop[k]; s.has(key) && levelAt(p, k, s.a.Y) && a.sews(j, p.made) {
				y, drawn = s.a.Y, true
			}
		}
		if !drawn {
			continue
		}
		q := *p
		q.loop = slices.Clone(p.loop)
		mid := p.middle()
		q.puffed = true
		for k := range q.loop {
			if at := &q.loop[k].a; absf(at.Y-y) < close {
				at.X = mid + (at.X-mid)*on/own
			}
		}
		p = &q
	}
	return p
}

// sews reports whether it is a piece's own edge that a join gathers.
func (a *assembly) sews(j *schematic.Join, m *schematic.Made) bool {
	return slices.ContainsFunc(j.Sew, func(ref string) bool {
		of, _ := a.g.EdgesOf(ref)
		return of != nil && of.Worked() == m
	})
}

// long is how long the edges are together that references mean, of all pieces that are made.
func (a *assembly) long(refs []string) float64 {
	t := 0.0
	for _, ref := range refs {
		m, edges := a.g.EdgesOf(ref)
		for i := range edges {
			t += edges[i].Length.Float() * float64(max(1, m.Make))
		}
	}
	return t
}

func joinKey(i int) string { return fmt.Sprint("join ", i+1) }

// held gives the edges at which stitches of a part are held the bond with what begins from them.
func (a *assembly) held(from schematic.HeldPart) {
	src := a.made(from.Piece)
	if src == nil || from.Part != "" && slices.Contains(viewNames(src), from.Part) {
		return
	}
	for k := range src.Edges {
		e := &src.Edges[k]
		if e.Rows == 0 && (slices.Contains(e.Parts, from.Part) || from.Part == "" && endsFlat(src, e)) {
			a.key(src, e, heldKey(from.Piece, from.Part))
		}
	}
}

// endsFlat reports whether an edge is all of the last row of a piece worked flat.
func endsFlat(m *schematic.Made, e *schematic.Edge) bool {
	if m.Round || len(e.Parts) > 0 || e.Stitches == 0 {
		return false
	}
	lo, hi := bounds(m.Views[e.View].Outline)
	end := hi.Y
	if m.From == schematic.FromNeck || m.From == schematic.FromCentre {
		end = lo.Y
	}
	return !slices.ContainsFunc(e.Path, func(p pt) bool { return absf(p.Y-end) > close })
}

// ontoKey is the bond of the edges onto which a piece is worked: a band bends along them.
func ontoKey(m *schematic.Made) string {
	if m.Kind == schematic.KindBand {
		return bends + "onto " + m.Name
	}
	return "onto " + m.Name
}

// bends begins the key of a bond along which a band lies, and nothing else.
const bends = "~"

func viewNames(m *schematic.Made) []string {
	var out []string
	for _, v := range m.Views {
		out = append(out, v.Name)
	}
	return out
}

func (a *assembly) made(name string) *schematic.Made {
	for _, m := range a.g.Pieces {
		if m.Name == name {
			return m.Worked()
		}
	}
	return nil
}

// addedTo begins the key of stitches that are added, or left, where pieces part.
const addedTo = "added to "

func heldKey(piece, part string) string { return "held " + piece + "." + part }

// heldFrom are the runs from which a piece begins.
func heldFrom(m *schematic.Made) []schematic.HeldPart {
	if m.Piece == nil || len(m.Piece.Sections) == 0 {
		return nil
	}
	return m.Piece.Sections[0].Traits().From
}

// run is stitches of the round at the beginning or the end of a tube.
type run struct {
	name string
	n    int
	keys []string
	main bool // worked on, not added or left
	flow bool // no seam shows where it goes on
	of   string
}

// startRuns are the runs from which a piece begins, as listed.
func (a *assembly) startRuns(m *schematic.Made) []run {
	from := heldFrom(m)
	if len(from) == 0 || len(m.Steps) == 0 || len(m.Steps[0].Taken) != len(from) {
		return nil
	}
	added := []string{addedTo}
	for _, f := range from {
		if f.Piece != "" {
			added[0] = addedTo + f.Piece
		}
	}
	for _, f := range from {
		if f.Piece != "" && m.Make > 1 && a.leavesNone(a.made(f.Piece), m) { // the stitches of a crotch have no partner but beside it
			added = runFrom(m, f, 1).keys
		}
	}
	var out []run
	for i, f := range from {
		r := runFrom(m, f, m.Steps[0].Taken[i])
		if !r.main {
			r.keys = added
		}
		if r.n > 0 {
			out = append(out, r)
		}
	}
	return out
}

// leavesNone reports whether all of the last round of a piece goes on in m.
func (a *assembly) leavesNone(of, m *schematic.Made) bool {
	if of == nil || of.Piece == nil || !of.Round {
		return false
	}
	runs := a.endRuns(of)
	return len(runs) > 1 && !slices.ContainsFunc(runs, func(r run) bool { return !r.main || r.of != m.Name })
}

// runFrom is the run of n stitches that a piece begins with from a held part; without bonds if they are added there.
func runFrom(m *schematic.Made, f schematic.HeldPart, n int) run {
	r := run{name: cmp.Or(f.Panel, f.Part), n: n, main: f.Piece != "", of: f.Piece}
	if !r.main {
		return r
	}
	r.keys = []string{heldKey(f.Piece, f.Part)}
	if o := schematic.OtherSide(f.Part); m.Make > 1 && o != f.Part {
		r.keys = append(r.keys, heldKey(f.Piece, o))
	}
	r.name = cmp.Or(r.name, f.Piece)
	return r
}

// endRuns are the runs into which the last row of a piece is divided, as listed.
func (a *assembly) endRuns(m *schematic.Made) []run {
	if len(m.Steps) == 0 || len(m.Piece.Sections) == 0 {
		return nil
	}
	parts := m.Piece.Sections[len(m.Piece.Sections)-1].Traits().Parts
	if parts == nil {
		return nil
	}
	taker := ""
	for _, o := range a.g.Pieces {
		if slices.ContainsFunc(heldFrom(o), func(f schematic.HeldPart) bool { return f.Piece == m.Name }) {
			taker = o.Name
		}
	}
	var out []run
	for _, p := range parts {
		r := run{name: p.Name, n: p.Stitches.Int(a.g.Index, 0), keys: []string{addedTo + taker}}
		switch of := a.takerOf(m, p.Name); {
		case r.n < 1:
			continue
		case p.Hold && (of != "" || taker == ""): // what nothing takes, such as an underarm, is left
			r.main, r.keys, r.of = true, []string{heldKey(m.Name, p.Name)}, of
			if o := schematic.OtherSide(p.Name); o != p.Name && r.of != "" && a.takerOf(m, o) == r.of && (m.Round || a.made(r.of).Make > 1) { // either of a pair may go on from either
				r.keys = append(r.keys, heldKey(m.Name, o))
				slices.Sort(r.keys)
			}
		case legView(m, p.Name) > 0:
			r.main, r.flow, r.keys, r.of = true, true, []string{legsOf + m.Name}, m.Name
		case len(p.Sections) > 0 || p.MirrorOf != "":
			return nil
		}
		out = append(out, r)
	}
	return out
}

// legsOf begins the key of a round whose stitches go on in several rounds of the same piece, such as two legs.
const legsOf = "legs of "

// legView is the view of a part of a round that goes on as a round of its own, or 0.
func legView(m *schematic.Made, part string) int {
	return max(0, slices.IndexFunc(m.Views, func(v schematic.View) bool { return m.Round && v.Half && !v.Panel && v.Name == part && part != "" }))
}

// takerOf is the piece that goes on from a held part of another, or from its like at the other side if it is made twice.
func (a *assembly) takerOf(m *schematic.Made, part string) string {
	of := ""
	for _, o := range a.g.Pieces {
		if goesOn(o, m, part) {
			of = o.Name
		}
	}
	return of
}

// goesOn reports whether a piece begins from a held part of another, or from its like at the other side if it is made twice.
func goesOn(o, m *schematic.Made, part string) bool {
	return slices.ContainsFunc(heldFrom(o), func(f schematic.HeldPart) bool {
		return f.Piece == m.Name && (f.Part == part || o.Make > 1 && schematic.OtherSide(f.Part) == part)
	})
}

// sharedOut reports whether the runs of a round go to, or come from, more than one other piece.
func sharedOut(runs []run) bool {
	of := map[string]bool{}
	for _, r := range runs {
		if r.main && r.of != "" {
			of[r.of] = true
		}
	}
	return len(of) > 1
}

// sharedFlat reports whether the runs of a flat row are those of the yoke of a cardigan, with two fronts at its ends and sleeves.
func (a *assembly) sharedFlat(runs []run) bool {
	main := slices.DeleteFunc(slices.Clone(runs), func(r run) bool { return !r.main })
	n := len(main)
	return sharedOut(main) && n == 5 && a.facing(main[0].name) == front && a.facing(main[n-1].name) == front &&
		slices.ContainsFunc(main, func(r run) bool { return a.facing(r.name) == either })
}

// build makes panels of all pieces.
func (a *assembly) build() {
	a.bonds()
	for _, m := range a.g.Pieces {
		m = m.Worked()
		if m.Piece == nil || len(m.Views) == 0 {
			continue
		}
		if m.Kind == schematic.KindBand && len(m.Piece.Onto) > 0 {
			a.band(m)
			continue
		}
		a.piece(m)
	}
	a.crossed()
	a.facesOfTwins()
	if a.turned && !slices.ContainsFunc(a.protos, func(p *proto) bool { return p.face != either }) { // no back faces up: the whole is turned over
		a.overall = true
		for _, p := range a.protos {
			p.panel = p.mirrored()
		}
	}
	a.protos = slices.DeleteFunc(a.protos, func(p *proto) bool {
		p.folded = p.folded || a.reachesBoth(p) || a.goesRound(p)
		if !p.folded && a.halvedAlong(p) {
			a.hollow = append(a.hollow, hollow{made: p.made, why: "it is folded along its middle, and what it is sewn to with it"})
			return true
		}
		if p.folded && p.notched() {
			a.hollow = append(a.hollow, hollow{made: p.made, why: "it goes round a neck, and is turned over there"})
			return true
		}
		return false
	})
}

// halvedAlong reports whether a hood has its crown sewn to itself at a fold, and its base along a piece that lies flat, such as a scarf.
func (a *assembly) halvedAlong(p *proto) bool {
	keys := keysOf(p.loop)
	return p.made.Kind == schematic.KindHood && p.face == either &&
		slices.ContainsFunc(a.g.Pattern.Joins, func(j schematic.Join) bool { return j.How == schematic.AtFold && a.sews(&j, p.made) }) &&
		slices.ContainsFunc(a.protos, func(q *proto) bool {
			return q.made != p.made && !q.made.Round && q.face == either && sharesKey(q.loop, keys)
		})
}

func (a *assembly) band(m *schematic.Made) {
	v := &m.Views[0]
	lo, hi := bounds(v.Outline)
	s := &strip{made: m, name: m.Name, key: ontoKey(m), deep: hi.Y - lo.Y, ribs: len(v.Ribs) > 0}
	if p := newPanel(m, 0, func(*schematic.Edge) []string { return nil }); p != nil { // a band that is worked double
		l, h := box(p.turnedIn().loop)
		s.deep = h.Y - l.Y
	}
	for i := range m.Edges {
		if e := &m.Edges[i]; !e.Left && !e.Right && e.Path[0].Y > (lo.Y+hi.Y)/2 {
			s.outer = append(s.outer, a.keys[idOf(m, e)]...)
		}
	}
	a.strips = append(a.strips, s)
}

func bounds(loops [][]pt) (lo, hi pt) {
	first := true
	for _, l := range loops {
		for _, p := range l {
			if first {
				lo, hi, first = p, p, false
			}
			lo = pt{X: min(lo.X, p.X), Y: min(lo.Y, p.Y)}
			hi = pt{X: max(hi.X, p.X), Y: max(hi.Y, p.Y)}
		}
	}
	return lo, hi
}

func (a *assembly) piece(m *schematic.Made) {
	if m.Kind == schematic.KindSock && a.profile(m) || holds[m.Kind] && a.gusseted(m) || a.dividedLegs(m) || a.flatLegs(m) || a.opened(m) {
		return
	}
	if q := cmp.Or(a.slipper(m), a.layered(m)); q != nil {
		a.add(q, m.Make)
		return
	}
	hasPanels := slices.ContainsFunc(m.Views, func(v schematic.View) bool { return v.Panel })
	first := a.firstRows(m)
	for i := range m.Views {
		v := &m.Views[i]
		switch {
		case first != nil && i == 0: // they are a part of each panel
			continue
		case hasPanels && !v.Panel && v.Half:
			a.bandOfPanels(m, i)
			continue
		}
		p := newPanel(m, i, func(e *schematic.Edge) []string { return a.keys[idOf(m, e)] })
		if p == nil {
			continue
		}
		p = a.gathered(p.turnedIn())
		if p.face = a.facing(p.name); p.face == either && v.Name == "" && (m.Kind == schematic.KindFront || m.Kind == schematic.KindBack) {
			p.face = a.facing(m.Kind.String())
		}
		switch {
		case v.Disc:
			a.disc(m, p)
		case v.Panel:
			a.keyPanel(m, p)
			first.underView(p, i)
			a.add(p, m.Make)
		case v.Half:
			a.round(m, p)
		default:
			a.flat(m, p)
		}
	}
	if hasPanels {
		a.lines(m)
	}
}

// layered is a round that is divided into two halves, of which one lies behind the other, such as the back of a bib: the one in front. Nil if it is none.
func (a *assembly) layered(m *schematic.Made) *panel {
	if len(m.Views) != 2 || !m.Round || !m.Views[0].Half || !m.Views[1].Half || m.Views[0].Panel || len(a.startRuns(m)) > 0 || len(a.endRuns(m)) > 0 {
		return nil
	}
	var views [2]*panel
	for i := range views {
		if views[i] = newPanel(m, i, func(e *schematic.Edge) []string { return a.keys[idOf(m, e)] }); views[i] == nil || len(keysOf(notFolds(views[i].loop))) > 0 {
			return nil
		}
	}
	p, behind := views[0], views[1]
	if area(behind.points()) > area(p.points()) {
		p, behind = behind, p
	}
	lo, hi := box(p.loop)
	bl, bh := box(behind.loop)
	if bl.X < lo.X-close || bh.X > hi.X+close || common(p.points(), behind.points()) < area(behind.points())-100 {
		return nil
	}
	p.layered = true
	return p
}

// notFolds are the sides at which a panel is not folded.
func notFolds(loop []side) []side {
	return slices.DeleteFunc(slices.Clone(loop), func(s side) bool { return s.fold })
}

// round is a view of a round.
func (a *assembly) round(m *schematic.Made, p *panel) {
	switch {
	case a.flaps(m, p):
	case m.Kind == schematic.KindHat && p.crowned():
		a.tube(m, p)
	case !holds[m.Kind] && (sharedOut(a.startRuns(m)) && !a.isBodice(m, a.startRuns(m)) || sharedOut(a.endRuns(m)) && !a.isBodice(m, a.endRuns(m))):
		a.share(m, p)
	case a.isLeg(m, p.view):
		start, _ := ends(p)
		p.leg = true
		p.bond(start, legsOf+m.Name)
		a.add(p, m.Make)
	default:
		a.tube(m, p)
	}
}

// isBodice reports whether a round from the hem goes on in, or begins from, fronts and backs alone, which lie on its two halves.
func (a *assembly) isBodice(m *schematic.Made, runs []run) bool {
	return !downwards(m) && !slices.ContainsFunc(runs, func(r run) bool { return r.main && a.facing(r.name) == either })
}

// isLeg reports whether a view is that of a part of the last round before it that goes on in a round of its own.
func (a *assembly) isLeg(m *schematic.Made, view int) bool {
	return view > 0 && slices.ContainsFunc(a.endRuns(m), func(r run) bool { return r.of == m.Name && legView(m, r.name) == view })
}

func (a *assembly) add(p *panel, n int) *proto {
	q := &proto{panel: p, left: n}
	a.protos = append(a.protos, q)
	return q
}

// ends are the y of the places where a view begins and ends to be worked.
func ends(p *panel) (start, end float64) {
	lo, hi := box(p.loop)
	if p.made.From == schematic.FromNeck || p.made.From == schematic.FromCentre {
		return hi.Y, lo.Y
	}
	return lo.Y, hi.Y
}

func levelAt(p *panel, i int, y float64) bool {
	s, z := p.loop[i], p.loop[(i+1)%len(p.loop)]
	return absf(s.a.Y-y) < close && absf(z.a.Y-y) < close
}

func absf(x float64) float64 { return max(x, -x) }

// keyPanel gives the ends of a panel of a row their bonds: with the runs that it begins from, and with
// what goes on from it.
func (a *assembly) keyPanel(m *schematic.Made, p *panel) {
	start, end := ends(p)
	var from, to []string
	for _, r := range a.startRuns(m) {
		if r.main && r.name == p.name {
			from = append(from, r.keys...)
		}
	}
	from = append(from, bends+"panels of "+m.Name)
	for _, o := range a.g.Pieces {
		if goesOn(o, m, p.name) {
			to = append(to, heldKey(m.Name, p.name))
		}
	}
	for i := range p.loop {
		s := &p.loop[i]
		switch {
		case levelAt(p, i, start):
			s.keys = append(s.keys, from...)
		case levelAt(p, i, end):
			s.keys = append(s.keys, to...)
		}
	}
}

// lines bonds the panels of a row with each other along the marked lines.
func (a *assembly) lines(m *schematic.Made) {
	var row []*proto
	for _, q := range a.protos {
		if q.made == m && m.Views[q.view].Panel {
			row = append(row, q)
		}
	}
	if !downwards(m) { // a right-side row, in whose order they stand, begins at the right
		slices.Reverse(row)
	}
	n := len(row)
	for i, q := range row {
		next := i + 1
		prev := i
		if m.Round {
			next, prev = (i+1)%n, i
		}
		for k := range q.loop {
			s, z := &q.loop[k], q.loop[(k+1)%len(q.loop)].a
			up := z.Y - s.a.Y
			if absf(up) < close {
				continue
			}
			switch {
			case up > 0 && (m.Round || next < n):
				s.keys = append(s.keys, fmt.Sprint("line ", next, " of ", m.Name))
			case up < 0 && (m.Round || prev > 0):
				s.keys = append(s.keys, fmt.Sprint("line ", prev, " of ", m.Name))
			}
		}
	}
}

// bandOfPanels is the part of a round before it is cut into panels: a strip along their beginnings.
func (a *assembly) bandOfPanels(m *schematic.Made, view int) {
	v := &m.Views[view]
	lo, hi := bounds(v.Outline)
	s := &strip{made: m, view: view, name: v.Name, key: bends + "panels of " + m.Name, deep: hi.Y - lo.Y, ribs: len(v.Ribs) > 0}
	for i := range m.Edges {
		if e := &m.Edges[i]; e.View == view && e.Name != "base of the panels" {
			s.outer = append(s.outer, a.keys[idOf(m, e)]...)
		}
	}
	a.strips = append(a.strips, s)
}

// flat is a piece worked flat; one that runs round the body is cut where the body is folded, midway
// between its parts.
func (a *assembly) flat(m *schematic.Made, p *panel) {
	given := len(a.hollow)
	if h := a.lengthwise(m, p); h != nil {
		a.add(h, m.Make)
		return
	} else if len(a.hollow) > given {
		return
	}
	if h := a.sideways(m, p); h != nil {
		a.add(h, m.Make)
		return
	}
	if a.sewnToItself(m, p) {
		a.hollow = append(a.hollow, hollow{made: m, why: "it is sewn to itself round a corner, and does not lie flat"})
		return
	}
	if sleeve, strap := a.saddled(m, p); strap != nil {
		a.add(sleeve, m.Make)
		a.add(strap, m.Make)
		return
	}
	if a.sharedFlat(a.startRuns(m)) || a.sharedFlat(a.endRuns(m)) {
		a.share(m, p)
		return
	}
	a.keyEnds(m, p)
	cuts := a.roundTheBody(m, p)
	if len(cuts) == 0 {
		q := a.add(p, m.Make)
		q.folded = m.Piece.FoldAt
		return
	}
	rest, first := p.drawnIn(false)
	rest, last := rest.drawnIn(true)
	var row []*panel // from the left
	for i, c := range cuts {
		key := fmt.Sprint("fold ", i+1, " of ", m.Name)
		l := rest.half(c.x, true, key)
		rest = rest.half(c.x, false, key)
		if l == nil || rest == nil {
			return
		}
		l.name, l.face = c.left, a.facing(c.left)
		rest.name, rest.face = c.right, a.facing(c.right)
		row = append(row, l)
	}
	row = append(row, rest)
	first.share(row)
	last.share(row)
	for _, p := range row {
		a.add(p, m.Make)
	}
}

// keyEnds gives the beginning of a flat piece the bonds with the edges, or the held stitches, that it is worked from, and its end those with what
// is left there.
func (a *assembly) keyEnds(m *schematic.Made, p *panel) {
	start, end := ends(p)
	if len(m.Piece.Onto) > 0 {
		for i := range p.loop {
			if levelAt(p, i, start) {
				p.loop[i].keys = append(p.loop[i].keys, ontoKey(m))
			}
		}
	}
	if parts := fromLeft(m, a.startRuns(m)); len(parts) > 0 {
		p.divideEnd(start, parts)
	}
	if parts := fromLeft(m, a.endRuns(m)); len(parts) > 1 && m.Kind == schematic.KindBody {
		p.divideEnd(end, parts)
	}
}

// fromLeft are the runs of an end of a flat piece, from the left.
func fromLeft(m *schematic.Made, runs []run) []run2 {
	var parts []run2
	for i := range runs {
		parts = append(parts, run2{&runs[i], float64(runs[i].n)})
	}
	if !downwards(m) { // they are listed from its right
		slices.Reverse(parts)
	}
	return parts
}

type bodyCut struct {
	x           float64
	left, right string // parts
}

// roundTheBody are the uprights at which a flat piece is folded to go round the body.
func (a *assembly) roundTheBody(m *schematic.Made, p *panel) []bodyCut {
	parts := partsOf(m, p)
	if len(parts) == 0 && (m.Kind.Trunk() || m.Kind == schematic.KindSkirt) {
		parts = p.begunFrom(fromLeft(m, a.startRuns(m)))
	}
	slices.SortFunc(parts, func(x, y bodyPart) int { return cmp.Compare(x.lo, y.lo) })
	var out []bodyCut
	for i := 1; i < len(parts); i++ {
		l, r := parts[i-1], parts[i]
		if fl, fr := a.facing(l.name), a.facing(r.name); fl != either && fr != either && fl != fr {
			out = append(out, bodyCut{(l.hi + r.lo) / 2, l.name, r.name})
		}
	}
	return out
}

// bodyPart is a part of a divided row that is worked on, and how far it reaches to both sides.
type bodyPart struct {
	name   string
	lo, hi float64
}

// begunFrom are what of a panel goes on from each of the runs that it begins from, from the left.
func (p *panel) begunFrom(runs []run2) []bodyPart {
	start, _ := ends(p)
	at, r := levelSpan(p, start)
	n := 0.0
	for _, o := range runs {
		n += o.n
	}
	var parts []bodyPart
	for _, o := range runs {
		to := at + (r-at)*o.n/n
		if o.main {
			parts = append(parts, bodyPart{o.name, at, to})
		}
		at, n = to, n-o.n
	}
	return parts
}

// partsOf are the parts of the last row of a piece that is divided.
func partsOf(m *schematic.Made, p *panel) []bodyPart {
	var parts []bodyPart
	for _, s := range m.Piece.Sections {
		of := s.Traits().Parts
		if of == nil {
			continue
		}
		parts = nil
		for _, q := range of {
			if r := reach(m, p, q.Name); !q.Leave && r.lo < r.hi {
				parts = append(parts, r)
			}
		}
	}
	return parts
}

// reach is a part with how far its edges reach: its uprights reach down past its beginning, its level edges don't.
func reach(m *schematic.Made, p *panel, part string) bodyPart {
	r := bodyPart{name: part, lo: math.Inf(1), hi: math.Inf(-1)}
	for _, e := range m.Edges {
		if e.View != p.view || !slices.Contains(e.Parts, part) || len(e.Path) < 2 {
			continue
		}
		for _, a := range e.Path {
			r.lo, r.hi = min(r.lo, a.X), max(r.hi, a.X)
		}
	}
	return r
}

// facesOfTwins lets one piece of a kind that is made twice lie in front and once behind.
func (a *assembly) facesOfTwins() {
	if slices.ContainsFunc(a.protos, func(q *proto) bool { return q.face == front }) {
		return
	}
	for _, q := range a.protos {
		both := strings.Contains(strings.ToLower(q.name), "front") && strings.Contains(strings.ToLower(q.name), "back")
		if q.left == 2 && (q.face == back || both) {
			q.face, q.left = front, 1
			p := *q.panel
			p.face = back
			a.add(&p, 1)
			return
		}
	}
}

// reachesBoth reports whether a panel is bonded to the front as well as to the back, so that it is
// folded between them.
func (a *assembly) reachesBoth(p *proto) bool {
	if p.face != either || p.variants != nil || p.made.Views[p.view].Half && !p.share {
		return false // a round, but for a share of one, lies flat as it is
	}
	keys := keysOf(p.loop)
	for _, s := range a.strips { // what is sewn to a band meets what that lies along
		if p.sharesWith(s.outer) {
			keys[s.key] = true
		}
	}
	f, b := false, false
	for _, q := range a.protos {
		if q.panel != p.panel && sharesKey(q.loop, keys) {
			f, b = f || q.face == front, b || q.face == back
		}
	}
	return f && b
}

// notched reports whether a bonded edge goes down into a panel, along its middle and up again, as that of a sailor collar does.
func (p *panel) notched() bool {
	n := len(p.loop)
	for i, s := range p.loop {
		z, mid := p.loop[(i+1)%n].a, p.middle()
		if !levelAt(p, i, s.a.Y) || s.a.X < mid || z.X > mid || len(notBends(s.keys)) == 0 {
			continue
		}
		before, after := p.loop[(i+n-1)%n], p.loop[(i+2)%n].a
		same := keysOf([]side{s})
		if before.has(same) && p.loop[(i+1)%n].has(same) && before.a.Y > s.a.Y+close && after.Y > s.a.Y+close {
			return true
		}
	}
	return false
}

// sharesWith reports whether a side of a panel has one of the keys.
func (p *panel) sharesWith(keys []string) bool {
	return slices.ContainsFunc(keys, func(k string) bool { return sharesKey(p.loop, map[string]bool{k: true}) })
}

// goesRound reports whether an end of a flat panel is sewn round a tube, of which it is twice as wide as what shows.
func (a *assembly) goesRound(p *proto) bool {
	const most = 1.5
	if p.face != either || p.made.Round || p.variants != nil {
		return false
	}
	return slices.ContainsFunc(a.protos, func(q *proto) bool {
		on := q.longest(keysOf(p.loop))
		return q.made.Round && q.made.Views[q.view].Half && on > 0 && p.longest(keysOf(q.loop)) > most*on
	})
}

// longest is how long the longest level side with one of the keys is.
func (p *panel) longest(keys map[string]bool) float64 {
	most := 0.0
	for i, s := range p.loop {
		if s.has(keys) && levelAt(p, i, s.a.Y) {
			most = max(most, absf(s.a.X-p.loop[(i+1)%len(p.loop)].a.X))
		}
	}
	return most
}

func keysOf(loop []side) map[string]bool {
	out := map[string]bool{}
	for _, s := range loop {
		for _, k := range s.keys {
			if !strings.HasPrefix(k, bends) {
				out[k] = true
			}
		}
	}
	return out
}

func sharesKey(loop []side, keys map[string]bool) bool {
	return slices.ContainsFunc(loop, func(s side) bool { return s.has(keys) })
}

func (s *side) has(keys map[string]bool) bool {
	return slices.ContainsFunc(s.keys, func(k string) bool { return keys[k] })
}
