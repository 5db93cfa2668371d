package chart

import (
	"fmt"
	"math"
	"slices"

	"flatwright/layout/sheet"
	"flatwright/schematic/stitch"
)

// Filet is a ground of posts with as many chains between them, or as many stitches: open
// mesh and solid mesh. It is drawn as squares, blank and filled, as the trade does.

// filet is the meshes of a work, row by row as the right side shows them from the left;
// solid are filled.
type filet struct {
	chains int // between two posts
	post   *stitch.Stitch
	rows   []int    // indices of the work's rows
	solid  [][]bool // of each
}

// fewMeshes is how many meshes a row has at least, to be drawn as squares.
const fewMeshes = 5

// filet finds the meshes of a work; nil if it is not all mesh, or all of one kind.
func (w *Work) filet() *filet {
	f := &filet{}
	open, solid := false, false
	for r := range w.Rows {
		row := &w.Rows[r]
		if row.Base {
			continue
		}
		if row.Round || row.Edge || row.leftOut() != "" || !f.take(row) {
			return nil
		}
		cells := f.meshes(row)
		if len(cells) < fewMeshes || len(f.solid) > 0 && len(cells) != len(f.solid[0]) {
			return nil
		}
		for _, s := range cells {
			open, solid = open || !s, solid || s
		}
		f.rows, f.solid = append(f.rows, r), append(f.solid, cells)
	}
	if !open || !solid || len(f.rows) < 2 {
		return nil
	}
	return f
}

// take holds a row to one kind of post and one length of arch.
func (f *filet) take(row *Row) bool {
	for i := range row.St {
		s := &row.St[i]
		switch {
		case s.Turn:
		case s.arch():
			if f.chains == 0 {
				f.chains = s.Chain
			}
			if s.Chain != f.chains || s.Chain > 3 {
				return false
			}
		case s.Kind == nil || s.Kind.Plain() != s.Kind || s.Kind.Key == "chain" || s.Kind.Key == "slip" || s.Kind.Key == "sc" || s.Colour != "":
			return false
		case f.post == nil:
			f.post = s.Kind
		case f.post != s.Kind:
			return false
		}
	}
	return true
}

// meshes are those of a row from the left; nil if its stitches do not make whole ones.
func (f *filet) meshes(row *Row) []bool {
	if f.chains == 0 || f.post == nil {
		return nil
	}
	var out []bool
	run := 0 // stitches since the last post
	list := row.standing()
	for i := range list {
		s := &list[i]
		switch {
		case i == 0:
			if s.arch() {
				return nil
			}
		case s.arch():
			if run > 0 || i+1 == len(list) || list[i+1].arch() {
				return nil
			}
		case list[i-1].arch():
			out = append(out, false)
		default:
			if run++; run > f.chains {
				out, run = append(out, true), 0
			}
		}
	}
	if run > 0 {
		return nil
	}
	if !row.Wrong { // worked from the right
		slices.Reverse(out)
	}
	return out
}

// standing are the stitches of a row without a chain at its beginning that counts for none.
func (r *Row) standing() []St {
	if len(r.St) > 0 && r.St[0].Turn && r.St[0].Kind == nil {
		return r.St[1:]
	}
	return r.St
}

// mesh draws a filet chart.
func (d *drawing) mesh(f *filet, o *Options) {
	d.f.tight = true
	for k, cells := range f.solid {
		r := f.rows[k]
		row := &d.work.Rows[r]
		for c, solid := range cells {
			at := pt{X: float64(c) * cell, Y: float64(k) * cell}
			if o.LeftHanded {
				at.X = float64(len(cells)-1-c) * cell
			}
			d.f.add(newMark(r, true, meshPaths(at, solid)...))
		}
		if name := row.name(); name != "" {
			d.f.names = append(d.f.names, rowName{row: r, s: name, rightward: row.Wrong != o.LeftHanded, wrong: row.Wrong, low: math.Inf(-1)})
		}
	}
	var across, up cuts
	for c := 1; c < len(f.solid[0]); c++ {
		across = append(across, float64(c)*cell)
	}
	for k := 1; k < len(f.rows); k++ {
		up = append(up, -float64(k)*cell)
	}
	d.f.across, d.f.up = []cuts{across}, []cuts{up}
	t := d.work.Terms
	post := f.post.Abbr(t)
	d.key = append(d.key,
		entry{"open mesh", meshPaths(pt{}, false), fmt.Sprintf("open mesh: ch %d, skip %d, %s", f.chains, f.chains, post)},
		entry{"solid mesh", meshPaths(pt{}, true), fmt.Sprintf("solid mesh: %d %s in the space or the stitches below, %s in the next %s", f.chains, post, post, post)})
	d.key = append(d.key, d.work.arrows(o.LeftHanded)...)
	d.notes = append(d.notes, fmt.Sprintf("each row begins with a chain of %d as its first %s, and %d more before an open mesh", f.post.Turn, post, f.chains))
	if o.LeftHanded {
		d.notes = append(d.notes, leftHanded)
	}
}

// meshPaths are the strokes of one mesh: a square, filled if it is solid.
func meshPaths(at pt, solid bool) []*sheet.Path {
	square := func(in float64) *sheet.Path {
		a, b := add(at, pt{X: in, Y: in}), add(at, pt{X: cell - in, Y: cell - in})
		q := path("grid", 0.18, a, pt{X: b.X, Y: a.Y}, b, pt{X: a.X, Y: b.Y})
		q.Segs = append(q.Segs, sheet.Seg{Verb: sheet.Close})
		return q
	}
	out := []*sheet.Path{square(0)}
	if solid {
		q := square(0.55)
		q.Class, q.Style = "stitch", sheet.Style{Fill: sheet.Black}
		out = append(out, q)
	}
	return out
}
