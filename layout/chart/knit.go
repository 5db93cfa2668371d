package chart

import (
	"math"
	"sort"

	"flatwright/layout/sheet"
	"flatwright/schematic/stitch"
)

// cell is the side of a square of a knitting chart, mm at the usual size.
const cell = 4.6

// seen is the symbol of a stitch as it looks from the right side when it is worked on
// the wrong side.
var seen = map[string]string{
	"knit": "purl", "purl": "knit", "twisted knit": "twisted purl", "twisted purl": "twisted knit",
	"right-leaning decrease": "purl decrease", "purl decrease": "right-leaning decrease",
	"left-leaning decrease": "left-leaning purl decrease", "left-leaning purl decrease": "left-leaning decrease",
	"right-leaning double decrease": "purl double decrease", "purl double decrease": "right-leaning double decrease",
	"knit front and back": "purl front and back", "purl front and back": "knit front and back",
}

// shownKey is the symbol of a knitting stitch as the right side shows it.
func shownKey(k *stitch.Stitch, wrong bool) string {
	if k == nil {
		return "knit"
	}
	if o, ok := seen[k.Key]; ok && wrong {
		return o
	}
	return k.Key
}

// knit draws a work of knitting on a grid.
func (d *drawing) knit(o *Options) {
	rows, n := columns(d.work, o.LeftHanded)
	f := d.f
	keys := map[string]*stitch.Stitch{}
	empty, two := false, false
	high := 0.0
	for i := range rows {
		if d.work.Rows[rows[i].row].Gap > 0 {
			high += gapHigh
		}
		rows[i].low = high
		high += cell
	}
	for _, r := range rows {
		row := &d.work.Rows[r.row]
		from, to := n, -1
		full := make([]bool, n)
		for _, c := range r.cells {
			from, to = min(from, c.col), max(to, c.col)
			full[c.col] = true
		}
		for c := from; c <= to; c++ {
			at := pt{X: float64(c) * cell, Y: r.low}
			box := path("grid", 0.18, at, add(at, pt{X: cell}), add(at, pt{X: cell, Y: cell}), add(at, pt{Y: cell}))
			box.Segs = append(box.Segs, sheet.Seg{Verb: sheet.Close})
			held := newMark(r.row, false, box)
			if row.Held {
				held.quieten()
			}
			f.add(held)
			if !full[c] {
				empty = true
				f.add(newMark(r.row, false, noStitch(at)...))
			}
		}
		for _, c := range r.cells {
			if row.Held {
				break
			}
			at := pt{X: (float64(c.col) + 0.5) * cell, Y: r.low + cell/2}
			if c.st.Break {
				f.add(newMark(r.row, false, zigzag(at)...))
				continue
			}
			key := shownKey(c.st.Kind, row.Wrong)
			if c.two {
				two = true
				key = "second of two"
			}
			k := c.st.Kind
			if old := keys[key]; old == nil || old != k && !row.Wrong {
				keys[key] = k
			}
			m := newMark(r.row, true, knitSymbol(key, at)...)
			m.at = at
			if len(m.paths) == 0 {
				m.lo, m.hi = at, at
			}
			f.add(m)
		}
	}
	d.nameRows(rows)
	d.knitRepeat(o, rows)
	for _, r := range rows {
		if row := &d.work.Rows[r.row]; row.Gap > 0 {
			f.rowBreak(o, d.scale, r.row, r.low, row.Same)
		}
	}
	if d.work.More > 0 && len(rows) > 0 {
		f.rowBreak(o, d.scale, rows[len(rows)-1].row, high+gapHigh, d.work.Same)
	}
	d.knitCuts(rows, n)
	if o.LeftHanded {
		f.mirror()
	}
	d.knitKey(keys, empty, two, o.LeftHanded)
}

func noStitch(at pt) []*sheet.Path {
	const in = 0.9
	a, b := add(at, pt{X: in, Y: in}), add(at, pt{X: cell - in, Y: cell - in})
	box := path("grid", 0, a, pt{X: b.X, Y: a.Y}, b, pt{X: a.X, Y: b.Y})
	box.Segs = append(box.Segs, sheet.Seg{Verb: sheet.Close})
	box.Style = sheet.Style{Fill: sheet.Grey}
	return []*sheet.Path{box}
}

