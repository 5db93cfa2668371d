package work

import (
	"slices"
	"strconv"
	"strings"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/rows/text"
	"flatwright/schematic/stitch"
)

func (r *runner) endSide(c ins.Course) {
	if c.EndSide != 0 || c.AnySide {
		r.side = c.EndSide
	}
}

// shapedUntil goes on to the count until which rows are shaped as before: in how many rows is not said.
func (r *runner) shapedUntil(l *ins.Line, n *ins.Even) {
	k := n.Until.At(r.size)
	if step := r.lastStep(); step > 0 && k > 0 && (r.fab.stitches()-k)%step != 0 {
		r.tell("rows/stated", finding.Warning, n.At, "%s stitches cannot be reached from %s in steps of %s", "correct the number, or the count before it", k, r.fab.stitches(), step)
	}
	if r.g != nil {
		r.g.gap(r, l, "the rows that are shaped as before", k)
	}
	if k != ins.None {
		r.put(uniform(r.stuff(r.fab), k), true)
	} else if r.fab != nil {
		r.put(r.fab.covered(), false)
	}
	r.no, r.side = -1, 0
}

// lastStep is by how many stitches the rows that were shaped last in the piece changed, if the last two that were changed by as many; 0: they
// did not, or it is not known.
func (r *runner) lastStep() int {
	if r.fab == nil || !r.known() || r.anyUnread() {
		return 0
	}
	counts := []int{r.fab.stitches()}
	for _, d := range slices.Backward(r.cur.rows) {
		if d.after == nil || d.unread || d.count > 1 && d.body != nil {
			return 0
		}
		counts = append(counts, d.after.stitches())
	}
	if r.cur.start != nil {
		counts = append(counts, r.cur.start.stitches())
	}
	if counts = slices.Compact(counts); len(counts) < 3 || counts[0]-counts[1] != counts[1]-counts[2] {
		return 0
	}
	return max(counts[1]-counts[0], counts[0]-counts[1])
}

// takeCloth takes up the fabric in which rows are worked even, if they tell one.
func (r *runner) takeCloth(l *ins.Line, n *ins.Even) {
	if r.g != nil {
		r.g.period = r.patternOf(l)
	}
	switch {
	case n.Cloth != (ins.Cloth{}):
		r.cloth = n.Cloth
	case r.g != nil && len(n.Row) > 0:
		r.cloth = r.clothOf(n.Row)
	}
}

// clothOf is the fabric that one plain row makes which is worked again and again: knitted or purled on every row it is
// garter stitch, in rounds it is not.
func (r *runner) clothOf(row []ins.Item) ins.Cloth {
	st, ok := row[0].(*ins.Stitch)
	switch {
	case !ok || st.Kind == nil:
		return ins.Cloth{}
	case !r.round:
		return ins.Cloth{Garter: true}
	case st.Kind.ID == "p":
		return ins.Cloth{Purl: 1}
	}
	return ins.Cloth{Knit: 1}
}

// evenTo works rows even up to the row that is named, or until there are so many; it reports false in a size that has none.
func (r *runner) evenTo(n *ins.Even) bool {
	switch to := n.ToRow.At(r.size); {
	case to == ins.None:
		return false
	case r.no < 0:
		r.no = to
		r.even(0)
	case to < r.no && n.Counted: // of this part, with the row before it or without
		r.even(to)
		r.altNo, r.side = r.no, 0
	case to < r.no:
		r.tell("rows/number", finding.Warning, n.At, "row %s has already been worked: the last was row %s", "name a later row", to, r.no)
	default:
		further := r.no + to + 1
		if r.even(to - r.no); n.Counted { // or so many more
			r.altNo = further
		}
	}
	return true
}

// beginsWith takes the side of the row with which words say that rows even begin.
func (r *runner) beginsWith(n *ins.Even) {
	if n.Begins != 0 && r.side == 0 && !r.round {
		r.side, r.sided = 3-n.Begins, true
	}
}

