package chart

import (
	"sort"

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
		put(n, knitWords(n, s.keys[n], right, wrong, d.work.Terms), append([]*sheet.Path{s.box(pt{}, cell)}, knitSymbol(n, mid, s.tall)...)...)
	}
	for _, k := range s.crosses {
		paths := append([]*sheet.Path{s.box(pt{}, cell*float64(k.Cross.Size()))}, s.crossStrokes(*k.Cross, pt{})...)
		put("cross "+k.ID, k.Abbr(d.work.Terms)+": "+k.Cross.Work(), paths...)
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
	if s.two {
		put("two", "beside an increase into one stitch: its second stitch", s.box(pt{}, cell))
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

// keysInOrder are the symbols in use, in the order of the list of stitches.
func (s *squares) keysInOrder() []string {
	order := map[string]int{}
	for i, k := range stitch.All {
		if _, ok := order[k.Key]; !ok {
			order[k.Key] = i
		}
	}
	var names []string
	for k := range s.keys {
		if k != "second of two" {
			names = append(names, k)
		}
	}
	sort.Slice(names, func(i, j int) bool {
		a, b := order[names[i]], order[names[j]]
		if a != b {
			return a < b
		}
		return names[i] < names[j]
	})
	return names
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
