package work

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic/finding"
	ins "flatwright/schematic/rows/instructions"
)

// bodies are the rows that 'rep' means, in order.
func (r *runner) bodies(l *ins.Line, n *ins.RepeatRows) ([]done, bool) {
	switch {
	case n.Last.Set():
		return r.lastRows(n.Last.At(r.size))
	case n.Name != "" && len(n.Rows) > 0:
		if out, ok := r.numbered(n); ok {
			return out, true
		}
	case n.Name != "":
		return r.rowsNamed(n.Name)
	case n.Since != "":
		return r.since(n.Since)
	case n.Onward && r.no >= n.Rows[0].At(r.size):
		return r.lastRows(r.no - n.Rows[0].At(r.size) + 1)
	}
	for i := 1; i < len(n.Rows) && !n.Stretch; i++ {
		if n.Rows[i].At(r.size) == n.Rows[i-1].At(r.size) {
			r.tell("rows/reference", finding.Warning, n.At, "row %s is named twice", "name the rows in their order", n.Rows[i].At(r.size))
		}
	}
	var out []done
	for _, k := range r.numbersOf(n) {
		d, ok := r.row(k)
		if !ok {
			if !r.anyUnread() && !slices.Contains(r.gone, k) && !r.written(k) && (len(r.cur.rows) > 0 || len(r.pieces) > 1 || l.Label != nil) { // before the first row it tells of rows to come
				r.tell("rows/reference", finding.Warning, n.At, "there is no row %s to repeat", "name a row that was worked before", k)
			}
			return nil, true
		}
		out = append(out, d)
	}
	if n.Between.Set() {
		return spacedAll(out, n.Between)
	}
	if n.Chains.Set() {
		return chainedAll(out, n.Chains)
	}
	return out, len(out) > 0
}

// written reports whether a line of the section has the number of a row, and nothing that is worked.
func (r *runner) written(k int) bool {
	return slices.ContainsFunc(r.section.Lines, func(l *ins.Line) bool {
		return l.Label != nil && len(l.Body) == 0 && l.Label.From.At(r.size) <= k && k <= max(l.Label.From.At(r.size), l.Label.To.At(r.size))
	})
}

// spacedAll are rows with so many plain stitches between their increases; false if it is not sure which those are.
func spacedAll(rows []done, k ins.Num) ([]done, bool) {
	for i := range rows {
		body, n := spaced(rows[i].body, k, false)
		if n != 1 {
			rows[i].unread = true
			continue
		}
		rows[i].body = body
	}
	return rows, len(rows) > 0
}

// chainedAll are rows with so many chains in each of their spaces; false if those are of several lengths.
func chainedAll(rows []done, k ins.Num) ([]done, bool) {
	for i := range rows {
		lengths := map[int]bool{}
		body := chained(rows[i].body, k, false, lengths)
		if len(lengths) != 1 {
			rows[i].unread = true
			continue
		}
		rows[i].body = body
	}
	return rows, len(rows) > 0
}

// chained are instructions with so many chains in each chain of a repeat; it notes the lengths that they had.
func chained(list []ins.Item, k ins.Num, within bool, lengths map[int]bool) []ins.Item {
	out := slices.Clone(list)
	for i, it := range out {
		switch it := it.(type) {
		case *ins.Repeat:
			rep := *it
			rep.Body = chained(it.Body, k, true, lengths)
			out[i] = &rep
		case *ins.Chain:
			if within && it.N.By == nil {
				lengths[it.N.All] = true
				ch := *it
				ch.N = k
				out[i] = &ch
			}
		}
	}
	return out
}

// spaced are instructions with so many plain stitches in each repeat, and how many stretches of plain stitches that changed.
func spaced(list []ins.Item, k ins.Num, within bool) (out []ins.Item, changed int) {
	out = slices.Clone(list)
	for i, it := range out {
		switch it := it.(type) {
		case *ins.Repeat:
			rep := *it
			var n int
			rep.Body, n = spaced(it.Body, k, true)
			out[i], changed = &rep, changed+n
		case *ins.Stitch:
			if s, ok := plainOf(it, k); ok && within {
				out[i], changed = s, changed+1
			}
		}
	}
	return out, changed
}

