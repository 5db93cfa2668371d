package rows

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"flatwright/schematic"
	"flatwright/schematic/stitch"
)

// PrintOptions say how a pattern's rows are printed. Size is the index of one size,
// or -1 for all in the trade's line.
type PrintOptions struct {
	Terms stitch.Terms
	Size  int
}

// Print writes the rows of every piece of a pattern, section by section, from its
// worked sizes (gs, one a size, in the order of p.Sizes). Turning chains of crochet do not count,
// and the text says so. What it prints, Read and Check read back with no finding.
func Print(p *schematic.Pattern, gs []*schematic.Garment, o PrintOptions) string {
	w := &printer{p: p, gs: gs, o: o, from: stitch.Terms(p.Terms)}
	if o.Size >= 0 && o.Size < len(gs) {
		w.gs = gs[o.Size : o.Size+1]
	} else {
		w.o.Size = -1
	}
	fmt.Fprintf(&w.b, "# %s\n\nTerms: %s\n", plain(p.Title), o.Terms)
	if w.o.Size < 0 {
		fmt.Fprintf(&w.b, "Sizes: %s\n", p.Sizes.Full(p.Sizes.Names))
	}
	if slices.ContainsFunc(p.Gauges, func(g schematic.Gauge) bool { return g.Crochet(p.Terms) }) {
		w.b.WriteString("Notes: The turning chain does not count as a stitch.\n")
	}
	for _, q := range p.Pieces {
		w.piece(q)
	}
	return w.b.String()
}

// printer writes one piece after the other.
type printer struct {
	p     *schematic.Pattern
	gs    []*schematic.Garment
	o     PrintOptions
	from  stitch.Terms
	b     strings.Builder
	made  []*schematic.Made // of the piece, one a size; nil where there is none
	steps []map[stepKey]*schematic.Step
	round bool
	st    *stitch.Stitch // the stitch in work; nil for words alone
	knit  bool
	loop  string // of the stitch below that is worked: blo or flo, or both if empty
	cloth cloth  // the fabric in work, and the one that was named last
	said  cloth
	flip  bool   // the part is the mirror of what its sections say
	no    []int  // rows that a reader of the text has counted, one a size
	based bool   // a foundation chain waits for its first row
	count []int  // stitches now
	part  string // the part in work
}

type stepKey struct {
	s    schematic.Section
	part string
}

// nums is one number a size; -1 where a size has none.
type nums []int

func (w *printer) line(v nums) string {
	t := make([]string, len(v))
	for i, n := range v {
		if t[i] = fmt.Sprint(n); n < 0 {
			t[i] = "–"
		}
	}
	if w.o.Size >= 0 || len(t) == 1 {
		return t[0]
	}
	return w.p.Sizes.Line(t)
}

func plain(s string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(s, "#", " ")), " ")
}

func (w *printer) say(format string, a ...any) { fmt.Fprintf(&w.b, format+"\n", a...) }

// each is f for every size that has the piece.
func (w *printer) each(f func(i int) int) nums {
	out := make(nums, len(w.gs))
	for i := range out {
		if out[i] = -1; w.made[i] != nil {
			out[i] = f(i)
		}
	}
	return out
}

func (w *printer) piece(q *schematic.Piece) {
	w.made = make([]*schematic.Made, len(w.gs))
	w.steps = make([]map[stepKey]*schematic.Step, len(w.gs))
	for i, g := range w.gs {
		for _, m := range g.Pieces {
			if m.Piece == q {
				w.made[i] = m
			}
		}
		w.steps[i] = map[stepKey]*schematic.Step{}
		if w.made[i] != nil {
			for k := range w.made[i].Steps {
				s := &w.made[i].Steps[k]
				w.steps[i][stepKey{s.Section, s.Part}] = s
				if key := (stepKey{s.Section, "\x00"}); w.steps[i][key] == nil {
					w.steps[i][key] = s
				}
			}
		}
	}
	head := plain(q.Name)
	times := ""
	if m := w.each(func(i int) int { return w.made[i].Make }); bounded(m, 2) && !empty(m) {
		times = " (make " + w.line(m) + ")"
	}
	w.say("\n# %s%s", head, times)
	switch {
	case q.MirrorOf != "":
		w.say("Work as for %s, reversing shaping.", title(bare(q.MirrorOf)))
		return
	case q.Motifs != nil:
		w.say("Sew the motifs together, as the drawing shows.")
		return
	}
	w.round = q.Round
	w.no = make([]int, len(w.gs))
	w.count = make([]int, len(w.gs))
	w.based = false
	w.stitchOf(q.Gauge, "")
	if len(q.Onto) > 0 {
		w.onto(q)
	}
	w.sections(q.Sections, "", head)
}

