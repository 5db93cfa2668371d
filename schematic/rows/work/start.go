package work

import (
	"slices"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// start is what an unnumbered line begins with.
type start struct {
	chain       *ins.Chain
	cast        *ins.CastOn
	yarn        *ins.JoinYarn
	picks       []*ins.PickUp
	held        []*ins.PickUp // those that waited, beside what is picked up
	ring, round bool
	stitches    bool
	part        bool // the stitches of a part that waits are worked too
	skipped     int
	magic       bool
}

func (r *runner) startOf(l *ins.Line) start {
	var s start
	for _, n := range l.Body {
		switch n := n.(type) {
		case *ins.Chain:
			s.chains(n, r.size)
		case *ins.CastOn:
			s.casts(n)
		case *ins.Join:
			s.magic = s.magic || n.Name == "ring" && s.chain == nil
			s.ring = s.ring || n.Name == "ring" || s.chain != nil
			s.round = s.round || n.Name == "round"
		case *ins.JoinYarn:
			s.yarn = n
		case *ins.Together:
			s.waited(n)
		case *ins.Skip:
			s.skips(n, r.size)
		case *ins.BindOff: // slip centre 20 sts onto a holder, rejoin yarn
			if k := max(n.N.At(r.size), 0); n.Hold && !n.Made && s.yarn == nil && (r.fab == nil || k != r.fab.stitches()) {
				s.skipped += k
			}
		case *ins.PickUp:
			s.stitches = true
			if n.Kind == nil || n.Kind.Craft == stitch.Knitting {
				s.picks = append(s.picks, n)
			}
		case *ins.Stitch:
			if s.closes(n) && len(l.Body) < 4 { // ch 4, sl st in first ch
				s.ring = true
				continue
			}
			s.stitches = true
			s.takes(n)
		case *ins.Repeat, *ins.Needles:
			s.stitches = true
		}
	}
	return s
}

// casts takes stitches that are cast on, first of all or between what is picked up.
func (s *start) casts(n *ins.CastOn) {
	switch {
	case len(s.picks) > 0:
		s.held = append(s.held, &ins.PickUp{N: n.N})
	case s.chain == nil && s.cast == nil && !s.stitches:
		s.cast = n
	}
}

// waited takes stitches that waited, beside what is picked up.
func (s *start) waited(n *ins.Together) {
	for _, p := range n.Parts {
		s.held = append(s.held, &ins.PickUp{N: p.N})
	}
}

// takes takes what a stitch says of those that waited: k52 held sts, beside those picked up.
func (s *start) takes(n *ins.Stitch) {
	if len(n.Places) == 1 && n.Places[0].Unit.Word == "held" && n.Places[0].Kind == ins.InNext {
		s.held = append(s.held, &ins.PickUp{N: n.Places[0].N})
	}
	s.part = s.part || slices.ContainsFunc(n.Places, func(p ins.Place) bool { return p.Extent.Part })
}

func (s *start) chains(n *ins.Chain, size int) {
	if s.cast == nil && !s.stitches && (s.chain == nil || s.chain.N.At(size) <= 1 && n.N.At(size) > 1) {
		s.chain = n
	}
}

func (s *start) skips(n *ins.Skip, size int) {
	if s.yarn != nil {
		return
	}
	for _, p := range n.Places {
		s.skipped += max(p.N.At(size), 0)
	}
}

// closes reports whether a slip stitch closes the chain to a ring.
func (s *start) closes(n *ins.Stitch) bool {
	return s.chain != nil && n.Kind != nil && n.Kind.ID == "slst"
}

// mostTab is how many stitches a tab of garter stitch has at most.
const mostTab = 8

// pickUp begins with stitches picked up. Those on the needle go on beside them, if the count says so, or if a
// small tab is picked up on two of its edges.
func (r *runner) pickUp(l *ins.Line, s start) {
	live := 0
	if r.fab != nil && r.known() {
		live = r.fab.stitches()
	}
	k := r.said(l)
	n := r.picked(l, s, live, k)
	wait := s.part && live == 0
	if wait && k > n {
		n = k
	}
	if wait = wait || n == 0 && slices.ContainsFunc(s.picks, func(p *ins.PickUp) bool { return p.Rate }); k > n && wait {
		n = k
	}
	r.anew()
	r.put(uniform(knitStitch(), n), !wait || k >= 0)
	r.round = s.round
	if r.g != nil {
		r.g.anew()
		r.g.foundation(r.fab, l.At.Line, s.round)
	}
	if l.Stated != nil {
		r.checkOnly(l)
	}
}

// picked is how many stitches a line has that picks up some, where live ones are on the needle and k are stated.
func (r *runner) picked(l *ins.Line, s start, live, k int) int {
	n := 0
	for _, p := range append(s.picks, s.held...) {
		n += max(p.N.At(r.size), 0)
	}
	n += r.shapedBeside(l)
	if worked, all := r.workedBeside(l); live > 0 && (r.fab.waited && r.worksAll(l) || all && worked == live && k < 0) {
		return n + live
	}
	n = r.beside(l, n, live, k)
	if live > 0 && (k == n+live || k < 0 && (s.part || len(s.picks) > 1 && live <= mostTab)) {
		n += live
	}
	return n
}

// shapedBeside is how many stitches a line that picks up some makes more, in words: inc 1 st at centre back.
func (r *runner) shapedBeside(l *ins.Line) (n int) {
	for _, it := range l.Body {
		s, ok := it.(*ins.Shape)
		switch {
		case !ok || s.HasTimes || s.Every.Set():
		case s.Inc:
			n += max(s.N.At(r.size), 0)
		default:
			n -= max(s.N.At(r.size), 0)
		}
	}
	return n
}

// mostSlip is by how many stitches the numbers of a line that counts all it works may miss what it states, and be wrong rather than leave others out.
const mostSlip = 2

// beside is how many stitches a line has that picks up n, where live ones are on the needle and k are stated.
func (r *runner) beside(l *ins.Line, n, live, k int) int {
	worked, all := r.workedBeside(l)
	switch {
	case k > n+worked && r.fab != nil && !r.known() && !(all && worked > 0 && k-n-worked <= mostSlip): // beside others of which it is not known how many they are
		return k
	case worked == 0 && all:
	case k >= 0 && (!all || k == n+worked || k == n+worked-worksAgain(l, r.size)):
		return k
	case all && (live == 0 || k >= 0):
		return n + worked
	}
	return n
}

// takesAll reports whether a line that joins yarn and picks up stitches tells each of those that waited, and states how many they are.
func (r *runner) takesAll(l *ins.Line, s start) bool {
	n, all := r.workedBeside(l)
	for _, p := range append(s.picks, s.held...) {
		n += max(p.N.At(r.size), 0)
	}
	return all && n > 0 && l.Stated != nil && 2*max(n-r.said(l), r.said(l)-n) < n
}

// worksAgain is how many stitches a line that picks up stitches works last of those that it began with: knit across 16 heel sts, pick
// up 15, …, k 8 heel sts.
func worksAgain(l *ins.Line, size int) int {
	var list []*ins.Stitch
	for _, it := range l.Body {
		if s, ok := it.(*ins.Stitch); ok {
			list = append(list, s)
		}
	}
	if k := len(list); k > 1 && list[k-1].Kind == list[0].Kind && 2*countOf(list[k-1], size) == countOf(list[0], size) {
		return countOf(list[k-1], size)
	}
	return 0
}

// countOf is how many stitches a stitch is told to be worked over.
func countOf(s *ins.Stitch, size int) int {
	if len(s.Places) == 1 && s.Places[0].Kind == ins.InNext {
		return max(s.Places[0].N.At(size), 0)
	}
	return max(s.N.At(size), 0)
}

// worksAll reports whether a line that picks up stitches works all those on the needle too, told as one stretch or not at all.
func (r *runner) worksAll(l *ins.Line) bool {
	for _, it := range l.Body {
		s, ok := it.(*ins.Stitch)
		if ok && (s.Kind == nil || s.Kind.Uses != 1 || s.Kind.Makes != 1 || len(s.Places) != 1 || s.Places[0].Extent.Kind != ins.ToEnd && !s.Places[0].Extent.Part) || is[*ins.Repeat](it) {
			return false
		}
	}
	return true
}

// workedBeside is how many stitches a line works beside those that it picks up, and whether each of them is counted.
func (r *runner) workedBeside(l *ins.Line) (n int, all bool) {
	all = true
	for _, it := range l.Body {
		s, ok := it.(*ins.Stitch)
		switch {
		case is[*ins.Repeat](it):
			all = false
		case !ok || len(s.Places) == 1 && s.Places[0].Unit.Word == "held":
		case s.Kind != nil && (s.Kind.Uses != 1 || s.Kind.Makes != 1), len(s.Places) > 1:
			all = false
		case len(s.Places) == 0:
			n += max(s.N.At(r.size), 0)
		case s.Places[0].Kind == ins.InNext && s.Places[0].Extent.Kind == ins.NoExtent:
			n += max(s.Places[0].N.At(r.size), 0)
		default:
			all = false
		}
	}
	return n, all
}