// plainOf is a stretch of one plain stitch in each with k of them; false if the stitch is worked otherwise.
func plainOf(s *ins.Stitch, k ins.Num) (*ins.Stitch, bool) {
	if s.Kind == nil || s.Kind.Uses != 1 || s.Kind.Makes != 1 || len(s.Also) > 0 {
		return nil, false
	}
	plain := *s
	switch {
	case len(s.Places) == 0:
		plain.N = k
	case len(s.Places) == 1 && s.Places[0].Kind == ins.InNext && s.N.By == nil && s.N.All == 1:
		place := s.Places[0]
		place.N = k
		plain.Places = []ins.Place{place}
	default:
		return nil, false
	}
	return &plain, true
}

// lastRows are the last k rows of the section; false if it has not so many.
func (r *runner) lastRows(k int) ([]done, bool) {
	var out []done
	for _, d := range slices.Backward(r.cur.rows) {
		for j := 0; j < d.count && len(out) < k; j++ {
			out = append(out, d)
		}
	}
	slices.Reverse(out)
	return out, len(out) == k
}

// since are the rows from the latest line of the section with a mark on, each as often as it was worked.
func (r *runner) since(mark string) ([]done, bool) {
	from, ok := r.cur.marked[mark]
	if !ok || from >= len(r.cur.rows) {
		return nil, false
	}
	k := 0
	for _, d := range r.cur.rows[from:] {
		k += d.count
	}
	return r.lastRows(k)
}

// rowsNamed is the latest row of a name, or of a part of it: dec row, first dec row.
func (r *runner) rowsNamed(want string) ([]done, bool) {
	for _, p := range slices.Backward(r.pieces) {
		for _, d := range slices.Backward(p.rows) {
			name := strings.TrimRight(d.name, " 0123456789")
			if d.name == want || name != "" && (strings.HasSuffix(want, name) || strings.HasSuffix(name, want)) {
				return []done{d}, true
			}
		}
	}
	return nil, false
}

// numbered are rows that have a name and a number: Mesh rounds 1 and 2. They are none if one of them is not there by both.
func (r *runner) numbered(n *ins.RepeatRows) ([]done, bool) {
	var out []done
	for _, k := range r.numbersOf(n) {
		want := fmt.Sprint(n.Name, " ", k)
		d, ok := r.rowsNamed(want)
		if !ok || d[0].name != want {
			return nil, false
		}
		out = append(out, d...)
	}
	return out, len(out) > 0
}

// numbersOf are the numbers of the rows that are meant, those within a stretch too.
func (r *runner) numbersOf(n *ins.RepeatRows) []int {
	var out []int
	for i, v := range n.Rows {
		k := v.At(r.size)
		if n.Stretch && i > 0 {
			for j := n.Rows[i-1].At(r.size) + 1; j < k && len(out) < 1000; j++ {
				out = append(out, j)
			}
		}
		out = append(out, k)
	}
	return out
}

// anyUnread reports whether a line of the section was not read, or is told by a chart: what it is called may be what is meant.
func (r *runner) anyUnread() bool {
	return slices.ContainsFunc(r.section.Lines, func(l *ins.Line) bool {
		return len(l.Unread) > 0 && l.Label == nil || slices.ContainsFunc(l.Body, func(n ins.Item) bool { e, ok := n.(*ins.Even); return ok && e.Chart })
	})
}

// row is the row of that number, of this section or else of the latest that has one.
func (r *runner) row(k int) (done, bool) {
	for p := len(r.pieces) - 1; p >= 0; p-- {
		list := r.pieces[p].rows
		for i := len(list) - 1; i >= 0; i-- {
			if d := list[i]; d.called(k) {
				return d, true
			}
		}
		for _, e := range slices.Backward(r.every) { // a row that an interleaved line tells
			if p == len(r.pieces)-1 && r.fills(e, k) {
				return done{no: k, count: 1, line: e, body: e.Body, unread: len(e.Unread) > 0}, true
			}
		}
		if r.pieces[p].anew && len(list) > 0 && p < len(r.pieces)-1 {
			break
		}
		if p == len(r.pieces)-1 && r.no > 0 && k == r.no+1 && len(list) > 0 && list[0].no == 1 { // the row that comes now
			break
		}
	}
	return done{}, false
}

// called reports whether rows that were worked have the number k, or had it by mistake.
func (d *done) called(k int) bool {
	return (d.body != nil || d.line == nil) && (d.no > 0 && d.no <= k && k < d.no+d.count || d.alt > 0 && d.alt <= k && k < d.alt+d.count)
}

