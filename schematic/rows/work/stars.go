package work

import (
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
)

// starred is how the work stands at a sign of two stars or more, to which another piece is worked alike.
type starred struct {
	f     *fabric
	known bool
	no    int
	side  int
	lines int // of the section that stand before it
}

// starBefore keeps how the work stands before a line that has such a sign before it.
func (r *runner) starBefore(l *ins.Line) {
	if l.Mark != "" {
		if r.cur.marked == nil {
			r.cur.marked = map[string]int{}
		}
		r.cur.marked[l.Mark] = len(r.cur.rows)
	}
	if len(l.Words) == 0 {
		return
	}
	w := l.Words[0]
	if w.Line < 1 || w.Line > len(r.x.Src) {
		return
	}
	if !strings.HasPrefix(w.S, "**") && !slices.ContainsFunc(r.x.Src[max(w.Line-2, 0):w.Line], twoStars) {
		return
	}
	before := []rune(r.x.Src[w.Line-1])
	before = before[:min(max(w.Col-1, 0), len(before))]
	said := strings.TrimSpace(string(before))
	if said == "" && w.Line > 1 {
		if above := strings.TrimSpace(r.x.Src[w.Line-2]); strings.Trim(above, "*") == "" {
			said = above
		}
	}
	if strings.HasPrefix(w.S, "**") {
		said = w.S
	}
	r.star(said[len(strings.TrimRight(said, "*")):], slices.Index(r.section.Lines, l))
}

// starBehind keeps how the work stands behind a line that ends with such a sign.
func (r *runner) starBehind(l *ins.Line) {
	if len(l.Words) == 0 {
		return
	}
	w := l.Words[len(l.Words)-1]
	if w.Line < 1 || w.Line > len(r.x.Src) {
		return
	}
	if !twoStars(r.x.Src[w.Line-1]) {
		return
	}
	src := []rune(r.x.Src[w.Line-1])
	said := strings.TrimLeft(string(src[min(max(w.End-1, 0), len(src)):]), " .,;:)]")
	r.star(said[:len(said)-len(strings.TrimLeft(said, "*"))], slices.Index(r.section.Lines, l)+1)
}

// twoStars reports whether such a sign stands on a line.
func twoStars(line string) bool { return strings.Contains(line, "**") }

func (r *runner) star(sign string, lines int) {
	if len(sign) < 2 || r.cur == nil {
		return
	}
	if r.cur.stars == nil {
		r.cur.stars = map[string]starred{}
	}
	r.cur.stars[sign] = starred{f: r.fab, known: r.fab != nil && r.known() && len(r.others) == 0, no: r.no, side: r.side, lines: lines}
}

// asForStar goes to a sign of another piece: the latest of its stretches that has it.
func (r *runner) asForStar(n *ins.AsFor, chain []*piece) {
	from := slices.Index(r.pieces, chain[0])
	var at *starred
	for i, p := range r.pieces[from:] {
		if i > 0 && p.anew || p == r.cur {
			break
		}
		if s, ok := p.stars[n.To]; ok {
			at = &s
			r.cur.like = &likeness{pieces: r.pieces[from : from+i+1], lines: s.lines, row: -1}
		}
	}
	if at == nil || at.f == nil {
		r.put(r.fab, false)
		r.no = -1
		return
	}
	r.anew()
	r.put(at.f, at.known)
	r.no, r.side = at.no, at.side
}
