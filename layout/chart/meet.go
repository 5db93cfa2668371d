package chart

import (
	"fmt"

	"flatwright/fonts"
	"flatwright/layout/sheet"
)

// meet writes where the pages meet: short lines at both ends of the edge, and the
// page beyond.
func (c *pages) meet(g *sheet.Group, drawn []*sheet.Group, v *view) {
	sc, size := c.d.scale, c.o.text()
	col, row, from, at, k, r := v.col, v.row, v.from, v.at, v.k, v.r
	drawnLo, drawnHi := at, at
	for _, d := range drawn {
		if a, b, ok := sheet.Bounds(d); ok {
			drawnLo = pt{X: min(drawnLo.X, a.X), Y: min(drawnLo.Y, a.Y)}
			drawnHi = pt{X: max(drawnHi.X, b.X), Y: max(drawnHi.Y, b.Y)}
		}
	}
	x := func(v float64) float64 { return at.X + sc*(v-from.X) }
	y := func(v float64) float64 { return at.Y + sc*(v+from.Y) }
	lo, hi := y(row.lo), y(row.hi)
	if r > 0 {
		lo -= overlap
	}
	if r < len(c.rows)-1 {
		hi += overlap
	}
	tick := func(a, b pt) {
		g.Items = append(g.Items, path("again", quiet, a, b))
	}
	text := func(s string, p pt, a sheet.Anchor) {
		if s == "" { // nothing is there
			return
		}
		g.Items = append(g.Items, sheet.NewText(s, fonts.Italic, size, p, a, "again"))
	}
	drop := max(3, fonts.Ascent(fonts.Italic)*size+0.6) // of a line of words under the drawing
	lift := max(0, fonts.Descent(fonts.Italic)*size-0.6)
	line := sheet.LineHeight(fonts.Italic, size)
	under := 0.0 // where the words of both sides do not fit beside each other
	if k > 0 && narrow(size, sc*(col.hi-col.lo), c.count()) {
		under = line
	}
	page := func(k, r int) string {
		if c.no[r][k] == 0 {
			return ""
		}
		return fmt.Sprintf("meets page %d", c.no[r][k])
	}
	top, low := min(lo, drawnLo.Y)-1, max(hi, drawnHi.Y)+1
	if k > 0 {
		tick(pt{X: x(col.lo), Y: top - 3}, pt{X: x(col.lo), Y: top})
		tick(pt{X: x(col.lo), Y: low}, pt{X: x(col.lo), Y: low + 3})
		text(page(k-1, r), pt{X: x(col.lo) + 1, Y: low + drop}, sheet.Start)
	}
	if k < len(c.cols)-1 {
		tick(pt{X: x(col.hi), Y: top - 3}, pt{X: x(col.hi), Y: top})
		tick(pt{X: x(col.hi), Y: low}, pt{X: x(col.hi), Y: low + 3})
		text(page(k+1, r), pt{X: x(col.hi) - 1, Y: low + drop + under}, sheet.End)
	}
	left, right := x(col.lo), x(col.hi)
	if k > 0 {
		left -= overlap
	}
	if k < len(c.cols)-1 {
		right += overlap
	}
	left, right = min(left, drawnLo.X), max(right, drawnHi.X)
	if r > 0 {
		tick(pt{X: left - 4, Y: y(row.lo)}, pt{X: left - 1, Y: y(row.lo)})
		tick(pt{X: right + 1, Y: y(row.lo)}, pt{X: right + 4, Y: y(row.lo)})
		text(page(k, r-1), pt{X: (x(col.lo) + x(col.hi)) / 2, Y: top - lift}, sheet.Middle)
	}
	if r < len(c.rows)-1 {
		tick(pt{X: left - 4, Y: y(row.hi)}, pt{X: left - 1, Y: y(row.hi)})
		tick(pt{X: right + 1, Y: y(row.hi)}, pt{X: right + 4, Y: y(row.hi)})
		below := low + drop + under
		if len(c.cols) > 1 { // under the words of the sides
			below += line
		}
		text(page(k, r+1), pt{X: (x(col.lo) + x(col.hi)) / 2, Y: below}, sheet.Middle)
	}
}

// narrow reports whether the words of both sides of a page do not fit beside each other.
func narrow(size, width float64, pages int) bool {
	return 2*fonts.Width(fonts.Italic, size, fmt.Sprintf("meets page %d", pages))+4 > width
}

// clip cuts a path of straight lines to a window.
func clip(q *sheet.Path, col, row window, more float64) []*sheet.Path {
	lo := pt{X: col.lo - more, Y: -row.hi - more}
	hi := pt{X: col.hi + more, Y: -row.lo + more}
	var out []*sheet.Path
	for _, run := range q.Polyline() {
		for i := 1; i < len(run); i++ {
			a, b, ok := clipLine(run[i-1], run[i], lo, hi)
			if ok {
				part := path(q.Class, q.Style.Width, a, b)
				part.Style = q.Style
				out = append(out, part)
			}
		}
	}
	return out
}

// clipLine is the part of a line inside a box (Liang and Barsky).
func clipLine(a, b, lo, hi pt) (pt, pt, bool) {
	t0, t1 := 0.0, 1.0
	d := sub(b, a)
	for _, e := range [4][2]float64{{-d.X, a.X - lo.X}, {d.X, hi.X - a.X}, {-d.Y, a.Y - lo.Y}, {d.Y, hi.Y - a.Y}} {
		if e[0] == 0 {
			if e[1] < 0 {
				return a, b, false
			}
			continue
		}
		t := e[1] / e[0]
		if e[0] < 0 {
			t0 = max(t0, t)
		} else {
			t1 = min(t1, t)
		}
	}
	return add(a, mul(d, t0)), add(a, mul(d, t1)), t0 < t1
}