// evenRows works even: so many rows, to a row, or to a length.
func (r *runner) evenRows(l *ins.Line, n *ins.Even) {
	if n.Until.Set() {
		r.shapedUntil(l, n)
		return
	}
	r.round = r.round || n.Rounds
	r.g.take(n.Colour)
	r.takeCloth(l, n)
	r.beginsWith(n)
	defer func() { r.sided = false }()
	if k := n.Part; k.Set() && r.fab != nil && r.known() && k.At(r.size) > r.fab.stitches() && !r.anyUnread() {
		r.tell("rows/over-use", finding.Warning, n.At, "the short rows go over %s stitches, and there are only %s", "go over fewer", k.At(r.size), r.fab.stitches())
	}
	r.ribInRound(n)
	switch {
	case n.ToRow.Set() && n.Length == nil && !n.Rows.Set(): // else it is with which row the length, or so many rows, end
		if !r.evenTo(n) {
			return
		}
	case n.Length != nil || n.Open && l.Label == nil:
		list := r.readings()
		for i := range list {
			if f := list[i].fab; f != nil {
				list[i].fab = uniform(r.stuff(f), f.stitches())
				list[i].fab.marks = f.marks
			}
		}
		r.keep(list)
		r.no, r.side = -1, 0
		r.endSide(n.Course)
		return
	case n.Row != nil && n.Rows.Set() && r.g != nil && n.Rows.At(r.size) <= mostTimes:
		r.rowsTold(l, n)
	case n.Rows.Set():
		r.even(max(n.Rows.At(r.size), 0))
	case l.Label != nil:
		r.even(r.times(l))
	}
	if e := n.EndSide; e != 0 {
		if r.side != 0 && r.side != e {
			names := [...]string{1: "right", 2: "wrong"}
			r.tell("rows/side", finding.Warning, n.At, "these rows end after a "+names[r.side]+"-side row, not a "+names[e]+"-side row", "work one row more or less")
		}
		r.side = e
	}
}

// ofPattern says how many rows a pattern has, or which: these 4 rows form the pattern.
var ofPattern = text.Once(`(?i)\b(?:(?:these|last|above|foregoing|previous|preceding) (\w+) (?:rows|rnds|rounds)|(?:rows|rnds|rounds) (\d+)\s*(?:-|–|to|through|and|&)\s*(\d+)) (?:form|set|make|are|establish|for|complete)(?:s|es)? (?:the |one )?(?:\w+ )?patt`)

// patternOf is how many rows the pattern has that is worked on, as the words before say it last; 0: they do not.
func (r *runner) patternOf(l *ins.Line) int {
	for i := min(l.At.Line, len(r.x.Src)) - 1; i >= 0; i-- {
		m := ofPattern().FindStringSubmatch(r.x.Src[i])
		switch {
		case m == nil:
		case m[1] != "":
			k, _ := strconv.Atoi(m[1])
			return max(k, 1+slices.Index(strings.Fields("one two three four five six seven eight nine ten eleven twelve"), strings.ToLower(m[1])))
		default:
			a, _ := strconv.Atoi(m[2])
			b, _ := strconv.Atoi(m[3])
			return b - a + 1
		}
	}
	return 0
}

// rowsTold works the rows of which words say what each is.
func (r *runner) rowsTold(l *ins.Line, n *ins.Even) {
	for range n.Rows.At(r.size) {
		r.one(l, n.Row)
		r.log(l, n.Row, 1)
		r.countRows(1)
	}
}

// ribInRound tells a rib in the round that does not go into its stitches.
func (r *runner) ribInRound(n *ins.Even) {
	c := n.Cloth
	if c.Knit == 0 || c.Purl == 0 || !r.round || r.fab == nil || !r.known() {
		return
	}
	k, per := r.fab.stitches(), c.Knit+c.Purl
	if k%per != 0 {
		r.tell("rows/repeat", finding.Warning, n.At, "%s stitches do not divide into the rib's %s", "make %s stitches more or %s fewer before it", k, per, per-k%per, k%per)
	}
}

// span is over how many rows a shaping goes, and how often it is done.
type span struct{ times, rows int }

