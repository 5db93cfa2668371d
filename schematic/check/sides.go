package check

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/finding"
)

// sides holds left and right in the names of pieces and parts against where they are worn.
// Right side facing, the left of a back as drawn is left as worn, and the left of a front is
// right; of a body in one piece the left front lies on the left of the back. So the armhole of a
// left front is on its right as drawn (common practice).
func sides(g *schematic.Garment) finding.List {
	var all finding.List
	for _, m := range g.Pieces {
		if m.Broken || m.MirrorOf != "" || m.Piece == nil {
			continue
		}
		all = append(all, neckSides(g, m)...)
		if m.Round {
			continue
		}
		all = append(all, panelSides(g, m)...)
		if len(m.Views) != 1 {
			continue
		}
		if left, ok := leftOrRight(m.Name); ok {
			all = append(all, pieceSide(g, m, left)...)
			continue
		}
		all = append(all, partSides(g, m)...)
		all = append(all, armholeSides(g, m)...)
	}
	return append(append(all, joinSides(g)...), oneSided(g)...)
}

// usedEdges are those that a join or a band takes up.
func usedEdges(g *schematic.Garment) map[string]bool {
	used := map[string]bool{}
	use := func(ref string) {
		m, edges := g.EdgesOf(ref)
		for i := range edges {
			used[edgeAt(m, &edges[i])] = true
		}
	}
	for i := range g.Pattern.Joins {
		for _, ref := range slices.Concat(g.Pattern.Joins[i].Sew, g.Pattern.Joins[i].Into) {
			use(ref)
		}
	}
	for _, p := range g.Pattern.Pieces {
		for _, o := range p.Onto {
			use(o.Edge)
		}
	}
	return used
}

// oneSided finds edges that are sewn to nothing, though the same edges on the other side are sewn together, such as the second side of a jacket.
func oneSided(g *schematic.Garment) finding.List {
	used := usedEdges(g)
	free := func(ref string) bool {
		m, edges := g.EdgesOf(ref)
		return m != nil && m.Make == 1 && len(edges) > 0 && !slices.ContainsFunc(edges, func(e schematic.Edge) bool { return used[edgeAt(m, &e)] })
	}
	var all finding.List
	for i := range g.Pattern.Joins {
		j := &g.Pattern.Joins[i]
		if len(j.Sew) != 1 || len(j.Into) != 1 || j.How == schematic.InPlaces || j.How == schematic.AtFold {
			continue
		}
		sew, into := schematic.OtherSide(j.Sew[0]), schematic.OtherSide(j.Into[0])
		if sew == j.Sew[0] || into == j.Into[0] || !free(sew) || !free(into) {
			continue
		}
		all = append(all, finding.Finding{Kind: "joins/one-side", Severity: finding.Note, Pos: j.Pos, Sizes: []string{g.Size},
			Message: fmt.Sprintf("%s is sewn to %s, and at the other side %s and %s are sewn to nothing", j.Sew[0], j.Into[0], sew, into),
			Fix:     fmt.Sprintf("join %s to %s, if it is not left open", sew, into)})
	}
	return all
}

// edgeAt is an edge of a garment by its piece and place.
func edgeAt(m *schematic.Made, e *schematic.Edge) string {
	return fmt.Sprint(m.ID, e.View, e.Name, e.Path[0])
}

// joinSides holds the side of a back to which that of a left or right front is sewn against where that front is worn.
func joinSides(g *schematic.Garment) finding.List {
	var all finding.List
	for i := range g.Pattern.Joins {
		j := &g.Pattern.Joins[i]
		if len(j.Sew) != 1 || len(j.Into) != 1 {
			continue
		}
		a, own := g.EdgesOf(j.Sew[0])
		b, on := g.EdgesOf(j.Into[0])
		if len(own) != 1 || len(on) != 1 {
			continue
		}
		front, back := a.Name, on[0]
		if a.Kind == schematic.KindBack {
			front, back, a, b = b.Name, own[0], b, a
		}
		left, named := leftOrRight(front)
		if a.Kind != schematic.KindFront || b.Kind != schematic.KindBack || !named || back.Left == back.Right || back.Left == left || back.Name != "side" || len(pieceSide(g, a, left)) > 0 {
			continue
		}
		all = append(all, finding.Finding{Kind: "words/left-right", Severity: finding.Note, Pos: j.Pos, Piece: a.Name, Sizes: []string{g.Size},
			Message: fmt.Sprintf("%s is sewn to the %s side of %s", front, sideWord(back.Left), b.Name),
			Have:    "left and right of a back as drawn, right side facing, which are those of the wearer", Want: fmt.Sprintf("the %s side of %s", sideWord(left), b.Name),
			Fix: fmt.Sprintf("write %s %s side", b.Name, sideWord(left))})
	}
	return all
}

