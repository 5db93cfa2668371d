package work

import (
	"fmt"
	"maps"
	"slices"
	"strings"
	"sync"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
	"flatwright/schematic/units"
)

// done is one row as worked: what later instructions may refer to.
type done struct {
	no     int // number in the section, or -1
	alt    int // the number that it should have had, if the text calls it otherwise; else 0
	count  int // rows it stands for
	line   *ins.Line
	body   []ins.Item
	name   string // inc or dec
	after  *fabric
	sure   bool // so many stitches are known to be there after it
	side   int
	unread bool
	shape  ins.Item // of rows that are told by their shaping alone: it, in one row
}

// piece is what a section left behind.
type piece struct {
	name    string
	rows    []done
	end     *fabric // the last row that there was
	ended   certainty
	no      int
	start   *fabric
	startNo int
	doubts  certainty // of start
	stars   map[string]starred
	marked  map[string]int // how many of the rows were worked before the latest line with that mark
	anew    bool           // it begins with stitches of its own
	like    *likeness      // the line worked last is worked as another piece
}

// left is stitches that a row left unworked, in the order of that row.
type left struct {
	f  *fabric
	no int
	at ins.Span // of that row
	// of a row below of which it was not known how many stitches it had
	unsure bool
}

// course is where the work of a section stands besides its stitches.
type course struct {
	round       bool
	rowRounds   bool // the text calls its rounds rows
	turnedRound bool // the round before ends with a turn
	no          int  // rows worked in this section, -1: not known
	counts      int  // lines before this one that are counts alone
	altNo       int  // the other number that the next row may have, 0: none
	side        int  // of the last row: 1 right, 2 wrong, 0 not known
	edge        int  // rows of the edge to be worked along
	shaped      int  // rows of the shapings told together so far
	founded     bool
	fresh       bool  // numbering may begin anew
	skips       bool  // its numbers leave some out
	gone        []int // rows that are told as missing
	begun       bool  // something was worked in this section
	every       []*ins.Line
	panels      []panel // of the row, as a right-side row meets them
	cloth       ins.Cloth
}

// runner works a whole text in one size.
type runner struct {
	sameRow bool // what is told now belongs to the row that was worked again before it
	x       *ins.Text
	size    int
	misfit  []foundIn // what does not fit in the sections that are done
	section *ins.Section
	all     []raw // of this section, whatever the reading
	course

	reading           // the likeliest
	others  []reading // further ones that fit as well
	lefts   []left
	pieces  []*piece
	cur     *piece
	last    *stitch.Stitch // of the row that was divided last
	parted  ins.Cloth      // that of the row that was divided last
	splits  []split
	steps   int
	stopped bool
	buf     []run
	alive   []reading // rooms that are used again
	room    []reading
	turned  fabric
	work    work // the row that is worked
	g       *Graph
	fixed   map[*ins.Section]map[key]bool // what a first run settled
	settled map[*ins.Section]map[key]bool
	opened  bool              // something was left open
	made    map[*ins.Line]int // stitches after each line; nil: nobody asks
	asks    map[key]ins.Span  // what nothing settles
	trace   *tracer           // the line that is to be explained
	told    told
	tested  tested // the row that was tried last, as long as it is not worked
	multi   bool   // a repeat was held against the multiple of the notes
}

const maxRepeat = 2000

func newRunner(x *ins.Text, size int) *runner {
	r := &runner{x: x, size: size, asks: map[key]ins.Span{}}
	r.pick = newPicks()
	return r
}

// foundIn is what does not fit in one section.
type foundIn struct {
	section string
	list    []raw
}

// fork is the runner as it stands between two sections, to go on by itself.
func (r *runner) fork() *runner {
	q := *r
	q.buf, q.alive, q.room, q.turned, q.work, q.tested = nil, nil, nil, fabric{}, work{}, tested{}
	q.misfit, q.others, q.lefts, q.pieces, q.splits = slices.Clip(r.misfit), slices.Clone(r.others), slices.Clone(r.lefts), slices.Clone(r.pieces), slices.Clone(r.splits)
	q.every, q.panels, q.found = slices.Clone(r.every), slices.Clone(r.panels), slices.Clone(r.found)
	q.asks, q.settled, q.made = maps.Clone(r.asks), maps.Clone(r.settled), maps.Clone(r.made)
	return &q
}

// run works every section.
func (r *runner) run() {
	for _, s := range r.x.Sections {
		if s.Prose || len(s.Lines) == 0 {
			continue
		}
		r.begin(s)
		var before *runner
		for i, l := range s.Lines {
			if before != nil {
				r.instead(before, l)
				before = nil
				continue
			}
			if i+1 < len(s.Lines) && r.hands(l, s.Lines[i+1]) {
				before = r.fork()
			}
			r.watched(l)
		}
		r.end()
	}
	r.misfit = append(r.misfit, foundIn{list: r.found})
}

// hands reports whether two lines are the same row of a pair, one for the right hand and one for the left: Round 15 (right hand).
func (r *runner) hands(a, b *ins.Line) bool {
	if a.Label == nil || b.Label == nil || a.Label.Next || a.Label.From.By != nil || a.Label.From.All != b.Label.From.All {
		return false
	}
	first, second := strings.ToLower(r.x.Quote(a.Label.At)), strings.ToLower(r.x.Quote(b.Label.At))
	return strings.Contains(first, "right") && strings.Contains(second, "left") || strings.Contains(first, "left") && strings.Contains(second, "right")
}

// instead works a row that stands for the one worked last, as the work stood before that; the work goes on from the first of both.
func (r *runner) instead(before *runner, l *ins.Line) {
	found, all := len(before.found), len(before.all)
	before.watched(l)
	r.found = append(r.found, before.found[min(found, len(before.found)):]...)
	r.all = append(r.all, before.all[min(all, len(before.all)):]...)
	if r.trace != nil && r.trace.line == l {
		r.told = before.told
	}
}

func (r *runner) begin(s *ins.Section) {
	if s.Pattern || r.section != nil && r.section.Pattern { // it stands by itself
		r.put(nil, false)
		r.no, r.side, r.round, r.lefts = 0, 0, false, nil
	}
	r.section = s
	r.all = nil
	r.cur = &piece{name: headingKey(s.Name), rows: make([]done, 0, len(s.Lines))}
	r.cur.start, r.cur.startNo, r.cur.doubts = r.fab, r.no, r.certainty
	r.cur.doubts.amiss = r.suspectBefore()
	r.pieces = append(r.pieces, r.cur)
	r.fresh, r.begun, r.skips = true, false, false
	r.every, r.gone, r.turnedRound = nil, nil, false
	r.pick = r.pick.anew(r.fixed[s]) // each piece is judged for itself
	for i := range r.others {
		r.others[i].pick = r.others[i].pick.anew(r.fixed[s])
	}
}

func (r *runner) end() {
	r.fillRest(nil)
	if r.fab != nil {
		r.cur.end, r.cur.ended = r.fab, r.certainty
	}
	r.cur.no = r.no
	r.settle()
	for i := range r.found { // told when the readings are settled
		if r.found[i].in == "" {
			r.found[i].in = r.section.Name
		}
	}
	for k := range r.others {
		for i, f := range r.others[k].found {
			if f.in == "" {
				r.others[k].found[i].in = r.section.Name
			}
		}
	}
	r.misfit = append(r.misfit, foundIn{section: r.section.Name, list: r.all})
}

