package print

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
)

// divide prints a division, and each part under a heading of its own. Parts that are
// joined later wait, all but the last.
func (w *printer) divide(all []*schematic.Part, head string, joined bool) {
	w.base()
	if w.allOff(all) {
		return
	}
	var parts []string
	last := 0
	for i, p := range all {
		n := w.clean(w.at(p.Stitches))
		parts = append(parts, w.sts(n)+" "+w.becomes(p))
		if !p.Leave && !p.Hold {
			last = i
		}
	}
	w.say("Divide the %s: %s.", w.row(), strings.Join(parts, ", "))
	before, flip := w.work, w.flip
	for i, p := range all {
		if p.Leave || p.Hold {
			continue
		}
		n := w.clean(w.at(p.Stitches))
		w.say("\n# %s, %s", head, plain(p.Name))
		w.work = work{fab: before.fab}
		w.start(n)
		w.say("Take up %s held %s. (%s)", w.line(n), word("st", n), w.sts(n))
		list := p.Sections
		if p.MirrorOf != "" {
			w.flip = !flip
			if k := slices.IndexFunc(all, func(q *schematic.Part) bool { return q.Name == p.MirrorOf }); k >= 0 {
				list = all[k].Sections
			}
		}
		w.sections(list, p.Name, head)
		if joined && i < last && w.count.above(0) {
			w.say("Leave remaining sts on a holder.")
		}
		w.flip = flip
	}
	w.work = before
}

// becomes says what becomes of a part's stitches.
func (w *printer) becomes(p *schematic.Part) string {
	_, off := w.offWord()
	switch {
	case p.Hold:
		return "held"
	case p.Leave && p.Off && w.fab.st == nil:
		return off
	case p.Leave:
		return "left unworked"
	}
	if of := name(p.Name); sayable(of) {
		return "for " + of
	}
	return "to be worked"
}

// allOff prints a row of which no part is worked on: its end, with markers between the
// edges that its parts make.
func (w *printer) allOff(parts []*schematic.Part) bool {
	var names []string
	var counts []nums
	live := false
	for _, p := range parts {
		if !p.Leave {
			return false
		}
		names, counts = append(names, p.Edge), append(counts, w.clean(w.at(p.Stitches)))
		live = live || !p.Off
	}
	w.markers(names, counts)
	w.offAll(live && w.fab.st == nil)
	return true
}

// taken is how many stitches of the k-th run, or part, a start or a join takes up.
func (w *printer) taken(s schematic.Section, k int) nums {
	return w.ofSteps(s, func(st *schematic.Step) int {
		if k < len(st.Taken) {
			return st.Taken[k]
		}
		return none
	})
}

// runsOf is a list of so many stitches of this and that; the sum alone if they are not
// what the row has.
func (w *printer) runsOf(of int, one func(k int) (n nums, words string), after nums, sum string) string {
	var all []string
	have := w.same(0)
	for k := range of {
		n, words := one(k)
		have = have.with(w.clean(n), func(a, b int) int { return a + b })
		if n.above(0) {
			all = append(all, fmt.Sprintf(words, w.some(n)))
		}
	}
	if have.more(after).above(0) || after.more(have).above(0) {
		return fmt.Sprintf(sum, w.line(after))
	}
	return strings.Join(all, ", ")
}

func (w *printer) held(s schematic.Section, from []schematic.HeldPart, after nums) {
	w.start(after)
	w.say("Take up %s. (%s)", w.runsOf(len(from), func(k int) (nums, string) {
		n, p := w.taken(s, k), from[k]
		of := name(p.Piece)
		if p.Part != "" {
			of += ", " + name(p.Part)
		}
		switch {
		case p.Piece == "":
			return n, "add %s " + word("st", n)
		case !sayable(of):
			return n, "%s held " + word("st", n)
		}
		return n, "%s held " + word("st", n) + " of " + of
	}, after, "%s held sts"), w.sts(after))
	w.heldPanels(s, from)
}