func (r *runner) spanOf(l *ins.Line, n *ins.Shape, per int) span {
	every := max(n.Every.At(r.size), 1)
	times := 1
	switch {
	case n.HasTimes:
		times = max(n.Times.At(r.size), 0)
		if n.First && !r.comesTo(l, n, per*times) {
			times++
		}
	case n.Rows.Set():
		times = max(n.Rows.At(r.size), 0) / every
	case l.Label != nil && !n.Spread:
		times = r.times(l) / every
	}
	if n.Until.Set() && r.fab != nil {
		times = r.until(n, per, times)
	}
	rows := times * every
	if n.First && times > 0 {
		rows = firstRow(n, r.size) + (times-1)*every
	}
	if l.Label != nil && !(l.Label.Next && every > 1) { // inc row: every 6th row to 80 sts
		rows = r.times(l)
	}
	for _, t := range n.Then {
		k, every := max(t.Times.At(r.size), 0), max(t.Every.At(r.size), 1)
		times += k
		rows += k * every
	}
	switch {
	case n.HasOver:
		rows = max(n.Over.At(r.size), 0)
	case r.sameRow && !n.HasTimes && !n.Every.Set() && !n.Rows.Set(): // as row 9, increasing in first and last st
		rows = 0
	}
	if n.Apart != nil {
		rows = 0
	}
	return span{times, rows}
}

// comesTo reports whether a shaping by so many stitches in all comes to the count that its line states.
func (r *runner) comesTo(l *ins.Line, n *ins.Shape, change int) bool {
	if !n.Inc {
		change = -change
	}
	return r.fab != nil && r.known() && r.fab.stitches()+change == r.said(l)
}

// firstRow is the row on which a shaping falls first that is done on one row and then every so many.
func firstRow(n *ins.Shape, size int) int {
	if n.On.Set() {
		return max(n.On.At(size), 1)
	}
	return 1
}

// until is how often a shaping is done until so many stitches are there.
func (r *runner) until(n *ins.Shape, per, times int) int {
	want := n.Until.At(r.size)
	if !r.known() || want == ins.None {
		return times
	}
	sign := 1
	if n.Inc {
		sign = -1
	}
	d := sign * (r.fab.stitches() - want)
	if via := n.Via.At(r.size); n.Via.Set() && via > 0 && per > 0 {
		if on := sign * (r.fab.stitches() - via); on < 0 || on > d || on%per != 0 && d%per == 0 {
			r.unreached(n, via, per)
			return max(d, 0) / per
		}
	}
	if per > 0 && d >= 0 && d%per == 0 {
		r.certainty.since = 0 // it holds
		return d / per
	}
	r.unreached(n, want, per)
	return max(d, 0) / max(per, 1)
}

func (r *runner) unreached(n *ins.Shape, want, per int) {
	r.tell("rows/stated", finding.Warning, n.At, "%s stitches cannot be reached from %s in steps of %s", "correct the number, or the count before it", want, r.fab.stitches(), per)
}

// shape works increases or decreases that are told in words.
func (r *runner) shape(l *ins.Line, n *ins.Shape) {
	if n.Cloth != (ins.Cloth{}) {
		r.cloth = n.Cloth
	}
	r.round = r.round || n.Rounds
	per := max(n.N.At(r.size), 0) * r.places(n)
	s := r.spanOf(l, n, per)
	if n.Same { // at the same time as the shaping before
		s.rows = max(s.rows-r.shaped, 0)
	} else {
		r.shaped = 0
	}
	r.shaped += s.rows
	if n.Vague && r.g != nil && r.fab != nil && s.rows > 0 {
		r.g.vague(r, l, s.rows)
	}
	if r.fab == nil || !r.known() {
		r.even(s.rows)
		if n.Until.Set() && !r.known() && n.Until.At(r.size) > 0 { // so many are there now
			r.put(uniform(nil, n.Until.At(r.size)), true)
		}
		return
	}
	if n.Apart != nil && r.g != nil {
		r.g.gap(r, l, "the rows of a shaping given as a length", -1)
	}
	open := untilLong(n)
	if open {
		r.put(r.fab, false)
	} else {
		r.shapeBy(l, n, per*s.times, s)
	}
	if open || n.Apart != nil {
		r.no, r.side = -1, 0
	}
	if k := len(r.cur.rows); k > 0 {
		r.counted()
		r.cur.rows[k-1].shape = eachRow(n, s)
	}
	if n.RSOnly || n.WSOnly {
		r.side = 0
	}
}

