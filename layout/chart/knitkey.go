package chart

import (
	"cmp"
	"maps"
	"slices"
	"strings"

	"flatwright/layout/sheet"
	"flatwright/schematic/stitch"
)

// key lists the symbols in use, and says how the chart is read.
func (s *squares) key() {
	d, left := s.d, s.o.LeftHanded
	right, wrong := d.work.sidesSeen()
	put := func(id, what string, paths ...*sheet.Path) {
		if left {
			g := &figure{marks: []mark{newMark(-1, true, paths...)}}
			g.mirror()
		}
		d.key = append(d.key, entry{id, paths, what})
	}
	mid := pt{X: cell / 2, Y: s.tall / 2}
	for _, n := range s.keysInOrder() {
		put(n, s.keys[n].words(right && wrong, d.work.Terms), append([]*sheet.Path{s.box(pt{}, cell)}, knitSymbol(n, mid, s.tall)...)...)
	}
	if s.sole != nil {
		put("sole", "each square: "+s.sole.Abbr(d.work.Terms)+", "+s.sole.Name(d.work.Terms), s.box(pt{}, cell))
	}
	for _, k := range s.crosses {
		paths := append([]*sheet.Path{s.box(pt{}, cell*float64(k.Cross.Size()))}, s.crossStrokes(*k.Cross, pt{})...)
		how := k.Cross.Work()
		if k.Key == stitch.NamedCross {
			how = k.Cross.String()
		}
		put("cross "+k.ID, k.Abbr(d.work.Terms)+": "+how, paths...)
	}
	for i := range s.yarns.list {
		y := &s.yarns.list[i]
		var paths []*sheet.Path
		if y.ground != sheet.None {
			paths = append(paths, y.fill(pt{}, s.tall))
		}
		paths = append(append(paths, s.box(pt{}, cell)), y.mark(pt{}, s.tall, true)...)
		put("yarn "+y.name, y.words(), paths...)
	}
	if s.part {
		put("part", "beside an increase into one stitch: a further stitch of it", s.box(pt{}, cell))
	}
	if s.wrapped {
		put(wrapKey, "w&t: the yarn goes around this stitch, and the work is turned", append([]*sheet.Path{s.box(pt{}, cell)}, knitSymbol(wrapKey, mid, s.tall)...)...)
	}
	if s.empty {
		put("none", "no stitch: go on to the next square", s.box(pt{}, cell), s.noStitch(pt{}))
	}
	if s.broken {
		put("break", "stitches left out here", zigzag(mid, s.tall)...)
	}
	d.key = append(d.key, d.work.arrows(left)...)
	d.notes = append(d.notes, d.work.grownFrom()...)
	if d.craft == stitch.Knitting {
		d.notes = append(d.notes, "Knit symbols as the Craft Yarn Council lists them: a knit stitch is a blank square")
	}
	if wrong {
		d.notes = append(d.notes, "wrong-side rows are drawn as they look from the right side")
	}
	if left {
		d.notes = append(d.notes, leftHanded)
	}
	if s.o.Proportion > 0 {
		d.notes = append(d.notes, "squares are as wide and tall as the gauge makes stitches and rows")
	}
	d.notes = append(d.notes, d.work.floatNotes(s.o.Floats)...)
}

const leftHanded = "for left-handed work"

// sidesSeen reports whether there are right-side rows, and wrong-side ones.
func (w *Work) sidesSeen() (right, wrong bool) {
	for i := range w.Rows {
		if r := &w.Rows[i]; !r.Base {
			right, wrong = right || !r.Wrong, wrong || r.Wrong
		}
	}
	return right, wrong
}

// inUse is the stitches that a symbol stands for, on each side.
type inUse struct{ right, wrong []*stitch.Stitch }

func (u *inUse) add(k *stitch.Stitch, wrong bool) {
	list := &u.right
	if wrong {
		list = &u.wrong
	}
	if k != nil && !slices.ContainsFunc(*list, func(o *stitch.Stitch) bool { return o.ID == k.ID }) {
		*list = append(*list, k)
	}
}

// words are what a symbol means on each side.
func (u *inUse) words(sides bool, t stitch.Terms) string {
	names := func(list []*stitch.Stitch) string {
		var out []string
		for _, k := range list {
			out = append(out, k.Abbr(t))
		}
		return strings.Join(out, " or ")
	}
	right, wrong := names(u.right), names(u.wrong)
	switch {
	case !sides, right == wrong, wrong == "":
		var out []string
		for _, k := range u.right {
			out = append(out, keyName(k, t))
		}
		if right == "" {
			for _, k := range u.wrong {
				out = append(out, keyName(k, t))
			}
		}
		return strings.Join(out, "; or ")
	case right == "":
		return wrong + " on the wrong side"
	}
	return right + " on the right side, " + wrong + " on the wrong side"
}

// keysInOrder are the symbols in use, in the order of the list of stitches.
func (s *squares) keysInOrder() []string {
	order := func(key string) int {
		return slices.IndexFunc(stitch.All(), func(k *stitch.Stitch) bool { return strings.HasPrefix(key, k.Key) && k.Craft == stitch.Knitting })
	}
	names := slices.Collect(maps.Keys(s.keys))
	slices.SortFunc(names, func(a, b string) int { return cmp.Or(cmp.Compare(order(a), order(b)), cmp.Compare(a, b)) })
	return names
}
