package chart

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"flatwright/layout/sheet"
	"flatwright/schematic/stitch"
)

// cell is the width of a square of a knitting chart, mm at the usual size.
const cell = 4.6

// squares is a work on a grid as it is drawn: a square a stitch, as the right side shows it.
type squares struct {
	d       *drawing
	o       *Options
	rows    []knitRow
	wide    int     // squares across
	tall    float64 // height of a square, mm
	high    float64 // level of the upper edge
	yarns   yarns
	sole    *stitch.Stitch    // of crochet in several yarns: the one stitch that all of its squares are
	keys    map[string]*inUse // the symbols in use
	spots   []*stitch.Stitch  // the stitches that no list names
	crosses []*stitch.Stitch  // the crossings in use
	empty   bool              // somewhere is no stitch
	broken  bool              // stitches are left out of the rows
	wrapped bool              // a stitch is wrapped before a turn
	part    bool              // somewhere is a further stitch of an increase
}

// grid draws a work on a grid.
func (d *drawing) grid(o *Options) {
	s := &squares{d: d, o: o, tall: cell, keys: map[string]*inUse{}, yarns: d.work.yarns(), sole: d.work.sole()}
	if o.Proportion > 0 {
		s.tall = cell * min(max(o.Proportion, 0.4), 1.6)
	}
	s.rows, s.wide = columns(d.work)
	for i := range s.rows {
		if words := d.work.Rows[s.rows[i].row].leftOut(); words != "" {
			s.high += gapHigh
		}
		s.rows[i].low = s.high
		s.high += s.tall
	}
	for i := range s.rows {
		s.row(&s.rows[i])
	}
	s.nameRows()
	s.repeat()
	for _, r := range s.rows {
		if words := d.work.Rows[r.row].leftOut(); words != "" {
			d.f.rowBreak(o, d.scale, r.row, r.low, words)
		}
	}
	if words := d.work.ending(); words != "" && len(s.rows) > 0 {
		d.f.rowBreak(o, d.scale, s.rows[len(s.rows)-1].row, s.high+gapHigh, words)
	}
	s.cuts()
	if o.LeftHanded {
		d.f.mirror()
	}
	s.key()
}

// box is a square, or several beside each other.
func (s *squares) box(at pt, across float64) *sheet.Path {
	b := path("grid", 0.18, at, add(at, pt{X: across}), add(at, pt{X: across, Y: s.tall}), add(at, pt{Y: s.tall}))
	b.Segs = append(b.Segs, sheet.Seg{Verb: sheet.Close})
	return b
}

func (s *squares) corner(col int, r *knitRow) pt { return pt{X: float64(col) * cell, Y: r.low} }

// row draws one row: its squares, then what stands in them.
func (s *squares) row(r *knitRow) {
	row := &s.d.work.Rows[r.row]
	if row.Unread != "" {
		s.unreadRow(r, row)
		return
	}
	full := map[int]bool{}
	for i := 0; i < len(r.cells); {
		n := r.crossing(i)
		for k := i; k < i+n; k++ {
			full[r.cells[k].col] = true
		}
		if n > 1 {
			s.crossing(r, r.cells[i:i+n], row.Wrong)
		} else if c := r.cells[i]; !c.st.Idle || c.st.Wrap {
			s.square(r, row, c)
		}
		i += n
	}
	if len(r.cells) == 0 {
		return
	}
	for c := r.cells[0].col; c <= r.cells[len(r.cells)-1].col; c++ {
		if !full[c] {
			s.empty = true
			at := s.corner(c, r)
			s.d.f.add(newMark(r.row, false, s.box(at, cell)), newMark(r.row, false, s.noStitch(at)))
		}
	}
}

// square draws one stitch.
func (s *squares) square(r *knitRow, row *Row, c cellOf) {
	f := s.d.f
	at := s.corner(c.col, r)
	if y := s.yarns.of(c.st); y != nil && y.ground != sheet.None {
		f.add(newMark(r.row, false, y.fill(at, s.tall)))
	}
	box := newMark(r.row, false, s.box(at, cell))
	if row.Held {
		box.quieten()
	}
	f.add(box)
	if row.Held {
		return
	}
	mid := add(at, pt{X: cell / 2, Y: s.tall / 2})
	if c.st.Break {
		s.broken = true
		f.add(newMark(r.row, false, zigzag(mid, s.tall)...))
		return
	}
	key := ""
	if s.sole == nil {
		key = s.symbolOf(&c, row.Wrong)
	}
	m := newMark(r.row, true)
	if key != "" {
		m = newMark(r.row, true, knitSymbol(key, mid, s.tall)...)
	}
	if y := s.yarns.of(c.st); y != nil {
		m.paths = append(m.paths, y.mark(at, s.tall, len(m.paths) == 0)...)
		m.lo, m.hi = bounds(m.paths)
	}
	m.at = mid
	if len(m.paths) == 0 {
		m.lo, m.hi = mid, mid
	}
	f.add(m)
}

// symbolOf is the symbol of a square, which is noted for the key.
func (s *squares) symbolOf(c *cellOf, wrong bool) string {
	switch {
	case c.st.Wrap:
		s.wrapped = true
		return wrapKey
	case c.part:
		s.part = true
		return partKey
	}
	k := c.st.Kind
	if c.of != nil {
		k = c.of
	}
	key := shownKey(k, wrong)
	if bare, _ := strings.CutSuffix(strings.TrimRight(key, " 0123456789"), " tbl"); !listed(bare) {
		key = s.spotOf(k)
	}
	u := s.keys[key]
	if u == nil {
		u = &inUse{}
		s.keys[key] = u
	}
	u.add(k, wrong)
	return key
}

// spotOf is the spot of a stitch that no list names.
func (s *squares) spotOf(k *stitch.Stitch) string {
	i := slices.IndexFunc(s.spots, func(o *stitch.Stitch) bool { return o.ID == k.ID })
	if i < 0 {
		i = len(s.spots)
		s.spots = append(s.spots, k)
	}
	if i = min(i+1, 9); i > 1 {
		return fmt.Sprint(spotKey, " ", i)
	}
	return spotKey
}

func (s *squares) noStitch(at pt) *sheet.Path {
	const in = 0.9
	a, b := add(at, pt{X: in, Y: in}), add(at, pt{X: cell - in, Y: s.tall - in})
	box := path("grid", 0, a, pt{X: b.X, Y: a.Y}, b, pt{X: a.X, Y: b.Y})
	box.Segs = append(box.Segs, sheet.Seg{Verb: sheet.Close})
	box.Style = sheet.Style{Fill: sheet.Grey}
	return box
}

func zigzag(at pt, high float64) []*sheet.Path {
	h := high / 2
	var out []*sheet.Path
	for _, dx := range []float64{-0.7, 0.7} {
		out = append(out, path("break", quiet, add(at, pt{X: dx - 0.5, Y: -h}), add(at, pt{X: dx + 0.5}), add(at, pt{X: dx - 0.5, Y: h})))
	}
	return out
}

// nameRows notes where the rows begin, for their numbers.
func (s *squares) nameRows() {
	f := s.d.f
	f.tight = true
	for _, r := range s.rows {
		row := &s.d.work.Rows[r.row]
		if name := row.name(); name != "" && len(r.cells) > 0 {
			f.names = append(f.names, rowName{row: r.row, s: name, rightward: row.Wrong, wrong: row.Wrong, low: math.Inf(-1)})
		}
	}
}
