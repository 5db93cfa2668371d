// Package worn puts a garment together as it is worn, laid flat with its front up: its pieces become panels,
// each panel is moved, without being bent, until its bonded edges lie on those of its partners, and
// what of them shows is drawn. It knows the craft and nothing of paper. There is no picture of any
// garment in it: where a panel comes to lie follows from joins, held stitches, marked lines, bands and folds alone.
package worn

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/finding"
)

// Dress puts a garment together, as schematic.Work gives it, and sets its Worn, and its WornBack if its designer wants that
// drawn. A piece that nothing says the place of is left out and noted among the garment's findings; where parts would lie on
// each other there is no Worn, and the finding says why.
func Dress(g *schematic.Garment) {
	g.Worn, g.WornBack = nil, nil
	known := len(g.Findings)
	dress(g)
	if g.Worn == nil && len(g.Findings) == known {
		untold(g)
	}
}

// untold notes that a garment of several pieces, or of several parts, is not drawn as worn where nothing else says so: loose bands and ties are no pieces.
func untold(g *schematic.Garment) {
	var pieces []*schematic.Made
	for _, m := range g.Pieces {
		if m.Piece != nil && m.Kind != schematic.KindBand && !schematic.HangsFree(m.Name) {
			pieces = append(pieces, m)
		}
	}
	if len(pieces) == 0 || len(pieces) == 1 && (len(pieces[0].Views) < 2 || pieces[0].Make > 1) {
		return // it is drawn as it is worked
	}
	m := pieces[0]
	f := finding.Finding{Kind: "worn/left-over", Severity: finding.Note, Sizes: []string{g.Size}, Pos: m.Piece.Pos, Piece: m.Name,
		Message: "the garment is not drawn as worn: nothing says how its pieces go together",
		Fix:     "add joins, and call what faces front and back so; the pieces are drawn as they are worked"}
	if len(pieces) == 1 {
		f.Kind, f.Message = "worn/not-flat", m.Name+" is not drawn as worn: nothing says how its parts lie"
	}
	g.Findings = append(g.Findings, f)
}

func dress(g *schematic.Garment) {
	a := newAssembly(g, false)
	a.tellHollow()
	if len(a.placed) == 0 {
		return
	}
	if f := a.clash(); f != nil {
		g.Findings = append(g.Findings, *f)
		return
	}
	root := a.placed[0]
	whole := root.face == either && root.made.Kind != schematic.KindBody && !(holds[root.made.Kind] && len(a.placed) > 1)
	lost := a.lostHalf()
	a.leftOver(lost, func(m *schematic.Made) bool {
		ofBand := root.made.Kind == schematic.KindBand && m.Kind == schematic.KindPiece  // a band is the edge of something
		both := root.made.Kind == schematic.KindPoncho && m.Kind == schematic.KindPoncho // two of its parts
		return !whole || both || isPart[m.Kind] || isPart[root.made.Kind] || ofBand || a.joined(m)
	})
	if lost != nil {
		return
	}
	g.Worn = a.picture("as-worn", "As worn")
	if t := a.torn; t != nil {
		g.Findings = append(g.Findings, finding.Finding{Kind: "worn/overlap", Severity: finding.Note, Sizes: []string{g.Size}, Pos: t.Piece.Pos, Piece: t.Name,
			Message: fmt.Sprintf("the garment is not drawn as worn: %s takes a part of an edge that another piece takes", t.Name),
			Fix:     "look at what it is joined to, and begins from; the pieces are drawn as they are worked"})
	}
	if g.Worn == nil || !slices.Contains(g.Pattern.Drawing.Views, schematic.BackAsWorn) {
		return
	}
	if b := newAssembly(g, true); len(b.placed) > 0 && b.clash() == nil {
		if g.WornBack = b.picture("as-worn-back", "As worn, back"); g.WornBack != nil {
			onlyOfTheBack(g)
		}
	}
}

// tellHollow says of each piece that does not lie flat why it is not drawn as worn.
func (a *assembly) tellHollow() {
	g := a.g
	for _, h := range a.hollow {
		m := h.made
		g.Findings = append(g.Findings, finding.Finding{Kind: "worn/not-flat", Severity: finding.Note, Sizes: []string{g.Size}, Pos: m.Piece.Pos, Piece: m.Name,
			Message: m.Name + " is not in the drawing of the garment as worn: " + h.why,
			Fix:     cmp.Or(h.fix, "nothing to fix: it is drawn as it is worked")})
	}
}

// newAssembly puts the pieces together, seen from in front or from behind.
func newAssembly(g *schematic.Garment, turned bool) *assembly {
	a := &assembly{g: g, keys: map[edgeID][]string{}, gathers: map[string]bool{}, turned: turned}
	a.build()
	a.put()
	a.flapsOver()
	a.partTwins()
	return a
}

