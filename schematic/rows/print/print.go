// Package print writes the rows of a pattern in the words that package rows reads back.
package print

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/finding"
	"flatwright/schematic/stitch"
)

// Options say how a pattern's rows are printed. Size is the index of one size, or -1
// for all in the trade's line. Evenly spells out where each stitch of an even change
// falls, where all sizes that are printed can be told so.
type Options struct {
	Terms  stitch.Terms
	Size   int
	Evenly bool
}

// Rows writes the rows of every piece of a pattern, section by section, from its
// worked sizes (gs, one a size, in the order of p.Sizes), and how the pieces are made
// up. Turning chains of crochet do not count, and the text says so. What it writes,
// package rows reads back with no finding.
func Rows(p *schematic.Pattern, gs []*schematic.Garment, o Options) string {
	w := newPrinter(p, gs, o)
	w.say("# %s\n\nTerms: %s", plain(p.Title), o.Terms)
	if w.o.Size < 0 {
		w.say("Sizes: %s", p.Sizes.Full(p.Sizes.Names))
	}
	if slices.ContainsFunc(p.Gauges, func(g schematic.Gauge) bool { return g.Crochet(p.Terms) }) {
		w.say("Notes: The turning chain does not count as a stitch.")
	}
	for _, q := range p.Pieces {
		w.piece(q)
	}
	for i, line := range w.makingUp() {
		if i == 0 {
			w.say("\n# Making up")
		}
		w.say("%s", line)
	}
	return w.b.String()
}

func newPrinter(p *schematic.Pattern, gs []*schematic.Garment, o Options) *printer {
	w := &printer{p: p, gs: gs, o: o, from: stitch.Terms(p.Terms)}
	if o.Size >= 0 && o.Size < len(gs) {
		w.gs = gs[o.Size : o.Size+1]
	} else {
		w.o.Size = -1
	}
	return w
}

// printer writes one piece after the other.
type printer struct {
	p    *schematic.Pattern
	gs   []*schematic.Garment
	o    Options
	from stitch.Terms
	b    strings.Builder

	made  []*schematic.Made // of the piece, one a size; nil where there is none
	steps []map[stepKey]*schematic.Step
	work
	flip bool // the part is the mirror of what its sections say
}

// work is what a maker has in her hands.
type work struct {
	part  string // the part in work
	round bool
	fab   fabric // in work
	said  fabric // named last
	no    []int  // rows that a reader of the text has counted, one a size
	count nums   // stitches now
	found *foundation
}

type stepKey struct {
	s    schematic.Section
	part string
}

// anyPart is the part under which a step is found whatever its part.
const anyPart = "\x00"

func (w *printer) say(format string, a ...any) { fmt.Fprintf(&w.b, format+"\n", a...) }

// take finds what was made of a piece, and its steps.
func (w *printer) take(q *schematic.Piece) {
	w.made = make([]*schematic.Made, len(w.gs))
	w.steps = make([]map[stepKey]*schematic.Step, len(w.gs))
	for i, g := range w.gs {
		w.steps[i] = map[stepKey]*schematic.Step{}
		for _, m := range g.Pieces {
			if m.Piece != q {
				continue
			}
			w.made[i] = m
			for k := range m.Steps {
				s := &m.Steps[k]
				w.steps[i][stepKey{s.Section, s.Part}] = s
				if key := (stepKey{s.Section, anyPart}); w.steps[i][key] == nil {
					w.steps[i][key] = s
				}
			}
		}
	}
}

func (w *printer) piece(q *schematic.Piece) {
	w.take(q)
	head, times := plain(q.Name), ""
	if m := w.each(func(i int) int { return w.made[i].Make }); m.least(2) && !m.empty() {
		times = " (make " + w.line(m) + ")"
	}
	w.say("\n# %s%s", head, times)
	switch {
	case q.MirrorOf != "":
		w.say("Work as for %s, reversing shaping.", finding.Capital(letters(q.MirrorOf)))
		return
	case q.Motifs != nil:
		w.motifs(q.Motifs)
		return
	}
	w.work = work{round: q.Round, no: make([]int, len(w.gs)), count: make(nums, len(w.gs)), fab: w.fabricOf(q.Gauge, "")}
	if len(q.Onto) > 0 {
		w.onto(q)
	}
	w.sections(q.Sections, "", head)
}

// step is the record of a section in the i-th size that is printed; nil if it has none.
func (w *printer) step(i int, s schematic.Section) *schematic.Step {
	if w.made[i] == nil {
		return nil
	}
	if st := w.steps[i][stepKey{s, w.part}]; st != nil {
		return st
	}
	if w.part == "" {
		return w.steps[i][stepKey{s, anyPart}]
	}
	return nil
}

