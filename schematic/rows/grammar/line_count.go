package grammar

import (
	"slices"

	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
)

// into is the lowest row that a line names, if it says to work behind something; else 0.
func (p *parser) into() int {
	behind, least := false, 0
	if !slices.ContainsFunc(p.line.Words, func(w ins.Word) bool { return w.S == "behind" }) {
		return 0
	}
	var look func(p *parser)
	look = func(p *parser) {
		for i := range p.t {
			behind = behind || p.t[i].Is("behind")
			if p.t[i].Kind == 'g' {
				look(p.within(p.t[i].Sub))
			}
			if v, to := p.named("rowbehind", i); to >= 0 {
				if n := v.(ins.Num); n.By == nil && (least == 0 || n.All < least) {
					least = n.All
				}
			}
		}
	}
	if look(p); !behind {
		return 0
	}
	return least
}

// countedTwice passes the number of rows that stands before their work though their name says it: Rows 7-9: work pattern for 3
// rows; *k3, p1; rep from * to end.
func countedTwice(l *ins.Line) {
	if l.Label == nil || l.Label.Next || l.Label.To.By != nil || l.Label.From.By != nil {
		return
	}
	for i, n := range l.Body {
		e, ok := n.(*ins.Even)
		if ok && e.Rows.By == nil && e.Rows.All > 1 && e.Rows.All == l.Label.To.All-l.Label.From.All+1 && slices.ContainsFunc(l.Body[i+1:], makes) {
			l.Body[i] = &ins.Nothing{Placed: e.Placed, Colour: e.Colour}
		}
	}
}

// count keeps how many rows 'these rows' would mean.
func (r *Reader) count(l *ins.Line) {
	for _, n := range l.Body {
		if _, ok := n.(*ins.RepeatRows); ok {
			r.these, r.lastNo, r.alternate = 0, 0, 0
			return
		}
	}
	if l.Label == nil {
		return
	}
	k := 1 + len(l.Label.Listed)
	if l.Label.To.Set() && l.Label.To.By == nil && l.Label.To.All > l.Label.From.All {
		k = l.Label.To.All - l.Label.From.All + 1
	}
	from := l.Label.From.All
	switch every := l.Label.Odd || l.Label.Even; {
	case every && from == 0: // all WS rows, which are none by themselves
		k, r.alternate = 0, map[bool]int{true: 1, false: 2}[l.Label.Odd]
	case every:
		r.alternate = 2 - from%2
	case r.alternate > 0 && r.lastNo > 0 && from == r.lastNo+2: // the one between
		k++
	}
	if r.these += k; k > 0 {
		r.lastNo = max(from, l.Label.To.All)
		for _, v := range l.Label.Listed {
			r.lastNo = max(r.lastNo, v.All)
		}
	}
}

// theseRows is how many rows 'these rows' would mean: with the last of them, if it is told by all rows of its side.
func (r *Reader) theseRows() int {
	if r.these > 0 && r.alternate > 0 && r.lastNo%2 != r.alternate%2 {
		return r.these + 1
	}
	return r.these
}

// tallied is a line in brackets that tells what the row before it has made: (4 groups of 5 stitches worked + sc):
var tallied = text.Once(`(?i)^\W*\(\d+ (?:groups?|sets?|clusters?|shells?) of \d[^()]*\)\W*$`)

// endCount takes the count at the end of a line off its instructions: the last one behind
// which nothing is worked any more.
func endCount(list []ins.Item, said []ins.StitchGroup) ([]ins.Item, []ins.StitchGroup) {
	var body []ins.Item
	counts := 0
	for k := len(list) - 1; k >= 0; k-- {
		s, ok := list[k].(*stated)
		if !ok {
			continue
		}
		if counts++; counts == mostCounts+1 && len(said) == 1 && said[0].Any { // k1, p1 x 3 (6 sts), k1, p1 x 6 (12 sts), …: of stretches of the row
			said = nil
			break
		}
		if said == nil && (!working(list[k+1:]) || onlyEnds(list[k+1:])) {
			said = s.groups
		}
	}
	for _, n := range list {
		if _, ok := n.(*stated); !ok {
			body = append(body, n)
		}
	}
	return body, said
}

// countWorked is a row that says no more than how many stitches it is, as that many worked: Rnd 4: 18 sts round.
func (r *Reader) countWorked(list []ins.Item, label *ins.Label) []ins.Item {
	if !r.crochet || label == nil || len(list) == 0 || working(list) {
		return list
	}
	n, ok := list[0].(*stated)
	if !ok || len(n.groups) != 1 || !n.groups[0].Any || n.groups[0].Side || n.groups[0].At.Col != n.At.Col {
		return list
	}
	return append([]ins.Item{&ins.Stitch{Placed: n.Placed, N: n.groups[0].N}}, list[1:]...)
}

// mostCounts is how many counts of any stitches a row may state: more of them are of stretches of it.
const mostCounts = 2

// onlyEnds reports whether what follows a count only closes the row, or begins the next.
func onlyEnds(list []ins.Item) bool {
	for _, n := range list {
		switch k := n.(type) {
		case *ins.Nothing, *ins.Turn, *ins.Join, *ins.Fasten, *ins.Chain, *ins.Unread, *stated, *ins.Leave, *ins.Measure:
		case *ins.Stitch:
			if k.Kind == nil || k.Kind.ID != "slst" {
				return false
			}
		default:
			return false
		}
	}
	return true
}