// picture is what shows of the garment, with its measurements; nil if it is one panel, which is drawn as it is worked.
func (a *assembly) picture(id, name string) *schematic.Made {
	if len(a.placed) == 0 || len(a.placed) == 1 && !a.placed[0].shows() && !a.isAll(a.placed[0]) {
		return nil
	}
	m := &schematic.Made{ID: id, Name: name, Make: 1, Views: []schematic.View{a.figure()}, Lies: a.placed[0].lies()}
	if len(m.Views[0].Outline) == 0 || a.torn != nil {
		return nil
	}
	if !a.overall {
		m.Measures = a.measures()
	}
	return m
}

// lies is how what hangs from a panel lies on a table: a shawl, or a cowl, has no front.
func (p *panel) lies() string {
	switch {
	case p.slipper || p.onSide || p.heel != (pt{}):
		return "laid flat on its side"
	case p.made.Kind == schematic.KindShawl, p.made.Kind == schematic.KindPiece && p.face == either:
		return "laid flat"
	}
	return "laid flat, front up"
}

// shows reports whether a panel by itself lies otherwise than it is worked.
func (p *panel) shows() bool {
	return p.lengthwise || p.heights || p.turned || p.closed || p.arced || p.layered || p.lying != 0 || p.heel != (pt{}) || p.made.Kind == schematic.KindShawl && p.sloping()
}

// isAll reports whether a round is all there is of a garment: half of it is what lies on the table.
func (a *assembly) isAll(p *panel) bool {
	return len(a.g.Pieces) == 1 && len(p.made.Views) == 1 && p.made.Views[0].Half && !isPart[p.made.Kind] && p.made.Kind != schematic.KindSock
}

// onlyOfTheBack leaves the back those measurements that the front does not have or has otherwise.
func onlyOfTheBack(g *schematic.Garment) {
	named := func(name string) *schematic.Measure {
		for i := range g.Worn.Measures {
			if m := &g.Worn.Measures[i]; m.Name == name {
				return m
			}
		}
		return nil
	}
	var own []schematic.Measure
	for _, m := range g.WornBack.Measures {
		f := named(m.Name)
		if f != nil && absf(f.Length.Sub(m.Length).Float()) < 0.5 {
			continue
		}
		if f != nil && !strings.Contains(m.Name, "back") {
			m.Name = "back " + m.Name
		}
		m.ID = g.WornBack.ID + "." + schematic.ID(m.Name)
		own = append(own, m)
	}
	g.WornBack.Measures = own
}

// isPart are the kinds of pieces that are no garment by themselves.
var isPart = map[schematic.Kind]bool{schematic.KindSleeve: true, schematic.KindYoke: true, schematic.KindHood: true}

// lostHalf is a front or a back that is sewn to what stands first, and does not lie on it: what is drawn without it would be no garment. Nil if there is none.
func (a *assembly) lostHalf() *schematic.Made {
	root := a.placed[0]
	for _, q := range a.protos {
		if q.left > 0 && !q.share && q.face != either && q.face != root.face && !a.drawsPartOf(q.made) && !a.isPartOfRound(q) && sharesKey(root.drawn, a.bondsOf(q.loop)) {
			return q.made
		}
	}
	return nil
}

// isPartOfRound reports whether a back goes on from a round, which lies behind itself.
func (a *assembly) isPartOfRound(q *proto) bool {
	return q.face == back && slices.ContainsFunc(a.protos, func(o *proto) bool { return o.share && o.made != q.made && sharesKey(o.loop, keysOf(q.loop)) })
}

// leftOver notes the pieces that nothing places, of those that are asked for, with the edges that a join could name.
func (a *assembly) leftOver(lost *schematic.Made, asked func(*schematic.Made) bool) {
	told := map[*schematic.Made]bool{}
	note := func(m *schematic.Made, why string) {
		if told[m] || !asked(m) {
			return
		}
		told[m] = true
		what := m.Name + " is not in the drawing of the garment as worn: "
		if m == lost {
			what = "the garment is not drawn as worn: " + m.Name + " is not in it, since "
		}
		var names []string
		for _, e := range m.Edges {
			if e.Name != "" && !slices.Contains(names, e.Name) {
				names = append(names, e.Name)
			}
		}
		a.g.Findings = append(a.g.Findings, finding.Finding{Kind: "worn/left-over", Severity: finding.Note, Sizes: []string{a.g.Size}, Pos: m.Piece.Pos, Piece: m.Name,
			Message: what + why,
			Fix:     "add a join for one of its edges: " + strings.Join(names, ", ")})
	}
	for _, q := range a.protos {
		if why := a.whyLeft(q, lost); why != "" {
			note(q.made, why)
		}
	}
	for _, s := range a.strips {
		note(s.made, "the edge that it lies along is not there")
	}
}

