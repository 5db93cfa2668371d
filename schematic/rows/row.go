package rows

import (
	"flatwright/schematic/finding"
	"flatwright/schematic/stitch"
)

// work works one row in one size: instructions in, a row out.
type work struct {
	x                      *Text
	size                   int
	cur                    cursor
	out                    *fabric
	round                  bool
	found                  []raw
	quiet                  int // > 0: a trial, whose findings are counted only
	missed                 int
	assume                 Counts // of a chain of which nothing says whether it counts
	unsaid                 map[int]Span
	spaced                 bool // the last place was a chain space: stitches may be passed
	tchAt                  bool // a counting chain stands over the first stitch, not yet taken
	began                  bool // something has been made or used
	travel                 int  // stitches passed by slip stitches at the beginning
	from                   *fabric
	lastPos                int // element last worked into, for 'same'
	turned                 bool
	leave                  bool
	closed                 bool // bound off or fastened
	carry                  *Node
	next                   *Node // the turning chain at the end of the row
	rows                   int   // rows of the edge along which stitches are worked, 0: not known
	edge                   bool
	free                   bool // what is left over is not told (after a pick-up along an edge)
	plainKind              *stitch.Stitch
	steps                  int
	rec                    func(kind *stitch.Stitch, n, chain int, feet []int, nd *Node)
	made                   int // stitches made in this row, trials too
	psso                   int
	g                      *Graph
	startChain, startSpace int  // the chain that begins the row, and what of it is a space
	perRow                 int  // stitches in each row of an edge of which the rows are not known
	pinned                 bool // all stitches were worked into a ring or along an edge
}

// maxSteps bounds the work of one row, maxWork that of a whole text in one size.
const (
	maxSteps    = 40000
	maxStitches = 1000000
	maxWork     = 2000000
)

// body works the instructions of a row. stated is the count at its end, or -1.
func (w *work) body(list []*Node) {
	if w.carry != nil {
		w.start(w.carry)
	}
	w.seq(list, 0)
	w.takeTurning()
}

// seq works instructions in order; more is what comes after the whole sequence.
func (w *work) seq(list []*Node, need int) {
	for k, n := range list {
		if w.steps++; w.steps > maxSteps || w.closed {
			return
		}
		w.node(n, list[k+1:], need)
	}
}

// takeTurning takes the chain that the next row needs: over the first stitch.
func (w *work) takeTurning() {
	if w.tchAt {
		w.tchAt = false
		if w.cur.atStart() && w.cur.left > 0 && w.travel == 0 {
			w.cur.passSpaces()
			w.cur.step(1)
		}
	}
}

func (w *work) n(v Num) int { return v.At(w.size) }

func (w *work) emit(r run, feet []int, nd *Node) {
	w.steps++
	if w.made += max(r.n, 0); w.made > maxStitches {
		w.steps = maxSteps + 1 // no row of a garment is so long
	}
	if w.steps > maxSteps {
		return
	}
	if w.rec != nil && w.quiet == 0 {
		w.rec(r.kind, r.n, r.chain, feet, nd)
	}
	w.out.add(r)
	w.began = true
}