// rep repeats rows.
func (r *runner) rep(l *ins.Line, n *ins.RepeatRows) bool {
	if l.Label == nil {
		r.fillBefore(n)
	}
	cycle, ok := r.bodies(l, n)
	bare := func(d done) bool { return d.line != nil && d.line.Label == nil } // it may be the row of that name
	if !ok && !r.anyUnread() && len(r.cur.rows) > 0 && !n.Last.Set() && (n.Name == "" || !slices.ContainsFunc(r.cur.rows, bare)) {
		r.tell("rows/reference", finding.Warning, n.At, "there are no such rows to repeat", "name rows that were worked before")
	}
	unread := len(cycle) == 0 || !ok
	for _, d := range cycle {
		unread = unread || d.unread || d.body == nil && d.line != nil
	}
	if unread {
		r.repUnread(l, n, len(cycle))
		return false
	}
	n = r.ofPart(n)
	rows, gap, done := r.repRows(l, n, cycle)
	if done {
		return true
	}
	r.cycle(l, n, cycle, rows, gap)
	r.totalOr(l, n, cycle)
	for _, t := range n.Then {
		r.cycle(l, n, cycle, max(t.Times.At(r.size), 0)*len(cycle), max(t.Every.At(r.size), 1)-1)
	}
	r.repLength(l, n)
	return true
}

// repLength holds rows that were worked again to the length that they are to make, or goes on where no label counts them.
func (r *runner) repLength(l *ins.Line, n *ins.RepeatRows) {
	switch {
	case n.Length == nil:
	case l.Label != nil:
		r.measure(n.Length)
	default:
		r.no, r.side = -1, 0
		r.endSide(n.Course)
	}
}

// ofPart takes a number of rows that are there then, if there are more already, as that of a part: how many of them are worked is
// not known.
func (r *runner) ofPart(n *ins.RepeatRows) *ins.RepeatRows {
	if !n.Counted || r.no < 0 || n.ToRow.At(r.size) >= r.no {
		return n
	}
	part := *n
	part.ToRow, part.Length = ins.Num{}, &ins.Lengths{}
	return &part
}

// repUnread counts rows repeated that were not read: their count is not known.
func (r *runner) repUnread(l *ins.Line, n *ins.RepeatRows, each int) {
	if r.g != nil {
		r.g.gap(r, l, "the rows that are repeated", -1)
	}
	r.put(r.fab, false)
	switch {
	case l.Label != nil:
		times := max(r.times(l), 1)
		r.log(l, l.Body, times) // a later line may repeat them
		r.cur.rows[len(r.cur.rows)-1].unread = true
		r.countRows(times)
	case each > 0 && n.HasTimes:
		r.countRows(each * max(n.Times.At(r.size), 0))
	default:
		r.no = -1
	}
}

// onceNamed reports whether a line is called a row by no number: Next row: rep Row 1 twelve times.
func onceNamed(l *ins.Line) bool {
	return l.Label.Next && l.Label.From.By == nil && l.Label.From.All == 1
}

// repRows is how many rows a repeat of rows works, and how many even ones before each; done
// if it is worked already.
func (r *runner) repRows(l *ins.Line, n *ins.RepeatRows, cycle []done) (rows, gap int, done bool) {
	times := max(n.Times.At(r.size), 0)
	rows = times * len(cycle)
	switch {
	case l.Label != nil:
		before, last := r.repeatedIn(l, n)
		all := r.times(l)
		if !last || n.HasTimes && onceNamed(l) {
			break
		}
		if made := before + times*len(cycle); n.HasTimes && (n.Times.By != nil || n.Times.All != 1 || before > 0) && made != all {
			r.tell("rows/number", finding.Warning, n.At, "this line is for %s rows, and its repeats make %s | %s rows by its numbers | %s rows by its repeats", "correct the row numbers, or the repeat",
				all, made, all, made)
		}
		rows = max(all-before, 0)
	case n.ToRow.Set() && n.Length == nil && n.Course.Length == nil && !n.Course.Rows.Set() && !(n.HasTimes && n.ToRow.At(r.size) < r.no): // else the row of a pattern
		to := n.ToRow.At(r.size)
		if r.no < 0 {
			r.no = to
			return len(cycle), 0, false
		}
		if rows = to - r.no; rows < 0 {
			r.tell("rows/number", finding.Warning, n.At, "row %s has already been worked: the last was row %s", "name a later row", to, r.no)
			return 0, 0, true
		}
	case (n.Every.All > 1 || n.Every.By != nil) && (n.HasTimes || !n.Until.Set()):
		gap = max(n.Every.At(r.size), 1) - 1
		rows -= r.repFirst(l, n, cycle, times)
	case n.Until.Set():
		r.repUntil(l, n, cycle)
		r.endSide(n.Course)
		return 0, 0, true
	case n.Course.Rows.Set():
		rows = max(n.Course.Rows.At(r.size), 0)
	case n.Length != nil:
		rows = len(cycle)
	case n.InAll && times > 1 && r.workedLast(cycle): // that once is among them
		rows -= len(cycle)
	}
	return rows, gap, false
}

