package work

import (
	"slices"
	"strconv"
	"strings"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/stitch"
)

// label holds the number and the side of a row against the rows before it.
func (r *runner) label(l *ins.Line) {
	b := l.Label
	if !b.Next {
		from := b.From.At(r.size)
		if from == ins.None {
			return
		}
		if r.edge == 0 && from == 1 && !r.fresh && slices.ContainsFunc(l.Body, intoEachRow) { // along the ends of those before
			r.edge = max(r.no, 0)
		}
		r.number(l, from)
	} else if r.altNo == 0 && r.no > 0 && b.Name != "" && b.Name != "next" { // a row with a name may be counted or not
		r.altNo = r.no
	}
	if r.fresh && inRing(l.Body) && r.fab != nil && !r.fab.ring { // a magic ring begins anew
		r.put(nil, false)
		r.cur.anew = true
	}
	if r.joinsBelow(l) {
		r.lose()
	}
	r.rowRounds = !b.Round && r.closesRow(l)
	r.fresh, r.founded = false, false
	r.round = b.Round || r.rowRounds
	if usesNothing(l.Body) { // along an edge: sides begin anew
		r.side = 0
	}
	r.sides(l)
}

// joinsBelow reports whether a row begins with yarn that is joined at a row further down than the one before: Join at other end of Row 1.
func (r *runner) joinsBelow(l *ins.Line) bool {
	body := behindWords(l.Body)
	if len(body) < 2 || !is[*ins.JoinYarn](body[0]) && !is[*ins.Join](body[0]) {
		return false
	}
	for i, w := range l.Words[:len(l.Words)-1] {
		if next := l.Words[i+1]; w.S == "row" && next.Kind == 'n' && next.Num.By == nil && next.Num.All < r.no {
			return true
		}
		if w.S == "," {
			break
		}
	}
	return false
}

// closesRow reports whether what the text calls a row is a round: it is worked into a ring or over a round and joined,
// or goes on from one that was and is not turned.
func (r *runner) closesRow(l *ins.Line) bool {
	if r.rowRounds && !r.fresh {
		return closed(l.Body) || !turnsLast(l.Body)
	}
	if r.round && r.fab != nil && !turnsLast(l.Body) && saysRound(r.x.Quote(l.At)) {
		if k := r.stuff(r.fab); k != nil && k.Craft == stitch.Knitting {
			return true
		}
	}
	return closed(l.Body) && (r.round || inRing(l.Body) || r.fab != nil && r.fab.ring) || r.inEye(l.Body)
}

// inEye reports whether all stitches of a row go into one chain and the row is joined, or there is no other chain and nothing is turned:
// 12 dc in 4th ch from hook, sl st in first dc; ch 2, 6 sc in 2nd ch from hook.
func (r *runner) inEye(body []ins.Item) bool {
	body = behindWords(body)
	chains := 0
	if len(body) > 0 && is[*ins.Chain](body[0]) {
		chains = body[0].(*ins.Chain).N.At(r.size)
		body = behindWords(body[1:])
	} else if r.fab != nil && r.fab.foundation() && len(r.fab.runs) == 1 && !r.fab.ring {
		chains = r.fab.stitches()
	}
	if len(body) == 0 {
		return false
	}
	st, ok := body[0].(*ins.Stitch)
	if !ok || len(st.Places) != 1 || st.N.By != nil || st.N.All < fewestInEye {
		return false
	}
	p := st.Places[0]
	if p.Kind == ins.FromHook && len(body) > 1 && intoBeginning(body[1]) {
		return true
	}
	alone := p.Kind == ins.FromHook && p.N.At(r.size) == chains || (p.Kind == ins.InFirst && p.Unit.Chain || p.Kind == ins.InTop) && chains <= mostEye
	return alone && chains > 0 && st.N.All > fewestInEye && !r.turns()
}

// turns reports whether the work is turned anywhere in the section.
func (r *runner) turns() bool {
	return slices.ContainsFunc(r.section.Lines, func(l *ins.Line) bool { return slices.ContainsFunc(l.Body, is[*ins.Turn]) })
}

// saysRound reports whether the words of a row say that it goes around: repeat to end of round.
func saysRound(words string) bool {
	words = strings.ToLower(words)
	return strings.Contains(words, "round") || strings.Contains(words, "rnd")
}

