package print

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
)

// foundation is a chain that waits for its first row, with so many chains more than
// the row has stitches.
type foundation struct{ more int }

func (w *printer) castOn(chain expr.Graded, after nums) {
	w.start(after)
	switch {
	case w.fab.st == nil && w.round:
		w.say("Cast on %s, join to work in the round.", w.sts(after))
	case w.fab.st == nil:
		w.say("Cast on %s.", w.sts(after))
	default:
		w.chain(w.at(chain).minus(after), after)
	}
}

// chain begins with a foundation chain: as many chains more as the author says, if all
// sizes agree on it and a row can be worked into them.
func (w *printer) chain(more, after nums) {
	k, ok := more.all()
	switch {
	case w.round:
		k = 0
	case !ok || k < 1:
		k = w.fab.st.Turn
	}
	ch := after.with(after, func(n, _ int) int { return n + k })
	w.found = &foundation{k}
	if w.round {
		w.say("Ch %s, join with sl st to form a ring.", w.line(ch))
		return
	}
	w.say("Ch %s.", w.line(ch))
}

// ordinal is a number's place in a row: 2nd, 21st, 12th.
func ordinal(n int) string {
	end := "th"
	if n%100/10 != 1 {
		switch n % 10 {
		case 1:
			end = "st"
		case 2:
			end = "nd"
		case 3:
			end = "rd"
		}
	}
	return fmt.Sprint(n, end)
}

// base turns a foundation chain that still waits into a row, before rows that can't be
// worked into chains.
func (w *printer) base() {
	if w.found != nil {
		w.first(w.same(1), w.count)
	}
}

// first prints the first row over the foundation chain.
func (w *printer) first(one, after nums) {
	in := fmt.Sprintf("%s ch from hook and in each ch across, turn", ordinal(w.found.more+1))
	if w.round {
		in = "each ch around, join"
	}
	w.found = nil
	w.say("%s: %s in %s. (%s)", w.label(one), finding.Capital(w.abbr()), in, w.ofStitch(after))
	w.worked(one, after)
}

func (w *printer) ring(after nums) {
	w.start(after)
	if w.fab.st == nil {
		w.say("Cast on %s, join to work in the round.", w.sts(after))
		return
	}
	w.say("Rnd 1: %s %s in magic ring. (%s)", w.line(after), w.abbr(), w.ofStitch(after))
	w.worked(w.same(1), after)
}

// onto begins a band along the edges of other pieces, unless its sections begin it.
func (w *printer) onto(q *schematic.Piece) {
	if len(q.Sections) > 0 && q.Sections[0].Traits().Starts {
		return
	}
	after := w.each(func(i int) int {
		if len(w.made[i].Steps) == 0 {
			return none
		}
		return w.made[i].Steps[0].After
	})
	w.start(after)
	if w.fab.st == nil {
		w.say("Pick up and knit %s evenly %s.", w.sts(after), w.along(q.Onto))
		return
	}
	one := w.same(1)
	w.say("%s: Work %s evenly %s. (%s)", w.label(one), w.ofStitch(after), w.along(q.Onto), w.ofStitch(after))
	w.worked(one, after)
}

// along names the edges onto which a band is worked, each with its rate where it is not
// one for one.
func (w *printer) along(edges []schematic.EdgeRate) string {
	var all []string
	for k, e := range edges {
		text := "along " + name(e.Edge)
		if e.Of > 1 {
			text += fmt.Sprintf(" at the rate of %d in every %d", e.Pick, e.Of)
			if e.Rows && w.level(k) {
				text += " rows (and 1 in each stitch bound off there)"
			}
		}
		all = append(all, text)
	}
	return strings.Join(all, " and ")
}

// level reports whether the k-th edge of a band has stitches that are bound off beside its rows.
func (w *printer) level(k int) bool {
	return slices.ContainsFunc(w.made, func(m *schematic.Made) bool {
		return m != nil && len(m.Steps) > 0 && k < len(m.Steps[0].Onto) && m.Steps[0].Onto[k].Rows > 0 && m.Steps[0].Onto[k].Stitches > 0
	})
}

// sideways prints a band worked sideways, and turns it to its long edge.
func (w *printer) sideways(t schematic.Traits) {
	deep, rows := w.at(t.Depth), w.at(t.Band)
	w.start(deep)
	round := w.round
	w.round = false
	if w.fab.st == nil {
		w.say("Cast on %s.", w.sts(deep))
	} else {
		w.chain(nums(nil), deep)
	}
	w.even(rows, deep)
	w.round = round
	if w.fab.st == nil {
		w.offAll(false)
	}
	w.say("Turn the band to work along its long edge.")
}

func (w *printer) pickUp(rates []schematic.Rate, after nums) {
	w.start(after)
	one := w.same(1)
	if w.fab.st != nil {
		w.say("%s: Work %s evenly along the long edge%s%s. (%s)", w.label(one), w.ofStitch(after), pickRate(rates), w.joined(", join"), w.ofStitch(after))
		w.worked(one, after)
		return
	}
	w.say("Pick up and knit %s evenly along the long edge%s%s.", w.sts(after), pickRate(rates), w.joined(", join to work in the round"))
}

// joined is how a row ends that begins a round.
func (w *printer) joined(words string) string {
	if w.round {
		return words
	}
	return ""
}

// pickRate is how many stitches are picked up in how many rows.
func pickRate(rates []schematic.Rate) string {
	var all []string
	for _, r := range rates {
		if r.Of > 1 {
			all = append(all, fmt.Sprintf("%d in every %d %srows", r.Pick, r.Of, r.Rows))
		} else {
			all = append(all, fmt.Sprintf("%d in each %srow", max(r.Pick, 1), r.Rows))
		}
	}
	return " at the rate of " + strings.Join(all, " and ")
}

// addEdge adds stitches at one edge or at both.
func (w *printer) addEdge(s schematic.Shaping, c change) {
	w.base()
	d := c.after.minus(c.before)
	if !d.above(0) {
		return
	}
	n, where, halves := d, w.edge(s.At, s.Edge), true
	if s.At == schematic.BothEdges {
		for i := range n {
			halves = halves && d[i]%2 == 0 || d[i] < 0
		}
		n = d.with(d, func(a, _ int) int { return a / 2 })
	}
	if halves && c.after.least(1) {
		w.say("Add %s %s. (%s)", w.some(n)+" "+word("st", n), where, w.sts(c.after))
	} else {
		w.say("Inc %s evenly over 0 %ss. (%s)", w.some(d)+" "+word("st", d), w.row(), w.sts(c.after))
	}
	w.worked(w.same(0), c.after)
}
