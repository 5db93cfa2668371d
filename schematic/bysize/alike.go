// Package bysize holds what is seen across the sizes of a pattern: worked in all of them, what is alike in each is drawn once and
// called alike; and which step from size to size is unlike the others.
package bysize

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"

	"flatwright/schematic"
)

// WorkAll works the pattern in every size, in the order of the sizes, and draws panels that
// are alike in all of them once (see DrawOnce).
func WorkAll(p *schematic.Pattern) []*schematic.Garment {
	all := make([]*schematic.Garment, p.Sizes.Len())
	for i := range all {
		all[i] = schematic.Work(p, i)
	}
	DrawOnce(all)
	return all
}

// DrawOnce draws once the panels of a row that lie side by side and are the same, or each other's
// mirror image, in every one of the garments: the gores of a skirt, the wedges of a crown. The garments are
// the sizes of one pattern, as Work gives them; a drawing of one size needs but that one.
// Edges and measurements of a panel that is no longer drawn by itself can still be named.
func DrawOnce(gs []*schematic.Garment) {
	names := map[string]bool{}
	for _, g := range gs {
		for _, m := range g.Pieces {
			if names[m.Name] {
				continue
			}
			names[m.Name] = true
			if made := piecesCalled(gs, m.Name); len(made) > 0 {
				oneSide(made)
				gather(gs, made)
			}
		}
	}
}

// piecesCalled are a piece in all sizes that have it.
func piecesCalled(gs []*schematic.Garment, name string) []*schematic.Made {
	var all []*schematic.Made
	for _, g := range gs {
		for _, m := range g.Pieces {
			if m.Name == name {
				all = append(all, m)
			}
		}
	}
	return all
}

// gather gathers the panels of one piece, in all its sizes.
func gather(gs []*schematic.Garment, made []*schematic.Made) {
	n := len(made[0].Views)
	for _, m := range made[1:] {
		if len(m.Views) != n {
			return
		}
	}
	// as is, for each view, the likeness to the view before it.
	as := make([]likeness, n)
	any := false
	for i := 1; i < n; i++ {
		as[i] = inAll(made, i-1, i)
		any = any || as[i] != unlike
	}
	if !any {
		return
	}
	first := 0
	if made[0].Round && as[0] == unlike {
		first = acrossJoin(as, inAll(made, n-1, 0))
	}
	to := make([]int, n) // the view that is drawn for it
	flip := make([]bool, n)
	for k := range n {
		i := (first + k) % n
		prev := (i + n - 1) % n
		if k == 0 || as[i] == unlike {
			to[i] = i
			continue
		}
		to[i], flip[i] = to[prev], flip[prev] != (as[i] == mirrored)
	}
	d := newDrawnFor(to, flip)
	for _, m := range made {
		drawOnce(m, d)
	}
	for _, g := range gs {
		followSeams(g, made, d)
	}
}

// drawnFor is, for each view, the one that is drawn for it, whether that shows it mirrored, and, of one that is drawn, its place
// among those.
type drawnFor struct {
	to   []int
	flip []bool
	at   []int
}

func newDrawnFor(to []int, flip []bool) drawnFor {
	d := drawnFor{to, flip, make([]int, len(to))}
	kept := 0
	for i, k := range to {
		if d.at[i] = kept; k == i {
			kept++
		}
	}
	return d
}

// acrossJoin is the view with which those that are alike on both sides of a round's join begin, where the first is
// as it says like the last: the row has no beginning, and they lie side by side.
func acrossJoin(as []likeness, last likeness) int {
	if last == unlike {
		return 0
	}
	first := 0
	for i := len(as) - 1; i > 0 && as[i] != unlike; i-- {
		first = i
	}
	if first == 0 {
		return 0
	}
	if first--; first > 0 {
		as[0] = last
	}
	return first
}

// likeness is how two panels are alike.
type likeness int

const (
	unlike likeness = iota
	same
	mirrored
)

// inAll is how views i and k of a piece are alike in all its sizes.
func inAll(made []*schematic.Made, i, k int) likeness {
	is := unlike
	for _, l := range []likeness{same, mirrored} {
		if !slices.ContainsFunc(made, func(m *schematic.Made) bool { return !alike(m, i, k, l) }) {
			is = l
			break
		}
	}
	return is
}

// alike reports whether two views are panels that show the same, the one perhaps mirrored: outline,
// lines, ribs, marks, matching marks and what is measured.
func alike(m *schematic.Made, i, k int, l likeness) bool {
	a, b := &m.Views[i], &m.Views[k]
	if !a.Panel || !b.Panel || a.Half != b.Half || a.Disc != b.Disc || len(a.Outline) != len(b.Outline) || m.Broken {
		return false
	}
	return slices.Equal(shows(a, false), shows(b, l == mirrored)) && slices.Equal(measured(m, i), measured(m, k))
}

