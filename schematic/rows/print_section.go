package rows

import (
	"fmt"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/expr"
)

// at is a graded value of the sizes that are printed, -1 where it has none.
func (w *printer) at(g expr.Graded) nums {
	return w.each(func(i int) int {
		return g.Int(w.size(i), -1)
	})
}

// size is the pattern's size of the i-th that is printed.
func (w *printer) size(i int) int {
	if w.o.Size >= 0 {
		return w.o.Size
	}
	return i
}

// section prints one section.
func (w *printer) section(s schematic.Section, rows, before, after nums) {
	switch s := s.(type) {
	case *schematic.CastOn:
		w.start(after)
		switch {
		case w.knit && w.round:
			w.say("Cast on %s sts, join to work in the round.", w.line(after))
			return
		case w.knit:
			w.say("Cast on %s sts.", w.line(after))
			return
		}
		k := w.st.Turn
		if w.round {
			w.say("Ch %s, join with sl st to form a ring.", w.line(after))
		} else {
			w.say("Ch %s.", w.line(w.each(func(i int) int { return after[i] + k })))
		}
		w.based = true
	case *schematic.Ring:
		w.start(after)
		if w.knit {
			w.say("Cast on %s sts, join to work in the round.", w.line(after))
			return
		}
		w.say("Rnd 1: %s %s in magic ring. (%s %s)", w.line(after), w.abbr(), w.line(after), w.unit())
		w.worked(w.each(func(int) int { return 1 }), after)
	case *schematic.Held:
		w.start(after)
		w.say("Take up %s. (%s sts)", w.heldWords(s, after), w.line(after))
		w.heldPanels(s)
	case *schematic.Sideways:
		w.sideways(s)
	case *schematic.PickUp:
		w.start(after)
		if w.knit {
			w.say("Pick up and knit %s sts evenly along the long edge%s.", w.line(after), pickRate(s))
			return
		}
		w.say("Work %s %s evenly along the long edge%s. (%s %s)", w.line(after), w.abbr(), pickRate(s), w.line(after), w.unit())
		w.worked(w.each(func(int) int { return 1 }), after)
	case *schematic.Even:
		w.even(rows, after)
	case *schematic.Shape:
		w.shape(s, rows, before, after)
	case *schematic.RepeatRow:
		w.base()
		if !w.repeatRow(s, rows, before, after) {
			w.change("on next row", rows, before, after)
		}
	case *schematic.Mitre:
		w.mitre(s, rows, before, after)
	case *schematic.AddEdge:
		w.base()
		d := minus(after, before)
		if !anyAbove(d, 0) {
			return
		}
		n, where := d, w.edge(s.At, s.Edge)
		if s.At == schematic.BothEdges {
			n = w.each(func(i int) int { return d[i] / 2 })
		}
		if d2 := w.each(func(i int) int { return 2 * n[i] }); s.At == schematic.BothEdges && fmt.Sprint(d2) != fmt.Sprint(d) || !bounded(after, 1) {
			w.say("Inc %s sts evenly over 0 rows. (%s sts)", w.some(d), w.line(after))
		} else {
			w.say("Add %s sts %s. (%s sts)", w.some(n), where, w.line(after))
		}
		w.worked(w.zero(), after)
	case *schematic.BindOff:
		w.bindOff(s, rows, before, after)
	case *schematic.JoinParts:
		if s.Round && w.closes(s, before, after) {
			return
		}
		w.start(after)
		w.say("Join the parts: %s. (%s sts)", w.joined(s, after), w.line(after))
	case *schematic.ShortRows:
		w.shortRows(s, rows, after)
	case *schematic.Fold:
		w.say("Place a marker for the fold line.")
	case *schematic.Mark:
		w.mark(s)
	case *schematic.Gather:
		w.base()
		w.say("Fasten off.")
	case *schematic.Panels:
		w.base()
		w.panels(s)
		w.even(rows, after)
	default:
		w.base()
		if rest := minus(after, before); anyAbove(rest, 0) || anyAbove(minus(before, after), 0) {
			w.change("over "+w.some(rows)+" "+w.rowWord(rows), rows, before, after)
		} else {
			w.even(rows, after)
		}
	}
}

// some is a line of how much there is of something, with a dash for the sizes that have
// none of it, if others have.
func (w *printer) some(v nums) string {
	if !anyAbove(v, 0) {
		return w.line(v)
	}
	out := make(nums, len(v))
	for i, n := range v {
		if out[i] = n; n == 0 {
			out[i] = -1
		}
	}
	return w.line(out)
}

func (w *printer) zero() nums { return w.each(func(int) int { return 0 }) }

// sideways prints a band worked sideways, and turns it to its long edge.
func (w *printer) sideways(s *schematic.Sideways) {
	deep, rows := w.at(s.Stitches), w.at(s.Rows)
	w.start(deep)
	switch {
	case w.knit:
		w.say("Cast on %s sts.", w.line(deep))
		w.say("Work %s rows even. (%s sts)", w.line(rows), w.line(deep))
		w.worked(rows, deep)
	default:
		round := w.round
		w.round = false
		w.say("Ch %s.", w.line(w.each(func(i int) int { return deep[i] + w.st.Turn })))
		w.based = true
		w.even(rows, deep)
		w.round = round
	}
	w.say("Turn the band to work along its long edge.")
}