// settle takes the likeliest of the readings that are left, tells what does not fit in it,
// and what nothing decides.
func (r *runner) settle() {
	for _, o := range r.others {
		if o.cost > r.cost || o.guess || r.guess || !o.known() {
			continue
		}
		for k, v := range r.pick.taken {
			like, told := r.pick.taken[key{chain: k.chain, hook: true}]
			if told && like == v && !k.hook {
				continue
			}
			if w, ok := o.pick.taken[k]; ok && w != v && k.chain >= 2 {
				if at, ok := r.pick.asked[k]; ok {
					r.asks[k] = at
				}
			}
		}
	}
	if r.settled == nil {
		r.settled = map[*ins.Section]map[key]bool{}
	}
	r.settled[r.section] = r.pick.taken
}

func (r *runner) tell(kind string, sev finding.Severity, at ins.Span, msg, fix string, a ...int) {
	r.all = append(r.all, raw{kind: kind, sev: sev, at: at, msg: msg, fix: fix, a: a, why: r.why})
}

// only leaves one reading: what follows does not depend on the others.
func (r *runner) only() {
	r.all = append(r.all, r.found...)
	r.found, r.others = nil, nil
	r.behind, r.ahead = nil, nil
}

// put makes f the row below, in every reading.
func (r *runner) put(f *fabric, known bool) {
	r.only()
	r.fab, r.carry, r.certainty = f, nil, certainty{suspect: r.suspect}
	if !known {
		r.lose()
	}
}

// putAs has the stitches be those of another place, as sure as they were there.
func (r *runner) putAs(f *fabric, c certainty) {
	r.put(f, f != nil && c.known())
	r.suspect, r.amiss, r.apart = c.suspect, c.amiss, c.apart
}

// readings are all that are alive, the likeliest first, in a room that is used again.
func (r *runner) readings() []reading {
	r.alive = append(append(r.alive[:0], r.reading), r.others...)
	return r.alive
}

func (r *runner) keep(list []reading) {
	list = prune(list)
	r.reading, r.others = list[0], nil
	if len(list) > 1 {
		r.others = list[1:]
	}
}

// line works one line: a row, several rows, or instructions between rows.
func (r *runner) line(l *ins.Line) {
	if r.steps > maxWork {
		if !r.stopped {
			r.stopped = true
			r.tell("rows/bounds", finding.Error, l.At, "the text is too long to work: it is left off here", "correct the numbers of its rows and repeats")
		}
		return
	}
	if !r.mine(l) || r.registers(l) || announces(l) {
		return
	}
	if len(l.Body) > 0 {
		r.counts = 0
	}
	r.starBefore(l)
	defer r.starBehind(l)
	if len(l.Unread) > 0 || l.Short || l.Chart {
		r.unread(l)
		return
	}
	told := l
	if l = r.everySecond(l); l.Label != nil {
		r.label(l)
	}
	if r.g != nil {
		r.g.takeUp(l)
	}
	switch {
	case len(l.Body) == 0 && l.Stated != nil && l.Label == nil:
		r.checkOnly(l)
	case !r.whole(l) && (l.Label != nil || !r.between(l)):
		r.rows(l, l.Body)
	}
	r.tellsNeedles(l)
	if l.Label != nil && l.Label.Next && slices.ContainsFunc(l.Body, severalRows) {
		r.side = 0
	}
	if r.fab != nil {
		r.cur.end, r.cur.ended = r.fab, r.certainty
		if r.made != nil && r.known() {
			r.made[told] = r.fab.stitches()
		}
	}
}

// announces reports whether a line only leads to the row behind it: On the next rnd, join the legs.
func announces(l *ins.Line) bool {
	return l.Label != nil && l.Label.Next && l.Stated == nil && len(l.Unread) == 0 && len(l.Body) > 1 && is[*ins.Join](l.Body[0]) &&
		!slices.ContainsFunc(l.Body[1:], func(n ins.Item) bool { return !is[*ins.Nothing](n) })
}

// severalRows reports whether an instruction is worked over other rows than the one of its label, however many: work in rib for 18 rows.
func severalRows(n ins.Item) bool {
	e, ok := n.(*ins.Even)
	return ok && (e.Rows.Set() || e.Length != nil || e.Until.Set())
}

// mine reports whether a line is for this size.
func (r *runner) mine(l *ins.Line) bool { return l.Sizes == nil || slices.Contains(l.Sizes, r.size) }

// registers keeps a line that is about every row of one side: all WS rows: purl.
func (r *runner) registers(l *ins.Line) bool {
	if l.Label == nil || l.Label.Name != "every" || l.Label.From.Set() {
		return false
	}
	r.every = append(r.every, l)
	return true
}

// unread goes on with the stated count, and says so.
func (r *runner) unread(l *ins.Line) {
	if l.Label != nil {
		r.label(l)
	}
	k := r.said(l)
	words := r.unreadWords(l)
	if r.g != nil {
		r.g.gap(r, l, words, k)
	}
	short := len(l.Unread) == 0 || l.Short
	if !short {
		msg, fix := "not read: "+words+"; no count is stated, so that the rows after it are not checked against it", "write it in the words of the trade's lists, and state the count"
		if k >= 0 {
			msg, fix = "not read: "+words+"; the check goes on with the stated count", "write it in the words of the trade's lists"
		}
		r.tell("rows/not-read", finding.Note, l.Unread[0], msg, fix)
	}
	switch {
	case k >= 0:
		as := r.certainty
		if r.fab == nil || r.fab.stitches() != k { // no other line says so
			as.why = max(as.why, said)
		}
		f := uniform(nil, k)
		f.plain = true // which spaces are among them is not known
		r.put(f, true)
		r.why = min(as.why, said)
	default:
		r.put(r.fab.covered(), false)
	}
	if l.Short {
		r.suspect = suspectRows
	}
	times := max(r.times(l), 1)
	if l.Label != nil { // a later line may repeat it
		r.log(l, l.Body, times)
		r.cur.rows[len(r.cur.rows)-1].unread = !short
		r.countRows(times)
		if max(l.Label.To.At(r.size), l.Label.From.At(r.size)) > ins.Most { // which is told
			r.no = -1
		}
	} else {
		if l.Stated != nil { // rows of which nothing else is known
			r.log(l, l.Body, times)
			r.cur.rows[len(r.cur.rows)-1].unread = true
		}
		if r.no > 0 {
			r.no, r.side = -1, 0
		}
	}
	r.begun = true
}

func (r *runner) unreadWords(l *ins.Line) string {
	words := ""
	for _, u := range l.Unread {
		if said := r.x.Quote(u); said != "" {
			if words != "" {
				words += "; "
			}
			words += said
		}
	}
	return strings.ReplaceAll(words, "%s", "% s")
}

// said is the stated total of a line, or -1.
func (r *runner) said(l *ins.Line) int {
	if l.Stated == nil {
		return -1
	}
	sum := 0
	for i, g := range l.Stated {
		n := g.N.At(r.size)
		if n == ins.None {
			return -1
		}
		switch {
		case g.Unit.Stretch && !g.Any && slices.ContainsFunc(l.Stated[i+1:], func(h ins.StitchGroup) bool { return h.Any }): // 13 inches, 104 sts
		case g.Side && (r.round || !r.known()), g.Unit.Stretch && !g.Any, g.Unit.Row && !g.Any:
			return -1
		case g.Side:
			return 2 * n
		case g.Any:
			return n
		}
		sum += n * stitchesIn(g.Unit, r.size)
	}
	if sum == 0 {
		return -1
	}
	return sum
}

