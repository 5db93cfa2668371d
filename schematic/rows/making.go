package rows

import (
	"flatwright/schematic/finding"
	"flatwright/schematic/stitch"
)

// resolve is the kind of stitch of n, and how many stitches it leaves and takes: inc
// and dec are of the stitch in which the row is worked.
func (w *work) resolve(n *Node) (kind *stitch.Stitch, makes, uses int) {
	switch {
	case n.Stitch != nil:
		return n.Stitch, n.Stitch.Makes, n.Stitch.Uses
	case n.Name == "inc":
		k := w.kind()
		if k.Craft == stitch.Knitting {
			k = stitch.ByID("kfb")
		}
		return k, 2, 1
	case n.Name == "dec":
		k := w.kind()
		if k.Craft == stitch.Knitting {
			return stitch.ByID("k2tog"), 1, 2
		}
		return stitch.ByID(k.ID + "2tog"), 1, 2
	}
	return w.kind(), 1, 1
}

// foot makes what n says in one place: n.N stitches, or its group, N times.
func (w *work) foot(n *Node, feet []int) {
	if n.Op == OpGroup || n.Call != nil {
		list := n.Body
		times := 1
		var of *Group
		if n.Call != nil {
			list, of = n.Call.Body, n.Call
			times = max(w.n(n.N), 0)
		}
		for range times {
			w.out.groups++
			w.into(list, of, w.out.groups, feet)
		}
		return
	}
	kind, makes, uses := w.resolve(n)
	if kind.ID == "picot" {
		w.picots(max(w.n(n.N), 0), n)
		return
	}
	k := max(w.n(n.N), 0)
	group := 0
	if k*makes >= 3 && uses == 1 {
		w.out.groups++
		group = w.out.groups
	}
	w.emit(run{kind: kind, n: k * makes, group: group, one: kind.Together && uses > 1}, feet, n)
}

func (w *work) picots(k int, n *Node) {
	w.out.picots += k
	w.began = true
	if w.rec != nil && w.quiet == 0 && k > 0 {
		w.rec(stitch.ByID("picot"), k, 0, nil, n)
	}
}

// into makes the stitches of a bracket, all in one place.
func (w *work) into(list []*Node, of *Group, group int, feet []int) {
	for _, m := range list {
		if w.steps++; w.steps > maxSteps {
			return
		}
		switch m.Op {
		case OpStitch:
			if m.Call != nil {
				w.foot(m, feet)
				continue
			}
			kind, makes, _ := w.resolve(m)
			if kind.ID == "picot" {
				w.picots(max(w.n(m.N), 0), m)
				continue
			}
			if w.picotSlip(m) {
				continue
			}
			w.emit(run{kind: kind, n: max(w.n(m.N), 0) * makes, group: group, of: of, one: kind.Together}, feet, m)
		case OpChain:
			if !w.began && m.Counts != Unsaid || w.cur.pos == w.travel && !w.began {
				w.start(m)
				if w.tchAt { // it stands in the space itself
					w.tchAt = false
				}
				continue
			}
			if k := w.n(m.N); k > 0 {
				w.emit(run{chain: k, group: group, of: of}, nil, m)
			}
		case OpGroup:
			times := 1
			if m.Until.Kind == NoExtent {
				times = max(w.n(m.Times), 0)
			}
			for range min(times, maxSteps) {
				w.into(m.Body, of, group, feet)
				if w.steps > maxSteps {
					return
				}
			}
		}
	}
}

// picotSlip closes ch 3, sl st in 3rd ch from hook to a picot.
func (w *work) picotSlip(n *Node) bool {
	if n.Stitch == nil || n.Stitch.ID != "slst" || len(n.Places) != 1 {
		return false
	}
	p := n.Places[0]
	if p.Kind != FromHook && !(p.Kind == InFirst && p.Unit.Chain) {
		return false
	}
	k := len(w.out.runs) - 1
	if k < 0 || !w.out.runs[k].space() {
		return false
	}
	w.out.runs = w.out.runs[:k]
	w.picots(1, n)
	return true
}

