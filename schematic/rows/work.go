package rows

import (
	"strings"

	"flatwright/schematic/finding"
	"flatwright/schematic/stitch"
	"flatwright/schematic/units"
)

// done is one row as worked: what later instructions may refer to.
type done struct {
	no    int // number in the section, or -1
	alt   int // the number that it should have had, if the text calls it otherwise; else 0
	count int // rows it stands for
	line  *Line
	body  []*Node
	name  string // inc or dec
	after *fabric
	side  int
}

// piece is what a section left behind.
type piece struct {
	name    string
	rows    []done
	end     *fabric // the last row that there was
	no      int
	start   *fabric
	startNo int
	anew    bool // it begins with stitches of its own
}

// left is stitches that a row left unworked, in the order of that row.
type left struct {
	f  *fabric
	no int
}

// runner works a whole text in one size.
type runner struct {
	x       *Text
	size    int
	assume  Counts
	unsaid  map[int]Span
	list    []*merged
	index   map[string]*merged
	section *Section
	all     []raw // of this section

	fab     *fabric // the row below; nil: none
	alt     *fabric // what the text says it is, where that differs
	known   bool    // how many stitches there are is known
	round   bool
	no      int // rows worked in this section, -1: not known
	side    int // of the last row: 1 right, 2 wrong, 0 not known
	carry   *Node
	lefts   []left
	pieces  []*piece
	cur     *piece
	last    *stitch.Stitch // of the row that was divided last
	shaped  int            // rows of the shapings told together so far
	every   *Line          // 'and all WS rows': works the rows between
	founded bool           // the row before was a foundation row
	panels  []panel        // of the row, as a right-side row meets them
	suspect int            // rows that may not fit because of one before
	altNo   int            // the other number that the next row may have, 0: none
	edge    int            // rows of the edge to be worked along
	fresh   bool           // numbering may begin anew
	begun   bool           // something was worked in this section
	steps   int
	stopped bool
	scratch work
	buf     []run
	g       *Graph
	made    map[*Line][]int // stitches after each line, by size
	cloth   cloth           // in which words say that rows are worked
	parted  cloth           // that of the row that was divided last
	splits  []split         // the rows that were divided
}

const maxRepeat = 2000

// run works every section.
func (r *runner) run() {
	for _, s := range r.x.Sections {
		if s.Prose || len(s.Lines) == 0 {
			continue
		}
		r.begin(s)
		for _, l := range s.Lines {
			r.line(l)
		}
		r.end()
	}
}

func (r *runner) begin(s *Section) {
	r.section = s
	r.all = nil
	r.cur = &piece{name: headingKey(s.Name)}
	r.cur.start, r.cur.startNo = r.fab, r.no
	r.pieces = append(r.pieces, r.cur)
	r.fresh, r.begun = true, false
}

func (r *runner) end() {
	if r.fab != nil {
		r.cur.end = r.fab
	}
	r.cur.no = r.no
	r.list = merge(r.list, r.index, r.section.Name, r.size, r.all)
}

func (r *runner) tell(kind string, sev finding.Severity, at Span, msg, fix string, a ...int) {
	r.all = append(r.all, raw{kind: kind, sev: sev, at: at, msg: msg, fix: fix, a: a})
}

// line works one line: a row, several rows, or instructions between rows.
func (r *runner) line(l *Line) {
	if r.steps > maxWork {
		if !r.stopped {
			r.stopped = true
			r.tell("rows/bounds", finding.Error, l.At, "the text is too long to work: it is left off here", "mend the numbers of its rows and repeats")
		}
		return
	}
	if len(l.Unread) > 0 || l.Short {
		r.unread(l)
		return
	}
	if l.Label != nil {
		r.label(l)
	}
	if !r.whole(l) && (l.Label != nil || !r.between(l)) {
		r.rows(l, l.Body)
	}
	if r.fab != nil {
		r.cur.end = r.fab
		if v := r.made[l]; v != nil {
			v[r.size] = r.fab.stitches()
		}
	}
}

// unread goes on with the stated count, and says so.
func (r *runner) unread(l *Line) {
	if l.Label != nil {
		r.label(l)
	}
	k := r.said(l)
	words := ""
	src := []rune(l.Src)
	for _, u := range l.Unread {
		if u.Col >= 1 && u.End-1 <= len(src) && u.Col <= u.End {
			if words != "" {
				words += "; "
			}
			words += string(src[u.Col-1 : u.End-1])
		}
	}
	words = strings.ReplaceAll(words, "%s", "% s")
	switch {
	case l.Short || len(l.Unread) == 0: // a line of numbers is too short or too long, which is told already
		if r.known = k >= 0; r.known {
			r.fab, r.alt = uniform(nil, k), nil
		}
	case k >= 0:
		r.tell("rows/not-read", finding.Warning, l.Unread[0], "not read: "+words+"; the check goes on with the stated count", "write it in the words of the trade's lists")
		r.fab, r.known, r.alt = uniform(nil, k), true, nil
	default:
		r.tell("rows/not-read", finding.Warning, l.Unread[0], "not read: "+words+"; no count is stated, so that the rows after it are not checked against it", "write it in the words of the trade's lists, and state the count")
		if l.Label != nil {
			r.known = false
		}
	}
	if len(l.Unread) == 0 {
		r.suspect = suspectRows
		if l.Label != nil { // a later line may repeat it
			r.log(l, l.Body, nameOf(l), max(r.times(l), 1), nil)
		}
	}
	if r.g != nil && (l.Label != nil || len(l.Unread) > 0) {
		r.g.gap(r, l, words, k)
	}
	if l.Label == nil {
		r.no, r.side = -1, 0
	} else {
		r.count(l, r.times(l))
	}
	r.carry = nil
	r.begun = true
}