// onto begins a band along the edges of other pieces.
func (w *printer) onto(q *schematic.Piece) {
	after := w.each(func(i int) int {
		if len(w.made[i].Steps) == 0 {
			return -1
		}
		return w.made[i].Steps[0].After
	})
	if len(q.Sections) > 0 {
		switch q.Sections[0].(type) {
		case *schematic.CastOn, *schematic.Ring, *schematic.Sideways, *schematic.Held:
			return
		}
	}
	w.start(after)
	if w.knit {
		w.say("Pick up and knit %s sts evenly %s.", w.line(after), along(q.Onto))
		return
	}
	one := w.each(func(int) int { return 1 })
	w.say("%s: Work %s %s evenly %s. (%s %s)", w.label(one), w.line(after), w.abbr(), along(q.Onto), w.line(after), w.unit())
	w.worked(one, after)
}

func (w *printer) start(n nums) {
	for i := range w.no {
		w.no[i] = 0
	}
	w.count = n
	w.based = false
	w.said = cloth{}
}

// stitchOf takes the stitch of a gauge or a section.
func (w *printer) stitchOf(gauge, own string) {
	text := own
	if text == "" {
		if g := w.p.GaugeNamed(gauge); g != nil {
			text = g.Stitch
		}
	}
	w.st, w.knit, w.loop, w.cloth = nil, true, "", cloth{}
	switch low := strings.ToLower(text); {
	case strings.Contains(low, "back loop"):
		w.loop = " blo"
	case strings.Contains(low, "front loop"):
		w.loop = " flo"
	}
	if s, ok := stitch.Worked(text, w.from); ok {
		w.st, w.knit, w.cloth = s, false, cloth{st: s}
	} else if c, ok := clothOf(text, w.from); ok {
		w.cloth = c
	}
}

func (w *printer) step(i int, s schematic.Section, part string) *schematic.Step {
	if w.made[i] == nil {
		return nil
	}
	if st := w.steps[i][stepKey{s, part}]; st != nil {
		return st
	}
	if part == "" {
		return w.steps[i][stepKey{s, "\x00"}]
	}
	return nil
}

// sections prints a list of sections of the part.
func (w *printer) sections(list []schematic.Section, part, head string) {
	for i, s := range list {
		w.part = part
		c := s.Base()
		if c.Gauge != "" || c.Stitch != "" {
			w.stitchOf(c.Gauge, c.Stitch)
		}
		get := func(f func(*schematic.Step) int) nums {
			return w.each(func(i int) int {
				if st := w.step(i, s, part); st != nil {
					return f(st)
				}
				return -1
			})
		}
		rows := get(func(s *schematic.Step) int { return s.Rows })
		before := get(func(s *schematic.Step) int { return s.Before })
		after := get(func(s *schematic.Step) int { return s.After })
		if d, ok := s.(*schematic.Divide); ok {
			w.divide(d, head)
			if i+1 < len(list) {
				w.say("\n# %s, further", head)
			}
			continue
		}
		if empty(after) {
			continue
		}
		w.section(s, rows, before, after)
	}
}

func empty(v nums) bool {
	for _, n := range v {
		if n >= 0 {
			return false
		}
	}
	return true
}

func minus(a, b nums) nums {
	out := make(nums, len(a))
	for i := range a {
		if out[i] = -1; a[i] >= 0 && b[i] >= 0 {
			out[i] = a[i] - b[i]
		}
	}
	return out
}

func (w *printer) abbr() string { return w.st.Abbr(w.o.Terms) }

// unit is the word behind a count.
func (w *printer) unit() string {
	if w.knit {
		return "sts"
	}
	return w.abbr()
}

// bounded reports whether every size that is there has at least k.
func bounded(v nums, k int) bool {
	for _, n := range v {
		if n >= 0 && n < k {
			return false
		}
	}
	return true
}

