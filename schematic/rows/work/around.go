package work

import ins "flatwright/schematic/rows/instructions"

// around is what a row is worked as: where its instructions stand once, as in 2 sc, inc (24), or go around
// together, as in inc, sc around (18), and its count says so, they are worked again and again.
func (r *runner) around(l *ins.Line, body []ins.Item) []ins.Item {
	once := onceAround(body)
	if once == nil || l.Stated == nil || r.fab == nil || !r.known {
		return body
	}
	if near, fits := r.tried(l, body); fits || near && len(placesOf(body[len(body)-1])) == 0 {
		return body
	}
	again := []ins.Item{&ins.Repeat{Placed: placed(body), Body: once, Until: ins.Extent{Kind: ins.ToEnd}, Stop: -1}}
	if near, fits := r.tried(l, again); fits || near {
		return again
	}
	return body
}

func placed(body []ins.Item) ins.Placed {
	at := body[0].Span()
	if last := body[len(body)-1].Span(); last.Line == at.Line {
		at.End = last.End
	}
	var p ins.Placed
	p.Put(at)
	return p
}

// onceAround is a row of a few stitches of which none says where it is worked, save that the last may go
// around; nil if it is not so.
func onceAround(body []ins.Item) []ins.Item {
	const most = 12
	if len(body) == 0 || len(body) > most {
		return nil
	}
	if q, ok := body[0].(*ins.Repeat); ok && len(body) == 1 && q.Until.Kind == ins.NoExtent && len(q.Places) == 0 && q.Times.At(0) <= 1 {
		return q.Body // *1 sc, 1 inc* (18)
	}
	var out []ins.Item
	for i, n := range body {
		st, ok := n.(*ins.Stitch)
		switch {
		case !ok:
			return nil
		case len(st.Places) == 1 && i > 0 && i == len(body)-1 && st.Places[0].Kind == ins.InEach && st.Places[0].Extent.Kind == ins.ToEnd && !st.Places[0].Unit.Space:
			bare := *st
			bare.Places = nil
			out = append(out, &bare)
		case len(st.Places) > 0 || len(st.Also) > 0:
			return nil
		default:
			out = append(out, n)
		}
	}
	if len(out) < 2 {
		return nil
	}
	return out
}

// tried reports whether a row, worked so, uses all that is there and makes about what it states, and whether it makes just that.
func (r *runner) tried(l *ins.Line, body []ins.Item) (near, fits bool) {
	g, trace := r.g, r.trace
	r.g, r.trace = nil, nil
	defer func() { r.g, r.trace = g, trace }()
	rd := r.reading
	rd.pick = &picks{taken: rd.pick.taken, asked: rd.pick.asked}
	res := r.try(&rd, l, body)
	if len(res.found) > 0 || res.total {
		return false, false
	}
	said, made := r.said(l), res.out.stitches()
	return 10*max(said-made, made-said) <= said, len(r.misfits(l, res.out)) == 0
}
