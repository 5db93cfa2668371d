package schematic

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// edges are the edges that a reference names: a piece, then a part if that matters,
// then left or right, then the edge's name. self may not be named.
func (b *builder) edges(ref string, self *Piece) []Edge {
	q, rest := b.pieceIn(ref)
	if q == nil || q == self {
		return nil
	}
	m := b.piece(q)
	if m == nil {
		return nil
	}
	return m.edgesNamed(rest)
}

// pieceIn is the piece with whose name ref begins (the longest), and what
// follows it.
func (b *builder) pieceIn(ref string) (*Piece, string) {
	var best *Piece
	rest := ""
	for _, q := range b.p.Pieces {
		if r, ok := cutWord(ref, q.Name); ok && (best == nil || len(q.Name) > len(best.Name)) {
			best, rest = q, r
		}
	}
	return best, rest
}

// EdgesOf is the piece with whose name an edge reference begins, as it is worked (see
// Made.Worked), and the edges of it that the reference names; nil if there is no such piece.
func (g *Garment) EdgesOf(ref string) (*Made, []Edge) {
	if g.named == nil {
		return g.edgesOf(ref)
	}
	g.named.Lock()
	defer g.named.Unlock()
	e, ok := g.named.of[ref]
	if !ok {
		e.piece, e.edges = g.edgesOf(ref)
		g.named.of[ref] = e
	}
	return e.piece, slices.Clip(e.edges)
}

func (g *Garment) edgesOf(ref string) (*Made, []Edge) {
	var best *Made
	rest := ""
	for _, m := range g.Pieces {
		if r, ok := cutWord(ref, m.Name); ok && (best == nil || len(m.Name) > len(best.Name)) {
			best, rest = m, r
		}
	}
	if best == nil {
		return nil, nil
	}
	best = best.Worked()
	return best, best.edgesNamed(rest)
}

// cutWord takes word and the space behind it off the front of s; case does not matter.
func cutWord(s, word string) (string, bool) {
	s = strings.TrimSpace(s)
	if len(s) < len(word) || !strings.EqualFold(s[:len(word)], word) {
		return s, false
	}
	rest := s[len(word):]
	if rest != "" && rest[0] != ' ' {
		return s, false
	}
	return strings.TrimSpace(rest), true
}

// edgesNamed are the edges of the piece that text names: a part if that matters, left or
// right if one side is meant, then the edge's name. A part alone names all its edges, unless it is called after one of them.
func (m *Made) edgesNamed(text string) []Edge {
	best, part := "", ""
	for _, e := range m.Edges {
		for _, p := range e.Parts {
			if r, ok := cutWord(text, p); ok && len(p) > len(part) {
				best, part = r, p
			}
		}
	}
	if part != "" {
		if best == "" {
			best = m.edgeIn(part)
		}
		if out := m.edgesOn(best, part); len(out) > 0 {
			return out
		}
	}
	return m.edgesOn(text, "")
}

// edgeIn is the edge of a part that the part is called after, as the shoulder of a right shoulder; empty if it has none so called.
func (m *Made) edgeIn(part string) string {
	for _, e := range m.Edges {
		if e.Name != "" && slices.Contains(e.Parts, part) && strings.HasSuffix(strings.ToLower(part), " "+strings.ToLower(e.Name)) {
			return e.Name
		}
	}
	return ""
}

func (m *Made) edgesOn(name, part string) []Edge {
	var left, right bool
	if !m.hasEdge(name) {
		if r, ok := cutWord(name, "left"); ok {
			name, left = r, true
		} else if r, ok := cutWord(name, "right"); ok {
			name, right = r, true
		}
	}
	if words := strings.Fields(m.Name); name != "" && len(words) > 0 && !m.hasEdge(name) {
		if twice := words[len(words)-1] + " " + name; m.hasEdge(twice) { // the front neck of a front
			name = twice
		}
	}
	var out []Edge
	for _, e := range m.Edges {
		named := name == "" && part != "" || name != "" && strings.EqualFold(e.Name, name)
		within := part == "" || slices.Contains(e.Parts, part)
		if named && within && (e.Left || !left) && (e.Right || !right) {
			out = append(out, e)
		}
	}
	return out
}

func (m *Made) hasEdge(name string) bool {
	return slices.ContainsFunc(m.Edges, func(e Edge) bool { return strings.EqualFold(e.Name, name) })
}

// EdgeNames are the names of all edges of the pieces, as a join can call them: with their part and side where that tells
// them apart.
func (g *Garment) EdgeNames() []string {
	var out []string
	for _, m := range g.Pieces {
		for i := range m.Edges {
			out = append(out, m.namesOf(&m.Edges[i])...)
		}
	}
	seen := map[string]bool{}
	return slices.DeleteFunc(out, func(name string) bool {
		was := seen[name]
		seen[name] = true
		return was
	})
}

