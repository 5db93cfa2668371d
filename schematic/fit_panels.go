package schematic

import (
	"slices"
	"strings"

	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

func (s *Panels) counts() []int {
	var out []int
	for i := range s.Of {
		out = append(out, s.Of[i].Stitches.Int(0, 0))
	}
	return out
}

func (s *Panels) need(_ *Fitting, then Need) Need { return alike(s.counts()).and(then) }

func (s *Panels) fit(f *Fitting, old Section) {
	was := old.(*Panels)
	of := make([]units.Num, len(s.Of))
	gauge := f.Gauge
	for i := range of {
		if g := s.Of[i].Gauge; g != "" {
			f.Gauge = g
		}
		of[i], _ = f.ratio()
		f.Gauge = gauge
	}
	f.panels = nil
	for i, n := range f.share(s, was.counts(), was.counts(), of, -1) {
		f.panel(s.Of[i].Name, was.Of[i].Stitches.Int(0, 0), f.put(&s.Of[i].Stitches, n))
	}
}

// fitPanel is a panel of the row in work, its stitches as published and as they are now.
type fitPanel struct {
	name     string
	was, now int
}

// panel adds stitches to the panels of the row in work; those without a name to the panel before them.
func (f *Fitting) panel(name string, was, now int) {
	if k := len(f.panels) - 1; k >= 0 && (name == "" || f.panels[k].name == name) {
		f.panels[k].was += was
		f.panels[k].now += now
		return
	}
	f.panels = append(f.panels, fitPanel{name, was, now})
}

// edges is how many marked lines the k-th panel lies at.
func (f *Fitting) edges(k int) int {
	if !f.Round && (k == 0 || k == len(f.panels)-1) {
		return 1
	}
	return 2
}

// inPanel is how many stitches more the k-th panel has after shapings at lines or edges; false if they are elsewhere too.
func (s *Shape) inPanel(f *Fitting, k int) (more int, ok bool) {
	for i := range s.Shapings {
		h, edges := &s.Shapings[i], 0
		switch {
		case h.At == BothEdges:
			edges = 2 - f.edges(k)
		case h.At != Lines:
			return 0, false
		case h.Panel == "" || h.Panel == f.panels[k].name:
			edges = f.edges(k)
		}
		more += h.sign() * h.By.Int(0, 1) * h.total() * edges
	}
	return more, true
}

// mostInPanel is by how many stitches a panel is shaped once beside its lines: a choice of this project.
const mostInPanel = 2

// overPanels reports whether so many shapings at all lines bring a panel more than half a stitch past the width that it had: with one fewer, what is
// left to it is shaped once in its middle.
func (t *spreading) overPanels(was *Shape, times int) bool {
	f, h := t.f, &t.s.Shapings[0]
	sts, _ := f.ratio()
	return h.At == Lines && h.Panel == "" && slices.ContainsFunc(f.panels, func(p fitPanel) bool {
		k := slices.Index(f.panels, p)
		more, ok := was.inPanel(f, k)
		past := units.Int(int64(p.now + h.sign()*h.By.Int(0, 1)*times*f.edges(k))).Sub(sts.Times(p.was + more))
		return ok && units.Frac(1, 2).Less(past.Times(h.sign()))
	})
}

// panels shapes once in the middle of each panel what its lines, shaped alike, leave it short of the width that it had.
func (t *spreading) panels(was *Shape, before int) {
	f := t.f
	if !t.inPanels(was, before) {
		f.panels = nil
		return
	}
	lines := slices.IndexFunc(was.Shapings, func(h Shaping) bool { return h.At == Lines })
	sts, _ := f.ratio()
	in := map[int][]string{}
	for k := range f.panels {
		p := &f.panels[k]
		d := int(sts.Times(p.was).Sub(units.Int(int64(p.now))).Round())
		if lines < 0 || d*was.Shapings[lines].sign() < 0 || abs(d) > mostInPanel || d == 0 {
			continue
		}
		p.now += d
		f.N += d
		if in[d] = append(in[d], p.name); slices.IndexFunc(f.panels, func(q fitPanel) bool { return q.name == p.name }) == k {
			t.s.Shapings = append(t.s.Shapings, Shaping{Increase: d > 0, By: expr.Counts(abs(d)), At: Across, Panel: p.name, Every: expr.Counts(1), Times: expr.Counts(1), Pos: t.s.Pos})
		}
	}
	for _, d := range []int{-mostInPanel, -1, 1, mostInPanel} {
		if len(in[d]) > 0 {
			f.Odd(t.s, "%s once, in the middle of %s, so that the width comes out", changed(d), strings.Join(in[d], ", "))
		}
	}
}

// inPanels brings the panels' counts up to date after a shaping; false if they are not known, or two of one name differ.
func (t *spreading) inPanels(was *Shape, before int) bool {
	f, sumWas, sumNow := t.f, 0, 0
	named := map[string]fitPanel{}
	for k := range f.panels {
		p := &f.panels[k]
		sumWas, sumNow = sumWas+p.was, sumNow+p.now
		a, ok := was.inPanel(f, k)
		b, _ := t.s.inPanel(f, k)
		p.was, p.now = p.was+a, p.now+b
		if q, again := named[p.name]; !ok || again && q != *p {
			return false
		}
		named[p.name] = *p
	}
	return len(f.panels) > 1 && sumWas == f.step.Before && sumNow == before
}
