package work

import (
	"maps"
	"slices"
	"strings"
	"sync"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
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
	sided       bool // words tell with which side the rows even begin
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
func (r *runner) mine(l *ins.Line) bool {
	if l.Label != nil && l.Sizes == nil && len(l.Stated) > 0 && len(l.Body) > 0 && l.Label.Next { // 40 (-, 48) sts
		return slices.ContainsFunc(l.Stated, func(g ins.StitchGroup) bool { return g.N.At(r.size) != ins.None })
	}
	return l.Sizes == nil || slices.Contains(l.Sizes, r.size)
}

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
		msg, fix := "not read: "+words+"; no count is stated, so the rows after it are not checked against it", "write it in the words of the trade's lists, and state the count"
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
	r.round = r.round || l.Label == nil && (r.inEye(body) || inRing(body) && !r.turns())
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

// bareOnly reports whether a row of crochet has stitches, and names no place of any but of the slip stitch that closes it.
func bareOnly(body []ins.Item) bool {
	any := false
	for _, n := range body {
		switch n := n.(type) {
		case *ins.Stitch:
			if !bareStitch(n) && !(any && n.Kind != nil && n.Kind.ID == "slst" && intoBeginning(n)) {
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

// bareStitch reports whether a stitch of crochet takes one place, and none is named.
func bareStitch(n *ins.Stitch) bool {
	return len(n.Places) == 0 && n.Kind != nil && n.Kind.Craft == stitch.Crochet && n.Kind.Uses == 1
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