// stitch works n.N stitches of a kind in its places.
func (w *work) stitch(n *Node, tail []*Node, need int) {
	if w.picotSlip(n) {
		return
	}
	if w.closing(n) {
		return
	}
	kind, makes, uses := w.resolve(n)
	if n.Stitch != nil && n.Stitch.ID == "picot" && len(n.Places) == 0 {
		w.picots(max(w.n(n.N), 0), n)
		return
	}
	if n.Call != nil {
		kind, makes, uses = nil, 1, 1
	}
	if len(n.Places) == 0 {
		k := w.n(n.N)
		if k <= 0 {
			return
		}
		if uses == 0 { // yo, m1
			w.takeTurning()
			w.emit(run{kind: kind, n: k * makes}, nil, n)
			return
		}
		if n.Call != nil {
			for range k {
				w.eachFoot(n, Place{Kind: InNext, N: Num{All: 1}, Unit: Unit{Word: "st"}, At: n.At})
			}
			return
		}
		w.spaced = false
		if uses > 1 || makes > 1 || kind.ID == "slst" || w.rec != nil {
			for range k {
				if w.steps++; w.steps > maxSteps {
					return
				}
				from := w.feetFrom()
				got := w.use(uses, nil, n.At)
				if got < uses {
					return
				}
				w.emit(run{kind: kind, n: makes}, w.feetTo(from), n)
			}
			return
		}
		got := w.use(k*uses, nil, n.At)
		w.emit(run{kind: kind, n: got}, nil, n)
		return
	}
	for i := range n.Places {
		last := i == len(n.Places)-1
		reserve := need
		if last && n.Places[i].Kind == InEach {
			reserve = w.reserve(tail, need)
		}
		if w.slipTravel(n, &n.Places[i], tail) {
			continue
		}
		w.place(n, &n.Places[i], reserve)
	}
}

// slipTravel takes slip stitches at the beginning that only lead to where the row
// starts: they are followed by a chain that starts it.
func (w *work) slipTravel(n *Node, p *Place, tail []*Node) bool {
	if n.Stitch == nil || n.Stitch.ID != "slst" || len(w.out.runs) > 0 || p.Kind == InEach {
		return false
	}
	if len(tail) == 0 {
		return false
	}
	if m := tail[0]; m.Op != OpChain && !(m.Op == OpGroup && len(m.Body) > 0 && m.Body[0].Op == OpChain) {
		return false
	}
	k := max(w.n(p.N), 0)
	w.tchAt = false
	if r := w.cur.run(); w.round && w.cur.atStart() && r != nil && r.tch { // the join stands on it
		w.cur.step(1)
	}
	if p.Unit.Space {
		before := w.cur.left
		at := w.cur.run()
		w.space(w.n(p.Unit.Size), p.At)
		if passed := before - w.cur.left; passed > 0 && at != nil && w.travel > 0 {
			w.tell("rows/under-use", finding.Warning, p.At, "%s stitches lie between the slip stitches and the space", "slip stitch in %s more", passed, passed)
		}
	} else {
		w.use(k, p.Unit.Stitch, p.At)
	}
	w.travel = w.cur.pos
	w.began = false
	return true
}

func (w *work) feetFrom() int {
	if w.rec == nil {
		return 0
	}
	w.takeTurning()
	c := w.cur
	c.passSpaces()
	return c.pos
}

func (w *work) feetTo(from int) []int {
	if w.rec == nil {
		return nil
	}
	var out []int
	for i := from; i < w.cur.pos; i++ {
		out = append(out, i)
	}
	return out
}

