package place

import (
	"fmt"
	"math"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/units"
)

// pullover is a back, a front, a sleeve and a neckband in nine sizes, drawn by hand
// for the tests: a set-in armhole, a round neck, ribs at hem and cuff.
func pullover(sizes int) []*schematic.Garment {
	names := []string{"XS", "S", "M", "L", "XL", "2X", "3X", "4X", "5X", "6X", "7X", "8X", "9X", "10X", "11X", "12X", "13X", "14X", "15X", "16X"}[:sizes]
	groups := []int{1}
	if sizes > 1 {
		groups = []int{1, (sizes - 1) / 2, sizes - 1 - (sizes-1)/2}
		if groups[1] == 0 {
			groups = []int{1, sizes - 1}
		}
	}
	pat := &schematic.Pattern{Title: "Harbour Pullover", Designer: "A. Example", Steps: units.Usual,
		Sizes: expr.Sizes{Names: names, Groups: groups}}
	var gs []*schematic.Garment
	for i := range names {
		k := float64(i)
		g := &schematic.Garment{Pattern: pat, Size: names[i], Index: i}
		w, l := 460+45*k, 580+12*k
		g.Pieces = append(g.Pieces, torso("Back", schematic.KindBack, w, l, 190+8*k, 180+3*k, 25))
		g.Pieces = append(g.Pieces, torso("Front", schematic.KindFront, w, l, 190+8*k, 180+3*k, 80+2*k))
		g.Pieces = append(g.Pieces, sleeve(200+6*k, 320+24*k, 450+2*k, 120+4*k))
		g.Pieces = append(g.Pieces, band("Neckband", 500+10*k, 30))
		gs = append(gs, g)
	}
	return gs
}

func mm(v float64) units.Num { return units.Frac(int64(math.Round(v*8)), 8) }

type maker struct{ made *schematic.Made }

func newMade(name string, kind schematic.Kind) maker {
	return maker{&schematic.Made{ID: strings.ReplaceAll(strings.ToLower(name), " ", "-"), Name: name, Kind: kind, Make: 1,
		Piece: &schematic.Piece{Name: name}, Views: []schematic.View{{}}}}
}

func (m maker) measure(name string, axis schematic.Axis, ax, ay, bx, by float64) *schematic.Measure {
	length := math.Hypot(ax-bx, ay-by)
	switch axis {
	case schematic.Horizontal:
		length = math.Abs(ax - bx)
	case schematic.Vertical:
		length = math.Abs(ay - by)
	}
	m.made.Measures = append(m.made.Measures, schematic.Measure{ID: m.made.ID + "." + strings.ReplaceAll(name, " ", "-"), Name: name, Axis: axis,
		A: schematic.Point{X: ax, Y: ay}, B: schematic.Point{X: bx, Y: by}, Length: mm(length), Main: true})
	return &m.made.Measures[len(m.made.Measures)-1]
}

func points(xy ...float64) []schematic.Point {
	var ps []schematic.Point
	for i := 0; i < len(xy); i += 2 {
		ps = append(ps, schematic.Point{X: xy[i], Y: xy[i+1]})
	}
	return ps
}

func torso(name string, kind schematic.Kind, w, l, armhole, neck, deep float64) *schematic.Made {
	m := newMade(name, kind)
	v := &m.made.Views[0]
	const rib, slope = 60.0, 25.0
	under, cut := l-slope-armhole, w*0.08
	c := w / 2
	half := func(sign float64) []float64 {
		return []float64{c + sign*w/2, 0, c + sign*w/2, under, c + sign*(w/2-cut*0.6), under + 5, c + sign*(w/2-cut), under + 60,
			c + sign*(w/2-cut), l - slope, c + sign*neck/2, l, c + sign*neck/2*0.8, l - deep*0.7, c + sign*neck/2*0.4, l - deep}
	}
	r, lft := half(1), half(-1)
	outline := points(r...)
	back := points(lft...)
	for i := len(back) - 1; i >= 0; i-- {
		outline = append(outline, back[i])
	}
	v.Outline = [][]schematic.Point{outline}
	v.Lines = []schematic.Line{{Kind: schematic.LineChange, A: schematic.Point{X: 0, Y: rib}, B: schematic.Point{X: w, Y: rib}},
		{Kind: schematic.LineCentre, A: schematic.Point{X: c, Y: rib}, B: schematic.Point{X: c, Y: l - deep}}}
	v.Ribs = []schematic.Hatch{{Poly: points(0, 0, w, 0, w, rib, 0, rib), Dir: schematic.Point{Y: 1}, Gap: 7}}
	v.Arrow, v.ArrowAt = schematic.Point{Y: 1}, schematic.Point{X: w * 0.3, Y: l * 0.35}
	v.Notches = []schematic.Notch{
		{Number: 1, At: schematic.Point{X: w, Y: under * 0.6}, Out: schematic.Point{X: 1}},
		{Number: 1, At: schematic.Point{X: 0, Y: under * 0.6}, Out: schematic.Point{X: -1}},
		{Number: 2, At: schematic.Point{X: w - cut, Y: l - slope - 40}, Out: schematic.Point{X: 1}},
		{Number: 3, At: schematic.Point{X: c + (neck/2+w/2-cut)/2, Y: l - slope/2}, Out: schematic.Point{X: 0.1, Y: 0.99}},
	}
	m.measure("width at hem", schematic.Horizontal, 0, 0, w, 0)
	m.measure("bust", schematic.Horizontal, 0, under, w, under)
	m.measure("cross back", schematic.Horizontal, cut, under+60, w-cut, under+60)
	m.measure("neck width", schematic.Horizontal, c-neck/2, l, c+neck/2, l)
	m.measure("left shoulder", schematic.Horizontal, cut, l-slope, c-neck/2, l)
	m.measure("right shoulder", schematic.Horizontal, w-cut, l-slope, c+neck/2, l)
	m.measure("length", schematic.Vertical, c+neck/2, l, w, 0)
	m.measure("armhole depth", schematic.Vertical, w, under, w-cut, l-slope)
	m.measure("length to underarm", schematic.Vertical, 0, under, 0, 0)
	m.measure("depth of rib", schematic.Vertical, 0, rib, 0, 0)
	m.measure("shoulder slope", schematic.Vertical, cut, l-slope, c-neck/2, l)
	m.measure("neck depth", schematic.Vertical, c, l-deep, c+neck/2, l)
	return m.made
}