// said is the stated total of a line, or -1.
func (r *runner) said(l *Line) int {
	if l.Stated == nil {
		return -1
	}
	sum := 0
	for _, g := range l.Stated {
		n := g.N.At(r.size)
		if n == none {
			return -1
		}
		if g.Any {
			return n
		}
		switch {
		case g.Unit.Space || g.Unit.Chain:
		case g.Unit.Group != nil:
			per := 0
			for _, b := range g.Unit.Group.Body {
				if b.Op == OpStitch && b.Stitch != nil {
					per += b.N.At(r.size)
				}
			}
			sum += n * per
		case g.Unit.Stitch != nil && g.Unit.Stitch.ID == "picot":
		default:
			sum += n
		}
	}
	return sum
}

// rows works a line's instructions as many times as its label says.
func (r *runner) rows(l *Line, body []*Node) {
	times := r.times(l)
	if times == 0 {
		return
	}
	foundation := false
	if k := foundationOf(body); k > 0 && (r.fab == nil || !r.begun) { // Ch 31, sc in 2nd ch from hook
		if n := body[0].N.At(r.size); n > 0 {
			r.fab = &fabric{}
			r.fab.add(run{kind: chainStitch, n: n, base: true})
			r.known, r.carry, r.alt, r.cur.anew = true, nil, nil, true
			if r.g != nil {
				r.g.anew()
				r.g.foundation(r.fab, l.At.Line, false)
			}
			body = body[1:]
			foundation = l.Label != nil && l.Label.Next
		}
	}
	defer func() {
		if foundation {
			r.fresh, r.founded, r.no = true, true, 0
		}
	}()
	made := r.repeat(l, body, times, nameOf(l))
	if made != nil {
		r.check(l, made)
	}
}

// repeat works a body so many times over the row that is there.
func (r *runner) repeat(l *Line, body []*Node, times int, name string) *result {
	var res *result
	for k := range times {
		prev := r.fab
		res = r.one(l, body)
		if res == nil {
			return nil
		}
		rest := times - k - 1
		if r.steps > maxWork {
			return res
		}
		if r.g == nil && rest > 0 && (len(res.found) > 0 || k > maxRepeat || prev != nil && res.out.same(prev) && k > 0) {
			r.log(l, body, name, 1+rest, res)
			r.count(l, 1+rest)
			return res
		}
		r.log(l, body, name, 1, res)
		r.count(l, 1)
	}
	return res
}

func (r *runner) log(l *Line, body []*Node, name string, k int, res *result) {
	no := -1
	if r.no >= 0 {
		no = r.no + 1
	}
	r.cur.rows = append(r.cur.rows, done{no: no, alt: r.altNo, count: k, line: l, body: body, name: name, after: r.fab, side: r.side})
}

// result is a row as worked.
type result struct {
	out     *fabric
	found   []raw
	left    int
	pin     bool
	free    bool
	next    *Node
	lefts   *fabric
	per     int  // stitches in each row of an edge that is not known
	dropped bool // it does not fit because of a row before
	total   bool // the count is not known from the work (a pick-up along an unknown edge)
}

// one works one row; of two readings of the row below, it takes the one that fits.
func (r *runner) one(l *Line, body []*Node) *result {
	below := r.fab
	if below == nil {
		below = &fabric{}
	}
	res := r.try(below, l, body)
	bad := r.badness(l, res)
	if r.alt != nil && r.g == nil {
		other := r.try(r.alt, l, body)
		switch n := r.badness(l, other); {
		case n < bad:
			res, bad, r.alt = other, n, nil
		case n == bad && len(res.found) == 0 && len(other.found) == 0:
			r.alt = other.out // either may be meant still
		default:
			r.alt = nil
		}
	}
	switch {
	case bad == 0:
		r.suspect = 0
	case r.suspect > 0 && !res.pin && l.Stated != nil:
		r.suspect--
		res.found, res.dropped = nil, true
	}
	if uses(res.found) {
		r.suspect = suspectRows
	}
	if r.known || len(res.found) == 0 || res.pin {
		r.all = append(r.all, res.found...)
	}
	if !r.known && !res.pin && l.Stated == nil {
		res.found = nil
	} else if res.pin {
		r.known = true
	}
	if res.lefts != nil {
		r.lefts = append(r.lefts, left{f: res.lefts, no: r.no})
	}
	if r.g != nil {
		if l.Stated != nil && len(r.misfits(l, res.out)) == 0 || res.pin { // its count says what it stands on
			r.g.lost = false
		}
		side := 0
		if r.side != 0 {
			side = 3 - r.side
			if r.round {
				side = r.side
			}
		}
		r.g.commit(side, nameOf(l))
	}
	r.fab = res.out
	r.cloth = cloth{}
	r.carry = res.next
	r.edge = 0
	return res
}

