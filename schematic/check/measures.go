package check

import (
	"fmt"
	"slices"
	"strings"

	"flatwright/schematic"
	"flatwright/schematic/expr"
	"flatwright/schematic/finding"
	"flatwright/schematic/units"
)

// term is a measurement so many times.
type term struct {
	times   units.Num
	piece   *schematic.Made
	measure *schematic.Measure
}

// derived is a length that the counts make: a sum of measurements, and a length
// that the pattern adds.
type derived struct {
	terms []term
	plus  units.Num // mm
	girth bool      // goes around the body
}

func just(made *schematic.Made, m *schematic.Measure) derived {
	return derived{terms: []term{{units.Int(1), made, m}}, girth: m.Around}
}

// broken reports whether one of the pieces is not what its designer meant.
func (d derived) broken() bool {
	return slices.ContainsFunc(d.terms, func(t term) bool { return t.measure.Doubt })
}

func (d derived) length() units.Num {
	sum := d.plus
	for _, t := range d.terms {
		sum = sum.Add(t.measure.Length.Mul(t.times))
	}
	return sum
}

// single is the one measurement that d is, if it is one.
func (d derived) single() (*schematic.Measure, bool) {
	if len(d.terms) == 1 && d.terms[0].times.Eq(units.Int(1)) && d.plus.Sign() == 0 {
		return d.terms[0].measure, true
	}
	return nil, false
}

// slack is how far a measured length may be from the counts': half a stitch or
// row for each measurement, twice if one goes around.
func (d derived) slack(p *schematic.Pattern) units.Num {
	var sum units.Num
	for _, t := range d.terms {
		s := unit(p, t.measure).Half().Mul(t.times.Abs())
		if _, one := d.single(); t.measure.Around || one && d.girth {
			s = s.Times(2)
		}
		sum = sum.Add(s)
	}
	return sum
}

// unit is the width of a stitch or the height of a row of m. Where it is not all
// of one gauge, it is the largest of the pattern's.
func unit(p *schematic.Pattern, m *schematic.Measure) units.Num {
	if m.Count > 0 {
		return m.Length.Div(units.Int(int64(m.Count)))
	}
	gauges := p.Gauges
	if m.Gauge != nil {
		gauges = []schematic.Gauge{*m.Gauge}
	}
	var widest units.Num
	for _, g := range gauges {
		if m.Of != "row" {
			widest = units.Max(widest, g.StitchWidth())
		}
		if m.Of != "st" {
			widest = units.Max(widest, g.RowHeight())
		}
	}
	return widest
}

// words says how the length came about: 129 sts of Back make 92.14 cm.
func (d derived) words(u units.Unit) string {
	var parts []string
	for _, t := range d.terms {
		m := t.measure
		what := "the rows"
		switch {
		case m.Count > 0:
			what = fmt.Sprintf("%d %s", m.Count, plural(m.Of, m.Count))
		case m.Of != "row" && m.Axis == schematic.Horizontal:
			what = "the stitches"
		}
		if m.Around {
			what += " around"
		}
		verb := "make"
		if m.Count == 1 {
			verb = "makes"
		}
		text := fmt.Sprintf("%s of %s %s %s", what, t.piece.Name, verb, long(m.Length, u))
		if !t.times.Eq(units.Int(1)) {
			text = units.Mixed(t.times) + " x " + text
		}
		parts = append(parts, text)
	}
	if d.plus.Sign() != 0 {
		parts = append(parts, "and "+long(d.plus, u))
	}
	text := strings.Join(parts, ", ")
	if _, one := d.single(); !one {
		text += ": together " + long(d.length(), u)
	}
	return text
}

func plural(of string, n int) string {
	if of == "" {
		of = "st"
	}
	if n == 1 {
		return of
	}
	return of + "s"
}

// long is a length closer than it is printed, for messages that tell two apart.
func long(l units.Num, u units.Unit) string {
	return units.Decimal(units.In(l, u), 2) + " " + u.String()
}

// girths are the measurements that go around the body; where the pieces are flat,
// they are the sum of backs and fronts (common practice).
var girths = []string{"bust", "chest", "waist", "hip", "hips", "hem"}