// untilLong reports whether a shaping goes on until a length, so that how often it is done is not known.
func untilLong(n *ins.Shape) bool {
	return n.Length != nil && (n.Every.Set() || n.Apart != nil) && !n.HasTimes && !n.Until.Set() && !n.Rows.Set()
}

// shapeBy works a shaping that changes so many stitches in all.
func (r *runner) shapeBy(l *ins.Line, n *ins.Shape, change int, s span) {
	if !n.Inc {
		change = -change
	}
	if r.g != nil && s.rows == 0 {
		r.g.atOnce(n, change)
	}
	if n.Vague || n.Halves && r.g == nil && !r.bothHalves() {
		r.vague(n, change, s.rows)
		return
	}
	r.plan(l, n, s.times, s.rows)
	r.change(n, change)
}

// eachRow is a shaping in one of its rows; nil if not each of them is shaped.
func eachRow(n *ins.Shape, s span) ins.Item {
	if s.rows == 0 || s.times != 1 && s.times != s.rows {
		return nil
	}
	one := *n
	one.Course, one.Same = ins.Course{Rows: ins.N(1)}, false
	return &one
}

// again works a row once more that no line tells: even, or with its shaping.
func (r *runner) again(l *ins.Line, d done) {
	switch n := d.shape.(type) {
	case *ins.Shape:
		if r.fab == nil || !r.known() {
			break
		}
		r.shapeBy(l, n, max(n.N.At(r.size), 0)*r.places(n), span{1, 1})
		r.counted()
		r.cur.rows[len(r.cur.rows)-1].shape = n
		return
	case *ins.BindEach:
		r.bindEach(n)
		return
	}
	r.even(1)
}

// vague works a shaping of which the text does not say where: at one end, or at both. How many halves are worked says the count
// that follows.
func (r *runner) vague(n *ins.Shape, change, rows int) {
	g := r.g
	r.g = nil
	r.even(rows)
	r.g = g
	k := key{both: n.At}
	if _, ok := r.pick.asked[k]; !ok && n.Vague {
		r.pick.asked[k] = n.At
		r.tell("rows/where", finding.Note, n.At, "the text does not say where these stitches fall: at one end of the row, or at both", "say at which edge, or at each end")
	}
	var list []reading
	for _, rd := range r.readings() {
		for times, both := range []bool{false, true} {
			q := rd
			q.pick = rd.pick.with(k, both)
			have := 0
			if q.fab != nil {
				have = q.fab.stitches()
			}
			q.fab = uniform(r.stuff(q.fab), max(have+change*(times+1), 0))
			q.res = &result{out: q.fab}
			list = append(list, q)
		}
	}
	r.keep(list)
}

// places is at how many places of the row a shaping falls.
func (r *runner) places(n *ins.Shape) int {
	switch {
	case n.Halves && r.bothHalves():
		return 2
	case !n.Both:
		return 1
	case n.Marked && n.Markers.Set():
		return 2 * max(n.Markers.At(r.size), 0)
	case n.Marked && r.round && len(r.panels) > 0:
		return 2 * len(r.panels)
	case n.Marked && len(r.panels) > 1:
		return 2 * (len(r.panels) - 1)
	case n.Marked && r.fab != nil && len(r.fab.marks) > 0:
		return 2 * len(r.fab.marks)
	case n.Marked:
		r.tell("rows/reference", finding.Warning, n.At, "no markers were placed before this", "say how many there are: on each side of 4 markers")
	}
	return 2
}

// bothHalves reports whether the row is known to be in two halves, both of which are worked.
func (r *runner) bothHalves() bool {
	return r.fab != nil && len(r.fab.marks) == 1 && len(r.panels) == 0
}

