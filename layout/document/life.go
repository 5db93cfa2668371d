package document

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"flatwright/fonts"
	"flatwright/layout/sheet"
	"flatwright/schematic"
)

// Life is how pieces at life size are laid over sheets.
const (
	Overlap    = 10.0 // mm that two neighbouring sheets share
	testSquare = 50.0 // mm, the side of the square on the first page
	mostSheets = 600
)

// TooMany is the error of pieces that take more sheets than anybody would print.
type TooMany struct{ Sheets int }

// Error says how many.
func (e *TooMany) Error() string {
	return fmt.Sprintf("life size takes %d sheets, and at most %d are printed: choose a smaller size", e.Sheets, mostSheets)
}

// part is one view of a piece in mm, y downwards from its top left corner.
type lifePart struct {
	name, about string
	w, h        float64
	strokes     []lifeStroke
	labels      []lifeLabel
	cols, rows  int
	page        map[[2]int]bool // sheets that anything is drawn on
}

type lifeStroke struct {
	pts   []sheet.Point
	style sheet.Style
	class string
}

type lifeLabel struct {
	s    string
	face fonts.Face
	at   sheet.Point // of its middle
}

// LifeSize lays every piece of g out at 1:1 over as many sheets as it takes, after a page
// with a test square and a map. Neighbouring sheets share Overlap mm and the crosses in it; a sheet
// on which nothing would be drawn is left out. The error is a *TooMany.
func LifeSize(g *schematic.Garment, c *Content, o Options) ([]*sheet.Sheet, error) {
	o.Size, o.Alone = g.Index, true
	b := newBuilder(c, o)
	b.p.right = "life size, " + sizeWords(c, o)
	t := tile{w: b.p.w - 2*edge, h: b.p.bottom() - (edge + lineHigh(b.p.headSize())*2 + 4), top: edge + lineHigh(b.p.headSize())*2 + 4}
	var parts []*lifePart
	total := 0
	for _, m := range g.Pieces {
		for i := range m.Views {
			p := newLifePart(m, &m.Views[i], o.Face)
			p.cols, p.rows = t.needs(p.w, t.w), t.needs(p.h, t.h)
			if total += p.cols * p.rows; total > mostSheets {
				return nil, &TooMany{total}
			}
			p.find(t)
			parts = append(parts, p)
		}
	}
	b.cover()
	b.heading("Life size", 0, false)
	for _, s := range []string{
		"Print at 100 %, without fitting to the page. Measure the square before you use a sheet: each of its sides is 50 mm.",
		"Sheets overlap by 10 mm: lay the crosses of neighbours on each other. Columns have letters and rows have numbers, as on the map. A sheet on which nothing is drawn is not printed.",
		"Each piece is drawn with its right side facing. Pin a piece out to its line; do not cut the fabric.",
	} {
		b.para([]run{{s, fonts.Regular, sheet.Black}}, inset, b.wide(), 0, b.p.size*0.3, false)
	}
	b.square()
	b.heading("Map of the sheets", 0, false)
	for _, p := range parts {
		b.mapOf(p, t)
	}
	if len(c.Cautions) > 0 {
		b.boxed("Caution", c.Cautions)
	}
	for _, p := range parts {
		b.tiles(p, t)
	}
	b.p.flow(b.atoms)
	return laid(b), nil
}

// tile is the room of one sheet, mm.
type tile struct{ w, h, top float64 }

// needs is how many sheets of room each lie over long mm.
func (t tile) needs(long, room float64) int {
	return max(1, int(math.Ceil((long+2*Overlap-Overlap)/(room-Overlap)-1e-9)))
}

// origin is the place on the part at the top left corner of a sheet's room. The part lies
// in the middle of its sheets.
func (t tile) origin(p *lifePart, col, row int) sheet.Point {
	w := float64(p.cols)*(t.w-Overlap) + Overlap
	h := float64(p.rows)*(t.h-Overlap) + Overlap
	return sheet.Point{X: -(w-p.w)/2 + float64(col)*(t.w-Overlap), Y: -(h-p.h)/2 + float64(row)*(t.h-Overlap)}
}

