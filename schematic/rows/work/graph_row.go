package work

import (
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
)

// joined reports whether a row's instructions close it. Those that make the ring into which they go do not.
func joined(body []ins.Item) bool {
	for i, n := range body {
		switch n := n.(type) {
		case *ins.Join:
			if n.Name != "ring" || ringAlone(body) || slices.ContainsFunc(body[:i], func(n ins.Item) bool { return is[*ins.Stitch](n) || is[*ins.Repeat](n) }) {
				return true
			}
		case *ins.Repeat:
			if joined(n.Body) {
				return true
			}
		}
	}
	return false
}

// saysTriple reports whether words of US terms name the stitch that is taller than a double treble: tr tr, which UK terms name that one.
func saysTriple(words []ins.Word) bool {
	before := ""
	for _, w := range words {
		s := strings.ToLower(w.S)
		if s == "trtr" || s == "tr" && before == "tr" || strings.HasPrefix(s, "treble") && before == "triple" {
			return true
		}
		before = s
	}
	return false
}

// untold is the name of a group that instructions call and the text does not define; empty if there is none.
func untold(body []ins.Item) string {
	for _, n := range body {
		name := ""
		switch n := n.(type) {
		case *ins.Stitch:
			if n.Call != nil && n.Call.Untold() {
				name = n.Call.Name
			}
		case *ins.Repeat:
			name = untold(n.Body)
		}
		if name != "" {
			return name
		}
	}
	return ""
}

// alongEnds reports whether a row is worked into row ends.
func alongEnds(body []ins.Item) bool {
	for _, n := range body {
		for _, p := range placesOf(n) {
			if p.Kind == ins.RowEnds {
				return true
			}
		}
		if q, ok := n.(*ins.Repeat); ok && alongEnds(q.Body) {
			return true
		}
	}
	return false
}

// travel marks the slip stitches that go on to where a round begins.
func (row *GraphRow) travel() {
	if !row.Round {
		return
	}
	for i := range row.Stitches {
		s := &row.Stitches[i]
		if s.Stitch == nil || s.Stitch.ID != "slst" {
			break
		}
		s.Travel = i+1 < len(row.Stitches)
	}
}

// gap records the rows of a line that was not read: as many stitches of no known kind as
// it states, or none, if count is less than 0. What stands on a numbered row without a count
// is not known, until a row begins anew.
func (g *Graph) gap(r *runner, l *ins.Line, words string, count int) {
	row := GraphRow{Number: -1, Round: r.round, Line: l.At.Line, Unread: words, Unknown: count < 0, Name: nameOf(l)}
	if words == "" {
		row.Unread = "one of its numbers"
	}
	if l.Label == nil && count < 0 { // words that may be no row
		row.RS = len(g.Rows) == 0 || g.Rows[len(g.Rows)-1].RS
		g.Rows = append(g.Rows, row)
		return
	}
	g.lost = g.lost || count < 0
	for k := range min(r.times(l), maxGraph-g.total) {
		if r.no >= 0 && l.Label != nil {
			row.Number = r.no + 1 + k
		}
		switch {
		case r.round:
			row.RS = true
		case r.side == 0:
			row.RS = g.next()
		default:
			row.RS = (r.side == 1) == (k%2 == 1)
		}
		if g.total += max(count, 0); g.total > maxGraph {
			g.Cut = true
			return
		}
		row.Stitches = make([]GraphStitch, max(count, 0))
		for i := range row.Stitches {
			row.Stitches[i].Counts = true
		}
		g.keep(row)
	}
}

// crossing records the stitches of a crossing as made: those over the held ones first.
func (g *Graph) crossing(s GraphStitch) {
	c := s.Stitch.Cross
	feet := s.Feet
	for i := range c.Size() {
		one := s
		one.Cross, one.At, one.Feet = c, i, nil
		if i < len(feet) {
			one.Feet = feet[i : i+1 : i+1]
		}
		g.put(one)
	}
}

// unfounded notes that nothing tells what the row that was begun is worked into.
func (g *Graph) unfounded() {
	if g != nil {
		g.doubt = "what it is worked into is not known"
	}
}

// afar notes that a stitch is worked somewhere further down, and nothing says where.
func (g *Graph) afar(n ins.Item) {
	for _, p := range placesOf(n) {
		if p.Far && p.Kind == ins.InNext {
			g.unfounded()
		}
	}
}

const (
	misfits    = "it does not fit on the row below"
	whichSpace = "which space is the same one"
)

// fills reports whether the row that was begun works into every stitch of the row below.
func (g *Graph) fills() bool {
	if len(g.Rows) == 0 || g.cur.Back > 0 {
		return false
	}
	used := map[int]bool{}
	for i := range g.cur.Stitches {
		for _, f := range g.cur.Stitches[i].Feet {
			used[f] = true
		}
	}
	below := g.Rows[len(g.Rows)-1].Stitches
	for i := range below {
		if s := &below[i]; s.Counts && s.Stitch != nil && s.Stitch.ID != "ch" && !used[i] {
			return false
		}
	}
	return true
}

// unsure notes why it is not sure where a row that was worked over below stands, if it is not.
func (g *Graph) unsure(w *work, below *fabric) {
	if g == nil {
		return
	}
	if g.doubt == whichSpace && g.firstSame && !uses(w.found) && g.fills() { // the stitch that the round before was joined to: in same space, next sc
		g.doubt = ""
	}
	if g.Assumed > 0 && uses(w.found) { // nobody is told what does not fit there
		g.doubt = misfits
	}
	if chains, _ := w.out.chains(); misses(w.found) && w.out.stitches()+chains < 8*below.stitches() { // more than that is refused as it is
		g.doubt = misfits
	}
}