// stitchesIn is how many stitches one of what a count names is in a size, in a total of stitches.
func stitchesIn(u ins.Unit, size int) int {
	switch {
	case u.Space || u.Chain || u.Group == nil && u.Stitch != nil && u.Stitch.ID == "picot":
		return 0
	case u.Group == nil:
		return 1
	}
	per := 0
	for _, b := range u.Group.Body {
		if s, ok := b.(*ins.Stitch); ok && s.Kind != nil {
			per += s.N.At(size)
		}
	}
	return per
}

// rows works a line's instructions as many times as its label says.
func (r *runner) rows(l *ins.Line, body []ins.Item) {
	r.tested = tested{}
	times := r.times(l)
	if times == 0 {
		return
	}
	if c := chainRow(l); c != nil && (c.N.At(r.size) >= leastRound || r.hooksNext(l)) {
		r.foundRow(l, c, false)
		r.log(l, body, 1)
		r.countRows(1)
		return
	}
	body, foundation := r.founds(l, body)
	before := r.sure()
	body, again := r.pastBeginning(l, body)
	r.repeat(l, r.meant(l, r.around(l, r.implied(l, skippedOnce(body)))), times)
	if r.g != nil {
		r.offCount(l)
	}
	r.check(l)
	r.bridge(l)
	if again > 0 {
		r.fab = r.fab.begunAt(again)
		for i := range r.others {
			r.others[i].fab = r.others[i].fab.begunAt(again)
		}
	}
	if before >= 0 && times == 1 && l.Changed != nil {
		r.changed(l, before)
	}
	if l.Label != nil && l.Stated == nil && wordsOnly(body) { // what is done in the row stands elsewhere
		r.put(r.fab.covered(), false)
	}
	if foundation {
		r.fresh, r.founded, r.no = true, true, 0
	}
}

// bridge makes stitches of the chains between pieces that a round joins, if its count has them: 12 sc around first leg, ch 3, 12 sc around
// second leg, 3 sc in ch (30). The next round goes on along their other side.
func (r *runner) bridge(l *ins.Line) {
	if r.sure() < 0 || len(l.Stated) != 1 || !l.Stated[0].Unit.Any() || !slices.ContainsFunc(l.Body, is[*ins.PickUp]) {
		return
	}
	if c, _ := r.fab.chains(); c == 0 || r.said(l) != r.sure()+c {
		return
	}
	f := &fabric{}
	for _, q := range r.fab.runs {
		if q.space() {
			q = run{kind: chainStitch(), n: q.chain}
		}
		f.add(q)
	}
	if r.put(f, true); r.g != nil {
		r.g.lost = true
	}
}

// pastBeginning is a round that works all stitches of a heel, picks up others, and works the first half of the heel again, without
// these: from behind them on the next rounds begin.
func (r *runner) pastBeginning(l *ins.Line, body []ins.Item) ([]ins.Item, int) {
	if r.g != nil || l.Label == nil || l.Stated == nil || len(body) == 0 {
		return body, 0
	}
	first, ok := body[0].(*ins.Stitch)
	again, last := worksAgain(l, r.size), len(body)-1
	for last > 0 && (is[*ins.Nothing](body[last]) || is[*ins.Marker](body[last])) {
		last--
	}
	if !ok || again == 0 || countOf(first, r.size) != r.sure() || !is[*ins.Stitch](body[last]) {
		return body, 0
	}
	return slices.Concat(body[:last], body[last+1:]), again
}

// begunAt is a round that begins k stitches further on.
func (f *fabric) begunAt(k int) *fabric {
	if f == nil || len(f.marks) == 0 {
		return f
	}
	g := *f
	g.marks = nil
	for _, m := range f.marks {
		if m -= k; m < 0 {
			m += f.stitches()
		}
		g.marks = append(g.marks, m)
	}
	slices.Sort(g.marks)
	return &g
}

// sure is how many stitches the row below has; -1: readings differ, or it is not known.
func (r *runner) sure() int {
	if r.fab == nil || !r.known() || len(r.others) > 0 {
		return -1
	}
	return r.fab.stitches()
}

// changed holds what a row says it has more or fewer against what it was worked on.
func (r *runner) changed(l *ins.Line, before int) {
	c, by, want := l.Changed, r.sure()-before, l.Changed.N.At(r.size)
	what := "added"
	if c.Fewer {
		by, what = -by, "taken away"
	}
	if r.sure() < 0 || r.res == nil || len(r.res.found) > 0 || want == ins.None || by == want || by <= 0 {
		return
	}
	r.tell("rows/stated", finding.Warning, c.At, "%s stitches are "+what+", not %s", "say %s, or correct the row", by, want, by)
}

// chainRow is the foundation chain that a text calls row 1: Rnd 1: Ch 16. Nil: the line is none.
func chainRow(l *ins.Line) (c *ins.Chain) {
	if l.Label == nil || l.Label.Next || l.Label.From.By != nil || l.Label.From.All != 1 {
		return nil
	}
	for _, n := range l.Body {
		switch k := n.(type) {
		case *ins.Nothing, *ins.Turn:
		case *ins.Chain:
			if c != nil {
				return nil
			}
			c = k
		default:
			return nil
		}
	}
	return c
}

// hooksNext reports whether the row behind a line begins in a chain counted from the hook.
func (r *runner) hooksNext(l *ins.Line) bool {
	k := slices.Index(r.section.Lines, l) + 1
	return k > 0 && k < len(r.section.Lines) && fromHook(r.section.Lines[k].Body)
}

// wordsOnly reports whether a list has words that move no stitch, and nothing else.
func wordsOnly(body []ins.Item) bool {
	return len(body) > 0 && !slices.ContainsFunc(body, func(n ins.Item) bool { return !is[*ins.Nothing](n) })
}

// founds makes the foundation that stands in a row's own line, and gives what is worked on it: Ch 31, sc in 2nd ch from
// hook; or Ch 5, join to form a ring, ch 3, 11 dc in ring. It reports whether that is a foundation row.
func (r *runner) founds(l *ins.Line, body []ins.Item) ([]ins.Item, bool) {
	begins := r.fab == nil || !r.begun || r.fresh
	if c, rest, into := ringedIn(body); c != nil && begins && (into && c.N.At(r.size) > 0 || c.N.At(r.size) >= leastRound) {
		r.foundRow(l, c, into)
		r.round = true
		return rest, false
	}
	first := r.fab == nil && !r.begun && l.Label != nil && l.Label.Round && l.Label.From.By == nil && l.Label.From.All == 1 && !l.Label.Next
	if (first || begins && opensRing(body)) && bareOnly(body) { // begun in a ring of any kind
		r.put(&fabric{ring: true}, true)
		r.round = true
		return body, false
	}
	n := foundationOf(body)
	if n == nil || !begins && (r.known() || l.Label != nil) || n.N.At(r.size) <= 0 {
		return body, false
	}
	r.foundRow(l, n, false)
	if l.Label == nil && !r.fresh { // a piece of its own under the same heading
		r.no, r.side = 0, 0
	}
	return behindTurn(behindWords(body)[1:]), l.Label != nil && l.Label.Next
}

// bareOnly reports whether a row of crochet has stitches, and names no place of any.
func bareOnly(body []ins.Item) bool {
	any := false
	for _, n := range body {
		switch n := n.(type) {
		case *ins.Stitch:
			if len(n.Places) > 0 || n.Kind == nil || n.Kind.Craft != stitch.Crochet || n.Kind.Uses != 1 {
				return false
			}
			any = true
		case *ins.Repeat:
			if len(n.Places) > 0 || n.Until.Kind != ins.NoExtent || !bareOnly(n.Body) {
				return false
			}
			any = true
		case *ins.Chain, *ins.Join, *ins.Nothing, *ins.Turn:
		default:
			return false
		}
	}
	return any
}

