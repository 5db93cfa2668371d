package rows

import (
	"flatwright/schematic/finding"
)

// label holds the number and the side of a row against the rows before it.
func (r *runner) label(l *Line) {
	b := l.Label
	told := false
	if !b.Next {
		from := b.From.At(r.size)
		if from == none {
			return
		}
		want := r.no + 1
		if e := r.every; e != nil && r.no > 0 && from == want+1 && want%2 == e.Label.From.At(r.size)%2 { // Row 2 and all WS rows
			r.repeat(e, e.Body, 1, "")
			want = r.no + 1
		}
		if b.Odd || b.Even {
			r.every = l
		}
		switch {
		case r.no < 0:
		case from == want, r.altNo > 0 && from == r.altNo:
		case r.founded && from <= 2 && r.no == 0: // the foundation row may be called row 1
		case r.fresh && (from == 1 || !r.begun && len(r.lefts) > 0):
		default:
			word := "row"
			if b.Round {
				word = "round"
			}
			r.tell("rows/number", finding.Warning, b.At, "this is called "+word+" %s, but the one before it was "+word+" %s", "call it %s, or put the missing "+word+"s in", from, r.no, want)
			r.altNo, told = want, true
			r.suspect, r.side = suspectRows, 0
		}
		if !told {
			r.altNo = 0
		}
		if r.no < 0 && l.Stated != nil && !r.known {
			r.known = true
		}
		r.no = from - 1
	}
	if r.fresh && inRing(l.Body) && r.fab != nil && !r.fab.ring { // a magic ring begins anew
		r.fab, r.carry, r.alt = nil, nil, nil
		r.cur.anew = true
	}
	r.fresh, r.founded = false, false
	r.round = b.Round
	if usesNothing(l.Body) { // along an edge: sides begin anew
		r.side = 0
	}
	if b.Side != 0 && r.side != 0 && !b.Round && b.Side == r.side {
		names := [...]string{1: "right", 2: "wrong"}
		r.tell("rows/side", finding.Warning, b.At, "this is called a "+names[b.Side]+"-side row, and so was the row before it", "call it "+[...]string{1: "(WS)", 2: "(RS)"}[b.Side]+", or put the row between them in")
		r.side = 0
	} else if b.Side != 0 {
		r.side = 3 - b.Side // count turns it
		if b.Round {
			r.side = b.Side
		}
	}
}

// times is how many rows a label stands for.
func (r *runner) times(l *Line) int {
	b := l.Label
	if b == nil {
		return 1
	}
	if b.Next {
		return max(b.From.At(r.size), 0)
	}
	if len(b.Listed) > 0 || b.Odd || b.Even {
		return 1
	}
	from, to := b.From.At(r.size), b.To.At(r.size)
	if from == none || to == none {
		return 0
	}
	if to < from {
		r.tell("rows/number", finding.Warning, b.At, "these rows go from %s to %s, which is backwards", "put the smaller number first", from, to)
		return 1
	}
	return min(to-from+1, maxNumber)
}

// count counts k rows as done.
func (r *runner) count(l *Line, k int) {
	if r.no >= 0 {
		r.no += k
	}
	if r.altNo > 0 {
		r.altNo += k
	}
	if !r.round && r.side != 0 && k%2 == 1 {
		r.side = 3 - r.side
	}
	r.begun = true
}

func nameOf(l *Line) string {
	if l.Label != nil {
		return l.Label.Name
	}
	return ""
}

// usesNothing reports whether a row needs no row below.
func usesNothing(body []*Node) bool {
	for _, n := range body {
		if n.Op == OpPickUp || n.Op == OpCastOn {
			return true
		}
		for _, p := range n.Places {
			if p.Kind == InRing || p.Kind == RowEnds || p.Unit.Word == "held" {
				return true
			}
		}
	}
	return false
}

// inRing reports whether a row is worked into a ring.
func inRing(body []*Node) bool {
	for _, n := range body {
		for _, p := range n.Places {
			if p.Kind == InRing {
				return true
			}
		}
	}
	return false
}

// foundationOf is how many nodes of a row chain its own foundation: ch 31, sc in 2nd
// ch from hook.
func foundationOf(body []*Node) int {
	if len(body) < 2 || body[0].Op != OpChain {
		return 0
	}
	for _, n := range body[1:] {
		for _, p := range n.Places {
			if p.Kind == FromHook && !(n.Stitch != nil && n.Stitch.ID == "slst") {
				return 1
			}
		}
		if n.Op != OpNothing {
			return 0
		}
	}
	return 0
}