// neckSides holds the edges of a neck against where a neck is: on the inner side of a shoulder. One on its outer side would be drawn
// without a word, and its widths are not those of the neck.
func neckSides(g *schematic.Garment, m *schematic.Made) finding.List {
	n := len(m.Edges)
	var parts []string
	pos, what, have := finding.Pos{}, "neck", "a neck between the shoulder and the armhole"
	for i, e := range m.Edges {
		if e.Name != "shoulder" || n < 3 {
			continue
		}
		outer, ok := outerNeck(m, i)
		if !ok {
			continue
		}
		if len(parts) == 0 || outer.Pos.Line < pos.Line {
			pos = outer.Pos
		}
		if shapedOutside(m.Edges[(i+1)%n], outer) || shapedOutside(m.Edges[(i+n-1)%n], outer) {
			what, have = "shaping", "a straight neck, and an armhole that is shaped beside it"
		}
		parts = append(parts, e.Parts[max(0, len(e.Parts)-1):]...)
	}
	if pos.Line == 0 {
		return nil
	}
	if len(parts) == 0 {
		parts = []string{m.Name}
	}
	return finding.List{{Kind: "words/neck", Severity: finding.Warning, Pos: pos, Piece: m.Name, Sizes: []string{g.Size},
		Message: fmt.Sprintf("the %s of %s is at the outer edge of the shoulder", what, strings.Join(parts, ", ")),
		Have:    have, Want: "a neck on the inner side of the shoulder alone",
		Fix: "shape the other edge of the part (left edge for right edge, or the other way round), or call the outer edge armhole"}}
}

// neckBeside is the neck beside a shoulder, and whether it is known to be the outer one: where both neighbours are necks.
func neckBeside(edges []schematic.Edge, i int) (neck schematic.Edge, found, outer bool) {
	n := len(edges)
	before, after := edges[(i+n-1)%n], edges[(i+1)%n]
	switch {
	case before.Name != "neck" && after.Name != "neck":
		return schematic.Edge{}, false, false
	case before.Name == after.Name && n > 3:
		if edges[(i+n-2)%n].Name == "neck" { // it goes on there
			return after, true, true
		}
		return before, true, true
	case after.Name == "neck":
		return after, true, false
	}
	return before, true, false
}

// armholeSides holds the armholes of the two fronts that end a body worked to and fro against where they are: beside the back, and not at the front edge.
func armholeSides(g *schematic.Garment, m *schematic.Made) finding.List {
	lo, hi := reach(m.Views[0].Outline[0])
	off := func(e schematic.Edge) float64 { l, r := reach(e.Path); return (l + r - lo - hi) / 2 }
	var ends [2]schematic.Edge // of the parts, what is farthest to the left and to the right
	for _, e := range m.Edges {
		if len(e.Parts) == 0 || e.View != 0 {
			continue
		}
		for i, way := range []float64{-1, 1} {
			if ends[i].Path == nil || way*off(e) > way*off(ends[i]) {
				ends[i] = e
			}
		}
	}
	if m.Kind != schematic.KindBody || m.Round || !ofFront(ends[0]) || !ofFront(ends[1]) || ends[0].Parts[0] == ends[1].Parts[0] {
		return nil
	}
	var all finding.List
	for _, e := range ends {
		if e.Name == "armhole" {
			all = append(all, finding.Finding{Kind: "words/left-right", Severity: finding.Warning, Pos: e.Pos, Piece: m.Name, Sizes: []string{g.Size},
				Message: fmt.Sprintf("the armhole of %s is at the front edge of %s", e.Parts[0], m.Name),
				Have:    "left and right edges as drawn, right side facing", Want: "an armhole beside the back",
				Fix: fmt.Sprintf("swap left edge and right edge in %s", e.Parts[0])})
		}
	}
	return all
}

// ofFront reports whether an edge is of a part called a front.
func ofFront(e schematic.Edge) bool {
	return len(e.Parts) > 0 && strings.Contains(strings.ToLower(e.Parts[0]), "front")
}