func (w *work) node(n *Node, tail []*Node, need int) {
	switch n.Op {
	case OpNothing, OpMeasure, OpFasten, OpUnread:
	case OpJoin:
		w.join(n)
	case OpTurn:
		w.turned = true
	case OpStitch:
		w.stitch(n, tail, need)
	case OpChain:
		w.chain(n, tail)
	case OpSkip:
		w.skippedChains(n)
		for i := range n.Places {
			w.skip(&n.Places[i])
		}
	case OpGroup:
		w.group(n, tail, need)
	case OpPsso:
		if w.g != nil && w.quiet == 0 && w.rec != nil {
			w.g.psso()
		}
		if w.out.stitches() > 0 {
			w.out.runs[len(w.out.runs)-1].n--
			if w.out.runs[len(w.out.runs)-1].n == 0 {
				w.out.runs = w.out.runs[:len(w.out.runs)-1]
			}
		}
		w.psso++
	case OpBindOff:
		w.began = true
		k := w.n(n.N)
		if n.Open {
			k = w.cur.left
			w.closed = true
		}
		w.use(max(k, 0), nil, n.At)
	case OpLeave:
		w.takeTurning()
		if !n.Open {
			if k := w.n(n.N); k != none && k != w.cur.left {
				w.tell("rows/unworked", finding.Warning, n.At, "%s stitches are left to leave unworked, not %s | %s stitches there, %s used | %s left unworked",
					"leave %s unworked, or mend the count before it", w.cur.left, k, w.from.stitches(), w.from.stitches()-w.cur.left, k, w.cur.left)
			}
		}
		w.leave = true
	case OpCastOn:
		w.emit(run{kind: w.kind(), n: max(w.n(n.N), 0)}, nil, n)
	case OpPickUp:
		kind := n.Stitch
		if kind == nil {
			kind = stitch.ByID("k")
		}
		w.free, w.pinned = true, true
		w.together(n, n.At)
		w.emit(run{kind: kind, n: max(w.n(n.N), 0)}, nil, n)
	}
}

// kind is the stitch in which the row is worked, for words that name none.
func (w *work) kind() *stitch.Stitch {
	if w.plainKind != nil {
		return w.plainKind
	}
	if k := w.out.main(); k != nil {
		return k.Plain()
	}
	if k := w.from.main(); k != nil {
		return k.Plain()
	}
	return stitch.ByID("sc")
}

// chain works ch n: at the beginning a turning chain, at the end one for the next
// row, elsewhere a chain space.
func (w *work) chain(n *Node, tail []*Node) {
	k := w.n(n.N)
	if k <= 0 {
		return
	}
	if !w.began && !w.tchAt && w.cur.pos == w.travel {
		w.start(n)
		return
	}
	if !w.round && endOfRow(tail) {
		turn := false
		for _, m := range tail {
			turn = turn || m.Op == OpTurn
		}
		if turn || w.cur.left == 0 {
			w.next = n
			return
		}
	}
	w.takeTurning()
	w.emit(run{chain: k}, nil, n)
}

func endOfRow(tail []*Node) bool {
	for _, m := range tail {
		if m.Op != OpTurn && m.Op != OpNothing && m.Op != OpFasten {
			return false
		}
	}
	return true
}

// start works the chain at the beginning of a row: it counts or not, as the text
// says, and is asked for where nothing says.
func (w *work) start(n *Node) {
	k := w.n(n.N)
	c := n.Counts
	if c == Unsaid {
		var ok bool
		if c, ok = w.x.Turning[k]; !ok {
			c = w.x.Turning[0]
		}
	}
	if c == Unsaid {
		if _, ok := w.unsaid[k]; !ok {
			w.unsaid[k] = n.At
		}
		c = w.assume
	}
	if c != CountsAsStitch {
		if w.g != nil && w.quiet == 0 {
			w.g.uncounted(k)
		}
		return
	}
	kind := n.As
	if kind == nil {
		kind = byTurning(k)
	}
	w.tchAt = true
	beyond := max(w.n(n.M), 0)
	if beyond == 0 && n.As == nil && n.M.By == nil && k > 4 {
		beyond = k - 3
	}
	w.out.add(run{kind: kind, n: 1, tch: true, tall: k})
	w.startChain, w.startSpace = k, max(w.n(n.M), 0)
	w.turning(kind, k-beyond, beyond, n)
	w.began = true
}

// turning records a chain that counts as a stitch, and makes the space of the chains
// beyond it.
func (w *work) turning(kind *stitch.Stitch, chain, beyond int, n *Node) {
	if w.rec != nil && w.quiet == 0 {
		var feet []int
		if w.travel > 0 { // it stands where the slip stitches led
			feet = w.feet(w.lastPos)
		}
		w.rec(kind, 1, max(chain, 1), feet, n)
		if beyond > 0 {
			w.rec(nil, 0, beyond, nil, n)
		}
	}
	if beyond > 0 {
		w.out.add(run{chain: beyond})
	}
}