// closed reports whether instructions end with what joins a round.
func closed(body []ins.Item) bool {
	for i := len(body) - 1; i >= 0; i-- {
		switch k := body[i].(type) {
		case *ins.Join:
			return k.Name != "ring"
		case *ins.Nothing, *ins.Turn, *ins.Fasten:
		default:
			return false
		}
	}
	return false
}

// number holds the number of a row against the one before it, and works the rows between
// that an earlier line tells.
func (r *runner) number(l *ins.Line, from int) {
	b := l.Label
	if from == 1 && r.no > 0 { // a stretch of rows of its own
		r.fillRest(nil)
		r.every = nil
	}
	want := r.no + 1
	for r.no > 0 && from > want && r.fill(want) {
		want = r.no + 1
	}
	if b.Odd || b.Even || len(b.Listed) > 0 {
		r.every = append(r.every, l)
	}
	told := false
	switch {
	case r.no < 0:
	case from == want, r.altNo > 0 && from == r.altNo:
	case r.filled(l, want), from < want && r.behindSentences(l) == from:
	case r.founded && from <= 2 && r.no == 0: // the foundation row may be called row 1
	case r.ofOthers(l, want) == from:
		r.side = 0
	case r.fresh && (from == 1 || !r.begun && len(r.lefts) > 0 || r.cur.anew && from == 2 && r.no <= 1):
	case from == 1: // a stretch of rows of its own
	case r.toldInWords(l, from-want):
		r.lose()
		r.skips, r.suspect, r.side = true, suspectRows, 0
	case r.skips || r.x.Unsized || !r.misnamed(l, from, want): // rows that are not here, or not read
		r.lose()
		r.skips, r.suspect, r.side = true, suspectRows, 0
	default:
		r.tellNumber(b, from, want)
		told = true
	}
	if !told {
		r.altNo = 0
	}
	if r.no < 0 && r.fab != nil && l.Stated != nil && !r.known() && len(l.Unread) == 0 {
		r.why = said // as many as before the lines that were not read, it may be
	}
	r.no = from - 1
}

// ofOthers is the number behind the rows before a line that other sizes alone have, from row k on.
func (r *runner) ofOthers(l *ins.Line, k int) int {
	for _, e := range r.section.Lines {
		if e == l {
			break
		}
		if b := e.Label; b != nil && len(e.Sizes) > 0 && !r.mine(e) && b.From.Set() && b.From.At(e.Sizes[0]) == k {
			k = b.To.At(e.Sizes[0]) + 1
		}
	}
	return k
}

// toldInWords reports whether only sentences stand before a row in its section and the rows that they tell are not to be numbered:
// they tell a length, or are not read, or the number is another by more than one.
func (r *runner) toldInWords(l *ins.Line, off int) bool {
	vague := off > 1 || off < -1
	for _, e := range r.section.Lines {
		switch {
		case e == l:
			return vague
		case e.Label != nil:
			return false
		}
		vague = vague || len(e.Unread) > 0 || slices.ContainsFunc(e.Body, byLength)
	}
	return vague
}

// byLength reports whether rows go on to a length.
func byLength(n ins.Item) bool {
	e, ok := n.(*ins.Even)
	return ok && (e.Length != nil || e.Until.Set())
}

// sentenceBefore reports whether a sentence stands between a row and the one that is called by its number before it: how many rows it
// is, if any, is not sure.
func (r *runner) sentenceBefore(l *ins.Line) bool {
	k := slices.Index(r.section.Lines, l) - 1
	if k <= 0 {
		return false
	}
	e := r.section.Lines[k]
	if e.Label != nil || slices.ContainsFunc(e.Body, func(n ins.Item) bool { return tellsRows(n) && !byLength(n) }) {
		return false
	}
	return slices.ContainsFunc(r.section.Lines[:k], func(e *ins.Line) bool { return e.Label != nil })
}

// behindSentences is the number that a row has if the sentences between the labelled row before and it belong to that row, as
// 'Sl st to top of first st.' on a line of its own does; 0 if there are none, or if they tell of whole rows.
func (r *runner) behindSentences(l *ins.Line) int {
	k := slices.Index(r.section.Lines, l) - 1
	for at := k; at >= 0; at-- {
		e := r.section.Lines[at]
		if e.Label != nil && at < k && !e.Label.Next && len(e.Label.Listed) == 0 {
			return e.Label.To.At(r.size) + 1
		}
		if e.Label != nil || slices.ContainsFunc(e.Body, tellsRows) {
			return 0
		}
	}
	return 0
}