// synonyms are the trade's other names of a measurement (common practice).
var synonyms = map[string]string{
	"chest": "bust", "hips": "hip", "bicep": "upper-arm", "biceps": "upper-arm", "total-length": "length", "hem": "width-at-hem",
	"circumference": "brim", "wrist": "cuff", "armhole": "armhole-depth",
}

func canonical(id string) string {
	if s, ok := synonyms[id]; ok {
		return s
	}
	return id
}

// measured are the lengths in g that name may mean, best first. A name is that
// of a measurement (bust), with its piece or part in front to tell it from others
// (Back width at hem).
func measured(g *schematic.Garment, name string) []derived {
	want := schematic.ID(name)
	var exact, named []derived
	for _, made := range g.Pieces {
		for i := range made.Measures {
			if m := &made.Measures[i]; strings.ReplaceAll(m.ID, ".", "-") == want {
				return []derived{just(made, m)}
			}
		}
		if rest, ok := strings.CutPrefix(want, made.ID+"-"); ok {
			exact = append(exact, ofPiece(made, rest)...)
		}
		named = append(named, ofPiece(made, want)...)
	}
	if len(exact) > 0 {
		return exact
	}
	if g.Worn != nil && (len(named) == 0 || canonical(want) == "length") {
		// The length of a garment is that of the whole of it, with its yoke.
		if worn := ofPiece(g.Worn, strings.TrimPrefix(want, g.Worn.ID+"-")); len(worn) > 0 {
			return append(worn, wholeBody(named, false)...)
		}
	}
	return wholeBody(named, slices.Contains(girths, want))
}

// ofPiece are the measurements of one piece that id may mean.
func ofPiece(made *schematic.Made, id string) []derived {
	find := func(id string) []derived {
		var all []derived
		usual := canonical(id)
		for i := range made.Measures {
			m := &made.Measures[i]
			short := schematic.ID(m.Name)
			called := func(short string) bool {
				return canonical(short) == usual || m.Part != "" && strings.HasSuffix(id, short) && schematic.ID(m.Part)+"-"+short == id
			}
			if called(short) {
				all = append(all, just(made, m))
			} else if whole, half := strings.CutPrefix(short, "half-"); half && called(whole) {
				// The whole of what a piece has half of; or the half, if that is what is written.
				all = append(all, derived{terms: []term{{units.Int(2), made, m}}}, just(made, m))
			}
		}
		return all
	}
	all := find(id)
	if len(all) == 0 && made.Kind.Trunk() && sideways(made) && (canonical(id) == "bust" || canonical(id) == "width-at-hem") {
		return find("width-from-side-to-side") // its rows run along the body
	}
	if len(all) == 0 && canonical(id) == "bust" && made.Kind.Trunk() {
		if m, ok := underarm(made); ok {
			return []derived{just(made, m)}
		}
		if all = find("width-at-underarm"); len(all) == 0 && straight(made) {
			all = find("width-at-hem")
		}
	}
	return all
}

// underarm is the width where the armholes begin, or sleeves are added: that is
// the bust of a piece worked from the hem. From the neck it is the width after the
// last stitches joined or added there.
func underarm(made *schematic.Made) (*schematic.Measure, bool) {
	if made.Piece == nil || made.From != schematic.FromHem && made.From != schematic.FromNeck {
		return nil, false
	}
	count, of := 0, schematic.Step{}
	for _, s := range made.Steps {
		switch down := made.From == schematic.FromNeck; {
		case s.Part != "":
		case down && closesArms(s.Section):
			count, of = s.After, s
		case !down && count == 0 && opensArms(made, s.Section):
			count, of = s.Before, s
		}
	}
	m, ok := widthOf(made, count, of.Gauge)
	if ok {
		m.Doubt = of.Doubt
	}
	return m, ok
}

// closesArms reports whether a section worked from the neck may have the last stitches that go round the body.
func closesArms(s schematic.Section) bool {
	t := s.Traits()
	return t.From != nil || t.Adds || t.Joins != nil || t.Closes
}

