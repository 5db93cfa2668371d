package fonts

import (
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// Curve is a segment of an outline: 'M' and 'L' with one point, 'Q' with two, 'C' with
// three, the last one its end. Points are in em from the start of the text on its
// baseline, y downwards. Each 'M' begins a closed contour; the rule is non-zero.
type Curve struct {
	Verb byte
	P    [3][2]float64
}

// Points are the points that the verb takes.
func (c *Curve) Points() [][2]float64 { return c.P[:pointsOf[c.Verb]] }

var pointsOf = map[byte]int{'M': 1, 'L': 1, 'Q': 2, 'C': 3}

// Outline is a text, as it's drawn, in curves.
func Outline(f Face, s string) []Curve {
	m := metricsOf(f)
	var out []Curve
	var buf sfnt.Buffer
	units := 0
	var last uint16
	for _, r := range Shown(f, s) {
		g := m.of(r)
		units += m.between(last, g)
		for _, seg := range m.segments(&buf, g) {
			c := Curve{Verb: verbs[seg.Op]}
			for i := range pointsOf[c.Verb] {
				c.P[i] = [2]float64{(float64(units) + float64(seg.Args[i].X)) / float64(m.em), float64(seg.Args[i].Y) / float64(m.em)}
			}
			out = append(out, c)
		}
		units += int(m.advance[g])
		last = g
	}
	return out
}

var verbs = map[sfnt.SegmentOp]byte{sfnt.SegmentOpMoveTo: 'M', sfnt.SegmentOpLineTo: 'L', sfnt.SegmentOpQuadTo: 'Q', sfnt.SegmentOpCubeTo: 'C'}

// segments is a glyph's outline in units, y downwards; nothing for one that can't be
// read. They are good until buf is used again.
func (m *metrics) segments(buf *sfnt.Buffer, g uint16) sfnt.Segments {
	if m.standIn != 0 && g == m.standIn {
		return box(m.em)
	}
	segs, err := m.source.LoadGlyph(buf, sfnt.GlyphIndex(g), fixed.Int26_6(m.em), nil)
	if err != nil {
		return nil
	}
	return segs
}

// box is the outline of StandIn for a face that has none: a square frame.
func box(em int) sfnt.Segments {
	var segs sfnt.Segments
	frame := func(x0, y0, x1, y1 int) {
		for i, p := range [][2]int{{x0, y0}, {x0, y1}, {x1, y1}, {x1, y0}, {x0, y0}} {
			op := sfnt.SegmentOpLineTo
			if i == 0 {
				op = sfnt.SegmentOpMoveTo
			}
			segs = append(segs, sfnt.Segment{Op: op, Args: [3]fixed.Point26_6{{X: fixed.Int26_6(p[0]), Y: fixed.Int26_6(p[1])}}})
		}
	}
	u := em / 20
	frame(u, 0, 11*u, -10*u)
	frame(2*u, -u, 2*u+8*u, -9*u) // the other way round is made below
	for i, j := 5, 9; i < j; i, j = i+1, j-1 {
		segs[i].Args, segs[j].Args = segs[j].Args, segs[i].Args
	}
	return segs
}