// tellsRows reports whether an instruction tells of whole rows.
func tellsRows(n ins.Item) bool {
	switch n.(type) {
	case *ins.Even, *ins.RepeatRows, *ins.Shape, *ins.BindEach, *ins.AsFor, *ins.Measure:
		return true
	}
	return false
}

// tellNumber says that a row has another number than it would have.
func (r *runner) tellNumber(b *ins.Label, from, want int) {
	word := "row"
	if b.Round {
		word = "round"
	}
	r.tell("rows/number", finding.Warning, b.At, "this is called "+word+" %s, but the one before it was "+word+" %s", "call it %s, or put the missing "+word+"s in", from, r.no, want)
	r.altNo = want
	r.suspect, r.amiss, r.side = suspectRows, true, 0
	for i := range r.others {
		r.others[i].suspect, r.others[i].amiss = suspectRows, true
	}
	for k := want; k < from && len(r.gone) < maxRepeat; k++ {
		r.gone = append(r.gone, k)
	}
}

// misnamed reports whether a row has a wrong number, and not one that follows from what the
// text leaves out or was not read: the row after it says which.
func (r *runner) misnamed(l *ins.Line, from, want int) bool {
	if r.no == 0 && !r.cur.anew && !inRing(l.Body) || r.gapBefore(l) || r.sentenceBefore(l) || len(r.every) > 0 && from == want+1 {
		return false
	}
	size := max(r.times(l), 1)
	next := r.numberAfter(l)
	gap := from - want
	switch {
	case next <= 1:
		return gap == 1 || gap == -1
	case next == want+size, next == from && gap == 1:
		return true
	}
	return next == from+size && (gap == -1 || gap > 0 && (gap <= 2 || r.no == 0 || r.cur.anew))
}

// numberAfter is the number of the next row of the section that has one, 0: none.
func (r *runner) numberAfter(l *ins.Line) int {
	after := false
	for _, m := range r.section.Lines {
		if !r.mine(m) {
			continue
		}
		if after && m.Label != nil && !m.Label.Next && len(m.Label.Listed) == 0 && m.Label.From.Set() {
			return m.Label.From.At(r.size)
		}
		after = after || m == l
	}
	return 0
}

// gapBefore reports whether something stands between a row and the numbered one before it that
// may be rows: lines that were not read, or passed as words, or have no number.
func (r *runner) gapBefore(l *ins.Line) bool {
	var prev *ins.Line
	for _, m := range r.section.Lines {
		if m == l {
			break
		}
		if r.mine(m) {
			prev = m
		}
	}
	if prev == nil {
		return false
	}
	if len(prev.Unread) > 0 || r.namesNext(prev) || slices.ContainsFunc(prev.Body, is[*ins.RepeatRows]) && slices.ContainsFunc(prev.Body, is[*ins.Stitch]) { // a row, and words that repeat it
		return true
	}
	end := prev.At.Line
	for _, w := range prev.Words {
		end = max(end, w.Line)
	}
	for k := end + 1; k < l.At.Line && k <= len(r.x.Src); k++ {
		if strings.TrimSpace(r.x.Src[k-1]) != "" {
			return true
		}
	}
	return false
}

// namesNext reports whether the row that follows stands within the words of a line: 1st row: K1, p1, 2nd and 4th row: as they come.
func (r *runner) namesNext(l *ins.Line) bool {
	no := strconv.Itoa(r.no + 1)
	for i, w := range l.Words {
		if i > 1 && w.Kind == 'w' && len(w.S) == len(no)+2 && strings.HasPrefix(w.S, no) && strings.Contains("st nd rd th", w.S[len(no):]) {
			return slices.ContainsFunc(l.Words[i:min(i+6, len(l.Words))], func(w ins.Word) bool { return w.S == ":" })
		}
	}
	return false
}

// fill works row k, which an earlier line tells: row 2 and all WS rows, rows 3 and 5.
func (r *runner) fill(k int) bool {
	for _, e := range slices.Backward(r.every) {
		if !r.fills(e, k) {
			continue
		}
		line, body := e, e.Body
		for _, n := range e.Body {
			if rep, ok := n.(*ins.RepeatRows); ok {
				if d, ok := r.bodies(e, rep); ok && len(d) == 1 && d[0].line != nil {
					line, body = d[0].line, d[0].body
				}
			}
		}
		r.one(line, body)
		r.log(e, body, 1)
		r.countRows(1)
		return true
	}
	return false
}