// outerNeck is the edge called neck on the outer side of the shoulder at i: one of two between which it lies or, in a
// front or back divided into shoulders on both sides of its middle, one that is farther from there than the shoulder; in a half of a front or
// back one on the side of its armhole.
func outerNeck(m *schematic.Made, i int) (schematic.Edge, bool) {
	n, shoulder := len(m.Edges), m.Edges[i]
	before, found, outer := neckBeside(m.Edges, i)
	if !found || outer {
		return before, outer
	}
	if betweenShoulders(m.Edges, i, 1) || betweenShoulders(m.Edges, i, -1) {
		return before, false
	}
	of, whole := m.Views[shoulder.View].Outline[0], m.Kind == schematic.KindFront || m.Kind == schematic.KindBack
	if !whole { // the middle of a body in one piece is that of its back: the front's is that of its part
		if of = partOf(m, shoulder); of == nil {
			return schematic.Edge{}, false
		}
	}
	if whole && (shapedOutside(m.Edges[(i+1)%n], before) || shapedOutside(m.Edges[(i+n-1)%n], before)) {
		return before, true
	}
	return before, beyondShoulder(m, shoulder, before, of, whole) || whole && besideArmhole(m, before)
}

// beyondShoulder reports whether a neck lies farther from the middle of an outline than its shoulder, where another shoulder is on the other side.
func beyondShoulder(m *schematic.Made, shoulder, neck schematic.Edge, outline []schematic.Point, whole bool) bool {
	lo, hi := reach(outline)
	off := func(e schematic.Edge) float64 { l, r := reach(e.Path); return (l + r - lo - hi) / 2 }
	twoSided := slices.ContainsFunc(m.Edges, func(e schematic.Edge) bool {
		return e.Name == "shoulder" && e.View == shoulder.View && !slices.Equal(e.Parts, shoulder.Parts) && (whole || e.Parts[0] == shoulder.Parts[0]) && off(e)*off(shoulder) < 0
	})
	return twoSided && math.Abs(off(neck)) > math.Abs(off(shoulder))
}

// betweenShoulders reports whether the neck beside a shoulder, on or back along the outline, ends at another in a line with it, as that of a piece worked from side to side does.
func betweenShoulders(edges []schematic.Edge, i, way int) bool {
	n := len(edges)
	neck, other := edges[(i+way+n)%n], edges[(i+2*way+2*n)%n]
	level := func(e schematic.Edge) float64 { return e.Path[0].Y }
	return n > 3 && neck.Name == "neck" && other.Name == "shoulder" && slices.Equal(other.Parts, edges[i].Parts) && level(other) == level(edges[i])
}

// partOf are the edges of the part that a shoulder of a part of it ends, all together; nil where the shoulder is of the piece or of one part.
func partOf(m *schematic.Made, shoulder schematic.Edge) []schematic.Point {
	if len(shoulder.Parts) < 2 {
		return nil
	}
	var all []schematic.Point
	for _, e := range m.Edges {
		if e.View == shoulder.View && len(e.Parts) > 0 && e.Parts[0] == shoulder.Parts[0] {
			all = append(all, e.Path...)
		}
	}
	return all
}

// shapedOutside reports whether an armhole is straight up to where a neck begins and is shaped beside it, while the neck is straight:
// the shaping of the neck is at the other edge then.
func shapedOutside(armhole, neck schematic.Edge) bool {
	if armhole.Name != "armhole" || armhole.View != neck.View {
		return false
	}
	base := neck.Path[0]
	for _, p := range neck.Path {
		if p.X != base.X {
			return false
		}
		base.Y = min(base.Y, p.Y)
	}
	path := slices.Clone(armhole.Path)
	slices.SortStableFunc(path, func(a, b schematic.Point) int { return cmp.Compare(a.Y, b.Y) })
	top := path[len(path)-1]
	return math.Abs(path[0].X) > math.Abs(top.X) && !slices.ContainsFunc(path, func(p schematic.Point) bool { return p.Y <= base.Y && p.X != path[0].X })
}

// besideArmhole reports whether an edge is on the one side of its piece that has an armhole.
func besideArmhole(m *schematic.Made, neck schematic.Edge) bool {
	left, right := false, false
	for _, e := range m.Edges {
		if e.Name == "armhole" {
			left, right = left || e.Left, right || e.Right
		}
	}
	return left != right && neck.Left == left && neck.Right == right
}

// leftOrRight reports whether a name says left, and whether it says one of the two.
func leftOrRight(name string) (left, ok bool) {
	words := strings.Fields(strings.ToLower(name))
	left, right := slices.Contains(words, "left"), slices.Contains(words, "right")
	return left, left != right
}

func sideWord(left bool) string {
	if left {
		return "left"
	}
	return "right"
}

