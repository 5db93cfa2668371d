package grammar

import (
	"slices"
	"strings"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// putBack are stitches that go back onto the left needle, so that they are worked once more; right: one of them onto the right again.
type putBack struct {
	ins.Placed
	n      int // 0: those that were slipped
	right  bool
	worked ins.Item // what they are worked into; nil: what follows
}

var putBacks = []form{
	{rule: "psso", pattern: "(return/slip/sl/put/place/pass/replace/transfer/move/returning/slipping/placing) [back] [these/those/both/them/it/that/this/resulting [{n:num}] [slipped/slip/sl/resulting/new] [$st] | $st | {n:num} [slipped/slip/sl] [$st] | slipped/last/same [$st]] [just] [slipped/worked/knit/knitted] [back] [to/on/onto/into/over] [to] left/lh/l [hand] [-] [hand] [needle]", meaning: "slipped stitches go back onto the left needle", example: "Row 3: K2, sl 2, return these 2 sts to left needle, k2tog tbl, k to end", when: tests{inRow, said("to", "on", "onto", "into", "over", "back")}, build: func(m *match) any {
		b := &putBack{n: m.num("n", 0).All}
		switch {
		case b.n > 0:
		case m.said("both"):
			b.n = 2
		case m.said("it", "st", "stitch"):
			b.n = 1
		}
		return b
	}},
	{rule: "psso", pattern: "[insert/inserting] [tip of] left/lh [hand] [-] [needle] [tip] (in/into/through) (front/fronts/back/backs) [loop/loops] [of] [both/these/those/them] [{n:num}] [slipped] [$st] [from left to right | from right to left] [and] (move/transfer/return/slip/put/place) [them] [back] [to/on/onto] [left/lh] [hand] [-] [needle]", meaning: "slipped stitches go back onto the left needle", example: "Row 3: K2, sl 2, insert left needle into back loops of the two slipped sts and move to the left needle, k2tog, k to end", when: tests{inRow}, build: func(m *match) any { return &putBack{n: m.num("n", 2).All} }},
	{rule: "psso", pattern: "(return/slip/sl/put/place/pass/replace/transfer/move) [back] (it | [this/that/resulting/same/new] $st) [back] (to/on/onto) right/rh/r [hand] [-] [hand] [needle]", meaning: "a stitch goes onto the right needle", example: "Row 3: K2, k1, return it to left needle, pass next st over it, slip it to right needle, k to end", when: tests{inRow}, build: func(m *match) any { return &putBack{right: true} }},
	{rule: "psso", pattern: "[and] (pass/lift/draw/slip/bring) ($next [{n:num}] | second | {n:num}) [k/knit/p/purl] [$st] [on left [hand] needle] over [it | this [$st] | that [$st] | $st | first [$st] | [just] [-] purled/knitted/worked [$st]]", meaning: "the next stitch is passed over one that is worked", example: "Row 3: K3, return it to left needle, pass next st over it, slip it to right needle, k to end", when: tests{inRow, said("st", "sts", "stitch", "stitches")}, build: func(m *match) any { return &ins.BindOff{N: m.num("n", 1), Drop: true, Past: true} }},
	{rule: "psso", pattern: "[and] (k/knit/knitting/p/purl/purling/work) (them/both/these/those [2/two/3/three] [slipped] [$st]) together/tog [tbl/tbls | (in/into/through/thru) [back] loop/loops/lps [back]]", meaning: "slipped stitches are worked together", example: "Row 3: K2, sl 2 knitwise, return them to left needle and knit them together through back loops, k to end", when: tests{inRow}, build: func(m *match) any {
		id := knitOr(m.said("p", "purl", "purling"))
		n := "2"
		if m.said("3", "three") || m.p.slippedLast(m.from) == 3 {
			n = "3"
		}
		k := stitch.ByID(id + n + "tog")
		if k == nil {
			return nil
		}
		return &putBack{worked: &ins.Stitch{Kind: k, N: ins.N(1)}}
	}},
}

// slippedLast is how many stitches the words before i slip last.
func (p *parser) slippedLast(i int) int {
	n := 0
	for i--; i >= 0 && !isStar(p.at(i)) && p.at(i).Kind != 'g'; i-- {
		switch t := p.at(i); {
		case t.Is("sl", "slip") && p.at(i+1).Kind == 'n' && p.at(i+1).Num.All > 1:
			return p.at(i + 1).Num.All
		case t.Is("sl", "slip") && !p.at(i+1).Is("them", "it", "these"):
			n++
		case t.Is("k", "p", "knit", "purl"):
			return n
		}
	}
	return n
}

// reworked is a list of instructions in which stitches go back onto the left needle, as far as it was gone over.
type reworked struct {
	out  []ins.Item
	back int // so many were put back last
	made int // fewer than the words say: the others were made in the stretch before
}

// workedAgain takes the stitches that go back onto the left needle out of those that were worked: they are worked by what follows.
func workedAgain(list []ins.Item) []ins.Item {
	if !slices.ContainsFunc(list, func(n ins.Item) bool { return is[*putBack](n) || is[*ins.Repeat](n) }) {
		return list
	}
	var w reworked
	for _, n := range list {
		switch n := n.(type) {
		case *putBack:
			w.put(n)
			continue
		case *ins.Nothing, *ins.BindOff:
			w.out = append(w.out, n)
			continue
		case *ins.Stitch:
			if k := n.Kind; w.made > 0 && k != nil && k.Uses == w.made+1 && k.Makes == 1 { // *k1, slip both sts back, k2tog tbl: binds off
				w.out, w.made = append(w.out, &ins.BindOff{Placed: n.Placed, N: ins.N(w.made), Drop: true}), 0
				continue
			}
		case *ins.Repeat:
			n.Body = workedAgain(n.Body)
		}
		w.out, w.back = append(w.out, n), 0
	}
	return w.out
}

// put takes the stitches that n puts back out of those that were worked, or works them.
func (w *reworked) put(n *putBack) {
	back := w.back
	w.back = 0
	switch {
	case n.worked != nil:
		if back == 0 {
			w.out, _ = without(w.out, 0)
		}
		n.worked.Put(n.At)
		w.out = append(w.out, n.worked)
	case n.right && back > 0:
		w.out = append(w.out, &ins.Stitch{Placed: n.Placed, Kind: stitch.ByID("sl"), N: ins.N(1)})
	case n.right:
		w.out = append(w.out, &ins.Nothing{Placed: n.Placed})
	default:
		w.out, w.back = without(w.out, n.n)
		w.out, w.made = append(w.out, &ins.Nothing{Placed: n.Placed}), 0
		if w.back < n.n {
			w.made = w.back
		}
	}
}

// without takes n stitches that were slipped or worked one by one off the end of a list, 0: those that were slipped; and gives how many.
func without(list []ins.Item, n int) ([]ins.Item, int) {
	list = slices.Clone(list)
	taken := 0
	for i := len(list) - 1; i >= 0 && (n == 0 || taken < n); i-- {
		if is[*ins.Nothing](list[i]) {
			continue
		}
		s := inOne(list[i])
		if s == nil || s.Kind == nil || s.N.By != nil || len(s.Places) > 0 || !strings.HasPrefix(s.Kind.ID, "sl") && (n == 0 || s.Kind.ID != "k" && s.Kind.ID != "p") {
			break
		}
		less := s.N.All
		if n > 0 {
			less = min(less, n-taken)
		}
		if taken += less; less == s.N.All {
			list[i] = &ins.Nothing{Placed: s.Placed}
			continue
		}
		rest := *s
		rest.N = ins.N(s.N.All - less)
		list[i] = &rest
	}
	return list, taken
}

// inOne is a stitch, or one that is repeated so many times: (sl 1) 2x. Nil: it is something else.
func inOne(n ins.Item) *ins.Stitch {
	if s, ok := n.(*ins.Stitch); ok {
		return s
	}
	q, ok := n.(*ins.Repeat)
	if !ok || q.Times.By != nil || q.Times.All < 1 {
		return nil
	}
	var one *ins.Stitch
	for _, n := range q.Body {
		switch s, ok := n.(*ins.Stitch); {
		case ok && one == nil && s.N.By == nil:
			one = s
		case !is[*ins.Nothing](n):
			return nil
		}
	}
	if one == nil {
		return nil
	}
	all := *one
	all.N = ins.N(one.N.All * q.Times.All)
	return &all
}