// opensArms reports whether armholes, or sleeves of one piece with the body, begin with a section worked from the hem.
func opensArms(made *schematic.Made, s schematic.Section) bool {
	t, b := s.Traits(), s.Base()
	names := []string{b.LeftEdge, b.RightEdge}
	for _, sh := range t.Shapings {
		names = append(names, sh.Edge)
	}
	switch {
	case t.Parts != nil || t.Adds:
		return true
	case t.All:
		return false
	case t.TakesAtBoth() && strings.Join(names, "") == "":
		return true // stitches bound off at both edges by no name of their own are the underarms
	}
	return ofArmhole(names...) || t.Slopes && opens(made, s) // a dropped shoulder has its armhole in a straight side
}

func ofArmhole(names ...string) bool {
	return slices.ContainsFunc(names, func(n string) bool {
		n = strings.ToLower(n)
		return strings.Contains(n, "armhole") || strings.Contains(n, "underarm") || strings.Contains(n, "raglan")
	})
}

// widthOf is a width of count stitches of a piece, which its gauge makes.
func widthOf(made *schematic.Made, count int, gauge string) (*schematic.Measure, bool) {
	for _, m := range made.Measures {
		if g := m.Gauge; count > 0 && g != nil && g.Name == gauge {
			return &schematic.Measure{ID: made.ID + ".underarm", Name: "width at underarm", Axis: schematic.Horizontal, Around: made.Round,
				Length: g.StitchWidth().Times(count), Count: count, Of: "st", Gauge: g}, true
		}
	}
	return nil, false
}

func sideways(made *schematic.Made) bool {
	return made.From == schematic.FromLeft || made.From == schematic.FromRight
}

// opens reports whether a shaping narrows the piece at its opening, as a wrap or a deep V does
// before the armhole begins: what it covers of the body is its width before that.
func opens(made *schematic.Made, s schematic.Section) bool {
	b := s.Base()
	for _, sh := range s.Traits().Shapings {
		if sh.Increase {
			continue
		}
		names := []string{sh.Edge}
		if sh.At == schematic.LeftEdge || sh.At == schematic.BothEdges {
			names = append(names, b.LeftEdge, made.Piece.LeftEdge)
		}
		if sh.At == schematic.RightEdge || sh.At == schematic.BothEdges {
			names = append(names, b.RightEdge, made.Piece.RightEdge)
		}
		for _, n := range names {
			n = strings.ToLower(n)
			if strings.Contains(n, "neck") || strings.Contains(n, "front") || strings.Contains(n, "wrap") || strings.Contains(n, "opening") {
				return true
			}
		}
	}
	return false
}

// straight reports whether the whole piece has one width.
func straight(made *schematic.Made) bool {
	n := 0
	for _, m := range made.Measures {
		if m.Part == "" && m.Axis == schematic.Horizontal && strings.HasPrefix(m.Name, "width") {
			n++
		}
	}
	return n == 1
}

// wholeBody chooses among measurements of one name of several pieces: those of the
// body before others, and around the body one that goes around, or the sum of backs
// and fronts.
func wholeBody(named []derived, girth bool) []derived {
	if i := slices.IndexFunc(named, func(d derived) bool { return d.terms[0].piece.Kind.Trunk() }); i >= 0 {
		named = slices.DeleteFunc(named, func(d derived) bool { return !d.terms[0].piece.Kind.Trunk() })
	}
	if !girth || len(named) == 0 {
		return named
	}
	if i := slices.IndexFunc(named, func(d derived) bool { return d.girth }); i >= 0 {
		return slices.DeleteFunc(named, func(d derived) bool { return !d.girth })
	}
	named = eachOnce(named)
	sum := derived{girth: true}
	for _, d := range named {
		made := d.terms[0].piece
		switch {
		case made.Kind == schematic.KindBody && made.Make <= 1:
			return []derived{allOf(made, named)} // worked flat in one piece, from edge to edge around the body
		case made.Kind.Trunk():
			t := d.terms[0]
			t.times = units.Int(int64(max(1, made.Make)))
			sum.terms = append(sum.terms, t)
		}
	}
	if _, one := sum.single(); one || len(sum.terms) == 0 {
		return named
	}
	return []derived{sum}
}

// allOf is a measurement of all the panels in which a piece is drawn.
func allOf(made *schematic.Made, named []derived) derived {
	out := derived{girth: true}
	for _, d := range named {
		if d.terms[0].piece == made {
			out.terms = append(out.terms, d.terms...)
		}
	}
	return out
}