// leastRound is how many chains a round at least stands on that goes into them, and not into their ring.
const leastRound = 8

// foundRow begins with the chains of a row's own line, as a ring or not.
func (r *runner) foundRow(l *ins.Line, n *ins.Chain, ring bool) {
	f := &fabric{ring: ring}
	f.add(run{kind: chainStitch(), n: n.N.At(r.size), base: true})
	r.put(f, true)
	r.cur.anew = true
	r.round = r.round || ring
	r.begun = r.begun || !r.round // the row goes back along it
	if r.g != nil {
		r.g.anew()
		r.g.foundation(f, l.At.Line, ring)
	}
}

// leastImplied is how often a few stitches go into the row below at least, for them to be meant all along it.
const leastImplied = 4

// implied repeats a row that is told as the few stitches of its rib, K2, p2, or of its decrease, K8, k2tog, all along the row
// below.
func (r *runner) implied(l *ins.Line, body []ins.Item) []ins.Item {
	if r.fab == nil || !r.known() || !l.IsRow() {
		return body
	}
	used, from, to := 0, -1, len(body)
	for i, n := range body {
		s, ok := n.(*ins.Stitch)
		switch {
		case is[*ins.Nothing](n) && from < 0, is[*ins.Turn](n) && i == len(body)-1:
			if from >= 0 {
				to = i
			}
			continue
		case !ok || s.Kind == nil || s.Kind.Craft != stitch.Knitting || len(s.Places) > 0 || s.N.By != nil && s.N.At(r.size) < 0:
			return body
		}
		if from < 0 {
			from = i
		}
		used += s.N.At(r.size) * s.Kind.Uses
	}
	have := r.fab.stitches()
	if from < 0 || to-from < 2 || used <= 0 || have%used != 0 || have/used < leastImplied {
		return body
	}
	rep := &ins.Repeat{Body: body[from:to], Until: ins.Extent{Kind: ins.ToEnd, At: l.At}, Stop: -1}
	rep.Put(body[from].Span())
	return slices.Concat(body[:from], []ins.Item{rep}, body[to:])
}

// behindTurn is a row without the turn that stands between its foundation chain and it: ch 31, turn, sc in 2nd ch from hook.
func behindTurn(body []ins.Item) []ins.Item {
	for len(body) > 0 && is[*ins.Turn](body[0]) {
		body = body[1:]
	}
	return body
}

// repeat works a body so many times over the row that is there.
func (r *runner) repeat(l *ins.Line, body []ins.Item, times int) {
	for k := range times {
		prev := r.fab
		r.one(l, body)
		rest := times - k - 1
		if r.steps > maxWork {
			return
		}
		if r.g == nil && rest > 0 && (r.res != nil && len(r.res.found) > 0 || k > maxRepeat || prev != nil && r.fab.same(prev) && k > 0) {
			r.log(l, body, 1+rest)
			r.countRows(1 + rest)
			return
		}
		r.log(l, body, 1)
		r.countRows(1)
	}
}

func (r *runner) log(l *ins.Line, body []ins.Item, k int) {
	no := -1
	if r.no >= 0 {
		no = r.no + 1
	}
	r.cur.rows = append(r.cur.rows, done{no: no, alt: r.altNo, count: k, line: l, body: body, name: nameOf(l), after: r.fab, sure: r.known(), side: r.side})
}

// result is a row as worked.
type result struct {
	out    *fabric
	found  []raw
	pin    bool
	next   *ins.Chain
	lefts  *fabric
	unsure bool    // how many it left is not known
	ahead  *fabric // stitches that a short row has not come to
	per    int     // stitches in each row of an edge that is not known
	total  bool    // the count is not known from the work
	beyond bool    // it has more than is worked
	used   int
	exact  bool                 // it names as many stitches as there are, one by one
	doubt  doubt                // about what it makes
	steps  map[ins.Item]*traced // if somebody asks
}

// one works one row, in every reading that is alive, and in those that it opens.
func (r *runner) one(l *ins.Line, body []ins.Item) {
	if turnsWithin(body) && r.fab != nil && r.known() {
		by := net(body, r.size)
		if r.g != nil {
			r.g.gap(r, l, "the short rows within it", r.fab.stitches()+by)
		}
		r.change(body[0], by)
		return
	}
	list := r.room[:0]
	for _, rd := range r.readings() {
		from := len(list)
		list = r.ways(list, rd, l, body)
		if r.g == nil && rd.known() && rd.fab != nil && l.Stated == nil {
			list = asIfFitted(list, from, rd.fab.stitches())
		}
	}
	r.room = list
	r.keep(list)
	if r.res != nil && r.res.lefts != nil {
		r.lefts = append(r.lefts, left{f: r.res.lefts, no: r.no, at: l.At, unsure: r.res.unsure})
	}
	if r.g != nil {
		r.drawn(l)
	}
	r.cloth = ins.Cloth{}
	r.edge = 0
	r.turnedRound = r.round && turnsLast(body)
}

// turned is that a row of which it was not known how many stitches it had has k now; 0: that is not told.
func (res *result) turned(k int) {
	if k == 0 || res.pin {
		return
	}
	res.pin = true
	if res.out.stitches() != k { // there were more than was thought
		res.out = uniform(res.out.main(), k)
	}
}

// turnsCounted is how many stitches a row of knitting works that tells each of them by its number, and turns there: however many
// there were, so many there are now. It is 0 for any other row.
func turnsCounted(l *ins.Line, body []ins.Item, size int) int {
	turns, k := false, 0
	for _, n := range body {
		switch n := n.(type) {
		case *ins.Stitch:
			if len(n.Places) > 0 || n.Kind != nil && n.Kind.Craft != stitch.Knitting || n.Chart || n.Inc || n.Dec || n.Call != nil || turns {
				return 0
			}
			makes := 1
			if n.Kind != nil {
				makes = n.Kind.Makes
			}
			k += makes * max(n.N.At(size), 0)
		case *ins.Turn:
			turns = true
		case *ins.Leave:
			turns = turns || n.All
		case *ins.Nothing, *ins.Marker:
		default:
			return 0
		}
	}
	if !turns || l.Label == nil {
		return 0
	}
	return k
}

// turnsLast reports whether the work is turned at a row's end.
func turnsLast(body []ins.Item) bool {
	if len(body) == 0 {
		return false
	}
	_, ok := body[len(body)-1].(*ins.Turn)
	return ok
}

// overFirst reports whether a round begins with a chain tall enough to stand for a stitch: after the
// work is turned it stands over the stitch that the round before was joined to.
func overFirst(body []ins.Item) bool {
	if len(body) == 0 {
		return false
	}
	c, ok := body[0].(*ins.Chain)
	return ok && (c.N.By != nil || c.N.All > 1)
}

// beginsInSame reports whether what a row works first, behind its chains, goes into the place in which the one before it
// ended: ch 1, sc in same loop.
func beginsInSame(body []ins.Item) bool {
	for _, n := range body {
		if p := placesOf(n); len(p) > 0 {
			return p[0].Kind == ins.InSame
		}
		if q, ok := n.(*ins.Repeat); ok && beginsInSame(q.Body) {
			return true
		}
		if !is[*ins.Chain](n) && !is[*ins.Nothing](n) {
			return false
		}
	}
	return false
}