// fillRest works the rows behind the last labelled one that earlier lines tell by their numbers, and such as 'all even rows'
// up to those that next, the line behind them, repeats; next may be nil.
func (r *runner) fillRest(next *ins.Line) {
	last := 0
	if next != nil {
		for _, n := range next.Body {
			if rep, ok := n.(*ins.RepeatRows); ok {
				for _, k := range r.numbersOf(rep) {
					last = max(last, k)
				}
			}
		}
	}
	for _, e := range r.every {
		for _, v := range e.Label.Listed {
			last = max(last, v.At(r.size))
		}
	}
	r.fillTo(last)
}

// fillBefore works the rows that belong to those that are repeated next and are told by earlier lines: of rows 1 to 8 the last, where all
// WS rows are purled; of rows without a number the one of that side which follows.
func (r *runner) fillBefore(n *ins.RepeatRows) {
	last := slices.Max(append(r.numbersOf(n), 0))
	if regular := func(e *ins.Line) bool { return len(e.Label.Listed) == 0 && r.fills(e, r.no+1) }; (n.Rows == nil && n.Name == "" || n.Stretch || n.Onward) && slices.ContainsFunc(r.every, regular) {
		last = max(last, r.no+1)
	}
	r.fillTo(last)
}

// fillTo works the rows up to that of a number, as far as earlier lines tell them.
func (r *runner) fillTo(last int) {
	for r.no > 0 && r.no < last && r.fill(r.no+1) {
	}
}

// fills reports whether a line tells row k too.
func (r *runner) fills(e *ins.Line, k int) bool {
	from := e.Label.From.At(r.size)
	if e.Label.From.All == 0 { // all WS rows
		return e.Label.Odd && k%2 == 1 || e.Label.Even && k%2 == 0
	}
	for _, v := range e.Label.Listed {
		if v.At(r.size) == k {
			return true
		}
	}
	return (e.Label.Odd || e.Label.Even) && k > from && k%2 == from%2
}

// everySecond is a line of rows from one to another, without those between that another line tells: Rows 3-7: as row 1, behind
// 'all WS rows: purl', is rows 3, 5 and 7.
func (r *runner) everySecond(l *ins.Line) *ins.Line {
	if l.Label == nil || l.Label.Next || len(l.Label.Listed) > 0 || !l.Label.To.Set() {
		return l
	}
	from, to := l.Label.From.At(r.size), l.Label.To.At(r.size)
	told := func(e *ins.Line) bool { return r.fills(e, from+1) && !r.fills(e, from) }
	if to < from+2 || (to-from)%2 > 0 || !slices.ContainsFunc(r.every, told) || slices.ContainsFunc(l.Body, r.severalAgain) {
		return l
	}
	out, label := *l, *l.Label
	for k := from + 2; k <= to; k += 2 {
		label.Listed = append(label.Listed, ins.N(k))
	}
	label.To, out.Label = ins.Num{}, &label
	return &out
}

// severalAgain reports whether an instruction repeats more than one row.
func (r *runner) severalAgain(n ins.Item) bool {
	rep, ok := n.(*ins.RepeatRows)
	return ok && len(r.numbersOf(rep)) > 1
}

// filled reports whether interleaved lines tell the rows together: rows 3 and 5, then rows 4 and 6.
func (r *runner) filled(l *ins.Line, want int) bool {
	have := map[int]bool{}
	most := 0
	for _, e := range append(r.every[:len(r.every):len(r.every)], l) {
		for _, v := range append([]ins.Num{e.Label.From}, e.Label.Listed...) {
			have[v.At(r.size)] = true
			most = max(most, v.At(r.size))
		}
	}
	if len(r.every) == 0 {
		return false
	}
	from := l.Label.From.At(r.size)
	return from < want && len(l.Label.Listed) > 0 || from <= want && have[from] || from == most+1
}

