package work

import (
	ins "flatwright/schematic/rows/instructions"
)

// used is how many stitches of the row below are used.
func (w *work) used() int { return w.from.stitches() - w.cur.left }

// marker places a marker, or meets one of the row below.
func (w *work) marker(n *ins.Marker) {
	w.takeTurning()
	if !n.New && w.marks < len(w.from.marks) {
		w.marks++
	}
	w.out.marks = append(w.out.marks, w.out.stitches())
}

// nextMark is where the next marker of the row below stands, so many stitches from its beginning, that is not
// nearer than before; -1 if none is known. One that is passed without a word stays where it is.
func (w *work) nextMark(before int) int {
	for ; w.marks < len(w.from.marks); w.marks++ {
		if m := w.from.marks[w.marks]; m-before >= w.used() {
			return m
		}
		w.out.marks = append(w.out.marks, w.out.stitches())
	}
	return -1
}

// passUpToLast keeps the markers before the last one of the row below, up to which all is worked alike.
func (w *work) passUpToLast() {
	for ; w.marks < len(w.from.marks)-1; w.marks++ {
		if ahead := w.from.marks[w.marks] - w.used(); ahead >= 0 {
			w.out.marks = append(w.out.marks, w.out.stitches()+ahead)
		}
	}
}

// passMarks keeps the markers that a row says nothing of, where as many stitches are made behind the last that it met as
// are used.
func (w *work) passMarks() {
	used, made := 0, 0
	if w.marks = max(w.marks, len(w.out.marks)); w.marks > 0 && w.marks <= len(w.from.marks) && len(w.out.marks) > 0 {
		used, made = w.from.marks[w.marks-1], w.out.marks[len(w.out.marks)-1]
	}
	if w.marks >= len(w.from.marks) || w.out.stitches()-made != w.from.stitches()-used || len(w.out.marks) > w.marks {
		return
	}
	for _, m := range w.from.marks[w.marks:] {
		w.out.marks = append(w.out.marks, m-used+made)
	}
}

// beyondTurn is what a short row has not come to, with its markers.
func (w *work) beyondTurn() *fabric {
	f := rest(&w.cur)
	for _, m := range w.from.marks {
		if m >= w.used() {
			f.marks = append(f.marks, m-w.used())
		}
	}
	return f
}

// behindSpaces is how many stitches stand behind the spaces or groups up to which is worked, the last so many of the row; below 0 if an extent
// names none, or the row has not as many.
func (w *work) behindSpaces(e ins.Extent) int {
	var left []int
	switch {
	case e.Unit.Group != nil || e.Unit.Stretch:
		_, left = w.groups(e.Unit.Group)
	case e.Unit.Space:
		left = w.spaces(e)
	}
	k := len(left) - w.count(e.N)
	if k < 0 || len(left) == 0 {
		return -1
	}
	return left[k]
}

// groups are where the groups of that name begin that are still to come, and how many stitches are left there.
func (w *work) groups(g *ins.Group) (at, left []int) {
	id := 0
	for c := w.cur; c.i < len(c.f.runs); {
		r := c.run()
		if r.group > 0 && r.group != id && c.off == 0 && stands(r.of, g) {
			at, left = append(at, c.pos), append(left, c.left)
		}
		if id = r.group; r.space() {
			c.step(r.chain - c.off)
		} else {
			c.step(r.n - c.off)
		}
	}
	return at, left
}

// spaces are how many stitches are left at each chain space to come.
func (w *work) spaces(e ins.Extent) []int {
	var left []int
	for c := w.cur; c.i < len(c.f.runs); c.i, c.off = c.i+1, 0 {
		switch r := c.run(); {
		case !r.space():
			c.left -= r.n - c.off
		case c.f.sized(c.i, w.spaceSize(e.Unit)) && c.off == 0:
			left = append(left, c.left)
		}
	}
	return left
}

// toUnit is how many stitches are left from the next place of that kind on; -1 if there is none.
func (w *work) toUnit(u ins.Unit) int {
	c := w.cur
	for c.i < len(c.f.runs) {
		r := c.run()
		switch {
		case u.Space && r.space() && (w.spaceSize(u) <= 0 || w.spaceSize(u) == r.chain), u.Group != nil && r.of == u.Group, u.Word == "corner" && r.space(),
			u.Stitch != nil && !r.space() && r.kind == u.Stitch, u.Chain && r.space():
			return c.left
		}
		if r.space() {
			c.i, c.off = c.i+1, 0
			continue
		}
		c.left -= r.n - c.off
		c.i, c.off = c.i+1, 0
	}
	return -1
}