// repFirst works rows that are repeated every so many rows on the next row first, if it is told so; it gives how many of the others
// are among those worked then, or before.
func (r *runner) repFirst(l *ins.Line, n *ins.RepeatRows, cycle []done, times int) (fewer int) {
	if n.First && r.fab != nil && r.known() { // on the next row, then on every 4th
		was := r.fab.stitches()
		if r.cycle(l, n, cycle, len(cycle), 0); r.said(l) >= 0 && r.said(l) == was+times*(r.fab.stitches()-was) {
			fewer += len(cycle)
		}
	}
	if n.Total && r.worked1(cycle, n.Every.At(r.size)) { // the first time is among them
		fewer += len(cycle)
	}
	return fewer
}

// repeatedIn is how many rows a line repeats before n, and whether n is the last that it repeats.
func (r *runner) repeatedIn(l *ins.Line, n *ins.RepeatRows) (before int, last bool) {
	met := false
	for _, k := range l.Body {
		switch q, ok := k.(*ins.RepeatRows); {
		case !ok:
		case q == n:
			met = true
		case met:
			return before, false
		default:
			cycle, _ := r.bodies(l, q)
			before += max(q.Times.At(r.size), 0) * len(cycle)
		}
	}
	return before, true
}

// workedLast reports whether rows that are to be repeated are those that were worked last.
func (r *runner) workedLast(cycle []done) bool {
	last := r.cur.rows[max(len(r.cur.rows)-len(cycle), 0):]
	return slices.EqualFunc(last, cycle, func(a, b done) bool { return a.line == b.line })
}

// totalOr works rows once more whose number is said in all, if the count that is stated says that it was meant without the first
// time. If none is stated, how many stitches there are is not sure.
func (r *runner) totalOr(l *ins.Line, n *ins.RepeatRows, cycle []done) {
	if !n.InAll || n.Every.All > 1 || n.Every.By != nil || len(n.Then) > 0 || l.Label != nil || !r.known() || r.fab == nil {
		return
	}
	switch k := r.said(l); {
	case k < 0:
		r.forget()
	case k != r.fab.stitches():
		r.cycle(l, n, cycle, len(cycle), 0)
	}
}

// worked1 reports whether the row that is to be repeated is one of the last k worked.
func (r *runner) worked1(cycle []done, k int) bool {
	rows := r.cur.rows
	return len(cycle) == 1 && slices.ContainsFunc(rows[max(len(rows)-k, 0):], func(d done) bool { return d.line == cycle[0].line })
}

// onlyFirst keeps of what was found since mark the first, at the words that repeat, unless it was told of its line; again: the rows were worked once before.
func (r *runner) onlyFirst(mark int, n *ins.RepeatRows, of *ins.Line, again bool) bool {
	if len(r.found) > mark { // it names the stitches over which it was worked first
		kept := slices.DeleteFunc(slices.Clone(r.found[mark:]), func(f raw) bool { return f.kind == "rows/kind" })
		r.found = append(r.found[:mark:mark], kept...)
	}
	if len(r.found) <= mark {
		return false
	}
	f := &r.found[mark]
	f.at = n.At
	if again {
		f.why = once
	}
	if r.found = r.found[:mark+1]; r.toldOf(of, f.kind, mark) {
		r.found = r.found[:mark]
	}
	return true
}

// cycle works rows over and over.
func (r *runner) cycle(l *ins.Line, n *ins.RepeatRows, cycle []done, rows, gap int) {
	var last *fabric
	first := r.fab
	for k := 0; k < rows && r.steps <= maxWork; k++ {
		d := cycle[k%len(cycle)]
		if gap > 0 {
			r.even(gap)
		}
		if d.line == nil {
			r.again(l, d)
			continue
		}
		mark := len(r.found)
		r.one(l, r.inYarn(l, d))
		r.log(l, d.body, 1)
		r.cur.rows[len(r.cur.rows)-1].name = d.name
		if r.onlyFirst(mark, n, d.line, k >= len(cycle)) {
			r.logRest(l, cycle, k+1, rows)
			return
		}
		r.countRows(1)
		if k%len(cycle) == len(cycle)-1 && gap == 0 && r.g == nil {
			rest := rows - k - 1
			rest -= rest % len(cycle)
			if rest > 0 && (last != nil && last.same(r.fab) && len(r.others) == 0 || k > maxRepeat) { // they change nothing more
				r.log(l, d.body, rest)
				r.countRows(rest)
				k += rest
			}
			last = r.fab
		}
	}
	if n.Length != nil && len(cycle) > 0 && r.known() && first != nil && r.fab.stitches() != first.stitches() { // how often it is done is not known
		r.lose()
	}
}

