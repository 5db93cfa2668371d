package schematic

import (
	"fmt"
	"slices"

	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// rows is the number of rows of an amount: as given, or the nearest to the length,
// on the side that it must end after.
func (w *worker) rows(a Amount) (int, bool) {
	if v, ok := a.Rows.At(w.i); ok {
		return int(v.Floor()), true
	}
	l, ok := a.Length.At(w.i)
	if !ok {
		return 0, false
	}
	exact := l.Div(w.cur.gauge.RowHeight())
	n := int(exact.Round())
	if a.End == AnyRow || w.cur.round {
		return max(n, 0), true
	}
	if w.endsRS(n) == (a.End == RightSide) && n > 0 {
		return n, true
	}
	// The nearer of the two rows beside it; up on a tie.
	if exact.Sub(units.Int(int64(n))).Sign() < 0 && n > 1 {
		return n - 1, true
	}
	return n + 1, true
}

// endsRS reports whether n rows from here end after a right-side row.
func (w *worker) endsRS(n int) bool { return w.cur.rs == (n%2 == 1) }

// Even is rows worked even. Rib makes it hatched along its ribs.
type Even struct {
	Common
	Amount
	Rib bool
}

func (s *Even) Traits() Traits {
	if s.Rib {
		return Traits{Words: "rib", Free: true, Ribbed: true}
	}
	return Traits{Words: "even", Free: true, Plain: true}
}

func (s *Even) load(_ int, rows func(Amount) int64) Load { return Load{Rows: rows(s.Amount)} }

func (s *Even) work(w *worker) {
	n, _ := w.rows(s.Amount)
	w.even(n, s.Rib)
	if n > 0 && s.Rib {
		w.ribInRound(s)
	}
}

func (w *worker) even(n int, rib bool) {
	if n <= 0 {
		return
	}
	w.settle()
	st := w.cur
	y0 := st.y
	l := st.blocks[0].x
	w.advance(n, nil, nil)
	if !rib {
		return
	}
	for i := range st.blocks {
		b := &st.blocks[i]
		c := w.canvas(b)
		r := st.right(b)
		c.ribs = append(c.ribs, area{y0: y0, y1: st.y, l0: b.x, r0: r, l1: b.x, r1: r, gap: st.gauge.StitchWidth().Times(2)})
	}
	w.canvas(&st.blocks[0]).depths = append(w.canvas(&st.blocks[0]).depths,
		depth{name: "depth of rib", y0: y0, y1: st.y, x: l, count: n, of: "row", part: st.name, section: w.section.Base().Name, stretched: st.gauge.Stretched, gauge: st.gauge})
}

// spaced is a run of a shaping in one size: every so many rows, so many times.
type spaced struct{ every, times int }

func (sh *Shaping) spacings(i int) []spaced {
	out := []spaced{{max(1, sh.Every.Int(i, 1)), sh.Times.Int(i, 1)}}
	if !sh.Times.IsZero() {
		if _, ok := sh.Times.At(i); !ok {
			out[0].times = 0
		}
	}
	for _, t := range sh.Then {
		out = append(out, spaced{max(1, t.Every.Int(i, 1)), t.Times.Int(i, 0)})
	}
	return out
}

// profile is how the shaping moves one edge, in stitches outwards.
func (sh *Shaping) profile(i int) profile {
	by := sh.By.Int(i, 0)
	if !sh.Increase {
		by = -by
	}
	var p profile
	at := profilePoint{}
	if sh.Offset > 0 {
		at.row = sh.Offset
		p = append(p, at)
	}
	for _, sp := range sh.spacings(i) {
		if sp.times <= 0 {
			continue
		}
		at = profilePoint{at.row + sp.every*sp.times, at.d.Add(units.Int(int64(by * sp.times)))}
		p = append(p, at)
	}
	return p
}

// Shape is rows with one or several shapings at once. Rows, if given, is the
// number of rows in all (they must hold every shaping); otherwise the longest
// shaping ends it.
type Shape struct {
	Common
	Amount
	Shapings []Shaping // behind Amount: numbers that follow each other here may be multiplied (grade/follow.go)
}

func (s *Shape) Traits() Traits {
	t := Traits{Words: "decrease", Free: true, Slopes: true, Shapings: s.Shapings}
	if slices.ContainsFunc(s.Shapings, func(h Shaping) bool { return h.Increase }) {
		t.Words = "increase"
	}
	t.Across = !slices.ContainsFunc(s.Shapings, func(h Shaping) bool { return h.At != Across })
	return t
}

func (s *Shape) load(i int, rows func(Amount) int64) Load {
	l := Load{Rows: rows(s.Amount)}
	for _, h := range s.Shapings {
		most, times := int64(h.Offset), int64(0)
		for _, run := range append([]Spacing{{h.Every, h.Times}}, h.Then...) {
			n := int64(run.Times.Int(i, 0))
			most, times = most+n*int64(run.Every.Int(i, 1)), times+n
		}
		l.Rows = max(l.Rows, most)
		l.Taken = append(l.Taken, Taken{h.Pos, times * int64(h.By.Int(i, 0))})
		l.Changes += 5 + int(times)
	}
	return l
}

func (s *Shape) work(w *worker) {
	st := w.cur
	m := movement{left: make([]profile, len(st.blocks)), right: make([]profile, len(st.blocks))}
	longest := 0
	for k := range s.Shapings {
		sh := &s.Shapings[k]
		longest = max(longest, sh.profile(w.i).last().row)
		w.sidesFit(sh)
		at := w.side(sh.At)
		if at == Lines && len(st.blocks) == 1 {
			w.find("arithmetic/lines", finding.Error, sh.Pos, "there are no marked lines to shape at", "", "",
				"cut the row into `panels` before it, or shape at both edges")
			w.doubtful()
			at = BothEdges
		}
		w.places = append(w.places, m.shape(w, sh, at))
		if sh.Edge != "" {
			w.nameShaped(at, sh.Edge)
		}
	}
	total := longest
	if n, ok := w.rows(s.Amount); ok && n < longest {
		w.find("arithmetic/shaping-rows", finding.Warning, s.Pos,
			fmt.Sprintf("the shaping needs %d rows and there are %d", longest, n), fmt.Sprintf("%d rows", n), fmt.Sprintf("%d rows for the shaping", longest),
			fmt.Sprintf("work %d rows, or shape more often", longest))
		w.unfit = s
	} else if ok {
		total = n
	}
	for i := range st.blocks {
		b := &st.blocks[i]
		if n := int(m.left[i].last().d.Add(m.right[i].last().d).Floor()) + b.count(); n < 1 && longest > 0 {
			w.findCount("arithmetic/impossible", finding.Error, s.Pos,
				fmt.Sprintf("the shaping takes away %d stitches and there are %d", b.count()-n, b.count()),
				fmt.Sprintf("%d stitches", b.count()), "at least one left", "shape fewer times, or bind the rest off instead")
			w.doubtful()
			// What the section is to leave, or the least that there can be.
			less := profile{{total, units.Int(int64(w.stated(s, len(st.blocks)) - b.count())).Half()}}
			m.left[i], m.right[i] = less, less
		}
	}
	disc := w.canvas(&st.blocks[0]).free != nil
	w.advance(total, m.left, m.right)
	if disc {
		w.areas[st.gauge.Name] = w.areas[st.gauge.Name].Add(s.ofStitches(w.i).Mul(st.gauge.StitchWidth()).Mul(st.gauge.RowHeight()))
	}
	if rest := st.count(); rest < 1 {
		st.blocks[0].runs[0].n = 1
	}
}

// ofStitches is how many stitches more the shaped rounds of a disc have than the slant between their first and last
// counts says: the increases of a round are in that round.
func (s *Shape) ofStitches(i int) units.Num {
	more := units.Num{}
	for k := range s.Shapings {
		sh := &s.Shapings[k]
		if sh.At != Across {
			continue
		}
		for _, run := range sh.spacings(i) {
			more = more.Add(units.Frac(int64(2-run.every), 2).Times(sh.sign() * sh.By.Int(i, 0) * max(0, run.times)))
		}
	}
	return more
}

// movement is how the edges of the blocks of a row move.
type movement struct{ left, right []profile }

// shape moves the edges at which a shaping is, and tells how many they are.
func (m *movement) shape(w *worker, sh *Shaping, at Side) int {
	p, last := sh.profile(w.i), len(m.left)-1
	out := func(side []profile, i int, p profile) int {
		side[i] = side[i].plus(p)
		return 1
	}
	tube := w.cur.round && last == 0
	if tube && (at == LeftEdge || at == RightEdge) && w.made.Kind == KindMitten { // the gusset of a thumb
		w.cur.leans, tube = at, false
	}
	switch {
	case at == Across && sh.Panel != "":
		return m.across(w, sh.Panel, p.scaled(units.Frac(1, 2)))
	case at == Across && last > 0:
		w.spread(p, m.left, m.right)
	case at == Across, tube && at != BothEdges:
		half := p.scaled(units.Frac(1, 2))
		out(m.left, 0, half)
		out(m.right, last, half)
	case at == BothEdges:
		return out(m.left, 0, p) + out(m.right, last, p)
	case at == LeftEdge:
		return out(m.left, 0, p)
	case at == RightEdge:
		return out(m.right, last, p)
	case at == Lines:
		places := 0
		for i, b := range w.cur.blocks {
			of := sh.Panel == "" || b.runs[0].name == sh.Panel
			if of && b.lineL {
				places += out(m.left, i, p)
			}
			if of && b.lineR {
				places += out(m.right, i, p)
			}
		}
		return places
	}
	return 1
}

// across moves both edges of the panels of a name, and tells how many they are.
func (m *movement) across(w *worker, panel string, half profile) int {
	n := 0
	for i, b := range w.cur.blocks {
		if b.runs[0].name == panel {
			m.left[i], m.right[i] = m.left[i].plus(half), m.right[i].plus(half)
			n++
		}
	}
	return n
}

// stated is the count with which a section is to end, of one block; 1 if it states none.
func (w *worker) stated(s *Shape, blocks int) int {
	if to, ok := s.To.At(w.i); ok && blocks == 1 {
		return max(1, int(to.Floor()))
	}
	return 1
}

func (w *worker) nameShaped(at Side, edge string) {
	b := w.cur.blocks
	switch at {
	case LeftEdge:
		b[0].left = edge
	case RightEdge:
		b[len(b)-1].right = edge
	case BothEdges:
		b[0].left, b[len(b)-1].right = edge, edge
	case Lines:
		for i := range b {
			if b[i].lineL {
				b[i].left = edge
			}
			if b[i].lineR {
				b[i].right = edge
			}
		}
	}
}

// spread allots a change across the row to panels drawn apart, in proportion.
func (w *worker) spread(p profile, left, right []profile) {
	st := w.cur
	total := st.count()
	if total == 0 {
		return
	}
	half := units.Frac(1, 2)
	last := int64(p.last().d.Floor())
	done := int64(0)
	at := 0
	for i := range st.blocks {
		at += st.blocks[i].count()
		upTo := units.Frac(last*int64(at), int64(total)).Round()
		share := upTo - done
		done = upTo
		if last == 0 {
			continue
		}
		q := p.scaled(units.Frac(share, last)).scaled(half)
		left[i] = left[i].plus(q)
		right[i] = right[i].plus(q)
	}
}

// sidesFit checks that a shaping tied to one side of the work can fall on it: of the rows of each of its runs
// it falls on the last that faces as said, so that it takes at least two rows each time, and an even number.
func (w *worker) sidesFit(sh *Shaping) {
	if sh.On == AnyRow || w.cur.round {
		return
	}
	row := sh.Offset + 1
	for _, sp := range sh.spacings(w.i) {
		if sp.times <= 0 {
			continue
		}
		onRS := w.cur.rs == (row%2 == 1)
		have, fix := "", ""
		switch {
		case sp.every%2 == 1 && sp.times > 1:
			have = fmt.Sprintf("every %d rows falls on right-side and wrong-side rows in turn", sp.every)
			fix = fmt.Sprintf("shape every %d rows", sp.every+1)
			if sp.every > 1 {
				fix = fmt.Sprintf("shape every %d or every %d rows", sp.every-1, sp.every+1)
			}
		case sp.every == 1 && onRS != (sh.On == RightSide):
			have = "the shaping row is a " + sideName(onRS) + " row"
			fix = "leave one row even before it (`after: 1 row`), or shape on the other side"
		}
		if have != "" {
			w.findSide("arithmetic/row-side", finding.Warning, sh.Pos, "the shaping does not fall on "+sh.On.String(), have, sh.On.String(), fix)
			return
		}
		row += sp.every * sp.times
	}
}

func sideName(rs bool) string {
	if rs {
		return "right-side"
	}
	return "wrong-side"
}

// RepeatRow changes the count by a repeat: the row's pattern uses Use stitches
// and makes Make, again and again; Left is worked even if RestEven, and
// otherwise must be 0.
type RepeatRow struct {
	Common
	Text     string // as authored
	Use      int
	Makes    int
	RestEven bool
}

func (s *RepeatRow) Traits() Traits {
	return Traits{Words: "repeat row", Across: true, Use: s.Use, Makes: s.Makes, RestEven: s.RestEven}
}

func (s *RepeatRow) load(int, func(Amount) int64) Load { return Load{Rows: 1} }

func (s *RepeatRow) work(w *worker) {
	if s.Use < 1 {
		return
	}
	w.carried(func(n int) bool { return n%s.Use == 0 || s.RestEven })
	st := w.cur
	n := st.count()
	reps, rest := n/s.Use, n%s.Use
	if rest != 0 && !s.RestEven {
		w.findCount("arithmetic/multiple", finding.Warning, s.Pos,
			fmt.Sprintf("the repeat uses %d stitches, and %d is not a multiple of %d: %d are left over", s.Use, n, s.Use, rest),
			fmt.Sprintf("%d = %d × %d + %d", n, reps, s.Use, rest), fmt.Sprintf("a multiple of %d", s.Use),
			fmt.Sprintf("have %d or %d stitches before it, or say `rest: worked even`", reps*s.Use, (reps+1)*s.Use))
	}
	d := reps*s.Makes + rest - n
	if n+d < 1 {
		w.findCount("arithmetic/impossible", finding.Error, s.Pos, "the repeat leaves no stitch", fmt.Sprint(n), "at least 1", "make more stitches in the repeat")
		w.doubtful()
		d = 0
	}
	p := profile{{1, units.Int(int64(d)).Half()}}
	left, right := make([]profile, len(st.blocks)), make([]profile, len(st.blocks))
	if len(st.blocks) > 1 {
		w.spread(profile{{1, units.Int(int64(d))}}, left, right)
	} else {
		left[0], right[0] = p, p
	}
	w.advance(1, left, right)
}

// step is how many stitches fewer each turn leaves at an edge: as stated, or as many as there are.
func (s *ShortRows) step(w *worker, at Side, over, turns int) int {
	step, sides := s.Step.Int(w.i, 0), 1
	if at == BothEdges || at == Across || at == Lines {
		sides = 2
	}
	most := (over - 1) / sides / max(1, turns)
	if step <= most || turns == 0 {
		return step
	}
	w.findCount("arithmetic/short-rows", finding.Warning, s.Pos,
		fmt.Sprintf("%d stitches fewer at each turn uses up the %d stitches before the %d rows are done", step, over, s.Rows.Int(w.i, 0)),
		fmt.Sprintf("%d turns × %d stitches", turns*sides, step), fmt.Sprintf("at most %d at a turn", most), "work fewer short rows, or turn closer to the turn before")
	return most
}

// ShortRows are rows over part of the stitches only: height is added only
// there. Over is how many stitches the longest row works, At which edge it
// starts from (BothEdges: in the middle). Each pair of rows is Step stitches shorter
// than the pair before at each turn.
type ShortRows struct {
	Common
	Over expr.Graded
	At   Side
	Rows expr.Graded
	Step expr.Graded
}

func (s *ShortRows) Traits() Traits { return Traits{Words: "short rows", Free: true, Short: s} }

func (s *ShortRows) load(i int, _ func(Amount) int64) Load {
	n := s.Rows.Int(i, 0)
	return Load{Rows: int64(n), Changes: 4 * n} // each turn is an edge of its own
}

func (s *ShortRows) work(w *worker) {
	st := w.cur
	rows := s.Rows.Int(w.i, 0)
	over := min(s.Over.Int(w.i, st.count()), st.count())
	if over < 1 || rows < 1 {
		return
	}
	if len(st.blocks) > 1 {
		w.find("arithmetic/short-rows", finding.Error, s.Pos, "short rows over panels that are drawn apart can't be drawn", "", "",
			"work them before the panels, or give the piece a part of its own for them")
		st.rs = st.rs == (rows%2 == 0 || st.round)
		return
	}
	w.settle()
	b := &st.blocks[0]
	c := w.canvas(b)
	n := b.count()
	at := w.side(s.At)
	turns := max(0, (rows+1)/2-1)
	step := s.step(w, at, over, turns)
	fromL, fromR := (n-over)/2, n-over-(n-over)/2 // unworked at each end by the longest row
	cutL, cutR := turns*step, turns*step
	switch at {
	case LeftEdge:
		fromL, fromR, cutL = 0, n-over, 0
	case RightEdge:
		fromL, fromR, cutR = n-over, 0, 0
	}
	if st.round {
		w.raise(b, rows, over, cutL+cutR)
		return
	}
	x := func(k int) units.Num { return b.x.Add(st.offsetOf(b, k)) }
	y0 := st.y
	h := st.gauge.RowHeight()
	y1 := y0.Add(h.Times(rows))
	l, r := b.x, st.right(b)
	l0, r0, l1, r1 := x(fromL), x(n-fromR), x(fromL+cutL), x(n-fromR-cutR)
	st.top = nil
	add := func(a, z pt, name string, side segSide, rows, sts int, top bool) {
		if top {
			st.top = append(st.top, len(c.segs))
		}
		c.segs = append(c.segs, seg{a: a, b: z, name: name, part: st.name, side: side, rows: rows, sts: sts, pos: s.Pos})
	}
	// The unworked ends are, for now, the top of the piece there; if rows follow, a notch.
	add(pt{l0, y0}, pt{l, y0}, "short-row turn", segNone, 0, fromL, true)
	add(pt{r, y0}, pt{r0, y0}, "short-row turn", segNone, 0, fromR, true)
	if fromL+cutL == 0 {
		add(pt{l, y1}, pt{l, y0}, b.left, segLeft, rows, 0, false)
	} else {
		add(pt{l1, y1}, pt{l0, y0}, "short-row turn", segNone, 0, cutL, true)
	}
	if fromR+cutR == 0 {
		add(pt{r, y0}, pt{r, y1}, b.right, segRight, rows, 0, false)
	} else {
		add(pt{r0, y0}, pt{r1, y1}, "short-row turn", segNone, 0, cutR, true)
	}
	st.dirty, st.topL, st.topR = true, l1, r1
	mean := units.Int(int64(2*over - cutL - cutR)).Half().Times(rows)
	w.areas[st.gauge.Name] = w.areas[st.gauge.Name].Add(mean.Mul(st.gauge.StitchWidth()).Mul(h))
	c.depths = append(c.depths, depth{name: "short rows", y0: y0, y1: y1, x: l1, count: rows, of: "row", part: st.name, gauge: st.gauge})
	st.y = y1
	if rows%2 == 1 {
		st.rs = !st.rs
	}
	st.row += rows
}

// raise works short rows of a round over so many stitches, cut fewer in the last row.
func (w *worker) raise(b *block, rows, over, cut int) {
	st := w.cur
	h, layer := st.gauge.RowHeight().Times(rows), units.Frac(int64(b.count()), 2)
	share := func(n int) units.Num { return units.Min(units.Int(1), units.Int(int64(n)).Div(layer)) }
	c := w.canvas(b)
	c.heel = w.made.Kind == KindSock
	c.raised = append(c.raised, raise{high: h, at: st.y, rows: rows, foot: share(over), plateau: share(over - cut), part: st.name, gauge: st.gauge})
	mean := units.Int(int64(2*over - cut)).Half()
	w.areas[st.gauge.Name] = w.areas[st.gauge.Name].Add(mean.Mul(st.gauge.StitchWidth()).Mul(h))
	st.row += rows
}

// Fold is a line on which the piece is folded.
type Fold struct {
	Common
}

func (s *Fold) Traits() Traits { return Traits{Words: "fold", Marks: &Mark{What: "fold line"}} }

func (s *Fold) work(w *worker) {
	st := w.cur
	for i := range st.blocks {
		b := &st.blocks[i]
		c := w.canvas(b)
		c.lines = append(c.lines, inner{kind: LineFold, a: pt{b.x, st.y}, b: pt{st.right(b), st.y}, name: s.Name})
	}
}

// Gather draws all stitches together: an end that is gathered or fastened.
type Gather struct {
	Common
}

func (s *Gather) Traits() Traits { return Traits{Words: "gather", All: true} }

func (s *Gather) work(w *worker) {
	w.end("gathered edge", s.Pos, false)
}

// Mark is a named mark on the piece at this row: a waist line, a stitch
// marker, or Count of them (buttonholes) evenly between From and To stitches or,
// with Along, up an edge over the rows that follow.
type Mark struct {
	Common
	What   string // buttonhole, marker, waist, pocket
	Count  expr.Graded
	At     Side        // an edge, for marks up an edge
	Along  bool        // up an edge
	Inset  expr.Graded // stitches in from the edge
	Stitch expr.Graded // at this stitch from the right-hand edge
	First  expr.Graded // rows from here to the first of Count
	Apart  expr.Graded // rows (or stitches) between them
	Line   bool        // drawn across the whole row
}

func (s *Mark) Traits() Traits { return Traits{Words: "mark", Marks: s} }

func (s *Mark) load(i int, _ func(Amount) int64) Load { return Load{Marks: s.Count.Int(i, 1)} }

func (s *Mark) work(w *worker) {
	st := w.cur
	h := st.gauge.RowHeight()
	b := &st.blocks[0]
	at := w.side(s.At)
	side := segNone
	switch at {
	case LeftEdge:
		side = segLeft
	case RightEdge:
		side = segRight
		b = &st.blocks[len(st.blocks)-1]
	}
	c := w.canvas(b)
	if s.Line || s.What == "waist" {
		c.lines = append(c.lines, inner{kind: LineMark, a: pt{b.x, st.y}, b: pt{st.right(b), st.y}, name: s.What})
		return
	}
	sw := b.runs[0].gauge.StitchWidth().Mul(st.layers())
	count := s.Count.Int(w.i, 1)
	first, apart := s.First.Int(w.i, 0), s.Apart.Int(w.i, 0)
	for k := range count {
		m := mark{what: s.What, side: side, inset: sw.Times(s.Inset.Int(w.i, 0))}
		if k == 0 {
			m.name = s.What
		}
		off := first + k*apart
		switch {
		case s.Along, side != segNone && count == 1 && s.First.IsZero() && s.Stitch.IsZero(): // at the edge itself
			m.at = pt{b.x, st.y.Add(h.Times(off))}
			if side == segRight {
				m.at.x = st.right(b)
			}
		case count > 1:
			m.side = segNone
			m.at = pt{st.right(b).Sub(sw.Times(off)), st.y}
		default:
			m.side = segNone
			n := s.Stitch.Int(w.i, b.count()/2)
			m.at = pt{st.right(b).Sub(sw.Times(n)), st.y}
		}
		c.marks = append(c.marks, m)
	}
}
