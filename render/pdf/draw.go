package pdf

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"slices"

	"github.com/go-pdf/fpdf"

	"flatwright/fonts"
	"flatwright/layout/sheet"
)

// pen is what the page was last told, so that nothing is said twice.
type pen struct {
	set          bool
	width        float64
	dash         []float64
	stroke, fill sheet.Ink
	text         sheet.Ink
	family       string
	size         float64
}

func (d *document) group(g *sheet.Group) {
	d.link(g)
	for _, it := range g.Items {
		switch it := it.(type) {
		case *sheet.Group:
			d.group(it)
		case *sheet.Path:
			d.path(it)
		case *sheet.Text:
			d.text(it)
		case *sheet.Picture:
			d.picture(it)
		}
	}
}

// picture sets a photograph, whose file is carried once however often it is set.
func (d *document) picture(p *sheet.Picture) {
	sum := sha256.Sum256(p.JPEG)
	name := hex.EncodeToString(sum[:8])
	o := fpdf.ImageOptions{ImageType: "JPG"}
	if d.GetImageInfo(name) == nil {
		d.RegisterImageOptionsReader(name, o, bytes.NewReader(p.JPEG))
	}
	d.ImageOptions(name, sheet.Quantise(p.At.X), sheet.Quantise(p.At.Y), sheet.Quantise(p.W), sheet.Quantise(p.H), false, o, 0, "")
}

func (d *document) link(g *sheet.Group) {
	address, ok := sheet.SafeLink(g.Link)
	if !ok {
		return
	}
	lo, hi, ok := sheet.Bounds(g)
	if !ok {
		return
	}
	x, y := sheet.Quantise(lo.X), sheet.Quantise(lo.Y)
	w, h := sheet.Quantise(hi.X-lo.X), sheet.Quantise(hi.Y-lo.Y)
	if address[0] != '#' {
		d.LinkString(x, y, w, h, address)
		return
	}
	to, known := d.targets[address[1:]]
	if !known {
		return
	}
	if to.link == 0 {
		to.link = d.AddLink()
		d.SetLink(to.link, to.y, to.page)
		d.targets[address[1:]] = to
	}
	d.Link(x, y, w, h, to.link)
}

func (d *document) path(p *sheet.Path) {
	if !p.Visible() {
		return
	}
	style := p.Style.Drawn()
	d.take(style)
	for i := range p.Segs {
		s := &p.Segs[i]
		var at [3]sheet.Point
		for j, pt := range s.Points() {
			at[j] = sheet.Point{X: sheet.Quantise(pt.X), Y: sheet.Quantise(pt.Y)}
		}
		switch s.Verb {
		case sheet.Move:
			d.MoveTo(at[0].X, at[0].Y)
		case sheet.Line:
			d.LineTo(at[0].X, at[0].Y)
		case sheet.Cubic:
			d.CurveBezierCubicTo(at[0].X, at[0].Y, at[1].X, at[1].Y, at[2].X, at[2].Y)
		case sheet.Close:
			d.ClosePath()
		}
	}
	switch {
	case style.Stroke == sheet.None:
		d.DrawPath("F")
	case style.Fill == sheet.None:
		d.DrawPath("D")
	default:
		d.DrawPath("FD")
	}
}

// take changes the pen where it must.
func (d *document) take(s sheet.Style) {
	p := &d.pen
	if s.Stroke != sheet.None {
		if !p.set || p.width != s.Width {
			d.SetLineWidth(s.Width)
			p.width = s.Width
		}
		if !p.set || !slices.Equal(p.dash, s.Dash) {
			d.SetDashPattern(s.Dash, 0)
			p.dash = s.Dash
		}
		if !p.set || p.stroke != s.Stroke {
			d.SetDrawColor(s.Stroke.RGB())
			p.stroke = s.Stroke
		}
		p.set = true
	}
	if s.Fill != sheet.None && p.fill != s.Fill {
		d.SetFillColor(s.Fill.RGB())
		p.fill = s.Fill
	}
}

// longRun is the number of letters after which a run is cut at a space: the
// format's widths are rounded to a thousandth of the size, and a long line
// would drift from its place.
const longRun = 24

func (d *document) text(t *sheet.Text) {
	if !t.Visible() {
		return
	}
	if d.outlined {
		d.path(t.Outline())
		return
	}
	p := &d.pen
	size := sheet.Quantise(t.Size)
	if family := d.families[t.Face]; p.size != size || p.family != family {
		d.SetFont(family, "", size/pointMM)
		p.size, p.family = size, family
	}
	if p.text != t.Ink {
		d.SetTextColor(t.Ink.RGB())
		p.text = t.Ink
	}
	x, y := sheet.Quantise(t.At.X), sheet.Quantise(t.At.Y)
	angle := sheet.Quantise(t.Angle)
	if angle != 0 {
		d.TransformBegin()
		d.TransformRotate(angle, x, y)
	}
	start := x
	switch t.Anchor {
	case sheet.Middle:
		start -= fonts.Width(t.Face, size, t.S) / 2
	case sheet.End:
		start -= fonts.Width(t.Face, size, t.S)
	}
	for _, run := range fonts.Runs(t.Face, t.S) {
		d.run(t.Face, start+run.Offset*size, y, size, run.Text)
	}
	if angle != 0 {
		d.TransformEnd()
	}
}

// pointMM is a printer's point as PDF has it, 1/72 in.
const pointMM = 25.4 / 72

// run places text in which nothing kerns.
func (d *document) run(f fonts.Face, x, y, size float64, s string) {
	letters := 0
	for i, r := range s {
		letters++
		if r == ' ' && letters > longRun {
			d.Text(x, y, s[:i+1])
			d.run(f, x+fonts.Width(f, size, s[:i+1]), y, size, s[i+1:])
			return
		}
	}
	if s != "" {
		d.Text(x, y, s)
	}
}
