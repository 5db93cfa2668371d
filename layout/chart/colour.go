package chart

import (
	"cmp"
	"fmt"
	"slices"
	"sort"

	"flatwright/layout/sheet"
	"flatwright/schematic/stitch"
)

// yarn is one yarn of a work: its name, and how its squares are told: by a ground and by a
// mark, so that it is never a tone alone.
type yarn struct {
	name   string
	ground sheet.Ink
	sign   int // of signs, from 1; 0: none
	much   int // its stitches
}

// yarns are those of a work of more than one, the one with the most stitches first.
type yarns struct {
	list []yarn
	by   map[string]int
}

// grounds are the tones of yarns from the second on, over and over; signs tell them apart.
var grounds = [...]sheet.Ink{sheet.Pale, sheet.Mid, sheet.None}

// signs are the marks of yarns from the second on, in a square of 1 mm around its middle.
var signs = [...]func(q *pen, r float64){
	func(q *pen, r float64) { q.oval(0, 0, 0.8*r, 0.8*r, true) },
	func(q *pen, r float64) { q.line(-r, -r, r, r); q.line(-r, r, r, -r) },
	func(q *pen, r float64) { q.line(-r, -r, r, -r, 0, r, -r, -r) },
	func(q *pen, r float64) { q.line(-r, 0, r, 0); q.line(0, -r, 0, r) },
	func(q *pen, r float64) { q.line(-r, -r, r, -r, r, r, -r, r, -r, -r) },
	func(q *pen, r float64) { q.line(-r, 0, 0, -r, r, 0, 0, r, -r, 0) },
}

// yarns are the yarns that the stitches of the work name; none if all are of one.
func (w *Work) yarns() yarns {
	much := map[string]int{}
	for r := range w.Rows {
		if w.Rows[r].Base || w.Rows[r].Unread != "" { // which the squares do not show
			continue
		}
		for i := range w.Rows[r].St {
			if s := &w.Rows[r].St[i]; s.Kind != nil && !s.Break && !s.Idle {
				much[s.Colour]++
			}
		}
	}
	if len(much) < 2 {
		return yarns{}
	}
	y := yarns{by: map[string]int{}}
	for name, n := range much {
		y.list = append(y.list, yarn{name: name, much: n})
	}
	sort.Slice(y.list, func(i, j int) bool {
		a, b := y.list[i], y.list[j]
		if a.much != b.much {
			return a.much > b.much
		}
		return a.name < b.name
	})
	for i := range y.list {
		y.by[y.list[i].name] = i
		if i > 0 {
			y.list[i].ground = grounds[(i-1)%len(grounds)]
			y.list[i].sign = min(i, len(signs))
		}
	}
	return y
}

// yarnNotes tell of a chart in symbols that yarns change within its rows, which symbols do not show.
func (w *Work) yarnNotes() []string {
	for r := range w.Rows {
		row, first := &w.Rows[r], ""
		for i := range row.St {
			switch s := &row.St[i]; {
			case row.Base || s.Kind == nil || s.Colour == "" || s.Turn:
			case first == "":
				first = s.Colour
			case s.Colour != first:
				return []string{"The yarns are not shown: they change within rows"}
			}
		}
	}
	return nil
}

// sole is the stitch of which all of a crochet work is; nil if it is of several.
func (w *Work) sole() *stitch.Stitch {
	var one *stitch.Stitch
	for r := range w.Rows {
		row := &w.Rows[r]
		for i := range row.St {
			k := row.St[i].Kind
			if row.Base || row.St[i].Break || k == unread || k == nil {
				continue
			}
			if k.Craft == stitch.Knitting || one != nil && k != one || row.St[i].Loop != BothLoops {
				return nil
			}
			one = k
		}
	}
	return one
}

// of is the yarn of a stitch; nil if the work has one alone.
func (y *yarns) of(s *St) *yarn {
	if len(y.list) == 0 || s.Break {
		return nil
	}
	return &y.list[y.by[s.Colour]]
}

// fill is the ground of a square.
func (y *yarn) fill(at pt, high float64) *sheet.Path {
	b := path("grid", 0, at, add(at, pt{X: cell}), add(at, pt{X: cell, Y: high}), add(at, pt{Y: high}))
	b.Segs = append(b.Segs, sheet.Seg{Verb: sheet.Close})
	b.Style = sheet.Style{Fill: y.ground}
	return b
}

// mark is the yarn's sign: in the middle of a square, or in its lower corner beside a symbol.
func (y *yarn) mark(at pt, high float64, alone bool) []*sheet.Path {
	if y.sign == 0 {
		return nil
	}
	q := &pen{o: add(at, pt{X: cell / 2, Y: high / 2}), u: pt{X: 1}, v: pt{Y: 1}}
	r := 0.85 * min(high/cell, 1)
	if !alone {
		q.o, r = add(at, pt{X: 0.85, Y: 0.8}), 0.42
	}
	signs[y.sign-1](q, r)
	return q.out
}

// words name the yarn in the key.
func (y *yarn) words() string {
	if y.name == "" {
		return "the yarn that the text does not name"
	}
	return "yarn " + y.name
}

// Float is a stretch of a row over which a yarn is carried behind stitches of another.
type Float struct {
	Row  *Row
	Yarn string
	Over int // stitches
}

// Floats are the stretches over which a yarn is carried behind more than most stitches; 0: the
// usual number, 5.
func (w *Work) Floats(most int) []Float {
	most = cmp.Or(most, mostFloat)
	var out []Float
	for r := range w.Rows {
		out = append(out, w.Rows[r].floats(most)...)
	}
	return out
}

// floats are those of one row: between two stitches of a yarn, in a round around its join too.
func (row *Row) floats(most int) []Float {
	last, first := map[string]int{}, map[string]int{}
	n := 0
	var order []string
	var out []Float
	for i := range row.St {
		s := &row.St[i]
		if s.Kind == nil || s.Kind.Craft == stitch.Crochet || s.Break {
			continue
		}
		at, ok := last[s.Colour]
		if !ok {
			first[s.Colour] = n
			order = append(order, s.Colour)
		} else if over := n - at - 1; over > most {
			out = append(out, Float{row, s.Colour, over})
		}
		last[s.Colour] = n
		n++
	}
	if row.Round && len(order) > 1 {
		for _, c := range order {
			if over := first[c] + n - 1 - last[c]; over > most {
				out = append(out, Float{row, c, over})
			}
		}
	}
	return out
}

// String is the float as it is told: round 6: CC is carried over 7 stitches.
func (f Float) String() string {
	name := f.Yarn
	if name == "" {
		name = "the yarn without a name"
	}
	return fmt.Sprintf("%s: %s is carried over %s", lowerFirst(f.Row.title()), name, plural(f.Over, "stitch"))
}

// floatNotes tell the longest floats.
func (w *Work) floatNotes(most int) []string {
	all := w.Floats(most)
	if len(all) == 0 {
		return nil
	}
	const told = 3
	var out []string
	more := 0
	for _, f := range all {
		switch s := f.String(); {
		case slices.Contains(out, s):
		case len(out) < told:
			out = append(out, s)
		default:
			more++
		}
	}
	if more > 0 {
		most = cmp.Or(most, mostFloat)
		out = append(out, fmt.Sprintf("and %d more over more than %s: catch them on the way", more, plural(most, "stitch")))
	}
	return out
}