// ways are the readings of one row over one reading of those before it.
func (r *runner) ways(out []reading, rd reading, l *ins.Line, body []ins.Item) []reading {
	first, rd := r.usual(rd, l, body)
	r.opened = r.opened || len(rd.pick.open) > 0
	if r.g != nil || len(rd.pick.open) == 0 || !rd.known() && !first.res.pin {
		return append(out, first)
	}
	todo := append([]key(nil), rd.pick.open...)
	picks := []*picks{rd.pick}
	seen := map[key]bool{}
	for _, k := range todo {
		if seen[k] || len(picks) >= mostReadings {
			continue
		}
		seen[k] = true
		n := len(picks)
		for i := range n {
			picks = append(picks, picks[i].with(k, true))
			picks[i] = picks[i].with(k, false)
		}
	}
	for _, p := range picks {
		q := rd
		q.pick = p
		out = append(out, r.worked(q, l, body))
	}
	return out
}

// usual is a reading after one more row, with what the text leaves open taken as usual, and the reading before it. A row that was
// tried so is not worked again.
func (r *runner) usual(rd reading, l *ins.Line, body []ins.Item) (after, before reading) {
	if r.g == nil && (r.trace == nil || r.trace.line != l) && r.tested.is(&rd, l, body) {
		t := r.tested
		r.tested = tested{}
		rd.pick = t.pick
		return r.after(rd, l, body, r.fitting(rd, l, body, t.res)), rd
	}
	rd.pick = &picks{taken: rd.pick.taken, asked: rd.pick.asked}
	if rd.fab == nil && rd.carry == nil && (knitted(body) || len(r.x.Multiples) > 0 && !founding(body)) { // a stitch pattern: nothing says how many there are
		rd.lose()
	}
	return r.worked(rd, l, body), rd
}

// worked is a reading after one more row, which is worked over it.
func (r *runner) worked(rd reading, l *ins.Line, body []ins.Item) reading {
	return r.after(rd, l, body, r.fitting(rd, l, body, r.try(&rd, l, body)))
}

// after is a reading after a row that was worked over it.
func (r *runner) after(rd reading, l *ins.Line, body []ins.Item, res *result) reading {
	if rd.line == l && rd.res != nil && rd.res.total { // a row of several that the line works
		res.total = true
	}
	again := rd.line == l
	rd.line = l
	pinned := rd.known() || res.pin
	if len(res.found) > 0 && !res.beyond && (rd.long() || l.Label == nil && l.Stated == nil && uses(res.found) && len(body) == len(l.Body)) { // no count is near, or a sentence and not a row
		rd.pass(res, body)
	}
	rd.sinceTold(again, res)
	if res.ahead != nil && l.Stated == nil {
		rd.forget()
	}
	rd.confirm(res.exact)
	drop := rd.suspect > 0 && !res.pin && (l.Stated != nil || rd.guess)
	switch {
	case len(res.found) == 0:
	case drop:
		rd.suspect--
		res.found = nil
		if res.total = l.Stated != nil; !res.total {
			res.out = uniform(res.out.main(), rd.fab.stitches())
		}
	case pinned:
		rd.add(res.found...)
		if uses(res.found) {
			rd.suspect = suspectRows
		}
	}
	if res.pin && !res.total {
		rd.find()
	}
	if res.total && l.Stated == nil && res.per == 0 {
		rd.lose()
	}
	rd.behind, rd.ahead = rd.ahead, res.ahead // what the row before left lies beyond the end of the next
	rd.fab, rd.carry, rd.res = res.out, res.next, res
	return rd
}

// sinceTold notes one more row that states no count: one worked again and again in a line that keeps its count is told once.
func (rd *reading) sinceTold(again bool, res *result) {
	if !again || res.out == nil || rd.fab == nil || res.out.stitches() != rd.fab.stitches() {
		rd.since++
	}
}

// pass goes over a row that does not fit and is not told of: how many stitches it leaves is not known, but of a rib.
func (rd *reading) pass(res *result, body []ins.Item) {
	if res.total = rd.long() || res.found[0].kind != "rows/repeat" || !oneForOne(body); !res.total {
		res.out = uniform(rd.fab.main(), rd.fab.stitches())
	}
	res.found = nil
}

// knitted reports whether the first stitch of a row is one of knitting, on a stitch below.
func knitted(body []ins.Item) bool {
	for _, n := range body {
		switch n := n.(type) {
		case *ins.Stitch:
			return n.Kind != nil && n.Kind.Craft == stitch.Knitting && n.Kind.Uses > 0
		case *ins.Repeat:
			return knitted(n.Body)
		case *ins.Nothing, *ins.Marker:
		default:
			return false
		}
	}
	return false
}

// founding reports whether a row of crochet begins with stitches that need nothing below: a ring, foundation stitches.
func founding(body []ins.Item) bool {
	return slices.ContainsFunc(body, func(n ins.Item) bool {
		if s, ok := n.(*ins.Stitch); ok && s.Kind != nil && s.Kind.Uses == 0 {
			return true
		}
		return slices.ContainsFunc(placesOf(n), func(p ins.Place) bool { return p.Kind == ins.InRing })
	})
}

// fitting is a row as worked over a reading, with the chains of the row below taken for stitches if it fits only so.
func (r *runner) fitting(rd reading, l *ins.Line, body []ins.Item, res *result) *result {
	if !rd.known() || rd.fab == nil || r.g != nil || len(res.found) == 0 && (l.Stated == nil || len(r.misfits(l, res.out)) == 0) {
		return res
	}
	if uses(res.found) {
		if again := r.overChains(rd, l, body); again != nil {
			return again
		}
	}
	if again := r.otherwise(rd, l, body, uses(res.found)); again != nil {
		return again
	}
	if again := r.longChain(rd, l, body); again != nil {
		return again
	}
	return res
}

// longestPost is how many chains as tall as a stitch at most that are mostly no more.
const longestPost = 3

// longChain is a row without a count whose long turning chain, that of a loop or a space, counts otherwise than such chains do elsewhere
// in a text that does not say it; nil if it does not fit so either.
func (r *runner) longChain(rd reading, l *ins.Line, body []ins.Item) *result {
	c := rd.carry
	if first := behindWords(body); c == nil && len(first) > 0 {
		c, _ = first[0].(*ins.Chain)
	}
	if l.Stated != nil || c == nil || c.Count.How != ins.Unsaid {
		return nil
	}
	k := key{chain: c.N.At(r.size)}
	v, taken := rd.pick.taken[k]
	if !taken || k.chain <= longestPost {
		return nil
	}
	rd.pick = rd.pick.with(k, !v)
	if res := r.try(&rd, l, body); len(res.found) == 0 && !res.total {
		return res
	}
	return nil
}

// overChains is a row that takes each chain of the row below for a stitch, as a mesh is told: ch 1, skip next st, dc in
// each of next 3 sts. It is nil if the row names spaces, or does not fit so either.
func (r *runner) overChains(rd reading, l *ins.Line, body []ins.Item) *result {
	if namesSpaces(body) {
		return nil
	}
	f := *rd.fab
	f.runs = slices.Clone(f.runs)
	meshed := false
	for i, q := range f.runs {
		if q.space() {
			f.runs[i], meshed = run{n: q.chain}, true
		}
	}
	if !meshed {
		return nil
	}
	rd.fab = &f
	if res := r.try(&rd, l, body); len(res.found) == 0 {
		return res
	}
	return nil
}

// namesSpaces reports whether stitches go into spaces.
func namesSpaces(list []ins.Item) bool {
	return slices.ContainsFunc(list, func(n ins.Item) bool {
		if q, ok := n.(*ins.Repeat); ok && namesSpaces(q.Body) {
			return true
		}
		return slices.ContainsFunc(placesOf(n), func(p ins.Place) bool { return p.Unit.Space || p.Unit.Group != nil || p.Unit.Stretch })
	})
}

