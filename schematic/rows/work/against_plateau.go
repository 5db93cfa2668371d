package work

import (
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	ins "flatwright/schematic/rows/instructions"
	"flatwright/schematic/units"
)

// plateau is a count that a piece keeps for a while, in a text or by the sections of a pattern.
type plateau struct {
	count  int
	said   int  // the count that the text states there, where that is another; else -1
	rows   int  // worked since the plateau before
	gaps   int  // stretches of rows beside these, of which the text does not say how many there are
	skips  bool // something before it was not followed: counts may be missing
	doubt  bool // a line of it does not add up, which Check tells: its rows are not compared
	lead   int  // of a pattern: so many rows later than the rows end at most, the shaping behind them begins
	within      // where work begins
	fresh  bool // parts become one here
	anew   bool // rows are counted from here on
	begins bool // stitches that waited are taken up
	both   bool // two halves are worked at once
	at     ins.Span
	like   ins.Span // the place of it in another piece, if it is worked as that
	what   string

	lengths []measured // to which the text goes on
	top     units.Num  // of a pattern: how far its end is from the beginning of the piece, in mm
	tall    bool       // that is known
}

// within is how many rows fewer or more than the pattern a text may count: the row that begins the work is counted or not.
type within struct{ fewer, more int }

// or is what either allows.
func (a within) or(b within) within { return within{max(a.fewer, b.fewer), max(a.more, b.more)} }

// measured is a length to which the text goes on, and how many rows of the plateau follow it.
type measured struct {
	*ins.Lengths
	rows int
}

// join puts a plateau behind others: rows on the same count are one.
func join(list []plateau, p plateau) []plateau {
	k := len(list) - 1
	if k < 0 || list[k].count != p.count || p.fresh || p.begins || p.anew {
		return append(list, p)
	}
	q := &list[k]
	lengths := slices.Clone(q.lengths)
	for i := range lengths {
		lengths[i].rows += p.rows
	}
	q.lengths = append(lengths, p.lengths...)
	q.rows, q.gaps = q.rows+p.rows, q.gaps+p.gaps
	if p.skips {
		q.gaps++
	}
	if p.said >= 0 {
		q.said = p.said
	}
	if p.at.Line > 0 {
		q.at = p.at
	}
	if p.rows+p.gaps > 0 {
		q.like = p.like
	}
	q.within, q.doubt = q.or(p.within), q.doubt || p.doubt
	q.top, q.tall = p.top, p.tall
	return list
}

// heights are the plateaus of the parts of a piece by its sections, and the heights at which its rib ends and its armhole begins,
// in mm from its beginning; negative where it has none, or they are not known.
type heights struct {
	parts        []string // in their order
	of           map[string][]plateau
	starts       []int // with how many stitches the parts begin
	rib, armhole units.Num
	ribRows      int
	forks        map[string]int    // plateaus of the piece, or of a part of it, before its parts begin
	from         map[string]string // of which part each is divided
	joined       bool              // its parts are made one again
}

// heightsOf works out the plateaus of a piece.
func heightsOf(m *schematic.Made, p *schematic.Pattern, size int) *heights {
	w := measuring{heights: &heights{of: map[string][]plateau{}, forks: map[string]int{}, from: map[string]string{}, rib: units.Int(-1), armhole: units.Int(-1)}, p: p, size: size,
		top: map[string]units.Num{}, tall: true}
	for _, s := range m.Steps { // that of a division stands behind those of its parts
		for _, part := range s.Section.Traits().Parts {
			if _, there := w.from[part.Name]; !there && part.Name != s.Part {
				w.from[part.Name] = s.Part
			}
		}
	}
	for _, s := range m.Steps {
		v := plateau{count: s.After, said: ins.None, rows: s.Rows, what: s.Section.Base().Name}
		before := w.rises(s)
		if w.section(s, &v, before) {
			v.top, v.tall, v.anew = w.top[s.Part], w.tall, w.anew
			w.anew = false
			w.of[s.Part] = join(w.of[s.Part], v)
		}
	}
	return w.heights
}

// measuring goes along the sections of a piece.
type measuring struct {
	*heights
	p    *schematic.Pattern
	size int
	top  map[string]units.Num // of each part so far, in mm
	tall bool                 // heights are known so far
	anew bool                 // rows are counted anew
}

// rises takes the rows of a section; it gives the height at which they begin.
func (w *measuring) rises(s schematic.Step) units.Num {
	if !slices.Contains(w.parts, s.Part) {
		w.parts = append(w.parts, s.Part)
		if from, there := w.from[s.Part]; there {
			w.top[s.Part] = w.top[from]
			if w.forks[from] == 0 {
				w.forks[from] = len(w.of[from])
			}
		}
		w.starts = append(w.starts, s.Before)
	}
	before := w.top[s.Part]
	if g := w.p.GaugeNamed(s.Gauge); g != nil && g.Rows.Sign() > 0 {
		w.top[s.Part] = before.Add(g.RowHeight().Times(s.Rows))
	} else {
		w.tall = false
	}
	return before
}

// section says of a plateau what its section is; it reports false for one that a text has no count of.
func (w *measuring) section(s schematic.Step, v *plateau, before units.Num) bool {
	t := s.Section.Traits()
	v.within = within{t.Fewer, t.More}
	for _, x := range t.Shapings {
		w.begins(x.Edge, before)
		w.leads(s.Part, x.Every)
	}
	switch {
	case t.Parts != nil:
		return false
	case !t.Band.IsZero(): // rows along its edge are counted anew
		w.anew, w.tall = true, false
		return false
	case t.Takes || t.All:
		if g := w.p.GaugeNamed(s.Gauge); t.TakesAtBoth() && (g == nil || g.Crochet(w.p.Terms)) { // it is a row, or part of the next
			v.within = within{1, 1}
		}
		return s.After > 0
	case t.Plain || t.Ribbed:
		if (t.Ribbed || strings.Contains(s.Section.Base().Stitch, "rib") || w.ribbed(s.Gauge)) && w.rib.Sign() < 0 && before.Sign() == 0 {
			w.rib, w.ribRows = w.top[s.Part], s.Rows
		}
	case (t.Joins != nil || t.Closes) && (s.Before == 0 || t.Rejoins()): // a row that is joined into a round goes on as it was; parts made one begin anew
		v.within, v.fresh, v.rows, w.tall = within{1, 1}, true, 0, false
		w.rejoins()
	}
	return true
}

// ribbed reports whether a gauge is one of a rib.
func (w *measuring) ribbed(gauge string) bool {
	g := w.p.GaugeNamed(gauge)
	return g != nil && (strings.Contains(g.Name, "rib") || strings.Contains(g.Stitch, "rib"))
}

// leads notes how much later than its rows the first shaping that is done every so many rows may begin.
func (w *measuring) leads(part string, every expr.Graded) {
	if k := len(w.of[part]) - 1; k >= 0 {
		w.of[part][k].lead = max(w.of[part][k].lead, every.Int(w.size, 1)-1)
	}
}

// rejoins notes that parts are made one again: a text may tell of an opening between them in one row, and go on over the same count.
func (w *measuring) rejoins() {
	const anyRows = 1 << 20
	if w.joined = true; len(w.of[""]) > 0 {
		w.of[""][len(w.of[""])-1].lead = anyRows
	}
}

// begins notes where the armhole begins, if that edge is one.
func (w *measuring) begins(edge string, at units.Num) {
	if edge == "armhole" && w.armhole.Sign() < 0 {
		w.armhole = at
	}
}