// sides holds the side of a row against that of the row before it.
func (r *runner) sides(l *ins.Line) {
	b := l.Label
	switch {
	case b.Side == 0 && b.Round: // every round shows its right side
		r.side = 0
	case b.Side == 0:
	case r.side != 0 && !b.Round && b.Side == r.side && !r.listed(l) && !forSome(r.x):
		names := [...]string{1: "right", 2: "wrong"}
		r.tell("rows/side", finding.Warning, b.At, "this is called a "+names[b.Side]+"-side row, and so was the row before it", "call it "+[...]string{1: "(WS)", 2: "(RS)"}[b.Side]+", or put the row between them in")
		r.side = 0
	case b.Round:
		r.side = b.Side
	default:
		r.side = 3 - b.Side // counting turns it
	}
}

func (r *runner) listed(l *ins.Line) bool {
	return len(l.Label.Listed) > 0 || l.Label.Odd || l.Label.Even
}

// times is how many rows a label stands for.
func (r *runner) times(l *ins.Line) int {
	b := l.Label
	if b == nil {
		return 1
	}
	if b.Next {
		return max(b.From.At(r.size), 0)
	}
	if len(b.Listed) > 0 {
		return r.together(l)
	}
	if b.Odd || b.Even {
		return 1
	}
	from, to := b.From.At(r.size), b.To.At(r.size)
	if from == ins.None || to == ins.None {
		return 0
	}
	if to < from {
		r.tell("rows/number", finding.Warning, b.At, "these rows run backwards, from %s to %s", "put the smaller number first", from, to)
		return 1
	}
	return min(to-from+1, ins.Most)
}

// together is how many of listed rows follow each other: 3, 4 and 5 are three; of 3 and 5 the
// first alone is worked here, and the others when their turn comes.
func (r *runner) together(l *ins.Line) int {
	k := l.Label.From.At(r.size)
	for i, v := range l.Label.Listed {
		if v.At(r.size) != k+i+1 {
			return 1
		}
	}
	return 1 + len(l.Label.Listed)
}

// countRows counts k rows as done.
func (r *runner) countRows(k int) {
	if r.no >= 0 {
		r.no += k
	}
	if r.altNo > 0 {
		r.altNo += k
	}
	if !r.round && r.side != 0 && k%2 == 1 {
		r.side = 3 - r.side
	}
	r.begun = true
}

func nameOf(l *ins.Line) string {
	if l.Label != nil {
		return l.Label.Name
	}
	return ""
}

// placesOf are the places of an instruction.
func placesOf(n ins.Item) []ins.Place {
	switch n := n.(type) {
	case *ins.Stitch:
		return n.Places
	case *ins.Repeat:
		return n.Places
	}
	return nil
}

// usesNothing reports whether a row needs no row below.
func usesNothing(body []ins.Item) bool {
	for _, n := range body {
		switch n.(type) {
		case *ins.PickUp, *ins.CastOn:
			return true
		}
		list := placesOf(n)
		for i := range list {
			p := &list[i]
			if p.Kind == ins.InRing || p.Kind == ins.RowEnds || p.Unit.Word == "held" {
				return true
			}
		}
	}
	return false
}

// beginsOnNothing reports whether a row needs no row below from its first stitch on.
func beginsOnNothing(body []ins.Item) bool {
	first := slices.IndexFunc(body, func(n ins.Item) bool { return is[*ins.Stitch](n) || is[*ins.Repeat](n) })
	return usesNothing(body[:first+1]) || usesNothing(body) && (first < 0 || !nextOf(body[first]))
}

// nextOf reports whether a stitch goes into a number of next stitches of the row below.
func nextOf(n ins.Item) bool {
	list := placesOf(n)
	return len(list) == 1 && list[0].Kind == ins.InNext && list[0].Unit.Any()
}

// intoEachRow reports whether a few stitches go into the end of each row.
func intoEachRow(n ins.Item) bool {
	s, ok := n.(*ins.Stitch)
	return ok && len(s.Places) == 1 && s.Places[0].Kind == ins.RowEnds && s.N.By == nil && s.N.All <= 3
}

// opensRing reports whether a row begins with making a ring: Magic ring, 6 sc.
func opensRing(body []ins.Item) bool {
	body = behindWords(body)
	if len(body) < 2 {
		return false
	}
	j, ok := body[0].(*ins.Join)
	return ok && j.Name == "ring"
}

// inRing reports whether a row is worked into a ring.
func inRing(body []ins.Item) bool {
	if opensRing(body) && bareOnly(body) {
		return true
	}
	for _, n := range body {
		list := placesOf(n)
		for i := range list {
			p := &list[i]
			if p.Kind == ins.InRing {
				return true
			}
		}
		if q, ok := n.(*ins.Repeat); ok && inRing(q.Body) {
			return true
		}
	}
	return false
}