// byTurning is the stitch as tall as a chain of n (common practice).
func byTurning(n int) *stitch.Stitch {
	switch {
	case n <= 1:
		return stitch.ByID("sc")
	case n == 2:
		return stitch.ByID("hdc")
	case n == 4:
		return stitch.ByID("tr")
	}
	return stitch.ByID("dc")
}

// use takes k stitches of the row below, passing chain spaces; it tells if
// there are fewer, or if they are not of the kind that is named.
func (w *work) use(k int, kind *stitch.Stitch, at Span) int {
	w.takeTurning()
	w.began = true
	got := 0
	told := false
	for got < k {
		w.cur.passSpaces()
		r := w.cur.run()
		if r == nil {
			break
		}
		if kind != nil && !told && !alike(kind, r.kind) && !r.base {
			told = true
			w.tell("rows/kind", finding.Warning, at, "the next stitch is no "+kind.Abbr(w.x.Terms)+" but "+article(r.kind, w.x.Terms), "name the stitch that is there, or skip up to the one that is meant")
		}
		m := min(k-got, r.n-w.cur.off)
		w.cur.step(m)
		got += m
	}
	w.lastPos = w.cur.pos - 1
	if got < k {
		w.tell("rows/over-use", finding.Warning, at, "this uses %s more than there are | %s stitches in the row below, %s too few | no more than there are",
			"use %s fewer here, or make them in the row below", k-got, w.from.stitches(), k-got, k-got)
	}
	return got
}

func article(s *stitch.Stitch, t stitch.Terms) string {
	if s == nil {
		return "another"
	}
	return s.Abbr(t)
}

// space goes on to the next chain space of that size and takes it.
func (w *work) space(size int, at Span) bool {
	w.takeTurning()
	w.began = true
	c := w.cur
	for c.i < len(c.f.runs) {
		r := c.run()
		if r.space() && (size <= 0 || r.chain == size) && (c.off == 0) {
			c.step(r.chain)
			w.cur = c
			w.spaced = true
			w.lastPos = c.pos - 1
			return true
		}
		if r.space() {
			c.i, c.off = c.i+1, 0
			c.pos++
			continue
		}
		c.step(r.n - c.off)
	}
	if size > 0 {
		w.tell("rows/no-space", finding.Warning, at, "there is no ch-%s space left to work into", "make the space in the row below, or name the one that is there", size)
	} else {
		w.tell("rows/no-space", finding.Warning, at, "there is no chain space left to work into", "make the space in the row below, or take this out")
	}
	return false
}

// skip passes places of the row below.
func (w *work) skip(p *Place) {
	k := w.n(p.N)
	if k <= 0 {
		return
	}
	w.spaced = false
	if p.Kind == InFirst && w.tchAt && w.cur.atStart() {
		w.takeTurning()
		k--
		if k == 0 {
			return
		}
	}
	switch {
	case p.Unit.Space:
		for range k {
			if !w.space(w.n(p.Unit.Size), p.At) {
				return
			}
		}
	case p.Unit.Chain:
		w.chains(k, p.At)
	case p.Unit.Group != nil:
		for range k {
			if !w.nextGroup(p.Unit.Group, p.At) {
				return
			}
		}
	default:
		w.use(k, p.Unit.Stitch, p.At)
	}
}

