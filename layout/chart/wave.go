package chart

import (
	"math"
	"slices"

	"flatwright/schematic/stitch"
)

// wave is how far the rows of a ripple lie above and under their level: peaks over what is worked several times into one place, valleys
// over what is passed or worked together. Its stretches from there to there are straight.
type wave struct {
	from, step float64   // mm along the rows
	y          []float64 // mm, at each step
}

const (
	waveStep   = 2.2  // mm: about a stitch
	waveSteep  = 0.6  // the most that a row rises along itself
	waveLean   = 0.12 // of its height, that a stitch of a ripple leans at least on straight rows
	waveMost   = 0.6  // of the stitches of a ripple that lean so
	waveAgrees = 0.75 // of the leaning at one place that goes the same way
	waveAlone  = 3    // one of so many stitches stands alone, at least: shells side by side are no ripple
	waveRun    = 2    // steps of a stretch at least
)

// at is the height of the wave, mm.
func (w *wave) at(x float64) float64 {
	if w == nil {
		return 0
	}
	k := (x - w.from) / w.step
	i := min(max(int(math.Floor(k)), 0), len(w.y)-2)
	return w.y[i] + (w.y[i+1]-w.y[i])*(k-float64(i))
}

// slope is how steeply the rows rise there, over the width of a stitch: what stands on a peak stands upright.
func (w *wave) slope(x float64) float64 {
	const half = 0.7 * waveStep
	return (w.at(x+half) - w.at(x-half)) / (2 * half)
}

// ripple bends rows that lie in waves, so that their stitches stand upright on them.
func (p *plan) ripple() {
	if p.below != nil || p.work.craft() != stitch.Crochet || p.work.ending() != "" || slices.ContainsFunc(p.lines, func(l *line) bool { return l.fixed || l.row.gapWords() != "" }) {
		return
	}
	slopes, from := p.slopes()
	if slopes == nil {
		return
	}
	w := &wave{from: from, step: waveStep, y: make([]float64, len(slopes)+1)}
	for i, s := range slopes {
		w.y[i+1] = w.y[i] + s*waveStep
	}
	tilt := w.y[len(slopes)] / float64(len(slopes)) // both ends lie level
	for i := range w.y {
		w.y[i] -= tilt * float64(i)
	}
	p.bend(w)
	if !p.upright() {
		p.bend(nil)
	}
}

// bend lays all rows in a wave, where symbols then meet wider than before; nil: straight.
func (p *plan) bend(w *wave) {
	p.wave = w
	for r := range p.lines {
		p.settle(r)
	}
}

// upright reports whether each stitch stands on its bent row no farther from straight, and no shorter, than it may on a straight one.
func (p *plan) upright() bool {
	for _, l := range p.lines {
		for _, n := range l.nodes {
			if len(n.feet) == 0 || n.arch() || n.mark || n.picot() {
				continue
			}
			d, up := sub(p.point(n, n.v), (&shape{feet: p.footPoints(n)}).foot()), p.outward(n)
			if long(d) < 0.995*n.h || d.X*up.X+d.Y*up.Y < long(d)*math.Sqrt(1-steep*steep) {
				return false
			}
		}
	}
	return true
}

// slopes are how steeply the rows of a ripple rise at each step along them, from the way in which stitches that stand alone lean on
// straight rows; nil if it is none.
func (p *plan) slopes() (slopes []float64, from float64) {
	lo, hi := math.Inf(1), math.Inf(-1)
	for _, l := range p.lines {
		for _, n := range l.nodes {
			lo, hi = min(lo, n.q), max(hi, n.q)
		}
	}
	k := int((hi-lo)/waveStep) + 1
	if math.IsInf(lo, 0) || k < 3 {
		return nil, 0
	}
	sum, abs := make([]float64, k), make([]float64, k)
	all, leans := 0, 0
	for _, l := range p.lines[1:] {
		if !l.peaks() {
			return nil, 0
		}
		for _, n := range l.nodes {
			if len(n.feet) != 1 || n.group != nil || n.st.Turn || n.mark || n.h == 0 || n.feet[0].arch() {
				continue
			}
			d := p.lean(n) / n.h
			all++
			if math.Abs(d) > waveLean {
				leans++
			}
			i := min(int((n.q-lo)/waveStep), k-1)
			sum[i], abs[i] = sum[i]-d, abs[i]+math.Abs(d)
		}
	}
	if all == 0 || waveAlone*all < p.standing() || float64(leans) < waveMost*float64(all) {
		return nil, 0
	}
	signs := straightened(sum, abs)
	steep := min(1.1*mean(abs)*float64(len(abs))/float64(all), waveSteep)
	for i := range signs {
		signs[i] *= steep
	}
	return signs, lo
}

// standing is how many stitches of the rows have a height.
func (p *plan) standing() int {
	sum := 0
	for _, l := range p.lines[1:] {
		for _, n := range l.nodes {
			if n.h > 0 && !n.mark {
				sum++
			}
		}
	}
	return sum
}

// peaks reports whether a row has what makes peaks, several stitches of one kind in one place.
func (l *line) peaks() bool {
	return slices.ContainsFunc(l.nodes, func(n *node) bool {
		return len(n.group) > 1 && !slices.ContainsFunc(n.group, func(m *node) bool { return m.st.Kind != n.st.Kind })
	})
}

// mean is the mean of numbers.
func mean(list []float64) float64 {
	sum := 0.0
	for _, v := range list {
		sum += v
	}
	return sum / float64(len(list))
}

// straightened is 1 where the rows rise and -1 where they fall; nil if the rows do not both rise and
// fall, or the stitches at one place lean to both sides.
func straightened(sum, abs []float64) []float64 {
	agree, lean := 0.0, 0.0
	for i := range sum {
		agree, lean = agree+math.Abs(sum[i]), lean+abs[i]
	}
	if agree < waveAgrees*lean {
		return nil
	}
	out := make([]float64, len(sum))
	last := -1 // that is known
	for i, s := range sum {
		if s == 0 {
			continue
		}
		out[i] = math.Copysign(1, s)
		for k := last + 1; k < i; k++ { // at a peak or in a valley, half of it on either side
			if out[k] = out[i]; last >= 0 && 2*k < last+i {
				out[k] = out[last]
			}
		}
		last = i
	}
	for k := last + 1; k < len(out) && last >= 0; k++ {
		out[k] = out[last]
	}
	rises, falls := runs(out)
	if rises == 0 || falls == 0 {
		return nil
	}
	return out
}

// runs counts the stretches that rise and those that fall.
func runs(signs []float64) (rises, falls int) {
	for i := 0; i < len(signs); {
		k := i
		for k < len(signs) && signs[k] == signs[i] {
			k++
		}
		if k-i >= waveRun && signs[i] > 0 {
			rises++
		} else if k-i >= waveRun {
			falls++
		}
		i = k
	}
	return rises, falls
}