// below is the row below as this row meets it: turned, if the work is, and with what lies beyond it.
func (r *runner) below(rd *reading, body []ins.Item) (below *fabric, flipped bool) {
	if below = rd.fab; below == nil {
		below = &fabric{}
	}
	flipped = (!r.round || r.turnedRound) && r.begun && !below.ring
	switch {
	case flipped && r.g == nil:
		below = below.reversedInto(&r.turned)
	case flipped: // a graph holds what it is worked from
		below = below.reversed()
	}
	if r.round && beginsAtLast(below, flipped, body) {
		below = below.fromLast()
	}
	if rd.behind != nil {
		below = joined2(below, rd.behind)
	}
	return below, flipped
}

// beginsAtLast reports whether a round begins over what lies last in the one below as it meets it: over the stitch that this was joined
// to, once it is turned, or else in the arch in the middle of which it ended.
func beginsAtLast(below *fabric, flipped bool, body []ins.Item) bool {
	inArch := below.midArch && beginsInSame(body)
	return inArch != flipped && (inArch || overFirst(body))
}

// into is the round further down that a row names, behind the last one; nil if it is the last.
func (r *runner) into(l *ins.Line) *fabric {
	if l.Into == 0 || !r.round || r.turnedRound {
		return nil
	}
	for _, d := range r.cur.rows {
		if d.no == l.Into && d.no < r.no {
			return d.after
		}
	}
	return nil
}

// try works one row over a reading, without keeping anything.
func (r *runner) try(rd *reading, l *ins.Line, body []ins.Item) *result {
	below, flipped := r.below(rd, body)
	if f := r.into(l); f != nil {
		below = f
	}
	carry := rd.carry
	if flipped && !r.round {
		below, carry, body = r.addChain(below, carry, body)
	}
	w := &r.work
	if r.g != nil {
		w = &work{} // it holds what it is worked from
	}
	kept := &struct {
		result
		out fabric
	}{out: fabric{runs: r.buf[:0]}} // in one piece of memory: many rows are tried
	*w = work{task: task{x: r.x, size: r.size, from: below, round: r.round, rows: r.edge, carry: carry, counted: l.Stated != nil, pick: rd.pick},
		place: place{cur: over(below), out: &kept.out, lastPos: -1}}
	if r.edge == 0 && r.no > 0 {
		w.rows = r.no
	}
	if r.g != nil {
		r.g.begin(w, below, flipped, rd.ahead, l, body, r)
	}
	if !rd.known() && !beginsOnNothing(body) && (r.g == nil || l.Stated == nil) {
		w.quiet = 1
		r.g.unfounded()
	}
	if r.trace != nil && r.trace.line == l {
		w.trace = &tracer{line: l, steps: map[ins.Item]*traced{}, quiet: w.quiet}
	}
	w.body(body)
	r.buf = w.out.runs
	w.out.runs = slices.Clone(r.buf)
	res := &kept.result
	*res = result{out: w.out, pin: w.pinned, next: w.next, used: w.used(), exact: len(w.found) == 0 && w.exact(body)}
	if w.trace != nil {
		res.steps = w.trace.steps
	}
	if w.edge && w.rows <= 0 {
		res.total, res.per = true, w.perRow
	}
	res.total = res.total || w.blind || w.vague && l.Stated == nil
	r.leftOver(w, res, l, body)
	if res.unsure = !rd.known(); res.unsure {
		res.turned(turnsCounted(l, body, r.size))
	}
	w.loosen()
	if res.found = w.found; w.vague {
		res.doubt = loosely
	}
	r.g.unsure(w, below)
	r.multiple(w)
	r.steps += w.steps + len(w.out.runs) + len(below.runs)
	w.bounded(res, l)
	return res
}

// loosen says of what was found in a row of which the words are vague that it is no more than loosely so.
func (w *work) loosen() {
	w.doubtLed()
	for i := range w.found {
		if f := &w.found[i]; f.why == none && (w.vague || w.free && f.kind == "rows/over-use") { // free: beside what is picked up others may have waited
			f.why = loosely
		}
	}
}

// bounded tells of a row that takes more steps than are worked.
func (w *work) bounded(res *result, l *ins.Line) {
	if w.steps <= maxSteps {
		return
	}
	w.quiet = 0
	w.tell("rows/bounds", finding.Error, l.At, "this row is too long to work: more than %s steps", "correct the counts of its repeats", maxSteps)
	res.found, res.beyond = w.found, true
}

// asIfFitted adds to the ways from the given one on, where they use other stitches than there are, the row as if it fitted.
func asIfFitted(list []reading, from, stitches int) []reading {
	for k, n := from, len(list); k < n; k++ {
		if way := list[k]; uses(way.res.found) {
			way.fab, way.guess = uniform(way.fab.main(), stitches), true
			list = append(list, way)
		}
	}
	return list
}

// drawn ends the row in the graph.
func (r *runner) drawn(l *ins.Line) {
	vague := func(s ins.StitchGroup) bool { return s.Unit.Stretch && !s.Any } // 3 shells that nothing tells
	counted := l.Stated != nil && !slices.ContainsFunc(l.Stated, vague) && len(r.misfits(l, r.fab)) == 0
	if counted || r.res.pin { // its count says what it stands on
		r.g.lost = false
	}
	side := r.side
	if side != 0 && !r.round {
		side = 3 - side
	}
	r.g.cur.Sided = l.Label != nil && l.Label.Side != 0
	if r.g.cur.Amiss = r.untrusted(l); r.g.cur.Amiss == "" && l.Passed != (ins.Span{}) && !counted {
		r.g.cur.Amiss = "it is drawn without '" + r.x.Quote(l.Passed) + "', which was not followed"
	}
	r.g.commit(side, nameOf(l))
}

// untrusted says what a row as worked does not share with its words; empty: it may be trusted.
func (r *runner) untrusted(l *ins.Line) string {
	switch {
	case r.res == nil || r.res.total || !r.known():
		return ""
	case l.Stated == nil && uses(r.res.found):
		return "it does not fit the one below"
	}
	return ""
}

// offCount marks a line's last row in the graph if it makes another count than is stated.
func (r *runner) offCount(l *ins.Line) {
	k := len(r.g.Rows) - 1
	if k < 0 || l.Stated == nil || r.g.Rows[k].Line != l.At.Line || r.g.Rows[k].Unread != "" || r.ofSizes(l) || r.perRepeat(l) || r.shortTotal(r.said(l)) {
		return
	}
	if r.res == nil || r.res.total || !r.known() { // then what is drawn is all that can be counted
		if said, made, chains := r.said(l), r.g.Rows[k].counted(), r.g.Rows[k].chains(); r.round && said > 0 && made > 0 && said != made && said != made+chains {
			r.g.Rows[k].Amiss, r.g.lost = fmt.Sprintf("%d drawn, %d stated", made, said), true
		}
		return
	}
	if off := r.misfits(l, r.fab); len(off) > 0 && len(off[0].a) > 1 && off[0].a[0] > 0 { // what is counted by a name of its own may be there
		r.g.Rows[k].Amiss = fmt.Sprintf("%d drawn, %d stated", off[0].a[0], off[0].a[1])
		r.g.lost = r.g.lost || r.round // it, or its count, is not what is meant
	}
}