// chains takes k single chains: of a foundation, or of chain spaces.
func (w *work) chains(k int, at Span) int {
	w.takeTurning()
	w.began = true
	got := 0
	for got < k {
		r := w.cur.run()
		if r == nil {
			break
		}
		switch {
		case r.space():
			m := min(k-got, r.chain-w.cur.off)
			w.cur.step(m)
			got += m
		case r.base || got == 0 && r.tch:
			m := min(k-got, r.n-w.cur.off)
			w.cur.step(m)
			got += m
		default:
			if w.from.hasChains(w.cur.i) && got == 0 { // stitches before the chains are passed
				w.tell("rows/kind", finding.Warning, at, "the next stitch is no chain but "+article(r.kind, w.x.Terms), "name the stitch that is there")
				w.cur.step(1)
				got++
				continue
			}
			w.tell("rows/over-use", finding.Warning, at, "there is no chain left here, but "+article(r.kind, w.x.Terms), "name the stitch that is there")
			return got
		}
	}
	w.lastPos = w.cur.pos - 1
	if got < k {
		w.tell("rows/over-use", finding.Warning, at, "this uses %s more chains than there are | %s places in the row below, %s too few | no more than there are",
			"use %s fewer here, or chain more", k-got, w.from.stitches(), k-got, k-got)
	}
	return got
}

func (f *fabric) hasChains(from int) bool {
	for _, r := range f.runs[from:] {
		if r.space() || r.base {
			return true
		}
	}
	return false
}

// nextGroup goes on to the next whole group of that name and takes it.
func (w *work) nextGroup(g *Group, at Span) bool {
	w.takeTurning()
	w.began = true
	c := w.cur
	for c.i < len(c.f.runs) {
		r := c.run()
		if r.group > 0 && (g == nil || r.of == g) && c.off == 0 {
			id := r.group
			for c.i < len(c.f.runs) && c.run().group == id {
				if q := c.run(); q.space() {
					c.step(q.chain)
				} else {
					c.step(q.n)
				}
			}
			w.cur = c
			w.spaced = true
			w.lastPos = c.pos - 1
			return true
		}
		if r.space() {
			c.i, c.off = c.i+1, 0
			c.pos++
			continue
		}
		c.step(r.n - c.off)
	}
	name := "group"
	if g != nil {
		name = g.Name
	}
	w.tell("rows/over-use", finding.Warning, at, "there is no "+name+" left to work into", "make it in the row below, or take this out")
	return false
}

// skippedChains takes what chains skipped at the beginning of a foundation count as.
func (w *work) skippedChains(n *Node) {
	if w.began || len(w.from.runs) == 0 || !w.from.runs[0].base || len(n.Places) != 1 || !n.Places[0].Unit.Chain || !w.cur.atStart() {
		return
	}
	k := w.n(n.Places[0].N)
	c := n.Counts
	if c == Unsaid && k > 1 {
		var ok bool
		if c, ok = w.x.Turning[k]; !ok {
			c = w.x.Turning[0]
		}
		if c == Unsaid {
			if _, ok := w.unsaid[k]; !ok {
				w.unsaid[k] = n.At
			}
			c = w.assume
		}
	}
	if c != CountsAsStitch {
		return
	}
	kind := n.As
	if kind == nil {
		kind = byTurning(k)
	}
	if w.rec != nil && w.quiet == 0 {
		w.rec(kind, 1, k, nil, n)
	}
	w.out.add(run{kind: kind, n: 1, tch: true})
}

// join holds the chain that a round is joined to against the one that began it.
func (w *work) join(n *Node) {
	if w.startChain == 0 {
		return
	}
	if t := w.n(n.Told); t > 0 && t != w.startChain {
		w.tell("rows/join", finding.Warning, n.At, "the round is joined to a chain of %s, but began with one of %s", "join to the top of ch-%s", t, w.startChain, w.startChain)
		return
	}
	if k := w.n(n.N); k > 0 && w.startSpace > 0 && k != w.startChain-w.startSpace {
		w.tell("rows/join", finding.Warning, n.At, "the round is joined to chain %s, but the stitch that the chain counts as ends at chain %s", "join to chain %s",
			k, w.startChain-w.startSpace, w.startChain-w.startSpace)
	}
}