// ofSteps is f of every size's record of a section.
func (w *printer) ofSteps(s schematic.Section, f func(*schematic.Step) int) nums {
	return w.each(func(i int) int {
		if st := w.step(i, s); st != nil {
			return f(st)
		}
		return none
	})
}

// change is how many rows a section takes, and the stitches before and after it.
type change struct{ rows, before, after nums }

func (w *printer) changeOf(s schematic.Section) change {
	return change{
		w.ofSteps(s, func(s *schematic.Step) int { return s.Rows }),
		w.ofSteps(s, func(s *schematic.Step) int { return s.Before }),
		w.ofSteps(s, func(s *schematic.Step) int { return s.After }),
	}
}

// sections prints a list of sections of the part.
func (w *printer) sections(list []schematic.Section, part, head string) {
	for i, s := range list {
		w.part = part
		if c := s.Base(); c.Gauge != "" || c.Stitch != "" {
			w.fab = w.fabricOf(c.Gauge, c.Stitch)
		}
		if parts := s.Traits().Parts; parts != nil {
			joined := i+1 < len(list)
			if w.divide(parts, head, joined); joined {
				w.say("\n# %s, %s", head, further(list[i+1]))
			}
			continue
		}
		if c := w.changeOf(s); !c.after.empty() {
			w.section(s, c)
		}
	}
}

// further is how the work is called that goes on after a division.
func further(s schematic.Section) string {
	if t := s.Traits(); t.Joins != nil && t.As != "" {
		return plain(t.As)
	}
	return "further"
}

// section prints one section.
func (w *printer) section(s schematic.Section, c change) {
	switch t := s.Traits(); {
	case t.Ring:
		w.ring(c.after)
	case t.From != nil:
		w.held(s, t.From, c.after)
	case !t.Band.IsZero():
		w.sideways(t)
	case t.Starts:
		w.castOn(t.Chain, c.after)
	case t.Rates != nil:
		w.pickUp(t.Rates, c.after)
	case t.Plain || t.Ribbed:
		w.even(c.rows, c.after)
	case t.Use > 0:
		w.repeatRow(s, c)
	case t.Takes:
		w.bindOff(t, c)
	case t.Adds:
		w.addEdge(t.Shapings[0], c)
	case t.Shapings != nil:
		w.shape(s, t.Shapings, c)
	case t.Joins != nil || t.Closes:
		w.joinParts(s, c)
	case t.Short != nil:
		w.shortRows(t.Short, c)
	case t.Marks != nil:
		w.mark(t.Marks)
	case t.All:
		w.gather()
	case t.Panels != nil:
		w.panels(t.Panels, c)
	default:
		w.sum(c, "over "+w.rowsOf(c.rows))
	}
}

// start begins with so many stitches, and counts rows anew.
func (w *printer) start(n nums) {
	w.no, w.count = make([]int, len(w.gs)), slices.Clone(n)
	w.found, w.said = nil, fabric{}
}

// worked counts rows and stitches on.
func (w *printer) worked(rows, after nums) {
	for i := range w.no {
		w.no[i] += max(rows[i], 0)
		if after[i] >= 0 {
			w.count[i] = after[i]
		}
	}
	if rows.above(0) {
		w.said = w.fab
	}
}

// together reports whether all sizes have worked as many rows, so that the next row
// has one number.
func (w *printer) together() bool {
	first := none
	for i, n := range w.no {
		switch {
		case w.made[i] == nil || w.count[i] < 0:
		case first == none:
			first = n
		case n != first:
			return false
		}
	}
	return true
}

// label is 'Row 3' or 'Rows 3-8' for the next rows.
func (w *printer) label(rows nums) string {
	from, to, one := rows.like(), rows.like(), true
	for i, n := range rows {
		if n >= 0 {
			from[i], to[i] = w.no[i]+1, w.no[i]+n
			one = one && n == 1
		}
	}
	switch {
	case one && !w.together():
		return "Next " + w.row()
	case one:
		return finding.Capital(w.row()) + " " + w.line(from)
	}
	return finding.Capital(w.row()) + "s " + w.line(from) + "-" + w.line(to)
}

// row is what the piece calls a row.
func (w *printer) row() string {
	if w.round {
		return "rnd"
	}
	return "row"
}

// rowsOf is so many rows or rounds.
func (w *printer) rowsOf(v nums) string { return w.some(v) + " " + word(w.row(), v) }

// sts is so many stitches, in the words of a count.
func (w *printer) sts(v nums) string { return w.line(v) + " " + word("st", v) }

// ofStitch is the count behind a row, in the stitch in work.
func (w *printer) ofStitch(v nums) string {
	if w.fab.st == nil {
		return w.sts(v)
	}
	return w.line(v) + " " + w.abbr()
}

func (w *printer) abbr() string { return w.fab.st.Abbr(w.o.Terms) }