// addChain puts a chain that adds stitches before the row below: one that the row works into from the hook. It
// stands at the end of the row before, or begins this one.
func (r *runner) addChain(below *fabric, carry *ins.Chain, body []ins.Item) (*fabric, *ins.Chain, []ins.Item) {
	k := 0
	switch n := foundationOf(body); {
	case n != nil:
		k, body = n.N.At(r.size), behindWords(body)[1:]
	case !fromHook(body):
	case carry != nil:
		k, carry = carry.N.At(r.size), nil
	case len(below.runs) > 1 && below.runs[0].space():
		k = below.runs[0].chain
		below = &fabric{runs: below.runs[1:], picots: below.picots, groups: below.groups}
		if r.g != nil {
			r.g.lost = true
		}
	}
	if k <= 0 {
		return below, carry, body
	}
	f := &fabric{}
	f.add(run{kind: chainStitch(), n: min(k, maxSteps), base: true})
	if r.g != nil {
		r.g.chained(min(k, maxSteps))
	}
	return joined2(f, below), nil, body
}

// fromHook reports whether a row begins with a stitch in a chain counted from the hook.
func fromHook(body []ins.Item) bool {
	for _, n := range body {
		switch n := n.(type) {
		case *ins.Nothing, *ins.Turn:
			continue
		case *ins.Stitch:
			return n.Kind != nil && n.Kind.ID != "slst" && len(n.Places) > 0 && n.Places[0].Kind == ins.FromHook
		}
		return false
	}
	return false
}

// leftOver says what becomes of stitches that a row has not used.
func (r *runner) leftOver(w *work, res *result, l *ins.Line, body []ins.Item) {
	if w.usesAll() {
		return
	}
	_, _, into := ringedIn(l.Body)
	switch {
	case w.leave && !(wrapped(body) && r.shortRow(w, l, body)), r.leavesEnd(w, l, body) && len(r.misfits(l, w.out)) == 0:
		res.lefts = rest(&w.cur)
	case l.Label == nil && l.Stated == nil && !w.leave && (r.round && !into || offLast(body)): // hdc in next st, sl st in next st: the end of a spiral; k1, p1, bind off the next 2 sts: the rest is told behind
		res.total = true
	case endsInSlip(body):
		res.lefts = rest(&w.cur)
	case r.shortRow(w, l, body):
		res.lefts = w.beyondTurn()
		res.ahead = res.lefts
		if r.g != nil {
			r.g.waits(w.cur.pos, w.cur.left, wrapped(body))
		}
	case w.pinned || w.free || w.quiet > 0 || w.blind || l.Label == nil && l.Stated == nil:
	case w.spaced && !w.spaceBefore(0, 0) || w.bySpaces(body) && !w.spaceBefore(0, 0) && w.round:
	case r.round && w.cur.left <= w.from.untilSpace() && firstInSameSpace(body): // it began in a space without a word of the way there
	case max(w.lastChain(body), w.passedLast(body)) >= w.cur.left: // they lie under the chain that closes the round
	case uses(w.found), l.Stated != nil && w.leavesChain() && len(r.misfits(l, w.out)) == 0:
	case l.Stated != nil && w.cur.left > mostTurning && len(r.misfits(l, w.out)) == 0:
		if res.lefts = rest(&w.cur); r.saysLeft(l) {
			return
		}
		w.tell("rows/under-use", finding.Note, l.At, "%s stitches are left at the end, and the text does not say so", "say that they are left, or work them", w.cur.left)
	default:
		below := w.from.stitches()
		left := w.cur.left - w.around
		w.tellGap(left, below, "rows/under-use", endOf(l, body), "%s stitches are left over at the end | %s stitches in the row below, %s used | all of them worked, or the text to say that the rest stay unworked",
			"work %s more, or say that they are left unworked", left, below, below-left, left)
	}
}

// leftBeside are the words of a sentence beside a row that say that stitches of it are not worked.
var leftBeside = text.Once(`(?i)\bunworked\b|\b(?:left|leave|leaving|remain\w*) (?:free|open|aside|behind|un\w+)\b|\b(?:sts|stitches)\b[\w ]{0,40}\bleft\b|\bnot (?:be )?worked\b`)

// saysLeft reports whether a row is the first of another piece, or the text says beside it, above or below, that stitches are left.
func (r *runner) saysLeft(l *ins.Line) bool {
	if r.no == 0 && l.Label != nil && !l.Label.Next {
		return true
	}
	k := slices.Index(r.section.Lines, l)
	from, to := l.At.Line, len(r.x.Src)
	for i := k - 1; i >= 0 && from == l.At.Line; i-- {
		if e := r.section.Lines[i]; e.Label != nil || i == 0 {
			from = e.At.Line
		}
	}
	if k >= 0 && k+1 < len(r.section.Lines) {
		to = r.section.Lines[k+1].At.Line
	}
	return slices.ContainsFunc(r.x.Src[from-1:min(to, len(r.x.Src))], func(s string) bool { return leftBeside().MatchString(s) })
}

// untilSpace is how many stitches stand before the first space.
func (f *fabric) untilSpace() (n int) {
	for i := range f.runs {
		if f.runs[i].space() {
			return n
		}
		n += f.runs[i].n
	}
	return 0
}

// firstInSameSpace reports whether the first place that is named is a space in which the round has begun.
func firstInSameSpace(body []ins.Item) bool {
	for _, n := range body {
		if p := placesOf(n); len(p) > 0 {
			return p[0].Kind == ins.InSame && (p[0].Unit.Space || p[0].Unit.Word == "corner")
		}
	}
	return false
}

// offLast reports whether the last that a row says is that stitches behind others are bound off.
func offLast(body []ins.Item) bool {
	k := len(body) - 1
	for k >= 0 && is[*ins.Nothing](body[k]) {
		k--
	}
	if k < 1 {
		return false
	}
	off, ok := body[k].(*ins.BindOff)
	return ok && !off.All && !off.Hold && slices.ContainsFunc(body[:k], is[*ins.Stitch])
}

// endOf is where the last instruction of a line stands.
func endOf(l *ins.Line, body []ins.Item) ins.Span {
	if n := len(body); n > 0 && body[n-1].Span().Line > 0 {
		return body[n-1].Span()
	}
	return l.At
}

// usesAll reports whether nothing is left over: of the other side of a chain the place that the round began in may be, and
// what slip stitches went over.
func (w *work) usesAll() bool { return w.cur.left <= w.around || w.under && w.cur.left == 1 }

// joinsRound reports whether an instruction joins a round: join, or sl st in top of ch-3.
func joinsRound(n ins.Item) bool {
	st, ok := n.(*ins.Stitch)
	return is[*ins.Join](n) || ok && st.Kind != nil && st.Kind.ID == "slst" && len(st.Places) == 1 && (st.Places[0].Kind == ins.InTop || st.Places[0].Kind == ins.InFirst)
}

// lastChain is how many stitches may lie under the chain that closes a round: as many as its
// repeat passes each time.
func (w *work) lastChain(body []ins.Item) int {
	k := len(body) - 1
	for k >= 0 && (joinsRound(body[k]) || is[*ins.Nothing](body[k])) {
		k--
	}
	if k < 1 || !slices.ContainsFunc(body[k+1:], joinsRound) || !is[*ins.Chain](body[k]) {
		return 0
	}
	if r, ok := body[k-1].(*ins.Repeat); ok {
		return w.skipsFirst(r.Body)
	}
	return 0
}

// passedLast is how many stitches a round leaves before its join: as many as the repeat that it ends with passes each time
// before it works one.
func (w *work) passedLast(body []ins.Item) int {
	k := len(body) - 1
	for k >= 0 && (joinsRound(body[k]) || is[*ins.Nothing](body[k])) {
		k--
	}
	if k < 0 || !w.round {
		return 0
	}
	if r, ok := body[k].(*ins.Repeat); ok && len(r.Places) == 0 {
		return w.skipsFirst(r.Body)
	}
	return 0
}