func zigzag(at pt) []*sheet.Path {
	h := cell / 2
	var out []*sheet.Path
	for _, dx := range []float64{-0.7, 0.7} {
		out = append(out, path("break", quiet, add(at, pt{X: dx - 0.5, Y: -h}), add(at, pt{X: dx + 0.5}), add(at, pt{X: dx - 0.5, Y: h})))
	}
	return out
}

// knitSymbol draws a symbol around the middle of its square. A knit stitch is blank.
func knitSymbol(key string, at pt) []*sheet.Path {
	q := &pen{o: at, u: pt{X: 1}, v: pt{Y: 1}}
	dash := func(y float64) { q.line(-1.1, y, 1.1, y) }
	switch key {
	case "knit", "second of two":
	case "purl":
		dash(0)
	case "twisted knit":
		q.curve(-1.1, -1.4, 2.2, 2.6, -2.2, 2.6, 1.1, -1.4)
	case "twisted purl":
		q.curve(-1.1, -0.8, 2.2, 3, -2.2, 3, 1.1, -0.8)
		dash(-1.4)
	case "slipped":
		q.line(-1.2, 1.3, 0, -1.3, 1.2, 1.3)
	case "yarn over":
		q.oval(0, 0, 1.25, 1.25, false)
	case "make one":
		q.line(-1.2, -1.3, -1.2, 1.3, 0, -0.2, 1.2, 1.3, 1.2, -1.3)
	case "make one left":
		q.line(0.9, -1.4, 0.9, 1.4, -1.2, 1.4)
	case "make one right":
		q.line(-0.9, -1.4, -0.9, 1.4, 1.2, 1.4)
	case "knit front and back":
		q.line(-1.3, 1.4, 0, -1.4, 1.3, 1.4)
		q.line(0, -1.4, 0, 1.4)
	case "purl front and back":
		q.line(-1.3, 1.5, 0, -0.8, 1.3, 1.5)
		q.line(0, -0.8, 0, 1.5)
		dash(-1.5)
	case "right-leaning decrease":
		q.line(-1.5, -1.5, 1.5, 1.5)
	case "left-leaning decrease":
		q.line(1.5, -1.5, -1.5, 1.5)
	case "purl decrease":
		q.line(-1.4, -1, 1.5, 1.6)
		dash(-1.6)
	case "left-leaning purl decrease":
		q.line(1.4, -1, -1.5, 1.6)
		dash(-1.6)
	case "right-leaning double decrease":
		q.line(-1.5, -1.5, 1.5, 1.5)
		q.line(0, 0, 0, -1.5)
	case "left-leaning double decrease":
		q.line(1.5, -1.5, -1.5, 1.5)
		q.line(0, 0, 0, -1.5)
	case "purl double decrease":
		q.line(-1.4, -1, 1.5, 1.6)
		q.line(0, 0.25, 0, -1)
		dash(-1.6)
	case "centred double decrease":
		q.line(-1.5, -1.5, 0, 1.5, 1.5, -1.5)
		q.line(0, 1.5, 0, -1.5)
	default: // a stitch that no published list names: a filled square
		q.oval(0, 0, 0.8, 0.8, true)
	}
	return q.out
}

// nameRows notes where the rows begin, for their numbers.
func (d *drawing) nameRows(rows []knitRow) {
	d.f.tight = true
	for _, r := range rows {
		row := &d.work.Rows[r.row]
		if name := row.name(); name != "" && len(r.cells) > 0 {
			d.f.names = append(d.f.names, rowName{row: r.row, s: name, rightward: row.Wrong, wrong: row.Wrong, low: math.Inf(-1)})
		}
	}
}