// marks1 works the placing of markers between panels, which must make up the row.
func (r *runner) marks1(n *ins.Markers) {
	r.addUp(n.Panels, "panel", n.At)
	r.panels = nil
	for _, g := range n.Panels {
		if k := max(g.N.At(r.size), 0); k > 0 {
			r.panels = append(r.panels, panel{strings.TrimPrefix(g.Name, "for "), k})
		}
	}
}

// plan counts the rows of a shaping, and records them for a graph with what they change:
// those of the shapings at the same time too, whose own rows are these.
func (r *runner) plan(l *ins.Line, n *ins.Shape, times, rows int) {
	if r.g == nil || n.Same || rows == 0 {
		r.even(rows)
		return
	}
	plan := make([]edges, min(rows, maxGraph))
	wrong := r.side == 1 || r.side == 0 && !r.g.next()
	shapes(n, plan, r.size, times, r.places(n), wrong, r.round)
	after := false
	for _, item := range l.Body {
		m, ok := item.(*ins.Shape)
		if m == n {
			after = true
			continue
		}
		if ok && after && m.Same && m.HasTimes {
			k := max(m.Times.At(r.size), 0)
			for _, t := range m.Then {
				k += max(t.Times.At(r.size), 0)
			}
			shapes(m, plan, r.size, k, r.places(m), wrong, r.round)
		}
	}
	g := r.g
	g.planned(r, plan, l.At.Line)
	r.g = nil // they are recorded
	r.even(rows)
	r.g = g
}

// asFor works as for another piece: to a row of it, to a heading of it, or to its end.
func (r *runner) asFor(l *ins.Line, n *ins.AsFor) {
	r.only()
	r.cur.like = &likeness{}
	chain := r.chainOf(n)
	if chain == nil {
		r.put(r.fab, false)
		r.no = -1
		return
	}
	switch {
	case n.ToRow.Set() && r.fab != nil && r.known() && len(r.cur.rows) == 0 && r.fab != r.cur.start:
		r.asOwn(l, n.ToRow.At(r.size), chain)
		return
	case n.ToRow.Set():
		r.asForRow(n, chain)
		return
	case n.Count.Set():
		r.asForCount(n, chain)
		return
	case strings.HasPrefix(n.To, "*"):
		r.asForStar(n, chain)
		return
	case n.To != "":
		r.asForPart(l, n, chain)
		return
	}
	p := chain[len(chain)-1]
	if r.fab != nil && r.known() && r.no > 0 {
		for _, q := range chain {
			for _, d := range q.rows {
				if d.no > 0 && d.no <= r.no && r.no < d.no+d.count && d.after != nil && d.after.stitches() != r.fab.stitches() && !d.unread {
					r.tell("rows/as-for", finding.Warning, n.At, "'"+n.Name+"' has %s stitches after that row, this has %s", "correct the count, or write the rows out", d.after.stitches(), r.fab.stitches())
				}
			}
		}
	}
	r.putAs(p.end, p.ended)
	r.no, r.side = p.no, 0
	r.cur.like = &likeness{pieces: chain, lines: -1, row: -1}
}

// chainOf are the stretches of the piece that is named; nil if there is none of that name.
func (r *runner) chainOf(n *ins.AsFor) []*piece {
	at := -1
	name := headingKey(n.Name)
	before := r.pieces[:len(r.pieces)-1]
	for i, p := range before {
		if p.name == name {
			at = i
			break
		}
	}
	for i, p := range before {
		if at < 0 && name != "" && (p.name == ordered(name) || strings.HasPrefix(p.name, name) || p.name != "" && strings.HasPrefix(name, p.name)) {
			at = i
		}
	}
	if at < 0 {
		switch {
		case r.pieces[len(r.pieces)-1].name == name && !n.ToRow.Set(): // the piece that is being told
		case r.comes(name):
			r.tell("rows/reference", finding.Warning, n.At, "'"+n.Name+"' is not worked before this", "name a piece that was worked before, or write the rows out")
		case r.namesPiece(name):
			r.tell("rows/not-read", finding.Note, n.At, "not followed: there is no piece called '"+n.Name+"' before this", "call it by its heading")
		}
		return nil
	}
	var chain []*piece
	for i := at; i < len(before); i++ {
		if i > at && (r.pieces[i].anew || !strings.Contains(r.pieces[i].name, "shape") && !strings.Contains(r.pieces[i].name, "shaping") && !strings.Contains(r.pieces[i].name, "divide")) {
			break
		}
		chain = append(chain, r.pieces[i])
	}
	return chain
}

