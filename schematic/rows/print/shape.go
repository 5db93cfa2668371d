package print

import (
	"fmt"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
)

// shape prints the shapings of a section, at the same time if there are several.
func (w *printer) shape(s schematic.Section, of []schematic.Shaping, c change) {
	w.base()
	switch {
	case !w.addsUp(s, of, c):
		w.sum(c, "over "+w.rowsOf(c.rows))
	case !c.after.more(c.before).above(0) && !c.before.more(c.after).above(0):
		w.even(c.rows, c.after)
	case !w.spelledOut(s, of, c):
		w.shapings(s, of, c)
	}
}

// addsUp reports whether the shapings make up the change of the count; a size may run
// out of stitches or rows.
func (w *printer) addsUp(s schematic.Section, of []schematic.Shaping, c change) bool {
	rest := c.after.minus(c.before)
	for k := range of {
		sh := &of[k]
		by, times, places := w.at(sh.By), w.times(sh), w.places(s, sh, k)
		for i := range rest {
			if c.after[i] >= 0 {
				rest[i] -= sign(sh) * max(by[i], 0) * places[i] * times[i]
			}
		}
	}
	for i, n := range rest {
		if c.after[i] >= 0 && n != 0 {
			return false
		}
	}
	return true
}

// shapings prints each shaping with its spacing: dec 1 st at each end every 4 rows
// 6 times, then every 2 rows 3 times.
func (w *printer) shapings(s schematic.Section, of []schematic.Shaping, c change) {
	var parts []string
	for k := range of {
		sh := &of[k]
		runs := w.runs(sh)
		if len(runs) == 0 {
			continue // no size has this one
		}
		if len(runs) == 1 && runs[0] == "every "+w.row()+" once" {
			runs[0] = "once"
		}
		by, where := w.where(sh, w.clean(w.at(sh.By)), w.places(s, sh, k))
		text := fmt.Sprintf("%s %s %s%s", verb(sh), w.sts(by), where, w.side(sh, where))
		if sh.Offset > 0 {
			text += fmt.Sprintf(" after %d %s", sh.Offset, word(w.row(), nums{sh.Offset}))
		}
		if n, same := c.rows.all(); same && n == 1 && len(runs) == 1 && sh.Offset == 0 {
			text += " on next " + w.row()
		} else {
			text += " " + strings.Join(runs, ", then ") + ", over " + w.rowsOf(c.rows)
		}
		if len(parts) == 0 {
			text += w.changed()
		}
		parts = append(parts, text)
	}
	w.say("%s. (%s)", finding.Capital(strings.Join(parts, ", and at the same time ")), w.sts(c.after))
	w.worked(c.rows, c.after)
}

// side says on which side of the work a shaping falls, if the pattern does.
func (w *printer) side(sh *schematic.Shaping, where string) string {
	if sh.On == schematic.AnyRow || w.round || where == evenly {
		return ""
	}
	if sh.On == schematic.RightSide {
		return " of right-side rows"
	}
	return " of wrong-side rows"
}

const evenly = "evenly"

// where is how many stitches a shaping makes at a place, and at which: at the edges, on
// both sides of the marked lines, at the ends of a panel or across it; or all of them, evenly.
func (w *printer) where(sh *schematic.Shaping, by, places nums) (nums, string) {
	if sh.At != schematic.Lines && sh.At != schematic.Across {
		return by, w.edge(sh.At, sh.Edge)
	}
	if p, ok := places.all(); sh.At == schematic.Lines && ok && p > 0 {
		switch of := name(sh.Panel); {
		case sh.Panel == "" && p%2 == 0:
			return by, fmt.Sprintf("on each side of %d %s", p/2, word("marker", nums{p / 2}))
		case !sayable(of):
		case p == 2:
			return by, "at each end of " + of
		case p == 1:
			return by, "at the marked edge of " + of
		}
	}
	by = by.with(places, func(a, b int) int { return a * b })
	if of := name(sh.Panel); sh.At == schematic.Across && sayable(of) {
		return by, evenly + " across " + of
	}
	return by, evenly
}