// shows are the things that a view shows, in an order of their own, as text. Places are told to
// a thousandth of a millimetre.
func shows(v *schematic.View, flip bool) []string {
	at := func(p schematic.Point) string {
		if flip {
			p.X = -p.X
		}
		return fmt.Sprintf("%d,%d", int64(math.Round(p.X*1000)), int64(math.Round(p.Y*1000)))
	}
	ring := func(ps []schematic.Point) string {
		var all []string
		for _, p := range ps {
			all = append(all, at(p))
		}
		if flip {
			slices.Reverse(all)
		}
		from := slices.Index(all, slices.Min(all)) // wherever it begins
		return strings.Join(append(all[from:], all[:from]...), " ")
	}
	ends := func(a, b schematic.Point) string {
		p, q := at(a), at(b)
		return min(p, q) + " " + max(p, q)
	}
	var all []string
	add := func(parts ...any) { all = append(all, fmt.Sprint(parts...)) }
	for _, l := range v.Outline {
		add("outline ", ring(l))
	}
	for _, l := range v.Lines {
		add("line ", int(l.Kind), l.Name, " ", ends(l.A, l.B))
	}
	for _, r := range v.Ribs {
		add("rib ", ring(r.Poly), r.Gap, " ", ends(schematic.Point{}, r.Dir))
	}
	for _, n := range v.Notches {
		add("notch ", n.Number, " ", at(n.At))
	}
	for _, k := range v.Marks {
		add("mark ", k.What, " ", k.Name, " ", at(k.At))
	}
	for _, k := range v.Parts {
		add("part ", k.Name, " ", at(k.At))
	}
	add("arrow ", at(v.Arrow))
	slices.Sort(all)
	return all
}

// measured are the measurements of a view that a drawing shows.
func measured(m *schematic.Made, view int) []string {
	var all []string
	for _, s := range m.Measures {
		if s.View == view && s.Main {
			all = append(all, fmt.Sprint(s.Name, " ", int(s.Axis), " ", s.Length, s.Around, s.Count, s.Of))
		}
	}
	slices.Sort(all)
	return all
}

// shown is a view that is drawn as it stands for all that it shows.
func (d drawnFor) shown(views []schematic.View, i int) schematic.View {
	v := views[i]
	var names []string
	for k, to := range d.to {
		if to != i {
			continue
		}
		names = append(names, views[k].Name)
		if d.flip[k] {
			v.Mirror++
		}
	}
	if len(names) > 1 {
		v.Alike, v.Name = len(names), together(names)
	}
	return v
}

// drawOnce keeps the views that are drawn.
func drawOnce(m *schematic.Made, d drawnFor) {
	m.Keep()
	var kept []schematic.View
	for i, to := range d.to {
		if to == i {
			kept = append(kept, d.shown(m.Views, i))
		}
	}
	m.Views = kept
	for i := range m.Measures {
		s := &m.Measures[i]
		switch {
		case s.View == schematic.NoView:
		case d.to[s.View] == s.View:
			s.View = d.at[s.View]
		default:
			s.View, s.Main, s.Same = schematic.NoView, false, true
		}
	}
	for i := range m.Edges {
		follow(&m.Edges[i], d)
	}
}

// follow puts an edge on the view that is drawn for its own.
func follow(e *schematic.Edge, d drawnFor) {
	if d.flip[e.View] {
		*e = e.Mirrored()
	}
	e.View = d.at[d.to[e.View]]
}

// followSeams puts the edges of seams on the views that are drawn.
func followSeams(g *schematic.Garment, made []*schematic.Made, d drawnFor) {
	for i := range g.Seams {
		s := &g.Seams[i]
		for _, edges := range [][]schematic.Edge{s.Sew, s.Into} {
			for j := range edges {
				if slices.ContainsFunc(made, func(m *schematic.Made) bool { return m.ID == edges[j].Piece }) {
					follow(&edges[j], d)
				}
			}
		}
	}
}

// together is one name for several panels: Gore for Gore 1, Gore 2 and Gore 3.
func together(names []string) string {
	stem := unnumbered(names[0])
	if !slices.ContainsFunc(names, func(n string) bool { return n != names[0] }) {
		stem = names[0]
	} else if slices.ContainsFunc(names, func(n string) bool { return unnumbered(n) != stem }) {
		stem = ""
	}
	switch n := len(names); {
	case stem != "":
		return stem
	case n > 4:
		return fmt.Sprintf("%s, %s and %d more", names[0], names[1], n-2)
	default:
		return strings.Join(names[:n-1], ", ") + " and " + names[n-1]
	}
}

// unnumbered is a name without the number, or the one letter, at its end.
func unnumbered(name string) string {
	if i := strings.LastIndexByte(name, ' '); i > 0 {
		end := []rune(name[i+1:])
		if len(end) == 1 || !slices.ContainsFunc(end, func(r rune) bool { return !unicode.IsDigit(r) }) {
			return name[:i]
		}
	}
	return name
}