// badness is how much does not fit in a row as worked.
func (r *runner) badness(l *Line, res *result) int {
	if !r.known && !res.pin || res.total {
		return 0
	}
	return len(res.found) + len(r.misfits(l, res.out))
}

// suspectRows is how many rows after one that does not fit are not told of: their
// counts follow from it, as long as none of them fits.
const suspectRows = 3

// try works one row over below, without keeping anything.
func (r *runner) try(below *fabric, l *Line, body []*Node) *result {
	flipped := !r.round && r.begun && !below.ring
	if flipped {
		below = below.reversed()
	}
	w := &r.scratch
	*w = work{x: r.x, size: r.size, from: below, cur: over(below), out: &fabric{runs: r.buf[:0]}, round: r.round, assume: r.assume, unsaid: r.unsaid,
		carry: r.carry, rows: r.edge, lastPos: -1}
	if r.edge == 0 && r.no > 0 {
		w.rows = r.no
	}
	if r.g != nil {
		r.g.begin(w, below, flipped, l, r)
	}
	if !r.known && !usesNothing(body) && (r.g == nil || l.Stated == nil) {
		w.quiet = 1
	}
	w.body(body)
	r.buf = w.out.runs
	w.out.runs = append(make([]run, 0, len(r.buf)), r.buf...)
	res := &result{out: w.out, found: w.found, left: w.cur.left, pin: w.pinned, free: w.free, next: w.next}
	if w.edge && w.rows <= 0 {
		res.total, res.per = true, w.perRow
	}
	switch {
	case w.cur.left > 0 && l.Stated != nil && upToLast(body) && len(r.misfits(l, w.out)) == 0, w.leave && w.cur.left > 0:
		res.lefts = rest(&w.cur)
	case w.cur.left > 0 && !w.pinned && !w.free && w.quiet == 0:
		if w.spaced && !w.spaceBefore(0, 0) || w.bySpaces(body) && !w.spaceBefore(0, 0) && w.round {
			break
		}
		if !uses(w.found) {
			at := l.At
			if n := len(body); n > 0 {
				at = body[n-1].At
			}
			if at.Line == 0 {
				at = l.At
			}
			w.tell("rows/under-use", finding.Warning, at, "%s stitches are left over at the end | %s stitches in the row below, %s used | all of them worked, or the rest said to be left",
				"work %s more, or say that they are left unworked", w.cur.left, below.stitches(), below.stitches()-w.cur.left, w.cur.left)
			res.found = w.found
		}
	}
	r.steps += w.steps + len(w.out.runs) + len(below.runs)
	if w.steps > maxSteps {
		w.quiet = 0
		w.tell("rows/bounds", finding.Error, l.At, "this row is too long to work: more than %s steps", "mend the counts of its repeats", maxSteps)
		res.found = w.found
	}
	return res
}

// upToLast reports whether a row goes up to its last stitches and turns there: they are
// then left, if the stated count leaves them out too.
func upToLast(body []*Node) bool {
	k := len(body) - 1
	if k < 1 || body[k].Op != OpTurn {
		return false
	}
	last := body[k-1]
	return last.Op == OpStitch && len(last.Places) > 0 && last.Places[len(last.Places)-1].Extent.Kind == ToLast
}

// uses reports whether something was told of what a row uses: its count then follows
// from that.
func uses(list []raw) bool {
	for _, f := range list {
		switch f.kind {
		case "rows/over-use", "rows/under-use", "rows/repeat", "rows/no-space", "rows/no-ring", "rows/no-chain", "rows/bounds":
			return true
		}
	}
	return false
}

// rest is the places of a row that the cursor has not used.
func rest(c *cursor) *fabric {
	f := &fabric{}
	for i := c.i; i < len(c.f.runs); i++ {
		q := c.f.runs[i]
		if i == c.i && !q.space() {
			q.n -= c.off
		}
		f.add(q)
	}
	return f
}

// height is how tall k rows are at the text's gauge, mm.
func (r *runner) height(k int) (units.Num, bool) {
	if r.x.Gauge == nil || k < 0 {
		return units.Num{}, false
	}
	return r.x.Gauge.RowHeight.Times(k), true
}

var knitStitch = stitch.ByID("k")