func tileName(col, row int) string {
	s := ""
	for n := col; ; n = n/26 - 1 {
		s = string(rune('A'+n%26)) + s
		if n < 26 {
			break
		}
	}
	return fmt.Sprintf("%s%d", s, row+1)
}

var (
	outlineStyle = sheet.Style{Width: 0.5, Stroke: sheet.Black}
	innerStyle   = sheet.Style{Width: 0.25, Stroke: sheet.Black, Dash: []float64{3, 2}}
	foldStyle    = sheet.Style{Width: 0.25, Stroke: sheet.Black, Dash: []float64{8, 3}}
	centreStyle  = sheet.Style{Width: 0.25, Stroke: sheet.Black, Dash: []float64{8, 2, 1, 2}}
	thinStyle    = sheet.Style{Width: 0.25, Stroke: sheet.Black}
)

// lifeLines are the lines that do not look like a change within a part.
var lifeLines = map[schematic.LineKind]lifeStroke{
	schematic.LineFold:   {style: foldStyle, class: "fold"},
	schematic.LineCentre: {style: centreStyle, class: "centre"},
	schematic.LinePanel:  {style: innerStyle, class: "panel"},
	schematic.LineCell:   {style: innerStyle, class: "panel"},
	schematic.LineMark:   {style: innerStyle, class: "row"},
}

// boundsOf are the corners of the room that loops take; none if there are no points.
func boundsOf(loops [][]schematic.Point) (lo, hi schematic.Point) {
	lo, hi = schematic.Point{X: math.Inf(1), Y: math.Inf(1)}, schematic.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, q := range slices.Concat(loops...) {
		lo.X, lo.Y = min(lo.X, q.X), min(lo.Y, q.Y)
		hi.X, hi.Y = max(hi.X, q.X), max(hi.Y, q.Y)
	}
	if lo.X > hi.X {
		return schematic.Point{}, schematic.Point{}
	}
	return lo, hi
}

func newLifePart(m *schematic.Made, v *schematic.View, f fonts.Face) *lifePart {
	p := &lifePart{name: m.Name}
	if v.Name != "" {
		p.name += ", " + v.Name
	}
	if m.Make > 1 {
		p.about = fmt.Sprintf("make %d", m.Make)
		if m.Mirrored {
			p.about += ", one mirrored"
		}
	}
	if s := v.AlikeText(); s != "" {
		p.about = strings.TrimPrefix(p.about+", "+s, ", ")
	}
	loops := v.Outline
	if v.Disc && len(loops) > 0 {
		loops = append([][]schematic.Point{round(loops[0])}, loops[1:]...)
	}
	lo, hi := boundsOf(loops)
	p.w, p.h = hi.X-lo.X, hi.Y-lo.Y
	on := func(q schematic.Point) sheet.Point { return sheet.Point{X: q.X - lo.X, Y: hi.Y - q.Y} }
	put := func(style sheet.Style, class string, pts ...sheet.Point) {
		p.strokes = append(p.strokes, lifeStroke{pts, style, class})
	}
	for _, l := range loops {
		if len(l) == 0 {
			continue
		}
		var pts []sheet.Point
		for _, q := range l {
			pts = append(pts, on(q))
		}
		put(outlineStyle, "outline", append(pts, pts[0])...)
	}
	for _, l := range v.Lines {
		look, ok := lifeLines[l.Kind]
		if !ok {
			look = lifeStroke{style: innerStyle, class: "change"}
		}
		put(look.style, look.class, on(l.A), on(l.B))
	}
	for _, n := range v.Notches {
		a := on(n.At)
		out := sheet.Point{X: n.Out.X, Y: -n.Out.Y}
		put(outlineStyle, "notch", a, sheet.Point{X: a.X + 4*out.X, Y: a.Y + 4*out.Y})
		p.labels = append(p.labels, lifeLabel{fmt.Sprint(n.Number), f, sheet.Point{X: a.X + 8*out.X, Y: a.Y + 8*out.Y}})
	}
	for _, m := range v.Marks {
		a := on(m.At)
		put(thinStyle, "mark", sheet.Point{X: a.X - 4, Y: a.Y}, sheet.Point{X: a.X + 4, Y: a.Y})
		put(thinStyle, "mark", sheet.Point{X: a.X, Y: a.Y - 4}, sheet.Point{X: a.X, Y: a.Y + 4})
	}
	if (v.Arrow != schematic.Point{}) {
		a := on(v.ArrowAt)
		d := sheet.Point{X: v.Arrow.X * 15, Y: -v.Arrow.Y * 15}
		tip := sheet.Point{X: a.X + d.X, Y: a.Y + d.Y}
		put(thinStyle, "work", sheet.Point{X: a.X - d.X, Y: a.Y - d.Y}, tip)
		for _, s := range [2]float64{1, -1} {
			put(thinStyle, "work", tip, sheet.Point{X: tip.X - d.X*0.2 + s*d.Y*0.1, Y: tip.Y - d.Y*0.2 - s*d.X*0.1})
		}
		p.labels = append(p.labels, lifeLabel{p.name, f, sheet.Point{X: a.X + 12 + fonts.Width(f, UsualText, p.name)/2, Y: a.Y}})
	}
	return p
}