// namesOf are an edge's names; none if it has none of its own.
func (m *Made) namesOf(e *Edge) []string {
	if e.Name == "" {
		return nil
	}
	names := []string{m.Name + " " + e.Name}
	if e.Left != e.Right {
		side := "right "
		if e.Left {
			side = "left "
		}
		names = append(names, m.Name+" "+side+e.Name)
	}
	if n := len(e.Parts); n > 0 {
		part := e.Parts[n-1]
		if name := part + " " + e.Name; !strings.HasSuffix(strings.ToLower(part), " "+strings.ToLower(e.Name)) || len(m.edgesNamed(part)) > len(m.edgesNamed(name)) {
			part = name // the part alone names all its edges
		}
		names = append(names, m.Name+" "+part)
	}
	return names
}

// edgeHint lists what ref could have named.
func (b *builder) edgeHint(ref string) string {
	q, rest := b.pieceIn(ref)
	if q == nil {
		var names []string
		for _, q := range b.p.Pieces {
			names = append(names, q.Name)
		}
		return "begin with the name of a piece: " + strings.Join(names, ", ")
	}
	m := b.made[q.Name]
	if m == nil {
		return "this piece is not made in this size"
	}
	var names []string
	for _, e := range m.Edges {
		if e.Name != "" && !slices.Contains(names, e.Name) {
			names = append(names, e.Name)
		}
	}
	for _, side := range []string{"", "left ", "right "} {
		if text, ok := strings.CutPrefix(finding.PlainName(rest), side); ok || side == "" {
			if like := finding.Nearest(text, names); like != "" {
				return fmt.Sprintf("did you mean %q?", q.Name+" "+side+like)
			}
		}
	}
	return "the edges of " + q.Name + " are: " + strings.Join(names, ", ") + "; name one with `edge`, `left edge` or `right edge`"
}

// seams works out the joins: the lengths of the edges that meet, and their marks.
func (b *builder) seams() {
	for i := range b.p.Joins {
		j := &b.p.Joins[i]
		s := Seam{Join: j, Number: i + 1}
		sew, ok1 := b.chain(j.Sew, j.SewPos)
		into, ok2 := b.chain(j.Into, j.IntoPos)
		if !ok1 || !ok2 {
			continue
		}
		if len(j.Sew) == 1 && len(j.Into) == 1 {
			sew, into = onOneSide(sew, into, sideIn(j.Into[0])), onOneSide(into, sew, sideIn(j.Sew[0]))
		}
		sew, into = b.share(i, j.Sew, sew, into), b.share(i, j.Into, into, sew)
		s.Sew, s.SewLength, s.SewCount = side(sew, false)
		s.Into, s.IntoLength, s.IntoCount = side(into, false)
		one := oneOfEach(j, into)
		s.One = one && len(sew) > 0 && sew[0].m.Make > 1
		if one {
			s.Sew, s.SewLength, s.SewCount = side(sew, true)
		}
		s.SewOf, s.IntoOf = counted(sew, one), counted(into, false)
		for _, e := range append(sew, into...) {
			s.Broken = s.Broken || e.edge.Doubt
		}
		b.notches(&s, sew, into)
		b.g.Seams = append(b.g.Seams, s)
	}
}

// share are the edges that a join takes of those that several joins name alike, where each takes as many as the other side has: of the two raglans of a
// sleeve one is sewn to the back and one to the front.
func (b *builder) share(i int, refs []string, edges, other []ofPiece) []ofPiece {
	if len(refs) != 1 || len(edges) < 2 {
		return edges
	}
	var joins []int
	for k := range b.p.Joins {
		j := &b.p.Joins[k]
		alone := func(side []string) bool { return len(side) == 1 && strings.EqualFold(side[0], refs[0]) }
		if alone(j.Sew) != alone(j.Into) {
			joins = append(joins, k)
		}
	}
	at, each := slices.Index(joins, i), len(edges)/max(1, len(joins))
	if len(joins) < 2 || at < 0 || pieces(edges) != pieces(other)*len(joins) || len(edges)%len(joins) != 0 ||
		slices.ContainsFunc(edges, func(e ofPiece) bool { return !e.edge.Length.Eq(edges[0].edge.Length) }) {
		return edges
	}
	return edges[at*each : (at+1)*each]
}

// pieces is how many edges are sewn, each as often as its piece is made.
func pieces(edges []ofPiece) int {
	n := 0
	for _, e := range edges {
		n += e.m.Make
	}
	return n
}