// whyLeft is why a panel is not placed; empty if it is, or need not be.
func (a *assembly) whyLeft(q *proto, lost *schematic.Made) string {
	switch {
	case q.left < 1 || q.share && q.face != front || q.hidden(a.placed):
	case slices.ContainsFunc(a.ends, func(s sewnOn) bool { return a.sews(s.join, q.made) }):
		return "the edge onto which its end is sewn does not show, or something else takes it"
	case len(a.bondsOf(q.loop)) == 0 && schematic.HangsFree(q.made.Name):
		// a tie or a belt, which no view lays on the garment
	case len(a.bondsOf(q.loop)) == 0 && a.liesBehind(q):
		// the other half of a round, such as that behind a bib
	case a.twisted(q):
		return "its left edge is sewn to a left edge, or its right to a right: behind a front, the left of a back as drawn lies on the right"
	case q.unfit:
		return "it does not lie flat along all that it is joined to"
	case len(a.bondsOf(q.loop)) == 0:
		return "no join or held stitch says where it goes"
	case a.isPartOfRound(q):
	case q.face == back && q.made == lost:
		return "what it is joined to is not called a front"
	case q.face == back && !a.drawsPartOf(q.made):
		return "no join lays it behind the front"
	case q.face != back:
		return "what it is joined to is not there, or unlike it"
	}
	return ""
}

// twisted reports whether a back would lie behind the front if its left edges, as drawn, were its right ones.
func (a *assembly) twisted(q *proto) bool {
	if q.face != back || a.drawsPartOf(q.made) {
		return false
	}
	_, _, asSewn := a.over(q.mirrored())
	_, _, swapped := a.over(q.panel)
	return swapped && !asSewn
}

// liesBehind reports whether a half of a round lies wholly behind the half that is placed.
func (a *assembly) liesBehind(q *proto) bool {
	return slices.ContainsFunc(a.placed, func(p *panel) bool {
		return p.made == q.made && p.made.Round && p.made.Views[p.view].Half && p.made.Views[q.view].Half && common(p.points(), q.points()) > area(q.points())-100
	})
}

// hidden reports whether a panel hangs at the far side of what lies on its side: its like is drawn.
func (p *panel) hidden(placed []*panel) bool {
	return len(placed) > 0 && placed[0].onSide && slices.ContainsFunc(placed, func(o *panel) bool { return o.made == p.made || o.name == schematic.OtherSide(p.name) })
}

// joined reports whether a join, or stitches on hold, bind a piece to another.
func (a *assembly) joined(m *schematic.Made) bool {
	for _, o := range a.g.Pieces {
		if goesOn := func(f schematic.HeldPart) bool { return f.Piece == m.Name || o.Worked() == m && f.Piece != "" }; slices.ContainsFunc(heldFrom(o.Worked()), goesOn) {
			return true
		}
	}
	return slices.ContainsFunc(a.g.Pattern.Joins, func(j schematic.Join) bool {
		own, other := false, false
		for _, ref := range slices.Concat(j.Sew, j.Into) {
			if of, _ := a.g.EdgesOf(ref); of != nil {
				own, other = own || of == m, other || of != m
			}
		}
		return own && other
	})
}

// drawsPartOf reports whether a panel of the piece is placed: what faces back of a round lies behind it.
func (a *assembly) drawsPartOf(m *schematic.Made) bool {
	return slices.ContainsFunc(a.placed, func(p *panel) bool { return p.made == m })
}

func (a *assembly) bondsOf(loop []side) map[string]bool {
	keys := keysOf(loop)
	for k := range keys {
		if strings.HasPrefix(k, "fold of ") {
			delete(keys, k)
		}
	}
	return keys
}

// mostClash is the area, in mm², and the share of the smaller panel, up to which two panels may lie on each other: what
// is sewn is never without a little of it.
const (
	mostClash      = 2500.0
	mostClashShare = 0.04
)

// clash is what two panels that lie on each other are told as, or nil.
func (a *assembly) clash() *finding.Finding {
	for i, x := range a.placed {
		for _, y := range a.placed[:i] {
			if x.face == back || y.face == back || x.strip || y.strip || !x.hung && !y.hung || x.over == y || schematic.HangsFree(x.made.Name) != schematic.HangsFree(y.made.Name) {
				continue
			}
			px, py := points(x.drawn), points(y.drawn)
			c, least := common(px, py), min(area(px), area(py))
			if c <= mostClash && c < least/2 || c <= mostClashShare*least { // or most of what is small, such as a strap
				continue
			}
			return &finding.Finding{Kind: "worn/overlap", Severity: finding.Note, Sizes: []string{a.g.Size}, Pos: x.made.Piece.Pos, Piece: x.made.Name,
				Message: fmt.Sprintf("the garment is not drawn as worn: %s and %s would lie on each other", x.name, y.name),
				Have:    fmt.Sprintf("%.0f cm² of both in one place", c/100), Want: "edges that lie side by side",
				Fix: "look at the joins of these two; the pieces are drawn as they are worked"}
		}
	}
	return nil
}

// sideWord is left or right, whichever a name says.
func sideWord(name string) string {
	for w := range strings.FieldsSeq(strings.ToLower(name)) {
		if w == "left" || w == "right" {
			return w
		}
	}
	return ""
}
