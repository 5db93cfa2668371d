package place

import (
	"slices"
)

// trimGap is the room above, between and below the pieces of a trimmed page, mm.
const trimGap = 4.0

// trimmed is the frame of the n-th page with its paper cut to what heading, pieces, table and
// foot take.
func (f *frame) trimmed(p *page, n int, table float64, wide float64) *frame {
	cut := *f
	_, room := f.area(n)
	for _, s := range p.shelves {
		wide = max(wide, s.w)
	}
	cut.h -= max(0, room-table-p.high(trimGap))
	cut.w = min(cut.w, max(wide, f.words())+2*margin)
	return &cut
}

// filled is the frame of the n-th page whose foot stands below what is drawn, if that
// leaves more of the page empty than some room between the pieces takes up.
func (f *frame) filled(p *page, n int, table float64) *frame {
	low := *f
	_, room := f.area(n)
	low.h -= max(0, room-table-p.high(mostApart))
	return &low
}

// high is how high the shelves of a page are with a gap about each of them.
func (p *page) high(gap float64) float64 {
	h := gap*float64(len(p.shelves)+1) + shelfGap*float64(max(0, len(p.shelves)-1))
	for _, s := range p.shelves {
		h += s.above + s.below
	}
	return h
}

// words is the width of heading, caution, key and scale bar.
func (f *frame) words() float64 {
	w, size := 0.0, f.p.o.text()
	if f.bar != nil {
		w = f.bar.wide
	}
	for _, r := range slices.Concat(f.head, f.caution) {
		w = max(w, room(r.face, r.size, r.s))
	}
	for _, entries := range f.key {
		all := 0.0
		for _, e := range entries {
			all += f.keyWidth(e, size)
		}
		w = max(w, all)
	}
	return w
}

// centre sets the shelves of the n-th page in the middle of it, and evenly apart; a
// trimmed page is cut to them first.
func (f *frame) centre(page []nestPut, n int) *frame {
	w, h := f.area(n)
	var ends []int // of each shelf
	low := 0.0
	for i, u := range page {
		low = max(low, u.o.Y+u.b.h)
		if i+1 == len(page) || page[i+1].o.Y != u.o.Y {
			ends = append(ends, i+1)
		}
	}
	need := low - margin - f.headHigh
	if f.p.o.cut() {
		cut := *f
		cut.h -= max(0, h-need-trimGap*float64(len(ends)+1))
		f = &cut
		_, h = f.area(n)
	}
	spare := max(0, h-need)
	gap := min(spare/float64(len(ends)+1), mostApart)
	down, first := 0.4*(spare-gap*float64(len(ends)-1)), 0
	for _, end := range ends {
		shelf := page[first:end]
		last := shelf[len(shelf)-1]
		side := (w - (last.o.X + last.b.w - margin)) / float64(len(shelf)+1)
		for i := range shelf {
			shelf[i].o = add(shelf[i].o, pt{X: side * float64(i+1), Y: down})
		}
		down, first = down+gap, end
	}
	return f
}