// worked counts rows and stitches on.
func (w *printer) worked(rows, after nums) {
	for i := range w.no {
		w.no[i] += max(rows[i], 0)
		if after[i] >= 0 {
			w.count[i] = after[i]
		}
	}
	if anyAbove(rows, 0) {
		w.said = w.cloth
	}
}

// stitchWords says in which stitch rows are worked even: in crochet always, in knitting
// where it changes.
func (w *printer) stitchWords() string {
	if w.knit {
		return w.changed()
	}
	return " in " + w.abbr()
}

// changed says in which stitch the next rows are worked, if the rows before them are
// worked in another one.
func (w *printer) changed() string {
	if w.cloth == w.said || w.cloth == (cloth{}) {
		return ""
	}
	return " in " + w.cloth.words(w.o.Terms)
}

// together reports whether all sizes have worked as many rows, so that the next row
// has one number.
func (w *printer) together() bool {
	first := -1
	for i, n := range w.no {
		if w.made[i] == nil || w.count[i] < 0 {
			continue
		}
		if first >= 0 && n != first {
			return false
		}
		first = n
	}
	return true
}

// label is 'Row 3' or 'Rows 3-8' for the next rows.
func (w *printer) label(rows nums) string {
	word := "Row"
	if w.round {
		word = "Rnd"
	}
	from, to := make(nums, len(rows)), make(nums, len(rows))
	one := true
	for i, n := range rows {
		from[i], to[i] = -1, -1
		if n >= 0 {
			from[i], to[i] = w.no[i]+1, w.no[i]+n
			one = one && n == 1
		}
	}
	if one && !w.together() {
		return "Next " + strings.ToLower(word)
	}
	if one {
		return word + " " + w.line(from)
	}
	return word + "s " + w.line(from) + "-" + w.line(to)
}

// base turns a foundation chain that still waits into a row, before rows that can't
// be worked into chains.
func (w *printer) base() {
	if !w.based {
		return
	}
	one := w.each(func(int) int { return 1 })
	w.first(one, w.count)
}

// first prints the first row over the foundation chain.
func (w *printer) first(one, after nums) {
	w.based = false
	if w.round {
		w.say("%s: %s in each ch around, join. (%s %s)", w.label(one), title(w.abbr()), w.line(after), w.unit())
	} else {
		w.say("%s: %s in %s ch from hook and in each ch across, turn. (%s %s)", w.label(one), title(w.abbr()), [...]string{"2nd", "2nd", "3rd", "4th", "5th", "6th"}[w.st.Turn], w.line(after), w.unit())
	}
	w.worked(one, after)
}

func title(s string) string { return capital(s) }

// even prints rows worked even.
func (w *printer) even(rows, after nums) {
	if empty(rows) || !anyAbove(rows, 0) {
		return
	}
	if w.based && bounded(rows, 1) {
		one := w.each(func(i int) int { return min(rows[i], 1) })
		w.first(one, after)
		rows = minus(rows, one)
		if !anyAbove(rows, 0) {
			return
		}
	}
	w.base()
	if w.knit || !bounded(rows, 1) || !bounded(after, 1) || !w.together() {
		w.say("Work %s %s even%s. (%s sts)", w.some(rows), w.rowWord(rows), w.stitchWords(), w.line(after))
		w.worked(rows, after)
		return
	}
	ch := fmt.Sprintf("Ch %d, ", w.st.Turn)
	if w.o.Terms == stitch.UK {
		ch = fmt.Sprintf("%d ch, ", w.st.Turn)
	}
	if w.round {
		w.say("%s: %s%s%s in each st around, join. (%s %s)", w.label(rows), ch, w.abbr(), w.loop, w.line(after), w.unit())
	} else {
		w.say("%s: %s%s%s in each st across, turn. (%s %s)", w.label(rows), ch, w.abbr(), w.loop, w.line(after), w.unit())
	}
	w.worked(rows, after)
}

func anyAbove(v nums, k int) bool {
	for _, n := range v {
		if n > k {
			return true
		}
	}
	return false
}

// bare is a name's letters and digits alone.
func bare(s string) string {
	return strings.Join(strings.FieldsFunc(s, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }), " ")
}