// bindOff prints stitches bound off, left or held.
func (w *printer) bindOff(s *schematic.BindOff, rows, before, after nums) {
	w.base()
	off := minus(before, after)
	if !anyAbove(after, 0) || s.All {
		if s.Hold || s.Leave {
			w.say("Leave remaining sts on a holder.")
		} else {
			w.say("%s.", w.end())
		}
		w.worked(w.zero(), after)
		return
	}
	if !anyAbove(off, 0) {
		w.even(rows, after)
		return
	}
	stop := w.each(func(i int) int {
		if after[i] < 0 || before[i] < 0 {
			return -1
		}
		return before[i] - after[i]
	})
	verb := w.offWord()
	times, n := w.at(s.Times), w.at(s.Stitches)
	per := make(nums, len(rows))
	clean := !s.Leave && !s.Hold
	for i := range rows {
		per[i] = -1
		if stop[i] < 0 {
			continue
		}
		t := max(times[i], 1)
		if s.Times.IsZero() {
			t = 1
		}
		edges := 1
		if s.At == schematic.BothEdges {
			edges = 2
		}
		per[i] = t * edges
		clean = clean && n[i] > 0 && n[i]*per[i] == stop[i] && per[i] == rows[i]
	}
	if clean {
		next := "row"
		if anyAbove(per, 1) {
			next = w.line(per) + " rows"
		}
		w.say("%s %s %s at beg of next %s%s. (%s sts)", verb, w.line(n), word("st", n), next, w.changed(), w.line(after))
		w.worked(rows, after)
		return
	}
	if s.Leave && w.leaves(s, n, per, stop, rows, after) || w.offAgain(s, n, per, stop, rows, after) {
		return
	}
	w.change("over "+w.some(rows)+" "+w.rowWord(rows), rows, before, after)
}

// offWord is what taking stitches off is called.
func (w *printer) offWord() string {
	if w.o.Terms == 1 {
		return "Cast off"
	}
	return "Bind off"
}

// leaves prints stitches left at an edge before the next row, once.
func (w *printer) leaves(s *schematic.BindOff, n, per, stop, rows, after nums) bool {
	for i := range n {
		edges := 1
		if s.At == schematic.BothEdges {
			edges = 2
		}
		if stop[i] >= 0 && (per[i] != edges || n[i] <= 0 || n[i]*edges != stop[i] || rows[i] != 0) {
			return false
		}
	}
	w.say("Leave %s sts unworked %s. (%s sts)", w.line(n), w.edge(s.At, s.Edge), w.line(after))
	w.worked(rows, after)
	return true
}

// offAgain prints stitches taken off at an edge, once or every so many rows.
func (w *printer) offAgain(s *schematic.BindOff, n, per, stop, rows, after nums) bool {
	edges := 1
	switch s.At {
	case schematic.BothEdges:
		edges = 2
	case schematic.LeftEdge, schematic.RightEdge:
	default:
		return false
	}
	one := true
	times := w.zero()
	for i := range n {
		if stop[i] < 0 {
			continue
		}
		if n[i] <= 0 || n[i]*per[i] != stop[i] {
			return false
		}
		times[i] = per[i] / edges
		one = one && times[i] == 1
	}
	text := fmt.Sprintf("%s %s %s", w.offWord(), w.some(n), word("st", n))
	switch {
	case s.Hold:
		text = fmt.Sprintf("Leave %s %s on a holder", w.some(n), word("st", n))
	case s.Leave:
		text = fmt.Sprintf("Leave %s %s unworked", w.some(n), word("st", n))
	}
	text += " " + w.edge(s.At, s.Edge)
	if !one {
		text += " " + w.spacing(s.Every, s.Times, true)
	}
	w.say("%s, over %s %s%s. (%s sts)", text, w.line(rows), w.rowWord(rows), w.changed(), w.line(after))
	w.worked(rows, after)
	return true
}

// edge is where a shaping falls: at each end, or at an edge by its name; the mirror
// of a part has left and right the other way round.
func (w *printer) edge(at schematic.Side, name string) string {
	side := ""
	switch at {
	case schematic.LeftEdge, schematic.RightEdge:
		side = "right"
		if (at == schematic.LeftEdge) != w.flip {
			side = "left"
		}
	case schematic.BothEdges:
		return "at each end"
	default:
		return "evenly"
	}
	name = strings.ToLower(strings.TrimSuffix(strings.TrimSpace(name), " edge"))
	if name == "" || name == side || name != bare(name) || strings.ContainsAny(name, " 0123456789") {
		return "at " + side + " edge"
	}
	return "at " + name + " edge (" + side + ")"
}