// ordered is a name as a heading has it: leg 1 for first leg.
func ordered(name string) string {
	if rest, ok := strings.CutPrefix(name, "first "); ok {
		return rest + " 1"
	}
	if rest, ok := strings.CutPrefix(name, "second "); ok {
		return rest + " 2"
	}
	return name
}

// comes reports whether a heading of this stretch of rows or of a later one is the name.
func (r *runner) comes(name string) bool {
	at := slices.Index(r.x.Sections, r.section)
	return at >= 0 && name != "" && slices.ContainsFunc(r.x.Sections[at:], func(s *ins.Section) bool { return headingKey(s.Name) == name })
}

// namesPiece reports whether a name can only be that of a piece with a heading: words such as
// the first side may mean a stretch of this one.
func (r *runner) namesPiece(name string) bool {
	headed := 0
	for _, p := range r.pieces {
		if p.name != "" {
			headed++
		}
	}
	if headed < 2 || len(strings.Fields(name)) > 2 || !text.OfPiece(name) {
		return false
	}
	for w := range strings.FieldsSeq(name) {
		switch w {
		case "for", "first", "other", "side", "second", "opposite", "one", "left", "right", "half", "border", "square", "motif", "last", "heel", "toe", "leg", "neck":
			return false
		}
	}
	return true
}

// asOwn works the first k rows of another piece on the stitches that this one begins with. Where their numbers do not go into
// them, it is not known how many there are.
func (r *runner) asOwn(l *ins.Line, k int, chain []*piece) {
	mark := len(r.found)
	for _, p := range chain {
		for _, d := range p.rows {
			for range min(d.count, k) {
				if d.unread || d.line == nil {
					r.lose()
					return
				}
				r.one(l, d.body)
				r.log(l, d.body, 1)
				r.countRows(1)
				if k--; len(r.found) > mark {
					r.found = r.found[:mark]
					r.lose()
					return
				}
			}
		}
	}
}

// asForRow goes to a row of another piece.
func (r *runner) asForRow(n *ins.AsFor, chain []*piece) {
	k := n.ToRow.At(r.size)
	unsure := false
	for c := len(chain) - 1; c >= 0; c-- {
		unsure = unsure || chain[c].no < 0
		for i := len(chain[c].rows) - 1; i >= 0; i-- {
			d := chain[c].rows[i]
			if d.no <= 0 || d.no > k || k >= d.no+d.count {
				continue
			}
			r.anew()
			r.put(d.after, d.after != nil && d.sure && !d.unread)
			r.no, r.side = k, d.side
			if d.side != 0 && (k-d.no)%2 == 0 {
				r.side = 3 - d.side
			}
			r.cur.like = &likeness{pieces: chain[:c+1], lines: -1, row: k}
			return
		}
	}
	for _, p := range r.pieces { // a part of the same name, told under a heading of its own
		unsure = unsure || slices.ContainsFunc(p.rows, func(d done) bool { return d.no > 0 && d.no <= k && k < d.no+d.count })
	}
	if !unsure {
		r.tell("rows/reference", finding.Warning, n.At, "'"+n.Name+"' has no row %s", "name a row that it has", k)
	}
	r.put(r.fab, false)
}

// asForCount goes to where another piece comes to a count; rows that are told together may come to those between.
func (r *runner) asForCount(n *ins.AsFor, chain []*piece) {
	k := n.Count.At(r.size)
	r.anew()
	r.no, r.side = -1, 0
	r.put(uniform(r.mainOf(), k), k >= 0)
	at, open := comesTo(chain, k)
	switch {
	case at >= 0:
		r.cur.like = &likeness{pieces: chain[:at+1], lines: -1, row: -1, count: k}
	case !open && k >= 0:
		r.tell("rows/reference", finding.Warning, n.At, "'"+n.Name+"' never has %s stitches", "name a count that it has", k)
	}
}

