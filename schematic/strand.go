package schematic

import (
	"slices"

	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// pt is an exact point in the coordinates of the working: x to the right, y in
// the direction of work, right side facing.
type pt struct{ x, y units.Num }

// segSide says at which side of a strand a stretch of outline was made.
type segSide int

const (
	segNone segSide = iota // start or end of a strand
	segLeft
	segRight
)

// seg is one straight stretch of an outline, directed so that the fabric lies
// to its left.
type seg struct {
	a, b pt
	name string
	part string
	side segSide
	also string // a second name of its part: of stitches that are left
	step bool   // a change of gauge: drawn, but no edge to sew
	fold bool   // the side of a flattened tube: drawn, but no edge
	both bool   // the two layers of a flattened tube: its length counts twice
	sts  int
	rows int
	pos  finding.Pos

	gauge *Gauge
	doubt bool // it follows from an error
}

// canvas is one flat drawing in the making.
type canvas struct {
	name   string
	segs   []seg
	lines  []inner
	ribs   []area
	marks  []mark
	levels []level
	names  []partAt
	extra  []extraEdge
	panels []partAt // names of panels that are drawn together, at the line where they begin
	depths []depth
	slits  []slitAt
	raised []raise
	free   *freeform // drawn from its own points instead (disc, mitre, motifs)
	first  *strand   // for the arrow
	dead   bool      // replaced by others
	mark   int       // stretches before the section in work
	panel  bool      // of a row cut at marked lines
	down   bool      // worked from its upper end as worn
	heel   bool      // its short rows are a heel: they stay where they are worked
}

// raise is short rows of a round: they raise the layer behind at the neck, and leave the outline as it is.
type raise struct {
	high, at      units.Num // at is where they begin
	rows          int
	foot, plateau units.Num // of the width of the layer behind, as shares: where they begin, and where they end
	part          string
	gauge         *Gauge
}

// raisedBy is how much higher the neck of the layer behind stands.
func (c *canvas) raisedBy() units.Num {
	var h units.Num
	if c.heel {
		return h
	}
	for _, r := range c.raised {
		h = h.Add(r.high)
	}
	return h
}

// partAt is where the name of a part goes, as far as the working knows.
type partAt struct {
	name string
	at   pt
	h    units.Num
}

// extraEdge is an edge that is no stretch of the outline of its own.
type extraEdge struct {
	a, b pt
	edge Edge
}

// inner is a line inside an outline.
type inner struct {
	kind LineKind
	a, b pt
	name string
}

// area is a ribbed quadrilateral.
type area struct {
	y0, y1, l0, r0, l1, r1 units.Num
	gap                    units.Num
}

// mark is a mark to be placed: on an edge at a height, or at a place.
type mark struct {
	what  string
	at    pt
	side  segSide // on this edge at height at.y, inset by inset
	inset units.Num
	name  string
}

// level is the width of a strand at a height.
type level struct {
	y, l, r   units.Num
	n         int
	uniform   bool // one gauge
	round     bool
	part      string
	name      string // given by the pattern
	label     string // of the section that it ends
	armhole   bool   // one of its edges is an armhole
	top       string // the name of the edge that is the upper one, if the piece is worked from side to side
	start     bool
	end       bool
	stretched bool
	doubt     bool // of a count that is not what the designer meant
	band      bool // rows of a sideways band, not stitches
	gauge     *Gauge
}

// depth is a named height between two levels.
type depth struct {
	name      string
	y0, y1    units.Num
	x         units.Num
	count     int
	of        string
	part      string
	section   string // its name, for one of several
	stretched bool
	gauge     *Gauge
}

// run is stitches of one gauge within a row.
type run struct {
	name  string
	n     int
	gauge *Gauge
}

// block is the runs of a strand that are drawn together.
type block struct {
	view        int
	x           units.Num // of its left end
	runs        []run
	left, right string // names of its edges
	lineL       bool   // its left end is a marked line
	lineR       bool
}

// strand is one row in work: the whole row of a piece, or of a part.
type strand struct {
	name   string
	blocks []block // from left to right
	gauge  *Gauge
	round  bool
	flip   bool // worked as the mirror of what its sections say
	y      units.Num
	row    int   // rows worked so far
	rs     bool  // the next row is a right-side row
	band   int   // rows of a sideways band from which stitches are not yet picked up
	shared bool  // a stated count was shared out among its panels in proportion
	dirty  bool  // the last rows were short rows: the top is not level
	top    []int // indices of the segs of an unlevel top, in blocks[0].view
	topL   units.Num
	topR   units.Num
	leans  Side // of a mitten: the fold at which it is widened, until what is added there is taken out; both if at neither
	ended  bool
	doubt  bool // the count is not what the designer meant
	unseen bool // worked on where the piece can't be, for what else is wrong: not drawn
}

// layers is the share of a stitch's width that shows: half in a flattened tube.
func (s *strand) layers() units.Num {
	if s.round && len(s.blocks) == 1 {
		return units.Frac(1, 2)
	}
	return units.Int(1)
}

func (s *strand) count() int {
	n := 0
	for _, b := range s.blocks {
		n += b.count()
	}
	return n
}

func (b *block) count() int {
	n := 0
	for _, r := range b.runs {
		n += r.n
	}
	return n
}

// width is the drawn width of the block's runs.
func (s *strand) width(b *block) units.Num {
	var w units.Num
	if s.band > 0 {
		return s.gauge.RowHeight().Times(s.band).Mul(s.layers())
	}
	for _, r := range b.runs {
		w = w.Add(r.gauge.StitchWidth().Times(r.n))
	}
	return w.Mul(s.layers())
}

func (s *strand) right(b *block) units.Num { return b.x.Add(s.width(b)) }

func (b *block) uniform() bool {
	return !slices.ContainsFunc(b.runs, func(r run) bool { return r.gauge != b.runs[0].gauge })
}

// give adds k stitches to the run at one end.
func (b *block) give(side segSide, k int) {
	if side == segLeft {
		b.runs[0].n += k
		return
	}
	b.runs[len(b.runs)-1].n += k
}

// take removes k stitches from one end, run after run. It keeps one run.
func (b *block) take(side segSide, k int) {
	for k > 0 && len(b.runs) > 0 {
		i := 0
		if side == segRight {
			i = len(b.runs) - 1
		}
		m := min(k, b.runs[i].n)
		b.runs[i].n -= m
		k -= m
		if b.runs[i].n > 0 || len(b.runs) == 1 {
			return
		}
		if i == 0 {
			b.runs = b.runs[1:]
		} else {
			b.runs = b.runs[:i]
		}
	}
}

// slice is the runs of stitches from from to to, counted from the left.
func (b *block) slice(from, to int) []run {
	var out []run
	at := 0
	for _, r := range b.runs {
		lo, hi := max(from, at), min(to, at+r.n)
		if hi > lo {
			out = append(out, run{r.name, hi - lo, r.gauge})
		}
		at += r.n
	}
	if len(out) == 0 {
		r := b.runs[0]
		out = []run{{r.name, 0, r.gauge}}
	}
	// Stitches beyond the row's end belong to its last run, so that a division
	// that asks for too many can still be drawn.
	if extra := to - max(from, at); extra > 0 {
		out[len(out)-1].n += extra
	}
	return out
}

// offsetOf is the drawn distance from the block's left end to stitch i.
func (s *strand) offsetOf(b *block, i int) units.Num {
	var w units.Num
	for _, r := range b.runs {
		k := min(i, r.n)
		w = w.Add(r.gauge.StitchWidth().Times(k))
		i -= k
		if i == 0 {
			break
		}
	}
	if i > 0 {
		w = w.Add(b.runs[len(b.runs)-1].gauge.StitchWidth().Times(i))
	}
	return w.Mul(s.layers())
}

// profile is how far an edge has moved outwards, in stitches, after so many rows;
// straight between its points.
type profile []profilePoint

type profilePoint struct {
	row int
	d   units.Num
}

func (p profile) last() profilePoint {
	if len(p) == 0 {
		return profilePoint{}
	}
	return p[len(p)-1]
}

// at is the value after row rows.
func (p profile) at(row int) units.Num {
	prev := profilePoint{}
	for _, q := range p {
		if row <= q.row {
			if q.row == prev.row {
				return q.d
			}
			return prev.d.Add(q.d.Sub(prev.d).Mul(units.Frac(int64(row-prev.row), int64(q.row-prev.row))))
		}
		prev = q
	}
	return prev.d
}

// plus is the sum of two profiles, with the corners of both.
func (p profile) plus(q profile) profile {
	if len(p) == 0 {
		return q
	}
	if len(q) == 0 {
		return p
	}
	var out profile
	i, j := 0, 0
	for i < len(p) || j < len(q) {
		row := 0
		switch {
		case j >= len(q) || (i < len(p) && p[i].row <= q[j].row):
			row = p[i].row
			if j < len(q) && q[j].row == row {
				j++
			}
			i++
		default:
			row = q[j].row
			j++
		}
		out = append(out, profilePoint{row, p.at(row).Add(q.at(row))})
	}
	return out
}

func (p profile) scaled(f units.Num) profile {
	out := make(profile, len(p))
	for i, q := range p {
		out[i] = profilePoint{q.row, q.d.Mul(f)}
	}
	return out
}