// notches marks a seam on its edges: in the middle of each, unless it says how its edges meet.
func (b *builder) notches(s *Seam, sew, into []ofPiece) {
	shares := []units.Num{units.Frac(1, 2)}
	all := append(sew[:len(sew):len(sew)], into...)
	switch {
	case s.Join.How == InPlaces:
		b.places(s, sew, into)
		return
	case s.Join.How == AtFold: // its two halves meet: of one edge, or of the edges of two halves
		all = sew
		if len(sew) == 1 {
			shares = []units.Num{units.Frac(1, 4), units.Frac(3, 4)}
		}
	}
	for _, e := range all {
		for _, at := range shares {
			e.m.notch(e.edge, s.Number, at)
		}
	}
}

// places notches the ends that a join sews on, and the places for them along the edge that takes them.
func (b *builder) places(s *Seam, sew, into []ofPiece) {
	for _, e := range sew {
		e.m.notch(e.edge, s.Number, units.Frac(1, 2))
		s.SewPieces += e.m.Make
	}
	for _, e := range into {
		for _, share := range s.Join.Spots(e.m, &e.edge, len(into)) {
			e.m.notch(e.edge, s.Number, share)
		}
	}
}

// Spots are the shares of the way along an edge at which ends are sewn on, if so many edges take them: spread evenly along all of it, as many
// on each of several edges, such as the left and the right. Of a round, half of which is drawn, they are those of the half that shows; two in a
// round lie at its sides.
func (j *Join) Spots(m *Made, e *Edge, edges int) []units.Num {
	n, half := j.Places, m.Views[e.View].Half
	if edges > 1 && n%edges == 0 {
		n /= edges
	}
	if n == 2 && half {
		return []units.Num{{}, units.Int(1)}
	}
	if half {
		n = (n + 1) / 2
	}
	var out []units.Num
	at := units.Frac(1, 2)
	for range n {
		out = append(out, at.Div(units.Int(int64(n))))
		at = at.Add(units.Int(1))
	}
	return out
}

// side is one side of a seam: its edges, their length and their stitches or rows, of all
// pieces to make or of one.
func side(chain []ofPiece, one bool) (edges []Edge, length units.Num, count int) {
	for _, e := range chain {
		times := e.m.Make
		if one {
			times = 1
		}
		e.edge.Piece = e.m.ID
		edges = append(edges, e.edge)
		length = length.Add(e.edge.Length.Times(times))
		count += (e.edge.Rows + e.edge.Stitches) * times
	}
	return edges, length, count
}

// oneOfEach reports whether a join means one of several pieces that are sewn alike, such as a
// sleeve into the armhole of one side: every edge sewn to says left, or every one right, so that the
// other side takes the other piece. It is the words that say so, never what would fit better.
func oneOfEach(j *Join, into []ofPiece) bool {
	if len(j.Into) == 0 || slices.ContainsFunc(into, func(e ofPiece) bool { return e.m.Make > 1 }) {
		return false
	}
	first := sideIn(j.Into[0])
	return first != "" && !slices.ContainsFunc(j.Into, func(ref string) bool { return sideIn(ref) != first })
}

// onOneSide are those edges of a seam that are on the side of the other's piece: what is called left or right is sewn to that side of a back, as worn,
// where both sides of it go by the name.
func onOneSide(chain, other []ofPiece, side string) []ofPiece {
	if side == "" || len(other) == 0 || other[0].m.Kind == KindSleeve {
		return chain
	}
	var out []ofPiece
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, e := range chain {
		if e.m.Kind != KindBack || e.m.Make > 1 || e.edge.View != chain[0].edge.View {
			return chain
		}
		for _, p := range e.edge.Path {
			lo, hi = min(lo, p.X), max(hi, p.X)
		}
	}
	for _, e := range chain {
		low, high := lo, (lo+hi)/2 // a back is drawn as seen from behind, its left at the left
		if side == "right" {
			low, high = high, hi
		}
		if !slices.ContainsFunc(e.edge.Path, func(p Point) bool { return p.X < low-1e-6 || high+1e-6 < p.X }) {
			out = append(out, e)
		}
	}
	if 2*len(out) != len(chain) {
		return chain
	}
	return out
}

// sideIn is left or right, whichever an edge reference says first: that of the piece or part, or
// else that of the edge.
func sideIn(ref string) string {
	for w := range strings.FieldsSeq(strings.ToLower(ref)) {
		if w == "left" || w == "right" {
			return w
		}
	}
	return ""
}