func sleeve(cuff, upper, long, capHigh float64) *schematic.Made {
	m := newMade("Sleeve", schematic.KindSleeve)
	m.made.Make = 2
	v := &m.made.Views[0]
	c := upper / 2
	const rib = 60.0
	v.Outline = [][]schematic.Point{points(c-cuff/2, 0, c+cuff/2, 0, c+cuff/2, rib, c+upper/2, long, c+upper/2-20, long, c+upper/2-60, long+capHigh*0.6, c+40, long+capHigh,
		c-40, long+capHigh, c-upper/2+60, long+capHigh*0.6, c-upper/2+20, long, c-upper/2, long, c-cuff/2, rib)}
	v.Ribs = []schematic.Hatch{{Poly: points(c-cuff/2, 0, c+cuff/2, 0, c+cuff/2, rib, c-cuff/2, rib), Dir: schematic.Point{Y: 1}, Gap: 7}}
	v.Lines = []schematic.Line{{Kind: schematic.LineChange, A: schematic.Point{X: c - cuff/2, Y: rib}, B: schematic.Point{X: c + cuff/2, Y: rib}}}
	v.Arrow, v.ArrowAt = schematic.Point{Y: 1}, schematic.Point{X: c, Y: long / 2}
	m.measure("cuff", schematic.Horizontal, c-cuff/2, 0, c+cuff/2, 0)
	m.measure("upper arm", schematic.Horizontal, 0, long, upper, long)
	m.measure("sleeve length", schematic.Vertical, upper, long, c+cuff/2, 0)
	m.measure("cap height", schematic.Vertical, upper, long, c+40, long+capHigh)
	m.measure("depth of rib", schematic.Vertical, c-cuff/2, rib, c-cuff/2, 0)
	m.measure("sleeve seam", schematic.Slanted, c-cuff/2, rib, 0, long)
	m.measure("top of cap", schematic.Horizontal, c-40, long+capHigh, c+40, long+capHigh)
	return m.made
}

func band(name string, w, h float64) *schematic.Made {
	m := newMade(name, schematic.KindBand)
	m.made.Round = true
	m.made.Piece.Onto = []schematic.EdgeRate{{}}
	v := &m.made.Views[0]
	v.Outline = [][]schematic.Point{points(0, 0, w/2, 0, w/2, h, 0, h)}
	v.Ribs = []schematic.Hatch{{Poly: v.Outline[0], Dir: schematic.Point{Y: 1}, Gap: 7}}
	m.measure("around", schematic.Horizontal, 0, 0, w/2, 0).Around = true
	m.made.Measures[0].Length = mm(w)
	m.made.Measures[0].Name = "neck edge"
	m.measure("depth", schematic.Vertical, w/2, 0, w/2, h)
	return m.made
}

// many is a garment of n pieces.
func many(n int) []*schematic.Garment {
	g := pullover(1)[0]
	one := g.Pieces
	g.Pieces = nil
	for i := range n {
		made := *one[i%3]
		made.ID = fmt.Sprintf("%s-%d", made.ID, i)
		made.Measures = append([]schematic.Measure{}, made.Measures...)
		for k := range made.Measures {
			made.Measures[k].ID = fmt.Sprintf("%d.%s", i, made.Measures[k].ID)
		}
		g.Pieces = append(g.Pieces, &made)
	}
	return []*schematic.Garment{g}
}