// eachOnce leaves out what is in another measurement of the list already: a part of a drawing whose whole is there,
// and a part with the name of its panel, or of one before.
func eachOnce(named []derived) []derived {
	type place struct {
		piece *schematic.Made
		view  int
		part  string
	}
	seen := map[place]bool{}
	var out []derived
	add := func(parts bool) {
		for _, d := range named {
			m := d.terms[0].measure
			at := place{d.terms[0].piece, m.View, strings.ToLower(m.Part)}
			whole := at
			whole.part = ""
			if (m.Part != "") == parts && !seen[at] && !seen[whole] {
				seen[at] = true
				out = append(out, d)
			}
		}
	}
	add(false)
	add(true)
	return out
}

// sum reads such as '2 x Back bust + 3 cm' and gives the lengths that it may mean.
func sum(g *schematic.Garment, text string) []derived {
	if found := measured(g, text); len(found) > 0 {
		return found
	}
	s, bad := expr.ParseSum(text)
	if bad != nil {
		return nil
	}
	if d, ok := linear(g, s.Root); ok && len(d.terms) > 0 {
		return []derived{d}
	}
	return nil
}

// linear is a node of a sum as measurements so many times and a length.
func linear(g *schematic.Garment, n *expr.Node) (derived, bool) {
	switch n.Op {
	case expr.Name:
		found := measured(g, n.Name)
		if len(found) == 0 {
			return derived{}, false
		}
		return found[0], true
	case expr.Number:
		return derived{plus: n.N}, n.Dim == expr.LengthOf
	case expr.Negate:
		d, ok := linear(g, n.Left)
		return d.by(units.Int(-1)), ok
	case expr.Add, expr.Subtract:
		a, ok1 := linear(g, n.Left)
		b, ok2 := linear(g, n.Right)
		if n.Op == expr.Subtract {
			b = b.by(units.Int(-1))
		}
		return derived{terms: append(a.terms, b.terms...), plus: a.plus.Add(b.plus), girth: a.girth || b.girth}, ok1 && ok2
	case expr.Multiply:
		if k, ok := plain(n.Left); ok {
			d, ok := linear(g, n.Right)
			return d.by(k), ok
		}
		k, ok1 := plain(n.Right)
		d, ok2 := linear(g, n.Left)
		return d.by(k), ok1 && ok2
	case expr.Divide:
		k, ok1 := plain(n.Right)
		d, ok2 := linear(g, n.Left)
		if !ok1 || !ok2 || k.Sign() == 0 {
			return derived{}, false
		}
		return d.by(units.Int(1).Div(k)), true
	}
	return derived{}, false
}

func plain(n *expr.Node) (units.Num, bool) { return n.N, n.Op == expr.Number && n.Dim == expr.Plain }

func (d derived) by(k units.Num) derived {
	out := derived{plus: d.plus.Mul(k), girth: d.girth}
	for _, t := range d.terms {
		t.times = t.times.Mul(k)
		out.terms = append(out.terms, t)
	}
	return out
}

// names are the measurements that a designer may name, told in a message.
func names(gs []*schematic.Garment) string {
	const most = 16
	var all []string
	for _, g := range gs {
		for _, made := range g.Pieces {
			for _, m := range made.Measures {
				if n := made.Name + " " + m.Name; m.Main && !slices.Contains(all, n) {
					all = append(all, n)
				}
			}
		}
	}
	if len(all) > most {
		all = append(all[:most], "…")
	}
	return strings.Join(all, ", ")
}

// allNames are the names of all measurements, shown or not, alone and with their piece.
func allNames(gs []*schematic.Garment) []string {
	var all []string
	seen := map[string]bool{}
	for _, g := range gs {
		for _, made := range g.Pieces {
			for _, m := range made.Measures {
				for _, n := range []string{m.Name, made.Name + " " + m.Name} {
					if !seen[n] {
						seen[n] = true
						all = append(all, n)
					}
				}
			}
		}
	}
	return all
}

func in(f finding.Finding, p *schematic.Pattern, i int) finding.Finding {
	f.Sizes = []string{p.Sizes.Names[i]}
	return f
}