// counted says how many of the pieces to make a side of a seam has; nothing if each is made once.
func counted(chain []ofPiece, one bool) string {
	most := 0
	for _, e := range chain {
		most = max(most, e.m.Make)
	}
	switch {
	case most < 2:
		return ""
	case one:
		return fmt.Sprintf("one of the %d to make", most)
	}
	return fmt.Sprintf("all %d to make", most)
}

type ofPiece struct {
	m    *Made
	edge Edge
}

func (b *builder) chain(refs []string, pos finding.Pos) ([]ofPiece, bool) {
	var out []ofPiece
	ok := true
	for _, ref := range refs {
		q, rest := b.pieceIn(ref)
		var m *Made
		if q != nil {
			m = b.made[q.Name]
			if m == nil && !b.madeIn(q) {
				return nil, false // this size has no such piece
			}
		}
		var edges []Edge
		if m != nil {
			edges = m.edgesNamed(rest)
		}
		if len(edges) == 0 {
			ok = false
			if q == nil || rest == "" || m != nil && b.g.Uneven(m) {
				continue // the reader tells of a piece that there is not, or is called in place of its edge
			}
			b.find(finding.Finding{Kind: finding.NoEdge, Severity: finding.Error, Pos: pos,
				Message: fmt.Sprintf("there is no edge called %q", ref), Fix: b.edgeHint(ref)})
			continue
		}
		for _, e := range edges {
			out = append(out, ofPiece{m, e})
		}
	}
	return out, ok
}

// madeIn reports whether this size has the piece.
func (b *builder) madeIn(q *Piece) bool {
	if q.Make.IsZero() {
		return true
	}
	v, ok := q.Make.At(b.i)
	return ok && v.Sign() > 0
}

// notch puts a matching mark at a share of the way along an edge.
func (m *Made) notch(e Edge, number int, share units.Num) {
	total := 0.0
	for i := 1; i < len(e.Path); i++ {
		total += math.Hypot(e.Path[i].X-e.Path[i-1].X, e.Path[i].Y-e.Path[i-1].Y)
	}
	at, place := 0.0, float64(total*share.Float())
	for i := 1; i < len(e.Path); i++ {
		a, b := e.Path[i-1], e.Path[i]
		l := math.Hypot(b.X-a.X, b.Y-a.Y)
		if l > 0 && at+l >= place {
			f := (place - at) / l
			n := Notch{Number: number, At: Point{a.X + float64(f*(b.X-a.X)), a.Y + float64(f*(b.Y-a.Y))},
				Out: Point{(b.Y - a.Y) / l, -(b.X - a.X) / l}}
			m.Views[e.View].Notches = append(m.Views[e.View].Notches, n)
			return
		}
		at += l
	}
}

// Uneven reports whether the working of a piece met an error, or a row that its parts or panels do not add up to, or that parts of unlike rows
// are joined to: edges that are missing follow from it.
func (g *Garment) Uneven(m *Made) bool {
	return m.Broken || slices.ContainsFunc(g.Findings, func(f finding.Finding) bool {
		return f.Piece == m.Name && slices.Contains([]string{"arithmetic/division", "arithmetic/panels", "arithmetic/join-rows"}, f.Kind)
	})
}

// Lengths are those of the two sides of a seam less what other seams take of the ends of their edges, and by how much they may differ: half
// a stitch or row of every edge.
func (s *Seam) Lengths(p *Pattern) (sewn, into, slack units.Num) {
	sewn, a := s.Join.sewn(p, s.Sew, s.SewLength)
	into, b := s.Join.sewn(p, s.Into, s.IntoLength)
	return sewn, into, a.Add(b)
}

// sewn is the length of one side, and half a stitch or row of each of its edges. All is the length of all edges of all pieces to make.
func (j *Join) sewn(p *Pattern, edges []Edge, all units.Num) (length, slack units.Num) {
	var once units.Num
	for _, e := range edges {
		once = once.Add(e.Length)
		if n := max(e.Stitches, e.Rows); n > 0 {
			slack = slack.Add(units.Max(e.Length.Div(units.Int(int64(n))), e.Grain).Half())
		} else {
			slack = slack.Add(coarsest(p).Half())
		}
	}
	taken := j.Seam.Times(2 * len(edges))
	if once.Sign() > 0 {
		times := all.Div(once)
		taken, slack = taken.Mul(times), slack.Mul(times)
	}
	return all.Sub(taken), slack
}

// coarsest is the widest stitch or highest row of all gauges.
func coarsest(p *Pattern) units.Num {
	var most units.Num
	for _, g := range p.Gauges {
		most = units.Max(most, units.Max(g.StitchWidth(), g.RowHeight()))
	}
	return most
}
