package chart

import (
	"slices"
	"strings"

	"flatwright/fonts"
	"flatwright/layout/sheet"
)

// frame draws the outline of one repeat, between the stitches that it parts, and says
// what the first row's count is a multiple of. Where an outline would cut a symbol, a line
// under the repeat tells it.
func (p *plan) frame(f *figure, o *Options, scale float64) {
	if p.form != flat {
		return
	}
	r, ok := p.work.repeat()
	if !ok {
		return
	}
	low, high := f.lo.Y-0.8, f.hi.Y+0.8
	if p.work.ending() != "" { // under the line where rows are left out
		high = f.hi.Y + 0.2
	}
	if p.below != nil { // it begins at the edge
		low = p.lines[0].top + 0.1
	}
	from, to := p.work.block()
	at := p.partings(from, to)
	sideAt := func(cut int) ([]pt, bool) { return p.parting(f, p.side(nil, at, cut), low, high) }
	var left, right []pt
	clear := false
	tried := middleFirst(r.Times)
	for _, k := range tried[:min(len(tried), mostFrames)] { // they are alike
		first := r.From + k*r.Of
		a, ok := sideAt(first)
		b, too := sideAt(first + r.Of)
		if len(a) < 2 || len(b) < 2 {
			continue
		}
		if left == nil || ok && too {
			left, right, clear = a, b, ok && too
		}
		if clear {
			break
		}
	}
	if left == nil {
		return
	}
	f.outlineRepeat(left, right, clear, scale)
	size := o.plane(scale)
	under := pt{X: (left[0].X + right[0].X) / 2, Y: low - size*0.8}
	if p.below != nil {
		under.Y = high + size*0.8
	} else if !clear {
		under.Y -= 0.8
	}
	f.label(o, scale, label{s: p.repeatWords(r), at: under, row: p.off, class: "repeat"})
}

// middleFirst are the numbers from 0 to n, from the second on and the first at the end:
// the first repeat often has an edge of its own.
func middleFirst(n int) []int {
	var out []int
	for k := 1; k < n-1; k++ {
		out = append(out, k)
	}
	return append(out, 0, n-1)
}

// mostFrames is how many repeats are tried for an outline.
const mostFrames = 8

// outlineRepeat draws the outline of a repeat between its sides, or a line under it.
func (f *figure) outlineRepeat(left, right []pt, clear bool, scale float64) {
	loop := append([]pt(nil), left...)
	for i := len(right) - 1; i >= 0; i-- {
		loop = append(loop, right[i])
	}
	if !clear {
		a, b := left[0], right[0]
		loop = []pt{add(a, pt{X: 0.4, Y: 0.4}), add(a, pt{X: 0.4, Y: -0.8}), add(b, pt{X: -0.4, Y: -0.8}), add(b, pt{X: -0.4, Y: 0.4})}
	}
	box := path("repeat", quiet*1.4/scale, loop...)
	if clear {
		box.Segs = append(box.Segs, sheet.Seg{Verb: sheet.Close})
		box.Style.Dash = []float64{1.6, 0.9}
	}
	f.add(newMark(-1, false, box))
}

// parting is the line of a repeat's side from low to high, and whether it cuts no symbol:
// straight up where it can go so, else from stitch to stitch.
func (p *plan) parting(f *figure, side []pt, low, high float64) ([]pt, bool) {
	if len(side) < 2 {
		return nil, false
	}
	side = rising(side)
	lo, hi, mean := side[0].X, side[0].X, 0.0
	for _, q := range side {
		lo, hi, mean = min(lo, q.X), max(hi, q.X), mean+q.X/float64(len(side))
	}
	const step, beside = 0.2, 2.0
	g := newGrid(f, pt{X: lo - (hi-lo)/2 - beside, Y: low}, pt{X: hi + (hi-lo)/2 + beside, Y: high})
	for k := 0; float64(k)*step <= (hi-lo)/2+1; k++ {
		for _, dir := range [2]float64{1, -1} {
			x := mean + dir*step*float64(k)
			if up := []pt{{X: x, Y: low}, {X: x, Y: high}}; g.passes(up) {
				return up, true
			}
		}
	}
	last := side[len(side)-1]
	bent := append(append([]pt{{X: side[0].X, Y: low}}, side...), pt{X: last.X, Y: high})
	return bent, g.passes(bent)
}

// repeatWords are the words under the repeat.
func (p *plan) repeatWords(r Repeat) string {
	s := "repeat: " + r.String()
	if from, to := p.work.block(); p.work.Rows[from].Base && from+1 < to {
		if t := p.work.Rows[from+1].St; len(t) > 0 && t[0].Turn && len(t[0].Feet) == 0 {
			s += ", and " + plural(t[0].Chain, "chain") + " to turn"
		}
	}
	return s
}

// rising leaves out points that would make a side go back down.
func rising(ps []pt) []pt {
	out := ps[:1]
	for _, q := range ps[1:] {
		if q.Y > out[len(out)-1].Y+0.05 {
			out = append(out, q)
		}
	}
	return out
}

// partings are, for each row and each place of the first row, the stitch before which a cut before the place goes, in the
// order of working; 0: none.
type partings [][]int32

func partingsOf(all [][]span, from, to, places int) partings {
	out := make(partings, len(all))
	for r := from; r < to; r++ {
		s, at := all[r], make([]int32, places+1)
		for i := 1; i < len(s); i++ {
			for cut := max(min(s[i-1].hi, s[i].hi)+1, 0); cut <= min(max(s[i-1].hi, s[i].hi), places); cut++ {
				if at[cut] == 0 {
					at[cut] = int32(i)
				}
			}
		}
		out[r] = at
	}
	return out
}