// place works n into one place.
func (w *work) place(n *Node, p *Place, reserve int) {
	k := w.n(p.N)
	if n.Op == OpStitch && n.Call == nil && w.n(n.N) == none || k == none {
		return // this size has none
	}
	switch p.Kind {
	case InNext:
		w.eachFoot(n, *p)
	case InFirst:
		w.first(n, *p)
	case InLast:
		w.last(n, *p)
	case InEach:
		w.each(n, p, reserve)
	case InSame:
		if w.tchAt || !w.began || w.cur.pos == 0 && !w.spaced {
			w.tchAt = false
			if w.cur.atStart() && w.cur.left > 0 {
				w.cur.passSpaces()
				w.cur.step(1)
				w.lastPos = w.cur.pos - 1
			}
		}
		w.foot(n, w.feet(w.lastPos))
	case InRing:
		if !w.from.ring && w.from.stitches() > 0 && !w.pinned {
			w.tell("rows/no-ring", finding.Warning, p.At, "there is no ring to work into", "join the chains to a ring first")
		}
		w.tchAt = false
		w.pinned = true
		w.together(n, p.At)
		w.foot(n, nil)
	case InTop:
		w.top(n, *p)
	case FromHook:
		w.hook(n, *p, k)
	case InCentre:
		w.centre(n, *p)
	case RowEnds:
		w.tchAt = false
		w.free, w.pinned, w.edge = true, true, true
		w.together(n, p.At)
		rows := w.rows
		if rows <= 0 {
			w.perRow = max(w.n(n.N), 1)
			w.out = &fabric{}
			return
		}
		kind, makes, _ := w.resolve(n)
		if w.rec != nil {
			for i := range rows {
				w.emit(run{kind: kind, n: max(w.n(n.N), 0) * makes}, []int{i}, n)
			}
			return
		}
		w.emit(run{kind: kind, n: rows * max(w.n(n.N), 0) * makes}, nil, n)
	}
}

func (w *work) feet(pos int) []int {
	if w.rec == nil || pos < 0 {
		return nil
	}
	return []int{pos}
}

// eachFoot works n into each of the next p.N places.
func (w *work) eachFoot(n *Node, p Place) {
	k := max(w.n(p.N), 0)
	kind, makes, uses := w.resolve(n)
	if n.Op == OpGroup || n.Call != nil {
		kind, uses = nil, 1
	}
	switch {
	case p.Unit.Word == "held" && w.from.stitches() == 0:
		w.together(n, p.At)
		w.free, w.pinned = true, true
		w.emit(run{kind: kind, n: k * makes * max(w.n(n.N), 0)}, nil, n)
	case p.Unit.Space:
		for range k {
			if w.steps++; w.steps > maxSteps || !w.space(w.n(p.Unit.Size), p.At) {
				return
			}
			w.foot(n, w.feet(w.lastPos))
		}
	case p.Unit.Group != nil:
		for range k {
			if w.steps++; w.steps > maxSteps || !w.nextGroup(p.Unit.Group, p.At) {
				return
			}
			w.foot(n, w.feet(w.lastPos))
		}
	case uses > 1: // sc2tog over next 2 sts
		times := max(k/uses, 1)
		if k%uses != 0 && k > 1 {
			w.tell("rows/over-use", finding.Warning, p.At, kind.Abbr(w.x.Terms)+" takes %s stitches, not %s", "say over the next %s stitches", uses, k, uses*times)
		}
		times *= max(w.n(n.N), 1)
		w.spaced = false
		for range times {
			if w.steps++; w.steps > maxSteps {
				return
			}
			from := w.feetFrom()
			if w.use(uses, p.Unit.Stitch, p.At) < uses {
				return
			}
			w.emit(run{kind: kind, n: makes}, w.feetTo(from), n)
		}
	default:
		w.spaced = false
		per := max(w.n(n.N), 0)
		plain := n.Op == OpStitch && n.Call == nil && w.rec == nil && per*makes < 3 && kind.ID != "picot"
		if plain {
			got := 0
			if p.Unit.Chain {
				got = w.chains(k, p.At)
			} else {
				got = w.use(k, p.Unit.Stitch, p.At)
			}
			w.emit(run{kind: kind, n: got * per * makes}, nil, n)
			return
		}
		for range k {
			if w.steps++; w.steps > maxSteps {
				return
			}
			got := 0
			if p.Unit.Chain {
				got = w.chains(1, p.At)
			} else {
				got = w.use(1, p.Unit.Stitch, p.At)
			}
			if got < 1 {
				return
			}
			w.foot(n, w.feet(w.lastPos))
		}
	}
}

// closing reports whether n is the slip stitch that joins a round to its beginning.
func (w *work) closing(n *Node) bool {
	if !w.round || n.Stitch == nil || n.Stitch.ID != "slst" || len(n.Places) != 1 || len(w.out.runs) == 0 || w.cur.left > 0 && !w.pinned {
		return false
	}
	k := n.Places[0].Kind
	return k == InFirst || k == InTop
}
