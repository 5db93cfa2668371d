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
	rest := minus(after, before) // what shapings at lines and across make
	spread := -1
	for k := range s.Shapings {
		sh := &s.Shapings[k]
		if sh.At == schematic.Lines || sh.At == schematic.Across {
			if spread >= 0 {
				return false
			}
			spread = k
			continue
		}
		by, times := w.at(sh.By), w.times(sh)
		for i := range rest {
			if after[i] >= 0 {
				rest[i] -= sign(sh) * max(by[i], 0) * places(sh) * times[i]
			}
		}
	}
	per := w.zero()
	for i := range rest {
		if after[i] < 0 {
			continue
		}
		if spread < 0 {
			if rest[i] != 0 {
				return false
			}
			continue
		}
		t := w.times(&s.Shapings[spread])[i]
		n := rest[i] * sign(&s.Shapings[spread])
		if t == 0 && n == 0 {
			continue
		}
		if t == 0 || n < 0 || n%t != 0 {
			return false
		}
		per[i] = n / t
	}
	if !anyAbove(minus(after, before), 0) && !anyAbove(minus(before, after), 0) {
		w.even(rows, after)
		return true
	}
	var parts []string
	for k := range s.Shapings {
		sh := &s.Shapings[k]
		by := w.clean(w.at(sh.By))
		where := w.edge(sh.At, sh.Edge)
		if sh.At == schematic.Lines || sh.At == schematic.Across {
			by = per
		}
		verb := "dec"
		if sh.Increase {
			verb = "inc"
		}
		text := fmt.Sprintf("%s %s %s %s", verb, w.line(by), word("st", by), where)
		if sh.Offset > 0 {
			text += fmt.Sprintf(" after %d rows", sh.Offset)
		}
		runs := w.runs(sh)
		if len(runs) == 0 {
			continue // no size has this one
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

func places(sh *schematic.Shaping) int {
	if sh.At == schematic.BothEdges {
		return 2
	}
	return 1
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