// inYarn is what a row worked before is worked of once more: in the yarn that the line which repeats it names, or else in its own.
func (r *runner) inYarn(l *ins.Line, d done) []ins.Item {
	if r.g == nil {
		return d.body
	}
	yarn := l.Yarn
	for _, n := range l.Body {
		if n, ok := n.(*ins.Nothing); ok {
			yarn = cmp.Or(yarn, n.Colour)
		}
	}
	body := d.body
	for yarn != "" && len(body) > 0 && is[*ins.Nothing](body[0]) {
		body = body[1:]
	}
	if yarn = cmp.Or(yarn, d.line.Yarn); yarn == "" {
		return body
	}
	return append([]ins.Item{&ins.Nothing{Placed: ins.Placed{At: l.At}, Colour: yarn}}, body...)
}

// logRest notes the rows from the k-th on that are worked as those before and not followed any more: later rows may refer to them.
func (r *runner) logRest(l *ins.Line, cycle []done, k, rows int) {
	r.countRows(1)
	for ; k < min(rows, maxRepeat); k++ {
		r.log(l, cycle[k%len(cycle)].body, 1)
		r.countRows(1)
	}
}

// toldOf reports whether something of that kind is told of a line itself, among the first k things found.
func (r *runner) toldOf(l *ins.Line, kind string, k int) bool {
	return slices.ContainsFunc(r.found[:k], func(f raw) bool { return f.at.Line == l.At.Line && f.kind == kind })
}

// once works rows once more.
func (r *runner) once(l *ins.Line, cycle []done) {
	for _, d := range cycle {
		if d.line == nil {
			r.again(l, d)
			continue
		}
		r.one(l, r.inYarn(l, d))
		r.log(l, d.body, 1)
		r.countRows(1)
	}
}

// goesOn takes the count up to which rows are shaped on as they began, if it is whole steps away.
func (r *runner) goesOn(n *ins.RepeatRows, cycle []done, have, want int) {
	rows := r.cur.rows
	i := slices.IndexFunc(rows, func(d done) bool { return d.line == cycle[0].line })
	if end := cycle[len(cycle)-1].after; i > 0 && rows[i-1].after != nil && end != nil {
		by := end.stitches() - rows[i-1].after.stitches()
		steady := have+by >= 0 // rows that halve take fewer each time
		if steady && (by == 0 || (want-have)%by != 0 || (want-have)/by < 0) {
			r.tell("rows/stated", finding.Warning, n.At, "%s stitches never remain: the repeat goes from %s to %s", "correct the number, or the count before it", want, have, have+by)
			defer func() { r.suspect, r.amiss = suspectRows, true }()
		}
	}
	r.put(uniform(r.mainOf(), max(want, 0)), true)
}

// repUntil repeats until so many stitches are there.
func (r *runner) repUntil(l *ins.Line, n *ins.RepeatRows, cycle []done) {
	want := n.Until.At(r.size)
	gap := max(n.Every.At(r.size), 1) - 1
	for k := 0; k < maxRepeat && r.fab != nil && r.known() && r.steps < maxWork; k++ {
		have := r.fab.stitches()
		if have == want { // it holds
			r.certainty.since = 0
			return
		}
		if gap > 0 {
			r.even(gap)
		}
		mark := len(r.found)
		r.once(l, cycle)
		if len(r.found) > mark { // its numbers are those of the first time: k35, k2tog
			r.found = r.found[:mark]
			r.goesOn(n, cycle, have, want)
			return
		}
		if now := r.fab.stitches(); now == have || (now > want) != (have > want) && now != want {
			r.tell("rows/stated", finding.Warning, n.At, "%s stitches never remain: the repeat goes from %s to %s", "correct the number, or the count before it", want, have, now)
			r.put(uniform(r.fab.main(), max(want, 0)), true)
			r.suspect, r.amiss = suspectRows, true
			return
		}
	}
}