// comesTo is which of the stretches of a piece comes to a count, -1 if none does; open if one may, in rows that are told together.
func comesTo(chain []*piece, k int) (at int, open bool) {
	have := ins.None
	for c, p := range chain {
		for _, d := range p.rows {
			was := have
			if d.after == nil || d.unread || !d.sure {
				have, open = ins.None, true
				continue
			}
			switch have = d.after.stitches(); {
			case have == k && was != k:
				return c, open
			case was >= 0 && min(was, have) < k && k < max(was, have):
				open = true
			}
		}
	}
	return -1, open
}

// asForPart goes to a heading of another piece.
func (r *runner) asForPart(l *ins.Line, n *ins.AsFor, chain []*piece) {
	word := strings.Fields(n.To)
	if k := r.said(l); n.Done && k >= 0 {
		if at, open := comesTo(chain, k); at < 0 && !open {
			r.tell("rows/reference", finding.Warning, l.Stated[0].At, "'"+n.Name+"' never has %s stitches", "name a count that it has", k)
		}
	}
	if n.Done || strings.Contains(n.To, "measur") { // how many rows that is, nothing says
		chain = nil
	}
	if r.fab != nil && r.known() && r.fab != r.cur.start { // on a count of its own
		chain = nil
	}
	for i, p := range chain[min(1, len(chain)):] {
		if len(word) > 0 && strings.Contains(p.name, strings.TrimSuffix(word[0], "s")) {
			r.anew()
			r.putAs(p.start, p.doubts)
			r.no, r.side = p.startNo, 0
			r.cur.like = &likeness{pieces: chain[:i+1], lines: -1, row: -1}
			return
		}
	}
	r.put(r.fab, false)
	r.no = -1
}

// addUp tells of parts of a row that do not make it up.
func (r *runner) addUp(parts []ins.Part, what string, at ins.Span) {
	sum := 0
	for _, g := range parts {
		sum += max(g.N.At(r.size), 0)
	}
	if r.fab != nil && r.known() && sum != r.fab.stitches() && sum > 0 {
		r.tell("rows/division", finding.Warning, at, "the "+what+"s add up to %s stitches, and the row has %s", "correct a "+what+" by %s", sum, r.fab.stitches(), r.fab.stitches()-sum)
	}
}

// divide works a division, whose parts must add up to the row.
func (r *runner) divide(n *ins.Divide) {
	r.addUp(n.Parts, "part", n.At)
	s := split{section: r.section.Name, row: max(r.no, 0)}
	for _, g := range n.Parts {
		s.parts = append(s.parts, splitPart{strings.TrimPrefix(g.Name, "for "), max(g.N.At(r.size), 0)})
	}
	r.splits = append(r.splits, s)
	if r.fab != nil {
		r.last, r.parted = r.stuff(r.fab), r.cloth
		r.lefts = append(r.lefts, left{f: r.fab, no: r.no})
	}
}

// together1 makes one row of several parts.
func (r *runner) together1(n *ins.Together) {
	sum := 0
	for _, g := range n.Parts {
		sum += max(g.N.At(r.size), 0)
	}
	kind := r.mainOf()
	if r.fab == nil {
		r.cloth = r.parted
	}
	r.anew()
	f := uniform(kind, sum)
	f.waited = true
	r.put(f, true)
	r.round = false
	if r.g != nil {
		r.g.anew()
		r.g.foundation(r.fab, n.At.Line, false)
		r.g.held()
		r.g.From = r.origin(r.section.Name)
	}
}

func (r *runner) mainOf() *stitch.Stitch {
	if r.fab != nil {
		if k := r.stuff(r.fab); k != nil {
			return k
		}
	}
	return r.last
}

// stuff is what rows are worked in that name no stitch: what words said last, or
// what the row below has most of; rows over chains alone are of the least stitch
// that makes a row.
func (r *runner) stuff(f *fabric) *stitch.Stitch {
	if r.cloth.St != nil {
		return r.cloth.St
	}
	if f == nil {
		return nil
	}
	k := f.main()
	if k == chainStitch() {
		return stitch.ByID("sc")
	}
	return k
}