// pieceSide holds a front or back of one side against the side on which its armhole is.
func pieceSide(g *schematic.Garment, m *schematic.Made, left bool) finding.List {
	if m.Kind != schematic.KindFront && m.Kind != schematic.KindBack {
		return nil
	}
	onLeft, onRight := false, false
	for _, e := range m.Edges {
		if n := strings.ToLower(e.Name); n == "armhole" || n == "side" || n == "side seam" {
			onLeft, onRight = onLeft || e.Left, onRight || e.Right
		}
	}
	if onLeft == onRight || onLeft == (left == (m.Kind == schematic.KindBack)) {
		return nil
	}
	what := strings.ToLower(m.Kind.String())
	return finding.List{{Kind: "words/left-right", Severity: finding.Note, Pos: m.Piece.Pos, Piece: m.Name, Sizes: []string{g.Size},
		Message: fmt.Sprintf("the side of %s is on the %s as drawn, right side facing: that is a %s %s as worn", m.Name, sideWord(onLeft), sideWord(!left), what),
		Fix:     fmt.Sprintf("swap its left and right edges, or call it %s %s", sideWord(!left), what)}}
}

// partSides holds the parts of a whole front, back or body against where they are drawn.
func partSides(g *schematic.Garment, m *schematic.Made) finding.List {
	var wrong []string
	lo, hi := reach(m.Views[0].Outline[0])
	for _, name := range partNames(m) {
		left, ok := leftOrRight(name)
		switch {
		case !ok, m.Kind == schematic.KindBody && !strings.Contains(strings.ToLower(name), "front"):
			continue
		case m.Kind == schematic.KindFront:
			left = !left
		case m.Kind != schematic.KindBack && m.Kind != schematic.KindBody:
			continue
		}
		a, b := 0.0, 0.0
		first := true
		for _, e := range m.Edges {
			if slices.Contains(e.Parts, name) {
				l, r := reach(e.Path)
				if first {
					a, b, first = l, r, false
				}
				a, b = min(a, l), max(b, r)
			}
		}
		const slack = 0.01 // mm
		if mid := (lo + hi) / 2; left && a > mid-slack || !left && b < mid+slack {
			wrong = append(wrong, name)
		}
	}
	if len(wrong) == 0 {
		return nil
	}
	return finding.List{{Kind: "words/left-right", Severity: finding.Note, Pos: m.Piece.Pos, Piece: m.Name, Sizes: []string{g.Size},
		Message: fmt.Sprintf("%s of %s: left and right as worn are the other way round there", strings.Join(wrong, ", "), m.Name),
		Have:    "left and right as drawn", Want: "left and right as worn, as pieces and edges are called elsewhere",
		Fix: "swap left and right in their names, or call them first and second"}}
}

// panelSides holds the panels of a body or yoke worked flat against the order in which a
// right-side row meets them: the right front first from the hem, and the left one from the neck,
// where the work hangs upside down.
func panelSides(g *schematic.Garment, m *schematic.Made) finding.List {
	if m.From != schematic.FromHem && m.From != schematic.FromNeck {
		return nil
	}
	for _, s := range m.Piece.Sections {
		panels := s.Traits().Panels
		if len(panels) < 2 {
			continue
		}
		first, last := panels[0], panels[len(panels)-1]
		left, ok1 := leftOrRight(first.Name)
		other, ok2 := leftOrRight(last.Name)
		front := strings.Contains(strings.ToLower(first.Name+last.Name), "front")
		if !front || !ok1 || !ok2 || left == other || left == (m.From == schematic.FromNeck) {
			continue
		}
		return finding.List{{Kind: "words/left-right", Severity: finding.Note, Pos: first.Pos, Piece: m.Name, Sizes: []string{g.Size},
			Message: fmt.Sprintf("a right-side row begins at the %s front as worn, and the first panel is called %s", sideWord(!left), first.Name),
			Want:    "left and right as worn", Fix: "list the panels in the other order, or swap left and right in their names"}}
	}
	return nil
}

func partNames(m *schematic.Made) []string {
	var names []string
	for _, e := range m.Edges {
		for _, p := range e.Parts {
			if !slices.Contains(names, p) {
				names = append(names, p)
			}
		}
	}
	return names
}

func reach(path []schematic.Point) (lo, hi float64) {
	for i, p := range path {
		if i == 0 {
			lo, hi = p.X, p.X
		}
		lo, hi = min(lo, p.X), max(hi, p.X)
	}
	return lo, hi
}