// knitRepeat draws a heavy line around one repeat.
func (d *drawing) knitRepeat(o *Options, rows []knitRow) {
	r, ok := d.work.Repeat()
	if !ok || len(rows) == 0 {
		return
	}
	all := d.work.spans(d.work.block())
	at := r.From
	if r.Times > 2 {
		at += r.Of
	}
	var sides [2][]pt
	for k, cut := range []int{at, at + r.Of} {
		for _, kr := range rows {
			x, ok := d.knitCut(all, &kr, cut)
			if s, n := all[kr.row], len(kr.cells); !ok {
				edge := kr.cells[0].col
				if (s[0].hi < cut) == d.work.runsRight(kr.row) {
					edge = kr.cells[n-1].col + 1
				}
				x = float64(edge) * cell
			}
			sides[k] = append(sides[k], pt{X: x, Y: kr.low}, pt{X: x, Y: kr.low + cell})
		}
	}
	loop := append([]pt(nil), sides[0]...)
	for i := len(sides[1]) - 1; i >= 0; i-- {
		loop = append(loop, sides[1][i])
	}
	box := path("repeat", 0.7, loop...)
	box.Segs = append(box.Segs, sheet.Seg{Verb: sheet.Close})
	d.f.add(newMark(-1, false, box))
	size := o.plane(d.scale)
	mid := (sides[0][0].X + sides[1][0].X) / 2
	d.f.label(o, d.scale, label{s: "repeat: " + r.String(), at: pt{X: mid, Y: d.f.lo.Y - size}, row: -1, class: "repeat"})
}

// knitKey lists the symbols in use.
func (d *drawing) knitKey(keys map[string]*stitch.Stitch, empty, two, left bool) {
	order := map[string]int{}
	for i, k := range stitch.All {
		if _, ok := order[k.Key]; !ok {
			order[k.Key] = i
		}
	}
	var names []string
	for k := range keys {
		names = append(names, k)
	}
	sort.Slice(names, func(i, j int) bool {
		a, b := order[names[i]], order[names[j]]
		if a != b {
			return a < b
		}
		return names[i] < names[j]
	})
	square := func() *sheet.Path {
		box := path("grid", 0.18, pt{}, pt{X: cell}, pt{X: cell, Y: cell}, pt{Y: cell})
		box.Segs = append(box.Segs, sheet.Seg{Verb: sheet.Close})
		return box
	}
	right, wrong := false, false
	for i := range d.work.Rows {
		if r := &d.work.Rows[i]; !r.Base {
			right, wrong = right || !r.Wrong, wrong || r.Wrong
		}
	}
	t := d.work.Terms
	for _, n := range names {
		if n == "second of two" {
			continue
		}
		paths := append([]*sheet.Path{square()}, knitSymbol(n, pt{X: cell / 2, Y: cell / 2})...)
		if left {
			g := &figure{marks: []mark{newMark(-1, true, paths...)}}
			g.mirror()
		}
		d.key = append(d.key, entry{n, paths, knitWords(n, keys[n], right, wrong, t)})
	}
	if two {
		d.key = append(d.key, entry{"two", []*sheet.Path{square()}, "beside an increase into one stitch: its second stitch"})
	}
	if empty {
		d.key = append(d.key, entry{"none", append([]*sheet.Path{square()}, noStitch(pt{})...), "no stitch: go on to the next square"})
	}
	d.key = append(d.key, arrows(right, wrong, left)...)
	d.notes = append(d.notes, d.work.grownFrom()...)
	d.notes = append(d.notes, "Knit symbols as the Craft Yarn Council lists them: a knit stitch is a blank square")
	if wrong {
		d.notes = append(d.notes, "wrong-side rows are drawn as they look from the right side")
	}
	if left {
		d.notes = append(d.notes, "for left-handed work")
	}
}

// knitWords is what a symbol means on each side.
func knitWords(key string, k *stitch.Stitch, right, wrong bool, t stitch.Terms) string {
	on := kindOfKey(key)
	if on == nil {
		on = k
	}
	if on == nil {
		return key
	}
	if k != nil && k.Key == key { // the very stitch that is used
		on = k
	}
	back, turns := seen[key]
	if !turns || !wrong {
		return keyName(on, t)
	}
	off := kindOfKey(back)
	if off == nil {
		return keyName(on, t)
	}
	if !right {
		return off.Abbr(t) + " on the wrong side"
	}
	return on.Abbr(t) + " on the right side, " + off.Abbr(t) + " on the wrong side"
}

func kindOfKey(key string) *stitch.Stitch {
	for _, k := range stitch.All {
		if k.Key == key && k.Craft == stitch.Knitting {
			return k
		}
	}
	return nil
}