// round is the circle through the points of a loop about their middle.
func round(loop []schematic.Point) []schematic.Point {
	var c schematic.Point
	for _, q := range loop {
		c.X += q.X / float64(len(loop))
		c.Y += q.Y / float64(len(loop))
	}
	r := 0.0
	for _, q := range loop {
		r = max(r, math.Hypot(q.X-c.X, q.Y-c.Y))
	}
	const n = 720
	out := make([]schematic.Point, n)
	for i := range out {
		sin, cos := math.Sincos(2 * math.Pi * float64(i) / n)
		out[i] = schematic.Point{X: c.X + r*cos, Y: c.Y + r*sin}
	}
	return out
}

// find notes the sheets that have anything on them but the arrow of the work.
func (p *lifePart) find(t tile) {
	p.page = map[[2]int]bool{}
	for r := range p.rows {
		for c := range p.cols {
			o := t.origin(p, c, r)
			for _, s := range p.strokes {
				if s.class != "work" && len(clip(s.pts, o, t.w, t.h)) > 0 {
					p.page[[2]int{c, r}] = true
					break
				}
			}
		}
	}
}

// clip cuts a line to the room of a sheet whose top left corner is at o (Liang and
// Barsky, 1984, segment by segment).
func clip(pts []sheet.Point, o sheet.Point, w, h float64) [][]sheet.Point {
	var out [][]sheet.Point
	var run []sheet.Point
	for i := 1; i < len(pts); i++ {
		a := sheet.Point{X: pts[i-1].X - o.X, Y: pts[i-1].Y - o.Y}
		b := sheet.Point{X: pts[i].X - o.X, Y: pts[i].Y - o.Y}
		t0, t1, ok := within(a, b, w, h)
		if !ok {
			continue
		}
		p := sheet.Point{X: a.X + t0*(b.X-a.X), Y: a.Y + t0*(b.Y-a.Y)}
		q := sheet.Point{X: a.X + t1*(b.X-a.X), Y: a.Y + t1*(b.Y-a.Y)}
		if len(run) == 0 || t0 > 0 || run[len(run)-1] != p {
			if len(run) > 1 {
				out = append(out, run)
			}
			run = []sheet.Point{p}
		}
		run = append(run, q)
		if t1 < 1 {
			out = append(out, run)
			run = nil
		}
	}
	if len(run) > 1 {
		out = append(out, run)
	}
	return out
}

func within(a, b sheet.Point, w, h float64) (t0, t1 float64, ok bool) {
	t0, t1 = 0, 1
	dx, dy := b.X-a.X, b.Y-a.Y
	for _, e := range [4][2]float64{{-dx, a.X}, {dx, w - a.X}, {-dy, a.Y}, {dy, h - a.Y}} {
		p, q := e[0], e[1]
		switch {
		case p == 0 && q < 0:
			return 0, 0, false
		case p < 0:
			t0 = max(t0, q/p)
		case p > 0:
			t1 = min(t1, q/p)
		}
	}
	return t0, t1, t0 < t1
}
