package print

import (
	"fmt"

	"flatwright/schematic"
)

// bindOff prints stitches bound off, left or held.
func (w *printer) bindOff(t schematic.Traits, c change) {
	w.base()
	if !c.after.above(0) || t.All {
		w.offAll(t.Holds || t.Leaves)
		w.worked(w.same(0), c.after)
		return
	}
	s := t.Shapings[0]
	off := offOf{Shaping: s, c: c, n: w.at(s.By), gone: c.before.minus(c.after), times: w.at(s.Times), edges: 1}
	if s.At == schematic.BothEdges {
		off.edges = 2
	}
	switch {
	case !off.gone.above(0):
		w.even(c.rows, c.after)
		return
	case !t.Leaves && !t.Holds && off.eachRow():
		next := w.row()
		if per := off.per(); per.above(1) {
			next = w.line(per) + " " + word(w.row(), per)
		}
		do, _ := w.offWord()
		w.say("%s %s at beg of next %s%s. (%s)", do, w.sts(off.n), next, w.changed(), w.sts(c.after))
	case t.Leaves && off.atOnce():
		w.leave(off)
	case (s.At == schematic.BothEdges || s.At == schematic.LeftEdge || s.At == schematic.RightEdge) && off.whole():
		w.offAgain(off, t)
	default:
		w.sum(c, "over "+w.rowsOf(c.rows))
		return
	}
	w.worked(c.rows, c.after)
}

// leave prints stitches left at an edge, at both edges one after the other.
func (w *printer) leave(o offOf) {
	left := o.c.before
	for _, at := range edgesAt(o.At) {
		left = left.minus(o.n)
		w.say("Leave %s unworked %s. (%s)", w.sts(o.n), w.edge(at, o.Edge), w.sts(left))
	}
}

// edgesAt are the edges of a side that may be both.
func edgesAt(at schematic.Side) []schematic.Side {
	if at == schematic.BothEdges {
		return []schematic.Side{schematic.RightEdge, schematic.LeftEdge}
	}
	return []schematic.Side{at}
}

// offAll ends a piece or part: knitting is bound off, crochet fastened off.
func (w *printer) offAll(live bool) {
	switch do, _ := w.offWord(); {
	case live:
		w.say("Leave remaining sts on a holder.")
	case w.fab.st != nil:
		w.say("Fasten off.")
	default:
		w.say("%s all sts.", do)
	}
}

// gather draws the yarn through the stitches that are left.
func (w *printer) gather() {
	w.base()
	w.say("Cut the yarn and draw it through the remaining sts. Fasten off.")
}

// offOf is what a section takes off: n stitches at a time, gone in all.
type offOf struct {
	schematic.Shaping
	c              change
	n, gone, times nums
	edges          int
}

// per is how many times stitches are taken off, at both edges twice.
func (o offOf) per() nums {
	return o.gone.with(o.gone, func(int, int) int { return o.edges }).with(o.timesOr(), func(e, t int) int { return e * t })
}

func (o offOf) timesOr() nums {
	out := o.gone.like()
	for i := range out {
		if out[i] = 1; o.gone[i] >= 0 && !o.Times.IsZero() {
			out[i] = max(o.times[i], 1)
		}
	}
	return out
}

// every reports whether f holds for every size that there is: of the stitches taken off at
// a time, how often, the sum, and the rows.
func (o offOf) every(f func(n, per, gone, rows int) bool) bool {
	per := o.per()
	for i := range o.gone {
		if o.gone[i] >= 0 && !f(o.n[i], per[i], o.gone[i], o.c.rows[i]) {
			return false
		}
	}
	return true
}

// eachRow reports whether a row takes stitches off once, at its beginning.
func (o offOf) eachRow() bool {
	return o.every(func(n, per, gone, rows int) bool { return n > 0 && n*per == gone && per == rows })
}

// atOnce reports whether all is left at the edges before the next row.
func (o offOf) atOnce() bool {
	return o.every(func(n, per, gone, rows int) bool { return n > 0 && per == o.edges && n*per == gone && rows == 0 })
}

// whole reports whether the stitches taken off at a time add up to the sum.
func (o offOf) whole() bool {
	return o.every(func(n, per, gone, _ int) bool { return n > 0 && n*per == gone })
}

// offAgain prints stitches taken off at an edge, once or every so many rows.
func (w *printer) offAgain(o offOf, of schematic.Traits) {
	do, _ := w.offWord()
	text := fmt.Sprintf("%s %s", do, w.sts(o.n))
	switch {
	case of.Holds:
		text = fmt.Sprintf("Leave %s on a holder", w.sts(o.n))
	case of.Leaves:
		text = fmt.Sprintf("Leave %s unworked", w.sts(o.n))
	}
	text += " " + w.edge(o.At, o.Edge)
	if t := o.timesOr(); t.above(1) {
		text += " " + w.spacing(o.Every, t)
	}
	w.say("%s, over %s%s. (%s)", text, w.rowsOf(o.c.rows), w.changed(), w.sts(o.c.after))
}