// closes prints a row that is joined into a round, over stitches added.
func (w *printer) closes(s *schematic.JoinParts, before, after nums) bool {
	for _, j := range s.Of {
		if j.Part != "" {
			return false
		}
	}
	w.base()
	w.round = true
	d := minus(after, before)
	if anyAbove(d, 0) && bounded(d, 0) {
		w.say("Join to work in the round, adding %s sts. (%s sts)", w.line(d), w.line(after))
	} else {
		w.say("Join to work in the round. (%s sts)", w.line(after))
	}
	w.worked(w.zero(), after)
	return true
}

// divide prints a division, and each part under a heading of its own.
func (w *printer) divide(d *schematic.Divide, head string) {
	w.base()
	var parts []string
	for i := range d.Parts {
		p := &d.Parts[i]
		what := "for " + part(p.Name)
		switch {
		case p.Hold:
			what = "held"
		case p.Leave:
			what = "left unworked"
		}
		parts = append(parts, w.line(w.clean(w.at(p.Stitches)))+" sts "+what)
	}
	w.say("Divide the row: %s.", strings.Join(parts, ", "))
	count, no, round := w.count, append([]int(nil), w.no...), w.round
	st, knit := w.st, w.knit
	for i := range d.Parts {
		p := &d.Parts[i]
		if p.Leave || p.Hold {
			continue
		}
		list, flip := p.Sections, w.flip
		if p.MirrorOf != "" {
			w.flip = !flip
		}
		for k := range d.Parts {
			if p.MirrorOf != "" && d.Parts[k].Name == p.MirrorOf {
				list = d.Parts[k].Sections
			}
		}
		n := w.clean(w.at(p.Stitches))
		w.st, w.knit = st, knit
		w.round = false
		w.say("\n# %s, %s", head, plain(p.Name))
		w.start(n)
		w.count = append(nums(nil), n...)
		w.say("Take up %s held sts. (%s sts)", w.line(n), w.line(n))
		w.sections(list, p.Name, head)
		w.flip = flip
	}
	w.count, w.no, w.round = count, no, round
}

// clean has 0 where a size that has the piece lacks the number.
func (w *printer) clean(v nums) nums {
	return w.each(func(i int) int { return max(v[i], 0) })
}

// part is a part's name without what would end a clause.
func part(s string) string {
	s = strings.Map(func(r rune) rune {
		if strings.ContainsRune(".,;:()[]{}*0123456789", r) {
			return ' '
		}
		return r
	}, plain(s))
	return strings.Join(strings.Fields(s), " ")
}

// repeatRow prints a row that changes the count by a repeat, if increases of one or
// decreases of two together make it.
func (w *printer) repeatRow(s *schematic.RepeatRow, rows, before, after nums) bool {
	use, makes := s.Use, s.Makes
	rest := make(nums, len(before))
	for i, n := range before {
		if rest[i] = -1; n < 0 {
			continue
		}
		if rest[i] = n % use; rows[i] != 1 || n < use || after[i] != n/use*makes+rest[i] || rest[i] > 0 && !s.RestEven {
			return false
		}
	}
	var body string
	st := "k"
	if !w.knit {
		st = w.abbr()
	}
	plain := func(n int) string {
		switch {
		case n == 0:
			return ""
		case w.knit:
			return fmt.Sprintf("k%d, ", n)
		case n == 1:
			return st + " in next st, "
		}
		return fmt.Sprintf("%s in next %d sts, ", st, n)
	}
	switch d := makes - use; {
	case d > 0 && d <= use && w.knit:
		body = plain(use-d) + strings.TrimSuffix(strings.Repeat("kfb, ", d), ", ")
	case d > 0 && d <= use:
		if body = plain(use-d) + fmt.Sprintf("2 %s in each of next %d sts", st, d); d == 1 {
			body = plain(use-d) + fmt.Sprintf("2 %s in next st", st)
		}
	case d < 0 && -2*d <= use && w.knit:
		body = plain(use+2*d) + strings.TrimSuffix(strings.Repeat("k2tog, ", -d), ", ")
	case d < 0 && -2*d <= use:
		body = plain(use+2*d) + strings.TrimSuffix(strings.Repeat(st+"2tog over next 2 sts, ", -d), ", ")
	default:
		return false
	}
	one := w.each(func(int) int { return 1 })
	ch, end, to := "", ", turn", "to end"
	if w.round {
		end = ", join"
	}
	if w.knit {
		end = ""
	} else if ch = fmt.Sprintf("Ch %d, ", w.st.Turn); w.o.Terms == 1 {
		ch = fmt.Sprintf("%d ch, ", w.st.Turn)
	}
	tail := ""
	if anyAbove(rest, 0) {
		if !bounded(rest, 1) {
			return false
		}
		to = "to last " + w.line(rest) + " sts"
		tail = ", " + st + " in last " + w.line(rest) + " sts"
		if w.knit {
			tail = ", k" + w.line(rest)
		}
	}
	w.say("%s: %s*%s; rep from * %s%s%s. (%s %s)", w.label(one), ch, body, to, tail, end, w.line(after), w.unit())
	w.worked(one, after)
	if w.knit { // a row in words of its own
		w.said = cloth{}
	}
	return true
}