// behindWords is what stands behind the words at a row's beginning that move no stitch: with size G hook, ch 34.
func behindWords(body []ins.Item) []ins.Item {
	for len(body) > 0 && is[*ins.Nothing](body[0]) {
		body = body[1:]
	}
	return body
}

// ringAlone reports whether a row only closes a chain to a ring: Row 1: Ch 6, join to form a ring.
func ringAlone(body []ins.Item) bool {
	body = behindWords(body)
	if len(body) < 2 || !is[*ins.Chain](body[0]) || len(behindWords(body[2:])) > 0 {
		return false
	}
	st, ok := body[1].(*ins.Stitch)
	return is[*ins.Join](body[1]) || ok && st.Kind != nil && st.Kind.ID == "slst" && len(st.Places) == 1 && st.Places[0].Kind == ins.InFirst
}

// ringedIn is the chain that a row closes to a ring before it works into that, or into its chains, and what it works; nil if it
// does not.
func ringedIn(body []ins.Item) (c *ins.Chain, rest []ins.Item, into bool) {
	body = behindWords(body)
	if len(body) < 3 {
		return nil, nil, false
	}
	c, ok := body[0].(*ins.Chain)
	rest = behindWords(body[2:])
	switch n := body[1].(type) {
	case *ins.Join:
	case *ins.Stitch:
		ok = ok && n.Kind != nil && n.Kind.ID == "slst"
	default:
		return nil, nil, false
	}
	into = slices.ContainsFunc(rest, func(n ins.Item) bool {
		return slices.ContainsFunc(placesOf(n), func(p ins.Place) bool { return p.Kind == ins.InRing })
	})
	if ok && (into || len(rest) > 0 && goesInSame(rest[:1])) {
		return c, rest, into
	}
	return nil, nil, false
}

// skippedOnce is a row without chains that are skipped and counted from the hook as well: skip 4 ch, dc in 5th ch from hook.
func skippedOnce(body []ins.Item) []ins.Item {
	from := behindWords(body)
	if len(from) < 2 {
		return body
	}
	skip, ok := from[0].(*ins.Skip)
	st, both := from[1].(*ins.Stitch)
	if !ok || !both || len(skip.Places) != 1 || len(st.Places) == 0 || !skip.Places[0].Unit.Chain {
		return body
	}
	if n, k := skip.Places[0].N, st.Places[0]; k.Kind != ins.FromHook || n.By != nil || k.N.By != nil || k.N.All != n.All+1 {
		return body
	}
	if once := *st; once.Count.How == ins.Unsaid {
		once.Count = skip.Count
		return append([]ins.Item{&once}, from[2:]...)
	}
	return from[1:]
}

// intoEye reports whether all of a first round goes into the first of a few chains: ch 4, 11 dc in first ch.
func intoEye(s *ins.Stitch, p *ins.Place, c *ins.Chain) bool {
	return s != nil && s.N.By == nil && s.N.All >= fewestInEye && (p.Kind == ins.InFirst && p.Unit.Chain || p.Kind == ins.InTop) && c.N.By == nil && c.N.All <= mostEye
}

// foundationOf is the chain that a row begins with as its own foundation: ch 31, sc in 2nd
// ch from hook; nil if it has none.
func foundationOf(body []ins.Item) *ins.Chain {
	body = behindWords(body)
	if len(body) < 2 {
		return nil
	}
	c, ok := body[0].(*ins.Chain)
	if !ok {
		return nil
	}
	for _, n := range body[1:] {
		s, _ := n.(*ins.Stitch)
		list := placesOf(n)
		for i := range list {
			p := &list[i]
			if p.Kind == ins.FromHook && (s == nil || s.Kind == nil || s.Kind.ID != "slst" || c.N.Set() && c.N.At(0) > 8) || intoEye(s, p, c) {
				return c
			}
		}
		switch k := n.(type) {
		case *ins.Nothing, *ins.Turn:
		case *ins.Skip:
			if len(k.Places) == 1 && k.Places[0].Unit.Chain && c.N.Set() && c.N.At(0) > 8 {
				return c
			}
			return nil
		default:
			return nil
		}
	}
	return nil
}