func (w *printer) joinParts(s schematic.Section, c change) {
	t := s.Traits()
	if t.Closes && !t.Rejoins() {
		w.closeRound(c)
		return
	}
	w.start(c.after)
	w.say("Join the parts: %s. (%s)", w.runsOf(len(t.Joins), func(k int) (nums, string) {
		n, of := w.taken(s, k), name(t.Joins[k].Part)
		switch {
		case t.Joins[k].Part == "":
			return n, "add %s " + word("st", n)
		case !sayable(of):
			return n, "%s " + word("st", n)
		}
		return n, "%s " + word("st", n) + " of " + of
	}, c.after, "%s sts"), w.sts(c.after))
}

// closeRound prints a row that is joined into a round, over stitches added.
func (w *printer) closeRound(c change) {
	w.base()
	w.round = true
	adding := ""
	if d := c.after.minus(c.before); d.above(0) && d.least(0) {
		adding = ", adding " + w.sts(d)
	}
	w.say("Join to work in the round%s. (%s)", adding, w.sts(c.after))
	w.worked(w.same(0), c.after)
}

// numerals are the numbers that are read in words.
var numerals = strings.Fields("one two three four five six seven eight nine ten eleven twelve")

// sayable reports whether a name can stand in a row: one without a number in words in
// it, which would be read as one.
func sayable(of string) bool {
	return of != "" && !slices.ContainsFunc(strings.Fields(strings.ToLower(of)), func(word string) bool { return slices.Contains(numerals, word) })
}

// panels marks the lines between the panels of a row.
func (w *printer) panels(of []schematic.Panel, c change) {
	w.base()
	names, counts := make([]string, len(of)), make([]nums, len(of))
	for k, p := range of {
		names[k], counts[k] = p.Name, w.clean(w.at(p.Stitches))
	}
	w.markers(names, counts)
	w.even(c.rows, c.after)
}

// heldPanels marks the lines between the panels that a start makes of its runs. Stitches
// of no panel belong to the one that is listed after them, or at the end of the list to the last.
func (w *printer) heldPanels(s schematic.Section, from []schematic.HeldPart) {
	var names []string
	var counts []nums
	plus := func(a, b int) int { return a + b }
	more := w.same(0)
	for k, p := range from {
		n := w.clean(w.taken(s, k)).with(more, plus)
		if more = n; p.Panel != "" {
			names, counts, more = append(names, p.Panel), append(counts, n), w.same(0)
		}
	}
	if len(names) > 0 {
		counts[len(counts)-1] = counts[len(counts)-1].with(more, plus)
		w.markers(names, counts)
	}
}

// markers prints the placing of markers between panels, if they make up the row.
func (w *printer) markers(names []string, counts []nums) {
	var all []string
	sum := w.same(0)
	for k, n := range counts {
		sum = sum.with(n, func(a, b int) int { return a + b })
		if !n.above(0) {
			continue
		}
		text := w.some(n) + " " + word("st", n)
		if of := name(names[k]); sayable(of) {
			text += " for " + of
		}
		all = append(all, text)
	}
	for i := range sum {
		if sum[i] >= 0 && sum[i] != w.count[i] {
			return
		}
	}
	w.say("Place markers between the panels: %s.", strings.Join(all, ", "))
}

// shortRows says over how many stitches short rows are worked, and how much sooner
// each pair of them turns.
func (w *printer) shortRows(s *schematic.ShortRows, c change) {
	if !c.rows.above(0) {
		return
	}
	w.base()
	over := w.each(func(i int) int {
		if c.rows[i] <= 0 {
			return 0
		}
		return min(s.Over.Int(w.size(i), c.after[i]), c.after[i])
	})
	where := fmt.Sprintf("over the middle %s %s", w.some(over), word("st", over))
	if s.At == schematic.LeftEdge || s.At == schematic.RightEdge {
		where = fmt.Sprintf("over %s %s %s", w.some(over), word("st", over), w.edge(s.At, ""))
	}
	text := fmt.Sprintf("Work %s short %s %s", w.some(c.rows), word("row", c.rows), where)
	step := w.each(func(i int) int {
		if c.rows[i] < 3 {
			return 0
		}
		return s.Step.Int(w.size(i), 0)
	})
	if step.above(0) {
		text += fmt.Sprintf(", turning %s %s sooner each time", w.some(step), word("st", step))
	}
	if in := w.changed(); in != "" {
		text += "," + in
	}
	w.say("%s. (%s)", text, w.sts(c.after))
	w.worked(c.rows, c.after)
}