// parted are the two neighbours of a row between which the cut before the i-th stitch goes.
func (p *plan) parted(l *line, i int32) (a, b *node, ok bool) {
	if i == 0 {
		return nil, nil, false
	}
	a, b = l.at(int(i-1)), l.at(int(i))
	if a.next != b {
		a, b = b, a
	}
	return a, b, a.next == b
}

func footX(p *plan, n *node) float64 {
	if len(n.feet) == 0 {
		return n.q
	}
	x := 0.0
	for _, q := range p.footPoints(n) {
		x += q.X
	}
	return x / float64(len(n.feet))
}

// breaks draws the break where stitches are left out of every row, and the one
// where rows are.
func (p *plan) breaks(f *figure, o *Options, scale float64) {
	var left, rightSide []pt
	for _, l := range p.lines {
		for _, n := range l.nodes {
			if !n.st.Break || l.fixed {
				continue
			}
			lo, hi := l.base, l.top
			switch {
			case l.row.Held:
				lo, hi = -l.tallest(), 0
			case l.row.Base:
				lo, hi = -ovalWide, ovalWide
			}
			lo, hi = lo+p.wave.at(n.q), hi+p.wave.at(n.q)
			mid := (lo + hi) / 2
			left = append(left, pt{X: n.q - 1, Y: lo}, pt{X: n.q - 0.2, Y: mid})
			rightSide = append(rightSide, pt{X: n.q + 0.2, Y: lo}, pt{X: n.q + 1, Y: mid})
			if l.n == len(p.lines)-1 {
				left = append(left, pt{X: n.q - 1, Y: hi + 0.8})
				rightSide = append(rightSide, pt{X: n.q + 0.2, Y: hi + 0.8})
			}
		}
	}
	if len(left) > 1 {
		f.add(newMark(-1, false, path("break", quiet/scale, rising(left)...), path("break", quiet/scale, rising(rightSide)...)))
	}
	if p.form == flat {
		p.rowBreaks(f, o, scale)
	}
}

// rowBreaks writes what rows are left out, where they are.
func (p *plan) rowBreaks(f *figure, o *Options, scale float64) {
	for r, l := range p.lines {
		if words := l.row.gapWords(); words != "" {
			f.rowBreak(o, scale, r+p.off, l.base, words)
		}
	}
	if words := p.work.ending(); words != "" {
		top := p.lines[len(p.lines)-1].top
		f.rowBreak(o, scale, len(p.lines)-1+p.off, top+gapHigh, words)
	}
}

// gapHigh is the room for the words where rows are left out.
const gapHigh = 6.5

// rowBreak writes what rows are left out under the level base, between two lines.
func (f *figure) rowBreak(o *Options, scale float64, r int, base float64, words string) {
	lo, hi := f.lo.X, f.hi.X
	for _, dy := range []float64{gapHigh - 0.9, 0.9} {
		var zig []pt
		n := max(int((hi-lo)/4), 2)
		for k := 0; k <= n; k++ {
			zig = append(zig, pt{X: lo + (hi-lo)*float64(k)/float64(n), Y: base - dy + 0.4*float64(k%2)})
		}
		f.add(newMark(r, false, path("break", quiet/scale, zig...)))
	}
	words = clipTo(words, o.plane(scale), max(hi-lo, breakRoom/scale))
	f.label(o, scale, label{s: words, at: pt{X: f.beside(lo, hi, base), Y: base - gapHigh/2 + 0.2}, row: r, class: "break"})
}

// breakRoom is how wide, mm on paper, the words of a break may always be.
const breakRoom = 150.0

// clipTo is as much of words as that room holds at a size, in the same measure.
func clipTo(words string, size, room float64) string {
	if fonts.Width(fonts.Regular, size, words) <= room {
		return words
	}
	r := []rune(words)
	for len(r) > 1 && fonts.Width(fonts.Regular, size, string(r)+"…") > room {
		r = r[:len(r)-1]
	}
	return strings.TrimRight(string(r), " ;,") + "…"
}

// beside is the middle of the widest part of a stretch that no long line crosses where
// rows are left out under the level base.
func (f *figure) beside(lo, hi, base float64) float64 {
	at := []float64{lo, hi}
	for i := range f.marks {
		if f.marks[i].row >= 0 {
			continue
		}
		for _, q := range f.marks[i].paths {
			for _, x := range crossings(q, base-gapHigh, base) {
				at = append(at, min(max(x, lo), hi))
			}
		}
	}
	slices.Sort(at)
	best := 1
	for k := range at[1:] {
		if at[k+1]-at[k] > at[best]-at[best-1]+1e-6 {
			best = k + 1
		}
	}
	return (at[best-1] + at[best]) / 2
}

// crossings are the ends of a path's strokes that reach into the levels from lo to hi.
func crossings(q *sheet.Path, lo, hi float64) []float64 {
	var out []float64
	for _, run := range q.Polyline() {
		if n := len(run) - 1; n > 0 && q.Class == "repeat" && run[0] != run[n] {
			run = append(run, run[0])
		}
		for k := 1; k < len(run); k++ {
			a, b := run[k-1], run[k]
			if min(a.Y, b.Y) <= hi && max(a.Y, b.Y) >= lo {
				out = append(out, a.X, b.X)
			}
		}
	}
	return out
}
