package rows

import (
	"fmt"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/expr"
)

// shape prints the shapings of a section, at the same time if there are several.
func (w *printer) shape(s *schematic.Shape, rows, before, after nums) {
	w.base()
	if len(s.Shapings) > 0 && w.shapings(s, rows, before, after) {
		return
	}
	w.change("over "+w.some(rows)+" "+w.rowWord(rows), rows, before, after)
}

// shapings prints each shaping with its spacing: dec 1 st at each end every 4 rows
// 6 times, then every 2 rows 3 times. It reports false, and prints nothing, if they
// do not make up the change of the count (a size that runs out of stitches or rows).
func (w *printer) shapings(s *schematic.Shape, rows, before, after nums) bool {
	rest := minus(after, before)
	for k := range s.Shapings {
		sh := &s.Shapings[k]
		by, times, places := w.at(sh.By), w.times(sh), w.places(s, k)
		for i := range rest {
			if after[i] >= 0 {
				rest[i] -= sign(sh) * max(by[i], 0) * places[i] * times[i]
			}
		}
	}
	for i := range rest {
		if after[i] >= 0 && rest[i] != 0 {
			return false
		}
	}
	if !anyAbove(minus(after, before), 0) && !anyAbove(minus(before, after), 0) {
		w.even(rows, after)
		return true
	}
	var parts []string
	for k := range s.Shapings {
		sh := &s.Shapings[k]
		runs := w.runs(sh)
		if len(runs) == 0 {
			continue // no size has this one
		}
		by, where := w.where(sh, w.clean(w.at(sh.By)), w.places(s, k))
		text := fmt.Sprintf("%s %s %s %s", verb(sh), w.line(by), word("st", by), where)
		if sh.Offset > 0 {
			text += fmt.Sprintf(" after %d rows", sh.Offset)
		}
		text += " " + strings.Join(runs, ", then ") + ", over " + w.some(rows) + " " + w.rowWord(rows)
		if len(parts) == 0 {
			text += w.changed()
		}
		parts = append(parts, text)
	}
	text := strings.Join(parts, ", and at the same time ")
	w.say("%s. (%s sts)", title(text), w.line(after))
	w.worked(rows, after)
	return true
}

// where is how many stitches a shaping makes at a place, and at which: at the edges, on
// both sides of the marked lines, at the ends of a panel; or all of them, evenly.
func (w *printer) where(sh *schematic.Shaping, by, places nums) (nums, string) {
	if sh.At != schematic.Lines && sh.At != schematic.Across {
		return by, w.edge(sh.At, sh.Edge)
	}
	if p := inAll(places); sh.At == schematic.Lines && p > 0 {
		switch name := part(sh.Panel); {
		case sh.Panel == "" && p%2 == 0:
			return by, fmt.Sprintf("on each side of %d %s", p/2, word("marker", nums{p / 2}))
		case sh.Panel == "" || name == "" || sized(name):
		case p == 2:
			return by, "at each end of " + name
		case p == 1:
			return by, "at the marked edge of " + name
		}
	}
	return w.each(func(i int) int { return by[i] * max(places[i], 0) }), "evenly"
}

// inAll is the number that all sizes have that have one; 0 if they differ.
func inAll(v nums) int {
	first := 0
	for _, n := range v {
		switch {
		case n < 0:
		case first == 0:
			first = n
		case n != first:
			return 0
		}
	}
	return first
}

// places is on how many edges a shaping falls.
func (w *printer) places(s *schematic.Shape, k int) nums {
	return w.each(func(i int) int {
		if st := w.step(i, s, w.part); st != nil && k < len(st.Places) {
			return st.Places[k]
		}
		return -1
	})
}

func verb(sh *schematic.Shaping) string {
	if sh.Increase {
		return "inc"
	}
	return "dec"
}

func word(one string, v nums) string {
	if anyAbove(v, 1) || !anyAbove(v, 0) {
		return one + "s"
	}
	return one
}

// rowWord is rows, or rounds as the piece is worked.
func (w *printer) rowWord(v nums) string {
	if w.round {
		return word("rnd", v)
	}
	return word("row", v)
}

func sign(sh *schematic.Shaping) int {
	if sh.Increase {
		return 1
	}
	return -1
}

// times is how often a shaping is done in all.
func (w *printer) times(sh *schematic.Shaping) nums {
	t := w.clean(w.at(sh.Times))
	if sh.Times.IsZero() {
		t = w.each(func(int) int { return 1 })
	}
	for _, then := range sh.Then {
		for i, n := range w.clean(w.at(then.Times)) {
			if t[i] >= 0 {
				t[i] += n
			}
		}
	}
	return t
}

// runs are the spacings of a shaping that a size printed has, one after the other.
func (w *printer) runs(sh *schematic.Shaping) []string {
	var all []string
	add := func(every, times expr.Graded, first bool) {
		if s := w.spacing(every, times, first); s != "" {
			all = append(all, s)
		}
	}
	add(sh.Every, sh.Times, true)
	for _, t := range sh.Then {
		add(t.Every, t.Times, false)
	}
	return all
}

// spacing is how often a run of a shaping is done, with a dash for the sizes that skip it
// (the trade's way); nothing if all of them do.
func (w *printer) spacing(every, times expr.Graded, first bool) string {
	e, t := w.at(every), w.clean(w.at(times))
	if times.IsZero() {
		t = w.each(func(int) int {
			if first {
				return 1
			}
			return 0
		})
	}
	for i := range e {
		if t[i] <= 0 {
			e[i] = 0
		} else {
			e[i] = max(e[i], 1)
		}
	}
	switch {
	case !anyAbove(t, 0):
		return ""
	case !anyAbove(e, 1):
		return "every row " + w.some(t) + " " + word("time", t)
	}
	return "every " + w.some(e) + " " + w.rowWord(e) + " " + w.some(t) + " " + word("time", t)
}

// change prints a change of the count by its sum.
func (w *printer) change(when string, rows, before, after nums) {
	more, fewer := minus(after, before), minus(before, after)
	for i := range more {
		more[i], fewer[i] = clip(more[i], after[i]), clip(fewer[i], after[i])
	}
	up, down := anyAbove(more, 0), anyAbove(fewer, 0)
	in := w.changed()
	switch {
	case up && down:
		w.say("Inc %s sts evenly %s%s, and at the same time dec %s sts evenly %s. (%s sts)", w.some(more), when, in, w.some(fewer), when, w.line(after))
	case up:
		w.say("Inc %s sts evenly %s%s. (%s sts)", w.some(more), when, in, w.line(after))
	case down:
		w.say("Dec %s sts evenly %s%s. (%s sts)", w.some(fewer), when, in, w.line(after))
	default:
		w.even(rows, after)
		return
	}
	w.worked(rows, after)
}

func clip(n, has int) int {
	if has < 0 {
		return -1
	}
	return max(n, 0)
}