// mostTurning is how many chains of a foundation a row leaves to turn with, at most.
const mostTurning = 3

// leavesChain reports whether what a row has left are the chains of its foundation that it turned with.
func (w *work) leavesChain() bool {
	return w.from.runs[0].base && len(w.from.runs) == 1 && w.cur.left <= mostTurning
}

// shortRow reports whether a knitted row turns before its end: a short row, of a heel or a shoulder.
func (r *runner) shortRow(w *work, l *ins.Line, body []ins.Item) bool {
	if !w.turned || r.round || len(body) < 2 {
		return false
	}
	if _, ok := body[len(body)-1].(*ins.Turn); !ok && !wrapped(body) {
		return false
	}
	k := w.out.main()
	if k == nil || k.Craft != stitch.Knitting {
		return false
	}
	if l.Stated == nil {
		return true
	}
	said := r.said(l)
	return said == w.out.stitches() || said == w.out.stitches()+w.cur.left
}

// turnsWithin reports whether a row is wrapped and turned before its end, and goes on: only how many stitches it adds is known.
func turnsWithin(body []ins.Item) bool {
	for i := range body {
		if i > 0 && wrapped(body[:i+1]) && slices.ContainsFunc(body[i+1:], func(n ins.Item) bool { return is[*ins.Stitch](n) }) {
			return true
		}
	}
	return false
}

// net is how many stitches instructions add, or take away.
func net(body []ins.Item, size int) int {
	by := 0
	for _, n := range body {
		switch n := n.(type) {
		case *ins.Stitch:
			switch k := max(n.N.At(size), 0); {
			case n.Inc:
				by += k
			case n.Dec:
				by -= k
			case n.Kind != nil:
				by += k * (n.Kind.Makes - n.Kind.Uses)
			}
		case *ins.CastOn:
			by += max(n.N.At(size), 0)
		case *ins.Repeat:
			by += net(n.Body, size) * max(n.Times.At(size), 0)
		}
	}
	return by
}

// oneForOne reports whether a row can only leave as many stitches as it finds: *k2, p2, again and again.
func oneForOne(body []ins.Item) bool {
	return !slices.ContainsFunc(body, func(n ins.Item) bool {
		switch n := n.(type) {
		case *ins.Stitch:
			return n.Inc || n.Dec || n.Kind == nil || n.Kind.Craft != stitch.Knitting || n.Kind.Uses != 1 || n.Kind.Makes != 1
		case *ins.Repeat:
			return !oneForOne(n.Body)
		}
		return !is[*ins.Nothing](n)
	})
}

// wrapped reports whether a row ends where a stitch is wrapped and the work turned.
func wrapped(body []ins.Item) bool {
	q, ok := body[len(body)-1].(*ins.Repeat)
	if !ok || len(q.Body) != 2 {
		return false
	}
	_, leaves := q.Body[0].(*ins.Leave)
	_, turns := q.Body[1].(*ins.Turn)
	return leaves && turns
}

// joined2 is a row and what lies beyond it.
func joined2(a, b *fabric) *fabric {
	f := &fabric{runs: append([]run(nil), a.runs...), picots: a.picots, groups: a.groups, ring: a.ring, marks: a.marks}
	for _, q := range b.runs {
		f.add(q)
	}
	for _, m := range b.marks {
		f.marks = append(slices.Clip(f.marks), a.stitches()+m)
	}
	return f
}

// endsInSlip reports whether a row goes up to its last stitches and slips into the next one: those behind it are left, as
// at a shoulder.
func endsInSlip(body []ins.Item) bool {
	k := len(body) - 1
	for k >= 0 && is[*ins.Nothing](body[k]) {
		k--
	}
	if k < 1 {
		return false
	}
	last, slip := body[k].(*ins.Stitch)
	before, ok := body[k-1].(*ins.Stitch)
	return slip && ok && last.Kind != nil && last.Kind.ID == "slst" && last.N.By == nil && last.N.All == 1 && len(before.Places) == 1 && before.Places[0].Extent.Kind == ins.ToLast
}

// upToLast reports whether a row goes up to its last stitches and turns there (turns: or is shaped, and need not say so): they are
// then left, if the stated count leaves them out too.
func upToLast(body []ins.Item, turns bool) bool {
	k := len(body) - 1
	for k >= 0 && (is[*ins.Turn](body[k]) || is[*ins.Chain](body[k]) || is[*ins.Nothing](body[k])) {
		turns = turns || is[*ins.Turn](body[k])
		k--
	}
	if k < 0 || !turns {
		return false
	}
	last, ok := body[k].(*ins.Stitch)
	return ok && len(last.Places) > 0 && last.Places[len(last.Places)-1].Extent.Kind == ins.ToLast
}

// leavesEnd reports whether a row leaves its last stitches, if its count says so too: it goes up to them, or passed as many by slip
// stitches at its beginning.
func (r *runner) leavesEnd(w *work, l *ins.Line, body []ins.Item) bool {
	slips := slipsBefore(body, r.size)
	return (l.Stated != nil || slips > 0) && upToLast(body, slips > 0) || l.Stated != nil && slips >= w.cur.left
}

// slipsBefore is how many stitches a row of crochet passes by slip stitches before it begins: it may leave as many at its end.
func slipsBefore(body []ins.Item, size int) int {
	for len(body) > 1 && (is[*ins.Turn](body[0]) || is[*ins.Chain](body[0]) || is[*ins.Nothing](body[0])) {
		body = body[1:]
	}
	if len(body) == 0 {
		return 0
	}
	st, ok := body[0].(*ins.Stitch)
	switch {
	case !ok || st.Kind == nil || st.Kind.ID != "slst" || len(st.Places) > 1:
		return 0
	case len(st.Places) == 1:
		return max(st.Places[0].N.At(size), 0)
	}
	return max(st.N.At(size), 0)
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

// misses reports whether a row is off what it stands on by a quarter or more: where its stitches stand
// is then not sure.
func misses(list []raw) bool {
	return slices.ContainsFunc(list, func(f raw) bool {
		return f.gap > 2 && 4*f.gap >= f.of && uses([]raw{f}) || f.kind == "rows/repeat" && len(f.a) > 2 && f.a[0] > 2 && 4*f.a[0] >= f.a[2]
	})
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

// multiple holds the first repeat of the text against the multiple that its notes tell.
func (r *runner) multiple(w *work) {
	if r.multi || w.perAt.Line == 0 || len(r.x.Multiples) != 1 || w.quiet > 0 || len(w.found) > 0 {
		return
	}
	m := r.x.Multiples[0]
	told := r.x.SectionAt(m.At.Line)
	if told != nil && told != r.x.SectionAt(w.perAt.Line) && slices.ContainsFunc(told.Lines, func(l *ins.Line) bool { return l.Label != nil && l.At.Line > m.At.Line }) {
		return // that of the rows of a stitch pattern, and this is the rib of the hat
	}
	if m.Of < 2 || w.per < 2 || m.Of%w.per == 0 || w.per%m.Of == 0 {
		r.multi = r.multi || w.per == m.Of
		return
	}
	r.multi = true
	r.tell("rows/repeat", finding.Warning, w.perAt, "the repeat takes %s stitches, but the notes say a multiple of %s", "correct the notes, or the repeat", w.per, m.Of)
}

// height is how tall k rows are at the text's gauge, mm.
func (r *runner) height(k int) (units.Num, bool) {
	if r.x.Gauge == nil || k < 0 {
		return units.Num{}, false
	}
	return r.x.Gauge.RowHeight.Times(k), true
}

var knitStitch = sync.OnceValue(func() *stitch.Stitch { return stitch.ByID("k") })