// edge is where a shaping falls: at each end, or at an edge by its name; the mirror
// of a part has left and right the other way round.
func (w *printer) edge(at schematic.Side, of string) string {
	side := "right"
	switch at {
	case schematic.BothEdges:
		return "at each end"
	case schematic.Middle:
		return "at the middle"
	case schematic.LeftEdge, schematic.RightEdge:
		if (at == schematic.LeftEdge) != w.flip {
			side = "left"
		}
	default:
		return evenly
	}
	of = strings.ToLower(strings.TrimSuffix(strings.TrimSpace(of), " edge"))
	if of == "" || of == side || of != letters(of) || strings.ContainsAny(of, " 0123456789") {
		return "at " + side + " edge"
	}
	return "at " + of + " edge (" + side + ")"
}

// places is on how many edges a shaping falls.
func (w *printer) places(s schematic.Section, sh *schematic.Shaping, k int) nums {
	if sh.At == schematic.Middle {
		return w.same(1)
	}
	return w.each(func(i int) int {
		if st := w.step(i, s); st != nil && k < len(st.Places) {
			return st.Places[k]
		}
		return none
	})
}

func verb(sh *schematic.Shaping) string {
	if sh.Increase {
		return "inc"
	}
	return "dec"
}

func sign(sh *schematic.Shaping) int {
	if sh.Increase {
		return 1
	}
	return -1
}

// spacings are a shaping's runs, the first one too.
func spacings(sh *schematic.Shaping) []schematic.Spacing {
	return append([]schematic.Spacing{{Every: sh.Every, Times: sh.Times}}, sh.Then...)
}

// timesOf is how often the k-th run of a shaping is done: the first, if nothing is said,
// once.
func (w *printer) timesOf(run schematic.Spacing, k int) nums {
	if k == 0 && run.Times.IsZero() {
		return w.same(1)
	}
	return w.clean(w.at(run.Times))
}

// times is how often a shaping is done in all.
func (w *printer) times(sh *schematic.Shaping) nums {
	t := w.same(0)
	for k, run := range spacings(sh) {
		t = t.with(w.timesOf(run, k), func(a, b int) int { return a + b })
	}
	return t
}

// runs are the spacings of a shaping that a size printed has, one after the other.
func (w *printer) runs(sh *schematic.Shaping) []string {
	var all []string
	for k, run := range spacings(sh) {
		if s := w.spacing(run.Every, w.timesOf(run, k)); s != "" {
			all = append(all, s)
		}
	}
	return all
}

// spacing is how often a run of a shaping is done, with a dash for the sizes that skip it
// (the trade's way); nothing if all of them do.
func (w *printer) spacing(every expr.Graded, times nums) string {
	e := w.at(every).like()
	for i, n := range w.at(every) {
		if times[i] >= 0 {
			e[i] = max(n, 1)
		}
		if times[i] == 0 {
			e[i] = 0
		}
	}
	often := w.some(times) + " " + word("time", times)
	if n, same := times.all(); same && n == 1 {
		often = "once"
	}
	switch {
	case !times.above(0):
		return ""
	case !e.above(1):
		return "every " + w.row() + " " + often
	}
	return "every " + w.rowsOf(e) + " " + often
}

// sum prints a change of the count by its sum.
func (w *printer) sum(c change, when string) {
	more, fewer := c.after.more(c.before), c.before.more(c.after)
	of := func(verb string, n nums, in string) string {
		return fmt.Sprintf("%s %s %s evenly %s%s", verb, w.some(n), word("st", n), when, in)
	}
	var text string
	switch up, down := more.above(0), fewer.above(0); {
	case up && down:
		text = of("Inc", more, w.changed()) + ", and at the same time " + of("dec", fewer, "")
	case up:
		text = of("Inc", more, w.changed())
	case down:
		text = of("Dec", fewer, w.changed())
	default:
		w.even(c.rows, c.after)
		return
	}
	w.say("%s. (%s)", text, w.sts(c.after))
	w.worked(c.rows, c.after)
}
