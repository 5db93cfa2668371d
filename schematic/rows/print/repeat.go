package print

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/finding"
)

// rowOf writes the stitches of one row, on the side that is worked.
type rowOf struct {
	w    *printer
	purl bool // a row of stockinette on the wrong side
}

func (r rowOf) knit() string {
	if r.purl {
		return "p"
	}
	return "k"
}

// plain is so many stitches worked plain.
func (r rowOf) plain(n nums) string {
	if r.w.fab.st == nil {
		return r.knit() + r.w.line(n)
	}
	st := r.w.abbr() + r.w.fab.loop
	if k, same := n.all(); same && k == 1 {
		return st + " in next st"
	}
	return fmt.Sprintf("%s in next %s sts", st, r.w.line(n))
}

// more makes two of one stitch, fewer one of two.
func (r rowOf) more() string {
	if r.w.fab.st == nil {
		return r.knit() + "fb"
	}
	return fmt.Sprintf("2 %s in next st", r.w.abbr())
}

func (r rowOf) fewer() string {
	if r.w.fab.st == nil {
		return r.knit() + "2tog"
	}
	return r.w.abbr() + "2tog over next 2 sts"
}

// times is a run of stitches so many times; nothing if no size has it.
func (r rowOf) times(n nums, run ...string) string {
	run = slices.DeleteFunc(run, func(s string) bool { return s == "" })
	switch k, same := n.all(); {
	case same && k == 0:
		return ""
	case same && k == 1:
		return strings.Join(run, ", ")
	}
	return fmt.Sprintf("[%s] %s times", strings.Join(run, ", "), r.w.line(n))
}

// say prints the row with its number, and counts it.
func (r rowOf) say(after nums, run ...string) {
	w := r.w
	run = slices.DeleteFunc(run, func(s string) bool { return s == "" })
	one := w.same(1)
	text := w.chains() + strings.Join(run, ", ")
	if w.fab.st == nil {
		text = finding.Capital(text)
	}
	w.say("%s: %s%s. (%s)", w.label(one), text, w.endOf(), w.ofStitch(after))
	w.worked(one, after)
	if w.fab.st == nil { // a row in words of its own
		w.said = fabric{}
	}
}

// repeatRow prints a row that changes the count by a repeat: increases of one or
// decreases of two together, if they make it.
func (w *printer) repeatRow(of schematic.Section, c change) {
	w.base()
	s := of.Traits()
	rest, ok := w.left(s, c)
	r := rowOf{w, w.wrong(of, 1) && w.fab.knit == "stockinette stitch"}
	var run []string
	d := s.Makes - s.Use
	if plain := s.Use - max(d, -2*d); plain > 0 {
		run = append(run, r.plain(w.same(plain)))
	} else if plain < 0 {
		ok = false
	}
	switch {
	case d > 1 && w.fab.st != nil:
		run = append(run, fmt.Sprintf("2 %s in each of next %d sts", w.abbr(), d))
	case d > 0:
		run = append(run, slices.Repeat([]string{r.more()}, d)...)
	case d < 0:
		run = append(run, slices.Repeat([]string{r.fewer()}, -d)...)
	}
	if !ok || d == 0 {
		w.sum(c, "on next "+w.row())
		return
	}
	to, tail := "to end", ""
	if rest.above(0) {
		to = "to last " + w.sts(rest)
		if tail = r.knit() + w.line(rest); w.fab.st != nil {
			tail = fmt.Sprintf("%s in last %s", w.abbr()+w.fab.loop, w.sts(rest))
		}
	}
	r.say(c.after, fmt.Sprintf("*%s; rep from * %s", strings.Join(run, ", "), to), tail)
}

// left is what a repeat leaves of every size's row; false if the row is not the repeat
// and what is left, worked even, or if only some sizes have anything left.
func (w *printer) left(s schematic.Traits, c change) (nums, bool) {
	rest, ok := c.before.like(), true
	for i, n := range c.before {
		if n >= 0 {
			rest[i] = n % s.Use
			ok = ok && c.rows[i] == 1 && n >= s.Use && c.after[i] == n/s.Use*s.Makes+rest[i] && (rest[i] == 0 || s.RestEven)
		}
	}
	return rest, ok && (!rest.above(0) || rest.least(1))
}

// spelledOut prints shaping that falls evenly across the row stitch by stitch, if that was
// asked for, and if all sizes do it on the same rows.
func (w *printer) spelledOut(s schematic.Section, of []schematic.Shaping, c change) bool {
	on, ok := w.spellable(of, c)
	if !ok {
		return false
	}
	sh := &of[0]
	by := w.clean(w.at(sh.By))
	counts := []nums{c.before}
	for range on {
		counts = append(counts, counts[len(counts)-1].with(by, func(n, k int) int { return n + sign(sh)*k }))
	}
	rows := make([][]string, len(on))
	for i, at := range on {
		if rows[i], ok = w.spread(sh.Increase, counts[i], by, w.wrong(s, at)); !ok {
			return false
		}
	}
	before := 1
	for i, at := range on {
		w.even(w.same(at-before), counts[i])
		rowOf{w: w}.say(counts[i+1], rows[i]...)
		before = at + 1
	}
	total, _ := c.rows.all()
	w.even(w.same(total-before+1), c.after)
	return true
}

// spellable lists the rows, from 1, on which the one even shaping of a section falls in all
// sizes; false if it can't be told stitch by stitch.
func (w *printer) spellable(of []schematic.Shaping, c change) ([]int, bool) {
	f := w.fab
	known := f.st != nil && !f.raised || f.knit == "stockinette stitch" || f.knit == "garter stitch"
	if _, same := c.rows.all(); !w.o.Evenly || len(of) != 1 || of[0].At != schematic.Across || !known || !same {
		return nil, false
	}
	sh := &of[0]
	var on []int
	row := sh.Offset + 1
	for k, run := range spacings(sh) {
		times, same := w.timesOf(run, k).all()
		every, alike := w.at(run.Every).with(c.after, func(e, _ int) int { return max(e, 1) }).all()
		if run.Every.IsZero() {
			every, alike = 1, true
		}
		if !same || !alike && times > 0 {
			return nil, false
		}
		for range times {
			on = append(on, row)
			row += every
		}
	}
	return on, len(on) > 0
}

// wrong reports whether the row of a section, from 1, is worked on the wrong side in any
// size.
func (w *printer) wrong(s schematic.Section, row int) bool {
	return !w.round && w.ofSteps(s, func(st *schematic.Step) int {
		if st.FirstRS == (row%2 == 1) {
			return 0
		}
		return 1
	}).above(0)
}

// spread is a row of so many stitches that is changed at n places, as evenly as can be:
// half a gap at either end of a row, a gap before each of a round. It reports false if
// the sizes do not have the same runs.
func (w *printer) spread(increase bool, count, n nums, wrong bool) ([]string, bool) {
	r := rowOf{w, wrong && w.fab.knit == "stockinette stitch"}
	shaped, uses := r.fewer(), 2
	if increase {
		shaped, uses = r.more(), 1
	}
	if !n.least(1) || n.with(n, func(k, _ int) int { return uses * k }).more(count).above(0) {
		return nil, false // more places than there are stitches
	}
	plain := count.with(n, func(m, k int) int { return m - uses*k })
	gap := plain.with(n, func(p, k int) int { return p / k })
	wide := plain.with(n, func(p, k int) int { return p % k })
	narrow := n.minus(wide)
	lead, tail := gap.like(), gap.like()
	if !w.round {
		lead, tail = gap.with(gap, func(g, _ int) int { return g - g/2 }), gap.with(gap, func(g, _ int) int { return g / 2 })
		narrow = narrow.with(narrow, func(k, _ int) int { return k - 1 })
	}
	ok := true
	run := func(v nums) string {
		switch {
		case !v.above(0):
			return ""
		case !v.least(1):
			ok = false
		}
		return r.plain(v)
	}
	for _, v := range []nums{wide, narrow} {
		ok = ok && (!v.above(0) || v.least(1))
	}
	wider := run(gap.with(gap, func(g, _ int) int { return g + 1 }))
	var out []string
	switch {
	case !w.round:
		out = []string{run(lead), r.times(wide, shaped, wider), r.times(narrow, shaped, run(gap)), shaped, run(tail)}
	case !wide.above(0):
		out = []string{fmt.Sprintf("*%s; rep from * to end", r.times(w.same(1), run(gap), shaped))}
	default:
		out = []string{r.times(wide, wider, shaped), r.times(narrow, run(gap), shaped)}
	}
	return slices.DeleteFunc(out, func(s string) bool { return s == "" }), ok
}
